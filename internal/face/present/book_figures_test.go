package present_test

import (
	"slices"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/qty"
)

func figures(lines []present.Line) []string {
	var out []string
	for _, l := range lines {
		out = append(out, l.Label+": "+l.Value)
	}
	return out
}

// A card's figures are said in the units that were kept with it.
func TestCardFigures(t *testing.T) {
	wound := reckon.Node{ID: "warp.wound", Figure: reckon.Figure{Is: (5 * qty.Metre).Rat(), Kind: reckon.Length}}
	ends := reckon.Node{ID: "ends.wound", Figure: reckon.Figure{Is: qty.Int(481), Kind: reckon.Ends}}
	grist := reckon.Node{ID: "yarns[].grist", Figure: reckon.Figure{Is: qty.Int(6772).Mul(qty.Metre.Rat()).Div(qty.Kilogram.Rat()), Kind: reckon.Grist}}
	for _, test := range []struct {
		what  string
		units app.ListUnits
		want  []string
	}{
		{"metric", app.ListUnits{Metric: true}, []string{"wind the warp: 5 m (500 cm)", "ends to wind: 481", "grist: 6772 m/kg"}},
		{"imperial", app.ListUnits{}, []string{"wind the warp: 5 yd 16 7/8 in (196 7/8 in)", "ends to wind: 481", "grist: 3359 yd/lb"}},
	} {
		got := figures(present.CardFigures(app.Card{Units: test.units, Figures: []reckon.Node{wound, ends, grist}}))
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: got %q, want %q", test.what, got, test.want)
		}
	}
}

// What is left of a yarn is said both ways, rounded down; what is not all says so.
func TestStockFigures(t *testing.T) {
	stock := &app.Stock{Length: (1000*qty.Metre + qty.Centimetre).Rat(), Mass: qty.Gram.Rat().Mul(qty.Frac(1299, 10))}
	got := figures(present.StockFigures(stock, app.ListUnits{Metric: true}))
	if want := []string{"left, by length: 1000 m", "left, by weight: 129 g"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	stock.Unknown = true
	for _, l := range present.StockFigures(stock, app.ListUnits{}) {
		if l.Note == "" {
			t.Errorf("%s does not say that it is not all", l.Label)
		}
	}
	if present.StockFigures(nil, app.ListUnits{}) != nil {
		t.Error("what has no stock has figures of it")
	}
}
