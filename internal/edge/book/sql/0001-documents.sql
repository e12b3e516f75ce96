-- Documents and their versions. A document's truth is the body of its newest
-- version; its name, order, card and facts are taken from that.
CREATE TABLE documents (
  id            INTEGER PRIMARY KEY CHECK (id >= 1),
  kind          TEXT    NOT NULL CHECK (kind IN ('yarn', 'loom', 'draft', 'warp')),
  mark          TEXT    NOT NULL UNIQUE CHECK (length(mark) BETWEEN 8 AND 64),
  name          TEXT    NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  sort_key      BLOB    NOT NULL,
  version       INTEGER NOT NULL CHECK (version >= 1),
  demo          INTEGER NOT NULL CHECK (demo IN (0, 1)),
  removed       INTEGER NOT NULL CHECK (removed IN (0, 1)),
  made_ms       INTEGER NOT NULL,
  changed_ms    INTEGER NOT NULL
) STRICT;

-- Bodies are JSON, pressed; a body with a base is pressed against that version's, which
-- has none. A row of up to 4 kB stays within its page, where a table without row
-- numbers would put all above 1 kB on pages of their own.
CREATE TABLE versions (
  document      INTEGER NOT NULL REFERENCES documents (id),
  number        INTEGER NOT NULL CHECK (number >= 1),
  at_ms         INTEGER NOT NULL,
  window        TEXT    NOT NULL CHECK (length(window) <= 64),
  act           TEXT    NOT NULL CHECK (act IN ('add', 'edit', 'undo', 'redo', 'return',
                  'remove', 'bring-back', 'take', 'amend')),
  state         INTEGER NOT NULL CHECK (state BETWEEN 1 AND number),
  removed       INTEGER NOT NULL CHECK (removed IN (0, 1)),
  body_of       INTEGER NOT NULL CHECK (body_of BETWEEN 1 AND number),
  base          INTEGER CHECK (base BETWEEN 1 AND number - 1),
  body          BLOB,
  PRIMARY KEY (document, number),
  CHECK ((body IS NULL) = (body_of < number)),
  CHECK (base IS NULL OR body IS NOT NULL)
) STRICT;

-- What the differences to a whole version take together.
CREATE INDEX versions_by_base ON versions (document, base) WHERE base IS NOT NULL;

-- What happened, one row each, never changed: what was wrong is cancelled by another.
CREATE TABLE events (
  seq           INTEGER PRIMARY KEY CHECK (seq >= 1),
  id            TEXT    NOT NULL UNIQUE CHECK (length(id) BETWEEN 8 AND 64),
  document      INTEGER NOT NULL REFERENCES documents (id),
  topic         TEXT    NOT NULL CHECK (topic IN ('stock', 'log', 'progress', 'measurement')),
  what          TEXT    NOT NULL,
  at_ms         INTEGER NOT NULL,
  place         INTEGER CHECK (place >= 0),
  path          TEXT    NOT NULL DEFAULT '',
  state         TEXT    NOT NULL DEFAULT '',
  typed         TEXT    NOT NULL DEFAULT '',
  length_nm     INTEGER CHECK (length_nm >= 0),
  mass_ng       INTEGER CHECK (mass_ng >= 0),
  minutes       INTEGER CHECK (minutes >= 0),
  warp          INTEGER REFERENCES documents (id),
  note          TEXT    NOT NULL DEFAULT '',
  cancels       TEXT    UNIQUE REFERENCES events (id),
  CHECK (length_nm IS NULL OR mass_ng IS NULL),
  CHECK (cancels IS NULL OR cancels <> id),
  CHECK (
    (topic = 'stock' AND what IN ('bought', 'used', 'measured', 'lost')) OR
    (topic = 'log' AND what IN ('started', 'note', 'sitting', 'broken', 'finished')) OR
    (topic = 'progress' AND what = 'woven') OR
    (topic = 'measurement' AND what = 'size'))
) STRICT;

CREATE INDEX events_of ON events (document, topic, seq);

-- Plans as they were when work began, in the order they were frozen.
CREATE TABLE frozen (
  seq           INTEGER PRIMARY KEY CHECK (seq >= 1),
  warp          INTEGER NOT NULL,
  version       INTEGER NOT NULL,
  at_ms         INTEGER NOT NULL,
  event         TEXT    NOT NULL UNIQUE REFERENCES events (id),
  program       TEXT    NOT NULL,
  defaults      TEXT    NOT NULL,
  body          BLOB    NOT NULL,
  nodes         BLOB    NOT NULL,
  FOREIGN KEY (warp, version) REFERENCES versions (document, number)
) STRICT;

CREATE INDEX frozen_of ON frozen (warp, seq);

CREATE TABLE settings (
  name          TEXT    PRIMARY KEY CHECK (length(name) BETWEEN 1 AND 64),
  value         TEXT    NOT NULL
) STRICT;
