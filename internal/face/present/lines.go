package present

import (
	"slices"
	"strings"

	"sley/internal/engine/reckon"
)

// Lines gives a line of each node named that there is, as PageOf would; an id
// that ends in "[" stands for every node of that list. within is left out at the
// beginning of the labels.
func Lines(r *reckon.Result, u Units, within string, ids ...string) []Line {
	p := &pager{r: r, u: u, used: map[string]bool{}, within: within}
	return p.lines(ids...)
}

// Glance gives the lines of the plan at a glance, what was found backwards first;
// each figure stands once.
func Glance(r *reckon.Result, u Units) []Line {
	p := &pager{r: r, u: u, used: map[string]bool{}}
	lines := p.found().Lines
	for _, l := range p.glance().Lines {
		again := func(have Line) bool { return have.ID == l.ID }
		if i := slices.IndexFunc(lines, again); i >= 0 {
			lines[i].Note = strings.Trim(join(l.Note, lines[i].Note), ", ")
			continue
		}
		lines = append(lines, l)
	}
	return lines
}
