package reckon

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

func exactly(f Figure) qty.Rat { return f.Is }

// Every formula comes to its node's value exactly, from leaves that are the
// values of the nodes they name, and its dimensions come out; ids are unique;
// values are the same with and without workings.
func TestFormulasComeToTheirNodes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Rounding.Off = maybe(t, "off")
		with, without := Reckon(plan, Options{Workings: true, Tape: true}), Reckon(plan, Options{Tape: true})
		if len(with.Nodes) != len(without.Nodes) {
			t.Fatalf("got %d nodes without workings, want %d", len(without.Nodes), len(with.Nodes))
		}
		seen := map[string]Node{}
		for i, n := range with.Nodes {
			if _, twice := seen[n.ID]; twice {
				t.Fatalf("node %s stands twice", n.ID)
			}
			seen[n.ID] = n
			if !n.Is.Equal(without.Nodes[i].Is) || n.ID != without.Nodes[i].ID {
				t.Fatalf("%s: without workings %s = %s, want %s", n.ID, without.Nodes[i].ID, without.Nodes[i].Is, n.Is)
			}
			checkFormula(t, n, seen)
		}
	})
}

func checkFormula(t *rapid.T, n Node, seen map[string]Node) {
	if n.Formula == nil {
		return
	}
	if got := n.Formula.Eval(exactly); !got.Equal(n.Is) {
		t.Fatalf("%s: formula comes to %s, want %s", n.ID, got, n.Is)
	}
	if got, ok := dimension(n.Formula); !ok || got != n.Kind.Dimension() {
		t.Fatalf("%s: formula has dimension %v (consistent %v), want %v", n.ID, got, ok, n.Kind.Dimension())
	}
	n.Formula.Leaves(func(e *Expr) {
		if from, ok := seen[e.Node]; e.Node != "" && (!ok || !from.Is.Equal(e.Leaf.Is)) {
			t.Fatalf("%s: leaf %s is %s, want %s", n.ID, e.Node, e.Leaf.Is, from.Is)
		}
	})
}

// dimension works a formula's dimension out; false where unlike things are
// added or compared.
func dimension(e *Expr) (Dimension, bool) {
	if e.Op == Leaf {
		return e.Leaf.Kind.Dimension(), true
	}
	d, ok := dimension(e.Args[0])
	for _, arg := range e.Args[1:] {
		next, good := dimension(arg)
		ok = ok && good
		switch e.Op {
		case Times:
			d = Dimension{d.Length + next.Length, d.Weight + next.Weight, d.Money + next.Money, d.Time + next.Time}
		case Over:
			d = Dimension{d.Length - next.Length, d.Weight - next.Weight, d.Money - next.Money, d.Time - next.Time}
		default:
			ok = ok && d == next
		}
	}
	return d, ok
}

// Doll and giant: with rounding off, a tenth and three times every plain length
// and every inverse density scale lengths and yarn exactly and leave ends,
// picks and shares alone.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Rounding.Off = true
		base := Reckon(plan, Options{Tape: true})
		for _, by := range []qty.Rat{qty.Frac(1, 10), qty.Int(3)} {
			scaled := *plan
			scale(reflect.ValueOf(&scaled).Elem(), by)
			other := Reckon(&scaled, Options{Tape: true})
			for i, n := range base.Nodes {
				want := n.Is
				switch d := n.Kind.Dimension(); {
				case n.Kind == Grist:
				case n.Kind == Weight || d.Length == 1:
					want = want.Mul(by)
				case d.Length == -1:
					want = want.Div(by)
				}
				if got := other.Nodes[i]; got.ID != n.ID || !got.Is.Equal(want) {
					t.Fatalf("%s × %s: got %s (%s), want %s", n.ID, by, got.Is, got.ID, want)
				}
			}
		}
	})
}

// scale multiplies every length under v and divides every density, in copies of
// what v shares; a yarn's own grist stays.
func scale(v reflect.Value, by qty.Rat) {
	switch v.Type() {
	case reflect.TypeFor[qty.Length]():
		v.SetInt(qty.Int(v.Int()).Mul(by).Whole64())
		return
	case reflect.TypeFor[qty.Density]():
		over := v.FieldByName("Over")
		over.SetInt(qty.Int(over.Int()).Mul(by).Whole64())
		return
	case reflect.TypeFor[yarn.Yarn](), reflect.TypeFor[order.Order](), reflect.TypeFor[qty.Rat]():
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			scale(v.Field(i), by)
		}
	case reflect.Slice:
		clone := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(clone, v)
		for i := range clone.Len() {
			scale(clone.Index(i), by)
		}
		v.Set(clone)
	case reflect.Map:
		clone := reflect.MakeMap(v.Type())
		for _, key := range v.MapKeys() {
			item := reflect.New(v.Type().Elem()).Elem()
			item.Set(v.MapIndex(key))
			scale(item, by)
			clone.SetMapIndex(key, item)
		}
		v.Set(clone)
	}
}

// The order in which pieces are woven changes no total.
func TestOrderOfPiecesChangesNoTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Loom.Waste.GivesFringe = false // what the ends of the warp give depends on which piece is there
		turned := *plan
		turned.Pieces = nil
		for i := range plan.Pieces {
			turned.Pieces = append(turned.Pieces, plan.Pieces[len(plan.Pieces)-1-i])
		}
		a, b := Reckon(plan, Options{}), Reckon(&turned, Options{})
		sameTotals(t, a, b)
	})
}

var totals = []string{
	"warp.needed", "warp.wound", "ends", "ends.wound", "dents", "width.occupied", "weft.picks",
	"yarns[white].need", "yarns[blue].need", "yarns[white].weight",
}

func sameTotals(t *rapid.T, a, b *Result) {
	for _, id := range totals {
		x, hasX := a.Node(id)
		y, hasY := b.Node(id)
		if hasX != hasY || !x.Is.Equal(y.Is) {
			t.Fatalf("%s: got %s, want %s", id, y.Is, x.Is)
		}
	}
}

// The order of stripes changes no total.
func TestOrderOfStripesChangesNoTotal(t *testing.T) {
	texts := []string{"white 12, blue 30, white 7, blue 3", "blue 3, white 7, blue 30, white 12", "blue 33, white 19"}
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Warp.Threading = order.Order{}
		plan.Warp.DoubledEnds, plan.Warp.Floats = 0, 0 // edges take the yarn of the edge
		var first *Result
		for _, text := range texts {
			p := *plan
			p.Warp.Stripes, _ = order.Parse(text, order.Context{Kind: order.Stripes})
			got := Reckon(&p, Options{})
			if first == nil {
				first = got
			}
			sameTotals(t, first, got)
		}
	})
}

// With rounding off backwards undoes forwards, to the nanometre.
func TestBackwardsUndoesForwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Rounding.Off = true
		i := rapid.IntRange(0, len(plan.Pieces)-1).Draw(t, "which")
		limitTo(t, plan, Reckon(plan, Options{}))
		plan.Find.What = pieceID(i) + "length"
		want := plan.Pieces[i].Length.Is.Rat()
		got := Solve(plan, Options{})
		if got.Backward == nil || !undone(plan, got.Backward, want, i) {
			t.Fatalf("found %+v, want %s nm", got.Backward, want)
		}
	})
}

// undone reports whether what was found is what was reckoned from. Where an
// allowance grows the cloth, a nanometre of cloth takes less than one of warp,
// and the whole nanometres that were given cannot tell neighbours apart: then
// what is found is the largest whose need rounds up to the same.
func undone(plan *warp.Plan, b *Backward, want qty.Rat, piece int) bool {
	if b.Found.Is.Equal(want) {
		return true
	}
	need := func(l qty.Rat) qty.Rat {
		p := *plan
		p.Pieces = append([]warp.Piece{}, plan.Pieces...)
		setLength(piece)(&p, l)
		n, _ := Reckon(&p, Options{}).Node("warp.needed")
		return n.Is.Ceil()
	}
	return plan.Find.Within[0] == "warp.wound" && need(want).Equal(need(b.Found.Is))
}

// limitTo gives the plan exactly what its own forward reckoning needs: a wound
// length, or the stock of a yarn.
func limitTo(t *rapid.T, plan *warp.Plan, r *Result) {
	up := func(id string) qty.Length {
		n, _ := r.Node(id)
		l, _ := qty.LengthOf(n.Is, qty.Up)
		return l
	}
	if maybe(t, "by warp") {
		l := up("warp.needed")
		plan.Warp.Wound = qty.Typed[qty.Length]{Is: l, Typed: l.String()}
		plan.Find.Within = []string{"warp.wound"}
		return
	}
	l := up("yarns[white].need")
	plan.Yarns[0].Stock = qty.Typed[yarn.Amount]{Is: yarn.Amount{Length: l}, Typed: l.String()}
	plan.Find.Within = []string{"yarns.white"}
}

// With rounding on, what was found never needs more than was given, and one
// printed step more would: for every kind of unknown.
func TestBackwardsIsTheMostThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		limitTo(t, plan, Reckon(plan, Options{}))
		field := rapid.SampledFrom([]string{"pieces[0].length", "pieces[0].width", "pieces[0].count", "warp.sett"}).Draw(t, "what")
		if plan.Find.Within[0] == "warp.wound" && field != "pieces[0].length" && field != "pieces[0].count" {
			plan.Find.Within = nil // width and sett need no warp length: let the yarn decide
			plan.Warp.Wound = qty.Typed[qty.Length]{}
			plan.Yarns[0].Stock = qty.Typed[yarn.Amount]{Is: yarn.Amount{Length: 900 * qty.Metre}, Typed: "900 m"}
		}
		plan.Find.What = field
		got := Solve(plan, Options{})
		if got.Backward == nil {
			return // not even one step fits: said as a problem
		}
		s := newSearch(plan)
		if path, _ := s.over(got); path != "" {
			t.Fatalf("%s = %s exceeds %s", field, got.Backward.Found.Is, path)
		}
		more := Reckon(s.with(got.Backward.Found.Is.Add(s.step)), Options{})
		if path, _ := s.over(more); path == "" {
			t.Fatalf("%s: one step more than %s would fit too", field, got.Backward.Found.Is)
		}
	})
}

// Counting the picks of three repeats and multiplying comes to what laying every
// pick out comes to.
func TestTallyAgainstEveryPick(t *testing.T) {
	orders := []string{
		"(a 2, b 4) x fill", "(a 2, b 4) x fill, a 2", "a 7, (b 1, a 1) x fill, b 3", "a 5, b 2, a 1",
		"(a 3) x fill, b 2", "a 4", "(a 2, b 2, a 2) x fill", "b 9, (a 2, c 3, a 2) x fill, c 1",
	}
	rapid.Check(t, func(t *rapid.T) {
		plan := &warp.Plan{Weft: warp.Weft{Yarn: "a"}, Warp: warp.Warp{Yarn: "a"}}
		body, _ := order.Parse(rapid.SampledFrom(orders).Draw(t, "order"), order.Context{})
		border, _ := order.Parse("b 3, a 2", order.Context{})
		piece := warp.Piece{Order: body, Far: warp.FarBorder(rapid.IntRange(0, 2).Draw(t, "far"))}
		if maybe(t, "border") {
			piece.Border = border
		}
		r := &run{plan: plan}
		pr := &pieceRun{piece: &piece, picks: r.plain(figure(qty.Frac(rapid.Int64Range(20, 400).Draw(t, "half picks"), 2), Picks))}
		pr.near, pr.far = piece.Borders()
		got, want := r.tallyOf(pr), tallied(r.layOut(pr, qty.Rat{}))
		if len(got) != len(want) {
			t.Fatalf("got %v, want %v", got, want)
		}
		for i := range want {
			if got[i].yarn != want[i].yarn || !got[i].n.Equal(want[i].n) || !got[i].begins.Equal(want[i].begins) {
				t.Fatalf("got %v, want %v", got, want)
			}
		}
	})
}
