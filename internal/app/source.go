package app

import (
	"errors"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"

	"sley/internal/edge/wif"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
	"sley/internal/trade/weave"
)

// Source is a plan file that was read.
type Source struct {
	Name string // for messages
	Text []byte
	// Beside reads a file that the plan points to, by its name from the plan's folder;
	// nil where there is none to be had.
	Beside func(name string) ([]byte, error)
	// Units are those that the book it is in shows figures in, where the plan says none.
	Units warp.Units
}

// adopt reads the draft that a plan points to and makes it the plan's own: its
// threading that of the warp, its treadles those of the plan.
func (s Source) adopt(plan *warp.Plan, list *problem.List) {
	name := plan.Drafting.File
	if name == "" || list.Failed() {
		return
	}
	if s.Beside == nil {
		list.Fail("draft.no-folder", "draft.wif", name, nil)
		return
	}
	text, err := s.Beside(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		list.Fail("draft.not-found", "draft.wif", name, nil)
		return
	case err != nil:
		list.Fail("draft.unreadable", "draft.wif", name, nil)
		return
	}
	file, found := wif.Decode(name, text)
	list.Append(found)
	if found.Failed() {
		list.Fail("draft.faulty", "draft.wif", name, nil)
		return
	}
	adoptDraft(plan, file.Draft)
	adoptColours(plan, file.Draft, list)
}

// adoptColours gives the plan the draft's orders of colours as orders of its yarns,
// where it has none of its own.
func adoptColours(plan *warp.Plan, d *draft.Draft, list *problem.List) {
	if len(plan.Drafting.Colours) == 0 {
		return
	}
	missing := map[int]bool{}
	if plan.Warp.Stripes.IsZero() {
		left := len(d.Threading) - len(trimmedLeft(d.Threading))
		plan.Warp.Stripes = yarnOrder(plan, &d.Warp, left, len(trimmed(d.Threading)), missing)
	}
	if plan.Weft.Order.IsZero() {
		plan.Weft.Order = yarnOrder(plan, &d.Weft, 0, d.Picks(), missing)
	}
	for _, colour := range slices.Sorted(maps.Keys(missing)) {
		list.Fail("draft.colour-yarn", "draft.colours", strconv.Itoa(colour), problem.Args{"colour": colour})
	}
}

// yarnOrder is the colours of n threads from the one at from on as an order of yarns,
// whose repeat fills. Colours that are no yarn of the plan's are noted.
func yarnOrder(plan *warp.Plan, t *draft.Threads, from, n int, missing map[int]bool) order.Order {
	colours := make([]int, n)
	for i := range colours {
		colours[i] = t.ColourOf(from + i)
		if plan.Drafting.Colours[colours[i]+1] == "" {
			missing[colours[i]+1] = true
		}
	}
	if n == 0 || len(missing) > 0 {
		return order.Order{}
	}
	each := weave.Cycle(colours)
	text := "(" + yarnRuns(plan, colours[:each]) + ") x fill"
	if rest := n % each; rest > 0 {
		text += ", " + yarnRuns(plan, colours[:rest])
	}
	o, _ := order.Parse(text, order.Context{Kind: order.Stripes})
	return o
}

// yarnRuns writes neighbours of one colour as a yarn and a count.
func yarnRuns(plan *warp.Plan, colours []int) string {
	var parts []string
	for len(colours) > 0 {
		n := 1
		for n < len(colours) && colours[n] == colours[0] {
			n++
		}
		parts = append(parts, plan.Drafting.Colours[colours[0]+1]+" "+strconv.Itoa(n))
		colours = colours[n:]
	}
	return strings.Join(parts, ", ")
}

// trimmedLeft leaves out the ends in no heddle at the left edge.
func trimmedLeft(threading []int) []int {
	for len(threading) > 0 && threading[0] == 0 {
		threading = threading[1:]
	}
	return threading
}

// adoptDraft writes a draft into a plan. The smallest part of the threading and of
// the treadling that repeats is what fills; ends in no heddle at the edges are
// floating selvedges, which the plan counts for itself.
func adoptDraft(plan *warp.Plan, d *draft.Draft) {
	own := d.Clone()
	own.Origin = plan.Drafting.File
	plan.Drafting.Source = own
	plan.Warp.Threading = shaftsOrder(trimmed(d.Threading))
	if plan.Loom.Shed == loom.UnsaidShed {
		plan.Loom.Shed = d.Shed
	}
	if !d.Treadled() {
		plan.Drafting.LiftPlan = picksOrder(d.Lifts)
		return
	}
	for i := range d.Ties {
		plan.Drafting.Ups = append(plan.Drafting.Ups, d.Open(draft.Of(i+1)).Up)
	}
	plan.Drafting.Treadling = picksOrder(d.Treadling)
}

// trimmed leaves out the ends in no heddle at both edges.
func trimmed(threading []int) []int {
	threading = trimmedLeft(threading)
	for len(threading) > 0 && threading[len(threading)-1] == 0 {
		threading = threading[:len(threading)-1]
	}
	return threading
}

func shaftsOrder(shafts []int) order.Order {
	words := make([]string, len(shafts))
	for i, s := range shafts {
		words[i] = strconv.Itoa(s)
	}
	return filling(words, shafts, order.Shafts)
}

func picksOrder(sets []draft.Set) order.Order {
	words := make([]string, len(sets))
	for i, s := range sets {
		words[i] = s.String()
	}
	classes, _ := draft.Classes(sets)
	return filling(words, classes, order.Treadles)
}

// filling writes threads as an order whose repeat fills, with what balances it
// behind; the zero Order where one of the threads cannot be written.
func filling(words []string, classes []int, kind order.Kind) order.Order {
	if len(words) == 0 {
		return order.Order{}
	}
	each := weave.Cycle(classes)
	text := "(" + strings.Join(words[:each], " ") + ") x fill"
	if rest := len(words) % each; rest > 0 {
		text += ", " + strings.Join(words[:rest], " ")
	}
	o, faults := order.Parse(text, order.Context{Kind: kind})
	if len(faults) > 0 {
		return order.Order{}
	}
	return o
}
