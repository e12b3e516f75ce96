package sheet

// raddle is the spaces of the raddle, and the sections of a sectional beam with
// the packages they are wound from.
func (d *desk) raddle() {
	title := titleRaddle
	blocks := d.care(careBeam)
	if d.has("raddle") {
		blocks = append(blocks, d.figures(d.lines("raddle", "raddle.per-space", "raddle.count", "raddle.left", "raddle.right", "raddle.ends"))...)
		blocks = append(blocks, d.groups(wordRaddle, "raddle.groups[")...)
	} else {
		title = titleSections
	}
	if d.has("sections.width") {
		if d.has("raddle") {
			blocks = append(blocks, d.heading(titleSections))
		}
		blocks = append(blocks, d.figures(d.lines("sections.width", "sections.each", "sections.whole", "sections.count", "sections.ends"))...)
		blocks = append(blocks, d.groups(wordSections, "sections.groups[")...)
		blocks = append(blocks, d.packages()...)
	}
	d.flow(title, blocks)
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
