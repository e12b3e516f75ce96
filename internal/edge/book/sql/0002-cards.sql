-- What the engine found of a document, with the version it is of and the engine that
-- found it, so that lists and searches read no body.
ALTER TABLE documents ADD COLUMN facts_of INTEGER NOT NULL DEFAULT 0 CHECK (facts_of BETWEEN 0 AND version);
ALTER TABLE documents ADD COLUMN facts_engine INTEGER NOT NULL DEFAULT 0 CHECK (facts_engine >= 0);
ALTER TABLE documents ADD COLUMN stage TEXT NOT NULL DEFAULT '';
ALTER TABLE documents ADD COLUMN weave TEXT NOT NULL DEFAULT '';
ALTER TABLE documents ADD COLUMN shafts INTEGER NOT NULL DEFAULT 0 CHECK (shafts >= 0);
ALTER TABLE documents ADD COLUMN treadles INTEGER NOT NULL DEFAULT 0 CHECK (treadles >= 0);
ALTER TABLE documents ADD COLUMN ends INTEGER NOT NULL DEFAULT 0 CHECK (ends >= 0);
ALTER TABLE documents ADD COLUMN picks INTEGER NOT NULL DEFAULT 0 CHECK (picks >= 0);
ALTER TABLE documents ADD COLUMN longest_float INTEGER NOT NULL DEFAULT 0 CHECK (longest_float >= 0);
ALTER TABLE documents ADD COLUMN errors INTEGER NOT NULL DEFAULT 0 CHECK (errors >= 0);
ALTER TABLE documents ADD COLUMN warnings INTEGER NOT NULL DEFAULT 0 CHECK (warnings >= 0);

-- The figures of a list are read only of the rows it shows.
CREATE TABLE figures (
  document      INTEGER PRIMARY KEY REFERENCES documents (id),
  figures       TEXT    NOT NULL
) STRICT;

-- A list walks the first of these, in the order of names, and filters by it; it counts
-- by the second, which is small. The others find what the engine has to look at anew.
CREATE INDEX documents_by_name ON documents
  (kind, removed, sort_key, id, shafts, treadles, longest_float, weave);
CREATE INDEX documents_to_count ON documents
  (kind, removed, shafts, treadles, longest_float, weave, demo);
CREATE INDEX documents_by_engine ON documents (kind, facts_engine);
CREATE INDEX documents_behind ON documents (kind) WHERE facts_of < version;

-- The words of names and bodies, for searching: folded by package words, so that the
-- tokenizer has only to cut at spaces. The rowid is the document's id. What was there
-- before is found by its name as it is typed, until its next version.
CREATE VIRTUAL TABLE search USING fts5 (words, tokenize = 'ascii', prefix = '1 2 3 4 5', detail = none, columnsize = 0);
INSERT INTO search (rowid, words) SELECT id, name FROM documents;
