package sheet

import (
	"strings"

	"sley/internal/engine/draw/scene"
)

// The page in mm: its margins, and what the head and the foot take inside them.
const (
	margin   = 15.0
	headHigh = 9.0
	footHigh = 9.0
)

// press sets pages: a head and a foot on each, and between them what flows.
type press struct {
	size  scene.Size
	plan  facts
	pages []leaf
	title string  // of the sheet being set
	y     float64 // where the next block begins
	used  bool    // whether the page holds a block
}

// facts stand on every page.
type facts struct{ name, date, mark, defaults string }

// leaf is a page being made; its number comes when all are counted.
type leaf struct {
	title string
	items []scene.Item
	whole func(of int) scene.Page // of a page that another package lays out
}

func (p *press) width() float64  { return p.size.Width - 2*margin }
func (p *press) bottom() float64 { return p.size.Height - margin - footHigh }

// open begins a page, with the sheet's title where it is the sheet's first.
func (p *press) open(title string, more bool) {
	p.title, p.used = title, false
	p.pages = append(p.pages, leaf{title: title})
	p.y = margin + headHigh + 2
	as, text := headline, title
	if more {
		as, text = further, title+wordContinued
	}
	p.add(as.at(margin, p.y, as.fit(text, p.width())))
	p.y += as.lead + 3
}

func (p *press) add(items ...scene.Item) {
	last := &p.pages[len(p.pages)-1]
	last.items = append(last.items, items...)
}

// document puts head and foot to the pages.
func (p *press) document(date string) scene.Document {
	doc := scene.Document{Title: p.plan.name, Subject: wordSubject, Date: date}
	for i, l := range p.pages {
		if l.whole != nil {
			doc.Pages = append(doc.Pages, l.whole(len(p.pages)))
			continue
		}
		items := append(p.head(l.title), p.foot(i+1)...)
		doc.Pages = append(doc.Pages, scene.Page{Width: p.size.Width, Height: p.size.Height, Items: append(items, l.items...)})
	}
	return doc
}

// head is the plan's name and the sheet's, above a rule; the sheet's may hold a long
// name of a piece.
func (p *press) head(title string) []scene.Item {
	right := p.size.Width - margin
	title = small.fit(title, 0.6*p.width())
	room := p.width() - small.wide(title) - 8
	y := margin + small.lead + 1
	return []scene.Item{
		label.at(margin, margin, label.fit(p.plan.name, room)), small.ending(right, margin, title),
		scene.Line{X1: margin, Y1: y, X2: right, Y2: y, Pen: rule},
	}
}

// foot is the date of the plan, the version of the defaults and the page of how
// many, below a rule.
func (p *press) foot(number int) []scene.Item {
	right, y := p.size.Width-margin, p.size.Height-margin-small.lead
	pages := filled(wordPage, "{n}", count(number), "{of}", count(len(p.pages)))
	middle := small.at(p.size.Width/2, y, filled(wordDefaults, "{version}", p.plan.defaults))
	middle.Anchor = scene.Middle
	return []scene.Item{
		scene.Line{X1: margin, Y1: y - 1, X2: right, Y2: y - 1, Pen: rule},
		small.at(margin, y, small.fit(p.dated(), p.width()/3-4)), middle, small.ending(right, y, pages),
	}
}

// dated says which plan it is: its mark and its date, as far as they are known.
func (p *press) dated() string {
	words := wordDated
	switch {
	case p.plan.mark != "" && p.plan.date != "":
		words = wordMarkedDated
	case p.plan.mark != "":
		words = wordMarked
	case p.plan.date == "":
		words = wordUndated
	}
	return filled(words, "{date}", p.plan.date, "{mark}", p.plan.mark)
}

// filled puts values into the words of the table.
func filled(text string, pairs ...string) string { return strings.NewReplacer(pairs...).Replace(text) }
