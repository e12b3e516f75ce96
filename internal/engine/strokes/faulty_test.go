package strokes

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

// TestFaultyActs: each fault is told at its place, all of them at once.
func TestFaultyActs(t *testing.T) {
	many := strings.Repeat("1 ", 30)
	for want, a := range map[string]Act{
		"stroke.act do":                         {Do: "weave"},
		"stroke.part part":                      {Do: Put, Part: WarpThick},
		"stroke.lift-plan part":                 {Do: Put, Part: "lift"},
		"stroke.treadled part":                  {Do: Put, Part: Lifts},
		"stroke.stretch at":                     {Do: Put, Part: Threading, At: 5},
		"stroke.stretch from":                   {Do: Reverse, Part: Threading, From: 3, To: 2},
		"draft.end-shaft put[1]":                {Do: Put, Part: Threading, Put: Numbers(4, -1)},
		"draft.tie-shaft put[0]":                {Do: Put, Part: Ties, Remove: 1, Put: Sets(16)},
		"draft.tie-lowers put[0]":               {Do: Put, Part: Lowered, Remove: 1, Put: Sets(1)},
		"draft.pick-treadle put[0]":             {Do: Put, Part: Treadling, Put: Sets(16)},
		"draft.colour put[0]":                   {Do: Put, Part: WeftColours, Remove: 1, Put: Numbers(2)},
		"stroke.colour put[0]":                  {Do: Put, Part: Palette, Put: []Value{1 << 24}},
		"stroke.length put":                     {Do: Put, Part: WarpColours, Put: Numbers(1)},
		"stroke.colours-used put":               {Do: Put, Part: Palette, Remove: 2},
		"stroke.treadles-used put":              {Do: Put, Part: Ties, At: 3, Remove: 1},
		"stroke.treadles-used from":             {Do: Delete, Part: Ties, From: 1, To: 2},
		"draft.no-ends from":                    {Do: Delete, Part: Threading, To: 4},
		"draft.no-picks from":                   {Do: Delete, Part: Treadling, To: 4},
		"stroke.times times":                    {Do: Repeat, Part: Threading, To: 4},
		"stroke.large times":                    {Do: Repeat, Part: Threading, To: 4, Times: 5001},
		"stroke.rule rule":                      {Do: ByRule, Part: Threading, To: 4, Rule: "broken"},
		"stroke.range first":                    {Do: ByRule, Part: Threading, To: 4, Rule: Point, First: 3, Last: 5},
		"stroke.start start":                    {Do: ByRule, Part: Threading, To: 4, Rule: Point, First: 3, Start: 2},
		"stroke.number length":                  {Do: ByRule, Part: Threading, To: 0, Rule: Point},
		"stroke.number run":                     {Do: ByRule, Part: Threading, To: 4, Rule: Advancing, Run: -1},
		"stroke.fill text":                      {Do: Type, Part: Threading, To: 4, Text: "(1 2 3) x fill"},
		"order.unclosed text":                   {Do: Type, Part: Threading, To: 4, Text: "(1 2"},
		"order.name-unknown text":               {Do: Type, Part: WarpColours, To: 4, Text: "slat 4", Names: []string{"slate"}},
		"draft.end-shaft text":                  {Do: Type, Part: Threading, To: 4, Text: "1-6"},
		"stroke.cell cells[1]":                  {Do: Cells, Cells: []Cell{{}, {4, 0}}},
		"draft.shafts number":                   {Do: Shafts, Number: 65},
		"stroke.shafts-used number":             {Do: Shafts, Number: 3},
		"draft.treadles number":                 {Do: Treadles, Number: -1},
		"stroke.treadles-used number":           {Do: Treadles, Number: 3},
		"stroke.large put":                      {Do: Put, Part: Threading, Put: make([]Value, MostThreads)},
		"draft.treadles put":                    {Do: Put, Part: Ties, Put: make([]Value, 61)},
		"stroke.number by":                      {Do: ByRule, Part: Threading, To: 4, Rule: Straight, By: 1 << 40},
		"draft.pick-treadle text":               {Do: Type, Part: Treadling, To: 4, Text: strings.Replace(many, "1", "5", 25)},
		"stroke.lift-plan number of lift plans": {Do: Treadles, Number: 3},
	} {
		code, field, _ := strings.Cut(want, " ")
		d := twill(4)
		if field == "number of lift plans" || a.Part == "lift" {
			d, a.Part = d.WithoutTreadles(), Ties
			field, _, _ = strings.Cut(field, " ")
		}
		is, list := Do(d, []Act{{Do: Shift, Part: Threading, To: 1}, a})
		told := slices.ContainsFunc(list.All(), func(p problem.Problem) bool { return p.Code == code && p.Path == "acts[1]."+field })
		if is != nil || !told {
			t.Errorf("%s: told %v", want, list.All())
		}
	}
}

// TestAllFaultsAtOnce: those of several acts, and of a kind at most so many.
func TestAllFaultsAtOnce(t *testing.T) {
	_, list := Do(twill(4), []Act{
		{Do: "sing"},
		{Do: Put, Part: Threading, Put: slices.Repeat(Numbers(9), 30)},
		{Do: Shafts, Number: 0},
	})
	counts := map[string]int{}
	for _, p := range list.All() {
		counts[p.Code]++
	}
	if counts["stroke.act"] != 1 || counts["draft.end-shaft"] != mostOfAKind || counts["draft.more"] != 1 || counts["draft.shafts"] != 1 {
		t.Errorf("told %v", counts)
	}
}
