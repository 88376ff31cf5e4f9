-- Instants are milliseconds since 1970-01-01T00:00Z unless said otherwise.

CREATE TABLE meta (
  name TEXT NOT NULL PRIMARY KEY,
  value BLOB NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE farmer (
  id INTEGER PRIMARY KEY,
  key BLOB NOT NULL UNIQUE,       -- keyed hash of the number, 16 bytes
  version INTEGER NOT NULL,
  number BLOB NOT NULL,           -- sealed
  record BLOB NOT NULL,           -- packed
  due INTEGER,                    -- next due instant, or the end of the claim on it
  village INTEGER,                -- group code
  concern_since INTEGER
) STRICT;
CREATE INDEX farmer_due ON farmer (due) WHERE due IS NOT NULL;
CREATE INDEX farmer_village ON farmer (village) WHERE village IS NOT NULL;
CREATE INDEX farmer_concern ON farmer (concern_since) WHERE concern_since IS NOT NULL;

CREATE TABLE seen (
  farmer INTEGER NOT NULL,
  mark BLOB NOT NULL,             -- keyed hash of line and id, 16 bytes
  at INTEGER NOT NULL,
  PRIMARY KEY (farmer, mark)
) STRICT, WITHOUT ROWID;
CREATE INDEX seen_at ON seen (at);

-- A farmer's head is the one message that may go next: the one tried before, else the earliest by not_before and seq.
-- Only the head has ready_at: its not_before, its retry moment, or the end of the lease on it.
CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY,
  farmer INTEGER NOT NULL,
  id TEXT NOT NULL,
  line TEXT NOT NULL,
  priority INTEGER NOT NULL,
  not_before INTEGER NOT NULL,
  tries INTEGER NOT NULL DEFAULT 0,
  ready_at INTEGER,
  message BLOB NOT NULL           -- packed
) STRICT;
CREATE INDEX outbox_farmer ON outbox (farmer, not_before);
CREATE UNIQUE INDEX outbox_head ON outbox (farmer) WHERE ready_at IS NOT NULL;
CREATE INDEX outbox_ready ON outbox (line, priority, ready_at) WHERE ready_at IS NOT NULL;

CREATE TABLE set_aside (
  seq INTEGER PRIMARY KEY,
  farmer INTEGER NOT NULL,
  entry BLOB NOT NULL             -- packed
) STRICT;

CREATE TABLE village_group (
  code INTEGER PRIMARY KEY,
  entry BLOB NOT NULL             -- packed
) STRICT;

CREATE TABLE audit (
  seq INTEGER PRIMARY KEY,
  entry BLOB NOT NULL             -- packed
) STRICT;
