package app_test

import (
	"context"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// Every kind, in either units, begins a plan of which only the yarn and the sett are
// lacking; with a yarn it reckons.
func TestEveryKindBeginsAWarp(t *testing.T) {
	s := inMemory()
	white := addYarn(t, s, "cotton, white", "count=8/2 Ne", "fibre=cotton")
	for _, units := range []string{app.MetricUnits, app.ImperialUnits} {
		for _, k := range app.Kinds(units == app.MetricUnits) {
			bare := begin(t, s, app.WarpAsked{Kind: k.ID, Units: units})
			wantCodes(t, k.ID+" without a yarn", bare.Problems, "warp.sett sett.none")
			whole := begin(t, s, app.WarpAsked{Kind: k.ID, Units: units, Yarn: white.ID})
			if whole.Problems.Failed() {
				t.Errorf("%s, %s: %q", k.ID, units, codesOf(whole.Problems))
			}
			text := textOf(t, s, whole.ID)
			if !strings.Contains(text, "length = \""+k.Size.Length.Usual.Typed+"\"") || !strings.Contains(text, "yarn = \"cotton-white\"") {
				t.Errorf("%s, %s:\n%s", k.ID, units, text)
			}
		}
	}
}

func begin(t *testing.T, s *app.Studio, a app.WarpAsked) app.Saved {
	t.Helper()
	a.Window = left
	saved, err := s.NewWarp(context.Background(), a)
	return mustSaved(t, saved, err)
}

// A warp takes copies from the shelf that say where they came from, is planned in the
// units of its loom, and in the weave of its draft.
func TestNewWarpTakesFromTheShelf(t *testing.T) {
	s := inMemory()
	white := addYarn(t, s, "linen", "count=16/2 lea", "fibre=linen", "colour=Sea Foam #88aacc", "note=for the curtains")
	saved, err := s.AddLoom(t.Context(), left, "jack", sets(t, "width=90 cm", "shafts=4", "treadles=6", "shed=rising", "winding.board=usual"))
	loom := mustSaved(t, saved, err)
	draft := addTwill(t, s)
	warp := begin(t, s, app.WarpAsked{Kind: "scarf", Name: "  For Anna ", Count: 2, Yarn: white.ID, Loom: loom.ID, Draft: draft})
	now := shown(t, s, warp.ID)
	for _, want := range []string{
		`name = "For Anna"`, `weave = "2/2 twill"`, "count = 2", `length = "180 cm"`, `yarn = "sea-foam"`, "[yarns.sea-foam]",
		`width = "90 cm"`, `board = "usual"`, "wif = ",
	} {
		if !strings.Contains(string(now.Text), want) {
			t.Errorf("%s is not in it:\n%s", want, now.Text)
		}
	}
	if len(now.Origins) != 3 || now.Origins[2].Part != "yarns.sea-foam" || now.Origins[2].Version != 1 {
		t.Errorf("origins %+v", now.Origins)
	}
	save(t, s, white.ID, left, "count=20/2 lea")
	where, err := s.WhereFrom(t.Context(), warp.ID)
	if err != nil || len(where) != 3 || !where[2].Newer {
		t.Errorf("the shelf's newer yarn is not seen: %+v, %v", where, err)
	}
}

func addTwill(t *testing.T, s *app.Studio) record.ID {
	t.Helper()
	saved, err := s.AddDraft(t.Context(), left, app.Source{Name: "twill.toml", Text: []byte(withThreading(threaded))})
	return mustSaved(t, saved, err).ID
}

// A warp without a name has its kind's, and then one that is free.
func TestNewWarpsAreToldApart(t *testing.T) {
	s := inMemory()
	for _, want := range []string{"tea towel", "tea towel 2", "tea towel 3"} {
		if got := card(t, s, begin(t, s, app.WarpAsked{Kind: "tea-towel"}).ID).Name; got != want {
			t.Errorf("it is called %q, want %q", got, want)
		}
	}
	if got := card(t, s, begin(t, s, app.WarpAsked{Kind: "scarf", Name: "tea towel"}).ID).Name; got != "tea towel" {
		t.Errorf("a name that was said became %q", got)
	}
}

// All that is wrong is said at once, and nothing is written.
func TestNewWarpRefuses(t *testing.T) {
	s := inMemory()
	saved, err := s.NewWarp(t.Context(), app.WarpAsked{Window: left, Kind: "scarff", Name: "a\x00b", Count: -1, Units: "ells"})
	if err != nil || !saved.Refused {
		t.Fatal(saved, err)
	}
	wantCodes(t, "all of it", saved.Problems, "count kind.count", "kind kind.unknown", "name name.control", "units kind.units")
	if near := saved.Problems.All()[1].Args["near"]; near != "scarf" {
		t.Errorf("scarff was near %v", near)
	}
	white := addYarn(t, s, "white", "count=8/2 Ne")
	for _, a := range []app.WarpAsked{{Kind: "scarf", Loom: white.ID}, {Kind: "scarf", Draft: 999}} {
		if _, err := s.NewWarp(t.Context(), a); !record.Is(err, record.NotFound) {
			t.Errorf("%+v: %v", a, err)
		}
	}
	if c, err := s.Counts(t.Context()); err != nil || c.Of[record.Warp] != 0 {
		t.Errorf("%d warps were written, %v", c.Of[record.Warp], err)
	}
}
