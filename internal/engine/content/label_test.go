package content

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// text is a label as it is printed.
func text(l Label) string {
	var out []string
	for _, i := range l.Items {
		name := i.Name
		if i.Others > 0 {
			name = fmt.Sprintf("(%d others)", i.Others)
		}
		out = append(out, i.Share.Mul(hundred).Short(1)+" "+name)
	}
	return strings.Join(out, ", ")
}

func shelf(name string, grams int64) Part { return Part{Fibre: fibre(name), Mass: qty.Int(grams)} }

func topics(l Label) []Topic {
	var out []Topic
	for _, n := range l.Notes {
		out = append(out, n.Topic)
	}
	return out
}

func TestForms(t *testing.T) {
	for _, c := range []struct {
		source string
		parts  []Part
		eu, us string
		notes  []Topic // of both, those of the EU first
	}{
		// FTC, Calling It Cotton: 85 % cotton, 15 % polyester; 96 % cotton, 4 % spandex.
		{"FTC", []Part{shelf("polyester", 15), shelf("cotton", 85)}, "85 cotton, 15 polyester", "85 cotton, 15 polyester", []Topic{Within, Within}},
		{"FTC", []Part{shelf("cotton", 96), shelf("elastane", 4)}, "96 cotton, 4 elastane", "96 cotton, 4 spandex", []Topic{Within, Decoration, Within}},
		// The same: below 5 % a fibre is other fiber. It is named from 5 % on.
		{"FTC", []Part{shelf("cotton", 96), shelf("silk", 4)}, "96 cotton, 4 silk", "96 cotton, 4 (1 others)", []Topic{Within, Decoration, Small, Within}},
		{"FTC", []Part{shelf("cotton", 95), shelf("silk", 5)}, "95 cotton, 5 silk", "95 cotton, 5 silk", []Topic{Within, Decoration, Within}},
		{"FTC", []Part{shelf("cotton", 94), shelf("silk", 3), shelf("linen", 3)}, "94 cotton, 3 silk, 3 linen", "94 cotton, 6 (2 others)", []Topic{Within, Decoration, Decoration, Small, Small, Within}},
		// Wool Products Labeling Act as told by beustring.com: 97 % wool, 3 % cashmere.
		{"wool", []Part{shelf("wool", 97), shelf("cashmere", 3)}, "97 wool, 3 cashmere", "97 wool, 3 cashmere", []Topic{Within, Decoration, Virgin, Within, OtherMoist}},
		// EU 1007/2011, 7(2): one fibre is 100 %; kinds of wool are one fibre.
		{"EU 7", []Part{shelf("worsted wool", 2), shelf("superwash wool", 1)}, "100 wool", "100 wool", []Topic{Pure, Virgin}},
		{"EU 7", []Part{shelf("cotton", 2), shelf("mercerised cotton", 1)}, "100 cotton", "100 cotton", []Topic{Pure}},
		// EU 1007/2011, 10(2): 2 % of metal that carries off charges need not count.
		{"EU 10", []Part{shelf("cotton", 98), shelf("metallic", 2)}, "98 cotton, 2 metal fibre", "98 cotton, 2 (1 others)", []Topic{Within, Metal, Small, Within}},
		// A trace that rounds to nothing is not printed.
		{"", []Part{shelf("cotton", 99_999), shelf("silk", 1)}, "100 cotton", "100 cotton", []Topic{Pure, Small}},
	} {
		eu, us := European(Shares(c.parts), nil), American(Shares(c.parts))
		if text(eu) != c.eu || text(us) != c.us {
			t.Errorf("%s: %q and %q, want %q and %q", c.source, text(eu), text(us), c.eu, c.us)
		}
		if got := append(topics(eu), topics(us)...); !slices.Equal(got, c.notes) {
			t.Errorf("%s: %s has the notes %v, want %v", c.source, c.eu, got, c.notes)
		}
	}
}

func woven(warp, weft string, a, b int64) []Yarn {
	of := func(name string) yarn.Composition {
		c, err := yarn.ParseComposition(name)
		if err != nil {
			panic(err)
		}
		return c
	}
	return []Yarn{{Name: "a", Composition: of(warp), Warp: qty.Int(a)}, {Name: "b", Composition: of(weft), Weft: qty.Int(b)}}
}

// TestUnion: cotton warp and linen weft have a name from 40 % linen on (EU 1007/2011, 9(3)).
func TestUnion(t *testing.T) {
	for _, c := range []struct {
		yarns []Yarn
		want  bool
	}{
		{woven("cotton", "linen", 60, 40), true},
		{woven("cotton", "linen", 61, 39), false},
		{woven("mercerised cotton", "linen", 50, 50), true},
		{woven("linen", "cotton", 50, 50), false},
		{woven("cotton 50 %, linen 50 %", "linen", 50, 50), false},
	} {
		label := European(Shares(Parts(c.yarns)), c.yarns)
		if got := slices.Contains(topics(label), Union); got != c.want {
			t.Errorf("%s: a union %v, want %v", text(label), got, c.want)
		}
	}
}

// TestSmallSharesAreNamedWhereTheyMust: in the American form all that is named and is no
// wool, hair or elastane has 5 % or more, and what is not named has less.
func TestSmallSharesAreNamedWhereTheyMust(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shares := Shares(drawParts(t))
		small := 0
		for _, i := range items(shares, US) {
			is := i.Share.Less(mostUnnamed) && !alwaysNamed(i.Name, shares)
			if is {
				small++
			}
			if is == slices.ContainsFunc(American(shares).Items, func(p Item) bool { return p.Name == i.Name && p.Share.Sign() > 0 }) && !i.Share.Less(percent) {
				t.Fatalf("%s with %s: %s", i.Name, i.Share, text(American(shares)))
			}
		}
		last := American(shares).Items[len(American(shares).Items)-1]
		if last.Others > 0 && last.Others != small {
			t.Fatalf("%d others of %d", last.Others, small)
		}
	})
}

// TestCare holds what common practice says of single fibres and of cloth of several.
func TestCare(t *testing.T) {
	for _, c := range []struct {
		fibres     []string
		wash       string
		handling   Handling
		warm, hot  int
		flat, damp bool
		washFor    string
		first      First
	}{
		{[]string{"cotton"}, "washed", Normal, 60, 200, false, false, "", WasWashed},
		{[]string{"linen"}, "unwashed", Normal, 60, 200, false, true, "", NotWashed},
		{[]string{"cotton", "woollen wool"}, "fulled", Hand, 30, 150, true, false, "woollen wool", WasFulled},
		{[]string{"superwash wool", "polyamide"}, "", Mild, 40, 110, true, false, "", WasWashed},
		{[]string{"jute", "cotton"}, "", NoWater, 0, 150, true, false, "jute", WasWashed},
	} {
		var of []yarn.Fibre
		for _, name := range c.fibres {
			of = append(of, fibre(name))
		}
		got, ok := CareFor(of, c.wash)
		if !ok || got.Handling != c.handling || got.Wash != c.warm || got.Iron != c.hot || got.Flat != c.flat ||
			got.Damp != c.damp || got.WashFor.Name != c.washFor || got.First != c.first {
			t.Errorf("%v: %+v", c.fibres, got)
		}
	}
	if _, ok := CareFor(nil, ""); ok {
		t.Error("of no fibre something is known")
	}
}

// TestCareIsOfTheTenderest: a fibre more never lets cloth be handled harder.
func TestCareIsOfTheTenderest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.SliceOfN(rapid.SampledFrom(yarn.Fibres()), 1, 5).Draw(t, "fibres")
		all, _ := CareFor(of, "washed")
		for _, f := range of {
			one, _ := CareFor([]yarn.Fibre{f}, "washed")
			if all.Handling > one.Handling || all.Wash > one.Wash || all.Tumble > one.Tumble || all.Iron > one.Iron || one.Flat && !all.Flat {
				t.Fatalf("%+v with %s, which bears %+v", all, f.Name, one)
			}
		}
	})
}

func TestNames(t *testing.T) {
	for b, want := range map[Basis]string{Shelf: "shelf", Scoured: "scoured", Grease: "grease", Dry: "dry", Clean: "clean"} {
		if b.String() != want {
			t.Errorf("%d is %q, want %q", b, b, want)
		}
	}
	for h, want := range map[Handling]string{NoWater: "no-water", Hand: "hand", Mild: "mild", Normal: "normal"} {
		if h.String() != want {
			t.Errorf("%d is %q, want %q", h, h, want)
		}
	}
}
