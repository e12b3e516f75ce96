package review

import (
	"sley/internal/engine/strokes"
	"sley/internal/engine/structure"
)

// bind is the cells that cut a float into parts that are not too long, as few as will do.
func (r *review) bind(f float) strokes.Act {
	act := strokes.Act{Do: strokes.Cells, Up: (f.face == structure.Front) != (f.way == structure.Warp)}
	longest := f.limit - 1
	ties := f.Long / f.limit
	if ties == 1 {
		act.Cells = []strokes.Cell{r.cell(f, r.best(f, longest))}
		return act
	}
	for i := 1; i <= ties; i++ {
		act.Cells = append(act.Cells, r.cell(f, i*(f.Long+1)/(ties+1)-1))
	}
	return act
}

// cell is the crossing that lies so far along a float.
func (r *review) cell(f float, along int) strokes.Cell {
	if f.way == structure.Warp {
		return strokes.Cell{Pick: (f.From + along) % r.weave.Picks, End: f.Thread + r.first}
	}
	return strokes.Cell{Pick: f.Thread, End: (f.From+along)%r.weave.Ends + r.first}
}

// best gives where one tie makes the shortest float of the thread that then holds it, and
// of such places the one nearest to the middle.
func (r *review) best(f float, longest int) int {
	found, least := -1, 0
	for along := max(f.Long-1-longest, 0); along <= min(longest, f.Long-1); along++ {
		off := abs(2*along + 1 - f.Long)
		if cost := r.across(f, along)*2*f.Long + off; found < 0 || cost < least {
			found, least = along, cost
		}
	}
	return found
}

func abs(n int) int { return max(n, -n) }

// across is how long the float becomes that the thread across has at a tie.
func (r *review) across(f float, along int) int {
	c := r.cell(f, along)
	up := r.up(c)
	long := 1
	for _, step := range []int{1, -1} {
		for n := 1; n <= f.Long; n++ {
			if r.up(r.beside(c, f.way, n*step)) == up {
				break
			}
			long++
		}
	}
	return long
}

// beside is the crossing so many threads of that way further, round the draft.
func (r *review) beside(c strokes.Cell, way structure.Way, n int) strokes.Cell {
	if way == structure.Warp {
		ends := r.weave.Ends
		c.End = ((c.End-r.first+n)%ends+ends)%ends + r.first
		return c
	}
	c.Pick = ((c.Pick+n)%r.weave.Picks + r.weave.Picks) % r.weave.Picks
	return c
}

func (r *review) up(c strokes.Cell) bool { return r.lifts[c.Pick].Has(r.Threading[c.End]) }
