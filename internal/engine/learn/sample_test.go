package learn

import (
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

func typed(t *testing.T, text string) qty.Typed[qty.Length] {
	t.Helper()
	is, err := qty.ParseLength(text)
	if err != nil {
		t.Fatal(err)
	}
	return qty.Typed[qty.Length]{Is: is, Typed: text}
}

// A sample says as much as was measured of it, and no length says anything of a width.
func TestOfSample(t *testing.T) {
	s := yarn.Sample{OnLoom: typed(t, "10 in"), Washed: typed(t, "8 1/2 in"), Reed: typed(t, "35 cm"), WidthWashed: typed(t, "30 cm")}
	got := OfSample(s)
	if len(got) != 2 || got[0].Key != "tape-to-washed" || got[0].Typed() != "10 in -> 8 1/2 in" || got[1].Key != "reed-to-washed" || got[1].Typed() != "35 cm -> 30 cm" {
		t.Errorf("%+v", got)
	}
	if got := OfSample(yarn.Sample{OnLoom: typed(t, "10 in"), WidthWashed: typed(t, "30 cm")}); len(got) != 0 {
		t.Errorf("a length and a width: %+v", got)
	}
	all := yarn.Sample{
		Warp: typed(t, "11 in"), OnLoom: typed(t, "10 in"), Relaxed: typed(t, "9 3/4 in"), Washed: typed(t, "9 in"),
		Reed: typed(t, "11 in"), Fell: typed(t, "10 1/2 in"), WidthRelaxed: typed(t, "10 in"), WidthWashed: typed(t, "9 in"),
	}
	if got := OfSample(all); len(got) != 12 {
		t.Errorf("%d of twelve allowances: %+v", len(got), got)
	}
}
