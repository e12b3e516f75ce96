package content

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// plain loses nothing anywhere, so that what is in its cloth can be told without a
// reckoning: 100 ends and 2000 picks of 10 cm. Each piece has 110 cm of warp in it; the 3 cm
// gap, the 5 cm trims, the header, the sample, the waste and the reserve are not in it.
const plain = `sley = 1
gap = "3 cm"
header = "4 cm"
[[pieces]]
count = 2
length = "100 cm"
width = "10 cm"
first = "fringe 10 cm"
trim = "5 cm"
[yarns.a]
count = "1 Nm"
fibre = "wool"
[yarns.b]
count = "2 Nm"
fibre = "cotton 60 %, linen 40 %"
[warp]
yarn = "a"
sett = "10 ends/cm"
ends = 100
[weft]
yarn = "b"
picks = "10 picks/cm"
slack = "0 %"
reserve = "50 %"
tail = "10 cm"
bobbin = "60 m"
bobbin-end = "1 m"
[sampling]
length = "20 cm"
[allowances]
take-up = "none"
relaxation = "none"
shrinkage = "none"
reed-to-relaxed = "none"
width-shrinkage = "none"
[loom]
waste = "60 cm"
reeds = ["50/10 cm"]
`

func reckoned(t failer, text string) *reckon.Result {
	t.Helper()
	plan, _, list := planfile.Decode("cloth.toml", []byte(text))
	if list.Failed() {
		t.Fatalf("%+v", list.All())
	}
	return reckon.Solve(plan, reckon.Options{})
}

type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

func grams(of qty.Rat) string { return of.Div(qty.Gram.Rat()).Short(3) }

// TestOnlyWhatIsInTheCloth: 100 ends × 2 × 110 cm of 1 Nm are 220 g; 2000 picks × 10 cm of
// 2 Nm are 100 g.
func TestOnlyWhatIsInTheCloth(t *testing.T) {
	for _, c := range []struct{ what, from, to, warp, weft string }{
		{"as planned", "", "", "220", "100"},
		{"fringes at both ends", `first = "fringe 10 cm"`, `both = "fringe 10 cm"`, "240", "100"},
		{"hems are cloth", `first = "fringe 10 cm"`, `first = "hem 4 cm + 1 cm"`, "210", "105"},
		{"no trims", `trim = "5 cm"`, "", "220", "100"},
		{"three of them", "count = 2", "count = 3", "330", "150"},
		{"a class in turn", "[warp]", "[class]\nin-turn = 4\n[warp]", "880", "400"},
		{"one of a class on looms of their own", "[warp]", "[class]\nlooms = 4\n[warp]", "220", "100"},
		{"one woven 10 cm longer", "[loom]", "[built]\nwoven = [{ piece = 0, on-loom = \"110 cm\" }]\n[loom]", "230", "105"},
	} {
		r := reckoned(t, strings.Replace(plain, c.from, c.to, 1))
		yarns, list := InCloth(r)
		if list.Len() > 0 || len(yarns) != 2 {
			t.Fatalf("%s: %+v %+v", c.what, yarns, list.All())
		}
		if grams(yarns[0].Warp) != c.warp || grams(yarns[1].Weft) != c.weft || !yarns[0].Weft.IsZero() || !yarns[1].Warp.IsZero() {
			t.Errorf("%s: %s g of warp and %s g of weft, want %s and %s", c.what, grams(yarns[0].Warp), grams(yarns[1].Weft), c.warp, c.weft)
		}
	}
}

// TestBlendsAreSplit: 220 g of wool and 100 g of 60 cotton and 40 linen are 68.75, 18.75 and
// 12.5 %; of the two that lose as much by rounding down the larger gets the tenth.
func TestBlendsAreSplit(t *testing.T) {
	yarns, _ := InCloth(reckoned(t, plain))
	if got := text(European(Shares(Parts(yarns)), yarns)); got != "68.8 wool, 18.7 cotton, 12.5 linen" {
		t.Errorf("the label is %s", got)
	}
	var dry []string
	for _, s := range Shares(Parts(yarns)) { // 220/1.17, 60/1.085, 40/1.12 of 279.048
		dry = append(dry, s.Bare.Mul(hundred).Decimal(2))
	}
	if !slices.Equal(dry, []string{"67.38", "19.82", "12.80"}) {
		t.Errorf("dry %v", dry)
	}
}

func TestWhatIsAsked(t *testing.T) {
	for _, c := range []struct{ what, from, to, want string }{
		{"no count", `count = "1 Nm"`, "", "error content.no-grist yarns.a.count"},
		{"no fibre", `fibre = "wool"`, "", "error content.no-fibre yarns.a.fibre"},
		{"neither", "count = \"1 Nm\"\nfibre = \"wool\"", "", "error content.no-grist yarns.a.count; error content.no-fibre yarns.a.fibre"},
		{"a blend", `fibre = "wool"`, `fibre = "cottolin"`, "error content.blend yarns.a.fibre"},
		{"a blend in a blend", `fibre = "wool"`, `fibre = "wool 50 %, cottolin 50 %"`, "error content.blend yarns.a.fibre"},
		{"no allowance", `fibre = "wool"`, `fibre = "nettle"`, "warning content.no-allowance yarns.a.fibre"},
		{"a yarn that is not woven", `[warp]`, "[yarns.c]\n[warp]", ""},
		{"in the grease", `count = "1 Nm"`, `handspun = true` + "\n" + `skein = { length = "1 m", weight = "1 g" }`, "warning content.grease yarns.a.skein"},
		{"scoured", `count = "1 Nm"`, `handspun = true` + "\n" + `skein = { length = "1 m", weight = "1 g", relaxed = true, scoured = true }`, ""},
		{"no yarn", plain[strings.Index(plain, "[yarns.a]"):strings.Index(plain, "[sampling]")], "[warp]\nsett = \"10 ends/cm\"\n", "error content.nothing yarns"},
	} {
		_, list := InCloth(reckoned(t, strings.Replace(plain, c.from, c.to, 1)))
		var got []string
		for _, p := range list.All() {
			got = append(got, fmt.Sprint(p.Severity, " ", p.Code, " ", p.Path))
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}

func TestBasis(t *testing.T) {
	for from, want := range map[string]Basis{
		"": Shelf, "handspun = true": Shelf,
		"handspun = true\nskein = { length = \"1 m\", weight = \"1 g\", scoured = true }": Scoured,
		"handspun = true\nskein = { length = \"1 m\", weight = \"1 g\" }":                 Grease,
	} {
		yarns, _ := InCloth(reckoned(t, strings.Replace(plain, `fibre = "wool"`, "fibre = \"wool\"\n"+from, 1)))
		if yarns[0].Basis != want {
			t.Errorf("%q: %s, want %s", from, yarns[0].Basis, want)
		}
	}
}

// TestWasteIsNotInTheCloth: gaps, headers, samples, waste, reserves, tails and bobbins change
// nothing of what is in the cloth, and all of it was wound or laid.
func TestWasteIsNotInTheCloth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cm := func(name string) string { return fmt.Sprintf(`"%d cm"`, rapid.IntRange(1, 90).Draw(t, name)) }
		text := strings.NewReplacer(`gap = "3 cm"`, "gap = "+cm("gap"), `header = "4 cm"`, "header = "+cm("header"),
			`waste = "60 cm"`, "waste = "+cm("waste"), `tail = "10 cm"`, "tail = "+cm("tail"),
			`trim = "5 cm"`, "trim = "+cm("trim")).Replace(plain)
		r := reckoned(t, text)
		yarns, _ := InCloth(r)
		if grams(yarns[0].Warp) != "220" || grams(yarns[1].Weft) != "100" {
			t.Fatalf("%s g of warp and %s g of weft", grams(yarns[0].Warp), grams(yarns[1].Weft))
		}
		for _, y := range yarns {
			if n, _ := r.Node("yarns[" + y.Name + "].weight"); n.Is.Less(y.Mass()) {
				t.Fatalf("%s g of %s are in the cloth, of %s", grams(y.Mass()), y.Name, grams(n.Is))
			}
		}
	})
}
