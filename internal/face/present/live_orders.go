package present

import (
	"unicode/utf16"

	"sley/internal/app"
	"sley/internal/trade/order"
)

// LiveOrder is an order of a plan, part by part. Whole is of yarns alone: shafts and
// treadles written out are the draft, which has a picture, and would be most of the answer
// to each key.
type LiveOrder struct {
	Typed string     `json:"typed"`
	Total int        `json:"total"`
	Fills bool       `json:"fills"`
	Runs  []LiveRun  `json:"runs"`
	Whole []LiveLaid `json:"whole"`
	Cut   bool       `json:"cut,omitempty"` // whole goes on
}

// LiveRun is a part of the text. At and To count UTF-16 units, as a browser does. Treadles
// and shafts are those of a run from First to Last, Set those that are pressed at once.
type LiveRun struct {
	At      int    `json:"at"`
	To      int    `json:"to"`
	Group   string `json:"group,omitempty"`
	Yarn    string `json:"yarn,omitempty"`
	First   int    `json:"first,omitempty"`
	Last    int    `json:"last,omitempty"`
	Set     []int  `json:"set,omitempty"`
	Count   int    `json:"count"`
	Density string `json:"density,omitempty"`
	Beam    int    `json:"beam,omitempty"`
	Depth   int    `json:"depth"`
	Times   int    `json:"times,omitempty"`
	Fills   bool   `json:"fills,omitempty"`
}

// LiveLaid is a number of neighbouring threads that are alike.
type LiveLaid struct {
	Yarn  string `json:"yarn"`
	Beam  int    `json:"beam,omitempty"`
	Count int    `json:"count"`
}

func liveOrder(o app.LaidOrder) LiveOrder {
	out := LiveOrder{Typed: o.Typed, Total: o.Total, Fills: o.Fills, Cut: o.Cut, Runs: []LiveRun{}, Whole: []LiveLaid{}}
	at, before := 0, 0
	for _, l := range o.Leaves {
		at += utf16Len(o.Typed[before:l.From])
		to := at + utf16Len(o.Typed[l.From:l.To])
		out.Runs = append(out.Runs, liveRun(l, at, to))
		at, before = to, l.To
	}
	if o.Kind != order.Stripes {
		out.Cut = false
		return out
	}
	for _, r := range o.Whole {
		out.Whole = append(out.Whole, LiveLaid{r.Name, r.Beam, r.Count})
	}
	return out
}

func liveRun(l order.Leaf, at, to int) LiveRun {
	r := LiveRun{
		At: at, To: to, Group: l.Group, Yarn: l.Run.Name, First: l.First, Last: l.Last, Count: l.Run.Count,
		Density: l.Run.Density.Typed, Beam: l.Run.Beam, Depth: l.Depth, Fills: l.Fills,
	}
	if l.First == 0 {
		r.Set = setOf(l.Run.Set)
	}
	if l.Times > 1 {
		r.Times = l.Times
	}
	return r
}

func utf16Len(text string) int {
	n := 0
	for _, r := range text {
		n += utf16.RuneLen(r)
	}
	return n
}

func setOf(set uint64) []int {
	var out []int
	for n := 1; set != 0; n, set = n+1, set>>1 {
		if set&1 == 1 {
			out = append(out, n)
		}
	}
	return out
}
