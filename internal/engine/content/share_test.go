package content

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// published are the worked examples of Regulation (EU) No 1007/2011 (consolidated text of
// 1 July 2013), Annex VIII, chapter 3, section IV: clean dry shares in per cent, then
// adjusted and on the label as printed there. The sum before dividing is 109.8385.
var published = []struct {
	source   string
	parts    []Part
	sum      string
	adjusted []string
	label    []string
}{{
	source:   "EU 1007/2011, Annex VIII, ch. 3, IV",
	parts:    []Part{clean("polyamide", "50.00"), raw("cotton", "39.70"), clean("wool", "10.30")},
	sum:      "109.8385",
	adjusted: []string{"48.37", "40.66", "10.97"},
	label:    []string{"48.4", "40.6", "11.0"},
}, {
	source:   "the same, from the masses measured (example 3)",
	parts:    dissolved(),
	sum:      "109.8385",
	adjusted: []string{"48.37", "40.66", "10.97"},
	label:    []string{"48.4", "40.6", "11.0"},
}}

func rat(text string) qty.Rat {
	s, err := qty.ParseShare(text + " %")
	if err != nil {
		panic(err)
	}
	return s.Of.Mul(hundred)
}

func clean(name, percent string) Part {
	return Part{Fibre: fibre(name), Mass: rat(percent), Basis: Clean}
}

func raw(name, percent string) Part {
	p := clean(name, percent)
	p.Raw = true
	return p
}

// dissolved gives the parts that the masses of example 3 come to by the formula of the same
// chapter, variant 1: wool is dissolved out of a first test piece (1.6000 g, 1.4166 g left,
// d1 1.00), polyamide out of a second (1.8000 g, 0.9000 g left); d2 is 1.03. The Regulation
// cuts after two places (10.306 is printed 10.30) and works on with that: 10.30, 50.00 and
// what is left, 39.70.
func dissolved() []Part {
	m1, r1, m2, r2, d2 := rat("1.6"), rat("1.4166"), rat("1.8"), rat("0.9"), rat("1.03")
	first := d2.Sub(d2.Mul(r1.Div(m1))).Add(r2.Div(m2).Mul(one.Sub(d2)))
	second := one.Sub(r2.Div(m2))
	cut := func(share qty.Rat) string { return share.Mul(hundred).To(qty.Frac(1, 100), qty.Down).Decimal(2) }
	wool, polyamide := cut(first), cut(second)
	cotton := hundred.Sub(rat(wool)).Sub(rat(polyamide)).Decimal(2)
	return []Part{clean("polyamide", polyamide), raw("cotton", cotton), clean("wool", wool)}
}

func TestPublishedCompositions(t *testing.T) {
	for _, p := range published {
		sum := qty.Rat{}
		for _, part := range p.parts {
			sum = sum.Add(part.Agreed())
		}
		if got := sum.Decimal(4); got != p.sum {
			t.Errorf("%s: the sum is %s, want %s", p.source, got, p.sum)
		}
		shares := Shares(p.parts)
		label := European(shares, nil)
		for i, s := range shares {
			if got := s.Label.Mul(hundred).Decimal(2); got != p.adjusted[i] {
				t.Errorf("%s: %s is adjusted to %s %%, want %s", p.source, s.Fibre.Name, got, p.adjusted[i])
			}
			if got := label.Items[i].Share.Mul(hundred).Decimal(1); got != p.label[i] {
				t.Errorf("%s: the label says %s %% %s, want %s", p.source, got, s.Fibre.Name, p.label[i])
			}
		}
	}
}

// TestDryShares holds the shares of example 3 as printed: 10.30, 50.00, 39.70.
func TestDryShares(t *testing.T) {
	for i, want := range []string{"50.00", "39.70", "10.30"} {
		if got := dissolved()[i].Mass.Decimal(2); got != want {
			t.Errorf("share %d is %s %%, want %s", i, got, want)
		}
		if got := Shares(dissolved())[i].Bare.Mul(hundred).Decimal(2); got != want {
			t.Errorf("dry share %d is %s %%, want %s", i, got, want)
		}
	}
}

// TestEachAloneIsNot100: what the printed label avoids.
func TestEachAloneIsNot100(t *testing.T) {
	sum := qty.Rat{}
	for _, s := range Shares(published[0].parts) {
		sum = sum.Add(s.Label.To(tenth, qty.Nearest))
	}
	if got := sum.Mul(hundred).Decimal(1); got != "100.1" {
		t.Errorf("rounded each alone the label says %s, want 100.1", got)
	}
}

func drawParts(t *rapid.T) []Part {
	all := yarn.Fibres()
	n := rapid.IntRange(1, 6).Draw(t, "parts")
	out := make([]Part, n)
	for i := range out {
		out[i] = Part{
			Fibre: rapid.SampledFrom(all).Draw(t, "fibre"),
			Mass:  qty.Frac(rapid.Int64Range(1, 1_000_000).Draw(t, "mass"), rapid.Int64Range(1, 999).Draw(t, "of")),
			Basis: Basis(rapid.IntRange(0, int(Clean)).Draw(t, "basis")),
			Raw:   rapid.Bool().Draw(t, "raw"),
		}
	}
	return out
}

// TestLabelsSumTo100: whatever a cloth is of, each form says 100 % in all, the largest first
// and what is not named last, and the exact shares come to 1 twice.
func TestLabelsSumTo100(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shares := Shares(drawParts(t))
		bare, exact := qty.Rat{}, qty.Rat{}
		for _, s := range shares {
			bare, exact = bare.Add(s.Bare), exact.Add(s.Label)
		}
		if !bare.Equal(one) || !exact.Equal(one) {
			t.Fatalf("the shares sum to %s dry and %s", bare, exact)
		}
		for _, label := range []Label{European(shares, nil), American(shares)} {
			sum, last := qty.Rat{}, one
			for _, i := range label.Items {
				sum = sum.Add(i.Share)
				if i.Others == 0 && last.Less(i.Share) {
					t.Fatalf("%s: %s %s stands behind less", label.Form, i.Share, i.Name)
				}
				last = i.Share
			}
			if !sum.Equal(one) {
				t.Fatalf("%s: the label sums to %s: %+v", label.Form, sum, label.Items)
			}
		}
	})
}

// TestRoundingKeepsOrder: of two shares the larger is never rounded to less, none is moved by
// a whole step, and what is whole already stays.
func TestRoundingKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var exact []qty.Rat
		for _, s := range Shares(drawParts(t)) {
			exact = append(exact, s.Label)
		}
		got := Rounded(exact, tenth)
		for i := range got {
			if !got[i].Sub(exact[i]).Abs().Less(tenth) {
				t.Fatalf("%s is rounded to %s", exact[i], got[i])
			}
			if i > 0 && got[i-1].Less(got[i]) {
				t.Fatalf("%s before %s is rounded to %s before %s", exact[i-1], exact[i], got[i-1], got[i])
			}
		}
		for i, again := range Rounded(got, tenth) {
			if !again.Equal(got[i]) {
				t.Fatalf("%s is rounded again to %s", got[i], again)
			}
		}
	})
}

// TestAdjustingKeepsOrder: of fibres with one allowance the order of the dry shares is that
// of the label, and one with more moisture only gains by it.
func TestAdjustingKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := drawParts(t)
		for i := range parts {
			parts[i].Basis = Dry
		}
		shares := Shares(parts)
		for i, a := range shares {
			for _, b := range shares[i+1:] { // a is the larger on the label
				if a.Bare.Less(b.Bare) && !b.Allowance.Share.Less(a.Allowance.Share) {
					t.Fatalf("%s stands before %s, which is more and holds no less", a.Fibre.Name, b.Fibre.Name)
				}
			}
		}
	})
}

// TestDryAndBack: a weight from the shelf, dried and given its allowance, is that weight.
func TestDryAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, p := range drawParts(t) {
			p.Basis = rapid.SampledFrom([]Basis{Shelf, Scoured, Grease}).Draw(t, "shelf")
			if !p.Agreed().Equal(p.Mass) {
				t.Fatalf("%s of %s comes back as %s", p.Mass, p.Fibre.Name, p.Agreed())
			}
			again := p
			again.Basis, again.Mass = Dry, p.Bare()
			if !again.Agreed().Equal(p.Mass) || p.Mass.Less(p.Bare()) {
				t.Fatalf("%s of %s is %s dry, and %s again", p.Mass, p.Fibre.Name, p.Bare(), again.Agreed())
			}
		}
	})
}

// TestAllowances holds values of Regulation (EU) No 1007/2011, Annex IX.
func TestAllowances(t *testing.T) {
	for name, want := range map[string]string{
		"worsted wool": "18.25", "woollen wool": "17.00", "wool": "17.00", "silk": "11.00", "cotton": "8.50",
		"mercerised cotton": "10.50", "linen": "12.00", "hemp": "12.00", "jute": "17.00", "abaca": "14.00",
		"sisal": "14.00", "henequen": "14.00", "coir": "13.00", "ramie": "8.50", "sunn": "12.00", "kapok": "10.90",
		"paper": "13.75", "viscose": "13.00", "lyocell": "13.00", "modal": "13.00", "cupro": "13.00", "acetate": "9.00",
		"triacetate": "7.00", "acrylic": "2.00", "modacrylic": "2.00", "polyamide": "6.25", "polyester": "1.50",
		"elastane": "1.50", "polylactide": "1.50", "polypropylene": "2.00", "metallic": "2.00",
	} {
		if got := AllowanceOf(fibre(name)).Share.Mul(hundred).Decimal(2); got != want {
			t.Errorf("%s: %s %%, want %s", name, got, want)
		}
	}
}

// TestEveryFibreIsKnown: each fibre that a yarn can be of is in the table, with its allowance
// and a name in both forms, or it is one that is asked about: a blend, or nettle, which
// Annex IX does not have.
func TestEveryFibreIsKnown(t *testing.T) {
	asked := map[string]bool{"nettle": true}
	for _, f := range yarn.Fibres() {
		_, listed := knownFibres[f.Name]
		if blend := len(f.Blend) > 0; listed == blend || AllowanceOf(f).Known == (blend || asked[f.Name]) {
			t.Errorf("%s: listed %v, %+v", f.Name, listed, AllowanceOf(f))
		}
		if _, ok := CareFor([]yarn.Fibre{f}, ""); !ok || tender(f).Iron == 0 && tender(f).Wash == 0 && f.Name != "coir" {
			t.Errorf("%s: nothing is known of its care", f.Name)
		}
	}
	if len(knownFibres) != len(yarn.Fibres())-1 {
		t.Errorf("%d fibres in the table, of %d", len(knownFibres), len(yarn.Fibres()))
	}
}
