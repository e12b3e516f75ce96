package review

import (
	"sley/internal/engine/strokes"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// edges tells the edges that the weft leaves bare more often than not. A draft of which
// neither a width nor a start is known is a repeat, and has none.
func (r *review) edges() {
	if r.Context.Ends == 0 && len(r.Start) == 0 || r.used == 0 {
		return
	}
	d, ends := r.whole()
	weaving := structure.Weaving{Shuttles: r.Shuttles, Start: r.Start, Floating: r.Floating}
	e := structure.EdgesOfDraft(d, ends, weaving)
	if caught(e.Sides[structure.Left].Caught, e.Sides[structure.Left].Turns) && caught(e.Sides[structure.Right].Caught, e.Sides[structure.Right].Turns) {
		return
	}
	remedies := r.edgeRemedies(e)
	if len(r.Start) == 0 && len(remedies) > 0 && remedies[0].Topic == StartOther {
		return // she may well start there
	}
	for side := range e.Sides {
		r.edge(structure.Side(side), &e.Sides[side], remedies)
	}
}

// caught reports whether enough of the turns of a side are.
func caught(n, of int) bool { return 2*n >= of }

func (r *review) edge(side structure.Side, c *structure.Caught, remedies []Remedy) {
	if caught(c.Caught, c.Turns) {
		return
	}
	end := r.first
	if side == structure.Right {
		end = r.last
	}
	r.tell(Finding{
		Topic: EdgeBare, Severity: Care, Place: Place{Ends: Span{end, end + 1}},
		Args:     problem.Args{"side": int(side), "caught": c.Caught, "turns": c.Turns, "run": c.Run},
		Remedies: remedies,
	})
}

// edgeRemedies are the fixes that catch enough on both sides.
func (r *review) edgeRemedies(e *structure.Edges) []Remedy {
	var out []Remedy
	for _, f := range e.Fixes {
		if !caught(f.Caught[structure.Left], f.Turns[structure.Left]) || !caught(f.Caught[structure.Right], f.Turns[structure.Right]) {
			continue
		}
		switch m := (Remedy{Swap: f.Swap}); {
		case f.Floating != [2]bool{}:
			out = append(out, r.hang(f.Floating))
		case f.Ends != [2]int{}:
			m.Topic, m.Ends, m.Acts = ChangeEnds, f.Ends[structure.Left]+f.Ends[structure.Right], r.edgeEnds(f.Ends)
			if r.bounded() || !r.fills() {
				out = append(out, m)
			}
		default:
			m.Topic = StartOther
			out = append(out, m)
		}
	}
	return out
}

// bounded reports whether the draft shows the edges that are judged.
func (r *review) bounded() bool { return r.Context.Ends == 0 || !r.loops() }

// hang threads a floating selvedge at each side that lacks one, where the draft shows the
// edges of the warp.
func (r *review) hang(sides [2]bool) Remedy {
	m := Remedy{Topic: HangFloating, Floating: sides}
	if !r.bounded() {
		return m
	}
	m.Floating = [2]bool{}
	for side, at := range [2]int{0, r.Draft.Ends()} {
		if sides[side] {
			m.Ends++
			m.Acts = append([]strokes.Act{{Do: strokes.Put, Part: strokes.Threading, At: at, Put: strokes.Numbers(0)}}, m.Acts...)
		}
	}
	return m
}

// edgeEnds adds ends at the edges as the threading goes on there, or leaves them out, the
// right edge first. A draft that is repeated across the warp begins another end further.
func (r *review) edgeEnds(change [2]int) []strokes.Act {
	if by := change[structure.Left]; !r.bounded() {
		if by == 0 {
			return nil
		}
		return []strokes.Act{{Do: strokes.Rotate, Part: strokes.Threading, To: r.Draft.Ends(), By: by}}
	}
	period := r.weave.RepeatEnds
	on := func(end int) int { return r.Threading[r.first+(end%period+period)%period] }
	var out []strokes.Act
	for side, at := range map[structure.Side]int{structure.Right: r.last + 1, structure.Left: r.first} {
		act := strokes.Act{Do: strokes.Put, Part: strokes.Threading, At: at}
		switch n := change[side]; {
		case n == 0:
			continue
		case n < 0 && side == structure.Right:
			act.At, act.Remove = at-1, 1
		case n < 0:
			act.Remove = 1
		case side == structure.Right:
			act.Put = strokes.Numbers(on(at - r.first))
		default:
			act.Put = strokes.Numbers(on(-1))
		}
		out = append(out, act)
	}
	return rightFirst(out)
}

func rightFirst(acts []strokes.Act) []strokes.Act {
	if len(acts) == 2 && acts[0].At < acts[1].At {
		acts[0], acts[1] = acts[1], acts[0]
	}
	return acts
}

// whole gives the draft that is judged across the warp, and the ends it is woven on.
func (r *review) whole() (*draft.Draft, int) {
	ends := r.Context.Ends
	if ends == 0 {
		return r.Draft, r.Draft.Ends()
	}
	if r.Fill == (Span{}) {
		return r.Draft, ends
	}
	c := *r.Draft
	c.Threading = r.threaded()
	return &c, len(c.Threading)
}

// threaded is the threading of the whole warp: the stretch that fills, or all of it, as
// often as the ends take.
func (r *review) threaded() []int {
	ends := r.Context.Ends
	if ends == 0 || ends > strokes.MostThreads {
		return r.Threading
	}
	from, to := 0, r.Draft.Ends()
	if r.fills() {
		from, to = r.Fill.From, r.Fill.To
	}
	behind := r.Threading[to:]
	out := append([]int(nil), r.Threading[:from]...)
	for len(out) < ends-len(behind) {
		out = append(out, r.Threading[from+(len(out)-from)%(to-from)])
	}
	return append(out, behind...)
}

// fills reports whether the stretch that fills lies in the threading.
func (r *review) fills() bool {
	return r.Fill.From >= 0 && r.Fill.From < r.Fill.To && r.Fill.To <= r.Draft.Ends()
}
