package yarn

import (
	"os"
	"strings"
	"testing"

	"sley/internal/trade/qty"
)

// rows reads a table of tab-separated fields, less its remarks.
func rows(t *testing.T, file string, fields int) [][]string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSuffix(line, "\n")
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		row := strings.Split(line, "\t")
		if len(row) != fields {
			t.Fatalf("%s: %q has %d fields, want %d", file, line, len(row), fields)
		}
		out = append(out, row)
	}
	return out
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// computed gives the figure that a row asks for.
func computed(t *testing.T, kind, from, ask string) qty.Rat {
	t.Helper()
	in := strings.Split(from, "; ")
	count, rat := must[Count](t), must[qty.Rat](t)
	length, mass := must[qty.Length](t), must[qty.Mass](t)
	switch kind {
	case "count":
		return count(ParseCount(from)).In(named(t, ask))
	case "skein":
		n := rat(qty.ParseNumber(in[2])).Count(qty.Nearest)
		s := Skein{Length: length(qty.ParseLength(in[0])), Mass: mass(qty.ParseMass(in[1])), Skeins: n}
		return named(t, ask).Number(s.Grist())
	case "weigh":
		a := Amount{Length: length(qty.ParseLength(in[1]))}
		return a.Weighs(count(ParseCount(in[0])).Grist()).Div(mass(qty.ParseMass(ask)).Rat())
	case "measure":
		a := Amount{Mass: mass(qty.ParseMass(in[1]))}
		return a.Holds(count(ParseCount(in[0])).Grist()).Div(length(qty.ParseLength(ask)).Rat())
	case "diameters":
		return Diameters(count(ParseCount(in[0])).Grist(), rat(qty.ParseNumber(in[1])))
	case "diameters-cm":
		return Diameters(count(ParseCount(in[0])).Grist(), rat(qty.ParseNumber(in[1]))).Div(qty.Frac(254, 100))
	case "volume":
		return Diameters(count(ParseCount(in[0])).Grist(), KOfVolume(rat(qty.ParseNumber(in[1]))))
	case "peirce":
		return PeirceDiameters(count(ParseCount(from)).Grist())
	case "k":
		return published(t, from)
	}
	return computedWraps(t, kind, in)
}

func published(t *testing.T, id string) qty.Rat {
	t.Helper()
	for _, k := range KValues() {
		if k.ID == id {
			return k.K
		}
	}
	t.Fatalf("no factor %s", id)
	return qty.Rat{}
}

func computedWraps(t *testing.T, kind string, in []string) qty.Rat {
	t.Helper()
	w := must[Wraps](t)(ParseWraps(in[0]))
	setts := map[string]func() (qty.Density, string, bool){
		"wraps-plain": w.PlainSett, "wraps-twill": w.TwillSett, "wraps-closest": w.ClosestPlain,
	}
	if sett, ok := setts[kind]; ok {
		d, rule, ok := sett()
		if !ok || rule == "" {
			t.Fatalf("%s: no sett", in[0])
		}
		return d.Per(qty.Inch)
	}
	f := must[Fibre](t)(ParseFibre(in[1]))
	r, ok := w.Grist(f.Class, f.Spun)
	if !ok || kind != "wraps-grist" || !r.Exact() {
		t.Fatalf("%s %s: no exact grist", kind, in)
	}
	return named(t, "ypp").Number(r.Light)
}

func named(t *testing.T, symbol string) System {
	t.Helper()
	s, ok := SystemNamed(symbol)
	if !ok {
		t.Fatalf("no system %q", symbol)
	}
	return s
}

// within reports whether got is as near to want as a tolerance such as 0.5 or
// 0.01 % says.
func within(t *testing.T, got, want qty.Rat, tolerance string) bool {
	t.Helper()
	percent, relative := strings.CutSuffix(tolerance, " %")
	limit := must[qty.Rat](t)(qty.ParseNumber(percent))
	if relative {
		limit = qty.Percent(limit).Of.Mul(want)
	}
	return !limit.Less(got.Sub(want).Abs())
}

func TestPublishedValues(t *testing.T) {
	outside := 0
	for _, row := range rows(t, "published.tsv", 8) {
		id, kind, from, ask, mark := row[0], row[1], row[2], row[3], row[6]
		want := must[qty.Rat](t)(qty.ParseNumber(row[4]))
		if kind == "wraps-within" {
			checkWithin(t, id, from, want)
		} else if got := computed(t, kind, from, ask); !within(t, got, want, row[5]) {
			t.Errorf("%s: %s of %q in %q: got %s, want %s within %s (%s)",
				id, kind, from, ask, got.Decimal(6), row[4], row[5], row[7])
		}
		if mark == "seen" || mark == "rounded" {
			outside++
		}
	}
	const wanted = 138
	if outside < wanted {
		t.Errorf("%d published values are checked, want at least %d", outside, wanted)
	}
}

// checkWithin holds a published yield against the range that wraps give.
func checkWithin(t *testing.T, id, from string, ypp qty.Rat) {
	t.Helper()
	text, name, _ := strings.Cut(from, "; ")
	f := must[Fibre](t)(ParseFibre(name))
	r, ok := must[Wraps](t)(ParseWraps(text)).Grist(f.Class, f.Spun)
	light, heavy := named(t, "ypp").Number(r.Light), named(t, "ypp").Number(r.Heavy)
	if !ok || ypp.Less(heavy) || light.Less(ypp) {
		t.Errorf("%s: %s yd/lb is not from %s to %s", id, ypp, heavy.Short(1), light.Short(1))
	}
}

func TestPublishedSlipsAreNotFollowed(t *testing.T) {
	for _, row := range rows(t, "slips.tsv", 7) {
		printed, right := must[qty.Rat](t)(qty.ParseNumber(row[4])), must[qty.Rat](t)(qty.ParseNumber(row[5]))
		got := computed(t, row[1], row[2], row[3])
		if !within(t, got, right, row[6]) || within(t, got, printed, row[6]) {
			t.Errorf("%s: got %s, want %s and not %s", row[0], got.Decimal(6), row[5], row[4])
		}
	}
}
