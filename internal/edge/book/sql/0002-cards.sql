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

-- A list walks this index alone, in the order of names, and filters by it.
CREATE INDEX documents_by_name ON documents
  (kind, removed, sort_key, id, shafts, treadles, longest_float, weave);
CREATE INDEX documents_by_facts ON documents (kind, facts_engine, facts_of, version);

-- Names and words, for searching. The rowid is the document's id.
CREATE VIRTUAL TABLE search USING fts5 (name, words, tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3');
INSERT INTO search (rowid, name, words) SELECT id, name, '' FROM documents;
