package loomside

import (
	"slices"
	"testing"

	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
)

func idsOf(steps []Step) []string {
	var out []string
	for _, s := range steps {
		out = append(out, s.ID)
	}
	return out
}

func TestStepsFollowTheWay(t *testing.T) {
	r := solved(t, p1)
	for way, want := range map[Way][]string{
		BackToFront: {Winding, Spreading, Beaming, Threading, Sleying, TyingFront, TyingUp, FirstInch},
		FrontToBack: {Winding, Sleying, Threading, Beaming, TyingFront, TyingUp, FirstInch},
		TyingOn:     {Winding, Knotting, Beaming, TyingFront, FirstInch},
	} {
		got := idsOf(Dressing(r, Asked{Way: way}))
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", way, got, want)
		}
	}
	sectional := solved(t, set(p1, "[winding]\n", "[winding]\nsection = \"2 in\"\n"))
	if got := idsOf(Dressing(sectional, Asked{}))[:3]; !slices.Equal(got, []string{Sections, Threading, Sleying}) {
		t.Errorf("on a sectional beam: %v", got)
	}
}

// The parts of a step follow one another without a gap, and their counts add up.
func TestPartsFollowOneAnother(t *testing.T) {
	for _, name := range []string{"galley-towels", "berth-blanket", "lace-curtain", "bookmark-class"} {
		for _, way := range Ways() {
			for _, s := range Dressing(demo(t, name), Asked{Way: way}) {
				at, sum := 0, 0
				for _, p := range s.Parts {
					sum += p.Ends
					if p.From != at || p.To <= p.From || p.Ends > 0 && p.Sum != sum {
						t.Errorf("%s, %s: %d to %d after %d, %d ends in all, counted %d", name, s.ID, p.From, p.To, at, p.Sum, sum)
					}
					at = p.To
				}
				if at != s.Total {
					t.Errorf("%s, %s: parts come to %d of %d", name, s.ID, at, s.Total)
				}
			}
		}
	}
}

// The groups of a threading read back are the threading, from either side; the heddles
// counted by the last are those that were reckoned.
func TestThreadingReadBack(t *testing.T) {
	for _, name := range []string{"galley-towels", "berth-blanket", "lace-curtain", "bookmark-class"} {
		r := demo(t, name)
		times, _ := r.Threadings()
		want := draft.ShaftsOf(r.Plan.Warp.Threading.Runs(times))
		for _, side := range Sides(Threading) {
			s := stepOf(t, Dressing(r, Asked{Sides: map[string]Side{Threading: side}}), Threading)
			var got []int
			for _, p := range s.Parts {
				got = append(got, p.Shafts...)
			}
			if side == Right {
				slices.Reverse(got)
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s from the %s: %d ends read back, want %d", name, side, len(got), len(want))
			}
			seeHeddles(t, r, s)
		}
	}
}

func seeHeddles(t *testing.T, r *reckon.Result, s Step) {
	t.Helper()
	for shaft, n := range s.Parts[len(s.Parts)-1].Taken {
		if r.Plan.Warp.DoubledEnds == 0 && n != count(r, "heddles["+itoa(shaft+1)+"]") {
			t.Errorf("shaft %d: %d heddles counted, %d reckoned", shaft+1, n, count(r, "heddles["+itoa(shaft+1)+"]"))
		}
	}
}

// P1, acceptance 3: heddles 85 / 168 / 168 / 84.
func TestHeddlesOfP1(t *testing.T) {
	s := stepOf(t, Dressing(solved(t, p1), Asked{}), Threading)
	if got := s.Parts[len(s.Parts)-1].Taken; !slices.Equal(got, []int{85, 168, 168, 84}) {
		t.Errorf("heddles %v", got)
	}
	if first := s.Parts[0]; !slices.Equal(first.Heddles, []int{4, 8, 8, 4}) || first.To != 24 {
		t.Errorf("the first group takes %v to end %d", first.Heddles, first.To)
	}
}

// A balancing end is no group of its own, at either side.
func TestNoGroupIsOfAFewEnds(t *testing.T) {
	for _, threading := range []string{"(1 2 3 4 3 2) x fill, 1", "1, (2 3 4 3 2 1) x fill", "1 2, (3 4 3 2 1 2) x fill, 3 2 1"} {
		r := solved(t, set(p1, "ends = 505\n", "", "(1 2 3 4 3 2) x fill, 1\"\nfloating", threading+"\"\nfloating"))
		for _, side := range Sides(Threading) {
			for _, p := range stepOf(t, Dressing(r, Asked{Sides: map[string]Side{Threading: side}}), Threading).Parts {
				if p.Ends < fewEnds || p.Ends > endsInGroup+2*fewEnds {
					t.Errorf("%s from the %s: a group of %d ends", threading, side, p.Ends)
				}
			}
		}
	}
}

func TestBoutsAreTheReckoned(t *testing.T) {
	r := demo(t, "galley-towels")
	s := stepOf(t, Dressing(r, Asked{}), Winding)
	if len(s.Parts) != count(r, "winding.bouts") {
		t.Fatalf("%d bouts, %d reckoned", len(s.Parts), count(r, "winding.bouts"))
	}
	ties := 0
	for i, p := range s.Parts {
		if p.Ends != count(r, "bouts["+itoa(i)+"].ends") {
			t.Errorf("bout %d has %d ends", i+1, p.Ends)
		}
		of := 0
		for _, y := range p.Yarns {
			of += y.Count
		}
		if of != p.Ends {
			t.Errorf("bout %d has %d ends by yarn of %d", i+1, of, p.Ends)
		}
		ties += p.Ties
	}
	if ties != count(r, "winding.ties") {
		t.Errorf("%d counting ties, %d reckoned", ties, count(r, "winding.ties"))
	}
}

// P1, acceptance 6: raddle 42 x 12 + 1; sections 10 x 48, part sections of 12 and 13.
func TestRaddleAndSectionsOfP1(t *testing.T) {
	spaces := func(side Side) []int {
		var out []int
		for _, p := range stepOf(t, Dressing(solved(t, p1), Asked{Sides: map[string]Side{Spreading: side}}), Spreading).Parts {
			out = append(out, p.Spaces...)
		}
		return out
	}
	want := append(slices.Repeat([]int{12}, 42), 1)
	if got := spaces(Left); !slices.Equal(got, want) {
		t.Errorf("from the left %v", got)
	}
	slices.Reverse(want)
	if got := spaces(Right); !slices.Equal(got, want) {
		t.Errorf("from the right %v", got)
	}
	centre := append(append(slices.Repeat([]int{12}, 21), 1), slices.Repeat([]int{12}, 21)...)
	if got := spaces(Centre); !slices.Equal(got, centre) {
		t.Errorf("from the centre %v", got)
	}
	sectional := solved(t, set(p1, "[winding]\n", "[winding]\nsection = \"2 in\"\n"))
	var got []int
	for _, p := range stepOf(t, Dressing(sectional, Asked{}), Sections).Parts {
		got = append(got, p.Ends)
	}
	if want := slices.Concat([]int{12}, slices.Repeat([]int{48}, 10), []int{13}); !slices.Equal(got, want) {
		t.Errorf("sections %v", got)
	}
}

// The lifts of the first inch read across are the threading: every end is where it should
// be, and any end on another shaft reads otherwise in one of them at least.
func TestFirstInchReadsTheThreading(t *testing.T) {
	r := demo(t, "galley-towels")
	times, _ := r.Threadings()
	threading := draft.ShaftsOf(r.Plan.Warp.Threading.Runs(times))
	s := stepOf(t, Dressing(r, Asked{}), FirstInch)
	if len(s.Parts) != 6 || s.Parts[2].Thing != "one-repeat" || s.Parts[5].Thing != "tie-tight" {
		t.Fatalf("%+v", s.Parts)
	}
	for _, wrong := range []int{-1, 0, 17, len(threading) - 1} {
		differs := false
		for _, p := range s.Parts[:2] {
			at := 0
			for _, run := range p.Reads {
				for range run.Times {
					for _, n := range run.Cycle {
						for range max(n, -n) {
							shaft := threading[at]
							if at == wrong {
								shaft = shaft%4 + 1
							}
							differs = differs || p.Up.Has(shaft) != (n > 0)
							at++
						}
					}
				}
			}
			if at != len(threading) {
				t.Fatalf("%d ends read of %d", at, len(threading))
			}
		}
		if differs != (wrong >= 0) {
			t.Errorf("with end %d wrong it reads otherwise: %v", wrong, differs)
		}
	}
}
