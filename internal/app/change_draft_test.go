package app_test

import (
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

func TestAddWeave(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(t.Context(), left, " Three and one ", "twill", map[string]string{"over": "3/1"})
	mustSaved(t, saved, err)
	got := shown(t, s, saved.ID)
	if got.Name != "Three and one" || got.Kind != record.Draft || got.Facts.Weave != "twill" || got.Facts.Shafts != 4 || got.Facts.LongestFloat != 3 {
		t.Errorf("%+v", got.Card)
	}
	for what, test := range map[string]struct{ name, weave, over, want string }{
		"no name":                {" ", "twill", "2/2", "name name.missing"},
		"no weave":               {"x", "twil", "2/2", "entry catalogue.entry"},
		"a ratio, and no name":   {"", "twill", "2", "name name.missing;over catalogue.ratio"},
		"a parameter of another": {"x", "plain", "2/2", "over catalogue.parameter"},
	} {
		saved, err := s.AddWeave(t.Context(), left, test.name, test.weave, map[string]string{"over": test.over})
		var got []string
		for _, p := range saved.Problems.All() {
			got = append(got, p.Path+" "+p.Code)
		}
		if err != nil || !saved.Refused || strings.Join(got, ";") != test.want {
			t.Errorf("%s: %v, %q, want %q", what, err, got, test.want)
		}
	}
}

func TestRework(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(t.Context(), left, "Ribs", "warp-rib", nil)
	mustSaved(t, saved, err)
	before := shown(t, s, saved.ID)
	done, err := s.Rework(t.Context(), edit(t, s, saved.ID, left), []string{"turned", "ends-times=2"})
	mustSaved(t, done, err)
	after := shown(t, s, saved.ID)
	if done.Version != 2 || after.Facts.Ends != 2*before.Facts.Picks || after.Facts.Picks != before.Facts.Ends || after.Facts.Weave != "weft-rib" {
		t.Errorf("version %d: %+v of %+v", done.Version, after.Facts, before.Facts)
	}
	undone, err := s.Undo(t.Context(), saved.ID, 2, left)
	mustSaved(t, undone, err)
	if again := shown(t, s, saved.ID); string(again.Text) != string(before.Text) {
		t.Error("undone it is another draft")
	}
}

// Everything that cannot be made is said, and then nothing is.
func TestWhatIsNotReworked(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(t.Context(), left, "Twill", "twill", nil)
	mustSaved(t, saved, err)
	e := edit(t, s, saved.ID, left)
	done, err := s.Rework(t.Context(), e, []string{"turnd", "turned", "ends-times", "ends-times=many", "ends-times=9000"})
	wantRefused(t, "changes", s, saved.ID, 1, done, err,
		"changes[0] change.unknown", "changes[2] change.value", "changes[3] change.value", "changes[4] change.large")
	if near := done.Problems.All()[0].Args["near"]; near != "turned" {
		t.Errorf("near %v", near)
	}
	e.Base = 7
	if done, err := s.Rework(t.Context(), e, []string{"turned"}); err != nil || done.Conflict == nil {
		t.Errorf("on another version: %+v, %v", done, err)
	}
	yarn := addYarn(t, s, "white")
	if _, err := s.Rework(t.Context(), edit(t, s, yarn.ID, left), []string{"turned"}); !record.Is(err, record.NotFound) {
		t.Errorf("a yarn: %v", err)
	}
}

// The draft of a warp on the loom is that of its frozen plan.
func TestDraftedOfTheBook(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, withThreading(threaded))
	d, list, err := s.Drafted(t.Context(), warp.ID, false)
	if err != nil || d == nil || list.Failed() || d.Draft.Name != "Towels" || d.Draft.Shafts != 4 {
		t.Fatalf("%+v, %v, %v", d, err, list)
	}
	plain := addWarp(t, s, towels)
	if d, list, err := s.Drafted(t.Context(), plain.ID, false); err != nil || d != nil || !list.Failed() {
		t.Errorf("a warp without a draft: %+v, %v, %v", d, list, err)
	}
	yarn := addYarn(t, s, "white")
	if _, _, err := s.Drafted(t.Context(), yarn.ID, false); !record.Is(err, record.NotFound) {
		t.Errorf("a yarn: %v", err)
	}
}

func TestLookAtWeave(t *testing.T) {
	d, facts, list := app.LookAtWeave("twill", map[string]string{"over": "3/1"})
	if d == nil || list.Failed() || facts.Shafts != 4 || facts.LongestFloat() != 3 || facts.RepeatEnds != 4 || facts.Coloured || facts.Layers != 1 {
		t.Errorf("%+v %v", facts, list)
	}
	if d, _, list := app.LookAtWeave("twill", map[string]string{"over": "three"}); d != nil || !list.Failed() {
		t.Error("a ratio that is none gave a weave")
	}
	for _, w := range app.Weaves() {
		if w.Facts.Shafts < 2 || w.Facts.Ends < 2 || w.Source == "" {
			t.Errorf("%s: %+v", w.ID, w)
		}
	}
}
