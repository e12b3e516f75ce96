package present

import (
	"strings"
	"unicode/utf8"
)

// How a page is set as plain text: labels and figures joined by leader dots.
const (
	textIndent = "  "
	textFigure = 54 // the column in which figures end
	textWidest = 78
)

// Text sets the page as plain text for a terminal or a bench note.
func (p Page) Text() string {
	var b strings.Builder
	b.WriteString(p.Title + "\n")
	if p.Note != "" {
		b.WriteString(wrap(p.Note, textWidest) + "\n")
	}
	for _, s := range p.Sections {
		if len(s.Lines) == 0 {
			continue
		}
		b.WriteString("\n" + s.Title + "\n")
		for _, l := range s.Lines {
			b.WriteString(l.text())
		}
	}
	if len(p.Sources) > 0 {
		b.WriteString("\nSources\n")
	}
	for _, source := range p.Sources {
		b.WriteString(textIndent + strings.ReplaceAll(wrap(source, textWidest-4), "\n", "\n"+textIndent+textIndent) + "\n")
	}
	return b.String()
}

func (l Line) text() string {
	dots := max(textFigure-utf8.RuneCountInString(l.Label)-utf8.RuneCountInString(l.Value), 3)
	line := textIndent + l.Label + " " + strings.Repeat(".", dots) + " " + l.Value
	if l.Note != "" {
		line += "   " + l.Note
	}
	for _, w := range l.Working {
		line += "\n" + textIndent + textIndent + textIndent + w
	}
	return line + "\n"
}

// wrap breaks a text at spaces so that no line is wider than width.
func wrap(text string, width int) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, line), "\n")
}

// Colophon says which version of a plan was reckoned, by its mark, and with which
// table of starting values: the foot of a sheet says the same.
func Colophon(mark, defaults string) string {
	return "plan " + mark + ", sley's usual values, " + defaults
}
