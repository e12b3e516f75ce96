package sley_test

import (
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

// vectorColumns are the columns of a table of plan files and of a chart.
var (
	planColumns  = []string{"figure", "source", "plan", "node", "in", "printed", "within", "mark", "exact", "remark"}
	chartColumns = []string{"figure", "source", "reed", "order", "in", "printed", "within", "mark", "exact", "remark"}
)

// TestPublishedFigures holds the reckoning against every published figure, and
// counts those that are checks from outside. A figure found already, worked out
// by us from the author's data, or only guessed at by the author is held too,
// but never counted.
func TestPublishedFigures(t *testing.T) {
	sources, desk, rules := sourcesOf(t), &reckoned{}, &reckoned{advise: true}
	all := counted{bySource: map[string]int{}, seen: map[string]string{}}
	for _, name := range planned {
		for _, v := range readVectors(t, name, planColumns) {
			v.mustHaveSource(sources)
			all.add(v, v.holds(desk.figure(v)), true)
		}
	}
	for _, v := range readVectors(t, advised, planColumns) {
		v.mustHaveSource(sources)
		all.add(v, v.holds(rules.figure(v)), false)
	}
	for _, name := range charts {
		for _, v := range readVectors(t, name, chartColumns) {
			v.mustHaveSource(sources)
			all.add(v, v.holds(chartFigure(v)), false)
		}
	}
	all.report(t)
}

// counted is the tally of published figures that agree.
type counted struct {
	figures, planned int
	bySource         map[string]int
	seen             map[string]string // what was counted, and where
	lines            []string
	table            string
	inTable          int
}

// add counts a figure that is a check from outside and agrees.
func (c *counted) add(v vector, agrees, fromPlan bool) {
	if v.table != c.table {
		c.closeTable()
		c.table, c.inTable = v.table, 0
	}
	if !agrees || !v.counts() {
		return
	}
	if was, again := c.seen[v.what()]; again {
		v.t.Errorf("%s: %s was counted at %s; its mark is again", v.at, v.what(), was)
		return
	}
	c.seen[v.what()] = v.at
	c.bySource[v.col["source"]]++
	if v.col["source"] == chart && c.bySource[chart] > mostOfAChart {
		return
	}
	c.figures, c.inTable = c.figures+1, c.inTable+1
	if fromPlan {
		c.planned++
	}
}

func (c *counted) closeTable() {
	if c.table != "" {
		c.lines = append(c.lines, qty.Int(int64(c.inTable)).String()+" "+c.table)
	}
}

// report tells the tally and holds it against what is asked.
func (c *counted) report(t *testing.T) {
	c.closeTable()
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
	columns := []string{"figure", "source", "plan", "node", "in", "printed", "right", "remark"}
	for _, v := range readVectors(t, "slips", columns) {
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
		for _, v := range readVectors(t, name, []string{"figure", "plan", "node", "in", "printed"}) {
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
