package review

import (
	"slices"
	"testing"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// threaded is a draft of those shafts and lifts.
func threaded(threading []int, lifts ...draft.Set) *draft.Draft {
	d := &draft.Draft{Threading: threading, Lifts: lifts}
	for _, shaft := range threading {
		d.Shafts = max(d.Shafts, shaft)
	}
	for _, up := range lifts {
		d.Shafts = max(d.Shafts, up.Most())
	}
	return d
}

// tied is a twill with one thing changed.
func tied(change func(d *draft.Draft)) *draft.Draft {
	d := twill(8)
	change(d)
	return d
}

// lace is a weft that floats over the ends of a shaft for so long.
func lace(long int) *draft.Draft {
	threading := append(slices.Repeat([]int{3, 4}, (long+1)/2), 1, 2, 1, 2)
	return threaded(threading, draft.Of(1, 3), draft.Of(2, 4), draft.Of(1), draft.Of(2, 4))
}

// cases are drafts that have a finding, what is told of it first, and its remedies.
var cases = []struct {
	name     string
	draft    *draft.Draft
	context  Context
	topic    Topic
	severity Severity
	place    Place
	args     map[string]any
	remedies []Topic
}{
	{
		"a weft float over 17 ends", lace(16),
		Context{},
		LongFloat, Note,
		Place{Ends: Span{19, 20}, Picks: Span{2, 3}},
		map[string]any{"way": 1, "face": 0, "threads": 17, "limit": 15},
		[]Topic{Bind},
	},
	{
		"17 ends of a towel at 10 in a cm", lace(16),
		Context{Use: "towel", Sett: qty.Density{Threads: qty.Int(10), Over: qty.Centimetre}},
		LongFloat, Care,
		Place{Ends: Span{19, 20}, Picks: Span{2, 3}},
		map[string]any{"threads": 17, "limit": 10, "long": 17 * qty.Millimetre},
		[]Topic{Bind},
	},
	{
		"an end that is always up", threaded([]int{1, 2, 3}, draft.Of(1, 2), draft.Of(1, 3)),
		Context{},
		LooseEnds, Wrong,
		Place{Ends: Span{0, 1}},
		map[string]any{"count": 1, "of": 3},
		nil,
	},
	{
		"a pick between an end and all others", threaded([]int{1, 2, 3}, draft.Of(2), draft.Of(3), draft.Of(2, 3)),
		Context{},
		LoosePicks, Wrong,
		Place{Picks: Span{2, 3}},
		map[string]any{"count": 1, "of": 3},
		nil,
	},
	{
		"a pick above the others", threaded([]int{1, 2, 3, 4}, draft.Of(1, 2), draft.Of(3, 4), draft.Of(1, 3), draft.Of(2, 4), draft.Of(1, 2, 3, 4)),
		Context{},
		AllEndsUp, Care,
		Place{Part: "lifts", Picks: Span{4, 5}},
		map[string]any{"picks": 1},
		[]Topic{LeaveOutPicks},
	},
	{
		"two picks under all ends", tied(func(d *draft.Draft) { d.Treadling = append(d.Treadling, 0, 0) }),
		Context{},
		NoEndUp, Care,
		Place{Part: "treadling", Picks: Span{4, 6}},
		map[string]any{"picks": 2},
		[]Topic{LeaveOutPicks},
	},
	{
		"double cloth", threaded([]int{1, 2, 3, 4}, draft.Of(1), draft.Of(1, 2, 3), draft.Of(3), draft.Of(1, 3, 4)),
		Context{},
		Layers, Note,
		Place{},
		map[string]any{"layers": 2, "wanted": 1},
		nil,
	},
	{
		"an end forgotten", tied(func(d *draft.Draft) { d.Threading[2] = 0 }),
		Context{Ends: 8},
		InNoHeddle, Wrong,
		Place{Part: "threading", Ends: Span{2, 3}},
		map[string]any{"ends": 1},
		[]Topic{ThreadEnds, LeaveOutEnds},
	},
	{
		"two feet against one another", tied(func(d *draft.Draft) {
			*d = *must(d.OnLoom(loom.Countermarch))
			d.Treadling = append(d.Treadling, draft.Of(1, 2))
		}),
		Context{},
		Locked, Wrong,
		Place{Part: "treadling", Picks: Span{4, 5}, Numbers: []int{1, 3}},
		map[string]any{"shafts": "1+3"},
		nil,
	},
	{
		"a shaft tied neither way", tied(func(d *draft.Draft) {
			*d = *must(d.OnLoom(loom.Countermarch))
			d.Ties[1].Lowered = draft.Of(1)
		}),
		Context{},
		Hanging, Care,
		Place{Part: "treadling", Picks: Span{1, 2}, Numbers: []int{4}},
		map[string]any{"shafts": "4"},
		[]Topic{TieToSink},
	},
	{
		"one against three", tied(func(d *draft.Draft) {
			*d = *must(d.OnLoom(loom.Counterbalance))
			d.Ties[3].Tied = draft.Of(1)
		}),
		Context{},
		UnevenShed, Note,
		Place{Part: "treadling", Picks: Span{3, 4}},
		map[string]any{"up": 3, "shafts": 4},
		nil,
	},
	{
		"a twill begun where it misses an edge", twill(8),
		Context{Ends: 8, Start: []structure.Side{structure.Left}},
		EdgeBare, Care,
		Place{Ends: Span{0, 1}},
		map[string]any{"side": 0, "caught": 0, "turns": 2, "run": 2},
		[]Topic{StartOther},
	},
	{
		"an end too many for either start", twill(8),
		Context{Ends: 9},
		EdgeBare, Care,
		Place{Ends: Span{0, 1}},
		map[string]any{"side": 0},
		[]Topic{ChangeEnds},
	},
	{
		"a satin", threaded([]int{1, 2, 3, 4, 5}, 1, 4, 16, 2, 8),
		Context{Ends: 5},
		EdgeBare, Care,
		Place{Ends: Span{0, 1}},
		map[string]any{"side": 0, "caught": 2, "turns": 5},
		[]Topic{HangFloating},
	},
	{
		"a satin, repeated", threaded([]int{1, 2, 3, 4, 5}, 1, 4, 16, 2, 8),
		Context{Ends: 50},
		EdgeBare, Care,
		Place{Ends: Span{0, 1}},
		map[string]any{"side": 0, "caught": 2, "turns": 5},
		[]Topic{HangFloating},
	},
	{
		"too few shafts", twill(8),
		Context{Loom: &loom.Loom{Shafts: 3}},
		LacksShafts, Wrong,
		Place{Part: "threading", Numbers: []int{4}},
		map[string]any{"has": 3, "needs": 4},
		nil,
	},
	{
		"shafts that are not needed", tied(func(d *draft.Draft) { *d = *threaded([]int{1, 3, 1, 3}, draft.Of(1), draft.Of(3)) }),
		Context{Loom: &loom.Loom{Shafts: 2}},
		LacksShafts, Wrong,
		Place{Part: "threading", Numbers: []int{3}},
		map[string]any{"needs": 3},
		[]Topic{DropUnused},
	},
	{
		"plain weave on two shafts", threaded([]int{1, 2, 3, 4}, draft.Of(1, 3), draft.Of(2, 4)),
		Context{Loom: &loom.Loom{Shafts: 2}},
		LacksShafts, Wrong,
		Place{Part: "threading", Numbers: []int{3, 4}},
		map[string]any{"has": 2},
		[]Topic{FewerShafts},
	},
	{
		"too few treadles", twill(8),
		Context{Loom: &loom.Loom{Treadles: 3}},
		LacksTreadles, Wrong,
		Place{Part: "treadling", Numbers: []int{4}},
		map[string]any{"has": 3, "needs": 4},
		[]Topic{LiftPlan},
	},
	{
		"too few heddles for all repeats", twill(8),
		Context{Ends: 400, Loom: &loom.Loom{Heddles: []int{100, 100, 99, 100}}},
		LacksHeddles, Wrong,
		Place{Part: "threading", Numbers: []int{3}},
		map[string]any{"shaft": 3, "has": 99, "needs": 100},
		nil,
	},
	{
		"a draft for another loom", twill(8),
		Context{Loom: &loom.Loom{Shed: loom.Countermarch}},
		OtherShed, Note,
		Place{Part: "ties"},
		map[string]any{"draft": "rising", "loom": "countermarch"},
		[]Topic{ForLoom},
	},
	{
		"a shaft beside its twin", threaded([]int{1, 2, 3, 4}, draft.Of(1, 2), draft.Of(3), draft.Of(1, 2), draft.Of(3, 4)),
		Context{},
		SameShafts, Note,
		Place{Part: "threading", Numbers: []int{1, 2}},
		map[string]any{"shafts": "1+2"},
		[]Topic{Merge},
	},
	{
		"a shaft without ends that rises", tied(func(d *draft.Draft) { d.Shafts, d.Ties[0].Tied = 5, draft.Of(1, 2, 5) }),
		Context{},
		EmptyShafts, Note,
		Place{Part: "ties", Numbers: []int{5}},
		map[string]any{"shafts": "5"},
		[]Topic{DropUnused},
	},
	{
		"a treadle beside its twin", tied(func(d *draft.Draft) { d.Ties[4].Tied, d.Treadling = draft.Of(1, 2), append(d.Treadling, draft.Of(5)) }),
		Context{},
		SameTreadles, Note,
		Place{Part: "ties", Numbers: []int{1, 5}},
		map[string]any{"treadles": "1+5"},
		[]Topic{Merge},
	},
	{
		"a treadle that nobody presses", tied(func(d *draft.Draft) { d.Ties[4].Tied = draft.Of(1, 2, 3) }),
		Context{},
		IdleTreadles, Note,
		Place{Part: "ties", Numbers: []int{5}},
		map[string]any{"treadles": "5"},
		[]Topic{DropUnused},
	},
	{
		"a point that ends on its way", tied(func(d *draft.Draft) { d.Threading = []int{1, 2, 3, 4, 3, 2} }),
		Context{Ends: 21},
		PartRepeat, Note,
		Place{Part: "threading", Ends: Span{5, 6}},
		map[string]any{"ends": 21, "repeat": 6, "over": 3},
		[]Topic{LeaveOutEnds, AddEnds, Balance},
	},
	{
		"the same, all ends drawn", tied(func(d *draft.Draft) { d.Threading = []int{1, 2, 3, 4, 3, 2, 1, 2, 3, 4, 3, 2, 1, 2, 3} }),
		Context{Ends: 15},
		PartRepeat, Note,
		Place{Part: "threading", Ends: Span{14, 15}},
		map[string]any{"ends": 15, "repeat": 6, "over": 3},
		[]Topic{LeaveOutEnds, AddEnds, Balance},
	},
}

func must(d *draft.Draft, _ bool) *draft.Draft { return d }

func TestFindings(t *testing.T) {
	told, tried := map[Topic]bool{MoreFloats: true}, map[Topic]bool{}
	for _, c := range cases {
		found, mended := mendAll(t, c.draft, c.context)
		at := slices.IndexFunc(found, func(f Finding) bool { return f.Topic == c.topic })
		if at < 0 {
			t.Errorf("%s: told %v", c.name, topics(found))
			continue
		}
		f := found[at]
		if f.Severity != c.severity || !samePlace(f.Place, c.place) {
			t.Errorf("%s: %s at %+v", c.name, f.Severity, f.Place)
		}
		for name, want := range c.args {
			if f.Args[name] != want {
				t.Errorf("%s: %s is %v, want %v", c.name, name, f.Args[name], want)
			}
		}
		var remedies []Topic
		for _, m := range f.Remedies {
			remedies = append(remedies, m.Topic)
		}
		if !slices.Equal(remedies[:min(len(remedies), len(c.remedies))], c.remedies) {
			t.Errorf("%s: remedies %v, want %v", c.name, remedies, c.remedies)
		}
		told[c.topic] = true
		for _, topic := range mended {
			tried[topic] = true
		}
	}
	for _, topic := range slices.Concat(Topics(), RemedyTopics()) {
		if !told[topic] && !tried[topic] {
			t.Errorf("%s was never told", topic)
		}
	}
}

func samePlace(a, b Place) bool {
	return a.Part == b.Part && a.Ends == b.Ends && a.Picks == b.Picks && slices.Equal(a.Numbers, b.Numbers)
}
