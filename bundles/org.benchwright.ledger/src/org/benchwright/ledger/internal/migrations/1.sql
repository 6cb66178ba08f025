-- Format 1. Statements end with a line that holds nothing but a semicolon.
-- Rows are only ever inserted. INSERT OR REPLACE deletes without asking a delete trigger unless recursive triggers are on, therefore each
-- table also refuses rows that are not the next one.

CREATE TABLE event (
  position  INTEGER PRIMARY KEY CHECK (position > 0),
  test_id   TEXT NOT NULL,
  sequence  INTEGER NOT NULL CHECK (sequence > 0),
  instant   TEXT NOT NULL,
  sitting   INTEGER NOT NULL CHECK (sitting > 0),
  elapsed   TEXT NOT NULL,
  actor     TEXT NOT NULL,
  role      TEXT NOT NULL,
  kind      TEXT NOT NULL,
  link      BLOB NOT NULL CHECK (length(link) = 32),
  subtree   BLOB NOT NULL CHECK (length(subtree) = 32),
  canonical BLOB NOT NULL,
  UNIQUE (test_id, sequence)
) STRICT
;
CREATE INDEX event_first ON event (position) WHERE sequence = 1
;
CREATE INDEX event_sealed ON event (test_id) WHERE kind = 'sealed'
;
CREATE TRIGGER event_next BEFORE INSERT ON event
WHEN NEW.position <> (SELECT coalesce(max(position), 0) + 1 FROM event)
  OR NEW.sequence <> (SELECT coalesce(max(sequence), 0) + 1 FROM event WHERE test_id = NEW.test_id)
BEGIN SELECT RAISE(ABORT, 'an event takes the next position and the next sequence number'); END
;
CREATE TRIGGER event_kept BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are not changed'); END
;
CREATE TRIGGER event_stays BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'events are not deleted'); END
;
CREATE TABLE document (
  number  INTEGER PRIMARY KEY CHECK (number > 0),
  digest  BLOB NOT NULL UNIQUE CHECK (length(digest) = 32),
  kind    TEXT NOT NULL,
  size    INTEGER NOT NULL CHECK (size >= 0),
  content BLOB,
  link    BLOB NOT NULL CHECK (length(link) = 32)
) STRICT
;
CREATE TRIGGER document_next BEFORE INSERT ON document
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM document)
  OR EXISTS (SELECT 1 FROM document WHERE digest = NEW.digest)
BEGIN SELECT RAISE(ABORT, 'a document takes the next number and is kept once'); END
;
CREATE TRIGGER document_kept BEFORE UPDATE ON document
BEGIN SELECT RAISE(ABORT, 'documents are not changed'); END
;
CREATE TRIGGER document_stays BEFORE DELETE ON document
BEGIN SELECT RAISE(ABORT, 'documents are not deleted'); END
;
CREATE TABLE signer (
  number      INTEGER PRIMARY KEY CHECK (number > 0),
  fingerprint BLOB NOT NULL UNIQUE CHECK (length(fingerprint) = 32),
  public_key  BLOB NOT NULL,
  first_seen  TEXT NOT NULL,
  signature   BLOB NOT NULL CHECK (length(signature) = 64)
) STRICT
;
CREATE TRIGGER signer_next BEFORE INSERT ON signer
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM signer)
  OR EXISTS (SELECT 1 FROM signer WHERE fingerprint = NEW.fingerprint)
BEGIN SELECT RAISE(ABORT, 'a signer takes the next number and is listed once'); END
;
CREATE TRIGGER signer_kept BEFORE UPDATE ON signer
BEGIN SELECT RAISE(ABORT, 'signers are not changed'); END
;
CREATE TRIGGER signer_stays BEFORE DELETE ON signer
BEGIN SELECT RAISE(ABORT, 'signers are not deleted'); END
;
CREATE TABLE checkpoint (
  number         INTEGER PRIMARY KEY CHECK (number > 0),
  size           INTEGER NOT NULL REFERENCES event (position),
  root           BLOB NOT NULL CHECK (length(root) = 32),
  documents      INTEGER NOT NULL CHECK (documents >= 0),
  documents_link BLOB NOT NULL CHECK (length(documents_link) = 32),
  instant        TEXT NOT NULL,
  signer         BLOB NOT NULL REFERENCES signer (fingerprint),
  signature      BLOB NOT NULL CHECK (length(signature) = 64)
) STRICT
;
CREATE TRIGGER checkpoint_next BEFORE INSERT ON checkpoint
WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM checkpoint)
  OR NEW.size < (SELECT coalesce((SELECT size FROM checkpoint ORDER BY number DESC LIMIT 1), 0))
BEGIN SELECT RAISE(ABORT, 'a checkpoint takes the next number and covers no less than the one before'); END
;
CREATE TRIGGER checkpoint_kept BEFORE UPDATE ON checkpoint
BEGIN SELECT RAISE(ABORT, 'checkpoints are not changed'); END
;
CREATE TRIGGER checkpoint_stays BEFORE DELETE ON checkpoint
BEGIN SELECT RAISE(ABORT, 'checkpoints are not deleted'); END
;
