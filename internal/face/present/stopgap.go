package present

import (
	"sley/internal/app"
	"sley/internal/trade/record"
)

func Trouble(t error) (says, do string) { return t.Error(), "" }
func StageOf(s string) string             { return s }
func Act(a record.Act) string           { return string(a) }
func What(w string) string              { return w }

func CardFigures(c app.Card) []Line {
	u := Imperial
	if c.Units.Metric {
		u = Metric
	}
	var out []Line
	for _, n := range c.Figures {
		out = append(out, Line{ID: n.ID, Label: Label(n), Value: u.Bench(n)})
	}
	return out
}

func StockFigures(*app.Stock, app.ListUnits) []Line { return nil }
