package present

import (
	"strconv"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// unitsOfCard gives the units of what a list shows of a document: as its first size was
// typed, with what its plan names.
func unitsOfCard(l app.ListUnits) Units {
	p := &warp.Plan{Units: l.Said}
	if p.Units.Length == "" && l.Metric {
		p.Warp.Wound.Typed = "1 m" // typed so, which is not said
	}
	if l.Bench > 0 {
		p.Rounding.Bench = qty.Typed[qty.Length]{Is: l.Bench, Typed: l.Bench.String()}
	}
	return UnitsIn(p, l.Book)
}

// CardFigures gives the figures that a list shows of a document, as they are read at the
// bench.
func CardFigures(c app.Card) []Line {
	return append(loomFigures(c), nodeFigures(c)...)
}

// nodeFigures are the figures of a card that were reckoned or measured.
func nodeFigures(c app.Card) []Line {
	u := unitsOfCard(c.Units)
	var out []Line
	for _, n := range c.Figures {
		label := Label(n)
		if n.Says() == "yarns[].grist" {
			label = "grist"
		}
		out = append(out, Line{ID: n.ID, Label: label, Value: u.Bench(n)})
	}
	return out
}

// loomFigures are what a list shows of a loom beside its width; nothing of other
// documents.
func loomFigures(c app.Card) []Line {
	if c.Kind != record.Loom {
		return nil
	}
	var out []Line
	for _, l := range []struct {
		id, label string
		n         int
	}{{"loom.shafts", "shafts", c.Facts.Shafts}, {"loom.treadles", "treadles", c.Facts.Treadles}, {"loom.reeds", "reeds", c.Reeds}} {
		if l.n > 0 {
			out = append(out, Line{ID: l.id, Label: l.label, Value: strconv.Itoa(l.n)})
		}
	}
	if c.Shed != "" {
		out = append(out, Line{ID: "loom.shed", Label: "shed", Value: c.Shed})
	}
	return out
}

// StockFigures says how much of a yarn is left, both ways: by length and by weight, in
// the units of the yarn. What is not known one way says so in a note.
func StockFigures(s *app.Stock, units app.ListUnits) []Line {
	if s == nil {
		return nil
	}
	u := unitsOfCard(units)
	line := func(id, label string, is qty.Rat, kind reckon.Kind) Line {
		n := reckon.Node{ID: "yarns[].stock", Figure: reckon.Figure{Is: is, Kind: kind}}
		l := Line{ID: id, Label: label, Value: u.Bench(n)}
		if s.Unknown {
			l.Note = "only what was entered so; the count of the yarn would tell the rest"
		}
		return l
	}
	return []Line{
		line("stock.length", "left, by length", s.Length, reckon.YarnLength),
		line("stock.weight", "left, by weight", s.Mass, reckon.Weight),
	}
}

// UnitsText says the units of a book, a line for each kind.
func UnitsText(u warp.Units) string {
	text := ""
	for i, unit := range []string{u.Length, u.Yarn, u.Weight, u.Density, u.Count} {
		if unit == "" {
			unit = unitsAsTyped
		}
		text += app.UnitKinds()[i] + ": " + unit + "\n"
	}
	return text
}
