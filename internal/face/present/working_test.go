package present_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/qty"
)

// plans are the plan files whose every number is read back: the demo, the
// published examples, the widest plan and the longest.
func plans(t *testing.T) map[string]*reckon.Result {
	t.Helper()
	out := map[string]*reckon.Result{}
	for _, pattern := range []string{"../../../examples/*.toml", "../../../testdata/vectors/plans/*.toml", "../../../testdata/bench/*.toml", "../../edge/planfile/testdata/*.toml"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			if r := reckoned(t, name); r != nil {
				out[name] = r
			}
		}
	}
	if len(out) < 10 {
		t.Fatalf("only %d plans found", len(out))
	}
	return out
}

func reckoned(t *testing.T, name string) *reckon.Result {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	plan, _, list := planfile.Decode(name, text)
	if list.Failed() {
		t.Errorf("%s: %v", name, list.All())
		return nil
	}
	return reckon.Solve(plan, reckon.Options{Workings: true, Tape: true})
}

// Every printed formula, read with its printed figures, comes to its printed
// value to the digits shown, in both systems of units.
func TestPrintedFormulasComeToTheirPrintedValues(t *testing.T) {
	read := 0
	for name, r := range plans(t) {
		for _, u := range []present.Units{present.Imperial, present.Metric} {
			for _, n := range r.Nodes {
				if n.Formula == nil {
					continue
				}
				read++
				checkPrinted(t, name, u, n)
			}
		}
	}
	if read < 1000 {
		t.Errorf("only %d formulas were read", read)
	}
}

func checkPrinted(t *testing.T, name string, u present.Units, n reckon.Node) {
	t.Helper()
	formula, value := u.Formula(n), u.Exact(n.Figure)
	got, err := readFormula(formula)
	if err != nil {
		t.Errorf("%s: %s: %q cannot be read: %v", name, n.ID, formula, err)
		return
	}
	want, half := readShown(t, value)
	if off := got.Sub(want).Abs(); half.Less(off) {
		t.Errorf("%s: %s: %s comes to %s, printed %s", name, n.ID, formula, got.Decimal(6), value)
	}
}

var shownNumber = regexp.MustCompile(`^(−?)(\d+)(?:\.(\d+))?(.*)$`)

// readShown reads a printed value in its base unit, and half a unit in its last
// possible digit. Values are shown to three digits after the point (weights
// four, money two), one more where that is all of them, trailing zeros left out.
func readShown(t *testing.T, text string) (value, half qty.Rat) {
	t.Helper()
	m := shownNumber.FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("printed value %q cannot be read", text)
	}
	places := 3
	switch unit := strings.TrimSpace(m[4]); {
	case unit == "oz" || unit == "lb" || unit == "g" || unit == "kg":
		places = 4
	case unit != "" && units[unit].IsZero():
		places = 2 // a currency
	}
	got, err := readFormula(text)
	if err != nil {
		t.Fatalf("printed value %q: %v", text, err)
	}
	one := qty.Int(1)
	if u, ok := units[strings.TrimSpace(m[4])]; ok {
		one = u
	} else if strings.TrimSpace(m[4]) != "" {
		one = qty.Int(100)
	}
	half = one.Div(qty.Int(2))
	for range max(places, len(m[3])) {
		half = half.Div(qty.Int(10))
	}
	return got, half
}

// units are the printed units in the base units of figures.
var units = map[string]qty.Rat{
	"in": qty.Inch.Rat(), "cm": qty.Centimetre.Rat(), "yd": qty.Yard.Rat(), "m": qty.Metre.Rat(),
	"oz": qty.Ounce.Rat(), "lb": qty.Pound.Rat(), "g": qty.Gram.Rat(), "kg": qty.Kilogram.Rat(), "%": qty.Frac(1, 100),
	"/in": qty.Inch.Rat().Inv(), "/cm": qty.Centimetre.Rat().Inv(), "/10 cm": qty.Decimetre.Rat().Inv(),
	"yd/lb": qty.Yard.Rat().Div(qty.Pound.Rat()), "m/kg": qty.Metre.Rat().Div(qty.Kilogram.Rat()),
	"min": qty.Int(60), "/min": qty.Frac(1, 60),
}

// reader reads a printed formula by the rules of arithmetic: × and ÷ before +
// and −, left to right.
type reader struct{ rest string }

func readFormula(text string) (value qty.Rat, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("%v", fault)
		}
	}()
	r := &reader{rest: text}
	value = r.sum()
	if r.rest = strings.TrimSpace(r.rest); r.rest != "" {
		return value, fmt.Errorf("%q is left over", r.rest)
	}
	return value, nil
}

func (r *reader) take(token string) bool {
	trimmed := strings.TrimLeft(r.rest, " ")
	rest, ok := strings.CutPrefix(trimmed, token)
	if ok {
		r.rest = rest
	}
	return ok
}

func (r *reader) must(token string) {
	if !r.take(token) {
		panic(fmt.Sprintf("%q wanted at %q", token, r.rest))
	}
}

func (r *reader) sum() qty.Rat {
	value := r.product()
	for {
		switch {
		case r.take("+"):
			value = value.Add(r.product())
		case r.take("−"):
			value = value.Sub(r.product())
		default:
			return value
		}
	}
}

func (r *reader) product() qty.Rat {
	value := r.factor()
	for {
		switch {
		case r.take("×"):
			value = value.Mul(r.factor())
		case r.take("÷"):
			value = value.Div(r.factor())
		default:
			return value
		}
	}
}

var roundings = map[string]qty.Rounding{"up(": qty.Up, "down(": qty.Down, "nearest(": qty.Nearest}

func (r *reader) factor() qty.Rat {
	switch {
	case r.take("("):
		value := r.sum()
		r.must(")")
		return value
	case r.take("√("):
		value := r.sum()
		r.must(")")
		return (&reckon.Expr{Op: reckon.Root, Args: []*reckon.Expr{{Leaf: reckon.Figure{Is: value}}}}).Eval(func(f reckon.Figure) qty.Rat { return f.Is })
	case r.take("larger of("):
		return r.pick(qty.Max)
	case r.take("smaller of("):
		return r.pick(qty.Min)
	}
	for name, way := range roundings {
		if r.take(name) {
			return r.rounded(way)
		}
	}
	return r.figure()
}

func (r *reader) rounded(way qty.Rounding) qty.Rat {
	value, step := r.sum(), qty.Int(1)
	if r.take("to ") {
		step = r.sum()
	}
	r.must(")")
	return value.To(step, way)
}

func (r *reader) pick(choose func(a, b qty.Rat) qty.Rat) qty.Rat {
	value := r.sum()
	for r.take(",") {
		value = choose(value, r.sum())
	}
	r.must(")")
	return value
}

var figureText = regexp.MustCompile(`^ *(−?)(\d+)(?:\.(\d+))?((?: ?/10 cm)|(?: ?(?:yd/lb|m/kg|/in|/cm|/min))|(?: (?:in|cm|yd|min|m|oz|lb|kg|g|%)\b)|(?: %)|(?: [A-Z]{3}))?`)

func (r *reader) figure() qty.Rat {
	m := figureText.FindStringSubmatch(r.rest)
	if m == nil {
		panic(fmt.Sprintf("a figure wanted at %q", r.rest))
	}
	r.rest = r.rest[len(m[0]):]
	value, err := qty.ParseNumber(m[2] + decimals(m[3]))
	if err != nil {
		panic(err)
	}
	if m[1] != "" {
		value = value.Neg()
	}
	unit := strings.TrimSpace(m[4])
	if one, ok := units[unit]; ok {
		return value.Mul(one)
	}
	if unit != "" {
		return value.Mul(qty.Int(100)) // money, in hundredths
	}
	return value
}

func decimals(digits string) string {
	if digits == "" {
		return ""
	}
	return "." + digits
}
