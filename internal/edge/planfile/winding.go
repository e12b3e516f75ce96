package planfile

import (
	"errors"
	"slices"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// The limits of winding.
const (
	leastPegs    = 3 // the start and the two of the cross
	mostPegs     = 24
	mostTogether = 20
	mostInBout   = 1000 // ends
	leastSection = qty.Centimetre
	leastPeg     = 2 * qty.Centimetre // of its length
	leastBeam    = 5 * qty.Centimetre // of its girth
)

var (
	peggedAt    = bound{zero: true, most: 10 * qty.Metre}
	girth       = bound{most: 20 * qty.Metre}
	pegLong     = bound{most: 50 * qty.Centimetre}
	sectionWide = bound{most: qty.Metre}
	beamRound   = bound{most: 5 * qty.Metre}
	// raddles have from a space in 10 cm to twelve in an inch.
	widestSpace   = qty.Density{Threads: qty.Int(1), Over: qty.Decimetre}
	closestSpaces = qty.Density{Threads: qty.Int(12), Over: qty.Inch}
)

// readWinding reads the [winding] table.
func (d *decoder) readWinding(n *node) {
	t := d.open(windingTable, n)
	d.plan.Winding = warp.Winding{
		UsualBoard: t.choice("board", []string{"usual"}) != "",
		Pegs:       d.pegs(t.at("pegs")),
		Mill:       t.length("mill", girth),
		Together:   t.whole("together", 1, mostTogether),
		Bout:       t.whole("bout", 2, mostInBout),
		Peg:        t.noShorter("peg", "peg.short", pegLong, leastPeg),
		Tie:        t.whole("tie", 1, mostInBout),
		Raddle:     t.raddle("raddle"),
		Section:    t.noShorter("section", "section.narrow", sectionWide, leastSection),
		BeamGirth:  t.noShorter("beam-girth", "beam.small", beamRound, leastBeam),
	}
	t.exclude("board", "pegs")
	t.exclude("board", "mill")
	t.exclude("pegs", "mill")
	t.fitsBout(d.plan.Winding)
}

// fitsBout reports bouts that do not hold the ends of two passes: a bout of ends
// wound together goes there and back.
func (t table) fitsBout(w warp.Winding) {
	if w.Bout.Given() && w.Together.Given() && w.Bout.Is < 2*w.Together.Is {
		t.failKey("bout.small", "bout", problem.Args{"together": w.Together.Is, "least": 2 * w.Together.Is})
	}
}

// raddle gives the spaces of a raddle over a length.
func (t table) raddle(key string) qty.Typed[qty.Density] {
	spaces := typed(t, key, `spaces over a length, as "2/in"`, qty.ParseDensity)
	if !spaces.Given() {
		return spaces
	}
	if spaces.Is.Cmp(widestSpace) < 0 || spaces.Is.Cmp(closestSpaces) > 0 {
		t.d.fail("density.range", t.at(key), problem.Args{"least": widestSpace, "most": closestSpaces})
		return qty.Typed[qty.Density]{}
	}
	return spaces
}

// noShorter gives a length in the range; one below the least is a problem with a
// code of its own.
func (t table) noShorter(key, code string, b bound, least qty.Length) qty.Typed[qty.Length] {
	l := t.length(key, b)
	if l.Given() && l.Is < least {
		t.d.fail(code, t.at(key), problem.Args{"least": least})
		return qty.Typed[qty.Length]{}
	}
	return l
}

// pegs reads the pegs of a board, each its name and where it stands.
func (d *decoder) pegs(n *node) []warp.Peg {
	if n == nil || !d.is(n, listKind, `a list of pegs, as ["start 0 cm, 0 cm", "cross 30 cm, 0 cm"] and so on`) {
		return nil
	}
	if len(n.items) < leastPegs || len(n.items) > mostPegs {
		d.fail("pegs.count", n, problem.Args{"found": len(n.items), "least": leastPegs, "most": mostPegs})
		return nil
	}
	var out []warp.Peg
	for _, c := range n.items {
		if peg, ok := d.peg(c); ok && !d.pegTwice(c, peg, out) {
			out = append(out, peg)
		}
	}
	return out
}

// peg reads a peg: a name of one word, how far it stands to the right and, after
// a comma, how far down.
func (d *decoder) peg(n *node) (warp.Peg, bool) {
	text, ok := d.wordsOf(n, `a peg, as "start 0 cm, 0 cm"`)
	if !ok {
		return warp.Peg{}, false
	}
	name, places, _ := strings.Cut(strings.TrimSpace(text), " ")
	x, rest, err := qty.ScanLength(places)
	down, comma := strings.CutPrefix(strings.TrimSpace(rest), ",")
	if err == nil && comma {
		var y qty.Length
		if y, err = qty.ParseLength(down); err == nil {
			return warp.Peg{Name: name, X: x, Y: y}, d.fits(n, max(x, y), peggedAt)
		}
	}
	d.badPeg(n, err)
	return warp.Peg{}, false
}

// ofForm are the faults where no length stands that could be mended: then the
// form of a peg is shown.
var ofForm = []string{"number.missing", "length.trailing"}

func (d *decoder) badPeg(n *node, err error) {
	var f *qty.Fault
	switch {
	case !errors.As(err, &f) || slices.Contains(ofForm, f.Code):
		d.fail("peg.form", n, nil)
	case f.Code == "length.negative":
		d.fail("peg.negative", n, nil)
	default:
		d.fault(n, f)
	}
}

// pegTwice reports a peg with the name of another, and one where another stands.
func (d *decoder) pegTwice(n *node, peg warp.Peg, others []warp.Peg) bool {
	if slices.ContainsFunc(others, func(p warp.Peg) bool { return p.Name == peg.Name }) {
		d.fail("peg.twice", n, nil)
		return true
	}
	i := slices.IndexFunc(others, func(p warp.Peg) bool { return p.X == peg.X && p.Y == peg.Y })
	if i >= 0 {
		d.fail("peg.place", n, problem.Args{"other": others[i].Name})
	}
	return i >= 0
}
