package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// YarnFigures says a yarn that was read from its label: what was read, its grist both
// ways and in every count system, how thick it is and how it wraps. What is not known is
// left out.
func YarnFigures(read app.YarnRead) []Line {
	return append(labelFigures(read), ShelfFigures(read.Yarn)...)
}

// ShelfFigures says what follows of a yarn: its grist both ways and in every count system,
// how thick it is and how it wraps. Of a yarn whose grist is unknown there is nothing.
func ShelfFigures(y yarn.Yarn) []Line {
	grist := y.Grist()
	if grist.IsZero() {
		return nil
	}
	out := []Line{gristLine(y)}
	for _, s := range yarn.Systems() {
		out = append(out, Line{ID: "systems[" + string(s.ID) + "]", Label: s.Name, Value: s.Number(grist).Short(systemPlaces) + " " + s.Symbol()})
	}
	return append(out, thicknessLines(y)...)
}

// labelFigures are what a label says, as it was understood.
func labelFigures(read app.YarnRead) []Line {
	l := read.Label
	var out []Line
	for _, said := range []Line{
		{ID: "count", Label: "count", Value: l.Count.Is.String(), Note: takenAs(read)},
		{ID: "fibre", Label: "fibre", Value: l.Composition.Is.String()},
		{ID: "colour", Label: "colour", Value: legible(l.Colour.String())},
		{ID: "put-up", Label: "put-up", Value: l.PutUp.Typed},
		{ID: "wraps-said", Label: "wraps", Value: l.Wraps.Typed},
	} {
		if said.Value != "" {
			out = append(out, said)
		}
	}
	return out
}

// takenAs says in which system figures were taken that named none, and what else they
// could be.
func takenAs(read app.YarnRead) string {
	l := read.Label
	system, ok := yarn.SystemNamed(string(l.Taken))
	if !ok {
		return ""
	}
	note := "no system is written; such yarn is usually counted in " + system.Symbol() + " (" + read.Cites + ")"
	if len(l.Others) > 0 {
		note += "; write " + strings.Join(l.Others, " or ") + " if that is your yarn"
	}
	return note
}

// gristLine gives the grist in yards to the pound and metres to the kilogram, the one it
// is sold by first.
func gristLine(y yarn.Yarn) Line {
	f := reckon.Figure{Is: y.Grist().NGPerNM().Inv(), Kind: reckon.Grist}
	first, second := Imperial, Metric
	if app.MetricCount(y.Count.Typed) {
		first, second = second, first
	}
	return Line{ID: "grist", Label: "grist", Value: first.digits(f, 0), Note: second.digits(f, 0)}
}

// thicknessLines give how thick the yarn is by the rule that setts are reckoned by, and
// the touching wraps to expect.
func thicknessLines(y yarn.Yarn) []Line {
	k, _ := y.K()
	inch := y.Diameters()
	if inch.IsZero() {
		return nil
	}
	thick := qty.Inch.Rat().Div(inch).Div(qty.Millimetre.Rat())
	least := inch.Mul(yarn.RulerShare())
	perCM := qty.Centimetre.Rat().Div(qty.Inch.Rat())
	return []Line{
		{ID: "diameter", Label: "diameter", Value: thick.Short(2) + " mm", Note: "Ashenhurst's rule, constant " + k.Short(2)},
		{ID: "diameters", Label: "threads side by side", Value: inch.Short(1) + "/in", Note: inch.Mul(perCM).Short(1) + "/cm"},
		{
			ID: "wraps", Label: "touching wraps to expect", Value: least.Short(0) + " to " + inch.Short(0) + " wpi",
			Note: "0.7 to 1 of the threads side by side; your own wraps are better",
		},
	}
}
