package board

import (
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// MillWords are what the drawing of a mill says; empty words say nothing.
type MillWords struct {
	Start, End string // beside the two ends of the warp
	Turns      string // how many turns, with what is over
	Girth      string // how long one turn is
}

const (
	slimmest = 3.0 // the least from turn to turn, in mm
	rail     = 6.0 // from the frame to the first and the last turn, in mm
)

// Mill draws a warping mill from the side with the turns of the warp from its head
// downwards, and over, the share of a turn that is left, 0 to 1. It is a figure and
// not to scale: where there are too many turns to be told apart it draws as many as
// can be, and the words say how many there are. A box too small gives an empty group.
func Mill(turns int, over float64, box scene.Box, words MillWords) scene.Group {
	side := max(letter.Width(words.Start, plain, pt), letter.Width(words.End, plain, pt)) + 5
	reel := scene.Box{X: box.X + side, Y: box.Y, Width: min(box.Width-side, box.Height), Height: box.Height - 2.5*line}
	if reel.Width < 20 || reel.Height < 2*rail+slimmest || turns < 0 {
		return scene.Group{}
	}
	m := &mill{reel: reel, box: box}
	m.frame()
	ends := m.wind(float64(turns) + min(max(over, 0), 1))
	m.say(reel.X-2, ends[0], scene.End, words.Start)
	if ends[1]-ends[0] > line {
		m.say(reel.X-2, ends[1], scene.End, words.End)
	}
	m.say(box.X, reel.Bottom()+0.8*line, scene.Start, words.Turns)
	m.say(box.X, reel.Bottom()+1.8*line, scene.Start, words.Girth)
	return scene.Group{Items: m.items}
}

// mill is a mill being drawn.
type mill struct {
	reel, box scene.Box
	items     []scene.Item
}

func (m *mill) add(items ...scene.Item) { m.items = append(m.items, items...) }

// say sets a text with its middle at y.
func (m *mill) say(x, y float64, anchor scene.Anchor, text string) {
	if text == "" {
		return
	}
	y += letter.CapHeight(plain, pt) / 2
	text = letter.Fit(text, plain, pt, m.box.Width)
	m.add(scene.Text{X: x, Y: y, Size: pt, Anchor: anchor, Text: text, Box: m.box})
}

// frame is the four uprights as they are seen from the side, with their rails and
// the axle.
func (m *mill) frame() {
	r := m.reel
	for _, share := range []float64{0, 0.3, 0.7, 1} {
		x := r.X + share*r.Width
		m.add(scene.Line{X1: x, Y1: r.Y + 2, X2: x, Y2: r.Bottom() - 2, Pen: frame})
	}
	for _, y := range []float64{r.Y + 2, r.Bottom() - 2} {
		m.add(scene.Line{X1: r.X, Y1: y, X2: r.Right(), Y2: y, Pen: frame})
	}
	middle := r.X + r.Width/2
	m.add(scene.Line{X1: middle, Y1: r.Y, X2: middle, Y2: r.Bottom(), Pen: scene.Pen{Width: 0.8, Ink: frame.Ink}})
}

// wind draws the turns, each in front to the right and behind back to the left, and
// tells the y of both ends.
func (m *mill) wind(turns float64) [2]float64 {
	r := m.reel
	top, high := r.Y+rail, r.Height-2*rail
	turns = min(turns, math.Floor(high/slimmest))
	pitch := min(high/max(turns, 1), 3*slimmest)
	for half := 0.0; half < 2*turns; half++ {
		m.half(top, pitch, half, min(half+1, 2*turns))
	}
	m.add(scene.Circle{X: r.X, Y: top, Radius: 0.9, Fill: scene.Black})
	end := top + turns*pitch
	m.add(scene.Line{X1: r.X - 1.5, Y1: end, X2: m.across(2 * turns), Y2: end, Pen: scene.Solid(0.18)})
	m.add(scene.Circle{X: m.across(2 * turns), Y: end, Radius: 0.9, Fill: scene.Black})
	return [2]float64{top, end}
}

// across is the x after so many half turns.
func (m *mill) across(halves float64) float64 {
	share := math.Mod(halves, 2)
	if share > 1 {
		share = 2 - share
	}
	return m.reel.X + share*m.reel.Width
}

// half draws the thread over half a turn or less: whole in front, dashed behind.
func (m *mill) half(top, pitch, from, to float64) {
	pen := warp
	if math.Mod(from, 2) == 1 {
		pen = scene.Pen{Width: 0.3, Dash: []float64{1.2, 1}}
	}
	m.add(scene.Line{
		X1: m.across(from), Y1: top + from/2*pitch,
		X2: m.across(to), Y2: top + to/2*pitch, Pen: pen,
	})
}
