package drafting

import (
	"fmt"

	"sley/internal/engine/draw/scene"
)

// painted is a rectangle of one ink on a page.
type painted struct {
	box scene.Box
	ink scene.Ink
}

// read is what a page shows to who knows nothing of how it was laid out.
type read struct {
	fills   []painted       // in the order drawn
	frames  []scene.Box     // rectangles with an outline and no fill
	circles []scene.Circle  //
	crosses []scene.Point   // their middles
	texts   []scene.Text    //
	strokes []scene.Segment // of all paths that are not filled
	picture *scene.Picture
}

func readPage(p scene.Page) *read {
	r := &read{}
	for _, it := range p.Items {
		switch it := it.(type) {
		case scene.Rect:
			box := scene.Box{X: it.X, Y: it.Y, Width: it.Width, Height: it.Height}
			if it.Fill.IsNone() {
				r.frames = append(r.frames, box)
			} else {
				r.fills = append(r.fills, painted{box, it.Fill})
			}
		case scene.Path:
			r.path(it)
		case scene.Circle:
			r.circles = append(r.circles, it)
		case scene.Text:
			r.texts = append(r.texts, it)
		case scene.Picture:
			r.picture = &it
		}
	}
	return r
}

// path takes apart a path of upright rectangles, or of strokes.
func (r *read) path(p scene.Path) {
	if p.Fill.IsNone() {
		r.strokes = append(r.strokes, p.Segments...)
		for i := 0; i+3 < len(p.Segments); i++ {
			a, b, c, d := p.Segments[i].To, p.Segments[i+1].To, p.Segments[i+2].To, p.Segments[i+3].To
			if a.X != b.X && a.Y != b.Y && near(a.X+b.X, c.X+d.X) && near(a.Y+b.Y, c.Y+d.Y) {
				r.crosses = append(r.crosses, scene.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2})
			}
		}
		return
	}
	for i := 0; i < len(p.Segments); i += 5 {
		corners := []scene.Point{p.Segments[i].To, p.Segments[i+1].To, p.Segments[i+2].To, p.Segments[i+3].To}
		if p.Segments[i+4].Step != scene.Close {
			panic(fmt.Sprint("a filled path that is no rectangles: ", p.Segments[i:i+5]))
		}
		r.fills = append(r.fills, painted{scene.Around(corners), p.Fill})
	}
}

func near(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }

// ink is what is painted last over a place; white where nothing is.
func (r *read) ink(x, y float64) scene.Ink {
	for i := len(r.fills) - 1; i >= 0; i-- {
		if r.fills[i].box.Contains(scene.Point{X: x, Y: y}) {
			return r.fills[i].ink
		}
	}
	return white
}

// circled and crossed say whether the middle of a mark of a tie-up lies in a place.
func (r *read) circled(x, y float64) bool {
	for _, c := range r.circles {
		if near(c.X, x) && near(c.Y, y) {
			return true
		}
	}
	return false
}

func (r *read) crossed(x, y float64) bool {
	for _, c := range r.crosses {
		if near(c.X, x) && near(c.Y, y) {
			return true
		}
	}
	return false
}

// written is the text whose letters have their middle at a place.
func (r *read) written(x, y float64) string {
	for _, t := range r.texts {
		if t.Anchor == scene.Middle && near(t.X, x) && near(t.Y-high/2, y) {
			return t.Text
		}
	}
	return ""
}
