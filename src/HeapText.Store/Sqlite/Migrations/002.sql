-- Words of farmers that an officer has explained, once for a district.
CREATE TABLE own_word (
  district TEXT NOT NULL,
  word TEXT NOT NULL,
  entry BLOB NOT NULL,            -- packed
  PRIMARY KEY (district, word)
) STRICT, WITHOUT ROWID;
