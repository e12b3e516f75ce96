package app

import (
	"fmt"
	"slices"
	"sync"

	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// loomAsked is how the weaver wants a warp dressed, and where pieces really ended.
type loomAsked struct {
	loomside.Asked
	ends map[int]int
}

// laidOut is what a version of a plan says of the work at the loom, done as asked. It is
// shared, and never changed.
type laidOut struct {
	key      string
	result   *reckon.Result // nil where the plan has errors
	problems *problem.List
	steps    []loomside.Step
	weaving  *loomside.Weaving
}

// mostLaid is how many warps are kept laid out: a stroke at the loom asks for the one that
// the stroke before asked for.
const mostLaid = 4

// looms keeps warps laid out.
type looms struct {
	turn sync.Mutex
	last []*laidOut // the one asked for last is the last
}

// of gives a version of a warp laid out.
func (l *looms) of(id record.ID, version int, asked loomAsked, b *body) *laidOut {
	key := fmt.Sprintf("%d %d %s %v %v", id, version, asked.Way, asked.Sides, asked.ends)
	l.turn.Lock()
	defer l.turn.Unlock()
	at := slices.IndexFunc(l.last, func(one *laidOut) bool { return one.key == key })
	var found *laidOut
	if at >= 0 {
		found = l.last[at]
		l.last = slices.Delete(l.last, at, at+1)
	} else {
		found = layOut(key, asked, b)
	}
	l.last = append(l.last, found)
	l.last = slices.Clone(l.last[max(len(l.last)-mostLaid, 0):])
	return found
}

// layOut reckons the plan with the marks of its tape and lays the work out.
func layOut(key string, asked loomAsked, b *body) *laidOut {
	out := &laidOut{key: key, problems: &problem.List{}}
	plan, list, err := b.adopted()
	if err != nil || list.Failed() {
		if list != nil {
			out.problems = unplaced(list)
		}
		return out
	}
	out.result = reckon.Solve(plan, reckon.Options{Tape: true})
	out.result.Node("") // from here on it is only read
	list.Append(&out.result.Problems)
	out.problems = unplaced(list)
	out.steps = loomside.Dressing(out.result, asked.Asked)
	out.weaving, _ = loomside.Weave(out.result, asked.ends)
	return out
}
