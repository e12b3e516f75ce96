package structure

import (
	"fmt"
	"slices"
	"testing"

	"sley/internal/trade/weave"
)

// twillOf is the twill of n ends whose first pick has those bits, of the right hand.
func twillOf(word uint64, n int) *weave.Weave {
	w := weave.New(n, n)
	for i := range n {
		w.Row(i)[0] = turn(word, i, n)
	}
	return w
}

// TestTwillCounts names every twill on up to 12 shafts and counts those that differ,
// turned, mirrored or turned over. Twills of exact period n: own computation; with
// those of the periods that divide n they are OEIS A000011, which counts the cloth
// that is all one thread with them.
func TestTwillCounts(t *testing.T) {
	exact := []int{0, 1, 1, 1, 2, 3, 5, 8, 14, 21, 39, 62, 112}
	a000011 := []int{0, 1, 2, 2, 4, 4, 8, 9, 18, 23, 44, 63, 122}
	found := make([]int, len(exact))
	for n := 1; n < len(exact); n++ {
		seen := map[string]bool{}
		for word := range uint64(1) << n {
			w := twillOf(word, n)
			a := Of(w)
			if a.RepeatEnds < n {
				continue
			}
			if n < 3 {
				seen["all one thread, or plain"] = true
				continue
			}
			if a.Name.Kind != Twill || a.Name.Hand != RightHand {
				t.Fatalf("%+v, want a twill of the right hand\n%s", a.Name, w)
			}
			back := Of(w.Complement()).Name
			seen[fmt.Sprint(slices.MaxFunc([][]int{a.Name.Over, back.Over}, slices.Compare))] = true
		}
		found[n] = len(seen)
		sum := 0
		for d := 1; d <= n; d++ {
			if n%d == 0 {
				sum += found[d]
			}
		}
		if found[n] != exact[n] || sum != a000011[n] {
			t.Errorf("%d shafts: %d twills of that period, %d in all, want %d and %d", n, found[n], sum, exact[n], a000011[n])
		}
	}
}

// TestTwillFloats counts the twills of n shafts, all one thread left out, by their
// longest float, turned, mirrored or turned over: own computation.
func TestTwillFloats(t *testing.T) {
	for n, want := range map[int][]int{
		4: {1, 1, 1}, 5: {0, 1, 1, 1}, 6: {1, 2, 2, 1, 1}, 7: {0, 2, 2, 2, 1, 1}, 8: {1, 4, 5, 3, 2, 1, 1},
		9: {0, 4, 6, 5, 3, 2, 1, 1}, 10: {1, 7, 13, 9, 6, 3, 2, 1, 1}, 12: {1, 14, 35, 29, 19, 10, 6, 3, 2, 1, 1},
	} {
		longest := map[string]int{}
		for word := range uint64(1)<<n - 2 {
			w := twillOf(word+1, n)
			a := Of(w)
			back := Of(w.Complement()).Name
			key := fmt.Sprint(slices.MaxFunc([][]int{a.Name.Over, back.Over}, slices.Compare))
			both(func(way Way, face Face) { longest[key] = max(longest[key], a.Floats(way, face).Longest) })
		}
		got := make([]int, n-1)
		for _, long := range longest {
			got[long-1]++
		}
		if !slices.Equal(got, want) {
			t.Errorf("%d shafts: %v, want %v", n, got, want)
		}
	}
}

// TestSatinCounts: phi(n) - 2 moves make a satin of n ends, which is none on six; the
// others with no factor in common with n are twills. Own computation, to n = 40, and
// the same to 64.
func TestSatinCounts(t *testing.T) {
	for n := 4; n <= 64; n++ {
		phi, found := 0, 0
		for step := 1; step < n; step++ {
			if gcd(step, n) != 1 {
				continue
			}
			phi++
			w := weave.New(n, n)
			for i := range n {
				w.Set(i, i*step%n, true)
			}
			for face, w := range map[Balance]*weave.Weave{WeftFaced: w, WarpFaced: w.Complement()} {
				got := Of(w.Shift(n/2, 1)).Name
				want := Name{Kind: Satin, Face: face, Hand: RightHand, Size: n, Move: step}
				if 2*step > n {
					want.Hand, want.Move = LeftHand, n-step
				}
				if step == 1 || step == n-1 {
					want.Kind, want.Size, want.Move = Twill, 0, 0
					want.Over = []int{1, n - 1}
					if face == WarpFaced {
						want.Over = []int{n - 1, 1}
					}
				}
				if fmt.Sprint(got) != fmt.Sprint(want) {
					t.Fatalf("%d ends, move %d: %+v, want %+v", n, step, got, want)
				}
				if got.Kind == Satin && face == WarpFaced {
					found++
				}
			}
		}
		if found != phi-2 {
			t.Errorf("%d ends: %d satins, want %d", n, found, phi-2)
		}
	}
}

func gcd(a, b int) int {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}

// TestTorusCounts: lift sequences on four shafts threaded straight, up to where they
// begin and mirrored either way. Those in which no thread stays on one side are OEIS
// A359972; those that hang together are an own computation.
func TestTorusCounts(t *testing.T) {
	a359972, hang := []int{0, 0, 3, 30, 465}, []int{0, 0, 3, 30, 460}
	for picks := 1; picks < len(a359972); picks++ {
		if picks == 4 && testing.Short() {
			continue
		}
		mixed, hanging := map[string]bool{}, map[string]bool{}
		for bits := range uint64(1) << (4 * picks) {
			w := of(picks, 4, bits)
			if !isMixed(w) {
				continue
			}
			canon := w.Canon(weave.Moved).String()
			mixed[canon] = true
			if HangsTogether(w) {
				hanging[canon] = true
			}
		}
		if len(mixed) != a359972[picks] || len(hanging) != hang[picks] {
			t.Errorf("%d picks: %d without a constant thread, %d hang, want %d and %d", picks, len(mixed), len(hanging), a359972[picks], hang[picks])
		}
	}
}

// lifts makes the weave of lifts on n shafts threaded straight; bit 0 is shaft 1.
func lifts(n int, list ...uint64) *weave.Weave {
	w := weave.New(len(list), n)
	for i, up := range list {
		w.Row(i)[0] = up
	}
	return w
}

// sequences calls with every repeat of p of the 14 useful lifts on four shafts that
// is the first of those begun at another pick, and with how many those are.
func sequences(p int, each func(list []uint64, begun int)) {
	list := make([]uint64, p)
	all := 1
	for range p {
		all *= 14
	}
	for k := range all {
		for i := range list {
			list[i] = uint64(k%14) + 1
			k /= 14
		}
		first, begun := true, p
		for from := 1; from < p; from++ {
			switch slices.Compare(slices.Concat(list[from:], list[:from]), list) {
			case -1:
				first = false
			case 0:
				begun = min(begun, from)
			}
		}
		if first {
			each(list, begun)
		}
	}
}

// TestLiftSequences counts the repeats of p picks on four shafts that hang together,
// and up to the pick they begin with; and of five picks those whose floats are 3
// long at most. Own computation.
func TestLiftSequences(t *testing.T) {
	for p, want := range map[int][4]int{2: {14, 7, 14, 7}, 3: {906, 302, 906, 302}, 4: {22730, 5686, 22730, 5686}, 5: {415650, 83130, 86660, 17332}} {
		if p == 5 && testing.Short() {
			continue
		}
		var got [4]int
		sequences(p, func(list []uint64, begun int) {
			a := Of(lifts(4, list...))
			if !a.HangsTogether() {
				return
			}
			got[0], got[1] = got[0]+begun, got[1]+1
			longest := 0
			both(func(way Way, face Face) { longest = max(longest, a.Floats(way, face).Longest) })
			if longest <= 3 {
				got[2], got[3] = got[2]+begun, got[3]+1
			}
		})
		if got != want {
			t.Errorf("%d picks: %v, want %v", p, got, want)
		}
	}
}

// TestLiftSets counts the sets of useful lifts on four shafts whose cloth hangs
// together, by size; every set of eight or more does. Own computation.
func TestLiftSets(t *testing.T) {
	want := []int{0, 0, 7, 144, 727, 1828, 2947, 3424, 3003, 2002, 1001, 364, 91, 14, 1}
	got := make([]int, len(want))
	for set := 1; set < 1<<14; set++ {
		var list []uint64
		for k := range 14 {
			if set>>k&1 == 1 {
				list = append(list, uint64(k)+1)
			}
		}
		if HangsTogether(lifts(4, list...)) {
			got[len(list)]++
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestSixTreadles counts, of the 3003 ways to tie six of the 14 useful lifts, those
// that can weave each cloth with one foot, as the names tell what each repeat of two
// or four lifts is. Own computation.
func TestSixTreadles(t *testing.T) {
	if testing.Short() {
		t.Skip("forty thousand repeats")
	}
	cloths := map[string]func(n Name) bool{
		"plain":        func(n Name) bool { return n.Kind == Plain },
		"basket":       func(n Name) bool { return n.Kind == Basket && n.Regular() && n.EndGroups[0] == 2 },
		"2/2 twill":    func(n Name) bool { return n.Kind == Twill && slices.Equal(n.Over, []int{2, 2}) },
		"1/3 twill":    func(n Name) bool { return n.Kind == Twill && slices.Equal(n.Over, []int{1, 3}) },
		"3/1 twill":    func(n Name) bool { return n.Kind == Twill && slices.Equal(n.Over, []int{3, 1}) },
		"double cloth": func(n Name) bool { return n.Kind == DoubleCloth },
	}
	needs := map[string]map[uint64]bool{}
	for k := range 14 * 14 * 14 * 14 {
		list := []uint64{uint64(k%14) + 1, uint64(k/14%14) + 1, uint64(k/196%14) + 1, uint64(k/2744) + 1}
		used := uint64(0)
		for _, up := range list {
			used |= 1 << (up - 1)
		}
		name := Of(lifts(4, list...)).Name
		for cloth, is := range cloths {
			if needs[cloth] == nil {
				needs[cloth] = map[uint64]bool{}
			}
			if is(name) {
				needs[cloth][used] = true
			}
		}
	}
	// With one foot, with up to two, and with any number of treadles pressed at once.
	want := map[string][3]int{
		"plain": {495, 763, 763}, "basket": {945, 1380, 1380}, "2/2 twill": {45, 146, 146},
		"1/3 twill": {45, 45, 45}, "3/1 twill": {45, 1055, 1165}, "double cloth": {258, 1275, 1355},
	}
	for cloth, sets := range needs {
		for i, feet := range []int{1, 2, 6} {
			if got := tied(6, feet, sets); got != want[cloth][i] {
				t.Errorf("%s with %d treadles at once: %d ways, want %d", cloth, feet, got, want[cloth][i])
			}
		}
	}
	all := map[uint64]bool{1<<14 - 1: true}
	if one, two := tied(6, 1, all), tied(6, 2, all); one != 0 || two != 3 {
		t.Errorf("%d and %d ways give all fourteen lifts with one foot and with two, want 0 and 3", one, two)
	}
}

// tied counts the ways to tie so many lifts that hold one of those sets, so many
// treadles being pressed at once on a rising shed.
func tied(size, feet int, sets map[uint64]bool) int {
	n := 0
	for ties := range uint64(1) << 14 {
		if len(bitsOf(ties)) != size {
			continue
		}
		open := united(ties, feet)
		for set := range sets {
			if set&^open == 0 {
				n++
				break
			}
		}
	}
	return n
}

// united gives the useful lifts that up to feet treadles open together: bit k is the
// lift k + 1, whose bits are shafts.
func united(ties uint64, feet int) uint64 {
	single := bitsOf(ties)
	open := ties
	for range feet - 1 {
		for _, a := range bitsOf(open) {
			for _, b := range single {
				if up := (a + 1) | (b + 1); up < 15 {
					open |= 1 << (up - 1)
				}
			}
		}
	}
	return open
}

func bitsOf(set uint64) (out []int) {
	for k := range 64 {
		if set>>k&1 == 1 {
			out = append(out, k)
		}
	}
	return out
}
