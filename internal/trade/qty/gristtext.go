package qty

// String gives g exactly, in the first of these ways that can: tex, m/kg or
// yd/lb with at most four decimals; grams over metres, both whole numbers of
// at most 15 digits; tex, m/kg or yd/lb with at most 15 digits. ParseGrist
// reads it back to the same grist, unless it was computed and needs more
// digits. It is empty when the grist is unknown.
func (g LinearDensity) String() string {
	text, _ := g.written()
	return text
}

// written gives the text of g, and whether ParseGrist can read it.
func (g LinearDensity) written() (text string, ok bool) {
	if g.IsZero() {
		return "", false
	}
	for _, way := range g.ways() {
		if _, ok := way.figure.Places(4); ok && readable(numeral(way.figure)) {
			return way.text(), true
		}
	}
	return g.longer()
}

// gristWay is a way of writing a grist: a figure with its unit.
type gristWay struct {
	figure Rat
	unit   string
}

func (w gristWay) text() string { return numeral(w.figure) + " " + w.unit }

func (g LinearDensity) ways() []gristWay {
	return []gristWay{
		{g.Tex(), "tex"}, {g.Per(Metre, Kilogram), "m/kg"}, {g.Per(Yard, Pound), "yd/lb"},
	}
}

// longer writes a grist that four decimals cannot say.
func (g LinearDensity) longer() (text string, ok bool) {
	ratio := g.Tex().Div(Int(1000)).Big()
	grams, metres := ratio.Num().String(), ratio.Denom().String()
	text = grams + " g/" + metres + " m"
	if readable(grams) && readable(metres) {
		return text, true
	}
	for _, way := range g.ways() {
		if figure := numeral(way.figure); readable(figure) {
			return way.text(), true
		}
	}
	return text, false
}
