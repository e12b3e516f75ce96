package review

import (
	"slices"

	"sley/internal/engine/defaults"
	"sley/internal/engine/strokes"
	"sley/internal/engine/structure"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// leastLong is the shortest float that can be too long: a 3/1 twill's never is.
const leastLong = 4

// float is a long float: where it lies, and from how many threads on it is too long.
type float struct {
	structure.Place
	way   structure.Way
	face  structure.Face
	limit int
}

// floats tells the longest floats of both ways on both faces.
func (r *review) floats() {
	var all []float
	count := 0
	for _, way := range []structure.Way{structure.Warp, structure.Weft} {
		for _, face := range []structure.Face{structure.Front, structure.Back} {
			list, n := r.longest(way, face)
			all, count = append(all, list...), count+n
		}
	}
	slices.SortStableFunc(all, func(a, b float) int { return b.Long - a.Long })
	told := all[:min(len(all), most)]
	for _, f := range told {
		r.tell(r.floatFinding(f))
	}
	if more := count - len(told); more > 0 {
		r.tell(Finding{Topic: MoreFloats, Severity: Note, Args: problem.Args{"more": more}})
	}
}

// density is that of the threads that floats of a way pass over.
func (r *review) density(way structure.Way) qty.Density {
	if way == structure.Warp {
		return r.Context.Picks
	}
	return r.Sett
}

// limit is from how many threads on a float of a way is too long.
func (r *review) limit(way structure.Way) int {
	limit := defaults.LongFloat(r.Use)
	if per := r.density(way); !per.IsZero() {
		return max(per.In(limit.Length, qty.Down)+1, leastLong)
	}
	return limit.Threads + 1
}

// longest gives the longest floats that are too long, at most as many as are told, and how
// many there are.
func (r *review) longest(way structure.Way, face structure.Face) (list []float, n int) {
	limit := r.limit(way)
	floats := r.weave.Floats(way, face)
	least := max(floats.Longest, limit)
	for least > limit && floats.AtLeast(least) < most {
		least--
	}
	for p := range r.weave.Places(way, face, least+1) {
		list = append(list, float{p, way, face, limit})
	}
	for p := range r.weave.Places(way, face, least) {
		if len(list) >= most {
			break
		}
		if p.Long == least {
			list = append(list, float{p, way, face, limit})
		}
	}
	list = slices.DeleteFunc(list, r.cutByEdges)
	return list, floats.AtLeast(limit) - r.cuts(way, face, limit)
}

// cuts counts the floats that edges cut short enough.
func (r *review) cuts(way structure.Way, face structure.Face, limit int) int {
	n := 0
	if r.loops() || way == structure.Warp {
		return n
	}
	for p := range r.weave.Places(way, face, limit) {
		if r.cutByEdges(float{p, way, face, limit}) {
			n++
		}
	}
	return n
}

// cutByEdges reports whether a float is long only as the ends come again beside the last,
// which in a whole warp they do not.
func (r *review) cutByEdges(f float) bool {
	ends := r.weave.Ends
	if r.loops() || f.way == structure.Warp || f.From+f.Long <= ends {
		return false
	}
	return max(ends-f.From, f.From+f.Long-ends) < f.limit
}

func (r *review) floatFinding(f float) Finding {
	args := problem.Args{"way": int(f.way), "face": int(f.face), "threads": f.Long, "limit": f.limit - 1}
	if per := r.density(f.way); !per.IsZero() {
		if long, ok := qty.LengthOf(qty.Int(int64(f.Long)).Div(per.PerNM()), qty.Nearest); ok {
			args["long"] = long
		}
	}
	return Finding{
		Topic: LongFloat, Severity: r.floatSeverity(), Place: r.floatPlace(f), Args: args,
		Remedies: []Remedy{{Topic: Bind, Acts: []strokes.Act{r.bind(f)}}},
	}
}

// floatSeverity is that of a float that is long for what the cloth is for; long floats of
// a cloth that may be anything are worth knowing.
func (r *review) floatSeverity() Severity {
	if r.Use == "" {
		return Note
	}
	return Care
}

// floatPlace is where a float begins and how far it goes, to the draft's last thread.
func (r *review) floatPlace(f float) Place {
	thread, from := Span{f.Thread, f.Thread + 1}, Span{f.From, f.From + f.Long}
	if f.way == structure.Warp {
		from.To = min(from.To, r.weave.Picks)
		return Place{Ends: r.shifted(thread), Picks: from}
	}
	from.To = min(from.To, r.weave.Ends)
	return Place{Ends: r.shifted(from), Picks: thread}
}

// shifted counts ends as the draft does, floating selvedges among them.
func (r *review) shifted(s Span) Span { return Span{s.From + r.first, s.To + r.first} }
