package present

import (
	"strings"

	"sley/internal/engine/reckon"
)

// dressing gives the sections of the winding, the raddle and the sectional beam,
// in the order in which a warp goes through them from back to front.
func (p *pager) dressing() []Section {
	return []Section{p.winding(), p.raddle(), p.sectional(), p.beam()}
}

// winding shows the way of the warp with its pegs, and each bout with its colour
// changes below it.
func (p *pager) winding() Section {
	s := Section{ID: "winding", Title: "Winding", Lines: p.lines(
		"winding.ends", "winding.apart", "winding.together", "winding.passes", "winding.split",
	)}
	s.Lines = append(s.Lines, p.path()...)
	s.Lines = append(s.Lines, p.lines(
		"winding.over", "winding.mill", "winding.turns", "winding.past",
		"winding.bout", "winding.peg", "winding.peg-wraps", "winding.peg-holds", "winding.most", "winding.bouts", "winding.tie", "winding.ties",
	)...)
	for i := 0; ; i++ {
		bout := p.lines("bouts["+number(i)+"].ends", "bouts["+number(i)+"].changes[")
		if len(bout) == 0 {
			return s
		}
		s.Lines = append(s.Lines, bout...)
	}
}

// path shows the length of the path, noting its pegs.
func (p *pager) path() []Line {
	lines := p.lines("winding.path-length")
	for i := range lines {
		n, _ := p.r.Node(lines[i].ID)
		lines[i].Note = join(lines[i].Note, n.About.Mark)
	}
	return lines
}

func (p *pager) raddle() Section {
	return Section{ID: "raddle", Title: "Raddle", Lines: p.lines(
		"raddle", "raddle.per-space", "raddle.groups[", "raddle.count", "raddle.left", "raddle.right",
	)}
}

// sectional shows the sections from left to right and the packages of each yarn.
func (p *pager) sectional() Section {
	s := Section{ID: "sectional", Title: "Sectional beam", Lines: p.lines(
		"sections.width", "sections.each", "sections.whole", "sections.groups[", "sections.count",
	)}
	for _, n := range p.r.Nodes {
		if n.Says() == "packages[].count" || n.Says() == "packages[].runs[].wound" {
			s.Lines = append(s.Lines, p.line(n))
		}
	}
	s.Lines = append(s.Lines, p.lines("packages.wound")...)
	return s
}

// beam is the turns that the warp makes on its beam.
func (p *pager) beam() Section {
	return Section{ID: "beam", Title: "Beam", Lines: p.lines("beam.girth", "beam.layer", "beam.grows", "beam.full", "beam.turns")}
}

// mostStripes is how many stripes a message names.
const mostStripes = 3

// unevenStripes says the first stripes, and how many more there are.
func unevenStripes(list []reckon.Uneven) string {
	var parts []string
	for _, u := range list[:min(len(list), mostStripes)] {
		parts = append(parts, unevenStripe(u))
	}
	text := strings.Join(parts, ", ")
	if more := len(list) - len(parts); more > 0 {
		text += " and " + number(more) + " more"
	}
	return text
}

// unevenStripe says one stripe: stripe 2 with 7 ends of blue.
func unevenStripe(u reckon.Uneven) string {
	which := "stripe " + number(u.First)
	if u.Last > u.First {
		which = "stripes " + number(u.First) + " to " + number(u.Last)
	}
	ends := " ends of "
	if u.Ends == 1 {
		ends = " end of "
	}
	return which + " with " + number(u.Ends) + ends + strings.Join(u.Yarns, " and ")
}

// markText says the mark of a node. The pegs of a board have names of the
// weaver's own, which may be those of marks.
func markText(n reckon.Node) string {
	if words, ok := markWords[n.About.Mark]; ok && !strings.HasPrefix(n.ID, "winding.") {
		return words
	}
	return n.About.Mark
}
