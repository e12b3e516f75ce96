package app_test

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// step is what one window does; the codes are those of a refusal.
type step struct {
	window, act, note, code string
}

func (p step) do(t tb, s *app.Studio, id record.ID) {
	t.Helper()
	ctx, base := context.Background(), card(t, s, id).Version
	var saved app.Saved
	var err error
	switch p.act {
	case "set":
		saved, err = s.Save(ctx, app.Edit{ID: id, Base: base, Window: p.window, Sets: sets(t, "note="+p.note)})
	case "undo":
		saved, err = s.Undo(ctx, id, base, p.window)
	case "redo":
		saved, err = s.Redo(ctx, id, base, p.window)
	case "remove":
		saved, err = s.Remove(ctx, id, base, p.window)
	case "bring back":
		saved, err = s.BringBack(ctx, id, base, p.window)
	}
	if p.code != "" {
		wantRefused(t, p.act, s, id, base, saved, err, " "+p.code)
		return
	}
	mustSaved(t, saved, err)
}

var undoTests = []struct {
	what    string
	steps   []step
	note    string
	removed bool
}{
	{"one edit undone", []step{{left, "set", "a", ""}, {left, "undo", "", ""}}, "", false},
	{"undone and redone", []step{{left, "set", "a", ""}, {left, "undo", "", ""}, {left, "redo", "", ""}}, "a", false},
	{"two undone, one redone", []step{
		{left, "set", "a", ""}, {left, "set", "b", ""}, {left, "undo", "", ""}, {left, "undo", "", ""}, {left, "redo", "", ""},
	}, "a", false},
	{"nothing is before the first", []step{{left, "undo", "", "undo.none"}}, "", false},
	{"nothing more to undo", []step{{left, "set", "a", ""}, {left, "undo", "", ""}, {left, "undo", "", "undo.none"}}, "", false},
	{"nothing to redo", []step{{left, "set", "a", ""}, {left, "redo", "", "redo.none"}}, "a", false},
	{"nothing more to redo", []step{
		{left, "set", "a", ""}, {left, "undo", "", ""}, {left, "redo", "", ""}, {left, "redo", "", "redo.none"},
	}, "a", false},
	{"an edit ends what can be redone", []step{
		{left, "set", "a", ""}, {left, "undo", "", ""}, {left, "set", "b", ""}, {left, "redo", "", "redo.none"},
	}, "b", false},
	{"what another window did stays", []step{
		{left, "set", "a", ""}, {right, "set", "b", ""}, {left, "undo", "", "undo.others"},
	}, "b", false},
	{"below another's undone edit one's own is undone", []step{
		{left, "set", "a", ""}, {right, "set", "b", ""}, {right, "undo", "", ""}, {left, "undo", "", ""},
	}, "", false},
	{"another's undo is not redone", []step{
		{left, "set", "a", ""}, {left, "undo", "", ""}, {right, "redo", "", "redo.none"},
	}, "", false},
	{"undo of undone and redone again", []step{
		{left, "set", "a", ""}, {left, "undo", "", ""}, {left, "redo", "", ""}, {left, "undo", "", ""},
	}, "", false},
	{"undo of remove", []step{{left, "set", "a", ""}, {left, "remove", "", ""}, {left, "undo", "", ""}}, "a", false},
	{"redo of remove", []step{{left, "remove", "", ""}, {left, "undo", "", ""}, {left, "redo", "", ""}}, "", true},
	{"undo of bringing back", []step{{left, "remove", "", ""}, {left, "bring back", "", ""}, {left, "undo", "", ""}}, "", true},
	{"another's remove is not undone", []step{{right, "remove", "", ""}, {left, "undo", "", "undo.others"}}, "", true},
}

func TestUndo(t *testing.T) {
	for _, test := range undoTests {
		t.Run(test.what, func(t *testing.T) {
			s := openStudio(t)
			yarn := addYarn(t, s, "white")
			for _, p := range test.steps {
				p.do(t, s, yarn.ID)
			}
			if now := shown(t, s, yarn.ID); noteOf(t, s, yarn.ID) != test.note || now.Removed != test.removed {
				t.Errorf("note %q, removed %v; want %q, %v", noteOf(t, s, yarn.ID), now.Removed, test.note, test.removed)
			}
		})
	}
}

// noteOf is the note of a document.
func noteOf(t tb, s *app.Studio, id record.ID) string {
	t.Helper()
	return shown(t, s, id).Note
}

// What a window did is undone also by a sley that was started anew.
func TestUndoAfterReopening(t *testing.T) {
	asked := app.BookAsked{Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), NewID: numbered(), Create: true}
	var id record.ID
	for i, do := range []func(*app.OpenBook){
		func(o *app.OpenBook) {
			id = addYarn(t, o.Studio, "white").ID
			save(t, o.Studio, id, left, "note=a")
			save(t, o.Studio, id, left, "note=b")
		},
		func(o *app.OpenBook) { step{left, "undo", "", ""}.do(t, o.Studio, id) },
		func(o *app.OpenBook) { step{left, "undo", "", ""}.do(t, o.Studio, id) },
		func(o *app.OpenBook) { step{left, "redo", "", ""}.do(t, o.Studio, id) },
	} {
		o, err := app.Open(t.Context(), asked)
		if err != nil {
			t.Fatal(err)
		}
		do(o)
		if got, want := noteOf(t, o.Studio, id), []string{"b", "a", "", "a"}[i]; got != want {
			t.Errorf("opened the %d. time: note %q, want %q", i+1, got, want)
		}
		if err := o.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// Whoever undoes on the ground of an older version is told, and nothing is undone: also
// where both versions say the same.
func TestActsOnAnOlderVersion(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	save(t, s, warp.ID, left, "note=a")
	save(t, s, warp.ID, left, "note=") // version 3 says what version 1 said
	for what, do := range map[string]func() (app.Saved, error){
		"undo":   func() (app.Saved, error) { return s.Undo(t.Context(), warp.ID, 1, left) },
		"redo":   func() (app.Saved, error) { return s.Redo(t.Context(), warp.ID, 1, left) },
		"remove": func() (app.Saved, error) { return s.Remove(t.Context(), warp.ID, 1, left) },
		"start":  func() (app.Saved, error) { return s.Start(t.Context(), warp.ID, 1, left) },
	} {
		saved, err := do()
		if err != nil || saved.Conflict == nil || saved.Conflict.Base != 1 || saved.Conflict.Head != 3 {
			t.Errorf("%s: %+v, %v", what, saved, err)
		}
		if now := shown(t, s, warp.ID); now.Version != 3 || now.Removed || now.Started {
			t.Errorf("%s was done all the same: %+v", what, now.Card)
		}
	}
}

// Removed by both, a document is removed, whatever version each saw.
func TestRemovedByBoth(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	step{right, "remove", "", ""}.do(t, s, yarn.ID)
	saved, err := s.Remove(t.Context(), yarn.ID, 1, left)
	mustSaved(t, saved, err)
	if now := card(t, s, yarn.ID); now.Version != 2 || !now.Removed {
		t.Errorf("version %d, removed %v", now.Version, now.Removed)
	}
}

// A warp on the loom is not taken from it by undo.
func TestUndoDoesNotRemoveFromTheLoom(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	step{left, "remove", "", ""}.do(t, s, warp.ID)
	step{left, "bring back", "", ""}.do(t, s, warp.ID)
	start(t, s, warp.ID)
	step{left, "undo", "", "warp.on-the-loom"}.do(t, s, warp.ID)
}

func TestReturn(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	save(t, s, warp.ID, left, "note=a")
	save(t, s, warp.ID, right, "warp.sett=22 epi")
	saved, err := s.Return(t.Context(), warp.ID, 3, left, 1)
	mustSaved(t, saved, err)
	if got, want := textOf(t, s, warp.ID), textOfVersion(t, s, warp.ID, 1); got != want || saved.Version != 4 {
		t.Errorf("version %d is\n%s\nand version 1\n%s", saved.Version, got, want)
	}
	step{left, "undo", "", ""}.do(t, s, warp.ID)
	if got, want := textOf(t, s, warp.ID), textOfVersion(t, s, warp.ID, 3); got != want {
		t.Errorf("undone it is\n%s\nand version 3\n%s", got, want)
	}
	if saved, err = s.Return(t.Context(), warp.ID, 2, left, 1); err != nil || saved.Conflict == nil {
		t.Errorf("on an older version: %+v, %v", saved, err)
	}
	if _, err = s.Return(t.Context(), warp.ID, 5, left, 99); !record.Is(err, record.NotFound) {
		t.Errorf("to a version that is not there: %v", err)
	}
	if saved, err = s.Return(t.Context(), warp.ID, 5, left, 5); err != nil || saved.Version != 5 {
		t.Errorf("to what stands: %+v, %v", saved, err)
	}
}

func textOfVersion(t tb, s *app.Studio, id record.ID, number int) string {
	t.Helper()
	text, err := s.VersionText(context.Background(), id, number)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestHistory(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	save(t, s, yarn.ID, left, "note=a")
	step{left, "undo", "", ""}.do(t, s, yarn.ID)
	step{right, "remove", "", ""}.do(t, s, yarn.ID)
	versions, err := s.History(t.Context(), yarn.ID, 0, 100)
	var got string
	for _, v := range versions {
		got += fmt.Sprintf("%d %s %s state %d removed %v; ", v.Number, v.Window, v.Act, v.State, v.Removed)
	}
	want := "4 right-window remove state 4 removed true; 3 left-window undo state 1 removed false; " +
		"2 left-window edit state 2 removed false; 1 left-window add state 1 removed false; "
	if err != nil || got != want {
		t.Errorf("got %s, %v; want %s", got, err, want)
	}
	if page, err := s.History(t.Context(), yarn.ID, 3, 1); err != nil || len(page) != 1 || page[0].Number != 2 {
		t.Errorf("one before version 3: %v, %v", page, err)
	}
	if _, err := s.History(t.Context(), 99, 0, 1); !record.Is(err, record.NotFound) {
		t.Errorf("of what is not there: %v", err)
	}
}

// twin is the slow and simple way: what was done lies on a pile, and what was undone
// beside it.
type twin struct {
	pile   []done
	undone []done
	whose  string // undone it
}

type done struct{ window, note string }

func (w *twin) note() string { return w.pile[len(w.pile)-1].note }

func (w *twin) do(p step) (code string) {
	top := w.pile[len(w.pile)-1]
	switch {
	case p.act == "set" && p.note != top.note:
		w.pile = append(w.pile, done{p.window, p.note})
		w.undone = nil
	case p.act == "undo" && len(w.pile) == 1:
		return "undo.none"
	case p.act == "undo" && top.window != p.window:
		return "undo.others"
	case p.act == "undo":
		if w.whose != p.window {
			w.undone = nil
		}
		w.pile, w.undone, w.whose = w.pile[:len(w.pile)-1], append(w.undone, top), p.window
	case p.act == "redo" && (w.whose != p.window || len(w.undone) == 0):
		return "redo.none"
	case p.act == "redo":
		last := len(w.undone) - 1
		w.pile, w.undone = append(w.pile, w.undone[last]), w.undone[:last]
	}
	return ""
}

// TestUndoAgreesWithItsTwin: any sequence of edits, undos and redos by two windows ends
// where the twin ends, step by step.
func TestUndoAgreesWithItsTwin(t *testing.T) {
	s := inMemory()
	rapid.Check(t, func(r *rapid.T) {
		yarn := addYarn(t, s, "white")
		w := &twin{pile: []done{{left, ""}}}
		for range rapid.IntRange(1, 25).Draw(r, "steps") {
			p := step{
				window: rapid.SampledFrom([]string{left, right}).Draw(r, "window"),
				act:    rapid.SampledFrom([]string{"set", "set", "undo", "undo", "redo", "redo"}).Draw(r, "act"),
				note:   rapid.SampledFrom([]string{"a", "b", "c", "d"}).Draw(r, "note"),
			}
			p.code = w.do(p)
			p.do(r, s, yarn.ID)
			if got := noteOf(r, s, yarn.ID); got != w.note() {
				r.Fatalf("%s by %s: note %q, the twin has %q", p.act, p.window, got, w.note())
			}
		}
	})
}
