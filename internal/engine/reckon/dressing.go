package reckon

import (
	"strings"

	"sley/internal/engine/dress"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// mostListed is how many bouts, changes, raddle spaces that differ, or sections
// that differ are listed: more is no plan for hands. mostSpaces keeps a warp of
// kilometres across from filling the memory.
const (
	mostListed = 200
	mostSpaces = 20_000
)

// reckonDressing works out the winding, the raddle, the sectional beam and the turns of the beam, each
// where the plan says something of it. Fractions of ends are not dressed.
func (r *run) reckonDressing() {
	w := &r.plan.Winding
	if r.silent || r.exact() || !w.IsWound() && !w.Raddle.Given() && !w.Section.Given() && !w.BeamGirth.Given() {
		return
	}
	list := r.stretches()
	if w.IsWound() {
		r.wound(list)
	}
	if w.Raddle.Given() {
		r.raddle(list)
	}
	if w.Section.Given() {
		r.sections(list)
	}
	if w.BeamGirth.Given() {
		r.beam(list)
	}
	r.checkBeams()
}

// checkBeams says that the ends of a second beam are left out.
func (r *run) checkBeams() {
	for _, s := range r.out.Stripes {
		if s.Beam == 2 {
			r.tell("winding.one-beam", "winding", "", nil)
			return
		}
	}
}

// stretches lays the working ends out for dressing: the ends of beam 2 take
// their width and are not wound, doubled ends share the place of their
// neighbours. Floating selvedges are not among them.
func (r *run) stretches() []dress.Stretch {
	var out []dress.Stretch
	doubled, all := r.plan.Warp.DoubledEnds, r.cloth.ends.Is.Count(qty.Nearest)
	at := 0
	for _, s := range r.out.Stripes {
		end := at + s.Ends.Count(qty.Nearest)
		for at < end {
			to := upTo(at, end, doubled, all-doubled)
			each := 1
			if s.Beam == 2 {
				each = 0
			}
			if at < doubled {
				each++
			}
			if at >= all-doubled {
				each++
			}
			out = append(out, dress.Stretch{Yarn: s.Yarn, Places: to - at, Each: each, Density: s.Density})
			at = to
		}
	}
	return out
}

// upTo is the next of the places after at, at most end.
func upTo(at, end int, places ...int) int {
	for _, p := range places {
		if p > at {
			end = min(end, p)
		}
	}
	return end
}

// many notes a list that is too long to be made.
func (r *run) many(path string, lines int) bool {
	if lines <= mostListed {
		return false
	}
	r.tell("winding.many", path, "", problem.Args{"lines": lines, "most": mostListed})
	return true
}

// runs makes, for each run of spaces or sections, a node that counts them and
// one with the ends they take, and sums both. It gives how many there are; false
// where they are too many to be listed.
func (r *run) runs(id, path string, list []int) (term, bool) {
	runs := dress.Runs(list)
	if r.many(path, len(runs)) {
		return term{}, false
	}
	var spaces, ends []term
	for i, one := range runs {
		about := About{Mark: hyphens(one.Cycle)}
		group := id + ".groups[" + itoa(i) + "]"
		spaces = append(spaces, r.put(group, r.timesOver(one.Times, count(len(one.Cycle), Number)), warp.Unsaid, about))
		ends = append(ends, r.put(group+".ends", r.timesOver(one.Times, count(total(one.Cycle), Ends)), warp.Unsaid, about))
	}
	n := r.put(id+".count", r.sum(Number, spaces), warp.Unsaid, About{})
	r.put(id+".ends", r.sum(Ends, ends), warp.Unsaid, About{})
	return n, true
}

// timesOver is n × each; a factor of 1 is left out.
func (r *run) timesOver(n int, each Figure) term {
	times := r.plain(count(n, each.Kind))
	switch {
	case each.Is.Equal(qty.Int(1)):
		return times
	case n == 1:
		return r.plain(each)
	}
	return r.mul(each.Kind, times, r.plain(each))
}

func total(list []int) int {
	sum := 0
	for _, n := range list {
		sum += n
	}
	return sum
}

func hyphens(list []int) string {
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = itoa(n)
	}
	return strings.Join(parts, "-")
}
