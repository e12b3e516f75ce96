package sley_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/qty"
)

// planned are the tables whose figures are read from reckoned plan files,
// charts those that turn reeds and sleying orders into densities.
var (
	planned = []string{"warp-length", "width-and-ends", "yarn-and-weft", "threading", "backwards"}
	charts  = []string{"sleying", "reeds"}
)

// advised is the table of the setts that the rules of the trade advise.
const advised = "sett"

// What must be held against the world, and how much of it one chart may be.
const (
	leastFigures = 150
	leastPlanned = 60
	mostOfAChart = 60
	chart        = "HOW" // the one source that prints nearly 200 figures
)

// The columns of the tables.
var (
	planColumns  = []string{"figure", "source", "plan", "node", "in", "printed", "within", "mark", "exact", "remark"}
	chartColumns = []string{"figure", "source", "reed", "order", "in", "printed", "within", "mark", "exact", "remark"}
	slipColumns  = []string{"figure", "source", "plan", "node", "in", "printed", "right", "remark"}
	ownColumns   = []string{"figure", "plan", "node", "in", "printed"}
)

// vectorTables are all tables with their columns.
var vectorTables = map[string][]string{
	"warp-length": planColumns, "width-and-ends": planColumns, "yarn-and-weft": planColumns,
	"threading": planColumns, "backwards": planColumns, advised: planColumns,
	"sleying": chartColumns, "reeds": chartColumns,
	"slips": slipColumns, "own": ownColumns, "practice": ownColumns,
}

// TestPublishedFigures holds the reckoning against every published figure, and
// counts those that are checks from outside. A figure found already, worked out
// by us from the author's data, or only guessed at by the author is held too,
// but never counted.
func TestPublishedFigures(t *testing.T) {
	all := counted{bySource: map[string]int{}, seen: map[string]string{}}
	desk, rules := &reckoned{}, &reckoned{advise: true}
	for _, name := range planned {
		all.table(t, name, desk.figure)
	}
	all.planned = all.figures
	all.table(t, advised, rules.figure)
	for _, name := range charts {
		all.table(t, name, chartFigure)
	}
	all.report(t)
}

// counted is the tally of published figures that agree.
type counted struct {
	figures, planned int
	bySource         map[string]int
	seen             map[string]string // what was counted, and where
	lines            []string
}

// table holds every row of a table and counts those that are checks from
// outside.
func (c *counted) table(t *testing.T, name string, figure func(vector) qty.Rat) {
	sources, before := sourcesOf(t), c.figures
	for _, v := range readVectors(t, name, vectorTables[name]) {
		v.mustHaveSource(sources)
		if v.holds(figure(v)) && v.counts() {
			c.add(v)
		}
	}
	c.lines = append(c.lines, fmt.Sprint(c.figures-before, " ", name))
}

// add counts a figure, unless it was counted before or its chart has had its
// share.
func (c *counted) add(v vector) {
	if was, already := c.seen[v.what()]; already {
		v.t.Errorf("%s: %s was counted at %s; its mark is again", v.at, v.what(), was)
		return
	}
	c.seen[v.what()] = v.at
	c.bySource[v.col["source"]]++
	if v.col["source"] != chart || c.bySource[chart] <= mostOfAChart {
		c.figures++
	}
}

// report tells the tally and holds it against what is asked.
func (c *counted) report(t *testing.T) {
	t.Logf("published figures: %d from %d sources (%s), of which from plan files: %d; of one chart %d agree and %d count",
		c.figures, len(c.bySource), strings.Join(c.lines, ", "), c.planned, c.bySource[chart], min(c.bySource[chart], mostOfAChart))
	if c.figures < leastFigures || c.planned < leastPlanned {
		t.Errorf("%d published figures and %d from plan files agree, want at least %d and %d",
			c.figures, c.planned, leastFigures, leastPlanned)
	}
}

// TestPublishedSlips holds that sley reckons what is right where a print is
// wrong, and not what is printed.
func TestPublishedSlips(t *testing.T) {
	sources, desk := sourcesOf(t), &reckoned{}
	for _, v := range readVectors(t, "slips", slipColumns) {
		v.mustHaveSource(sources)
		got, printed, right := desk.figure(v), v.number("printed"), v.number("right")
		if !near(got, right, half(v.col["right"])) {
			t.Errorf("%s: %s is %s %s, want %s", v.at, v.what(), got.Decimal(4), v.col["in"], v.col["right"])
		}
		if near(got, printed, half(v.col["printed"])) {
			t.Errorf("%s: %s is the print %s, which is a slip", v.at, v.what(), v.col["printed"])
		}
	}
}

// TestOwnProjects pins our own conventions and what is common practice.
func TestOwnProjects(t *testing.T) {
	desk := &reckoned{}
	for _, name := range []string{"own", "practice"} {
		for _, v := range readVectors(t, name, ownColumns) {
			if got := desk.figure(v); !near(got, v.number("printed"), half(v.col["printed"])) {
				t.Errorf("%s: %s is %s %s, want %s", v.at, v.what(), got.Decimal(5), v.col["in"], v.col["printed"])
			}
		}
	}
}

// TestOwnSleying pins how the orders of the first project of our own rank.
func TestOwnSleying(t *testing.T) {
	result := (&reckoned{}).reckon(t, "P1")
	var best []string
	seen := map[int]bool{}
	for _, c := range result.Sleying {
		if !seen[c.Reed] {
			seen[c.Reed] = true
			best = append(best, result.Reeds[c.Reed].Name+" "+c.Order.String())
		}
	}
	want := []string{"12 dpi 2", "8 dpi 3", "10 dpi 2-3-2-3-2"}
	if !slices.Equal(best, want) {
		t.Errorf("the best orders of each reed are %q, want %q", best, want)
	}
}
