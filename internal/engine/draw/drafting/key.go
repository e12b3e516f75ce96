package drafting

import (
	"slices"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/loom"
)

// sign is a little drawing of the key with what it means; draw has its middle at x, y.
type sign struct {
	text string
	draw func(x, y float64) []scene.Item
}

// Measures of a key, in mm.
const (
	signWide  = 4.4 // a sign
	signApart = 5.0 // from a text to the next sign
	keyLine   = 5.4
)

func (s sign) wide(room float64) float64 {
	return signWide + air + min(wide(s.text), room-signWide-air)
}

// letter is what a colour of the palette is called in the bars and in the key: A for
// the first in use; empty where the key has no names for colours.
func (g *drawing) letter(index int) string {
	i := slices.Index(g.used, index)
	if g.words.Colour == nil || i < 0 || i >= 26 {
		return ""
	}
	return string(rune('A' + i))
}

// key is the signs that the drawing needs and that have words; tie says whether its
// tie-up is drawn.
func (g *drawing) key(tie bool) []sign {
	var all []sign
	if g.look.Cells == Filled {
		all = append(all, sign{g.words.Filled, square(black)})
	}
	if g.look.Cells == Both {
		all = append(all, sign{g.words.Filled, dotted})
	}
	if tie {
		all = append(all, g.tieKey()...)
	}
	all = append(all, g.markKey()...)
	if g.look.Bars || g.look.Cells != Filled {
		for _, k := range g.used {
			if g.letter(k) != "" {
				all = append(all, sign{g.letter(k) + "  " + g.words.Colour(k), square(at(g.inks, k))})
			}
		}
	}
	return slices.DeleteFunc(all, func(s sign) bool { return s.text == "" })
}

// tieKey is the signs of the tie-up.
func (g *drawing) tieKey() []sign {
	if g.look.Alone || g.lifts != nil {
		return nil
	}
	pen := scene.Pen{Width: 0.3}
	raised := sign{g.words.Raised, func(x, y float64) []scene.Item {
		return []scene.Item{scene.Circle{X: x, Y: y, Radius: 1.3, Pen: pen}}
	}}
	lowered := sign{g.words.Lowered, func(x, y float64) []scene.Item {
		return []scene.Item{scene.Path{Pen: pen}.Move(x-1.1, y-1.1).Line(x+1.1, y+1.1).Move(x-1.1, y+1.1).Line(x+1.1, y-1.1)}
	}}
	switch g.Shed {
	case loom.Countermarch:
		return []sign{raised, lowered}
	case loom.Sinking, loom.Counterbalance:
		return []sign{lowered}
	}
	return []sign{raised}
}

// markKey is the signs of the marks that are drawn.
func (g *drawing) markKey() []sign {
	var all []sign
	if g.marks.Repeat.Ends > 0 && g.marks.Repeat.Picks > 0 {
		all = append(all, sign{g.words.Repeat, func(x, y float64) []scene.Item {
			return []scene.Item{scene.Rect{X: x - 1.6, Y: y - 1.4, Width: 3.2, Height: 2.8, Pen: scene.Solid(0.6)}}
		}})
	}
	stroke := func(dash ...float64) func(x, y float64) []scene.Item {
		return func(x, y float64) []scene.Item {
			return []scene.Item{scene.Line{X1: x - 2, Y1: y, X2: x + 2, Y2: y, Pen: scene.Pen{Width: 0.5, Ink: madder, Dash: dash}}}
		}
	}
	here, behind := g.struck()
	if here {
		all = append(all, sign{g.words.Float, stroke()})
	}
	if behind && g.marks.FloatsBehind {
		all = append(all, sign{g.words.Behind, stroke(1, 0.6)})
	}
	if len(g.marks.Ends)+len(g.marks.Picks) > 0 {
		all = append(all, sign{g.words.Pointed, func(x, y float64) []scene.Item {
			return []scene.Item{scene.Polyline{Closed: true, Fill: madder, Points: []scene.Point{{X: x, Y: y - 1}, {X: x - 1, Y: y + 1}, {X: x + 1, Y: y + 1}}}}
		}})
	}
	return all
}

// struck says on which faces there are floats to strike.
func (g *drawing) struck() (here, behind bool) {
	for _, f := range g.marks.Floats {
		if f.Face == g.look.Face {
			here = true
		} else {
			behind = true
		}
	}
	return here, behind
}

func square(k scene.Ink) func(x, y float64) []scene.Item {
	return func(x, y float64) []scene.Item {
		return []scene.Item{scene.Rect{X: x - 1.5, Y: y - 1.5, Width: 3, Height: 3, Fill: k, Pen: scene.Solid(0.2)}}
	}
}

func dotted(x, y float64) []scene.Item {
	return append(square(white)(x, y), scene.Rect{X: x - 0.6, Y: y - 0.6, Width: 1.2, Height: 1.2, Fill: black})
}

// flowed are the signs in lines no wider than the room.
func flowed(signs []sign, room float64) [][]sign {
	var rows [][]sign
	x := room
	for _, s := range signs {
		if x+signApart+s.wide(room) > room {
			rows, x = append(rows, nil), -signApart
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], s)
		x += signApart + s.wide(room)
	}
	return rows
}

// set draws the lines of a key from a corner on.
func set(rows [][]sign, left, top, room float64) []scene.Item {
	var items []scene.Item
	for i, row := range rows {
		x, y := left, top+keyLine*(float64(i)+0.5)
		for _, s := range row {
			items = append(items, s.draw(x+signWide/2, y)...)
			text := letter.Fit(s.text, plain, pt, room-signWide-air)
			items = append(items, scene.Text{X: x + signWide + air, Y: y + high/2, Size: pt, Text: text})
			x += s.wide(room) + signApart
		}
	}
	return items
}
