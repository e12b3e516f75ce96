package tape

import (
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// mark draws the part's marks and tells where they fell.
func (f *figure) mark() []Place {
	labels := f.labels()
	places := make([]Place, 0, len(f.marks))
	for _, m := range f.marks {
		y, label := f.y(m.At), labels[m.index]
		f.lines(m, y, label)
		f.label(m, label)
		places = append(places, Place{
			Strip: f.strip, Mark: m.index, X: f.left, Y: y, Start: f.base, Offset: f.from,
			Labelled: m.Label == "" || len(label.lines) > 0,
		})
	}
	return places
}

// lines are the mark itself, across the strip save for the numbers it would strike
// and the labels, and the line that leads to its own label.
func (f *figure) lines(m marked, y float64, label block) {
	pen := light
	if m.Strong {
		pen = heavy
	}
	c := f.cols
	f.stroke(0, f.until(c.cmEnd, ticks, y, 10), y, pen)
	f.stroke(f.until(c.inch, c.width-ticks, y, inch), c.width, y, pen)
	if len(label.lines) == 0 {
		f.stroke(c.cmEnd+air, c.inch-air, y, pen)
		return
	}
	from, to := f.x(c.cmEnd+air), f.x(c.text-air)
	f.add(scene.Polyline{
		Points: []scene.Point{{X: from, Y: y}, {X: from + 0.8, Y: y}, {X: to - 0.8, Y: label.y}, {X: to, Y: label.y}},
		Pen:    leading,
	})
}

// until is the far side of the numbers, or the near one where the line would strike
// a number.
func (f *figure) until(far, near, y, step float64) float64 {
	if f.strikes(y, step) {
		return near
	}
	return far
}

func (f *figure) stroke(from, to, y float64, pen scene.Pen) {
	f.add(scene.Line{X1: f.x(from), Y1: y, X2: f.x(to), Y2: y, Pen: pen})
}

// label writes the lines of a label about its middle.
func (f *figure) label(m marked, b block) {
	y := b.y - line*float64(len(b.lines)-1)/2 + rise
	for i, text := range b.lines {
		f.say(f.x(f.cols.text), y+line*float64(i), scene.Start, face(m.Strong), text)
	}
}

func face(strong bool) scene.Font {
	if strong {
		return bold
	}
	return plain
}

// mostLines is how many lines a label is broken into where there is room.
const mostLines = 3

// labels finds the lines and the place of every label, by the index of its mark:
// in as many lines as there is room for, and where there is none even for one line
// each, without the least of the labels.
func (f *figure) labels() map[int]block {
	from, to := f.room()
	blocks := f.blocks(mostLines)
	for most := mostLines - 1; most > 0 && total(blocks) > to-from; most-- {
		blocks = f.blocks(most)
	}
	for total(blocks) > to-from && len(blocks) > 0 {
		blocks = without(blocks)
	}
	apart(blocks, from, to)
	found := map[int]block{}
	for _, b := range blocks {
		found[b.index] = b
	}
	return found
}

// room is the y between which labels may stand, downwards.
func (f *figure) room() (from, to float64) {
	from, to = f.y(f.to)+air, f.base-air
	if f.above != "" {
		from += joinRoom
	}
	if f.below != "" {
		to -= joinRoom
	}
	return from, to
}

// blocks are the labels where they would like to be, downwards.
func (f *figure) blocks(most int) []block {
	var blocks []block
	for i := len(f.marks) - 1; i >= 0; i-- {
		m := f.marks[i]
		lines := broken(m.Label, face(m.Strong), f.cols.end-f.cols.text, most)
		if len(lines) > 0 {
			blocks = append(blocks, block{index: m.index, lines: lines, strong: m.Strong, y: f.y(m.At)})
		}
	}
	return blocks
}

// broken is a label in at most so many lines, the last one cut where it must be.
func broken(text string, font scene.Font, width float64, most int) []string {
	lines := letter.Wrap(text, font, pt, width)
	if len(lines) <= most {
		return lines
	}
	rest := lines[most-1]
	for _, more := range lines[most:] {
		rest += " " + more
	}
	return append(lines[:most-1:most-1], letter.Fit(rest, font, pt, math.Max(width, 0)))
}
