package yarn

import (
	"errors"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// fill puts two figures and a symbol into a form.
func fill(form string, n, m int, symbol string) string {
	return strings.NewReplacer("%n", strconv.Itoa(n), "%m", strconv.Itoa(m), "%s", symbol).Replace(form)
}

func FuzzCount(f *testing.F) {
	for _, c := range countTests {
		f.Add(c.text)
	}
	for _, c := range countFaults {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseCount(text)
		if err != nil {
			checkFault(t, text, err)
			return
		}
		if c.Grist().IsZero() || c.Plies() < 1 {
			t.Fatalf("%q: grist %s, %d plies", text, c.Grist().Tex(), c.Plies())
		}
		if again, err := ParseCount(c.String()); err != nil || !again.Equal(c) {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, c, again, err)
		}
	})
}

// checkFault holds a fault to its promises: a code, and a place inside the
// text.
func checkFault(t *testing.T, text string, err error) {
	t.Helper()
	var f *qty.Fault
	if !errors.As(err, &f) {
		t.Fatalf("%q: %v is no fault", text, err)
	}
	if f.Code == "" || f.At < 0 || f.At > utf8.RuneCountInString(text) {
		t.Fatalf("%q: fault %+v", text, f)
	}
}

// FuzzTexts reads a text as everything else that a yarn is written with.
func FuzzTexts(f *testing.F) {
	for _, text := range []string{
		"28 wpi touching", "22 wpi", "5 1/2 wraps/cm loose", "cotton 60 %, linen 40 %", "33 1/3 % silk + wool 66 2/3 %",
		"cotton", "8 oz", "100 g skein", "1/2 lb cone", "12.50 EUR per 100 g", "8.20 EUR each", "30 EUR/kg", "1/2 EUR/lb",
		"madder #a03020", "#A32", "silk 38,1 %, hemp 61,9 %",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if w, err := ParseWraps(text); err != nil {
			checkFault(t, text, err)
		} else if again, err := ParseWraps(w.String()); err != nil || !again.Equal(w) {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, w, again, err)
		}
		if c, err := ParseComposition(text); err != nil {
			checkFault(t, text, err)
		} else if again, err := ParseComposition(c.String()); err != nil || !again.Equal(c) {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, c, again, err)
		}
		if p, err := ParsePutUp(text); err != nil {
			checkFault(t, text, err)
		} else if again, err := ParsePutUp(p.String()); err != nil || again != p {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, p, again, err)
		}
		if a, err := ParseAmount(text); err != nil {
			checkFault(t, text, err)
		} else if again, err := ParseAmount(a.String()); err != nil || again != a {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, a, again, err)
		}
		if c, err := ParseColour(text); err != nil {
			checkFault(t, text, err)
		} else if again, err := ParseColour(c.String()); err != nil || again != c {
			t.Fatalf("%q is written %q, which reads as %q, %v", text, c, again, err)
		}
		if m, per, err := ParsePrice(text); err != nil {
			checkFault(t, text, err)
		} else if m.Minor.Sign() < 0 || per < 0 {
			t.Fatalf("%q: %s per %s", text, m, per)
		}
	})
}
