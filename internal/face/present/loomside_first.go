package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/engine/tieup"
	"sley/internal/trade/qty"
)

// first words what is to be seen to before a step is begun.
func (l looming) first(s app.LoomsideStep) []string {
	switch s.ID {
	case loomside.Winding:
		return l.onMill()
	case loomside.Sections:
		return append(l.packages(), l.turnsOfBeam()...)
	case loomside.Beaming:
		return l.turnsOfBeam()
	case loomside.Threading:
		return l.heddles()
	case loomside.TyingUp:
		return append(byShaft(s.ByShaft), l.twoFooted()...)
	}
	return nil
}

func (l looming) onMill() []string {
	turns, ok := l.Result.Node("winding.turns")
	past, also := l.Result.Node("winding.past")
	if !ok || !also {
		return nil
	}
	return []string{fillIn(millTurns, "{turns}", l.u.Bench(turns), "{past}", l.u.Bench(past))}
}

func (l looming) turnsOfBeam() []string {
	turns, ok := l.Result.Node("beam.turns")
	if !ok {
		return nil
	}
	return []string{fillIn(beamTurns, "{turns}", l.u.Bench(turns))}
}

// packages words what is wound on the cones or spools behind a sectional beam.
func (l looming) packages() []string {
	var out []string
	for _, n := range l.Result.Nodes {
		if n.Says() == "packages[].runs[].wound" {
			out = append(out, fillIn(packagesHold, "{yarn}", n.About.Yarn, "{packages}", n.About.Mark, "{is}", l.u.Bench(n)))
		}
	}
	return out
}

// heddles words the heddles that each shaft needs, with those it has.
func (l looming) heddles() []string {
	var out []string
	for shaft := 1; shaft <= l.Result.Plan.Shafts(); shaft++ {
		at := "[" + number(shaft) + "]"
		need, ok := l.Result.Node("heddles" + at)
		if !ok {
			continue
		}
		text := fillIn(heddlesOf, "{shaft}", number(shaft), "{n}", l.u.Bench(need))
		has, known := l.Result.Node("heddles.on-loom" + at)
		if known {
			text += l.spare(has, has.Is.Sub(need.Is))
		}
		out = append(out, text)
	}
	return out
}

func (l looming) spare(has reckon.Node, left qty.Rat) string {
	words := heddlesSpare
	if left.Sign() < 0 {
		words = heddlesShort
	}
	return fillIn(words, "{has}", l.u.Bench(has), "{spare}", number(left.Abs().Count(qty.Up)))
}

// byShaft words the treadles that each shaft hangs from.
func byShaft(cords []tieup.Cords) []string {
	var out []string
	for i, c := range cords {
		out = append(out, fillIn(shaftTied, "{shaft}", number(i+1))+tiedWords(c))
	}
	return out
}

func tiedWords(c tieup.Cords) string {
	var parts []string
	if c.Raises != 0 {
		parts = append(parts, fillIn(raisedBy, "{treadles}", SetText(c.Raises)))
	}
	if c.Lowers != 0 {
		parts = append(parts, fillIn(loweredBy, "{treadles}", SetText(c.Lowers)))
	}
	if len(parts) == 0 {
		return " " + SetText(0)
	}
	return strings.Join(parts, ",")
}

// twoFooted says that the loom has fewer treadles than the cloth has lifts.
func (l looming) twoFooted() []string {
	var out []string
	for _, p := range l.Problems.All() {
		if p.Code == "loom.two-footed" {
			p = l.u.Localise(p)
			out = append(out, Wrong(p)+"; "+Fix(p))
		}
	}
	return out
}
