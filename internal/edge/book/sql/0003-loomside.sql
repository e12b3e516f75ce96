-- What happens at the loom while it is dressed and woven. A table's checks cannot be
-- changed, so events, and the frozen plans that point to them, are written anew.
CREATE TABLE events_anew (
  seq           INTEGER PRIMARY KEY CHECK (seq >= 1),
  id            TEXT    NOT NULL UNIQUE CHECK (length(id) BETWEEN 8 AND 64),
  document      INTEGER NOT NULL REFERENCES documents (id),
  topic         TEXT    NOT NULL CHECK (topic IN ('stock', 'log', 'progress', 'measurement')),
  what          TEXT    NOT NULL,
  at_ms         INTEGER NOT NULL,
  place         INTEGER CHECK (place >= 0),
  came_from     INTEGER CHECK (came_from >= 0),
  path          TEXT    NOT NULL DEFAULT '',
  state         TEXT    NOT NULL DEFAULT '',
  typed         TEXT    NOT NULL DEFAULT '',
  length_nm     INTEGER CHECK (length_nm >= 0),
  mass_ng       INTEGER CHECK (mass_ng >= 0),
  minutes       INTEGER CHECK (minutes >= 0),
  warp          INTEGER REFERENCES documents (id),
  note          TEXT    NOT NULL DEFAULT '',
  cancels       TEXT    UNIQUE REFERENCES events_anew (id),
  CHECK (length_nm IS NULL OR mass_ng IS NULL),
  CHECK (cancels IS NULL OR cancels <> id),
  CHECK (
    (topic = 'stock' AND what IN ('bought', 'used', 'measured', 'lost')) OR
    (topic = 'log' AND what IN ('started', 'note', 'sitting', 'broken', 'finished', 'sat-down', 'photograph', 'advanced')) OR
    (topic = 'progress' AND what IN ('woven', 'dressed', 'chosen', 'tape', 'weighed')) OR
    (topic = 'measurement' AND what = 'size'))
) STRICT;

INSERT INTO events_anew (seq, id, document, topic, what, at_ms, place, path, state, typed,
    length_nm, mass_ng, minutes, warp, note, cancels)
  SELECT seq, id, document, topic, what, at_ms, place, path, state, typed,
    length_nm, mass_ng, minutes, warp, note, cancels FROM events ORDER BY seq;

CREATE TABLE frozen_anew (
  seq           INTEGER PRIMARY KEY CHECK (seq >= 1),
  warp          INTEGER NOT NULL,
  version       INTEGER NOT NULL,
  at_ms         INTEGER NOT NULL,
  event         TEXT    NOT NULL UNIQUE REFERENCES events_anew (id),
  program       TEXT    NOT NULL,
  defaults      TEXT    NOT NULL,
  body          BLOB    NOT NULL,
  nodes         BLOB    NOT NULL,
  FOREIGN KEY (warp, version) REFERENCES versions (document, number)
) STRICT;

INSERT INTO frozen_anew (seq, warp, version, at_ms, event, program, defaults, body, nodes)
  SELECT seq, warp, version, at_ms, event, program, defaults, body, nodes FROM frozen ORDER BY seq;

DROP TABLE frozen;
DROP TABLE events;
ALTER TABLE events_anew RENAME TO events;
ALTER TABLE frozen_anew RENAME TO frozen;
CREATE INDEX events_of ON events (document, topic, seq);
CREATE INDEX frozen_of ON frozen (warp, seq);

-- Photographs, each beside the event that says when it was taken and of what.
CREATE TABLE photographs (
  event         TEXT    PRIMARY KEY REFERENCES events (id),
  kind          TEXT    NOT NULL CHECK (kind IN ('image/jpeg', 'image/png')),
  wide          INTEGER NOT NULL CHECK (wide BETWEEN 1 AND 65535),
  high          INTEGER NOT NULL CHECK (high BETWEEN 1 AND 65535),
  body          BLOB    NOT NULL CHECK (length(body) > 0)
) STRICT;

-- Phones and tablets that may be used beside the loom. Of what each proves itself by only
-- the SHA-256 is kept.
CREATE TABLE devices (
  id            TEXT    PRIMARY KEY CHECK (length(id) BETWEEN 8 AND 64),
  name          TEXT    NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
  sum           BLOB    NOT NULL UNIQUE CHECK (length(sum) = 32),
  made_ms       INTEGER NOT NULL,
  seen_ms       INTEGER NOT NULL,
  revoked       INTEGER NOT NULL CHECK (revoked IN (0, 1))
) STRICT;
