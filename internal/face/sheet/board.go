package sheet

import (
	"sley/internal/engine/draw/board"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// How high the drawings of a board and a mill are, in mm.
const (
	boardHigh = 88
	millHigh  = 70
)

// overBoard is the drawing of the board with the way found over it.
func (d *desk) overBoard() []block {
	b, way, ok := d.boardAndWay()
	if !ok {
		return nil
	}
	words := board.Words{Wide: d.apart(b, acrossOf), High: d.apart(b, downOf)}
	if !d.r.Plan.Winding.UsualBoard { // whose pegs say where the cross is
		words.Cross = wordCross
	}
	return []block{d.heading(wordBoard), {high: boardHigh, gap: 2, draw: func(x, y float64) []scene.Item {
		box := scene.Box{X: x, Y: y, Width: d.width(), Height: boardHigh}
		return []scene.Item{board.Draw(b, way, nil, box, words)}
	}}}
}

// boardAndWay gives the board of the plan, and the way over it as the reckoning
// found it.
func (d *desk) boardAndWay() (dress.Board, dress.Path, bool) {
	long, ok := d.r.Node("winding.path-length")
	if !ok {
		return dress.Board{}, dress.Path{}, false
	}
	b := d.boardOf()
	at := map[string]int{}
	for i, p := range b.Pegs {
		at[p.Name] = i
	}
	length, _ := qty.LengthOf(long.Is, qty.Nearest)
	way := dress.Path{Pegs: []int{0}, Length: length, Reaches: true}
	for _, n := range d.listed("winding.pegs[") {
		way.Pegs = append(way.Pegs, at[n.About.Mark])
	}
	return b, way, true
}

func (d *desk) boardOf() dress.Board {
	if d.r.Plan.Winding.UsualBoard {
		return dress.UsualBoard(reckon.MetricPlan(d.r.Plan))
	}
	var b dress.Board
	for _, p := range d.r.Plan.Winding.Pegs {
		b.Pegs = append(b.Pegs, dress.Peg(p))
	}
	return b
}

func acrossOf(p dress.Peg) qty.Length { return p.X }
func downOf(p dress.Peg) qty.Length   { return p.Y }

// apart is how far the outermost pegs stand apart, one way.
func (d *desk) apart(b dress.Board, of func(dress.Peg) qty.Length) string {
	low, high := of(b.Pegs[0]), of(b.Pegs[0])
	for _, p := range b.Pegs {
		low, high = min(low, of(p)), max(high, of(p))
	}
	if low == high {
		return ""
	}
	return d.length(high - low)
}

// length is a written length, as read at the bench.
func (d *desk) length(l qty.Length) string {
	n := reckon.Node{Figure: reckon.Figure{Is: l.Rat(), Kind: reckon.Length}, Origin: reckon.Given}
	return say(d.u.Bench(n)).text
}

// onMill is the drawing of the mill with its turns.
func (d *desk) onMill() []block {
	turns, ok := d.r.Node("winding.turns")
	if !ok {
		return nil
	}
	girth, _ := d.r.Node("winding.mill")
	past, _ := d.r.Node("winding.past")
	words := board.MillWords{Start: wordStart, End: wordEnd, Turns: d.both("winding.turns") + ", " + d.both("winding.past"), Girth: d.both("winding.mill")}
	return []block{d.heading(wordMill), {high: millHigh, gap: 2, draw: func(x, y float64) []scene.Item {
		box := scene.Box{X: x, Y: y, Width: d.width(), Height: millHigh}
		return []scene.Item{board.Mill(turns.Is.Count(qty.Down), past.Is.Div(girth.Is).Float(), box, words)}
	}}}
}

// both is a node's words and its figure.
func (d *desk) both(id string) string {
	l := d.lines(id)[0]
	return say(l.Label + " " + l.Value).text
}
