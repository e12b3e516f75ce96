package drafting

import (
	"math"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// Fit says how a draft went onto paper.
type Fit struct {
	Cell         float64 // mm from thread to thread, in the mean
	Across, Down int     // parts beside and below one another; 1 and 1 on one page
	// Cloth says that the draft is too large to be drawn thread by thread, and that
	// the one page shows a picture of the cloth only.
	Cloth bool
	// Refused says that there are no pages: the draft has no crossings, or more than
	// can be pictured, or the paper is too small.
	Refused bool
}

const (
	margin = 10.0 // what printers leave blank, and a little, mm
	// few is how many parts cells are made smaller for, and MostParts how many parts
	// a draft is cut into at most: more would be nobody's to join.
	few       = 12
	easy      = 1.6 // mm
	step      = 0.1 // mm
	MostParts = 48
	// overlap is how many threads two parts share.
	overlap = fifth
)

// Pages draws a draft on paper, upright or turned, on one page where cells can be at
// least Least. A larger draft is cut into parts that share some threads where they
// join, with a page before them that shows which part is where; one of more than
// MostParts parts is one page with a picture of the cloth, which says so. Numbers and
// a size of cells that would make a draft too large are not heeded.
func Pages(d *draft.Draft, look Look, marks Marks, paper scene.Size, words Words) ([]scene.Page, Fit) {
	if none(d) || d.Ends() > MostDots/d.Picks() || min(paper.Width, paper.Height) < 4*margin {
		return nil, Fit{Refused: true}
	}
	g := newDrawing(d, look, marks, words)
	turned := scene.Size{Width: paper.Height, Height: paper.Width}
	upright, lying := &sheet{g, paper}, &sheet{g, turned}
	s, cell := upright, upright.largest()
	if other := lying.largest(); other > cell {
		s, cell = lying, other
	}
	if cell > 0 {
		return s.single(cell), Fit{Cell: cell, Across: 1, Down: 1}
	}
	g.seams = true
	s, p := fewest(upright, lying)
	if p.parts() == 0 || p.parts() > MostParts {
		if look.Numbers || look.Cell > 0 {
			look.Numbers, look.Cell = false, 0
			return Pages(d, look, marks, paper, words)
		}
		return upright.cloth(), Fit{Cloth: true, Across: 1, Down: 1}
	}
	return s.several(p), Fit{Cell: p.cell, Across: len(p.cols), Down: len(p.rows)}
}

// fewest cuts a draft into few parts: with cells that can be read at ease, or smaller
// ones where that takes too many; and then as large as so many parts allow.
func fewest(upright, lying *sheet) (*sheet, plan) {
	cell := max(easy, upright.smallest())
	s, p := better(upright, lying, cell)
	for p.parts() > few && cell > upright.smallest() {
		cell = max(tenths(cell-step), upright.smallest())
		s, p = better(upright, lying, cell)
	}
	for s.look.Cell == 0 && p.cell+step <= greatest {
		larger := s.cut(tenths(p.cell + step))
		if larger.parts() != p.parts() {
			break
		}
		p = larger
	}
	return s, p
}

// better is the way to lay the paper that takes fewer parts.
func better(upright, lying *sheet, cell float64) (*sheet, plan) {
	a, b := upright.cut(cell), lying.cut(cell)
	if b.parts() > 0 && (b.parts() < a.parts() || a.parts() == 0) {
		return lying, b
	}
	return upright, a
}

// sheet is paper for a drawing.
type sheet struct {
	*drawing
	paper scene.Size
}

// room is what the drawing may take of a page.
func (s *sheet) room() (w, h float64) {
	w = s.paper.Width - 2*margin
	return w, s.paper.Height - 2*margin - head - s.keyApart() - keyLine*float64(len(flowed(s.key(true), w)))
}

// smallest is the smallest cell of this drawing: what was asked for, or what can be
// read.
func (s *sheet) smallest() float64 { return max(s.look.Cell, s.leastCell()) }

// largest is the largest cell at which the whole draft fits the page; 0 where none
// does.
func (s *sheet) largest() float64 {
	least, most := s.smallest(), max(greatest, s.smallest())
	if s.look.Cell > 0 {
		most = least
	}
	w, h := s.room()
	for n := math.Floor(10*(most-least) + 1e-6); n >= 0; n-- {
		cell := least + n/10
		s.size(cell)
		if wide, high := s.extent(s.whole()); wide <= w && high <= h {
			return cell
		}
	}
	return 0
}

// tenths is a length to the tenth of a millimetre.
func tenths(mm float64) float64 { return math.Round(10*mm) / 10 }

// page is a page with its heading and its key; name is that of the part on it, tie
// whether the tie-up is.
func (s *sheet) page(n, of int, name string, tie bool) scene.Page {
	w, h := s.room()
	p := s.blank(n, of, name)
	p.Items = append(p.Items, set(flowed(s.key(tie), w), margin, margin+head+h+s.keyApart(), w)...)
	return p
}

// blank is a page with its heading alone.
func (s *sheet) blank(n, of int, name string) scene.Page {
	w, _ := s.room()
	right := ""
	if s.words.Page != nil {
		right = s.words.Page(n, of)
	}
	p := scene.Page{Width: s.paper.Width, Height: s.paper.Height, Items: heading(s.words.Heading, right, margin, w)}
	if name != "" {
		x := margin + w - wide(right) - 2*line
		p.Items = append(p.Items, scene.Text{X: x, Y: margin + line - 0.6, Size: pt, Font: bold, Anchor: scene.End, Text: name})
	}
	return p
}

// single is the whole draft on one page.
func (s *sheet) single(cell float64) []scene.Page {
	s.size(cell)
	page := s.page(1, 1, "", true)
	w, _ := s.room()
	wide, _ := s.extent(s.whole())
	s.draw(s.whole(), margin+(w-wide)/2, margin+head)
	page.Items = append(page.Items, s.items...)
	return []scene.Page{page}
}

// cloth is a page with a picture of the cloth alone, and the words that say why.
func (s *sheet) cloth() []scene.Page {
	s.words.Filled = "" // cells cannot be told apart
	s.marks = Marks{}
	s.look.Alone = true
	page := s.page(1, 1, "", true)
	w, h := s.room()
	note := letter.Wrap(s.words.Cloth, plain, pt, w)
	for i, text := range note {
		page.Items = append(page.Items, scene.Text{X: margin, Y: margin + head + line*float64(i) + line - 0.6, Size: pt, Text: text})
	}
	top := line*float64(len(note)) + gap
	box := s.reduced(scene.Box{X: margin, Y: margin + head + top, Width: w, Height: h - top - gap})
	page.Items = append(page.Items, scene.Picture{X: box.X, Y: box.Y, Width: box.Width, Height: box.Height, Cells: s.onPage()})
	return []scene.Page{page}
}

// reduced is the largest box with the sides of the drawdown that fits into a box, in
// the middle of its upper edge.
func (s *sheet) reduced(in scene.Box) scene.Box {
	s.size(1)
	w, h := s.cols.long(0, s.Ends()), s.rows.long(0, s.Picks())
	scale := min(in.Width/w, in.Height/h)
	return scene.Box{X: in.X + (in.Width-w*scale)/2, Y: in.Y, Width: w * scale, Height: h * scale}
}
