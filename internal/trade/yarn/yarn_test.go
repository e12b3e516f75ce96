package yarn

import (
	"slices"
	"testing"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// codes lists the codes of the problems that a yarn has.
func codes(y Yarn) []string {
	var l problem.List
	y.Validate("yarns.x", &l)
	var out []string
	for _, p := range l.All() {
		out = append(out, p.Severity.String()+" "+p.Code+" "+p.Path)
	}
	slices.Sort(out)
	return out
}

func typed[T any](t *testing.T, text string, parse func(string) (T, error)) qty.Typed[T] {
	t.Helper()
	return qty.Typed[T]{Is: must[T](t)(parse(text)), Typed: text}
}

func TestYarnValidate(t *testing.T) {
	count := func(text string) qty.Typed[Count] { return typed(t, text, ParseCount) }
	measured := Skein{Length: 100 * qty.Metre, Mass: 50 * qty.Gram, Relaxed: true, Scoured: true}
	for _, c := range []struct {
		name string
		yarn Yarn
		want []string
	}{
		{"an ordinary yarn", Yarn{Count: count("8/2 Ne"), PutUp: typed(t, "8 oz cone", ParsePutUp)}, nil},
		{"nothing said", Yarn{}, nil},
		{"handspun, measured as it should be", Yarn{Handspun: true, Skein: measured}, nil},
		{"handspun, not measured", Yarn{Handspun: true}, []string{"warning yarn.handspun-unmeasured yarns.x.skein"}},
		{"handspun off the bobbin", Yarn{Handspun: true, Skein: Skein{Length: 1, Mass: 1}}, []string{
			"warning skein.not-relaxed yarns.x.skein.relaxed", "warning skein.not-scoured yarns.x.skein.scoured",
		}},
		{"half a skein", Yarn{Skein: Skein{Mass: qty.Gram, Skeins: -1}}, []string{
			"error skein.length yarns.x.skein.length", "error skein.skeins yarns.x.skein.skeins",
		}},
		{"a skein without weight", Yarn{Skein: Skein{Length: qty.Metre}}, []string{"error skein.mass yarns.x.skein.weight"}},
		{"K too large", Yarn{DiameterK: qty.Int(9)}, []string{"error yarn.diameter-k yarns.x.diameter-constant"}},
		{"K too small", Yarn{DiameterK: qty.Frac(1, 100)}, []string{"error yarn.diameter-k yarns.x.diameter-constant"}},
		{"two readings", Yarn{Count: count("6/8 worsted")}, []string{"note count.either yarns.x.count"}},
		{"two readings of one yarn", Yarn{Count: count("2/2 worsted")}, nil},
		{"label and skein agree", Yarn{Count: count("520 tex"), Skein: measured}, nil},
		{"label and skein differ", Yarn{Count: count("600 tex"), Skein: measured}, []string{"warning yarn.grist-differs yarns.x.count"}},
		{"each of what", Yarn{Price: qty.Typed[qty.Money]{Typed: "8 EUR each"}}, []string{"warning yarn.price-put-up yarns.x.price"}},
	} {
		if got := codes(c.yarn); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

func TestGristBasis(t *testing.T) {
	wraps := typed(t, "10 wpi packed", ParseWraps)
	cotton := typed(t, "cotton", ParseComposition)
	label := typed(t, "60 tex", ParseCount)
	skein := Skein{Length: 1000 * qty.Metre, Mass: 61 * qty.Gram}
	for _, c := range []struct {
		yarn  Yarn
		basis Basis
		tex   string
	}{
		{Yarn{}, NoBasis, "0.00"},
		{Yarn{Count: label, Skein: skein, Wraps: wraps, Composition: cotton}, FromSkein, "61.00"},
		{Yarn{Count: label, Wraps: wraps, Composition: cotton}, FromCount, "60.00"},
		{Yarn{Wraps: wraps, Composition: cotton}, FromWraps, "4332.73"},
		{Yarn{Wraps: wraps, Composition: cotton, Handspun: true}, NoBasis, "0.00"},
		{Yarn{Wraps: wraps}, NoBasis, "0.00"},
		{Yarn{Wraps: typed(t, "10 wpi loose", ParseWraps), Composition: cotton}, NoBasis, "0.00"},
	} {
		if tex := c.yarn.Grist().Tex().Decimal(2); c.yarn.Basis() != c.basis || tex != c.tex {
			t.Errorf("got %s tex from %q, want %s from %q", tex, c.yarn.Basis(), c.tex, c.basis)
		}
	}
}

func TestYarnDiameters(t *testing.T) {
	y := Yarn{Count: typed(t, "8/2 Ne", ParseCount), Composition: typed(t, "cotton 60 %, linen 40 %", ParseComposition)}
	k, id := y.K()
	if got := y.Diameters().Decimal(4); id != "k.cotton.sgeo" || got != "52.7486" {
		t.Errorf("8/2 cottolin: got %s per inch by %s %s, want 52.7486 by k.cotton.sgeo", got, k, id)
	}
	y.DiameterK = qty.Frac(95, 100)
	if k, id := y.K(); !k.Equal(y.DiameterK) || id != "" || y.Diameters().Decimal(3) != "55.067" {
		t.Errorf("with a K of its own: got %s by %s %s", y.Diameters().Decimal(3), k, id)
	}
	if !(Yarn{}).Diameters().IsZero() || !PeirceDiameters(qty.LinearDensity{}).IsZero() {
		t.Error("a yarn of unknown grist has diameters")
	}
}
