package app_test

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// told gives what a watcher has been told so far.
func told(watched <-chan app.Changed) []string {
	var out []string
	for {
		select {
		case c, open := <-watched:
			if !open {
				return append(out, "let go")
			}
			out = append(out, fmt.Sprintf("%s %d %d %s %s", c.Kind, c.ID, c.Version, c.Act, c.Window))
		default:
			return out
		}
	}
}

// Who watches is told of every change that was kept, in order, and of none that was not.
func TestWatch(t *testing.T) {
	s := openStudio(t)
	watched, stop := s.Watch()
	other, stopOther := s.Watch()
	warp := addWarp(t, s, towels)
	yarn := addYarn(t, s, "white")
	save(t, s, warp.ID, left, "note=a")
	save(t, s, warp.ID, left, "note=a") // nothing to change
	if saved, err := s.Save(t.Context(), edit(t, s, warp.ID, left, "pieces[9].count=1")); err != nil || !saved.Refused {
		t.Fatal(saved, err)
	}
	if saved, err := s.Save(t.Context(), app.Edit{ID: warp.ID, Base: 1, Window: right, Sets: sets(t, "note=b")}); err != nil || saved.Conflict == nil {
		t.Fatal(saved, err)
	}
	step{right, "remove", "", ""}.do(t, s, yarn.ID)
	start(t, s, warp.ID)
	if list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID, Window: right}, 20); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	for _, unit := range []string{"cm", "hands"} { // the second is refused
		if _, _, err := s.SetUnits(t.Context(), map[string]string{"length": unit}); err != nil {
			t.Fatal(err)
		}
	}
	want := []string{
		"warp 1 1 add left-window", "yarn 2 1 add left-window", "warp 1 2 edit left-window",
		"yarn 2 2 remove right-window", "warp 1 2 log left-window", "warp 1 2 progress right-window",
		" 0 0 units ",
	}
	if got := told(watched); !slices.Equal(got, want) {
		t.Errorf("told\n%q, want\n%q", got, want)
	}
	if got := told(other); !slices.Equal(got, want) {
		t.Errorf("the other was told\n%q", got)
	}
	stop()
	stop() // twice does no harm
	step{left, "bring back", "", ""}.do(t, s, yarn.ID)
	if got := told(watched); !slices.Equal(got, []string{"let go"}) {
		t.Errorf("stopped, and told %q", got)
	}
	stopOther()
}

// A watcher that does not keep up is let go, and the others are told on.
func TestWatchLetsTheSlowGo(t *testing.T) {
	s := openStudio(t)
	slow, stop := s.Watch()
	defer stop()
	quick, stopQuick := s.Watch()
	defer stopQuick()
	yarn := addYarn(t, s, "white")
	n := len(told(quick))
	for i := range 300 {
		stocked(t, s, app.Happened{Document: yarn.ID, What: record.Bought, Typed: fmt.Sprintf("%d g", i+1)})
		n += len(told(quick))
	}
	got := told(slow)
	if n != 301 || got[len(got)-1] != "let go" || len(got) > 257 {
		t.Errorf("the quick one was told %d times; the slow one %d times, at last %q", n, len(got), got[len(got)-1])
	}
}

// Many windows edit at once: each edit is kept or told as a conflict, and none is lost.
func TestManyAtOnce(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	var all sync.WaitGroup
	var mu sync.Mutex
	kept := 0
	for i := range 8 {
		all.Go(func() {
			for j := range 5 {
				saved, err := s.Save(t.Context(), app.Edit{
					ID: yarn.ID, Base: card(t, s, yarn.ID).Version, Window: fmt.Sprint("window", i),
					Sets: sets(t, fmt.Sprintf("note=%d of %d", j, i)),
				})
				mu.Lock()
				if err != nil {
					t.Error(err)
				} else if saved.Conflict == nil {
					kept++
				}
				mu.Unlock()
			}
		})
	}
	all.Wait()
	if now := card(t, s, yarn.ID).Version; now != kept+1 {
		t.Errorf("%d edits were kept, and the version is %d", kept, now)
	}
}
