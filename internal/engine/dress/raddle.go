package dress

import (
	"slices"

	"sley/internal/trade/qty"
)

// Raddle gives the ends in each space of a raddle of that many spaces per
// nanometre, from the left end of the warp. The warp lies in the raddle as wide
// as in the reed: crammed stripes crowd it, spaced ones leave it emptier. An end
// goes into the space in which its place in the reed begins.
func Raddle(list []Stretch, spaces qty.Rat) []int {
	var out []int
	c := &cutter{list: list}
	for k := int64(1); len(c.list) > 0; k++ {
		out = append(out, endsOf(c.upTo(qty.Int(k).Div(spaces), qty.Up)))
	}
	return out
}

// Run is a stretch of neighbouring spaces or sections that repeat: those of
// Cycle, one after the other, Times times.
type Run struct {
	Cycle []int
	Times int
}

// longestCycle is the longest repeat that Runs looks for.
const longestCycle = 8

// Runs writes a list of numbers short: 42 x 12, then 1. At each place it takes
// the repeat that covers most, the shorter of two that cover as much. What does
// not repeat stands once.
func Runs(list []int) []Run { return RunsOf(list, longestCycle) }

// RunsOf is Runs with repeats of up to so many numbers, 1 or more.
func RunsOf(list []int, longest int) []Run {
	var out []Run
	for len(list) > 0 {
		best := Run{list[:1], 1}
		for n := 1; n <= min(longest, len(list)/2); n++ {
			r := Run{list[:n], repeats(list, n)}
			if r.Times > 1 && n*r.Times > len(best.Cycle)*best.Times {
				best = r
			}
		}
		list = list[len(best.Cycle)*best.Times:]
		out = append(out, best)
	}
	return out
}

// repeats counts how often the first n of the list follow one another.
func repeats(list []int, n int) int {
	times := 1
	for len(list) >= (times+1)*n && slices.Equal(list[:n], list[times*n:(times+1)*n]) {
		times++
	}
	return times
}
