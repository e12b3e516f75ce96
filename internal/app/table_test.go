package app_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/record"
)

// table opens a table that there must be.
func table(t tb, s *app.Studio, id record.ID, whole bool) *app.Table {
	t.Helper()
	got, list, err := s.Table(context.Background(), id, whole)
	if err != nil || got == nil {
		t.Fatal(err, codesOf(list))
	}
	return got
}

// drew makes acts that must succeed, and holds what is told of them to what stands.
func drew(t tb, s *app.Studio, id record.ID, whole bool, acts ...app.TableAct) app.Drew {
	t.Helper()
	was := table(t, s, id, whole)
	got, err := s.DrawOn(context.Background(), drawing(id, was.Version, whole, acts...))
	mustSaved(t, got.Saved, err)
	now := table(t, s, id, whole)
	if !now.Draft.Equal(got.Table.Draft) {
		t.Fatalf("the answer has\n%v, the book\n%v", got.Table.Draft, now.Draft)
	}
	if led := strokes.Apply(was.Draft, got.Splices); !slices.Equal(led.Threading, now.Draft.Threading) || !slices.Equal(led.Treadling, now.Draft.Treadling) ||
		!slices.Equal(led.Lifts, now.Draft.Lifts) || !slices.Equal(led.Warp.Colours, now.Draft.Warp.Colours) {
		t.Fatalf("the splices %v lead to\n%v, not to\n%v", got.Splices, led, now.Draft)
	}
	return got
}

func drawing(id record.ID, base int, whole bool, acts ...app.TableAct) app.Drawing {
	return app.Drawing{Edit: app.Edit{ID: id, Base: base, Window: left}, Whole: whole, Acts: acts}
}

func laid(part strokes.Part, at, remove int, values ...strokes.Value) app.TableAct {
	return app.TableAct{Act: strokes.Act{Do: strokes.Put, Part: part, At: at, Remove: remove, Put: values}}
}

// valueAt is what stands in a warp's plan.
func valueIn(t tb, s *app.Studio, id record.ID, path string) string {
	t.Helper()
	from, _, err := s.WarpSource(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	key := path[strings.LastIndex(path, ".")+1:]
	for line := range strings.Lines(string(from.Text)) {
		if name, value, ok := strings.Cut(line, "="); ok && strings.TrimSpace(name) == key {
			return strings.Trim(strings.TrimSpace(value), `"`)
		}
	}
	return ""
}

// A draft of the shelf is drawn on, undone, and what its text has besides stays.
func TestTableOfTheShelf(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(context.Background(), left, "ground", "twill", nil)
	mustSaved(t, saved, err)
	was := table(t, s, saved.ID, false)
	got := drew(t, s, saved.ID, false, laid(strokes.Threading, 1, 1, 4), laid(strokes.Ties, 0, 1, strokes.Value(draft.Of(1, 3))))
	if got.Table.Draft.Threading[1] != 4 || got.Table.Draft.Ties[0].Tied != draft.Of(1, 3) || got.Version != 2 {
		t.Errorf("version %d: %v", got.Version, got.Table.Draft)
	}
	step{left, "undo", "", ""}.do(t, s, saved.ID)
	if now := table(t, s, saved.ID, false); !now.Draft.Equal(was.Draft) {
		t.Errorf("undone:\n%v, want\n%v", now.Draft, was.Draft)
	}
	for _, act := range []app.TableAct{
		{Act: strokes.Act{Do: app.DeedChange}, Name: "ends-times", Value: "3"},
		{Act: strokes.Act{Do: app.DeedWeave}, Weave: "rosepath"},
		{Act: strokes.Act{Do: app.DeedBlocks}, Blocks: app.Blocked{System: "overshot", Threading: "A B C D"}},
		{Act: strokes.Act{Do: strokes.Cells, Cells: []strokes.Cell{{Pick: 0, End: 0}}, Up: false}},
	} {
		drew(t, s, saved.ID, false, act)
	}
}

// A plan says in its own shorthand what was drawn, and what fills goes on filling.
func TestTableOfAPlan(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, string(examples.GalleyTowels))
	at := table(t, s, warp.ID, false)
	if at.FillEnds != [2]int{0, 6} || at.FillPicks != [2]int{0, 6} || at.Draft.Ends() != 7 || at.Draft.Picks() != 7 || at.Shafts == 0 {
		t.Fatalf("fills %v and %v, %v", at.FillEnds, at.FillPicks, at.Draft)
	}
	for _, test := range []struct {
		act        app.TableAct
		path, want string
	}{
		{laid(strokes.Threading, 6, 1, 2), "warp.threading", "(1-4 3 2) x fill, 2"},
		{laid(strokes.Threading, 0, 0, 1, 2), "warp.threading", "(1 2 1-4 3 2) x fill, 2"},
		{laid(strokes.Threading, 8, 0, 3), "warp.threading", "(1 2 1-4 3 2 3) x fill, 2"},
		{laid(strokes.Threading, 10, 0, 1), "warp.threading", "(1 2 1-4 3 2 3) x fill, 2 1"},
		{laid(strokes.Threading, 0, 9), "warp.threading", "2 1"},
		{laid(strokes.Treadling, 0, 1, strokes.Value(draft.Of(1, 3))), "draft.treadling", "(1+3 2 3 4 3 2) x fill, 1"},
		{laid(strokes.Treadling, 0, 1, 1), "draft.treadling", "(1 2 3 4 3 2) x fill, 1"},
		{app.TableAct{Act: strokes.Act{Do: app.DeedChange}, Name: "for-feet"}, "draft.treadling", "(1 4 2 3 2 4) x fill, 1"},
		{app.TableAct{Act: strokes.Act{Do: app.DeedChange}, Name: "for-feet"}, "draft.treadling", "(1 4 2 3 2 4) x fill, 1"},
		{app.TableAct{Act: strokes.Act{Do: app.DeedChange}, Name: "lift-plan"}, "draft.lift-plan", "(1+2 2+3 3+4 1+4 3+4 2+3) x fill, 1+2"},
		{app.TableAct{Act: strokes.Act{Do: app.DeedChange}, Name: "treadles"}, "draft.treadling", "(1 2 3 4 3 2) x fill, 1"},
	} {
		drew(t, s, warp.ID, false, test.act)
		if got := valueIn(t, s, warp.ID, test.path); got != test.want {
			t.Errorf("%v: %s is %q, want %q", test.act, test.path, got, test.want)
		}
	}
}

// A whole warp has all its ends in the colours of their yarns.
func TestWholeTable(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, string(examples.GalleyTowels))
	at := table(t, s, warp.ID, true)
	if at.Draft.Ends() != 481 || len(at.Names) != 2 || at.Names[at.Draft.Warp.Colours[40]] != "blue" || !at.Bordered {
		t.Fatalf("%d ends, %v, %v", at.Draft.Ends(), at.Names, at.Draft.Warp.Colours[:60])
	}
	blue := strokes.Value(at.Draft.Warp.Colours[40])
	drew(t, s, warp.ID, true, laid(strokes.WarpColours, 0, 2, blue, blue))
	if got := valueIn(t, s, warp.ID, "warp.stripes"); !strings.HasPrefix(got, "blue 2, white 34, blue 12, ") {
		t.Errorf("stripes %q", got)
	}
	drew(t, s, warp.ID, true, laid(strokes.Threading, 0, 1, 4))
	if got := valueIn(t, s, warp.ID, "warp.threading"); got != "4, (2-4 3-1) x 80" {
		t.Errorf("threading %q", got)
	}
	before := card(t, s, warp.ID).Version
	got, err := s.DrawOn(context.Background(), drawing(warp.ID, before, true, laid(strokes.WeftColours, 0, 1, blue)))
	wantRefused(t, "picks with borders", s, warp.ID, before, got.Saved, err, "weft.order table.bordered")
}

// What a plan cannot say is refused, each with its act or its place, and nothing is written.
func TestTableRefuses(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, string(examples.GalleyTowels))
	ctx, base := context.Background(), card(t, s, warp.ID).Version
	for _, test := range []struct {
		acts []app.TableAct
		want []string
	}{
		{[]app.TableAct{laid(strokes.Threading, 0, 1, 0), laid(strokes.Treadling, 0, 1, 0)}, []string{"draft.treadling table.no-lift", "warp.threading table.no-heddle"}},
		{[]app.TableAct{laid("nothing", 0, 1, 0), {Act: strokes.Act{Do: "fly"}}}, []string{"acts[0].part stroke.part", "acts[1].do stroke.act"}},
		{[]app.TableAct{{Act: strokes.Act{Do: app.DeedChange}, Name: "upside-down"}}, []string{"acts[0] change.unknown"}},
	} {
		got, err := s.DrawOn(ctx, drawing(warp.ID, base, false, test.acts...))
		wantRefused(t, "what a plan cannot say", s, warp.ID, base, got.Saved, err, test.want...)
	}
	tried, err := s.TryDrawing(ctx, drawing(warp.ID, base, false, laid(strokes.Threading, 0, 1, 4)))
	if err != nil || tried.Table.Draft.Threading[0] != 4 || card(t, s, warp.ID).Version != base {
		t.Errorf("tried: %+v, %v", tried, err)
	}
	late, err := s.DrawOn(ctx, drawing(warp.ID, base-1, false, laid(strokes.Threading, 0, 1, 4)))
	if err != nil || late.Conflict == nil {
		t.Errorf("drawn upon an older version: %+v, %v", late, err)
	}
	start(t, s, warp.ID)
	base = card(t, s, warp.ID).Version
	got, err := s.DrawOn(ctx, drawing(warp.ID, base, false, laid(strokes.Threading, 0, 1, 4)))
	if err != nil || !got.Refused {
		t.Errorf("drawn after work began: %+v, %v", got, err)
	}
	if at := table(t, s, warp.ID, false); at.Fixed != app.FixedByStart {
		t.Errorf("fixed by %q", at.Fixed)
	}
}
