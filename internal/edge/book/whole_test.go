package book

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/trade/record"
)

// complains damages a filled book by statements, with nothing that would hinder them, and
// gives what Check finds.
func complains(t *testing.T, statements ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.sley")
	filled(t, path).Close()
	if err := Check(t.Context(), path); err != nil {
		t.Fatal("damaged before it was damaged:", err)
	}
	db := raw(t, path)
	run(t, db, append([]string{"PRAGMA foreign_keys = OFF", "PRAGMA ignore_check_constraints = ON"}, statements...)...)
	db.Close()
	err := Check(t.Context(), path)
	if !record.Is(err, record.Damaged) {
		t.Errorf("%q: %v", statements, err)
		return ""
	}
	return err.Error()
}

// Every check finds the fault it is for.
func TestEachCheckCanFail(t *testing.T) {
	oneAtATime(t)
	const body = "UPDATE versions SET body = x'28b52ffd00010203' WHERE document = 4 AND number = "
	for _, test := range []struct{ name, statement, found string }{
		{"an orphan", "UPDATE events SET document = 99 WHERE id = 'event-woven'", "events 5 documents"},
		{"an orphan of a version", "UPDATE frozen SET version = 9", "frozen 1 versions"},
		{"a fault of a CHECK", "UPDATE documents SET kind = 'cat' WHERE id = 2", "CHECK constraint failed in documents"},
		{"an index without a row", "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, 'topic, seq', 'topic, at_ms') WHERE name = 'events_of'", "events_of"},
		{"a word that is not in the index", "INSERT INTO search_content VALUES (99, 'lost')", "FTS5 table main.search"},
		{"a gap in the versions", "DELETE FROM versions WHERE document = 4 AND number = 8", "numbered"},
		{"no newest version", "DELETE FROM versions WHERE document = 4 AND number = 11", "numbered"},
		{"no version", "DELETE FROM versions WHERE document = 3", "numbered"},
		{"a version too many", "UPDATE documents SET version = 10 WHERE id = 4", "numbered"},
		{"a body of one that has none", "UPDATE versions SET body_of = 5 WHERE document = 4 AND number = 11", "has none"},
		{"a base that is not whole", "UPDATE versions SET base = 2 WHERE document = 4 AND number = 3", "not whole"},
		{"another base", "UPDATE versions SET base = 7 WHERE document = 4 AND number = 3", ""},
		{"a removed one that shows", "UPDATE documents SET removed = 0 WHERE id = 2", "removed"},
		{"a whole body", body + "1", "version 1 of document 4 does not open"},
		{"a difference", body + "3", "version 3 of document 4 does not open"},
		{"a frozen plan", "UPDATE frozen SET body = x'00'", "frozen does not open"},
		{"the nodes of one", "UPDATE frozen SET nodes = x'00'", "frozen does not open"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := complains(t, strings.Split(test.statement, "; ")...); !strings.Contains(got, test.found) {
				t.Errorf("found %q, not %q", got, test.found)
			}
		})
	}
}

// spoil writes over a page of a file.
func spoil(t *testing.T, path string, page int64, with []byte) {
	t.Helper()
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := file.WriteAt(with, page*4096); err != nil {
		t.Fatal(err)
	}
	file.Close()
}

// Whichever page is spoilt: Check finds it, and so does Open, which reads no bodies, where
// the page is one of those that hold the rest together.
func TestASpoiltPageIsFound(t *testing.T) {
	master := filepath.Join(t.TempDir(), "book.sley")
	filled(t, master).Close()
	info, err := os.Stat(master)
	if err != nil {
		t.Fatal(err)
	}
	atOpen := 0
	for page := int64(1); page < info.Size()/4096; page++ {
		path := filepath.Join(t.TempDir(), "book.sley")
		copyFiles(t, master, path)
		spoil(t, path, page, []byte(strings.Repeat("spoilt! ", 512)))
		if err := Check(t.Context(), path); !record.Is(err, record.Damaged) {
			t.Errorf("page %d: %v", page, err)
		}
		b, err := Open(t.Context(), Asked{Path: path, Now: at(noon)})
		if err == nil {
			b.Close()
		} else if atOpen++; !record.Is(err, record.Damaged) {
			t.Errorf("page %d: opening says %v", page, err)
		}
	}
	if atOpen < int(info.Size()/4096)/2 {
		t.Errorf("opening found %d spoilt pages of %d", atOpen, info.Size()/4096)
	}
}

// Checks that SQLite answers with rows are read as rows.
func TestChecksAreReadAsRows(t *testing.T) {
	db := raw(t, filepath.Join(t.TempDir(), "x"))
	run(t, db, "CREATE TABLE a (b REFERENCES c (d))", "CREATE TABLE c (d PRIMARY KEY)", "INSERT INTO a VALUES (1)")
	if _, err := db.Exec("PRAGMA foreign_key_check"); err != nil {
		t.Fatal(err) // run, not read, it finds nothing
	}
	err := sound(t.Context(), db, "PRAGMA foreign_key_check")
	var trouble *record.Trouble
	if !errors.As(err, &trouble) || trouble.Found != "a 1 c 0" {
		t.Errorf("%v", err)
	}
	for _, check := range []string{"PRAGMA quick_check", "PRAGMA integrity_check"} {
		if err := sound(t.Context(), db, check); err != nil {
			t.Error(err)
		}
	}
}

// A connection that searched before has the index in mind as it was: the check asks others.
func TestCheckingAfterSearchingFindsNothing(t *testing.T) {
	oneAtATime(t)
	b := filled(t, filepath.Join(t.TempDir(), "book.sley"))
	search := func() {
		err := b.Read(t.Context(), func(r record.Reader) error {
			_, _, err := r.List(record.Query{Kind: record.Draft, Words: "linen", Most: 5})
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for i := range 40 {
		search()
		add(t, b, record.Draft, strings.Repeat("x", i+4), "{}")
		if err := b.Check(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
}
