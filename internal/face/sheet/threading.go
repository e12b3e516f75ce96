package sheet

import (
	"slices"
	"strconv"
	"strings"

	"sley/internal/engine/dress"
	"sley/internal/trade/draft"
)

// threading is the heddles to count out before beaming, the order as it was
// written, and its groups to tick with the count of ends so far.
func (d *desk) threading() {
	blocks := d.keyed(d.lines("ends"), d.lines("ends.doubled", "heddles.total"))
	blocks = append(blocks, d.heading(wordHeddles))
	blocks = append(blocks, d.heddles()...)
	blocks = append(blocks, d.heading(wordThread))
	blocks = append(blocks, d.text(strong, d.r.Plan.Warp.Threading.Text)...)
	blocks = append(blocks, d.heading(wordThreads))
	blocks = append(blocks, d.text(body, wordThreadings)...)
	d.flow(titleThreading, append(blocks, d.threadings()...))
}

func (d *desk) heddles() []block {
	columns := []column{{"", 1, false}, {wordShaft, 2, true}, {wordHeddle, 3, true}, {wordHas, 3, true}, {wordSpare, 3, true}, {wordRemark, 5, false}}
	var rows [][]cell
	for _, n := range d.listed("heddles[") {
		at := count(n.About.Index)
		spare := d.nodeOf("heddles.spare[", n.About.Index)
		rows = append(rows, []cell{tick, said(at), said(d.u.Bench(n)), say(d.nodeOf("heddles.on-loom[", n.About.Index)), say(spare), blank})
	}
	return d.table(columns, rows)
}

// nodeOf is the figure of the node of a list that is about that shaft.
func (d *desk) nodeOf(prefix string, index int) string {
	for _, n := range d.listed(prefix) {
		if n.About.Index == index {
			return d.u.Bench(n)
		}
	}
	return ""
}

// About two dozen ends make a group; a very wide warp has larger ones.
const (
	endsInGroup    = 24
	mostThreadings = 240
)

// threaded puts the ends of the warp into groups as its threading suits.
func (d *desk) threaded() []dress.Threaded {
	times, ok := d.r.Threadings()
	if !ok {
		return nil
	}
	t, most := d.r.Plan.Warp.Threading, endsInGroup
	for t.Total(times)/most > mostThreadings {
		most *= 2
	}
	return dress.Threading(draft.ShaftsOf(t.Before()), draft.ShaftsOf(t.FillRuns()), draft.ShaftsOf(t.After()), times, most)
}

// threadings has, for each sort of group, its shafts, its heddles on each shaft,
// and a box for every group.
func (d *desk) threadings() []block {
	var out []block
	for _, row := range d.threaded() {
		head := d.text(strong, groupWords(row))
		head[0].gap = 3
		head = append(head, d.text(body, heddlesOf(row))...)
		var texts []string
		for _, after := range row.After {
			texts = append(texts, endsIn(after))
		}
		out = append(append(out, together(append(head, block{}))[:len(head)]...), d.ticks(5, texts)...)
	}
	return out
}

// groupWords says the shafts of a group and how often they come in it.
func groupWords(t dress.Threaded) string {
	list := make([]string, len(t.Shafts))
	for i, s := range t.Shafts {
		list[i] = strconv.Itoa(s)
	}
	words := strings.Join(list, " ")
	if t.Times > 1 {
		words = filled(wordRepeated, "{shafts}", words, "{times}", count(t.Times))
	}
	return words
}

// heddlesOf says how many heddles a group takes on each shaft, to check it by.
func heddlesOf(t dress.Threaded) string {
	on := make([]int, slices.Max(t.Shafts))
	for _, s := range t.Shafts {
		on[s-1] += t.Times
	}
	var parts []string
	for i, n := range on {
		if n > 0 {
			parts = append(parts, filled(wordOnShaft, "{n}", count(n), "{shaft}", count(i+1)))
		}
	}
	return filled(wordGroupOf, "{ends}", endsIn(t.EndsInGroup()), "{heddles}", strings.Join(parts, ", "))
}

func endsIn(n int) string {
	if n == 1 {
		return wordOneEnd
	}
	return filled(wordToEnd, "{ends}", count(n))
}
