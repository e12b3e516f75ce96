// Package svg writes a page of a scene as SVG 1.1 for the browser: true to size in
// millimetres, text as text, nothing fetched from elsewhere, and the same scene
// gives the same bytes. Encode uses no style elements or attributes, so that its
// drawing may stand inside a page with a strict content security policy;
// EncodeAlone makes a file of its own, which carries its letters. A scene.Picture is
// an image inside the file; such a policy shows it only where it allows "data:".
package svg

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"sley/internal/engine/draw/scene"
)

// Encode writes one page. The title says to screen readers and on hovering what is
// drawn; empty is none. The error is that the page cannot be drawn, or that w
// cannot be written to.
func Encode(w io.Writer, page scene.Page, title string) error {
	if err := page.Validate(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	out := bufio.NewWriter(w)
	e := &encoder{out: out, clips: map[string]bool{}}
	e.open(page, title)
	e.items(page.Items, 1)
	e.print("</svg>\n")
	return out.Flush() // remembers the first error of all writing
}

type encoder struct {
	out   *bufio.Writer
	clips map[string]bool // clip paths written so far
}

// print leaves errors to the writer, which keeps the first.
func (e *encoder) print(text ...string) {
	for _, t := range text {
		e.out.WriteString(t)
	}
}

func (e *encoder) open(page scene.Page, title string) {
	e.begin(page)
	if title == "" {
		e.print(">\n")
		return
	}
	e.print(` role="img">`, "\n<title>", escape(title), "</title>\n")
}

// begin writes the first tag without its end.
func (e *encoder) begin(page scene.Page) {
	wide, high := scene.Number(page.Width), scene.Number(page.Height)
	e.print(`<svg xmlns="http://www.w3.org/2000/svg" width="`, wide, `mm" height="`, high,
		`mm" viewBox="0 0 `, wide, " ", high, `" stroke-miterlimit="`, scene.Number(scene.MiterLimit), `"`)
}

func (e *encoder) items(items []scene.Item, depth int) {
	for _, it := range items {
		if t, ok := it.(scene.Text); ok && blank(t) {
			continue
		}
		e.print(strings.Repeat(" ", depth))
		e.item(it, depth)
	}
}

func (e *encoder) item(it scene.Item, depth int) {
	switch it := it.(type) {
	case scene.Line:
		e.print("<line", attr("x1", it.X1), attr("y1", it.Y1), attr("x2", it.X2), attr("y2", it.Y2), stroke(it.Pen), "/>\n")
	case scene.Polyline:
		e.polyline(it)
	case scene.Rect:
		e.print("<rect", attr("x", it.X), attr("y", it.Y), attr("width", it.Width), attr("height", it.Height),
			fill(it.Fill), stroke(it.Pen), "/>\n")
	case scene.Circle:
		e.print("<circle", attr("cx", it.X), attr("cy", it.Y), attr("r", it.Radius), fill(it.Fill), stroke(it.Pen), "/>\n")
	case scene.Path:
		e.path(it)
	case scene.Text:
		e.text(it)
	case scene.Picture:
		e.picture(it)
	case scene.Group:
		e.group(it, depth)
	}
}

func (e *encoder) polyline(l scene.Polyline) {
	name, inside := "polyline", scene.None
	if l.Closed {
		name, inside = "polygon", l.Fill
	}
	e.print("<", name, ` points="`)
	for i, p := range l.Points {
		if i > 0 {
			e.print(" ")
		}
		e.print(scene.Number(p.X), ",", scene.Number(p.Y))
	}
	e.print(`"`, fill(inside), stroke(l.Pen), "/>\n")
}

func (e *encoder) path(p scene.Path) {
	e.print(`<path d="`)
	for _, s := range p.Segments {
		e.print(s.String())
	}
	e.print(`"`, fill(p.Fill), stroke(p.Pen), "/>\n")
}

func (e *encoder) group(g scene.Group, depth int) {
	clip := ""
	if !g.Clip.IsZero() {
		clip = e.clip(g.Clip, depth)
	}
	e.print("<g")
	if g.X != 0 || g.Y != 0 {
		e.print(` transform="translate(`, scene.Number(g.X), " ", scene.Number(g.Y), `)"`)
	}
	e.print(clip, ">\n")
	e.items(g.Items, depth+1)
	e.print(strings.Repeat(" ", depth), "</g>\n")
}
