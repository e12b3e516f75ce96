package sheet

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// winding is the warp's length and ends, its way over the board or the mill, and
// its bouts; where no bouts are planned, the order of its colours.
func (d *desk) winding() {
	blocks := d.keyed(d.lines("warp.wound", "second-beam.wound", "ends.wound"), d.lines(
		"winding.ends", "winding.apart", "winding.together", "winding.passes", "winding.split",
		"winding.over", "winding.mill", "winding.turns", "winding.past",
		"winding.bout", "winding.peg", "winding.peg-holds", "winding.most", "winding.bouts", "winding.tie", "winding.ties",
	))
	blocks = append(blocks, d.endsOfYarns()...)
	blocks = append(blocks, d.found("winding.one-beam")...)
	if !d.hasSpreading() { // otherwise the sheet for the beam has it
		blocks = append(blocks, d.care(careBeam)...)
	}
	blocks = append(blocks, d.overBoard()...)
	blocks = append(blocks, d.way()...)
	blocks = append(blocks, d.found("winding.far-over")...)
	blocks = append(blocks, d.onMill()...)
	if d.has("bouts[0].ends") {
		blocks = append(blocks, d.heading(wordBouts))
		blocks = append(blocks, d.found("winding.uneven")...)
		blocks = append(blocks, d.bouts()...)
	} else {
		blocks = append(blocks, d.colours()...)
		blocks = append(blocks, d.found("winding.uneven")...)
	}
	d.flow(titleWinding, blocks)
}

// found says what the reckoning found under a code, with what to do; nothing where
// it found nothing.
func (d *desk) found(code string) []block {
	var out []block
	for _, p := range d.r.Problems.All() {
		if p.Code == code {
			p = d.u.Localise(p)
			out = append(out, d.text(body, present.Wrong(p)+"; "+present.Fix(p))...)
		}
	}
	for i := range out {
		out[i].keep = true
	}
	return out
}

// endsOfYarns is how many ends there are of each yarn.
func (d *desk) endsOfYarns() []block {
	var ids []string
	for _, name := range d.yarnNames() {
		ids = append(ids, "yarns["+name+"].ends", "yarns["+name+"].ends-2")
	}
	return d.figures(d.lines(ids...))
}

// way lists the pegs with how far it is to each.
func (d *desk) way() []block {
	var texts []string
	for _, n := range d.listed("winding.pegs[") {
		texts = append(texts, filled(wordPeg, "{peg}", n.About.Mark, "{far}", say(d.u.Bench(n)).text))
	}
	if len(texts) == 0 {
		return nil
	}
	return together(append([]block{d.heading(wordTheWay)}, d.ticks(3, texts)...))
}

// bouts has a row for each bout and one for each change of colour in it; those of
// one bout stay together.
func (d *desk) bouts() []block {
	columns := []column{{"", 1, false}, {wordBout, 1.2, true}, {wordEnds, 1.6, true}, {wordWhat, 6, false}, {wordPasses, 2.4, true}, {"", 2, false}}
	var rows [][]cell
	var stays []bool // whether a row stays with the next
	for i := 0; d.has("bouts[" + count(i) + "].ends"); i++ {
		id := "bouts[" + count(i) + "]."
		n, _ := d.r.Node(id + "ends")
		changes := d.listed(id + "changes[")
		rows = append(rows, []cell{tick, said(count(n.About.Index)), said(d.u.Bench(n)), words(n.About.Yarn), {}, {}})
		for _, c := range changes {
			rows, stays = append(rows, d.change(c)), append(stays, true)
		}
		stays = append(stays, false)
	}
	out := d.table(columns, rows)
	for i, stay := range stays {
		out[i+1].keep = out[i+1].keep || stay
	}
	return out
}

func (d *desk) change(n reckon.Node) []cell {
	l := d.linesIn("bout "+count(n.About.Index)+", ", n.ID)[0]
	return []cell{tick, {}, {}, words(strings.TrimSuffix(l.Label, ", "+wordPasses)), say(l.Value), {}}
}

// mostStripes is how many stripes are listed to be ticked.
const mostStripes = 300

// colours lists the stripes from left to right.
func (d *desk) colours() []block {
	var texts []string
	for _, s := range d.r.Stripes {
		text := filled(wordStripe, "{ends}", count(s.Ends.Count(0)), "{yarn}", s.Yarn)
		if s.Yarn == "" {
			text = filled(wordBare, "{ends}", count(s.Ends.Count(0)))
		}
		texts = append(texts, text)
	}
	if len(texts) < 2 || len(texts) > mostStripes {
		return nil
	}
	return append([]block{d.heading(wordColours)}, d.ticks(4, texts)...)
}
