-- What was sent on a day; trimmed when past its time.
CREATE TABLE spending (
  day TEXT NOT NULL,              -- as 2026-03-02, of the zone the caps are kept in
  line TEXT NOT NULL,             -- '' for all lines together
  segments INTEGER NOT NULL,
  PRIMARY KEY (day, line)
) STRICT, WITHOUT ROWID;
