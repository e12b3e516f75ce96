package app_test

import (
	"context"
	"regexp"
	"slices"
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// tb is what helpers need of a test, a drawn one too.
type tb interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// Two windows, and the command line.
const (
	left  = "left-window"
	right = "right-window"
)

// towels is a plan that reckons; its note is what most tests change.
const towels = `sley = 1
name = "Towels"
warp.sett = "20 epi"

[[pieces]]
length = "60 in"
width = "10 in"

[yarns.white]
count = "8/2 Ne"
`

// threaded is a plan with a draft of its own, on a loom.
const threaded = towels + `
[loom]
name = "jack"
shafts = 4
treadles = 4
shed = "rising"
width = "36 in"

[draft]
tie-up = ["1 2", "2 3", "3 4", "1 4"]
treadling = "(1 2 3 4) x fill"
`

func withThreading(plan string) string {
	return strings.Replace(plan, "[[pieces]]", "warp.threading = \"(1 2 3 4) x fill\"\n\n[[pieces]]", 1)
}

// addWarp adds a plan as the left window.
func addWarp(t tb, s *app.Studio, plan string) app.Card {
	t.Helper()
	saved, err := s.AddWarp(context.Background(), left, app.Source{Name: "plan.toml", Text: []byte(plan)})
	if err != nil || saved.Refused {
		t.Fatal(err, codesOf(saved.Problems))
	}
	return card(t, s, saved.ID)
}

func addYarn(t tb, s *app.Studio, name string, pairs ...string) app.Card {
	t.Helper()
	saved, err := s.AddYarn(context.Background(), left, name, sets(t, pairs...))
	if err != nil || saved.Refused {
		t.Fatal(err, codesOf(saved.Problems))
	}
	return card(t, s, saved.ID)
}

func card(t tb, s *app.Studio, id record.ID) app.Card {
	t.Helper()
	return shown(t, s, id).Card
}

func shown(t tb, s *app.Studio, id record.ID) *app.Shown {
	t.Helper()
	out, err := s.Show(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// textOf is a document as text.
func textOf(t tb, s *app.Studio, id record.ID) string {
	t.Helper()
	return string(shown(t, s, id).Text)
}

// sets reads path=value pairs.
func sets(t tb, pairs ...string) []app.Set {
	t.Helper()
	var out []app.Set
	for _, pair := range pairs {
		set, ok := app.ReadSet(pair)
		if !ok {
			t.Fatalf("%q is no pair", pair)
		}
		out = append(out, set)
	}
	return out
}

// edit is an edit by a window of a document as it stands.
func edit(t tb, s *app.Studio, id record.ID, window string, pairs ...string) app.Edit {
	t.Helper()
	return app.Edit{ID: id, Base: card(t, s, id).Version, Window: window, Sets: sets(t, pairs...)}
}

// save makes an edit that is not refused.
func save(t tb, s *app.Studio, id record.ID, window string, pairs ...string) app.Saved {
	t.Helper()
	saved, err := s.Save(context.Background(), edit(t, s, id, window, pairs...))
	return mustSaved(t, saved, err)
}

func mustSaved(t tb, saved app.Saved, err error) app.Saved {
	t.Helper()
	if err != nil || saved.Refused || saved.Conflict != nil {
		t.Fatalf("not saved: %v %v %+v", err, codesOf(saved.Problems), saved.Conflict)
	}
	return saved
}

// wantCodes compares problems as "path code", in order.
func wantCodes(t tb, what string, list *problem.List, want ...string) {
	t.Helper()
	if got := codesOf(list); !slices.Equal(got, want) {
		t.Errorf("%s: problems %q, want %q", what, got, want)
	}
	for _, p := range list.All() {
		if left := unfilled.FindString(present.Problem(p)); left != "" {
			t.Errorf("%s: the words of %s name %s, which the problem does not have", what, p.Code, left)
		}
	}
}

// unfilled is a name in braces that nothing of the problem stood for.
var unfilled = regexp.MustCompile(`\{[a-z]+\}`)

// wantRefused is a change that was refused with those problems, and wrote nothing.
func wantRefused(t tb, what string, s *app.Studio, id record.ID, before int, saved app.Saved, err error, want ...string) {
	t.Helper()
	if err != nil || !saved.Refused {
		t.Fatalf("%s: refused %v, %v", what, saved.Refused, err)
	}
	wantCodes(t, what, saved.Problems, want...)
	if now := card(t, s, id).Version; now != before {
		t.Errorf("%s: refused, and yet version %d became %d", what, before, now)
	}
}

// start begins the work on a warp.
func start(t tb, s *app.Studio, id record.ID) {
	t.Helper()
	saved, err := s.Start(context.Background(), id, card(t, s, id).Version, left)
	mustSaved(t, saved, err)
}
