package learn

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

func size(t *testing.T, state warp.State, typed string) warp.Size {
	t.Helper()
	is, err := qty.ParseLength(typed)
	if err != nil {
		t.Fatal(err)
	}
	return warp.Size{Is: is, State: state, Typed: typed}
}

// published are ratios with their losses as printed.
var published = []struct {
	source     string
	width      bool
	from, to   string
	states     [2]warp.State
	key, lost  string
	places     int
	typedAgain string
}{
	// P. Osterkamp, tips on shrinkage: 10 in finishes at 8 1/2 in, which is 15 %.
	{"Osterkamp", false, "10 in", "8 1/2 in", [2]warp.State{warp.OnLoom, warp.Finished}, "tape-to-washed", "15", 0, "10 in -> 8 1/2 in"},
	// Conference of Northern California Handweavers, Ratios, Rationale, and Rate of
	// Shrinkage, 2016: 10 in on the loom finishes 8 in, which is 20 %.
	{"CNCH", false, "10 in", "8 in", [2]warp.State{warp.OnLoom, warp.Finished}, "tape-to-washed", "20", 0, "10 in -> 8 in"},
	// yarn-tails, April 2009: a cotton sample, 14 to 11.5 in long, 18 % (17.86).
	{"yarn-tails", false, "14 in", "11.5 in", [2]warp.State{warp.Relaxed, warp.Finished}, "shrinkage", "17.86", 2, "14 in -> 11.5 in"},
	// Ashford, huck lace cotton scarf: 35 cm in the reed comes to 30 cm, 14.3 %.
	{"Ashford", true, "35 cm", "30 cm", [2]warp.State{warp.InReed, warp.Finished}, "reed-to-washed", "14.3", 1, "35 cm -> 30 cm"},
	// ASTM D3883 as worked by textilecalculations: 21.2 cm of yarn lie in 20.0 cm of
	// cloth, a take-up of 5.66 % (a crimp of 6 %).
	{"D3883", false, "21.2 cm", "20.0 cm", [2]warp.State{warp.Straight, warp.Relaxed}, "take-up", "5.66", 2, "21.2 cm -> 20.0 cm"},
}

func TestPublishedRatios(t *testing.T) {
	for _, p := range published {
		got := Of([]warp.Size{size(t, p.states[1], p.to), size(t, p.states[0], p.from)}, p.width)
		if len(got) != 1 || got[0].Key != p.key {
			t.Errorf("%s: learnt %+v, want %s alone", p.source, got, p.key)
			continue
		}
		if lost := got[0].Lost().Mul(qty.Int(100)).Decimal(p.places); lost != p.lost {
			t.Errorf("%s: %s %% lost, want %s", p.source, lost, p.lost)
		}
		if got[0].Typed() != p.typedAgain {
			t.Errorf("%s: typed %q, want %q", p.source, got[0].Typed(), p.typedAgain)
		}
	}
}

// What was not measured gives nothing, nor does what cannot be.
func TestUnknownIsNotZero(t *testing.T) {
	for what, sizes := range map[string][]warp.Size{
		"none":             nil,
		"one":              {size(t, warp.Finished, "28 in")},
		"nothing":          {size(t, warp.Finished, "0 in"), size(t, warp.OnLoom, "30 in")},
		"ten times over":   {size(t, warp.Finished, "2 in"), size(t, warp.OnLoom, "30 in")},
		"states of widths": {size(t, warp.AtFell, "20 in"), size(t, warp.InReed, "21 in")},
	} {
		if got := Of(sizes, false); len(got) != 0 {
			t.Errorf("%s: %+v", what, got)
		}
	}
}

func TestTheLastMeasurementCounts(t *testing.T) {
	got := Of([]warp.Size{size(t, warp.Finished, "28 in"), size(t, warp.OnLoom, "32 in"), size(t, warp.Finished, "24 in")}, false)
	if len(got) != 1 || got[0].Typed() != "32 in -> 24 in" {
		t.Errorf("%+v", got)
	}
}

// All four states of a length say every allowance of lengths, and they agree: what is
// left over a way is the product of what is left over its parts.
func TestLearntAllowancesAgree(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		draw := func(name string) qty.Length {
			return qty.Millimetre * qty.Length(rapid.IntRange(400, 900).Draw(r, name))
		}
		states := []warp.State{warp.Finished, warp.Relaxed, warp.OnLoom, warp.Straight}
		width := rapid.Bool().Draw(r, "width")
		if width {
			states = []warp.State{warp.Finished, warp.Relaxed, warp.AtFell, warp.InReed}
		}
		var sizes []warp.Size
		for _, s := range states {
			is := draw(s.String())
			sizes = append(sizes, warp.Size{Is: is, State: s, Typed: is.String()})
		}
		left := map[string]qty.Rat{}
		for _, l := range Of(sizes, width) {
			left[l.Key] = qty.Int(1).Sub(l.Lost())
		}
		if len(left) != 6 {
			r.Fatalf("learnt %v", left)
		}
		for whole, parts := range map[bool]map[string][2]string{
			false: {"tape-to-washed": {"relaxation", "shrinkage"}, "take-up": {"loom-take-up", "relaxation"}, "warp-to-washed": {"take-up", "shrinkage"}},
			true:  {"fell-to-washed": {"width-relaxation", "width-shrinkage"}, "reed-to-relaxed": {"draw-in", "width-relaxation"}, "reed-to-washed": {"reed-to-relaxed", "width-shrinkage"}},
		}[width] {
			if !left[whole].Equal(left[parts[0]].Mul(left[parts[1]])) {
				r.Errorf("%s leaves %s, its parts %s", whole, left[whole], left[parts[0]].Mul(left[parts[1]]))
			}
		}
	})
}

func hem(depth, turnIn qty.Length, outside bool) warp.End {
	return warp.End{Finish: warp.Hem, Depth: qty.Typed[qty.Length]{Is: depth}, TurnIn: qty.Typed[qty.Length]{Is: turnIn}, Outside: outside}
}

// A finished piece is measured between its hems: the cloth that shrank has them too.
func TestHemsAreCloth(t *testing.T) {
	p := &warp.Piece{First: hem(3*qty.Centimetre, qty.Centimetre, false), Last: hem(3*qty.Centimetre, qty.Centimetre, false)}
	cloth, hems := Lengths(p, []warp.Size{size(t, warp.OnLoom, "152 cm"), size(t, warp.Finished, "131 cm")})
	got := Of(cloth, false)
	if hems != 8*qty.Centimetre || len(got) != 1 || got[0].Typed() != "152 cm -> 139 cm" {
		t.Errorf("%s of hems: %+v", hems, got)
	}
	p = &warp.Piece{First: hem(qty.Inch, qty.Inch/4, true), Last: hem(qty.Inch, 0, false)}
	cloth, _ = Lengths(p, []warp.Size{size(t, warp.OnLoom, "32 1/2 in"), size(t, warp.Finished, "28 in")})
	if got := Of(cloth, false); len(got) != 1 || got[0].Typed() != "31 1/4 in -> 29 in" {
		t.Errorf("a hem outside: %+v", got)
	}
	plain := &warp.Piece{}
	if cloth, hems := Lengths(plain, []warp.Size{size(t, warp.Finished, "2 ft")}); hems != 0 || cloth[0].Typed != "2 ft" {
		t.Errorf("no hems: %+v", cloth)
	}
}

func TestText(t *testing.T) {
	for _, test := range []struct {
		is         qty.Length
		like, want string
	}{
		{50 * qty.Inch, "130 cm", "127 cm"},
		{50 * qty.Inch, "48 in", "50 in"},
		{qty.Inch / 2, "1 1/4\"", "1/2 in"},
		{139 * qty.Centimetre, "1.31 m", "139 cm"},
		{10 * qty.Inch / 3, "3 in", "84.666666 mm"},
	} {
		if got := Text(test.is, test.like); got != test.want {
			t.Errorf("%d like %s: %q, want %q", test.is, test.like, got, test.want)
		}
	}
}
