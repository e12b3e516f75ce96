package sheet

import (
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/qty"
)

// Measures of the drawing of a raddle, in mm.
const (
	spacesHigh = 27.0
	pinHigh    = 9.0
	leastApart = 1.2 // between pins that are drawn one by one
)

// fromCentre is the raddle drawn from its centre, with what each run of spaces takes.
func (d *desk) fromCentre() []block {
	n, ok := d.r.Node("raddle.count")
	left, _ := d.r.Node("raddle.left")
	runs := d.listed("raddle.groups[")
	if !ok || len(runs) == 0 {
		return nil
	}
	r := raddled{wide: d.width(), spaces: n.Is.Count(qty.Nearest), left: left.Is.Count(qty.Nearest)}
	for _, run := range runs {
		r.runs = append(r.runs, spaced{run.Is.Count(qty.Nearest), run.About.Mark})
	}
	return []block{d.heading(wordSpaces), {high: spacesHigh, gap: 1, draw: r.draw}}
}

// spaced is neighbouring spaces that take alike.
type spaced struct {
	spaces int
	takes  string
}

// raddled is a raddle to be drawn.
type raddled struct {
	wide         float64
	spaces, left int
	runs         []spaced
}

func (r *raddled) draw(x, y float64) []scene.Item {
	top := y + small.lead + 2
	foot := top + pinHigh
	each := r.wide / float64(max(r.spaces, 1))
	items := []scene.Item{scene.Line{X1: x, Y1: foot, X2: x + r.wide, Y2: foot, Pen: scene.Solid(0.8)}}
	items = append(items, r.pins(x, top, foot, each)...)
	items = append(items, r.takes(x, y, each)...)
	return append(items, r.centre(x, top-1, foot, each)...)
}

// pins are drawn one by one, or where they stand too close at the ends of the runs.
func (r *raddled) pins(x, top, foot, each float64) []scene.Item {
	var at []int
	if each >= leastApart {
		for i := range r.spaces + 1 {
			at = append(at, i)
		}
	} else {
		at = r.bounds()
	}
	var items []scene.Item
	for _, i := range at {
		px := x + float64(i)*each
		items = append(items, scene.Line{X1: px, Y1: top, X2: px, Y2: foot, Pen: rule})
	}
	return items
}

// bounds are where runs begin, and where the last ends.
func (r *raddled) bounds() []int {
	at := []int{0}
	for _, run := range r.runs {
		at = append(at, at[len(at)-1]+run.spaces)
	}
	return at
}

// takes is what a space of a run takes, above the run, where there is room for it; beside
// the centre, which has its own mark.
func (r *raddled) takes(x, y, each float64) []scene.Item {
	var items []scene.Item
	free := x
	for i, at := range r.bounds()[:len(r.runs)] {
		first, last := float64(at), float64(at+r.runs[i].spaces)
		if c := float64(r.left); first < c && c < last && c-first > last-c {
			last = c
		} else if first < c && c < last {
			first = c
		}
		text := label.fitting((last-first)*each, filled(wordToSpace, "{n}", r.runs[i].takes), r.runs[i].takes)
		wide := label.wide(text)
		from := min(max(x+(first+last)/2*each-wide/2, x), x+r.wide-wide)
		if text == "" || from < free {
			continue // it stands in the list below
		}
		items, free = append(items, label.at(from, y, text)), from+wide+1.5
	}
	return items
}

// fitting is the first of texts that is no wider than that; a single number always is.
func (s style) fitting(width float64, texts ...string) string {
	for _, text := range texts {
		if s.wide(text) <= width || len(text) < 3 {
			return text
		}
	}
	return ""
}

// centre is the middle of the raddle, and how many spaces lie on each side of it.
func (r *raddled) centre(x, top, foot, each float64) []scene.Item {
	mid := x + float64(r.left)*each
	words := foot + 5
	word := label.wide(wordCentre) / 2
	at := min(max(mid, x+word), x+r.wide-word) // of a narrow raddle the word is wider than half
	items := []scene.Item{
		scene.Line{X1: mid, Y1: top, X2: mid, Y2: words, Pen: scene.Solid(1.2)},
		middle(label, at, words, wordCentre),
	}
	left, right := filled(wordOnLeft, "{n}", count(r.left)), filled(wordOnRight, "{n}", count(r.spaces-r.left))
	half := word + 4
	if r.left > 0 && at-half-small.wide(left) > x {
		items = append(items, small.ending(at-half, words, left))
	}
	if at+half+small.wide(right) < x+r.wide {
		items = append(items, small.at(at+half, words, right))
	}
	return items
}

// middle sets a text around x in the line whose top is at y.
func middle(s style, x, y float64, text string) scene.Text {
	t := s.at(x, y, text)
	t.Anchor = scene.Middle
	return t
}
