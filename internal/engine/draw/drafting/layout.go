package drafting

import "math"

// Room beside the cells, in mm.
const (
	gap       = 2.0 // between the cloth and what stands beside it
	barHigh   = 4.0 // a colour bar
	pointer   = 2.4 // a mark that points at a thread
	joint     = 6.4 // a mark below the cells where parts join
	jointWide = 9.0 // one beside them
)

// bar is what a colour bar takes.
func (g *drawing) bar() float64 {
	if g.look.Bars {
		return barHigh + gap/2
	}
	return 0
}

// outer is the room on the outer side of the cells, away from the tie-up: for the
// numbers of the shafts and the words of ends and shafts.
func (g *drawing) outer() float64 {
	room := max(wide(g.words.Ends)+air, g.beside())
	if !g.look.Alone {
		room = max(room, wide(number(g.Shafts)), g.pointers()+wide(g.words.Shafts)+air)
	}
	return room + air
}

// beside is what marks take beside the rows.
func (g *drawing) beside() float64 {
	if g.seams {
		return g.pointers() + jointWide
	}
	return g.pointers()
}

// pointers is what marks that point at picks take.
func (g *drawing) pointers() float64 {
	if len(g.marks.Picks) > 0 {
		return pointer
	}
	return 0
}

// inner is the room beyond treadling or cells: for the numbers of the picks and the
// words of picks and treadles.
func (g *drawing) inner() float64 {
	room := max(wide(number(g.Picks())), wide(g.words.Picks))
	if g.look.Alone {
		return room + 2*air
	}
	return max(room, wide(g.treadleWord())) + 2*air
}

// top is the room above the cells of a part: the numbers of the ends and, with the
// head, a colour bar and the threading.
func (g *drawing) top(head bool) float64 {
	if !head {
		return line
	}
	return line + g.bar() + g.cell*float64(g.Shafts) + gap
}

// foot is the room below the cells of a part.
func (g *drawing) foot(head bool) float64 {
	room := gap
	if g.words.Picks != "" && !g.picksAbove(head) {
		room = line + air
	}
	if len(g.marks.Ends) > 0 {
		room += pointer
	}
	if g.seams {
		room += joint
	}
	return room
}

// picksAbove says whether the word of the picks stands above their numbers: beside the
// threading, where no other numbers are and the word of the treadles is not too near.
func (g *drawing) picksAbove(head bool) bool {
	return head && g.lifts == nil && g.cell*float64(g.Shafts)+gap/2 >= line
}

// treadling is the room beside the cells for treadling or lift plan.
func (g *drawing) treadling(side bool) float64 {
	if !side {
		return 0
	}
	return gap + g.cell*float64(g.across()) + g.bar()
}

// extent is how wide and high a part is drawn.
func (g *drawing) extent(p part) (w, h float64) {
	w = g.outer() + g.cols.long(p.c0, p.c1) + g.treadling(p.side) + g.inner()
	return w, g.top(p.head) + g.rows.long(p.r0, p.r1) + g.foot(p.head)
}

// u is where a column begins in the frame, v where a row does.
func (g *drawing) u(c int) float64 { return g.outer() + g.cols.long(g.c0, c) }
func (g *drawing) v(r int) float64 { return g.top(g.head) + g.rows.long(g.r0, r) }

// threadingAt is where the row of a shaft begins in the frame: shaft 1 is nearest
// the cloth.
func (g *drawing) threadingAt(shaft int) float64 {
	return g.top(true) - gap - g.cell*float64(shaft)
}

// treadleAt is where the column of a treadle, or of a shaft of the lift plan, begins.
func (g *drawing) treadleAt(n int) float64 { return g.u(g.c1) + gap + g.cell*float64(n-1) }

// labelled are the places whose numbers are written: the first and the last of a part
// and, as far as they do not touch, every one whose number is a multiple of the
// smallest of the steps at which they have room. room is what a label takes.
func labelled(from, to int, at func(int) float64, num func(int) int, room float64, steps []int) []int {
	if to <= from {
		return nil
	}
	last := to - 1
	far := func(i, j int) bool { return math.Abs(at(i)-at(j)) >= room }
	out := []int{from}
	if !far(from, last) {
		return out
	}
	for _, i := range stepped(from, last, far, num, steps) {
		if far(i, from) && far(i, last) {
			out = append(out, i)
		}
	}
	return append(out, last)
}

// stepped are the multiples of the smallest step that has room between all of them.
func stepped(from, last int, far func(i, j int) bool, num func(int) int, steps []int) []int {
	for _, step := range steps {
		var out []int
		fits := true
		for i := from; i <= last && fits; i++ {
			if num(i)%step == 0 {
				fits = len(out) == 0 || far(out[len(out)-1], i)
				out = append(out, i)
			}
		}
		if fits {
			return out
		}
	}
	return nil
}

// The steps of numbers: threads by the fifth at the least, where the grid is
// stronger; shafts and treadles each where there is room.
var (
	threadSteps = []int{5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000}
	shaftSteps  = append([]int{1}, threadSteps...)
)
