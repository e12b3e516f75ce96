package app_test

import (
	"testing"

	"sley/internal/app"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// happening is an entry of a stock; cancels counts entries from 1.
type happening struct {
	what, amount string
	cancels      int
}

// A yarn of 1000 m/kg: a metre weighs a gram.
var stockTests = []struct {
	what    string
	count   string
	entries []happening
	metres  qty.Rat
	grams   qty.Rat
	unknown bool
}{
	{"nothing happened", "1000 m/kg", nil, qty.Int(0), qty.Int(0), false},
	{"weights and lengths mixed", "1000 m/kg", []happening{
		{"bought", "500 g", 0}, {"used", "120 m", 0}, {"lost", "30 g", 0}, {"bought", "50 m", 0},
	}, qty.Int(400), qty.Int(400), false},
	{"measured in between", "1000 m/kg", []happening{
		{"bought", "500 g", 0}, {"used", "120 m", 0}, {"measured", "333 g", 0}, {"used", "33 m", 0},
	}, qty.Int(300), qty.Int(300), false},
	{"measured as none", "1000 m/kg", []happening{{"bought", "500 g", 0}, {"measured", "0 g", 0}, {"bought", "10 m", 0}}, qty.Int(10), qty.Int(10), false},
	{"more used than there was", "1000 m/kg", []happening{{"bought", "10 g", 0}, {"used", "30 m", 0}}, qty.Int(-20), qty.Int(-20), false},
	{"cancelled", "1000 m/kg", []happening{{"bought", "500 g", 0}, {"used", "120 m", 0}, {"", "", 2}}, qty.Int(500), qty.Int(500), false},
	{"cancelled twice", "1000 m/kg", []happening{{"bought", "500 g", 0}, {"used", "120 m", 0}, {"", "", 2}, {"", "", 2}}, qty.Int(500), qty.Int(500), false},
	{"what was measured is cancelled", "1000 m/kg", []happening{{"bought", "500 g", 0}, {"measured", "1 g", 0}, {"", "", 2}}, qty.Int(500), qty.Int(500), false},
	{"grist unknown", "", []happening{{"bought", "500 g", 0}, {"used", "120 m", 0}}, qty.Int(-120), qty.Int(500), true},
	{"grist unknown, and measured", "", []happening{{"bought", "500 g", 0}, {"measured", "77 m", 0}}, qty.Int(77), qty.Int(0), true},
	{"grist unknown, and all cancelled", "", []happening{{"bought", "500 g", 0}, {"", "", 1}}, qty.Int(0), qty.Int(0), false},
}

func TestStock(t *testing.T) {
	for _, test := range stockTests {
		t.Run(test.what, func(t *testing.T) {
			s := openStudio(t)
			yarn := addYarn(t, s, "white", "count="+test.count)
			var ids []string
			for _, h := range test.entries {
				if h.cancels > 0 {
					cancel(t, s, ids[h.cancels-1])
					continue
				}
				ids = append(ids, stocked(t, s, app.Happened{Document: yarn.ID, What: h.what, Typed: h.amount}).ID)
			}
			stock, err := s.Stock(t.Context(), yarn.ID)
			if err != nil {
				t.Fatal(err)
			}
			metres, grams := stock.Length.Div(qty.Metre.Rat()), stock.Mass.Div(qty.Gram.Rat())
			if metres.Cmp(test.metres) != 0 || grams.Cmp(test.grams) != 0 || stock.Unknown != test.unknown {
				t.Errorf("%s m, %s g, unknown %v; want %s m, %s g, %v", metres, grams, stock.Unknown, test.metres, test.grams, test.unknown)
			}
			if shown := shown(t, s, yarn.ID).Stock; shown == nil || shown.Length.Cmp(stock.Length) != 0 {
				t.Error("the yarn is shown with another stock")
			}
		})
	}
}

func stocked(t testing.TB, s *app.Studio, h app.Happened) record.Event {
	t.Helper()
	e, list, err := s.Stocked(t.Context(), h)
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	return e
}

// A count that is known later tells the rest of what happened before.
func TestStockWithALaterCount(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	stocked(t, s, app.Happened{Document: yarn.ID, What: record.Bought, Typed: "500 g"})
	save(t, s, yarn.ID, left, "count=2000 m/kg")
	stock, err := s.Stock(t.Context(), yarn.ID)
	if err != nil || stock.Unknown || stock.Length.Cmp((1000*qty.Metre).Rat()) != 0 {
		t.Errorf("got %+v, %v", stock, err)
	}
}

func TestStockRefused(t *testing.T) {
	s := openStudio(t)
	yarn, warp := addYarn(t, s, "white"), addWarp(t, s, towels)
	for _, test := range []struct {
		what  string
		h     app.Happened
		codes []string
	}{
		{"no unit", app.Happened{What: "bought", Typed: "3"}, []string{"amount amount.unit"}},
		{"nothing", app.Happened{What: "used", Typed: "0 g"}, []string{"amount stock.nothing"}},
		{"something else", app.Happened{What: "eaten", Typed: "3 g"}, []string{"what event.what"}},
		{"all wrong", app.Happened{What: "eaten", Typed: "much", ID: "x"}, []string{"amount number.missing", "id event.id", "what event.what"}},
	} {
		test.h.Document = yarn.ID
		_, list, err := s.Stocked(t.Context(), test.h)
		if err != nil {
			t.Fatal(err)
		}
		wantCodes(t, test.what, list, test.codes...)
	}
	for what, h := range map[string]app.Happened{
		"the stock of a warp":            {Document: warp.ID, What: "bought", Typed: "3 g"},
		"of what is not there":           {Document: 99, What: "bought", Typed: "3 g"},
		"used by what is no warp":        {Document: yarn.ID, What: "used", Typed: "3 g", Warp: yarn.ID},
		"used by a warp that is nowhere": {Document: yarn.ID, What: "used", Typed: "3 g", Warp: 99},
	} {
		if _, _, err := s.Stocked(t.Context(), h); !record.Is(err, record.NotFound) {
			t.Errorf("%s: %v", what, err)
		}
	}
	stock, err := s.Stock(t.Context(), yarn.ID)
	if err != nil || len(stock.Events) > 0 {
		t.Errorf("entered were %+v, %v", stock, err)
	}
}

// The same entry twice counts once; an entry that cancels is not cancelled itself.
func TestCancelled(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white", "count=1000 m/kg")
	for range 2 {
		stocked(t, s, app.Happened{Document: yarn.ID, What: record.Bought, Typed: "500 g", ID: "the-same-entry"})
	}
	cancel(t, s, "the-same-entry")
	stock, err := s.Stock(t.Context(), yarn.ID)
	if err != nil || len(stock.Events) != 2 || !stock.Length.IsZero() {
		t.Fatalf("got %+v, %v", stock, err)
	}
	list, err := s.Cancel(t.Context(), left, stock.Events[1].ID, "")
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "what cancels", list, " event.counter")
	if _, err := s.Cancel(t.Context(), left, "no such entry", ""); !record.Is(err, record.NotFound) {
		t.Errorf("of what is not there: %v", err)
	}
}
