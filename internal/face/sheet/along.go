package sheet

import (
	"sley/internal/engine/draw/ribbon"
	"sley/internal/engine/draw/scene"
	"sley/internal/trade/qty"
)

// ribbonHigh is how high the drawings of a warp are, in mm.
const ribbonHigh = 11

// mostPieces is how many pieces have a part of their own on the drawing; of more,
// each kind has one.
const mostPieces = 24

// warpAlong is the wound warp to scale, from its front to its back.
func (d *desk) warpAlong() []block {
	m := d.mapped()
	wound, ok := d.r.Node("warp.wound")
	if !ok || !m.whole(wound.Is) {
		return nil
	}
	return d.drawn(wordWarpLong, m)
}

// mapping is the parts of a ribbon and its key.
type mapping struct {
	parts []ribbon.Part
	key   []keyed
	all   qty.Rat
}

// keyed is a tone with what it stands for.
type keyed struct {
	tone ribbon.Tone
	text string
}

// whole reports whether the parts come to that.
func (m *mapping) whole(size qty.Rat) bool { return m.all.Equal(size) }

// add puts a part at the end, and its words into the key where they are new.
func (m *mapping) add(size qty.Rat, tone ribbon.Tone, label, text string) {
	if size.Sign() <= 0 {
		return
	}
	m.all = m.all.Add(size)
	m.parts = append(m.parts, ribbon.Part{Size: size.Float(), Tone: tone, Label: label})
	for _, k := range m.key {
		if k == (keyed{tone, text}) {
			return
		}
	}
	m.key = append(m.key, keyed{tone, text})
}

// mapped lays the warp out: what is tied on at the front, header, sampling and
// extras, the pieces with their gaps, what is spare, and the waste behind.
func (d *desk) mapped() *mapping {
	m := &mapping{}
	waste := d.is("warp.waste").Sub(d.is("warp.fringe-credit"))
	front := qty.Min(d.is("tie-on"), waste)
	if !d.has("unreachable") && !d.has("back") {
		front = qty.Rat{} // the waste was not written by its places
	}
	key := filled(wordWasteKey, "{long}", d.written("warp.waste"))
	m.add(front, ribbon.Waste, "", key)
	d.once(m)
	d.piecesOn(m)
	m.add(d.is("warp.spare"), ribbon.Spare, "", filled(wordSpareKey, "{long}", d.written("warp.spare")))
	m.add(waste.Sub(front), ribbon.Waste, "", key)
	return m
}

// once is what comes before the pieces, each once.
func (d *desk) once(m *mapping) {
	m.add(d.is("warp.header"), ribbon.Begun, "", filled(wordHeaderKey, "{long}", d.written("warp.header")))
	m.add(d.is("warp.sampling"), ribbon.Trial, "", filled(wordTrialKey, "{long}", d.written("warp.sampling")))
	if d.r.Plan.Sampling.CutOff {
		d.tieAgain(m)
	}
	for _, n := range d.listed("warp.extras[") {
		m.add(n.Is, ribbon.Bare, "", filled(wordExtraKey, "{name}", n.About.Mark, "{long}", d.written(n.ID)))
	}
}

// tieAgain is what tying on once more takes, where anything is cut off early.
func (d *desk) tieAgain(m *mapping) {
	if d.has("warp.tie-ons") {
		m.add(d.is("tie-on"), ribbon.Begun, "", filled(wordAgainKey, "{long}", d.written("tie-on")))
	}
}

// piecesOn lays the pieces out with the gaps between them: each for itself, or
// each kind where there are too many or some were woven otherwise.
func (d *desk) piecesOn(m *mapping) {
	gap, n := d.is("gap"), 0
	apart := d.apartOn()
	for i := range d.r.Plan.Pieces {
		id, many := pieceID(i), max(d.r.Plan.Pieces[i].Count, 1)
		tone := ribbon.Tone(2 * i) // paper white first, then light greys: names are read on them
		if apart {
			text := filled(wordPieceKey, "{piece}", d.pieceName(i), "{each}", d.written(id+"warp-each"))
			for range many * max(d.r.Plan.Pieces[i].Panels, 1) {
				d.gapOn(m, gap, n)
				n++
				m.add(d.is(id+"warp-each"), tone, count(n), text)
			}
			d.cutAfter(m, i)
			continue
		}
		m.add(d.is(id+"warp-all"), tone, d.pieceName(i), filled(wordKindKey, "{piece}", d.pieceName(i), "{count}", count(many), "{all}", d.written(id+"warp-all")))
		d.cutAfter(m, i)
	}
	if !apart {
		m.add(d.is("warp.gaps"), ribbon.Gap, "", filled(wordGapKey, "{long}", d.written("warp.gaps")))
	}
}

// cutAfter ties on again where the cloth is cut off after a kind of piece.
func (d *desk) cutAfter(m *mapping, i int) {
	if d.r.Plan.Pieces[i].CutOff && i < len(d.r.Plan.Pieces)-1 {
		d.tieAgain(m)
	}
}

// gapOn is the gap before every piece but the first.
func (d *desk) gapOn(m *mapping, gap qty.Rat, before int) {
	if before > 0 {
		m.add(gap, ribbon.Gap, "", filled(wordGapKey, "{long}", d.written("gap")))
	}
}

// apartOn reports whether the pieces can be drawn one by one.
func (d *desk) apartOn() bool {
	n := 0
	for i, p := range d.r.Plan.Pieces {
		made := max(p.Count, 1) * max(p.Panels, 1)
		each := d.is(pieceID(i) + "warp-each").Mul(qty.Int(int64(made)))
		if !each.Equal(d.is(pieceID(i) + "warp-all")) {
			return false
		}
		n += made
	}
	return n <= mostPieces
}

// is is a node's exact figure, nothing where there is no node.
func (d *desk) is(id string) qty.Rat {
	n, _ := d.r.Node(id)
	return n.Is
}

// written is a node's figure for the key, with its fractions set.
func (d *desk) written(id string) string { return say(d.bench(id)).text }

// drawn is a ribbon with its key under it, on one page.
func (d *desk) drawn(title string, m *mapping) []block {
	out := []block{d.heading(title), {high: ribbonHigh, gap: 1, draw: func(x, y float64) []scene.Item {
		return []scene.Item{ribbon.Draw(m.parts, scene.Box{X: x, Y: y, Width: d.width(), Height: ribbonHigh})}
	}}}
	return together(append(out, d.keyOf(m.key)...))
}

// keyOf is what each tone stands for, two abreast.
func (d *desk) keyOf(list []keyed) []block {
	const side, high = 3.6, 6.0
	each := d.width() / 2
	var out []block
	for len(list) > 0 {
		row := list[:min(2, len(list))]
		list = list[len(row):]
		out = append(out, block{high: high, draw: func(x, y float64) []scene.Item {
			var items []scene.Item
			for i, k := range row {
				left := x + float64(i)*each
				text := body.at(left+side+afterBox, y, body.fit(k.text, each-side-afterBox-gutter))
				items = append(items, ribbon.Swatch(k.tone, left, text.Y, side), text)
			}
			return items
		}})
	}
	if len(out) > 0 {
		out[0].gap = 1.5
	}
	return out
}

// warpAcross is the stripes in the reed to scale, where there are several.
func (d *desk) warpAcross() []block {
	if len(d.r.Stripes) < 2 {
		return nil
	}
	m := &mapping{}
	names := d.yarnNames()
	for _, s := range d.r.Stripes {
		m.add(s.Ends.Div(s.Density), toneOf(names, s.Yarn), "", d.yarnKey(s.Yarn))
	}
	return d.drawn(wordWarpWide, m)
}

// toneOf is the tone of a yarn: its place among those that are needed.
func toneOf(names []string, yarn string) ribbon.Tone {
	for i, name := range names {
		if name == yarn {
			return ribbon.Tone(i)
		}
	}
	return ribbon.Bare
}

// yarnKey is a yarn with its ends, the floating selvedges among them.
func (d *desk) yarnKey(name string) string {
	ends := d.bench("yarns[" + name + "].ends")
	if ends == "" {
		return yarnName(name)
	}
	return filled(wordYarnKey, "{yarn}", yarnName(name), "{ends}", ends)
}
