-- What gateways took, for each farmer the newest few; trimmed when past its time.
CREATE TABLE sent (
  farmer INTEGER NOT NULL,
  tail TEXT NOT NULL,             -- the message's id without the subject
  at INTEGER NOT NULL,            -- seconds since 1970-01-01T00:00Z
  entry BLOB NOT NULL,            -- packed
  PRIMARY KEY (farmer, tail)
) STRICT, WITHOUT ROWID;
CREATE INDEX sent_at ON sent (at);

-- What receipts find a message by; trimmed when past its time.
CREATE TABLE reference (
  mark BLOB NOT NULL PRIMARY KEY, -- keyed hash of line and reference, 16 bytes
  farmer INTEGER NOT NULL,
  tail TEXT NOT NULL,             -- as in sent
  part INTEGER NOT NULL,          -- from 0
  at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX reference_at ON reference (at);

-- Receipts that came before the send was settled; trimmed when past their time.
CREATE TABLE early_receipt (
  mark BLOB NOT NULL PRIMARY KEY, -- as in reference
  state INTEGER NOT NULL,
  state_at INTEGER NOT NULL,
  at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX early_receipt_at ON early_receipt (at);
