package structure

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/weave"
)

// both runs a check for both ways and both faces.
func both(check func(way Way, face Face)) {
	for _, way := range []Way{Warp, Weft} {
		for _, face := range []Face{Front, Back} {
			check(way, face)
		}
	}
}

// TestFloatsAreTheirSlowTwin: counts, places and threads without floats, as they are
// found crossing by crossing.
func TestFloatsAreTheirSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t)
		a := Of(w)
		both(func(way Way, face Face) {
			var counts []int
			var places []Place
			never := 0
			for thread := range a.Threads(way) {
				l := line(w, way, thread)
				if !slices.Contains(l, !face.up(way)) {
					never++
				}
				for _, f := range slowFloats(l, face.up(way), w.Bounded) {
					for len(counts) <= f.long {
						counts = append(counts, 0)
					}
					counts[f.long]++
					places = append(places, Place{thread, f.from, f.long})
				}
			}
			got := a.Floats(way, face)
			if !slices.Equal(got.Counts, counts) || got.Longest != max(len(counts)-1, 0) || got.Never != never || got.All() != len(places) {
				t.Fatalf("way %d, face %d: %+v, want counts %v, %d never\n%s", way, face, got, counts, never, w)
			}
			if all := slices.Collect(a.Places(way, face, 0)); !slices.Equal(all, places) {
				t.Fatalf("way %d, face %d: places %v, want %v\n%s", way, face, all, places, w)
			}
			places = slices.DeleteFunc(places, func(p Place) bool { return p.Long < got.Longest })
			if got.AtLeast(got.Longest) != len(places) || !slices.Equal(got.Places, places[:min(len(places), MostPlaces)]) {
				t.Fatalf("way %d, face %d: the longest at %v, want %v", way, face, got.Places, places)
			}
		})
	})
}

func TestInterlacingIsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t)
		a := Of(w)
		for _, way := range []Way{Warp, Weft} {
			var all []int
			sum := 0
			for thread := range a.Threads(way) {
				n := slowChanges(line(w, way, thread), w.Bounded)
				if got := a.InterlacingsOf(way, thread); got != n {
					t.Fatalf("way %d, thread %d: %d, want %d\n%s", way, thread, got, n, w)
				}
				all, sum = append(all, n), sum+n
			}
			got := a.Interlacing(way)
			if got.Least != slices.Min(all) || got.Most != slices.Max(all) || got.All != sum {
				t.Fatalf("way %d: %+v, want %v", way, got, all)
			}
		}
	})
}

// TestFacesAndWays: turned over, the faces change places; with warp and weft
// exchanged, the ways do; read backwards, nothing changes.
func TestFacesAndWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t)
		a := Of(w)
		back, turned, backwards := Of(w.Complement()), Of(w.Exchange()), Of(w.Half())
		both(func(way Way, face Face) {
			want := a.Floats(way, face).Counts
			for what, got := range map[string]*Floats{
				"turned over": back.Floats(way, face.Other()),
				"exchanged":   turned.Floats(way.Across(), face),
				"backwards":   backwards.Floats(way, face),
			} {
				if !slices.Equal(got.Counts, want) {
					t.Fatalf("%s, way %d, face %d: %v, want %v\n%s", what, way, face, got.Counts, want, w)
				}
			}
		})
		if a.WarpUps+back.WarpUps != a.Picks*a.Ends || turned.WarpUps != back.WarpUps || a.WarpUps != w.WarpUps() {
			t.Fatal("the crossings are not shared out between the faces")
		}
		if a.Shafts != turned.Lifts || a.Lifts != turned.Shafts || a.HangsTogether() != turned.HangsTogether() || a.HangsTogether() != back.HangsTogether() {
			t.Fatal("exchanging warp and weft changes the cloth")
		}
	})
}

// TestTilesAreTheRepeat: what a repeat is, it is however often it is written down.
func TestTilesAreTheRepeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawn(t)
		w.Bounded = false
		p, e := rapid.IntRange(1, 3).Draw(t, "p"), rapid.IntRange(1, 3).Draw(t, "e")
		a, b := Of(w), Of(w.Tile(p*w.Picks(), e*w.Ends()))
		if a.RepeatPicks != b.RepeatPicks || a.RepeatEnds != b.RepeatEnds || a.Shafts != b.Shafts || a.Lifts != b.Lifts ||
			a.HangsTogether() != b.HangsTogether() || len(a.Layers) != len(b.Layers) || b.WarpUps != p*e*a.WarpUps {
			t.Fatalf("%+v, tiled %+v", a, b)
		}
		repeat := w.Repeat()
		if a.RepeatPicks != repeat.Picks() || a.RepeatEnds != repeat.Ends() {
			t.Fatalf("repeat %d x %d, want %d x %d", a.RepeatPicks, a.RepeatEnds, repeat.Picks(), repeat.Ends())
		}
		both(func(way Way, face Face) {
			f, g := a.Floats(way, face), b.Floats(way, face)
			if f.Longest != g.Longest || g.All() != p*e*f.All() {
				t.Fatalf("way %d, face %d: %v, tiled %v\n%s", way, face, f.Counts, g.Counts, w)
			}
		})
	})
}

func TestFloatsOfKnownWeaves(t *testing.T) {
	for _, c := range []struct {
		name, weave              string
		bounded                  bool
		warp, weft, warpB, weft2 []int // counts of warp front and back, weft front and back
	}{
		{"plain", "#./.#", false, []int{0, 2}, []int{0, 2}, []int{0, 2}, []int{0, 2}},
		{"2/2 twill", "##../.##./..##/#..#", false, []int{0, 0, 4}, []int{0, 0, 4}, []int{0, 0, 4}, []int{0, 0, 4}},
		{"a cloth of it, with edges", "##../.##./..##/#..#", true, []int{0, 2, 3}, []int{0, 2, 3}, []int{0, 2, 3}, []int{0, 2, 3}},
		{"1/3 twill", "#.../.#../..#./...#", false, []int{0, 4}, []int{0, 0, 0, 4}, []int{0, 0, 0, 4}, []int{0, 4}},
	} {
		w := weave.Must(c.weave)
		w.Bounded = c.bounded
		a := Of(w)
		for what, pair := range map[string][2][]int{
			"warp on the front": {a.Floats(Warp, Front).Counts, c.warp},
			"weft on the front": {a.Floats(Weft, Front).Counts, c.weft},
			"warp on the back":  {a.Floats(Warp, Back).Counts, c.warpB},
			"weft on the back":  {a.Floats(Weft, Back).Counts, c.weft2},
		} {
			if !slices.Equal(pair[0], pair[1]) {
				t.Errorf("%s, %s: %v, want %v", c.name, what, pair[0], pair[1])
			}
		}
	}
}

// TestThreadsThatNeverInterlace have no float in a repeat, and one from edge to edge
// in a cloth.
func TestThreadsThatNeverInterlace(t *testing.T) {
	w := weave.Must("###/#.#/##.")
	a := Of(w)
	if f := a.Floats(Warp, Front); f.Never != 1 || !slices.Equal(f.Counts, []int{0, 0, 2}) {
		t.Errorf("warp: %+v", f)
	}
	if f := a.Floats(Weft, Back); f.Never != 1 || !slices.Equal(f.Counts, []int{0, 0, 2}) {
		t.Errorf("weft on the back: %+v", f)
	}
	w.Bounded = true
	if f := Of(w).Floats(Warp, Front); f.Never != 1 || f.Longest != 3 {
		t.Errorf("warp of a cloth: %+v", f)
	}
}

// TestBalance: up to a twentieth off the half counts as even.
func TestBalance(t *testing.T) {
	for ups, want := range map[int]Balance{44: WeftFaced, 45: Even, 50: Even, 55: Even, 56: WarpFaced} {
		if got := (&Analysis{Picks: 10, Ends: 10, WarpUps: ups}).Balance(); got != want {
			t.Errorf("%d of 100: %v, want %v", ups, got, want)
		}
	}
}

func TestOfNothing(t *testing.T) {
	for _, w := range []*weave.Weave{{}, weave.New(0, 70), weave.New(3, 0)} {
		a := Of(w)
		if a.HangsTogether() || a.Floats(Warp, Front).All() != 0 || a.Name.Kind != Unnamed || len(a.Findings()) > 0 {
			t.Errorf("of nothing: %+v", a)
		}
	}
}

// TestAnalysisKeepsNothing of the weave that the weaver goes on changing.
func TestAnalysisKeepsNothing(t *testing.T) {
	w := weave.Must("##../.##./..##/#..#")
	a := Of(w)
	want := slices.Collect(a.Places(Weft, Front, 2))
	w.Set(0, 0, false)
	if got := slices.Collect(a.Places(Weft, Front, 2)); !slices.Equal(got, want) {
		t.Errorf("places %v, want %v", got, want)
	}
}
