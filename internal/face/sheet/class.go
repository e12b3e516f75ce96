package sheet

import (
	"strings"

	"sley/internal/face/present"
)

// class is every figure with its working, in the order of the work, with a line
// beside each to work it out on; then what it comes to, and the sources.
func (d *desk) class() {
	c := present.CourseOf(d.r, d.u)
	rows := d.handoutRows(c)
	blocks := append(d.text(small, wordWorking), rows.head)
	told := map[string]bool{}
	for _, s := range c.Stages {
		blocks = append(blocks, rows.under(nearer(d.heading(stageTitle(s)))))
		for _, step := range s.Steps {
			blocks = append(blocks, rows.under(rows.row(once(step, told))))
		}
	}
	blocks = append(blocks, d.comesTo(c, true)...)
	blocks = append(blocks, d.sources(c.Sources)...)
	d.flow(titleClass, blocks)
}

// nearer is a heading with less above it, for pages of many.
func nearer(b block) block {
	b.gap, b.high = 2.6, heading.lead
	return b
}

// once leaves out the words of a formula that were told on the same line before, of
// another piece or yarn or earlier in a list.
func once(s present.Step, told map[string]bool) present.Step {
	key := count(s.Line) + " " + s.Ask
	if told[key] && s.Figures != "" {
		s.Words = ""
	}
	told[key] = true
	return s
}

// stageTitle is the heading of a stage, with whose it is.
func stageTitle(s present.Stage) string {
	whose := strings.TrimSpace(s.Letter + " " + s.Owner)
	if whose == "" {
		return s.Title
	}
	return s.Title + ": " + whose
}

// sources lists what the small numbers in [ ] stand for.
func (d *desk) sources(list []string) []block {
	if len(list) == 0 {
		return nil
	}
	parts := make([]string, len(list))
	for i, source := range list {
		parts[i] = sourceMark(i+1) + " " + source
	}
	return append([]block{nearer(d.heading(wordSources))}, bound(d.text(small, strings.Join(parts, "; ")+"."))...)
}

func sourceMark(n int) string { return "[" + count(n) + "]" }
