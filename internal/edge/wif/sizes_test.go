package wif

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
)

// 1/720 in is 25.4 mm / 720; 72 decipoints are a tenth of an inch, 2.54 mm.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		in   unit
		text string
		want qty.Length
		ok   bool
	}{
		{decipoints, "72", 2_540_000 * qty.Nanometre, true},
		{decipoints, "1", 35278 * qty.Nanometre, true},
		{inches, "0.1", 2_540_000 * qty.Nanometre, true},
		{centimetres, ".254", 2_540_000 * qty.Nanometre, true},
		{centimetres, "1.", 10 * qty.Millimetre, true},
		{centimetres, "100", qty.Metre, true},
		{centimetres, "100.0000001", 0, false},
		{centimetres, "0", 0, true},
		{centimetres, ".", 0, false},
		{centimetres, "", 0, false},
		{centimetres, "-1", 0, false},
		{centimetres, "1e2", 0, false},
		{centimetres, "1.2.3", 0, false},
		{centimetres, "0.0000000000000001", 0, false},
	} {
		if got, ok := c.in.parse(c.text); ok != c.ok || ok && got != c.want {
			t.Errorf("%q %s: %s %v, want %s %v", c.text, c.in.name, got, ok, c.want, c.ok)
		}
	}
}

// Every size that a draft can have is read back from what is written, in any unit.
func TestSizesComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nm := rapid.Int64Range(0, int64(mostSize)).Draw(t, "size")
		u := rapid.SampledFrom([]unit{decipoints, inches, centimetres}).Draw(t, "unit")
		size := qty.Length(nm)
		if got, ok := u.parse(u.text(size)); !ok || got != size {
			t.Fatalf("%s is written %s %s and read as %s", size, u.text(size), u.name, got)
		}
	})
}
