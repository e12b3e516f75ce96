package present

import (
	"strconv"
	"strings"

	"sley/internal/engine/reckon"
)

func number(n int) string { return strconv.Itoa(n) }

// found says what was reckoned backwards, and within what.
func (p *pager) found() Section {
	b := p.r.Backward
	s := Section{ID: "found", Title: "Found backwards"}
	if b == nil {
		return s
	}
	id := b.What
	if id == "warp.sett" {
		id = "sett.wanted"
	}
	if len(b.Limits) == 0 {
		id = "yarns[" + trimYarn(b.What) + "].need"
	}
	s.Lines = p.lines(id)
	for _, l := range b.Limits {
		lines := p.lines(l.Need, l.Have)
		if l.Path == b.Binding && len(lines) > 1 {
			lines[1].Note = join(lines[1].Note, "this decides")
		}
		s.Lines = append(s.Lines, lines...)
	}
	return s
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + ", " + b
}

func trimYarn(path string) string {
	const prefix = "yarns."
	if len(path) > len(prefix) {
		return path[len(prefix):]
	}
	return path
}

func (p *pager) glance() Section {
	sett := "sett.exact"
	for _, id := range []string{"sett.in-reed", "sett.wanted"} {
		if _, ok := p.r.Node(sett); !ok {
			sett = id
		}
	}
	s := Section{ID: "glance", Title: "At a glance", Lines: p.lines(
		"warp.wound", "second-beam.wound", "ends.wound", sett, "width.occupied", "picks.wanted", "weft.picks",
	)}
	for _, name := range p.yarnNames() {
		id := "yarns[" + name + "]."
		lines := p.lines(id + "need")
		for _, also := range p.lines(id+"weight", id+"put-ups") {
			lines[0].Note = join(lines[0].Note, also.Value+onlyPutUps(also))
		}
		s.Lines = append(s.Lines, lines...)
	}
	return s
}

func onlyPutUps(l Line) string {
	if strings.HasSuffix(l.ID, ".put-ups") {
		return " to buy"
	}
	return ""
}

// yarnNames lists the yarns that are needed.
func (p *pager) yarnNames() []string {
	var out []string
	for _, n := range p.r.Nodes {
		if n.Says() == "yarns[].need" {
			out = append(out, n.About.Yarn)
		}
	}
	return out
}

func (p *pager) piece(i int) Section {
	name := p.r.Plan.Pieces[i].Name
	if name == "" {
		name = "piece"
	}
	id := "pieces[" + number(i) + "]."
	p.within = name + ", "
	defer func() { p.within = "" }()
	s := Section{ID: "pieces[" + number(i) + "]", Title: "Each " + name, Lines: p.lines(
		id+"count", id+"panels", id+"in-turn", id+"length", id+"width",
		id+"picks", id+"treadlings", id+"picks.on-loom", id+"on-loom", id+"relaxed", id+"comes-out", id+"seamed-width",
		id+"first.fold", id+"last.fold", id+"first.fringe-cut", id+"last.fringe-cut",
		id+"warp-each", id+"marks[",
	)}
	return s
}

func (p *pager) warp() Section {
	return Section{ID: "warp", Title: "Warp length", Lines: p.lines(
		"warp.pieces", "warp.gaps", "warp.header", "warp.sampling", "warp.extras[", "warp.tie-ons", "warp.waste",
		"warp.fringe-credit", "warp.needed", "step", "warp.spare", "warp.if-added", "second-beam.needed",
	)}
}

// across shows the width, with both neighbours of the ends where whole repeats
// were chosen between.
func (p *pager) across() Section {
	s := Section{ID: "across", Title: "Width and ends", Lines: p.lines("width.wanted", "sett.wanted", "ends.exact")}
	below, _ := p.r.Node("ends.below")
	above, _ := p.r.Node("ends.above")
	if !below.Is.Equal(above.Is) {
		s.Lines = append(s.Lines, p.lines("ends.below", "ends.below.finished", "ends.above", "ends.above.finished")...)
	}
	s.Lines = append(s.Lines, p.lines(
		"ends", "ends.doubled", "ends.floats", "ends.bundles",
		"width.in-reed", "width.fell", "width.relaxed", "width.finished", "width.opened",
	)...)
	return s
}

func (p *pager) reed() Section {
	s := Section{ID: "reed", Title: "Reed", Lines: p.lines("reed", "sett.off", "sett.stripes[", "dents.cloth", "dents.odd", "dents", "dents.left", "dents.right", "dents.first", "dents.last")}
	for i := range p.r.Sleying {
		s.Lines = append(s.Lines, p.lines("sley.other["+number(i)+"].exact")...)
	}
	for i := range s.Lines {
		if n, ok := p.r.Node(s.Lines[i].ID); ok && n.Says() == "sley.other[].exact" {
			off, _ := p.r.Node("sley.other[" + number(n.About.Index) + "].off")
			p.used[off.ID] = true
			s.Lines[i].Note = p.u.Bench(off) + " off"
		}
	}
	return s
}

func (p *pager) heddles() Section {
	return Section{ID: "heddles", Title: "Heddles", Lines: p.lines("heddles[", "heddles.spare[", "heddles.total")}
}

func (p *pager) weft() Section {
	return Section{ID: "weft", Title: "Weft", Lines: p.lines(
		"weft.pick", "weft.picks-a-layer", "weft.picks", "weft.of-warp", "weft.per-piece", "weft.hemstitching", "weft.repairs", "sampling.weft",
	)}
}

func (p *pager) yarns() []Section {
	var out []Section
	for _, name := range p.yarnNames() {
		title := "Yarn: " + name
		if name == "" {
			title = "Yarn"
		}
		id := "yarns[" + name + "]."
		p.within = strings.TrimPrefix(title, "Yarn: ") + ", "
		if name == "" {
			p.within = "yarn, "
		}
		out = append(out, Section{ID: "yarns[" + name + "]", Title: title, Lines: p.lines(
			id+"ends", id+"ends-2", id+"warp", id+"warp-weight", id+"picks", id+"weft-laid", id+"tails", id+"reserve",
			id+"weft", id+"bobbin-ends", id+"weft-wound", id+"weft-weight", id+"bobbins", id+"each-loom", id+"each-loom-weight", id+"need", id+"weight",
			id+"stock", id+"stock-left", id+"to-buy", id+"put-up", id+"put-ups", id+"left", id+"cost",
		)})
		p.within = ""
	}
	return out
}

func (p *pager) cost() Section {
	return Section{ID: "cost", Title: "Cost and time", Lines: p.lines(
		"cost.yarn[", "time.winding", "time.threading", "time.sleying", "time.weaving", "time", "cost.work",
	)}
}

// defaults lists the starting values that were taken because the plan does not
// say, each with its range and the id of its source.
func (p *pager) defaults() Section {
	s := Section{ID: "defaults", Title: "Taken as usual, because the plan does not say"}
	for _, n := range p.r.Nodes {
		if n.Origin != reckon.Default {
			continue
		}
		l := p.line(n)
		l.Value = p.u.Exact(n.Figure)
		l.Note = "usually " + p.u.span(n) + " [" + n.Source + "]"
		s.Lines = append(s.Lines, l)
	}
	return s
}
