package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// ShelfAmount says an amount of yarn in the units of its card; nothing where it is
// unknown.
func ShelfAmount(c app.Card, id string, is qty.Rat, byLength bool) string {
	if is.IsZero() && id != shelfStock {
		return ""
	}
	kind := reckon.Weight
	if byLength {
		kind = reckon.YarnLength
	}
	return unitsOfCard(c.Units).Bench(reckon.Node{ID: id, Figure: reckon.Figure{Is: is, Kind: kind}})
}

// The nodes whose rounding the amounts of the shelf have: what is there goes down, what
// is needed up.
const (
	shelfStock = "yarns[].stock"
	shelfNeed  = "yarns[].need"
)

// ShelfStock says how much of a yarn is there, by length, by weight and in one; each is
// empty where it is unknown.
func ShelfStock(y app.Shelved) (length, weight, says string) {
	if len(record.Standing(y.Stock.Events)) == 0 {
		return "", "", ""
	}
	byLength, byWeight := y.Stock.KnownBy()
	var said []string
	if byLength {
		length = ShelfAmount(y.Card, shelfStock, y.Stock.Length, true)
		said = append(said, length)
	}
	if byWeight {
		weight = ShelfAmount(y.Card, shelfStock, y.Stock.Mass, false)
		said = append(said, weight)
	}
	if len(said) == 0 {
		return "", "", "entered by length and by weight; the count of the yarn would tell how much that is"
	}
	return length, weight, strings.Join(said, ", ")
}

// PromiseSays says what a warp still takes of a yarn.
func PromiseSays(y app.Shelved, p app.Promise) string {
	byLength := y.Left == nil || y.Left.ByLength
	for _, by := range []bool{byLength, !byLength} {
		is := p.Mass
		if by {
			is = p.Length
		}
		if said := ShelfAmount(y.Card, shelfNeed, is, by); said != "" {
			return said
		}
	}
	if p.Done {
		return "has all of it"
	}
	return "not known yet"
}

// LeftSays says what is left of a yarn when all warps in hand have theirs, and whether
// that is too little; nothing where it is unknown.
func LeftSays(y app.Shelved) (says string, short bool) {
	switch l := y.Left; {
	case l == nil:
		return "", false
	case l.Is.Sign() < 0:
		return ShelfAmount(y.Card, shelfNeed, l.Is.Neg(), l.ByLength) + " short", true
	case l.AtMost:
		return "at most " + ShelfAmount(y.Card, shelfStock, l.Is, l.ByLength) + " left", false
	default:
		return ShelfAmount(y.Card, shelfStock, l.Is, l.ByLength) + " left", false
	}
}

// ShelfText says the yarns of the shelf: each with its stock, the warps that it is
// promised to, and what is left.
func ShelfText(yarns []app.Shelved) string {
	if len(yarns) == 0 {
		return "No yarns.\n"
	}
	var b strings.Builder
	for _, y := range yarns {
		b.WriteString(CardText(y.Card))
		_, _, stock := ShelfStock(y)
		for _, p := range y.Promised {
			b.WriteString("        " + PromiseSays(y, p) + " for " + legible(p.Name) + "\n")
		}
		left, _ := LeftSays(y)
		for _, line := range []struct{ label, says string }{{"in stock: ", stock}, {"", left}} {
			if line.says != "" {
				b.WriteString("        " + line.label + line.says + "\n")
			}
		}
	}
	return b.String()
}

// ShelvedJSON is the documented shape of a yarn of the shelf (docs/json.md).
type ShelvedJSON struct {
	CardJSON
	Colour     string           `json:"colour,omitempty"`
	ColourName string           `json:"colour_name,omitempty"`
	Stock      *ShelfAmountJSON `json:"stock"`
	Promised   []PromiseJSON    `json:"promised"`
	Left       *LeftJSON        `json:"left"`
}

// ShelfAmountJSON is an amount of yarn, exactly; what is unknown is empty.
type ShelfAmountJSON struct {
	Length string `json:"length_nm,omitempty"`
	Mass   string `json:"mass_ng,omitempty"`
}

// PromiseJSON is what a warp takes of a yarn.
type PromiseJSON struct {
	ID   record.ID `json:"id"`
	Name string    `json:"name"`
	ShelfAmountJSON
	Done bool `json:"done"`
}

// LeftJSON is what is left of a yarn, below 0 where there is too little.
type LeftJSON struct {
	ShelfAmountJSON
	AtMost bool `json:"at_most"`
	Short  bool `json:"short"`
}

// ShelfJSONOf gives the shape of the yarns of the shelf.
func ShelfJSONOf(yarns []app.Shelved) []ShelvedJSON {
	out := []ShelvedJSON{}
	for _, y := range yarns {
		one := ShelvedJSON{CardJSON: CardJSONOf(y.Card), Colour: y.Colour.Hex, ColourName: y.Colour.Name, Promised: []PromiseJSON{}}
		if byLength, byMass := y.Stock.KnownBy(); byLength || byMass {
			one.Stock = &ShelfAmountJSON{}
			if byLength {
				one.Stock.Length = y.Stock.Length.String()
			}
			if byMass {
				one.Stock.Mass = y.Stock.Mass.String()
			}
		}
		for _, p := range y.Promised {
			one.Promised = append(one.Promised, PromiseJSON{p.Warp, p.Name, ShelfAmountJSON{exact(p.Length), exact(p.Mass)}, p.Done})
		}
		if l := y.Left; l != nil {
			one.Left = &LeftJSON{ShelfAmountJSON{Mass: l.Is.String()}, l.AtMost, l.Is.Sign() < 0}
			if l.ByLength {
				one.Left.ShelfAmountJSON = ShelfAmountJSON{Length: l.Is.String()}
			}
		}
		out = append(out, one)
	}
	return out
}

func exact(is qty.Rat) string {
	if is.IsZero() {
		return ""
	}
	return is.String()
}
