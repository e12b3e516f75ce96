package sheet

// raddle is the spaces of the raddle, drawn from its centre, and the sections of a
// sectional beam with the packages they are wound from.
func (d *desk) raddle() {
	title := titleRaddle
	blocks := d.care(careBeam)
	if d.has("raddle") {
		blocks = append(blocks, d.figures(d.lines("raddle", "raddle.per-space", "raddle.count", "raddle.left", "raddle.right", "raddle.ends"))...)
		blocks = append(blocks, d.fromCentre()...)
		blocks = append(blocks, d.groups(wordRaddle, "raddle.groups[")...)
	} else if title = titleSections; !d.has("sections.width") {
		title = titleBeam
	}
	blocks = append(blocks, d.onBeam()...)
	if d.has("ends.floats") {
		blocks = append(blocks, d.text(body, wordFloatOut)...)
	}
	d.flow(title, blocks)
}

// onBeam is the turns of the beam, and its sections where it has any.
func (d *desk) onBeam() []block {
	if !d.has("sections.width") {
		return d.turnsOfBeam()
	}
	var out []block
	if d.has("raddle") {
		out = append(out, d.heading(titleSections))
	}
	out = append(out, d.figures(d.lines("sections.width", "sections.each", "sections.whole", "sections.count", "sections.ends"))...)
	out = append(out, d.turnsOfBeam()...)
	out = append(out, d.groups(wordSections, "sections.groups[")...)
	out = append(out, d.packages()...)
	return append(out, d.eachSection()...)
}

// turnsOfBeam is how often the beam turns while the warp goes on.
func (d *desk) turnsOfBeam() []block {
	return append(d.figures(d.lines("beam.girth", "beam.full", "beam.turns")), d.found("winding.beam-yarn")...)
}

// eachSection is what every section has alike.
func (d *desk) eachSection() []block {
	g := newGrid(d.width(), []column{{"", 5, false}, {"", 2, false}})
	return together(append(d.text(body, wordSameTurns), g.row([]cell{words(wordFirstTurns), blank})))
}

// mostBoxes is how many boxes one row has to tick at most.
const mostBoxes = 240

// groups has a row for each run of spaces alike, with a box for each.
func (d *desk) groups(title, prefix string) []block {
	var rows [][]cell
	for _, n := range d.listed(prefix) {
		boxes := min(n.Is.Count(0), mostBoxes)
		rows = append(rows, []cell{said(d.u.Bench(n)), say(n.About.Mark), say(d.bench(n.ID + ".ends")), {ticks: boxes}})
	}
	if len(rows) == 0 {
		return nil
	}
	columns := []column{{wordHowMany, 2.4, true}, {wordTake, 3.6, true}, {wordEnds, 2, true}, {wordTickEach, 10, false}}
	return append([]block{d.heading(title)}, d.table(columns, rows)...)
}

// packages lists what is wound on the cones or spools behind a sectional beam.
func (d *desk) packages() []block {
	var rows [][]cell
	for _, n := range d.r.Nodes {
		if n.Says() == "packages[].runs[].wound" {
			rows = append(rows, []cell{tick, words(yarnName(n.About.Yarn)), words(n.About.Mark), said(d.u.Bench(n))})
		}
	}
	if len(rows) == 0 {
		return nil
	}
	columns := []column{{"", 1, false}, {wordTheYarn, 4, false}, {wordPackage, 3, false}, {wordWound, 4, true}}
	return append([]block{d.heading(wordPackages)}, d.table(columns, rows)...)
}
