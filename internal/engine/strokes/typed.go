package strokes

import (
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
)

// kindOf is what a part's shorthand orders.
var kindOf = map[Part]order.Kind{
	Threading: order.Shafts, Treadling: order.Treadles, Lifts: order.Treadles,
	WarpColours: order.Stripes, WeftColours: order.Stripes,
	Ties: order.Treadles,
}

// Letters calls n colours of a palette that have no names: A, B to Z, AA and on.
func Letters(n int) []string {
	out := make([]string, n)
	for i := range out {
		for at := i; at >= 0; at = at/26 - 1 {
			out[i] = string(rune('A'+at%26)) + out[i]
		}
	}
	return out
}

func (s *stroke) typed(said *Act) {
	a := new(Act)
	*a = *said // names are added to it
	if _, ok := s.stretch(a, listed...); !ok {
		return
	}
	ctx := order.Context{Kind: kindOf[a.Part]}
	if ctx.Kind == order.Stripes {
		if len(a.Names) == 0 {
			a.Names = Letters(len(s.Draft.Palette))
		}
		ctx.Names = append([]string{}, a.Names...)
	}
	o, faults := order.Parse(a.Text, ctx)
	for _, f := range faults {
		s.fail(f.Code, "text", f.Read, f.Args)
	}
	if s.failed() {
		return
	}
	if times, ok := s.fills(a, o); ok {
		put := s.said(a, o.Runs(times))
		s.lay(a.Part, "text", exchange(a.From, a.To-a.From, put))
	}
}

// fills gives how often the group that fills is laid: as often as the stretch takes.
func (s *stroke) fills(a *Act, o order.Order) (times int, ok bool) {
	n := a.To - a.From
	if o.Filler() > 0 {
		if times, ok = o.Fills(n); !ok {
			less := o.Total(times)
			s.fail("stroke.fill", "text", a.Text, problem.Args{"threads": n, "less": less, "more": o.Total(times + 1)})
			return 0, false
		}
	}
	if total := o.Total(times); total > MostThreads {
		s.fail("stroke.large", "text", strconv.Itoa(total), problem.Args{"most": MostThreads})
		return 0, false
	}
	return times, true
}

// said gives the entries that runs say, and judges them.
func (s *stroke) said(a *Act, runs []order.Run) []Value {
	var put []Value
	for _, run := range runs {
		v := Value(run.Shaft)
		switch kindOf[a.Part] {
		case order.Treadles:
			v = Value(draft.Set(run.Set))
		case order.Stripes:
			v = Value(slices.Index(a.Names, run.Name))
		}
		s.judge(a.Part, a.From+len(put), v, "text")
		put = append(put, slices.Repeat([]Value{v}, run.Count)...)
	}
	return put
}
