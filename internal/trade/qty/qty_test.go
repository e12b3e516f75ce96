package qty

import (
	"math"
	"testing"
)

func TestLengthAndMassOf(t *testing.T) {
	if l, ok := LengthOf(Frac(5, 2), Down); l != 2 || !ok {
		t.Errorf("got %d, %v", l, ok)
	}
	if l, ok := LengthOf(Int(math.MinInt64), Nearest); l != math.MinInt64 || !ok {
		t.Errorf("the least length: got %d, %v", l, ok)
	}
	if l, ok := LengthOf(Int(math.MaxInt64).Add(Frac(1, 2)), Nearest); ok {
		t.Errorf("beyond the longest length: got %d", l)
	}
	if m, ok := MassOf(Frac(5, 2), Up); m != 3 || !ok {
		t.Errorf("got %d, %v", m, ok)
	}
	if m, ok := MassOf(Int(math.MaxInt64).Add(Int(1)), Down); ok {
		t.Errorf("beyond the greatest mass: got %d", m)
	}
}

func TestDensityKeepsWhatWasTyped(t *testing.T) {
	typed, same := Density{Int(15), 2 * Centimetre}, Density{Frac(15, 2), Centimetre}
	if typed.Cmp(same) != 0 || typed.String() == same.String() {
		t.Errorf("%s and %s", typed, same)
	}
	if per := typed.Per(Inch); !per.Equal(Frac(1905, 100)) {
		t.Errorf("15/2 cm is %s per inch", per)
	}
	if (Density{Int(24), Inch}).Cmp(Density{Int(24), Centimetre}) >= 0 {
		t.Error("24/in is not less than 24/cm")
	}
	if none := (Density{}); !none.IsZero() || !none.PerNM().IsZero() || none.In(Metre, Up) != 0 {
		t.Error("no density is not zero")
	}
	if !(Density{Rat{}, Inch}).IsZero() || typed.IsZero() {
		t.Error("a density of 0 threads, and only that, is zero")
	}
}

func TestGristMethods(t *testing.T) {
	g := Tex(Int(60))
	if !g.Tex().Equal(Int(60)) || !g.NGPerNM().Equal(Frac(60, 1000)) {
		t.Errorf("60 tex is %s tex", g.Tex())
	}
	if g.IsZero() || !(LinearDensity{}).IsZero() {
		t.Error("only the zero value is unknown")
	}
	if !panics(func() { (LinearDensity{}).Per(Yard, Pound) }) || !panics(func() { NewLinearDensity(Int(1), Rat{}) }) {
		t.Error("an unknown grist gives yards per pound")
	}
}

func TestShareRateAndTyped(t *testing.T) {
	if s := Percent(Int(8)); !s.Of.Equal(Frac(2, 25)) || !s.Percent().Equal(Int(8)) {
		t.Errorf("8 %% is %s", s.Of)
	}
	r := Rate{Int(12), 60}
	if s := r.Seconds(Int(30)); !s.Equal(Int(150)) || r.IsZero() || !(Rate{}).IsZero() {
		t.Errorf("30 things at 12/min take %s s", s)
	}
	if (Typed[int]{Is: 3}).Given() || !(Typed[int]{Is: 3, Typed: "3"}).Given() {
		t.Error("only what was typed is given")
	}
}

func TestFaultIsAnError(t *testing.T) {
	_, err := ParseLength(" 12 ")
	if err == nil || err.Error() != `length.no-unit: "12"` {
		t.Errorf("got %v", err)
	}
}
