package present

import (
	"strings"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// unitOf gives the unit a figure is shown in, and the figure in that unit.
func (u Units) unitOf(f reckon.Figure) (qty.Rat, string) {
	switch f.Kind {
	case reckon.Length:
		return f.Is.Div(lengthUnits[u.Length].Rat()), " " + u.Length
	case reckon.YarnLength:
		return f.Is.Div(lengthUnits[u.Yarn].Rat()), " " + u.Yarn
	case reckon.Weight:
		return f.Is.Div(massUnits[u.Weight].Rat()), " " + u.Weight
	case reckon.Density:
		return f.Is.Mul(lengthUnits[u.Density].Rat()), "/" + densityUnit(u.Density)
	case reckon.Share:
		return f.Is.Mul(qty.Int(100)), " %"
	case reckon.Grist:
		return u.grist(f.Is)
	case reckon.Money:
		return f.Is.Div(qty.Int(100)), strings.TrimRight(" "+f.Currency, " ")
	case reckon.Seconds:
		return f.Is.Div(qty.Int(60)), " min"
	case reckon.RateOf:
		return f.Is.Mul(qty.Int(60)), "/min"
	}
	return f.Is, ""
}

func densityUnit(unit string) string {
	if unit == "10cm" {
		return "10 cm"
	}
	return unit
}

// grist is shown as yarn is labelled: yards per pound or metres per kilogram.
func (u Units) grist(nmPerNG qty.Rat) (qty.Rat, string) {
	if u.Yarn == "yd" {
		return nmPerNG.Mul(qty.Pound.Rat()).Div(qty.Yard.Rat()), " yd/lb"
	}
	return nmPerNG.Mul(qty.Kilogram.Rat()).Div(qty.Metre.Rat()), " m/kg"
}

// places is how many digits after the point a worked figure shows at most.
func places(f reckon.Figure) int {
	switch {
	case f.Kind.IsCount():
		return 3
	case f.Kind == reckon.Weight:
		return 4
	case f.Kind == reckon.Money:
		return 2
	}
	return 3
}

// Exact shows a figure as workings do: as many digits as it has, three after
// the point at most (weights four); one more where that is all of it, so that no
// figure is cut exactly between two.
func (u Units) Exact(f reckon.Figure) string { return u.digits(f, u.places(f)) }

func (u Units) places(f reckon.Figure) int {
	usual := places(f)
	value, _ := u.unitOf(f)
	if _, all := value.Places(usual + 1); all {
		return usual + 1
	}
	return usual
}

func (u Units) digits(f reckon.Figure, most int) string {
	value, unit := u.unitOf(f)
	return minus(value.Short(most)) + unit
}

// minus writes a real minus sign.
func minus(text string) string { return strings.Replace(text, "-", "−", 1) }

// Bench shows a figure as it is read at the loom: lengths to the bench step,
// whole threads, yarn in whole yards or metres; what is needed rounds up, what
// is left rounds down.
func (u Units) Bench(n reckon.Node) string {
	switch n.Kind {
	case reckon.Length:
		return u.benchLength(n)
	case reckon.YarnLength:
		return u.whole(n)
	case reckon.Weight:
		return u.benchWeight(n)
	case reckon.Seconds:
		return hours(n.Is)
	case reckon.Money:
		return minus(n.Is.Div(qty.Int(100)).Decimal(2)) + strings.TrimRight(" "+n.Currency, " ")
	case reckon.Share:
		return u.digits(n.Figure, 1)
	case reckon.Density, reckon.Repeats:
		return u.digits(n.Figure, 2)
	case reckon.Number:
		return u.digits(n.Figure, 3)
	case reckon.Grist:
		return u.digits(n.Figure, 0)
	}
	return u.digits(n.Figure, 1)
}

// benchLength shows a written length exactly, any other to the bench step; a
// wound warp of a yard or more also in yards or metres.
func (u Units) benchLength(n reckon.Node) string {
	step := u.stepFor(n.Is)
	if n.Origin != reckon.Reckoned && n.Origin != reckon.Default || u.Step == 0 {
		step = u.finest(n.Is)
	}
	is := n.Is.To(step, benchRounding(n))
	long, short := u.long(is), u.mixed(is)
	switch {
	case !strings.HasSuffix(n.Says(), ".wound") || long == short:
		return short
	case strings.HasPrefix(n.Says(), "packages"):
		return long // hundreds of yards: nobody counts their inches
	}
	return long + " (" + short + ")"
}

// narrow is the length below which metric figures are read to a millimetre: five
// of them would hide the losses of a band.
const narrow = 10 * qty.Centimetre

// stepFor is the bench step for a length.
func (u Units) stepFor(nm qty.Rat) qty.Rat {
	if u.Length == "cm" && nm.Abs().Less(narrow.Rat()) && u.Step > qty.Millimetre {
		return qty.Millimetre.Rat()
	}
	return u.Step.Rat()
}

// finest is the step that shows a written length without loss: 1/64 in where
// it is exact, else a hundredth.
func (u Units) finest(nm qty.Rat) qty.Rat {
	unit := lengthUnits[u.Length].Rat()
	if nm.Div(unit).Mul(qty.Int(64)).IsInt() && u.Length == "in" {
		return unit.Div(qty.Int(64))
	}
	return unit.Div(qty.Int(100))
}

// mixed shows a length in its unit, with a fraction for inches where the step
// of the fraction is a power of two.
func (u Units) mixed(nm qty.Rat) string {
	value := nm.Div(lengthUnits[u.Length].Rat())
	if u.Length != "in" {
		return minus(value.Short(2)) + " " + u.Length
	}
	return minus(fraction(value)) + " in"
}

// long shows a warp in yards, in yards and inches where it is no tidy part of a
// yard, or in metres.
func (u Units) long(nm qty.Rat) string {
	if u.Length != "in" {
		return minus(nm.Div(qty.Metre.Rat()).Short(4)) + " m"
	}
	yards := nm.Div(qty.Yard.Rat())
	if yards.Mul(qty.Int(8)).IsInt() || yards.Sign() < 0 {
		return minus(fraction(yards)) + " yd"
	}
	whole := yards.Floor()
	rest := u.mixed(nm.Sub(whole.Mul(qty.Yard.Rat())))
	if whole.IsZero() {
		return rest
	}
	return whole.Short(0) + " yd " + rest
}

// fraction writes a number with a fraction down to 1/64, else with two digits
// after the point.
func fraction(v qty.Rat) string {
	sign := ""
	if v.Sign() < 0 {
		sign, v = "-", v.Neg()
	}
	whole := v.Floor()
	part := v.Sub(whole)
	if part.IsZero() {
		return sign + whole.Short(0)
	}
	if !part.Mul(qty.Int(64)).IsInt() {
		return sign + v.Short(2)
	}
	if whole.IsZero() {
		return sign + part.String()
	}
	return sign + whole.Short(0) + " " + part.String()
}

// whole shows a length of yarn in whole units, up for what is needed and down
// for what is in hand; under ten units with one digit.
func (u Units) whole(n reckon.Node) string {
	value, unit := u.unitOf(n.Figure)
	if n.Origin == reckon.Given {
		return minus(value.Short(2)) + unit
	}
	step := qty.Int(1)
	if value.Abs().Less(qty.Int(10)) {
		step = qty.Frac(1, 10)
	}
	return minus(value.To(step, benchRounding(n)).Short(1)) + unit
}

func (u Units) benchWeight(n reckon.Node) string {
	value, unit := u.unitOf(n.Figure)
	step := map[string]qty.Rat{"oz": qty.Frac(1, 10), "lb": qty.Frac(1, 100), "g": qty.Int(1), "kg": qty.Frac(1, 1000)}[u.Weight]
	if n.Origin == reckon.Given {
		return minus(value.Short(3)) + unit
	}
	return minus(value.To(step, benchRounding(n)).Short(3)) + unit
}

// benchRounding is up for what is needed, down for what is left or in hand,
// nearest for sizes.
func benchRounding(n reckon.Node) qty.Rounding {
	says := n.Says()
	for _, end := range []string{".left", ".bought", ".stock", ".stock-left", ".spare"} {
		if strings.HasSuffix(says, end) {
			return qty.Down
		}
	}
	if n.Kind == reckon.YarnLength || n.Kind == reckon.Weight || says == "warp.needed" || says == "warp.short" || strings.HasSuffix(says, ".wound") {
		return qty.Up
	}
	return qty.Nearest
}

// hours shows a time in hours and minutes, up to the next minute.
func hours(seconds qty.Rat) string {
	minutes := seconds.Div(qty.Int(60)).Ceil().Whole64()
	if minutes < 60 {
		return qty.Int(minutes).Short(0) + " min"
	}
	text := qty.Int(minutes/60).Short(0) + " h"
	if minutes%60 > 0 {
		text += " " + qty.Int(minutes%60).Short(0) + " min"
	}
	return text
}
