// Package check finds what a printer would send a page back for: letters off the
// paper or out of their box, letters over letters, letters too small to read. It
// looks at the scene alone, so it judges every back end at once.
package check

import (
	"fmt"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// Rules are what a page is held to.
type Rules struct {
	MinPt float64 // the smallest letters allowed, in points; 0 allows all
	// Slack is how far, in mm, ink may reach over an edge or into other ink
	// before it counts; 0 is DefaultSlack.
	Slack float64
	// Margin is how far ink must stay from the edge of the page, in mm.
	Margin float64
}

// DefaultSlack is a hair, in mm: what a printer would not see.
const DefaultSlack = 0.05

// Kind is what is wrong.
type Kind int

const (
	OffPage Kind = iota // ink beyond the page or in its margin
	OutsideBox
	Cut // ink beyond the clip of a group
	Overlap
	Small
)

// String says what is wrong in a few words.
func (k Kind) String() string {
	return [...]string{"off the page", "outside its box", "cut by its group", "over other text", "too small"}[k]
}

// Finding is one thing wrong with one text.
type Finding struct {
	Page  int // from 1
	Kind  Kind
	Text  string
	Other string    // the text it lies over, for Overlap
	Ink   scene.Box // around the ink, on the page
}

// String is the finding for a test's log.
func (f Finding) String() string {
	text := fmt.Sprintf("page %d: %q %s", f.Page, f.Text, f.Kind)
	if f.Kind == Overlap {
		text += fmt.Sprintf(" %q", f.Other)
	}
	return fmt.Sprintf("%s, at %s,%s size %s x %s mm", text, scene.Number(f.Ink.X), scene.Number(f.Ink.Y),
		scene.Number(f.Ink.Width), scene.Number(f.Ink.Height))
}

// Read returns everything found on the pages, page by page in the order drawn;
// none means a clean proof.
func Read(doc scene.Document, rules Rules) []Finding {
	if rules.Slack == 0 {
		rules.Slack = DefaultSlack
	}
	var found []Finding
	for i, page := range doc.Pages {
		p := proof{rules: rules, number: i + 1}
		p.gather(page.Items, 0, 0, nil)
		p.judge(scene.Box{Width: page.Width, Height: page.Height}.Inset(rules.Margin))
		found = append(found, p.found...)
	}
	return found
}

// proof is one page under the glass.
type proof struct {
	rules  Rules
	number int
	texts  []placed
	found  []Finding
}

// placed is a text with its ink where it lies on the page.
type placed struct {
	scene.Text
	quad  []scene.Point
	ink   scene.Box   // around the quad
	box   scene.Box   // declared, on the page; zero for none
	clips []scene.Box // of the groups it lies in
}

// gather finds the texts, with groups opened up; dx, dy is where a group stands.
func (p *proof) gather(items []scene.Item, dx, dy float64, clips []scene.Box) {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			p.place(it, dx, dy, clips)
		case scene.Group:
			inner := clips
			if !it.Clip.IsZero() {
				inner = append(clips[:len(clips):len(clips)], it.Clip.Shift(dx+it.X, dy+it.Y))
			}
			p.gather(it.Items, dx+it.X, dy+it.Y, inner)
		}
	}
}

func (p *proof) place(t scene.Text, dx, dy float64, clips []scene.Box) {
	t.X, t.Y = t.X+dx, t.Y+dy
	quad := letter.Quad(t)
	if quad == nil {
		return
	}
	one := placed{Text: t, quad: quad, ink: scene.Around(quad), clips: clips}
	if !t.Box.IsZero() {
		one.box = t.Box.Shift(dx, dy)
	}
	p.texts = append(p.texts, one)
}
