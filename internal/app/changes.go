package app

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/order"
)

// Change is a change of a draft by name, with what it takes after an equals sign.
type Change struct {
	Name, Takes string
	make        func(d *draft.Draft, value string) (*draft.Draft, error)
}

// The ways a change can fail.
var (
	errValue = fmt.Errorf("what stands after = is not what it takes")
	errLarge = fmt.Errorf("it would take more shafts, treadles or threads than there can be")
	errTied  = fmt.Errorf("a shaft has no treadle of its number")
)

// always is a change that can be made of every draft.
func always(change func(*draft.Draft) *draft.Draft) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, _ string) (*draft.Draft, error) { return change(d), nil }
}

// mayFail is one that some drafts are too large for, or have not the treadles.
func mayFail(why error, change func(*draft.Draft) (*draft.Draft, bool)) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, _ string) (*draft.Draft, error) {
		if c, ok := change(d); ok {
			return c, nil
		}
		return nil, why
	}
}

// changes are what can be made of a draft, in the order they are listed.
var changes = []Change{
	{"turned", "", mayFail(errLarge, (*draft.Draft).Turned)},
	{"other-face", "", always((*draft.Draft).OtherFace)},
	{"lift-plan", "", always((*draft.Draft).WithoutTreadles)},
	{"treadles", "", mayFail(errLarge, func(d *draft.Draft) (*draft.Draft, bool) { return d.WithTreadles(d.Shed) })},
	{"fewest", "", always((*draft.Draft).Fewest)},
	{"used", "", always((*draft.Draft).DropUnused)},
	{"as-drawn-in", "", mayFail(errTied, (*draft.Draft).AsDrawnIn)},
	{"ends-mirrored", "", always((*draft.Draft).MirrorEnds)},
	{"picks-mirrored", "", always((*draft.Draft).MirrorPicks)},
	{"ends-reversed", "", always((*draft.Draft).ReverseEnds)},
	{"picks-reversed", "", always((*draft.Draft).ReversePicks)},
	{"ends-times", "3", repeated((*draft.Draft).Ends, (*draft.Draft).RepeatEnds)},
	{"picks-times", "3", repeated((*draft.Draft).Picks, (*draft.Draft).RepeatPicks)},
	{"ends-advanced", "3 by 1", advanced((*draft.Draft).Ends, (*draft.Draft).AdvanceEnds)},
	{"picks-advanced", "3 by 1", advanced((*draft.Draft).Picks, (*draft.Draft).AdvancePicks)},
	{"shafts-shifted", "1", shifted},
	{"ends-deleted", "5-8", deleted((*draft.Draft).DeleteEnds)},
	{"picks-deleted", "2-3", deleted((*draft.Draft).DeletePicks)},
	{"ends-inserted", "5: 1 2 3", insertedEnds},
	{"picks-inserted", "3: 1 2+4", insertedPicks},
	{"shafts-renumbered", "2 1 4 3", renumbered(true)},
	{"treadles-renumbered", "3 1 2", renumbered(false)},
	{forFeetName, "", forFeet},
	{"rising", "", onLoom(loom.Rising)},
	{"sinking", "", onLoom(loom.Sinking)},
	{"counterbalance", "", onLoom(loom.Counterbalance)},
	{"countermarch", "", onLoom(loom.Countermarch)},
	{"table", "", always(onTable)},
}

// onLoom ties a draft anew; where picks press several treadles and would then open
// another shed, each lift has a treadle of its own.
func onLoom(shed loom.Shed) func(*draft.Draft, string) (*draft.Draft, error) {
	return mayFail(errLarge, func(d *draft.Draft) (*draft.Draft, bool) {
		if c, same := d.OnLoom(shed); same {
			return c, true
		}
		return d.WithTreadles(shed)
	})
}

func onTable(d *draft.Draft) *draft.Draft {
	c := d.WithoutTreadles()
	c.Shed = loom.Table
	return c
}

// mostMade is how many ends or picks a change may make.
const mostMade = 20_000

// times reads how often, so that no more threads are made than may be.
func times(text string, threads int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	switch {
	case err != nil || n < 1:
		return 0, errValue
	case threads*min(n, mostMade+1) > mostMade:
		return 0, errLarge
	}
	return n, nil
}

func repeated(threads func(*draft.Draft) int, repeat func(*draft.Draft, int) *draft.Draft) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, value string) (*draft.Draft, error) {
		n, err := times(value, threads(d))
		if err != nil {
			return nil, err
		}
		return repeat(d, n), nil
	}
}

func advanced(threads func(*draft.Draft) int, advance func(*draft.Draft, int, int) *draft.Draft) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, value string) (*draft.Draft, error) {
		first, second, _ := strings.Cut(value, "by")
		n, err := times(first, threads(d))
		by, bad := strconv.Atoi(strings.TrimSpace(second))
		if err != nil || bad != nil {
			return nil, firstOf(err, errValue)
		}
		return advance(d, n, by), nil
	}
}

func firstOf(a, b error) error {
	if a != nil {
		return a
	}
	return b
}

func shifted(d *draft.Draft, value string) (*draft.Draft, error) {
	by, err := strconv.Atoi(strings.TrimSpace(value))
	if err != nil {
		return nil, errValue
	}
	return d.ShiftShafts(by), nil
}

// deleted takes a thread, or threads from one to another, counted from 1.
func deleted(remove func(d *draft.Draft, at, n int) *draft.Draft) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, value string) (*draft.Draft, error) {
		first, last, several := strings.Cut(value, "-")
		from, err := strconv.Atoi(strings.TrimSpace(first))
		to, bad := from, error(nil)
		if several {
			to, bad = strconv.Atoi(strings.TrimSpace(last))
		}
		if err != nil || bad != nil || from < 1 || to < from || to > mostMade {
			return nil, errValue
		}
		return remove(d, from-1, to-from+1), nil
	}
}

// inserted reads before which thread, counted from 1, and what.
func inserted(value string, kind order.Kind) (at int, o order.Order, err error) {
	first, text, _ := strings.Cut(value, ":")
	at, err = strconv.Atoi(strings.TrimSpace(first))
	o, faults := order.Parse(text, order.Context{Kind: kind})
	if err != nil || len(faults) > 0 || at < 1 || o.Filler() > 0 || o.Total(0) > mostMade {
		return 0, o, errValue
	}
	return at - 1, o, nil
}

func insertedEnds(d *draft.Draft, value string) (*draft.Draft, error) {
	at, o, err := inserted(value, order.Shafts)
	if err != nil || o.MaxShaft() > d.Shafts {
		return nil, errValue
	}
	return d.InsertEnds(at, draft.ShaftsOf(o.Runs(0))...), nil
}

func insertedPicks(d *draft.Draft, value string) (*draft.Draft, error) {
	at, o, err := inserted(value, order.Treadles)
	most := d.Shafts
	if d.Treadled() {
		most = d.Treadles
	}
	if err != nil || o.MaxTreadle() > most {
		return nil, errValue
	}
	return d.InsertPicks(at, draft.SetsOf(o.Runs(0))...), nil
}

// renumbered takes the new numbers of shafts, or of treadles, in order; each from 1 on
// stands once.
func renumbered(shafts bool) func(*draft.Draft, string) (*draft.Draft, error) {
	return func(d *draft.Draft, value string) (*draft.Draft, error) {
		of := map[bool]int{true: d.Shafts, false: d.Treadles}
		to := map[int]int{}
		used := map[int]bool{}
		for i, word := range strings.Fields(value) {
			n, err := strconv.Atoi(word)
			if err != nil || n < 1 || n > of[shafts] || used[n] {
				return nil, errValue
			}
			to[i+1], used[n] = n, true
		}
		if len(to) != of[shafts] {
			return nil, errValue
		}
		if shafts {
			return d.Renumber(to, same(d.Treadles)), nil
		}
		return d.Renumber(same(d.Shafts), to), nil
	}
}

func same(n int) map[int]int {
	out := map[int]int{}
	for i := range n {
		out[i+1] = i + 1
	}
	return out
}

// Changes lists the changes.
func Changes() []Change { return slices.Clone(changes) }
