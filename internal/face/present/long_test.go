package present

import (
	"testing"

	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// A wound warp is said both ways, where the two differ; a package of hundreds of
// yards only in those.
func TestWoundLengths(t *testing.T) {
	for _, c := range []struct {
		id   string
		long qty.Length
		u    Units
		want string
	}{
		{"warp.wound", 270 * qty.Inch, Imperial, "7 1/2 yd (270 in)"},
		{"warp.wound", 10 * qty.Inch, Imperial, "10 in"},
		{"warp.wound", 440 * qty.Centimetre, Metric, "4.4 m (440 cm)"},
		{"packages[harbour].runs[0].wound", 101_200 * qty.Millimetre, Metric, "101.2 m"},
		{"packages[white].runs[0].wound", 66 * qty.Yard, Imperial, "66 yd"},
		{"pieces[0].on-loom", 40 * qty.Inch, Imperial, "40 in"},
	} {
		n := reckon.Node{ID: c.id, Figure: reckon.Figure{Is: c.long.Rat(), Kind: reckon.Length}}
		if got := c.u.Bench(n); got != c.want {
			t.Errorf("%s: got %q, want %q", c.id, got, c.want)
		}
	}
}
