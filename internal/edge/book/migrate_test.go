package book

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"sley/internal/trade/record"
)

func allSteps(t testing.TB) []migration {
	t.Helper()
	steps, err := migrations(schema)
	if err != nil {
		t.Fatal(err)
	}
	return steps
}

// older writes a filled book as a sley of that version would have left it: what this
// one writes, without the columns and tables that came later, and without events of kinds
// that it did not know.
func older(t testing.TB, path string, version int) {
	t.Helper()
	head := filepath.Join(t.TempDir(), "head.sley")
	filled(t, head).Close()
	b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true, steps: allSteps(t)[:version]})
	if err != nil {
		t.Fatal(err)
	}
	b.Close()
	db := raw(t, path)
	defer db.Close()
	run(t, db, "PRAGMA foreign_keys = OFF", "ATTACH '"+head+"' AS head")
	for _, table := range tablesOf(t, db) {
		columns := strings.Join(column(t, db, "SELECT name FROM pragma_table_info(?)", table), ", ")
		if table == "search" {
			columns = "rowid, " + columns
		}
		run(t, db, "INSERT OR IGNORE INTO main."+table+" ("+columns+") SELECT "+columns+" FROM head."+table)
		if n := column(t, db, "SELECT count(*) FROM main."+table); n[0] == "0" {
			t.Errorf("table %s of version %d is empty: have fill write into it", table, version)
		}
	}
}

func hash(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintf("%x", sha(data))
}

func sha(data []byte) []byte {
	sum := sha256.Sum256(data)
	return sum[:]
}

func TestMigrationsAreNumbered(t *testing.T) {
	for name, want := range map[string]bool{"sql/0003-x.sql": false, "sql/x.sql": false, "sql/0001-x.sql": true} {
		_, err := migrations(fstest.MapFS{name: {Data: []byte("SELECT 1;")}})
		if (err == nil) != want {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, m := range allSteps(t) {
		if len(statements(m.sql)) == 0 {
			t.Errorf("migration %d has no statement", m.version)
		}
	}
}

func TestStatementsAreCutAtTheEndsOfLines(t *testing.T) {
	got := statements("-- one; two;\nCREATE TABLE a (\n  -- b;\n  c TEXT DEFAULT ';', d TEXT\n);\nSELECT 1; \nSELECT ';'\n")
	want := []string{"CREATE TABLE a (\n  c TEXT DEFAULT ';', d TEXT\n);", "SELECT 1;", "SELECT ';'"}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q", got)
	}
}

var errBrokenOff = errors.New("broken off")

// A migration that is broken off before any of its statements, by an error or by the end
// of the process, leaves the old book, which opens as before and migrates the next time.
func TestBrokenOffMigrationsLeaveTheOldBook(t *testing.T) {
	oneAtATime(t)
	steps := allSteps(t)
	for from := range len(steps) {
		for statement := range steps[from].all() {
			t.Run(fmt.Sprintf("from %d, statement %d", from, statement), func(t *testing.T) {
				path := filepath.Join(t.TempDir(), "book.sley")
				before := ""
				if from > 0 {
					older(t, path, from)
					before = textOf(t, path)
				}
				ended := filepath.Join(t.TempDir(), "book.sley") // as the end of the process would leave it
				_, err := Open(t.Context(), Asked{
					Path: path, Now: at(noon), Create: true, steps: steps,
					between: func(version, n int) error {
						if version != from+1 || n != statement {
							return nil
						}
						copyFiles(t, path, ended)
						return errBrokenOff
					},
				})
				if !errors.Is(err, errBrokenOff) {
					t.Fatal(err)
				}
				for _, left := range []string{path, ended} {
					seeOldBook(t, left, steps[:from], before)
				}
			})
		}
	}
}

// copyFiles copies a book and what SQLite keeps beside it, as they are on the disk now.
// Only a test may: reading the file of an open book drops its locks on some systems.
func copyFiles(t testing.TB, from, to string) {
	t.Helper()
	for _, end := range []string{"", "-wal", ".lock"} {
		data, err := os.ReadFile(from + end)
		if errors.Is(err, os.ErrNotExist) {
			continue
		}
		if err == nil {
			err = os.WriteFile(to+end, data, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

func seeOldBook(t *testing.T, path string, steps []migration, before string) {
	t.Helper()
	if len(steps) > 0 {
		b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), steps: steps})
		if err != nil {
			t.Fatal("the old book does not open:", err)
		}
		b.Close()
		if after := textOf(t, path); after != before {
			t.Errorf("the old book is another: %d bytes of text, %d before", len(after), len(before))
		}
	}
	b := open(t, path)
	if b.Version() != len(steps) {
		t.Errorf("the book has version %d, not %d", b.Version(), len(steps))
	}
	if err := b.Check(t.Context()); err != nil {
		t.Error(err)
	}
	b.Close()
}

func TestBeforeAMigrationTheBookIsCopied(t *testing.T) {
	for from := 1; from < len(allSteps(t)); from++ {
		path := filepath.Join(t.TempDir(), "book.sley")
		older(t, path, from)
		before := textOf(t, path)
		open(t, path).Close()
		copies := Copies(path, noon)
		want := fmt.Sprintf("before-version-%d-on-2026-03-02-120000.sley", len(allSteps(t)))
		if len(copies) != 1 || filepath.Base(copies[0]) != want {
			t.Fatalf("the copies are %q, not %s", copies, want)
		}
		if err := Check(t.Context(), copies[0]); err != nil {
			t.Error(err)
		}
		if textOf(t, copies[0]) != before {
			t.Error("the copy holds something else than the book did")
		}
		if _, err := Peek(t.Context(), copies[0]); !record.Is(err, record.Older) {
			t.Errorf("peeked into a book of version %d: %v", from, err)
		}
	}
}

// A book is not migrated where it cannot be copied first.
func TestWithoutACopyThereIsNoMigration(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	older(t, path, 1)
	before := textOf(t, path)
	if err := os.WriteFile(CopyFolder(path), nil, 0o600); err != nil { // a file in the folder's place
		t.Fatal(err)
	}
	if _, err := Open(t.Context(), Asked{Path: path, Now: at(noon)}); !record.Is(err, record.FolderFailed) {
		t.Error(err)
	}
	if textOf(t, path) != before {
		t.Error("the book was changed")
	}
}

// A migration that leaves a row without the one it refers to is not made.
func TestAMigrationThatLosesRowsIsNotMade(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	filled(t, path).Close()
	before := textOf(t, path)
	steps := append(allSteps(t), migration{version: len(allSteps(t)) + 1, sql: `
		CREATE TABLE lost (document INTEGER REFERENCES documents (id) DEFERRABLE INITIALLY DEFERRED) STRICT;
		INSERT INTO lost VALUES (999);
	`})
	_, err := Open(t.Context(), Asked{Path: path, Now: at(noon), steps: steps})
	if !record.Is(err, record.Damaged) {
		t.Error(err)
	}
	if textOf(t, path) != before {
		t.Error("the book was changed")
	}
}

// A book of a newer version and a file of another program are refused; not one byte of
// them is changed, and nothing but the lock is left beside them.
func TestForeignFilesAreLeftAsTheyAre(t *testing.T) {
	for name, test := range map[string]struct{ code, statement string }{
		"newer":              {record.Newer, "PRAGMA user_version = 99"},
		"another's":          {record.NotABook, "PRAGMA application_id = 12345"},
		"nobody's":           {record.NotABook, "PRAGMA application_id = 0"},
		"newer with journal": {record.Newer, "PRAGMA user_version = 99"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "book.sley")
			filled(t, path).Close()
			db := raw(t, path)
			if name == "newer with journal" {
				run(t, db, test.statement)
				copyFiles(t, path, path+"2") // not closed: the version stands in the journal alone
				path += "2"
			} else {
				run(t, db, test.statement, "PRAGMA journal_mode = DELETE")
			}
			db.Close()
			before := hash(t, path)
			for range 2 {
				_, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
				var trouble *record.Trouble
				if !errors.As(err, &trouble) || trouble.Code != test.code {
					t.Fatal(err)
				}
				if test.code == record.Newer && (trouble.Found != "99" || trouble.Known != fmt.Sprint(len(allSteps(t)))) {
					t.Errorf("found %q, known %q", trouble.Found, trouble.Known)
				}
				if _, err := Peek(t.Context(), path); !record.Is(err, test.code) {
					t.Errorf("peeked: %v", err)
				}
			}
			if hash(t, path) != before {
				t.Error("the file was changed")
			}
		})
	}
}
