package planfile

import (
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

func TestWinding(t *testing.T) {
	w := whole(t).Winding
	for what, c := range map[string][2]any{
		"board": {w.UsualBoard && w.HasBoard(), true}, "together": {w.Together.Is, 2}, "bout": {w.Bout.Is, 60}, "peg": {w.Peg.Is, 4 * qty.Inch},
		"tie": {w.Tie.Is, 20}, "raddle": {w.Raddle.Typed, "2/in"}, "section": {w.Section.Is, 2 * qty.Inch}, "beam": {w.BeamGirth.Is, 60 * qty.Centimetre},
		"pegs": {len(w.Pegs), 0}, "mill": {w.Mill.Given(), false},
	} {
		same(t, what, c)
	}
}

// A peg is read with its decimal comma, and both its places in their own units.
func TestPegs(t *testing.T) {
	p := clean(t, `sley = 1
warp.sett = "24 epi"
winding.pegs = ["start 0 in, 0 in", "cross-1 12,5 cm, 0 cm", "cross-2 1 ft, 2 1/2 in", "end 1 yd,1 yd"]
[[pieces]]
length = "28 in"
width = "18 in"
`)
	want := []warp.Peg{
		{Name: "start"},
		{Name: "cross-1", X: 125 * qty.Millimetre},
		{Name: "cross-2", X: qty.Foot, Y: 5 * qty.Inch / 2},
		{Name: "end", X: qty.Yard, Y: qty.Yard},
	}
	for i, peg := range p.Winding.Pegs {
		if peg != want[i] {
			t.Errorf("got %+v, want %+v", peg, want[i])
		}
	}
	if len(p.Winding.Pegs) != len(want) {
		t.Errorf("%d pegs, want %d", len(p.Winding.Pegs), len(want))
	}
}
