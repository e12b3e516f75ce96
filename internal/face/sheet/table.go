package sheet

import (
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// column of a table: its title, its share of the width, and whether what stands
// in it ends at its right.
type column struct {
	title string
	share float64
	right bool
}

// cell is what stands in a row: a text, boxes to tick, or a line to write on.
type cell struct {
	text  string
	ticks int
	blank bool
	bold  bool
}

// say and said are cells with a figure, plain and bold, which stays on one line
// with its unit.
func say(text string) cell { return cell{text: firm.Replace(letter.FractionText(text))} }

func said(text string) cell {
	c := say(text)
	c.bold = true
	return c
}

var firm = strings.NewReplacer(" ", "\u00a0")

// words is a cell of words alone, in which 2/2 is a twill and no fraction.
func words(text string) cell { return cell{text: text} }

var (
	tick  = cell{ticks: 1}
	blank = cell{blank: true}
)

// Measures of a table in mm: the sides of its boxes, how far they stand apart, and
// what a row keeps free above and below, and a column at its right.
const (
	box     = 4.4
	boxStep = 6.6
	rowPad  = 1
	gutter  = 4
)

// table is rows under a head, which is drawn again on every page.
func (p *press) table(columns []column, rows [][]cell) []block {
	t := newGrid(p.width(), columns)
	head := t.head()
	out := make([]block, 0, len(rows)+1)
	for _, row := range rows {
		b := t.row(row)
		b.head = &head
		out = append(out, b)
	}
	return append([]block{head}, bound(out)...)
}

// grid is where the columns of a table stand.
type grid struct {
	columns []column
	left    []float64
	wide    []float64
}

func newGrid(width float64, columns []column) grid {
	g := grid{columns: columns}
	all, at := 0.0, 0.0
	for _, c := range columns {
		all += c.share
	}
	for i, c := range columns {
		w := width * c.share / all
		free := float64(gutter)
		if i == len(columns)-1 {
			free = 0
		}
		g.left, g.wide = append(g.left, at), append(g.wide, w-free)
		at += w
	}
	return g
}

// head is the titles over a rule; a title of several lines stands on the last.
func (g grid) head() block {
	titles, most := make([][]string, len(g.columns)), 1
	for i, c := range g.columns {
		titles[i] = label.wrap(c.title, g.wide[i])
		most = max(most, len(titles[i]))
	}
	high := float64(most)*label.lead + 1
	return block{high: high, gap: 3, keep: true, draw: func(x, y float64) []scene.Item {
		var items []scene.Item
		for i, lines := range titles {
			top := y + float64(most-len(lines))*label.lead
			for k, line := range lines {
				items = append(items, g.set(label, i, x, top+float64(k)*label.lead, line))
			}
		}
		return append(items, scene.Line{X1: x, Y1: y + high, X2: x + g.end(), Y2: y + high, Pen: rule})
	}}
}

func (g grid) end() float64 {
	last := len(g.left) - 1
	return g.left[last] + g.wide[last]
}

// set puts a text into a column.
func (g grid) set(s style, column int, x, y float64, text string) scene.Text {
	if g.columns[column].right {
		return s.ending(x+g.left[column]+g.wide[column], y, text)
	}
	return s.at(x+g.left[column], y, text)
}

// row is one row over a hair line.
func (g grid) row(cells []cell) block {
	lines, most := make([][]string, len(cells)), 1
	for i, c := range cells {
		lines[i] = g.styleOf(i, c).wrap(c.text, g.wide[i])
		most = max(most, len(lines[i]), (c.ticks+g.abreast(i)-1)/g.abreast(i))
	}
	high := float64(most)*body.lead + 2*rowPad
	return block{high: high, draw: func(x, y float64) []scene.Item {
		items := []scene.Item{scene.Line{X1: x, Y1: y + high, X2: x + g.end(), Y2: y + high, Pen: hair}}
		for i, c := range cells {
			for k, line := range lines[i] {
				items = append(items, g.set(g.styleOf(i, c), i, x, y+rowPad+float64(k)*body.lead, line))
			}
			items = append(items, g.fill(i, c, x, y, high)...)
		}
		return items
	}}
}

// styleOf is how a cell is set: a figure large, unless it would then take two lines.
func (g grid) styleOf(column int, c cell) style {
	switch {
	case !c.bold:
		return body
	case figured.wide(c.text) > g.wide[column]:
		return strong
	}
	return figured
}

// abreast is how many boxes stand side by side in a column.
func (g grid) abreast(column int) int {
	return max(int((g.wide[column]+boxStep-box)/boxStep), 1)
}

// fill draws the boxes of a cell, or its line to write on.
func (g grid) fill(column int, c cell, x, y, high float64) []scene.Item {
	left := x + g.left[column]
	if c.blank {
		at := y + high
		return []scene.Item{scene.Line{X1: left, Y1: at, X2: left + g.wide[column], Y2: at, Pen: rule}}
	}
	var items []scene.Item
	n := g.abreast(column)
	for i := range c.ticks {
		at := y + rowPad + float64(i/n)*body.lead + (body.lead+box)/2
		items = append(items, scene.TickBox(left+float64(i%n)*boxStep, at, box))
	}
	return items
}
