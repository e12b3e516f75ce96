package sley_test

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/engine/sett"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// reckoned keeps the plan files that were reckoned.
type reckoned struct {
	advise  bool // for the setts that the rules advise, whatever the plan takes
	results map[string]*reckon.Result
}

// reckon decodes a plan file of testdata/vectors/plans and reckons it.
func (d *reckoned) reckon(t *testing.T, name string) *reckon.Result {
	t.Helper()
	if r, ok := d.results[name]; ok {
		return r
	}
	plan := decoded(t, name)
	result := d.work(t, name, plan)
	if result.Problems.Has(problem.Error) {
		t.Fatalf("%s: %v", name, result.Problems.All())
	}
	if d.results == nil {
		d.results = map[string]*reckon.Result{}
	}
	d.results[name] = result
	return result
}

// work reckons a plan; a plan that was decoded must never make it panic.
func (d *reckoned) work(t *testing.T, name string, plan *warp.Plan) (result *reckon.Result) {
	defer func() {
		if fault := recover(); fault != nil {
			t.Errorf("%s: %v", name, fault)
			result = &reckon.Result{Plan: plan}
		}
	}()
	if d.advise {
		return reckon.Advise(plan)
	}
	return reckon.Solve(plan, reckon.Options{})
}

func decoded(t *testing.T, name string) *warp.Plan {
	t.Helper()
	file := filepath.Join(vectorsFolder, "plans", name+".toml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	plan, _, found := planfile.Decode(name+".toml", text)
	if found.Len() > 0 {
		t.Fatalf("%s: %v", file, found.All())
	}
	return plan
}

// figure gives the node a row names, in the row's unit.
func (d *reckoned) figure(v vector) qty.Rat {
	v.t.Helper()
	n, ok := d.reckon(v.t, v.col["plan"]).Node(v.col["node"])
	if !ok {
		v.t.Errorf("%s: %s has no node %s", v.at, v.col["plan"], v.col["node"])
		return qty.Rat{}
	}
	return inUnit(v, n.Figure)
}

// kindNames are the counts a row may ask for.
var kindNames = map[reckon.Kind]string{
	reckon.Ends: "ends", reckon.Picks: "picks", reckon.Dents: "dents",
	reckon.Heddles: "heddles", reckon.Pieces: "pieces",
	reckon.Number: "number",
}

// inUnit turns a figure into the unit a row names; a figure of another kind is
// a mistake in the row.
func inUnit(v vector, f reckon.Figure) qty.Rat {
	unit := v.col["in"]
	one, err := qty.Int(1), error(nil)
	switch f.Kind {
	case reckon.Length, reckon.YarnLength:
		var l qty.Length
		l, err = qty.ParseLength(numbered(unit))
		one = l.Rat()
	case reckon.Weight:
		var m qty.Mass
		m, err = qty.ParseMass(numbered(unit))
		one = m.Rat()
	case reckon.Density:
		one, err = perUnit(unit)
	default:
		if kindNames[f.Kind] != unit {
			v.t.Fatalf("%s: %s counts %s, not %s", v.at, v.what(), kindNames[f.Kind], unit)
		}
	}
	if err != nil {
		v.t.Fatalf("%s: %s in %s: %v", v.at, v.what(), unit, err)
	}
	return f.Is.Div(one)
}

// numbered gives yd as 1 yd; 840 yd, a hank, stays.
func numbered(unit string) string {
	if _, _, ok := qty.ScanNumber(unit); ok {
		return unit
	}
	return "1 " + unit
}

// perUnit reads /in, /24.25 in, or the number of a reed as a density.
func perUnit(unit string) (qty.Rat, error) {
	over, ok := strings.CutPrefix(unit, "/")
	if !ok {
		reed, err := loom.ParseReed(unit)
		return reed.Dents.Is.PerNM(), err
	}
	d, err := qty.ParseDensity("1 per " + over)
	return d.PerNM(), err
}

// chartFigure gives the ends over a length that an order makes in a reed, and
// holds that the ranking finds the order.
func chartFigure(v vector) qty.Rat {
	reed, err := loom.ParseReed(v.col["reed"])
	if err != nil {
		v.t.Fatalf("%s: %v", v.at, err)
	}
	order := orderOf(v)
	dents := reed.Dents.Is.PerNM()
	density := order.Density(dents)
	mustFind(v, dents, order)
	return inUnit(v, reckon.Figure{Is: density, Kind: reckon.Density})
}

func orderOf(v vector) sett.Order {
	var out sett.Order
	for part := range strings.SplitSeq(v.col["order"], "-") {
		n, err := strconv.Atoi(part)
		if err != nil {
			v.t.Fatalf("%s: %v", v.at, err)
		}
		out = append(out, n)
	}
	return out
}

// longestRanked is the longest order that a ranking looks at, in dents.
const longestRanked = 8

// mustFind holds that a ranking for the density of an order finds the order,
// turned about as it may be. An order that spreads its ends less evenly than
// it could is left out: 2-0 is 1 in every dent.
func mustFind(v vector, dents qty.Rat, order sett.Order) {
	if len(order) > longestRanked || !even(order) {
		return
	}
	for _, c := range sett.Choose([]qty.Rat{dents}, sett.Wanted{Density: order.Density(dents)}) {
		if turnedAbout(c.Order, order) {
			return
		}
	}
	v.t.Errorf("%s: no order like %s for a reed of %s", v.at, order, v.col["reed"])
}

func even(o sett.Order) bool { return slices.Max(o)-slices.Min(o) <= 1 }

// turnedAbout reports whether a is b begun at another dent.
func turnedAbout(a, b sett.Order) bool {
	return len(a) == len(b) && slices.ContainsFunc(turns(b), func(o sett.Order) bool { return slices.Equal(a, o) })
}

func turns(o sett.Order) []sett.Order {
	var out []sett.Order
	for i := range o {
		out = append(out, slices.Concat(o[i:], o[:i]))
	}
	return out
}
