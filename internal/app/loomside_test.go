package app_test

import (
	"flag"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/engine/loomside"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// onLoom is the book with the demo and the galley towels begun.
func onLoom(t testing.TB) (*app.Studio, record.ID) {
	t.Helper()
	s := inMemory()
	if err := s.FillDemo(ctxOf(), examples.Demo()); err != nil {
		t.Fatal(err)
	}
	card, _, err := s.Named(ctxOf(), record.Warp, "Galley towels")
	if err != nil || card == nil {
		t.Fatal(card, err)
	}
	saved, err := s.Start(ctxOf(), card.ID, card.Version, left)
	if err != nil || saved.Problems.Failed() {
		t.Fatal(saved.Problems.All(), err)
	}
	return s, card.ID
}

func atLoom(t testing.TB, s *app.Studio, id record.ID) *app.Loomside {
	t.Helper()
	l, err := s.Loomside(ctxOf(), id)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func stepAt(t testing.TB, l *app.Loomside, id string) app.LoomsideStep {
	t.Helper()
	for _, s := range l.Steps {
		if s.ID == id {
			return s
		}
	}
	t.Fatal("no step", id)
	return app.LoomsideStep{}
}

// reach says how far a step is, under an id of the event.
func reach(t testing.TB, s *app.Studio, id record.ID, event string, to app.Reach) int {
	t.Helper()
	place, list, err := s.Reached(ctxOf(), app.Happened{Document: id, Window: left, ID: event}, to)
	if err != nil || list.Failed() {
		t.Fatal(to, list.All(), err)
	}
	return place
}

// firstCode is the code of the first problem.
func firstCode(list []problem.Problem) string {
	if len(list) == 0 {
		return ""
	}
	return list[0].Code
}

func TestLoomsideKeepsThePlace(t *testing.T) {
	s, id := onLoom(t)
	reach(t, s, id, "event-001", app.Reach{Step: "threading", Place: 24})
	reach(t, s, id, "event-002", app.Reach{Step: "threading", Place: 48, From: 24})
	if at := reach(t, s, id, "event-001", app.Reach{Step: "threading", Place: 24}); at != 48 {
		t.Errorf("said again it stands at %d", at)
	}
	reach(t, s, id, "event-003", app.Reach{Step: app.StepWeaving, Place: 379, Set: true})
	l := atLoom(t, s, id)
	if stepAt(t, l, "threading").Done != 48 || l.Woven != 379 || l.Forecast.Left != 4542-379 || l.Stage != record.OnTheWay {
		t.Errorf("threading %d, woven %d, left %d, %s", stepAt(t, l, "threading").Done, l.Woven, l.Forecast.Left, l.Stage)
	}
}

// Dressing alone is no weaving: the start can be taken back, and the stage says so.
func TestDressingIsNotWeaving(t *testing.T) {
	s, id := onLoom(t)
	reach(t, s, id, "event-001", app.Reach{Step: "winding", Place: 56, Set: true})
	if l := atLoom(t, s, id); l.Stage != record.Begun || l.Woven != 0 {
		t.Errorf("stage %s, %d woven", l.Stage, l.Woven)
	}
}

func TestWhatIsWrongAtTheLoomIsSaid(t *testing.T) {
	s, id := onLoom(t)
	h := app.Happened{Document: id, Window: left}
	for want, do := range map[string]func() (string, error){
		"loomside.step": func() (string, error) {
			_, list, err := s.Reached(ctxOf(), h, app.Reach{Step: "knitting", Place: 1})
			return firstCode(list.All()), err
		},
		"loomside.place": func() (string, error) {
			_, list, err := s.Reached(ctxOf(), h, app.Reach{Step: "threading", Place: 482})
			return firstCode(list.All()), err
		},
		"loomside.way": func() (string, error) {
			list, err := s.Choose(ctxOf(), h, "way", "sideways")
			return firstCode(list.All()), err
		},
		"loomside.side": func() (string, error) {
			list, err := s.Choose(ctxOf(), h, "side.threading", "centre")
			return firstCode(list.All()), err
		},
		"loomside.choice": func() (string, error) {
			list, err := s.Choose(ctxOf(), h, "colour", "red")
			return firstCode(list.All()), err
		},
		"loomside.piece": func() (string, error) {
			list, err := s.Choose(ctxOf(), h, "ends.7", "here")
			return firstCode(list.All()), err
		},
		"loomside.not-there": func() (string, error) {
			list, err := s.Choose(ctxOf(), h, "ends.2", "here")
			return firstCode(list.All()), err
		},
		"loomside.nothing-woven": func() (string, error) {
			h.Typed = "3 in"
			list, err := s.Taped(ctxOf(), h, 0)
			return firstCode(list.All()), err
		},
		"loomside.yarn": func() (string, error) {
			h.Typed = "30 g"
			list, err := s.Weighed(ctxOf(), h, "gold", 0)
			return firstCode(list.All()), err
		},
	} {
		if got, err := do(); got != want || err != nil {
			t.Errorf("got %q, %v, want %s", got, err, want)
		}
	}
}

func TestWhatIsChosenAtTheLoom(t *testing.T) {
	s, id := onLoom(t)
	h := app.Happened{Document: id, Window: left}
	choose := func(what, value string) {
		t.Helper()
		if list, err := s.Choose(ctxOf(), h, what, value); err != nil || list.Failed() {
			t.Fatal(what, value, list.All(), err)
		}
	}
	choose("way", "front to back")
	choose("side.threading", "right")
	l := atLoom(t, s, id)
	if l.Way != loomside.FrontToBack || l.Steps[1].ID != "sleying" || stepAt(t, l, "threading").Parts[0].Shafts[0] != 1 {
		t.Errorf("%s, %s, %+v", l.Way, l.Steps[1].ID, stepAt(t, l, "threading").Parts[0])
	}
	reach(t, s, id, "event-001", app.Reach{Step: "threading", Place: 24})
	if list, _ := s.Choose(ctxOf(), h, "side.threading", "left"); firstCode(list.All()) != "loomside.under-way" {
		t.Errorf("the side of a step under way was changed: %v", list.All())
	}
	reach(t, s, id, "event-002", app.Reach{Step: app.StepWeaving, Place: 700, Set: true})
	choose("ends.1", "here")
	l = atLoom(t, s, id)
	if l.Weaving.Pieces[1].Before != 700 || l.Weaving.Total != 4542-57 || l.Forecast.Piece != 1 || l.Ended[1] == "" {
		t.Errorf("the second begins after %d of %d", l.Weaving.Pieces[1].Before, l.Weaving.Total)
	}
	list, err := s.Cancel(ctxOf(), left, l.Ended[1], "")
	if l = atLoom(t, s, id); err != nil || list.Failed() || l.Weaving.Total != 4542 {
		t.Errorf("taken back: %d picks, %v, %v", l.Weaving.Total, list.All(), err)
	}
}

// The next warp begins with the way chosen last.
func TestTheWayIsRemembered(t *testing.T) {
	s, id := onLoom(t)
	h := app.Happened{Document: id, Window: left}
	if list, err := s.Choose(ctxOf(), h, "way", "tying on"); err != nil || list.Failed() {
		t.Fatal(list.All(), err)
	}
	card, _, _ := s.Named(ctxOf(), record.Warp, "Berth blanket")
	if l := atLoom(t, s, card.ID); l.Way != loomside.TyingOn {
		t.Errorf("the other warp: %s", l.Way)
	}
}

// A tape read at half the piece, and a weighing, change what is foretold; an entry taken
// back changes it back.
func TestTapeAndScale(t *testing.T) {
	s, id := onLoom(t)
	reach(t, s, id, "event-001", app.Reach{Step: app.StepWeaving, Place: 400, Set: true})
	planned := atLoom(t, s, id).Forecast
	if list, err := s.Taped(ctxOf(), app.Happened{Document: id, Window: left, ID: "event-tape", Typed: "20 in"}, 0); err != nil || list.Failed() {
		t.Fatal(list.All(), err)
	}
	if list, err := s.Weighed(ctxOf(), app.Happened{Document: id, Window: left, Typed: "40 g"}, "white", 0); err != nil || list.Failed() {
		t.Fatal(list.All(), err)
	}
	l := atLoom(t, s, id)
	f := l.Forecast
	if f.Reads == nil || !planned.OnLoom.Less(*f.OnLoom) || f.Weft[0].Lasts == nil || !f.Weft[0].Weighed || len(l.Remedies) == 0 || len(l.Said) != 2 {
		t.Errorf("%+v, %+v", f, l.Remedies)
	}
	if _, err := s.Cancel(ctxOf(), left, "event-tape", ""); err != nil {
		t.Fatal(err)
	}
	if now := atLoom(t, s, id).Forecast; now.Reads != nil || !now.OnLoom.Equal(*planned.OnLoom) {
		t.Errorf("the reading that was taken back counts: %+v", now)
	}
}

// Two devices say their picks in any order, each again and again, with the connection lost
// in between: none is lost, none counted twice.
func TestTwoDevicesAtOnce(t *testing.T) {
	if f := flag.Lookup("rapid.checks"); testing.Short() && f.Value.String() == f.DefValue {
		flag.Set("rapid.checks", "15")
		defer flag.Set("rapid.checks", f.DefValue)
	}
	s, id := onLoom(t)
	rapid.Check(t, func(rt *rapid.T) {
		base := atLoom(t, s, id).Woven
		if base > 4000 {
			return
		}
		queues := [2][]app.Reach{}
		furthest := base
		for d := range queues {
			n := rapid.IntRange(0, 6).Draw(rt, "picks")
			for p := range n {
				queues[d] = append(queues[d], app.Reach{Step: app.StepWeaving, From: base + p, Place: base + p + 1})
			}
			furthest = max(furthest, base+n)
		}
		for at := [2]int{}; at[0] < len(queues[0]) || at[1] < len(queues[1]); {
			d := rapid.IntRange(0, 1).Draw(rt, "device")
			if at[d] == len(queues[d]) {
				d = 1 - d
			}
			event := fmt.Sprintf("device-%d-%d-%d", d, base, at[d])
			for range rapid.IntRange(1, 2).Draw(rt, "times") {
				reach(t, s, id, event, queues[d][at[d]])
			}
			at[d]++
		}
		if got := atLoom(t, s, id).Woven; got != furthest {
			rt.Fatalf("%d picks, want %d", got, furthest)
		}
	})
}

// Before work began the loom can be looked at, and nothing is said of it.
func TestNothingIsSaidBeforeTheStart(t *testing.T) {
	s := withDemo(t)
	card, _, _ := s.Named(ctxOf(), record.Warp, "Berth blanket")
	if l := atLoom(t, s, card.ID); l.Started || len(l.Steps) < 5 || l.Weaving == nil {
		t.Errorf("%d steps", len(l.Steps))
	}
	_, list, err := s.Reached(ctxOf(), app.Happened{Document: card.ID, Window: left}, app.Reach{Step: "winding", Place: 3})
	if err != nil || firstCode(list.All()) != "warp.not-started" {
		t.Errorf("%v, %v", list.All(), err)
	}
	if _, err := s.Loomside(ctxOf(), 9999); !record.Is(err, record.NotFound) {
		t.Error(err)
	}
}
