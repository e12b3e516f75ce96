package drafting

import (
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// overview is the page that shows which part of a draft is on which page.
func (s *sheet) overview(p plan, of int) scene.Page {
	page := s.blank(1, of, "")
	w, h := s.room()
	list := s.list(p, w)
	box := s.reduced(scene.Box{X: margin, Y: margin + head, Width: w, Height: h - list.high() - 2*gap})
	s.size(p.cell)
	page.Items = append(page.Items, scene.Picture{X: box.X, Y: box.Y, Width: box.Width, Height: box.Height, Cells: s.onPage()})
	page.Items = append(page.Items, s.outlines(p, box)...)
	page.Items = append(page.Items, list.items(margin, box.Bottom()+2*gap)...)
	return page
}

// outlines are the parts on a picture of the whole, with their names; the lines run
// through the middle of what two parts share.
func (s *sheet) outlines(p plan, box scene.Box) []scene.Item {
	f := frame{box: box, left: s.left, upside: s.upside}
	across, down := box.Width/s.cols.long(0, s.Ends()), box.Height/s.rows.long(0, s.Picks())
	us, vs := seams(s.cols, p.cols, across), seams(s.rows, p.rows, down)
	var items []scene.Item
	pen := scene.Pen{Width: 0.9, Ink: white}
	for _, width := range []float64{0.9, 0.4} {
		pen.Width = width
		path := scene.Path{Pen: pen}
		for _, u := range us {
			path = f.line(path, u, 0, u, box.Height)
		}
		for _, v := range vs {
			path = f.line(path, 0, v, box.Width, v)
		}
		items = append(items, path)
		pen.Ink = black
	}
	var b plates
	s.eachPart(p, func(i, j int) { b.put(f, (us[j]+us[j+1])/2, (vs[i]+vs[i+1])/2, s.name(p, i, j)) })
	return append(items, b.items...)
}

// plates are names on white ground, none over another.
type plates struct {
	taken []scene.Box
	items []scene.Item
}

// put sets a name in the middle of its part, or above or below it where another is in
// its way; where there is no place it is left to the list.
func (b *plates) put(f frame, u, v float64, name string) {
	w, h := letter.Width(name, bold, pt)+2*air, high+2*air
	u = inside(u, w, 0, f.box.Width)
	for _, off := range []float64{0, 1.1, -1.1, 2.2, -2.2} {
		at := f.at(u-w/2, v+off*h-h/2, u+w/2, v+off*h+h/2)
		if holds(f.box, at) && b.free(at) {
			b.taken = append(b.taken, at)
			b.items = append(b.items, f.rect(u-w/2, v+off*h-h/2, u+w/2, v+off*h+h/2, white, scene.Solid(0.2)),
				f.say(u, v+off*h, scene.Middle, bold, name))
			return
		}
	}
}

// holds says whether a box lies in another, give or take a hair.
func holds(outer, b scene.Box) bool {
	outer = outer.Inset(-0.01)
	return outer.Contains(scene.Point{X: b.X, Y: b.Y}) && outer.Contains(scene.Point{X: b.Right(), Y: b.Bottom()})
}

func (b *plates) free(at scene.Box) bool {
	for _, other := range b.taken {
		if common := other.Intersect(at); common.Width > 0 && common.Height > 0 {
			return false
		}
	}
	return true
}

// seams are where the lines of an overview run along one side.
func seams(a axis, parts [][2]int, scale float64) []float64 {
	out := []float64{0}
	for _, p := range parts[1:] {
		out = append(out, scale*(a.edges[p[0]]+a.edges[p[0]+overlap])/2)
	}
	return append(out, scale*a.edges[a.n()])
}

// listing is lines of text in columns.
type listing struct {
	lines   []string
	columns int
	wide    float64
}

// list is what each part shows, as they lie on the page.
func (s *sheet) list(p plan, room float64) listing {
	l := listing{columns: 1, wide: room}
	if s.words.Part == nil {
		return l
	}
	longest := 0.0
	s.eachPart(p, func(i, j int) {
		text := s.words.Part(s.name(p, i, j), numbered(p.cols[j], s.endNumber), numbered(p.rows[i], s.pickNumber))
		l.lines, longest = append(l.lines, text), max(longest, wide(text))
	})
	l.columns = max(int(room/(longest+signApart)), 1)
	l.wide = room / float64(l.columns)
	return l
}

// numbered is the least and the greatest number of a range.
func numbered(r [2]int, num func(int) int) [2]int {
	a, b := num(r[0]), num(r[1]-1)
	return [2]int{min(a, b), max(a, b)}
}

func (l listing) rows() int     { return (len(l.lines) + l.columns - 1) / l.columns }
func (l listing) high() float64 { return line * float64(l.rows()) }

func (l listing) items(x, y float64) []scene.Item {
	var items []scene.Item
	for i, text := range l.lines {
		column, row := i/l.rows(), i%l.rows()
		items = append(items, scene.Text{
			X: x + float64(column)*l.wide, Y: y + line*float64(row) + line - 0.6, Size: pt,
			Text: letter.Fit(text, plain, pt, l.wide-signApart/2),
		})
	}
	return items
}
