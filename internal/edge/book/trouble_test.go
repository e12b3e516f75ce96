package book

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/trade/record"
)

// reopen opens a book as a sley does that would make one.
func reopen(t *testing.T, path string) (*Book, error) {
	t.Helper()
	b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
	if err == nil {
		t.Cleanup(func() { b.Close() })
	}
	return b, err
}

// What is in a book's place and is no book, or not all of one, is never taken for an empty
// one: with a copy there, the trouble says where; a file is left as it was found.
func TestWhatIsNoBookIsNotTakenForOne(t *testing.T) {
	oneAtATime(t)
	size := int64(0)
	cut := func(path string, n int64) error { return os.Truncate(path, n) }
	for name, test := range map[string]struct {
		spoil            func(path string) error
		code, withCopies string
	}{
		"missing":       {os.Remove, "", record.Missing},
		"empty":         {func(path string) error { return cut(path, 0) }, "", record.Damaged},
		"one byte":      {func(path string) error { return cut(path, 1) }, record.NotABook, record.Damaged},
		"half a header": {func(path string) error { return cut(path, 50) }, record.NotABook, record.Damaged},
		"half a page":   {func(path string) error { return cut(path, 2048) }, record.Damaged, record.Damaged},
		"half":          {func(path string) error { return cut(path, size/2) }, record.Damaged, record.Damaged},
		"all but one":   {func(path string) error { return cut(path, size-4096) }, record.Damaged, record.Damaged},
		"garbage":       {func(path string) error { return os.WriteFile(path, []byte(strings.Repeat("garbage ", 9000)), 0o600) }, record.NotABook, record.Damaged},
		"no header":     {func(path string) error { spoil(t, path, 0, make([]byte, 4096)); return nil }, record.NotABook, record.Damaged},
	} {
		for _, copies := range []bool{false, true} {
			path := filepath.Join(t.TempDir(), "book.sley")
			b := filled(t, path)
			code, copied := test.code, ""
			if copies {
				code, copied = test.withCopies, keep(t, b, noon)
			}
			b.Close()
			info, _ := os.Stat(path)
			size = info.Size()
			if err := test.spoil(path); err != nil {
				t.Fatal(err)
			}
			before, _ := os.ReadFile(path)
			b, err := reopen(t, path)
			var trouble *record.Trouble
			if errors.As(err, &trouble); code == "" && (err != nil || !b.Fresh()) || code != "" && (trouble == nil || trouble.Code != code || trouble.Copy != copied) {
				t.Errorf("%s, copies %v: %v", name, copies, err)
			}
			if after, _ := os.ReadFile(path); code != "" && string(after) != string(before) {
				t.Errorf("%s: the file was changed", name)
			}
			if copies && trouble != nil {
				if _, err := Restore(t.Context(), path, trouble.Copy, noon); err != nil {
					t.Errorf("%s: %v", name, err)
				} else if _, err := reopen(t, path); err != nil {
					t.Errorf("%s, restored: %v", name, err)
				}
			}
		}
	}
}

// A file that is empty, with a journal beside it, was a book.
func TestAnEmptyFileWithAJournalIsDamaged(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	b := filled(t, path)
	copyFiles(t, path, path+"2")
	b.Close()
	if err := os.Truncate(path+"2", 0); err != nil {
		t.Fatal(err)
	}
	if _, err := reopen(t, path+"2"); !record.Is(err, record.Damaged) {
		t.Error(err)
	}
	if info, err := os.Stat(path + "2-wal"); err != nil || info.Size() == 0 {
		t.Error("the journal is gone:", err)
	}
}

// A sley that was killed leaves a journal. Where that is gone, changes are: it is said, as
// often as the book is opened, until it is restored.
func TestALostJournalIsSaid(t *testing.T) {
	for _, copied := range []bool{false, true} {
		path, other := held(t)
		if copied { // now, with what stands in the journal alone
			b, err := Peek(t.Context(), path)
			if err != nil {
				t.Fatal(err)
			}
			b.now = at(noon)
			keep(t, b, noon)
			b.Close()
		}
		other.Process.Kill()
		other.Wait()
		if err := os.Remove(walPath(path)); err != nil {
			t.Fatal(err)
		}
		var trouble *record.Trouble
		for range 2 {
			_, err := reopen(t, path)
			trouble = troubleIn(t, err, record.Damaged)
			if !strings.Contains(trouble.Found, "-wal is missing") {
				t.Error(trouble)
			}
		}
		// The copy holds more than the file without its journal.
		if copied != (trouble.Copy != path) {
			t.Errorf("copied %v: go on from %s", copied, trouble.Copy)
		}
		if _, err := Restore(t.Context(), path, trouble.Copy, noon); err != nil {
			t.Fatal(err)
		}
		b, err := reopen(t, path)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Check(t.Context()); err != nil {
			t.Error(err)
		}
	}
}

// A folder where the journal cannot be kept is refused before anything is changed.
func TestWithoutAJournalThereIsNoBook(t *testing.T) {
	for _, end := range []string{"-wal", "-shm"} {
		for _, there := range []bool{false, true} {
			path := filepath.Join(t.TempDir(), "book.sley")
			if there {
				filled(t, path).Close()
			}
			if err := os.MkdirAll(filepath.Join(path+end, "in the way"), 0o700); err != nil {
				t.Fatal(err)
			}
			_, err := reopen(t, path)
			if !record.Is(err, record.NoJournal) {
				t.Errorf("%s, a book there: %v: %v", end, there, err)
			}
		}
	}
}

func TestPlacesThatAreNone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for path, code := range map[string]string{
		filepath.Join(file, "book.sley"):      record.Unreadable,
		filepath.Join(file, "in", "b.sley"):   record.Unreadable,
		folder:                                record.NotABook,
		filepath.Join(folder, "\x00", "book"): record.Unreadable,
	} {
		if _, err := reopen(t, path); !record.Is(err, code) {
			t.Errorf("%q: %v", path, err)
		}
	}
	missing := filepath.Join(t.TempDir(), "missing", "book.sley")
	if _, err := Open(t.Context(), Asked{Path: missing, Now: at(noon)}); !record.Is(err, record.Missing) {
		t.Error(err)
	}
	if _, err := os.Stat(filepath.Dir(missing)); err == nil {
		t.Error("a folder was made for a book that was not to be")
	}
	for _, do := range []func() error{
		func() error { _, err := Peek(t.Context(), missing); return err },
		func() error { return Check(t.Context(), missing) },
	} {
		if err := do(); !record.Is(err, record.Missing) {
			t.Error(err)
		}
	}
}

func TestOddPlacesAreTaken(t *testing.T) {
	oneAtATime(t)
	for _, name := range []string{
		"a b", "a?b=c&mode=memory", "a#b", "100%41", "quo'te\"s", "näh 🧶", "semi;colon", "-dash", "file:x", "a\nb", strings.Repeat("n", 150),
	} {
		path := filepath.Join(t.TempDir(), name, name+".sley")
		b, err := reopen(t, path)
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		id := add(t, b, record.Draft, "name", "{}")
		copied := keep(t, b, noon)
		b.Close()
		if _, err := os.Stat(path); err != nil {
			t.Errorf("%q: the book is elsewhere: %v", name, err)
		}
		if err := Check(t.Context(), copied); err != nil || filepath.Dir(filepath.Dir(copied)) != filepath.Dir(path) {
			t.Errorf("%q: %s, %v", name, copied, err)
		}
		if b, err = reopen(t, path); err != nil {
			t.Errorf("%q: %v", name, err)
		} else if err := b.Read(t.Context(), func(r record.Reader) error { _, err := r.Document(id); return err }); err != nil {
			t.Error(err)
		}
	}
}

// An empty place in a working folder is named without a folder.
func TestABookInTheWorkingFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	b, err := reopen(t, "book.sley")
	if err != nil {
		t.Fatal(err)
	}
	keep(t, b, noon)
	if _, err := os.Stat("book-copies"); err != nil {
		t.Error(err)
	}
}

// A body that would not be opened again is not taken.
func TestABodyThatIsTooLargeIsRefused(t *testing.T) {
	oneAtATime(t)
	b := scratch(t)
	for n, want := range map[int]bool{mostBody: true, mostBody + 1: false} {
		body := make([]byte, n)
		err := b.Write(t.Context(), func(w record.Writer) error {
			d := record.Document{Kind: record.Draft, Mark: "mark-large", Card: record.Card{Name: "large"}}
			_, err := w.Add(d, record.Version{Act: record.Add, Body: body})
			return err
		})
		if (err == nil) != want {
			t.Errorf("%d bytes: %v", n, err)
		}
	}
	if err := b.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

// A disk that is full, as SQLite tells it: nothing that was answered is lost, and the book
// goes on once there is room.
func TestAFullBookGoesOn(t *testing.T) {
	oneAtATime(t)
	b := scratch(t)
	limit := func(db *sql.DB, pages string) { column(t, db, "PRAGMA max_page_count = "+pages) }
	limit(b.writer, "60")
	fillUp(t, b, func() { limit(b.writer, "4294967294") })
}
