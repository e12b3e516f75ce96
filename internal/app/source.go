package app

import (
	"errors"
	"io/fs"
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
	from, to := 0, len(threading)
	for from < to && threading[from] == 0 {
		from++
	}
	for to > from && threading[to-1] == 0 {
		to--
	}
	return threading[from:to]
}

func shaftsOrder(shafts []int) order.Order {
	words := make([]string, len(shafts))
	for i, s := range shafts {
		words[i] = strconv.Itoa(s)
	}
	return filling(words, shafts, order.Shafts)
}

func picksOrder(sets []draft.Set) order.Order {
	words, classes := make([]string, len(sets)), make([]int, len(sets))
	number := map[draft.Set]int{}
	for i, s := range sets {
		if _, ok := number[s]; !ok {
			number[s] = len(number)
		}
		words[i], classes[i] = s.String(), number[s]
	}
	return filling(words, classes, order.Treadles)
}

// filling writes threads as an order whose repeat fills, with what balances it
// behind; the zero Order where one of the threads cannot be written.
func filling(words []string, classes []int, kind order.Kind) order.Order {
	if len(words) == 0 {
		return order.Order{}
	}
	each := weave.Period(classes, false)
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
