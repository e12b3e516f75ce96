package present

import (
	"slices"
	"strings"
)

// sections gives the sections that have lines, in the order of the work: of those that are
// wanted, where only some are.
func (p *pager) sections() []Section {
	var out []Section
	for _, part := range p.parts() {
		if p.only != nil && !slices.ContainsFunc(part.names, p.only) {
			continue
		}
		for _, s := range part.lay() {
			name, _, _ := strings.Cut(s.ID, "[")
			if len(s.Lines) > 0 && (p.only == nil || p.only(name)) {
				out = append(out, s)
			}
		}
	}
	return out
}

// sectionPart is what lays out the sections of those names.
type sectionPart struct {
	names []string
	lay   func() []Section
}

func (p *pager) parts() []sectionPart {
	one := func(name string, lay func() Section) sectionPart {
		return sectionPart{[]string{name}, func() []Section { return []Section{lay()} }}
	}
	return []sectionPart{
		one("found", p.found), one("glance", p.glance),
		{[]string{"pieces"}, p.pieces},
		one("warp", p.warp), one("across", p.across),
		{[]string{"winding", "raddle", "sectional", "beam"}, p.dressing},
		one("reed", p.reed), one("heddles", p.heddles), one("weft", p.weft),
		{[]string{"yarns"}, p.yarns},
		one("cost", p.cost), one("defaults", p.defaults),
	}
}

func (p *pager) pieces() []Section {
	var out []Section
	for i := range p.r.Plan.Pieces {
		out = append(out, p.piece(i))
	}
	return out
}
