package strokes

import (
	"slices"

	"sley/internal/trade/draft"
)

// Splice is a change of a list: Remove entries from At on go, and Put comes there.
type Splice struct {
	At, Remove int
	Put        []Value
}

// Between gives, for each part that differs, the one smallest splice that leads from one
// draft to the other. What is neither part nor size (how many shafts there are, the shed,
// name and note) is not in it.
func Between(was, is *draft.Draft) map[Part]Splice {
	out := map[Part]Splice{}
	for _, f := range forms {
		a, b := f.of(was), f.of(is)
		if f.part == Lowered && nothing(a) && nothing(b) {
			continue // the ties say how many treadles there are
		}
		if s, differ := splice(a, b); differ {
			out[f.part] = s
		}
	}
	return out
}

func nothing(list []Value) bool {
	return !slices.ContainsFunc(list, func(v Value) bool { return v != 0 })
}

// splice leaves out what both lists begin with, then what both end with.
func splice(a, b []Value) (Splice, bool) {
	from := 0
	for from < min(len(a), len(b)) && a[from] == b[from] {
		from++
	}
	end := 0
	for end < min(len(a), len(b))-from && a[len(a)-1-end] == b[len(b)-1-end] {
		end++
	}
	s := Splice{At: from, Remove: len(a) - end - from, Put: slices.Clone(b[from : len(b)-end])}
	return s, s.Remove > 0 || len(s.Put) > 0
}

// Apply gives the draft with those splices made; they must lie in its parts, as those of
// Between do, or it panics. There are as many shafts as there were, and a treadle for
// each tie.
func Apply(d *draft.Draft, splices map[Part]Splice) *draft.Draft {
	c := d.Clone()
	for _, f := range forms {
		if s, ok := splices[f.part]; ok {
			f.lay(c, slices.Replace(f.of(d), s.At, s.At+s.Remove, s.Put...))
		}
	}
	return c
}
