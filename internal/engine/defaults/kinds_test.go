package defaults

import (
	"strings"
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Every kind has a source, sizes within their ranges, and sizes that are round in their
// own units: whole or half centimetres, eighths of an inch.
func TestKindsOfPieces(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range Pieces() {
		if seen[p.ID] || p.Count < 1 {
			t.Errorf("%s stands twice, or %d of it are made", p.ID, p.Count)
		}
		seen[p.ID] = true
		if _, ok := SourceOf(p.Source); !ok {
			t.Errorf("%s has no source", p.ID)
		}
		if _, ok := warp.WeaveNamed(p.Weave); p.Weave != "" && !ok {
			t.Errorf("%s is woven in %q", p.ID, p.Weave)
		}
		if p.Metric.End != p.Imperial.End {
			t.Errorf("%s ends otherwise in metric units", p.ID)
		}
		checkSize(t, p.ID, p.Size(true), qty.Millimetre*5, "m")
		checkSize(t, p.ID, p.Size(false), qty.Inch/8, "in yd")
		checkAlike(t, p)
	}
	if len(seen) < 16 {
		t.Errorf("only %d kinds", len(seen))
	}
	if _, ok := PieceNamed("no such kind"); ok {
		t.Error("a kind was found that is none")
	}
}

func checkSize(t *testing.T, id string, s PieceSize, step qty.Length, units string) {
	t.Helper()
	for _, r := range []SizeRange{s.Length, s.Width} {
		if r.Usual.Is < r.Low.Is || r.High.Is < r.Usual.Is || r.Low.Is <= 0 {
			t.Errorf("%s: %s lies outside %s to %s", id, r.Usual.Typed, r.Low.Typed, r.High.Typed)
		}
		for _, l := range []qty.Typed[qty.Length]{r.Usual, r.Low, r.High, s.Depth, s.TurnIn} {
			if l.Is%step != 0 {
				t.Errorf("%s: %s is not round", id, l.Typed)
			}
			if l.Typed != "" && !strings.Contains(units, l.Typed[len(l.Typed)-1:]) {
				t.Errorf("%s: %s is of other units than %s", id, l.Typed, units)
			}
		}
	}
	if (s.End == warp.NoFinish) != (s.Depth.Is == 0) || (s.End == warp.Hem) != (s.TurnIn.Is > 0) {
		t.Errorf("%s: the end has depth %s and turn-in %s", id, s.Depth.Typed, s.TurnIn.Typed)
	}
}

// checkAlike sees that the two sizes of a kind are of the same thing: within a tenth.
func checkAlike(t *testing.T, p Piece) {
	t.Helper()
	for _, pair := range [][2]SizeRange{{p.Metric.Length, p.Imperial.Length}, {p.Metric.Width, p.Imperial.Width}} {
		apart := qty.Frac(int64(pair[0].Usual.Is), int64(pair[1].Usual.Is)).Sub(qty.Int(1)).Abs()
		if qty.Frac(1, 10).Less(apart) {
			t.Errorf("%s: %s and %s are not of one size", p.ID, pair[0].Usual.Typed, pair[1].Usual.Typed)
		}
	}
}
