package app

import (
	"fmt"
	"strconv"

	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// uncolourable tells acts that would colour threads whose colours are not of the draft.
func uncolourable(t *Table, acts []TableAct) *problem.List {
	list := &problem.List{}
	for i := range acts {
		switch acts[i].Part {
		case strokes.WarpColours, strokes.WeftColours, strokes.Palette:
			if t.Uncoloured {
				list.Fail("table.whole-colours", fmt.Sprintf("acts[%d].part", i), string(acts[i].Part), nil)
			}
		}
	}
	return list
}

// beyondLoom is what there is to tell of acts that were made: what strokes say, and where
// they come to more than the loom has, that.
func beyondLoom(was *Table, is *draft.Draft, said *problem.List) *problem.List {
	told := &problem.List{}
	for _, p := range said.All() {
		if p.Code == "stroke.more-shafts" && was.Shafts > 0 || p.Code == "stroke.more-treadles" && was.Treadles > 0 {
			continue // the loom is known, and says whether it matters
		}
		told.Add(p)
	}
	shafts, treadles := is.Used()
	shaftsWere, treadlesWere := was.Draft.Used()
	if n := shafts.Most(); lacking(was.Shafts, shaftsWere.Most(), n) {
		told.Warn("table.loom-shafts", "acts", strconv.Itoa(n), problem.Args{"has": was.Shafts, "needs": n})
	}
	if n := treadles.Most(); lacking(was.Treadles, treadlesWere.Most(), n) {
		told.Warn("table.loom-treadles", "acts", strconv.Itoa(n), problem.Args{"has": was.Treadles, "needs": n})
	}
	return told
}

// lacking reports whether more is needed now than before, and than a loom has; 0 is a loom
// that is not known.
func lacking(has, was, now int) bool { return has > 0 && now > has && now > was }
