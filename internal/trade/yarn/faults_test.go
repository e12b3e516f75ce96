package yarn

import (
	"errors"
	"testing"

	"sley/internal/trade/qty"
)

func TestFaultsOfTheNouns(t *testing.T) {
	wraps := func(s string) error { _, err := ParseWraps(s); return err }
	parts := func(s string) error { _, err := ParseComposition(s); return err }
	putUp := func(s string) error { _, err := ParsePutUp(s); return err }
	amount := func(s string) error { _, err := ParseAmount(s); return err }
	price := func(s string) error { _, _, err := ParsePrice(s); return err }
	colour := func(s string) error { _, err := ParseColour(s); return err }
	for _, c := range []struct {
		parse            func(string) error
		text, code, read string
		at               int
		near             string
	}{
		{wraps, "22 wpi", "wraps.kind", "22 wpi", 0, ""},
		{wraps, "22 wpi tuching", "wraps.kind", "tuching", 7, "touching"},
		{wraps, "22", "density.no-unit", "22", 0, ""},
		{parts, "  ", "fibre.empty", "", 0, ""},
		{parts, "cottn", "fibre.unknown", "cottn", 0, "cotton"},
		{parts, "cotton 60 %, linin 40 %", "fibre.unknown", "linin", 13, "linen"},
		{parts, "cotton 60 %, linen 30 %", "fibre.sum", "cotton 60 %, linen 30 %", 0, ""},
		{parts, "cotton 60 %", "fibre.sum", "cotton 60 %", 0, ""},
		{parts, "cotton 60 %, cotton 40 %", "fibre.twice", "cotton 40 %", 13, ""},
		{parts, "cotton 100 %, linen 0 %", "fibre.share", "linen 0 %", 14, ""},
		{parts, "cotton, linen", "fibre.share", "cotton", 0, ""},
		{parts, "cotton 60, linen 40", "share.no-percent", "60", 7, ""},
		{putUp, "", "putup.empty", "", 0, ""},
		{putUp, "0 g skein", "putup.zero", "0 g skein", 0, ""},
		{putUp, "100 g skien", "putup.package", "skien", 6, "skein"},
		{putUp, "100 skein", "amount.unit", "skein", 4, ""},
		{putUp, "1,234 g", "number.grouped", "1,234", 0, ""},
		{amount, "100 g skein", "amount.trailing", "skein", 6, ""},
		{amount, "100", "amount.unit", "100", 0, ""},
		{price, "12.50 EUR", "price.per", "12.50 EUR", 0, ""},
		{price, "12.50 each", "money.no-currency", "12.50", 0, ""},
		{price, "-5 EUR each", "price.negative", "-5 EUR each", 0, ""},
		{price, "5 EUR per 0 g", "price.zero-mass", "0 g", 0, ""},
		{price, "5 EUR per 100 m", "mass.unknown-unit", "m", 14, ""},
		{price, "5 EUR per stone", "mass.unknown-unit", "stone", 10, ""},
		{colour, "", "colour.empty", "", 0, ""},
		{colour, "madder #a0302", "colour.hex", "#a0302", 7, ""},
		{colour, "#zzz", "colour.hex", "#zzz", 0, ""},
	} {
		var f *qty.Fault
		if err := c.parse(c.text); !errors.As(err, &f) {
			t.Errorf("%q: got %v, want %s", c.text, err, c.code)
			continue
		}
		near, _ := f.Args["near"].(string)
		if f.Code != c.code || f.Read != c.read || f.At != c.at || near != c.near {
			t.Errorf("%q: got %s %q at %d, near %q; want %s %q at %d, near %q", c.text,
				f.Code, f.Read, f.At, near, c.code, c.read, c.at, c.near)
		}
	}
}
