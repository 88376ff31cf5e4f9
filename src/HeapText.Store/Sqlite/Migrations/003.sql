-- What a phone's screen was answered, to answer the same step again; trimmed when past its time.
CREATE TABLE answer (
  farmer INTEGER NOT NULL,
  mark BLOB NOT NULL,             -- as in seen
  at INTEGER NOT NULL,
  screen BLOB NOT NULL,           -- packed
  PRIMARY KEY (farmer, mark)
) STRICT, WITHOUT ROWID;
CREATE INDEX answer_at ON answer (at);
