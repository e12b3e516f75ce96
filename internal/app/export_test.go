package app_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/edge/planfile"
	"sley/internal/trade/draft"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// exported gives what a book exports, by the names of files.
func exported(t tb, s *app.Studio) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	err := s.Export(context.Background(), func(name string, data []byte) error {
		if out[name] != nil {
			return fmt.Errorf("%s is written twice", name)
		}
		out[name] = &fstest.MapFile{Data: bytes.Clone(data)}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// imported takes a folder into a book, and everything is right with it.
func imported(t tb, s *app.Studio, folder fstest.MapFS) app.Imported {
	t.Helper()
	done, list, err := s.Import(context.Background(), left, folder)
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	return done
}

// wantSame compares folders byte by byte.
func wantSame(t tb, what string, got, want fstest.MapFS) {
	t.Helper()
	names := slices.Sorted(maps.Keys(want))
	if have := slices.Sorted(maps.Keys(got)); !slices.Equal(have, names) {
		t.Fatalf("%s: files\n%q, want\n%q", what, have, names)
	}
	for _, name := range names {
		if !bytes.Equal(got[name].Data, want[name].Data) {
			t.Errorf("%s: %s differs: %s", what, name, cmp.Diff(string(want[name].Data), string(got[name].Data)))
		}
	}
}

// withHistory is a book in which every act and every kind of entry was done.
func withHistory(t testing.TB) *app.Studio {
	s := withDemo(t)
	warp := addWarp(t, s, withThreading(threaded))
	save(t, s, warp.ID, left, "note=sås <&> \u2028 \"q\"", "pieces[0].length=6")
	save(t, s, warp.ID, right, "pieces[0].length=66 in")
	step{right, "undo", "", ""}.do(t, s, warp.ID)
	step{right, "redo", "", ""}.do(t, s, warp.ID)
	saved, err := s.Return(t.Context(), warp.ID, 5, left, 1)
	mustSaved(t, saved, err)
	step{left, "remove", "", ""}.do(t, s, warp.ID)
	step{left, "bring back", "", ""}.do(t, s, warp.ID)
	saved, err = s.Use(t.Context(), edit(t, s, warp.ID, left), "yarns.white", find(t, s, record.Yarn, "cottolin, white").ID)
	mustSaved(t, saved, err)
	save(t, s, find(t, s, record.Yarn, "cottolin, white").ID, left, "count=3400 yd/lb")
	saved, err = s.TakeNewer(t.Context(), edit(t, s, warp.ID, left), "yarns.white")
	mustSaved(t, saved, err)
	start(t, s, warp.ID)
	saved, err = s.Amend(t.Context(), edit(t, s, warp.ID, left, "ends=202"))
	mustSaved(t, saved, err)
	happen(t, s, warp.ID)
	step{left, "remove", "", ""}.do(t, s, addYarn(t, s, "white").ID)
	if err := s.Set(t.Context(), "units", "metric"); err != nil {
		t.Fatal(err)
	}
	if err := s.RememberPort(t.Context(), "7070"); err != nil {
		t.Fatal(err)
	}
	return s
}

// happen enters one of each kind of entry of a warp.
func happen(t testing.TB, s *app.Studio, id record.ID) {
	t.Helper()
	for _, what := range []string{record.Noted, record.Sat, record.Broken} {
		if _, list, err := s.Logged(t.Context(), app.Happened{Document: id, What: what, Note: "ä <b>"}, 45); err != nil || list.Failed() {
			t.Fatal(err, codesOf(list))
		}
	}
	cancel(t, s, events(t, s, id, record.Log)[1].ID)
	if list, err := s.Wove(t.Context(), app.Happened{Document: id}, 340); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	if _, list, err := s.Measured(t.Context(), app.Happened{Document: id, Typed: "58 1/2 in"}, "pieces[0].length", "on the loom"); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	stocked(t, s, app.Happened{Document: find(t, s, record.Yarn, "cottolin, white").ID, What: record.Used, Typed: "5 oz", Warp: id})
}

// A book that was imported exports the same bytes, and a second import changes nothing.
func TestExportAndImport(t *testing.T) {
	for what, made := range map[string]func(testing.TB) *app.Studio{"the demo": withDemo, "a book with history": withHistory} {
		t.Run(what, func(t *testing.T) {
			s := made(t)
			out := exported(t, s)
			wantSame(t, "exported twice", exported(t, s), out)
			other := openStudio(t)
			if done := imported(t, other, out); done.Added != documents(t, out) || done.Updated+done.Same != 0 {
				t.Errorf("imported: %+v", done)
			}
			wantSame(t, "imported and exported", exported(t, other), out)
			watched, stop := other.Watch()
			if done := imported(t, other, out); done.Added+done.Updated+done.Events+len(done.Edited) != 0 || done.Same != documents(t, out) {
				t.Errorf("imported twice: %+v", done)
			}
			stop()
			for change := range watched {
				t.Errorf("imported twice, the open windows are told of %+v", change)
			}
			wantSame(t, "imported twice", exported(t, other), out)
			wantSameCards(t, other, s)
		})
	}
}

// documents is how many documents a folder has.
func documents(t tb, folder fstest.MapFS) int {
	t.Helper()
	var index struct{ Documents []any }
	if err := json.Unmarshal(folder["book.json"].Data, &index); err != nil {
		t.Fatal(err)
	}
	return len(index.Documents)
}

// wantSameCards compares what lists show.
func wantSameCards(t *testing.T, got, want *app.Studio) {
	t.Helper()
	for _, kind := range record.Kinds() {
		for _, removed := range []bool{false, true} {
			q := record.Query{Kind: kind, Removed: removed, Most: 200}
			a, _, err := got.List(t.Context(), q)
			if err != nil {
				t.Fatal(err)
			}
			b, _, err := want.List(t.Context(), q)
			if err != nil || len(a) != len(b) {
				t.Fatal(len(a), len(b), err)
			}
			for i := range a {
				if a[i].Name != b[i].Name || a[i].Mark != b[i].Mark || cmp.Diff(a[i].Facts, b[i].Facts) != "" || a[i].Version != b[i].Version {
					t.Errorf("%s: %+v, want %+v", kind, a[i].Document, b[i].Document)
				}
			}
		}
	}
}

// The settings of a place stay where they are; the others are taken where there are none.
func TestSettingsOfAnImport(t *testing.T) {
	out := exported(t, withHistory(t))
	if strings.Contains(string(out["book.json"].Data), "7070") {
		t.Error("the port was exported")
	}
	s := openStudio(t)
	if err := s.Set(t.Context(), "units", "imperial"); err != nil {
		t.Fatal(err)
	}
	out["book.json"].Data = bytes.Replace(out["book.json"].Data, []byte(`"units"`), []byte(`"port": "1", "beside": "always", "beside-port": "2", "look": "large", "units"`), 1)
	imported(t, s, out)
	for name, want := range map[string]string{"units": "imperial", "look": "large", "port": "", "beside": "", "beside-port": ""} {
		if got, err := s.Setting(t.Context(), name); err != nil || got != want {
			t.Errorf("%s is %q, want %q: %v", name, got, want, err)
		}
	}
}

// A book that is behind gets what it has not; one that is ahead stays.
func TestImportOfLaterVersions(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	early := exported(t, s)
	other := openStudio(t)
	imported(t, other, early)
	save(t, s, warp.ID, left, "note=a")
	step{left, "undo", "", ""}.do(t, s, warp.ID)
	start(t, s, warp.ID)
	late := exported(t, s)
	if done := imported(t, other, late); done.Updated != 1 || done.Added != 0 || done.Events != 1 {
		t.Errorf("behind: %+v", done)
	}
	wantSame(t, "behind, and brought up", exported(t, other), late)
	if done := imported(t, other, early); done.Same != 1 || done.Updated+done.Added+done.Events != 0 {
		t.Errorf("ahead: %+v", done)
	}
	wantSame(t, "ahead", exported(t, other), late)
}

// What went two ways is refused, and nothing is written.
func TestImportOfTwoWays(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	out := exported(t, s)
	other := openStudio(t)
	imported(t, other, out)
	save(t, s, warp.ID, left, "note=a")
	mine := find(t, other, record.Warp, "Towels")
	save(t, other, mine.ID, right, "note=b")
	addYarn(t, s, "white")
	before := exported(t, other)
	_, list, err := other.Import(t.Context(), left, exported(t, s))
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "two ways", list, "warps/towels.toml import.two-ways")
	wantSame(t, "after two ways", exported(t, other), before)
}

// edited gives a folder with something else in one of its files.
func edited(folder fstest.MapFS, file, old, with string) fstest.MapFS {
	out := maps.Clone(folder)
	out[file] = &fstest.MapFile{Data: []byte(strings.Replace(string(folder[file].Data), old, with, 1))}
	return out
}

var editedTests = []struct{ file, old, with, kind, name, holds string }{
	{"warps/towels.toml", "20 epi", "22 epi", "warp", "Towels", `sett = "22 epi"`},
	{"warps/towels.toml", `name = "Towels"`, `name = "Napkins"`, "warp", "Napkins", "Napkins"},
	{"yarns/white.json", "8/2 Ne", "10/2 Ne", "yarn", "white", `count = "10/2 Ne"`},
	{"drafts/rosepath.wif", "1=1\r\n", "1=2\r\n", "draft", "Rosepath", "1=2"},
}

// A readable file that was edited becomes a newer version; taken in again it changes
// nothing, also when the document went on meanwhile.
func TestImportOfEditedFiles(t *testing.T) {
	s := openStudio(t)
	addWarp(t, s, towels)
	addYarn(t, s, "white", "count=8/2 Ne")
	addRosepath(t, s)
	out := exported(t, s)
	for _, test := range editedTests {
		t.Run(test.file+" "+test.with, func(t *testing.T) {
			other := openStudio(t)
			imported(t, other, out)
			folder := edited(out, test.file, test.old, test.with)
			if done := imported(t, other, folder); !slices.Equal(done.Edited, []string{test.file}) || done.Same != 3 {
				t.Fatalf("imported %+v", done)
			}
			doc := find(t, other, record.Kind(test.kind), test.name)
			if doc.Version != 2 {
				t.Errorf("version %d", doc.Version)
			}
			mustHold(t, textOf(t, other, doc.ID), test.holds)
			if done := imported(t, other, folder); len(done.Edited) > 0 {
				t.Errorf("taken twice: %+v", done)
			}
			save(t, other, doc.ID, right, "note=later")
			before := exported(t, other)
			if done := imported(t, other, folder); len(done.Edited) > 0 {
				t.Errorf("taken over a later edit: %+v", done)
			}
			wantSame(t, "taken again", exported(t, other), before)
		})
	}
}

func addRosepath(t *testing.T, s *app.Studio) record.ID {
	t.Helper()
	d, list := app.MakeWeave("rosepath", nil)
	if d == nil {
		t.Fatal(codesOf(list))
	}
	saved, err := s.AddDraft(t.Context(), left, app.Source{Name: "Rosepath.wif", Text: app.WriteDraft(d)})
	mustSaved(t, saved, err)
	return saved.ID
}

// A file that was edited while the book went on is refused: neither edit may be lost.
func TestEditedFileOfABookThatWentOn(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	out := exported(t, s)
	save(t, s, warp.ID, left, "note=mine")
	before := exported(t, s)
	_, list, err := s.Import(t.Context(), left, edited(out, "warps/towels.toml", "20 epi", "22 epi"))
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "two ways", list, "warps/towels.toml import.two-ways")
	wantSame(t, "after two ways", exported(t, s), before)
}

// A plan that was frozen is not edited in a folder either.
func TestEditedFileOfAWarpOnTheLoom(t *testing.T) {
	s := openStudio(t)
	start(t, s, addWarp(t, s, towels).ID)
	out := exported(t, s)
	other := openStudio(t)
	imported(t, other, out)
	_, list, err := other.Import(t.Context(), left, edited(out, "warps/towels.toml", "20 epi", "22 epi"))
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "edited", list, "warp.sett warp.frozen")
	wantSame(t, "after that", exported(t, other), out)
}

// A plan file that goes through a book, a folder and another book is the same plan.
func TestPlanFilesThroughTheBook(t *testing.T) {
	for _, from := range examples.Demo().Warps {
		s, other := openStudio(t), openStudio(t)
		saved, err := s.AddWarp(t.Context(), left, from)
		mustSaved(t, saved, err)
		imported(t, other, exported(t, s))
		got, _, err := other.WarpSource(t.Context(), 1)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(planOf(t, from), planOf(t, got), cmp.Exporter(func(reflect.Type) bool { return true }), cmp.Comparer(sameDraft)); diff != "" {
			t.Errorf("%s: %s", from.Name, diff)
		}
	}
}

// Names that files cannot have, and names that are alike, have files of their own.
func TestNamesOfFiles(t *testing.T) {
	s := openStudio(t)
	names := []string{"white", "White", "white-2", "white 2", "../../etc", "CON", "nul", "grå ull", "…", strings.Repeat("lang ", 39)}
	for _, name := range names {
		addYarn(t, s, name)
	}
	out := exported(t, s)
	for name := range out {
		base := strings.TrimSuffix(name[strings.LastIndex(name, "/")+1:], ".json")
		if strings.Contains(name, "..") || base == "con" || base == "nul" || len(name) > 90 {
			t.Errorf("a file is called %q", name)
		}
	}
	other := openStudio(t)
	if done := imported(t, other, out); done.Added != len(names) {
		t.Errorf("imported %+v", done)
	}
	wantSame(t, "imported and exported", exported(t, other), out)
}

// Whatever is done, a book goes through a folder without losing anything.
func TestAnyBookThroughAFolder(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s, other := inMemory(), inMemory()
		yarn := addYarn(r, s, "white")
		for range rapid.IntRange(1, 12).Draw(r, "steps") {
			note := rapid.StringMatching(`[ -~äß☃]{1,30}`).Draw(r, "note")
			said, _ := json.Marshal(note)
			e := app.Edit{ID: yarn.ID, Base: card(r, s, yarn.ID).Version, Window: left, Sets: []app.Set{{Path: "note", Value: said}}}
			var err error
			switch rapid.IntRange(0, 4).Draw(r, "act") {
			case 0:
				_, err = s.Undo(context.Background(), e.ID, e.Base, left)
			case 1:
				_, err = s.Redo(context.Background(), e.ID, e.Base, left)
			default:
				_, err = s.Save(context.Background(), e)
			}
			if err != nil {
				r.Fatal(err)
			}
		}
		out := exported(r, s)
		imported(r, other, out)
		wantSame(r, "imported and exported", exported(r, other), out)
	})
}

// sameDraft compares drafts that may be none.
func sameDraft(a, b *draft.Draft) bool { return a == b || a != nil && b != nil && a.Equal(b) }

func planOf(t *testing.T, from app.Source) *warp.Plan {
	t.Helper()
	plan, _, list := planfile.Decode(from.Name, from.Text)
	if list.Failed() {
		t.Fatal(codesOf(list))
	}
	return plan
}
