package sheet

import (
	"slices"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// mostKits is how many kits have slips of their own.
const mostKits = 200

// kits is the yarn for each loom of a class, or the turns on one warp.
func (d *desk) kits() {
	looms := d.r.Plan.Class.Looms
	if looms == 0 {
		d.flow(titleKits, d.turns())
		return
	}
	blocks := append([]block{d.heading(wordTheKits)}, d.figures(d.lines("class.looms"))...)
	blocks = append(blocks, d.kitYarns()...)
	blocks = append(blocks, d.eachBrings()...)
	blocks = append(blocks, d.heading(wordSlips))
	for i := range min(looms, mostKits) {
		blocks = append(blocks, d.slip(i+1)...)
	}
	if looms > mostKits {
		blocks = append(blocks, d.text(body, filled(wordMoreKits, "{n}", count(mostKits)))...)
	}
	d.flow(titleKits, blocks)
}

// kitYarns has a row for each yarn: what one loom takes, and all of them.
func (d *desk) kitYarns() []block {
	columns := []column{
		{"", 0.8, false},
		{wordTheYarn, 3.8, false},
		{wordEnds, 1.2, true},
		{wordOneLoom, 2, true},
		{wordWeight, 2, true},
		{wordAll, 2, true},
		{wordWeight, 2, true},
		{wordPutUps, 1.9, true},
	}
	var rows [][]cell
	for _, name := range d.yarnNames() {
		id := "yarns[" + name + "]."
		rows = append(rows, []cell{
			tick, words(yarnName(name)), say(d.bench(id + "ends")), said(d.bench(d.oneLoom(name))), said(d.bench(d.oneLoomWeight(name))),
			say(d.bench(id + "need")), say(d.bench(id + "weight")), say(d.bench(id + "put-ups")),
		})
	}
	return d.table(columns, rows)
}

// oneLoom is the node of what one loom takes of a yarn; in a class of one that is
// all of it.
func (d *desk) oneLoom(name string) string {
	return d.either("yarns["+name+"].each-loom", "yarns["+name+"].need")
}

func (d *desk) oneLoomWeight(name string) string {
	return d.either("yarns["+name+"].each-loom-weight", "yarns["+name+"].weight")
}

func (d *desk) either(id, other string) string {
	if d.has(id) {
		return id
	}
	return other
}

// eachBrings is what everyone needs at her loom beside the yarn.
func (d *desk) eachBrings() []block {
	ids := []string{"warp.wound", "second-beam.wound", "ends.wound", "width.occupied", "reed", "sett.exact", "heddles.total", "heddles["}
	for _, name := range d.yarnNames() {
		ids = append(ids, "yarns["+name+"].bobbins")
	}
	return append([]block{d.heading(wordEachBrings)}, d.figures(d.lines(ids...))...)
}

// slip is one kit: whose it is, and its yarns to tick.
func (d *desk) slip(n int) []block {
	title := filled(wordKit, "{n}", count(n))
	out := []block{{high: 7.5, gap: 2.5, draw: func(x, y float64) []scene.Item {
		at := strong.base(y+2) + 0.8
		from := x + 30
		return []scene.Item{
			strong.at(x, y+2, title), body.at(from, y+2, wordName),
			scene.Line{X1: from + body.wide(wordName) + 2, Y1: at, X2: x + d.width(), Y2: at, Pen: rule},
		}
	}}}
	yarns := d.slipYarns()
	if len(yarns) > 0 {
		yarns[0].gap = 1.5
	}
	return together(append(out, yarns...))
}

// portion is one yarn of a kit: its name and how much of it.
type portion struct{ name, much string }

// slipYarns is the yarns of a kit with a box each, two abreast where the names are
// short enough; a name that is still too long is cut, never an amount.
func (d *desk) slipYarns() []block {
	all, widest := d.portions()
	abreast := 1
	if half := d.width()/2 - gutter - box - 2*afterBox; widest <= half {
		abreast = 2
	}
	each := (d.width() - gutter*float64(abreast-1)) / float64(abreast)
	var out []block
	for row := range slices.Chunk(all, abreast) {
		out = append(out, block{high: 7, draw: func(x, y float64) []scene.Item {
			var items []scene.Item
			for i, p := range row {
				items = append(items, p.draw(x+float64(i)*(each+gutter), y, each)...)
			}
			return items
		}})
	}
	return out
}

// portions is what one loom takes of each yarn by length and weight, and how wide
// the widest runs.
func (d *desk) portions() (all []portion, widest float64) {
	for _, name := range d.yarnNames() {
		much := d.bench(d.oneLoom(name))
		if weight := d.bench(d.oneLoomWeight(name)); weight != "" {
			much += ", " + weight
		}
		p := portion{yarnName(name), letter.FractionText(much)}
		all, widest = append(all, p), max(widest, body.wide(p.name)+strong.wide(p.much))
	}
	return all, widest
}

// draw sets a box, the name, and how much at the right.
func (p portion) draw(x, y, wide float64) []scene.Item {
	from := x + box + afterBox
	room := wide - box - 2*afterBox - strong.wide(p.much)
	name := body.fit(p.name, room)
	return []scene.Item{
		scene.TickBox(x, y+(body.lead+box)/2, box),
		body.at(from, y, name),
		scene.Leader(from+body.wide(name)+1, x+wide-strong.wide(p.much)-1, body.base(y)),
		level(strong, body, x+wide, y, p.much),
	}
}
