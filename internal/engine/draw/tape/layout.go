package tape

import (
	"fmt"
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// Measures of a page in mm, and of its letters in points.
const (
	margin = 8.0  // what printers leave blank, and a little
	head   = 7.0  // the heading
	gap    = 2.0  // between strips
	pt     = 10.0 // all letters: on a tape more would crowd the marks
	line   = 4.2  // from baseline to baseline
	bars   = 2*scene.ScaleBarHalf + 2
)

var (
	plain = scene.Font{}
	bold  = scene.Font{Bold: true}
)

// layout is pages being filled.
type layout struct {
	paper  scene.Size
	words  Words
	cols   columns
	note   []string
	joins  int // named so far
	spot   scene.Point
	row    int // the place in the row in which spot stands
	pages  []scene.Page
	places []Place
}

// measure finds how wide strips are: one width for all, so that they stand in
// rows and one cut frees two.
func (l *layout) measure(strips []Strip) {
	l.note = letter.Wrap(l.words.Note, plain, pt, l.wide())
	l.cols = measure(strips, l.words)
}

func (l *layout) wide() float64 { return l.paper.Width - 2*margin }

// top and bottom bound the room for strips.
func (l *layout) top() float64 { return margin + head }

func (l *layout) bottom() float64 {
	return l.paper.Height - margin - bars - line*float64(len(l.note))
}

// longest is the longest part that a page holds, in whole centimetres.
func (l *layout) longest() float64 {
	return math.Floor((l.bottom()-l.top()-Overlap-tail)/whole) * whole
}

func (l *layout) perRow() int { return int((l.wide() + gap) / (l.cols.width + gap)) }

// put finds the part its place: above the last one's head downwards, then in the
// next row, then on the next page.
func (l *layout) put(p part) {
	switch {
	case len(l.pages) == 0:
		l.turn()
	case l.spot.Y+p.high() > l.bottom():
		l.row++
		l.spot = scene.Point{X: l.spot.X + l.cols.width + gap, Y: l.top()}
		if l.row == l.perRow() {
			l.turn()
		}
	}
	l.draw(p)
	l.spot.Y += p.high() + gap
}

// turn begins a page.
func (l *layout) turn() {
	l.pages = append(l.pages, scene.Page{Width: l.paper.Width, Height: l.paper.Height})
	l.spot, l.row = scene.Point{X: margin, Y: l.top()}, 0
}

// draw draws the part and writes down where its marks fell.
func (l *layout) draw(p part) {
	f := figure{part: p, cols: l.cols, words: l.words, left: l.spot.X}
	f.base = l.spot.Y + p.high() - Overlap
	if !p.first {
		f.below, l.joins = letters(l.joins), l.joins+1
	}
	if !p.last {
		f.above = letters(l.joins)
	}
	places := f.draw()
	for i := range places {
		places[i].Page = len(l.pages)
	}
	l.places = append(l.places, places...)
	page := &l.pages[len(l.pages)-1]
	page.Items = append(page.Items, scene.Group{Items: f.items})
}

// frame writes what stands around the strips of every page.
func (l *layout) frame() {
	for i := range l.pages {
		page := &l.pages[i]
		page.Items = append(page.Items, l.heading(i+1)...)
		page.Items = append(page.Items, l.foot()...)
	}
}

func (l *layout) heading(number int) []scene.Item {
	right := ""
	if l.words.Page != nil {
		right = letter.Fit(l.words.Page(number, len(l.pages)), plain, pt, l.wide()/2)
	}
	room := l.wide() - letter.Width(right, plain, pt) - 2*line
	left := letter.Fit(l.words.Heading, bold, pt, room)
	y := margin + line - 0.6
	return []scene.Item{
		scene.Text{X: margin, Y: y, Size: pt, Font: bold, Text: left},
		scene.Text{X: margin + l.wide(), Y: y, Size: pt, Anchor: scene.End, Text: right},
	}
}

// foot is the note above the scale bar.
func (l *layout) foot() []scene.Item {
	var items []scene.Item
	for i, text := range l.note {
		items = append(items, scene.Text{X: margin, Y: l.bottom() + line*(float64(i)+0.9), Size: pt, Text: text})
	}
	y := l.paper.Height - margin - scene.ScaleBarHalf
	return append(items, scene.ScaleBar(margin, y, l.words.BarMetric, l.words.BarIn, scene.Text{Size: pt}))
}

// number is a whole number as it is printed on the strip.
func number(n int) string { return fmt.Sprint(n) }
