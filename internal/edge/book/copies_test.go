package book

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"sley/internal/trade/record"
)

func copyNames(path string, now time.Time) string {
	var out []string
	for _, copied := range Copies(path, now) {
		out = append(out, strings.TrimSuffix(filepath.Base(copied), ".sley"))
	}
	return strings.Join(out, " ")
}

// keep makes the daily copy of a day.
func keep(t *testing.T, b *Book, day time.Time) string {
	t.Helper()
	b.now = at(day)
	made, err := b.KeepToday(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return made
}

func TestTenDaysAreKept(t *testing.T) {
	b := scratch(t)
	for day := range 14 {
		now := noon.AddDate(0, 0, day)
		made := keep(t, b, now)
		if Check(t.Context(), made) != nil || keep(t, b, now.Add(time.Hour)) != "" {
			t.Errorf("day %d: %q", day, made)
		}
	}
	want := "day-on-2026-03-15"
	for day := 14; day > 5; day-- {
		want += fmt.Sprintf(" day-on-2026-03-%02d", day)
	}
	if got := copyNames(b.Path(), noon.AddDate(0, 0, 13)); got != want {
		t.Errorf("kept are %s", got)
	}
}

// A clock that was wrong keeps no copy from being made, and lets none go that is later.
func TestAClockThatWasWrongCostsNoCopy(t *testing.T) {
	b := scratch(t)
	for day := range 12 {
		keep(t, b, noon.AddDate(0, 0, day))
	}
	future := keep(t, b, noon.AddDate(10, 0, 0))
	before := hash(t, future)
	add(t, b, record.Yarn, "since", "{}")
	for day := 12; day < 14; day++ { // the clock is right again
		if made := keep(t, b, noon.AddDate(0, 0, day)); made == "" {
			t.Errorf("day %d: no copy", day)
		}
	}
	if hash(t, future) != before {
		t.Error("the later copy was written over")
	}
	now := noon.AddDate(0, 0, 13)
	got := strings.Fields(copyNames(b.Path(), now))
	if len(got) != 11 || got[0] != "day-on-2026-03-15" || got[10] != "day-on-2036-03-02" {
		t.Errorf("kept are %q", got)
	}
	if newest, _ := newestWhole(t.Context(), b.Path(), now); filepath.Base(newest) != "day-on-2026-03-15.sley" {
		t.Errorf("the newest is %s", newest)
	}
	keep(t, b, noon.AddDate(-1, 0, 0)) // and set back for good
	if got := copyNames(b.Path(), now); !strings.Contains(got, "2025-03-02") || !strings.Contains(got, "2036") {
		t.Errorf("kept are %s", got)
	}
}

// Events keep the order in which the book took them.
func TestAClockSetBackKeepsTheOrder(t *testing.T) {
	b := scratch(t)
	id := add(t, b, record.Warp, "warp", "{}")
	for i := range 5 {
		err := b.Write(t.Context(), func(w record.Writer) error {
			e := record.Event{ID: fmt.Sprintf("event-%03d", 9-i), Document: id, Topic: record.Log, What: record.Noted, At: noon.AddDate(0, 0, -i)}
			v := record.Version{Document: id, Number: i + 2, State: i + 2, Act: record.Edit, At: noon.AddDate(0, 0, -i), Body: []byte{byte(i)}}
			return joined(w.Happen(e), w.Append(v, record.Card{Name: "warp"}))
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	b.Read(t.Context(), func(r record.Reader) error {
		events, err := r.Events(id, record.Log)
		versions, failed := r.Versions(id, 0, 10)
		if err != nil || failed != nil || !slices.IsSortedFunc(events, func(a, b record.Event) int { return int(a.Seq - b.Seq) }) ||
			events[0].ID != "event-009" || versions[0].Number != 6 || !versions[0].At.Before(versions[1].At) {
			t.Error(err, failed, events, versions)
		}
		return nil
	})
}

func joined(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func TestACopyIsOverNothing(t *testing.T) {
	b := scratch(t)
	there := filepath.Join(t.TempDir(), "there")
	for name, test := range map[string]struct {
		path, code string
	}{
		"a file":                 {there, record.Exists},
		"the book":               {b.Path(), record.Exists},
		"a folder that is none":  {filepath.Join(there, "x.sley"), record.FolderFailed},
		"a part of one killed":   {filepath.Join(t.TempDir(), "killed"), ""},
		"a folder that is to be": {filepath.Join(t.TempDir(), "a", "b", "c'; --.sley"), ""},
	} {
		os.WriteFile(there, []byte("something"), 0o600)
		if name == "a part of one killed" {
			os.WriteFile(test.path+".part", []byte("half a copy"), 0o600)
			os.WriteFile(test.path+".part-journal", []byte("its journal"), 0o600)
		}
		err := b.Copy(t.Context(), test.path)
		if test.code == "" && (err != nil || Check(t.Context(), test.path) != nil) || test.code != "" && !record.Is(err, test.code) {
			t.Errorf("%s: %v", name, err)
		}
		if left, _ := filepath.Glob(test.path + ".part*"); len(left) > 0 {
			t.Errorf("%s: %q is left", name, left)
		}
	}
	if text, _ := os.ReadFile(there); string(text) != "something" {
		t.Errorf("what was there is now %q", text)
	}
}

func TestRestoringPutsTheCopyInPlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	b := filled(t, path)
	copied := keep(t, b, noon)
	before := textOf(t, copied)
	add(t, b, record.Yarn, "after the copy", "{}")
	copyFiles(t, path, path+"2") // with a journal, as a killed sley leaves it
	b.Close()
	path += "2"
	spoil(t, path, 3, []byte(strings.Repeat("spoilt! ", 512)))
	spoilt, journal := hash(t, path), hash(t, path+"-wal")
	aside, err := Restore(t.Context(), path, copied, noon)
	if err != nil {
		t.Fatal(err)
	}
	if hash(t, aside) != spoilt || hash(t, aside+"-wal") != journal {
		t.Error("what was moved aside is another")
	}
	if textOf(t, path) != before || textOf(t, copied) != before {
		t.Error("the book is not the copy")
	}
	again, err := Restore(t.Context(), path, copied, noon)
	if err != nil || again == aside || hash(t, aside) != spoilt {
		t.Errorf("%s was moved over, %v", again, err)
	}
	opened := open(t, path)
	if err := opened.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

func TestRestoringTakesWholeCopiesOnly(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	b := filled(t, path)
	copied := keep(t, b, noon)
	b.Close()
	before := hash(t, path)
	spoil(t, copied, 3, []byte(strings.Repeat("spoilt! ", 512)))
	for from, code := range map[string]string{copied: record.Damaged, copied + "?": record.Missing, lockPath(path): record.NotABook} {
		if aside, err := Restore(t.Context(), path, from, noon); !record.Is(err, code) || aside != "" {
			t.Errorf("%s: %v, aside %q", from, err, aside)
		}
	}
	if hash(t, path) != before {
		t.Error("the book was changed")
	}
	missing := filepath.Join(t.TempDir(), "folder", "book.sley")
	if aside, err := Restore(t.Context(), missing, path, noon); err != nil || aside != "" {
		t.Errorf("where there was none: %v, aside %q", err, aside)
	}
	if err := Check(t.Context(), missing); err != nil {
		t.Error(err)
	}
}
