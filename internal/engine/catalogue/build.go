package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/weave"
)

// Lists of shafts and treadles are counted from 0 in this package's rules and from 1
// in the drafts they make.

// drawn gives a draft of lists: the shaft of each end, the shafts of each treadle,
// the treadle of each pick.
func drawn(threading []int, ties []draft.Set, treadling []int) *draft.Draft {
	d := &draft.Draft{Treadles: len(ties), Shed: loom.Rising}
	for _, shaft := range threading {
		d.Threading = append(d.Threading, shaft+1)
		d.Shafts = max(d.Shafts, shaft+1)
	}
	for _, tied := range ties {
		d.Ties = append(d.Ties, draft.Tie{Tied: tied})
	}
	for _, treadle := range treadling {
		d.Treadling = append(d.Treadling, draft.Of(treadle+1))
	}
	return d
}

// lifted gives a draft of the shaft of each end and the shafts up at each pick, with a
// treadle for each lift that differs.
func lifted(threading []int, lifts []draft.Set) *draft.Draft {
	d := drawn(threading, nil, nil)
	d.Lifts = lifts
	d, _ = d.WithTreadles(loom.Rising)
	return d
}

// woven gives the draft with the fewest shafts and treadles for a weave.
func woven(w *weave.Weave) *draft.Draft {
	d, ok := draft.FromWeave(w)
	if !ok {
		panic("internal error: a rule that needs too many shafts")
	}
	d, _ = d.WithTreadles(loom.Rising)
	return d
}

// plot gives the weave with the warp on top where up says.
func plot(picks, ends int, up func(pick, end int) bool) *weave.Weave {
	w := weave.New(picks, ends)
	for i := range picks {
		for j := range ends {
			w.Set(i, j, up(i, j))
		}
	}
	return w
}

// straight gives 0 to n-1.
func straight(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// each gives every number so many times.
func each(list []int, times int) []int {
	var out []int
	for _, n := range list {
		out = append(out, slices.Repeat([]int{n}, times)...)
	}
	return out
}

// there gives a list and, without its first and last, the same backwards: a point.
func there(list []int) []int {
	out := slices.Clone(list)
	for i := len(list) - 2; i > 0; i-- {
		out = append(out, list[i])
	}
	return out
}

// moved gives a list with each number further on, round n.
func moved(list []int, by, n int) []int {
	out := make([]int, len(list))
	for i, k := range list {
		out[i] = mod(k+by, n)
	}
	return out
}

func mod(a, n int) int { return ((a % n) + n) % n }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func lcm(a, b int) int { return a / gcd(a, b) * b }

func odd(n int) bool { return mod(n, 2) == 1 }
