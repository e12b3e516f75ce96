package order

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The slow twin: an order as a tree of its own, spelt at random, and spread out
// thread by thread into the names of its threads. Parse and everything that
// counts without spreading must agree with it.

// threads are the names of neighbouring threads, one by one.
type threads []string

// thing is an order of the twin: how it is written, and its leaves as written.
type thing struct {
	text   string
	leaves []threads
}

// twin draws random things.
type twin struct {
	*rapid.T
	kind   Kind
	groups map[string]thing
}

func (t twin) pick(of ...string) string { return rapid.SampledFrom(of).Draw(t.T, "pick") }

func (t twin) number(least, most int) int { return rapid.IntRange(least, most).Draw(t.T, "number") }

// leaf draws one stripe, one shaft or a run of shafts.
func (t twin) leaf() thing {
	switch {
	case t.kind == Treadles && t.number(0, 1) == 0:
		return t.pressed()
	case t.kind != Stripes:
		return t.run(t.number(1, 9), t.number(1, 9))
	}
	name, n := t.pick("blue", "white", "å-1"), t.number(1, 5)
	text := t.pick(fmt.Sprintf("%s %d", name, n), fmt.Sprintf("%d %s", n, name))
	if at := t.pick("", "", "36 epi", "7,5/cm", "40 ends per 10 cm"); at != "" {
		name, text = name+" at "+at, text+" at "+at
	}
	if beam := t.pick("", "", " on beam 1", " ON Beam 2"); beam != "" {
		name, text = name+strings.ToLower(beam), text+beam
	}
	return thing{text, []threads{slices.Repeat(threads{name}, n)}}
}

// pressed draws treadles that are pressed at once, in any order and some twice.
func (t twin) pressed() thing {
	var list []string
	for range t.number(1, 4) {
		list = append(list, fmt.Sprint(t.number(1, 64)))
	}
	text := strings.Join(list, t.pick("+", " + "))
	slices.SortFunc(list, func(a, b string) int { return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)) })
	return thing{text, []threads{{strings.Join(slices.Compact(list), "+")}}}
}

func (t twin) run(a, b int) thing {
	if a == b {
		return thing{fmt.Sprint(a), []threads{{fmt.Sprint(a)}}}
	}
	r := thing{text: fmt.Sprint(a, t.pick("-", "–", " - "), b)}
	for s := a; ; {
		r.leaves = append(r.leaves, threads{fmt.Sprint(s)})
		switch {
		case s < b:
			s++
		case s > b:
			s--
		default:
			return r
		}
	}
}

// row draws some parts, nested no deeper than depth.
func (t twin) row(depth int) thing {
	var all thing
	for i := range t.number(1, 4) {
		part := t.part(depth)
		if i > 0 {
			all.text += t.pick(", ", ",", " , ")
		}
		all.text += part.text
		all.leaves = append(all.leaves, part.leaves...)
	}
	return all
}

func (t twin) part(depth int) thing {
	part := t.unit(depth)
	for range t.number(0, 3) / 2 {
		part = t.suffix(part)
	}
	return part
}

func (t twin) unit(depth int) thing {
	if len(t.groups) > 0 && t.number(0, 4) == 0 {
		name := t.pick("edge", "body")
		return thing{name, t.groups[name].leaves}
	}
	if depth > 0 && t.number(0, 2) > 0 {
		inner := t.row(depth - 1)
		return thing{t.pick("(", "( ") + inner.text + t.pick(")", " )"), inner.leaves}
	}
	return t.leaf()
}

func (t twin) suffix(part thing) thing {
	back := slices.Clone(part.leaves)
	slices.Reverse(back)
	switch word := t.pick("x", " mirrored", " mirrored open", " Mirrored Doubled"); word {
	case " mirrored":
		return thing{part.text + word, append(slices.Clone(part.leaves), back[1:]...)}
	case " mirrored open":
		return thing{part.text + word, append(slices.Clone(part.leaves), middle(back)...)}
	case " Mirrored Doubled":
		return thing{part.text + word, append(slices.Clone(part.leaves), back...)}
	}
	n := t.number(1, 3)
	return thing{fmt.Sprintf("%s %s%d", part.text, t.pick("x", "X ", "× "), n), slices.Repeat(part.leaves, n)}
}

// middle leaves the first and the last off.
func middle(leaves []threads) []threads {
	if len(leaves) < 2 {
		return nil
	}
	return leaves[1 : len(leaves)-1]
}

// spelt is a whole random order beside what it must come to.
type spelt struct {
	text                string
	ctx                 Context
	before, fill, after threads
}

func draw(rt *rapid.T) spelt {
	t := twin{T: rt, kind: Kind(rapid.IntRange(0, 2).Draw(rt, "kind"))}
	edge := t.row(1)
	t.groups = map[string]thing{"edge": edge, "body": edge}
	body := t.row(1)
	t.groups["body"] = body
	s := spelt{ctx: Context{Kind: t.kind, Groups: map[string]string{"edge": edge.text}}}
	// The text of body may call body, which was edge when it was drawn.
	s.ctx.Groups["body"] = strings.ReplaceAll(body.text, "body", "edge")
	s.whole(t)
	return s
}

// whole draws the order itself: parts, perhaps a fill group, perhaps more.
func (s *spelt) whole(t twin) {
	before := t.row(2)
	s.text, s.before = before.text, slices.Concat(before.leaves...)
	if t.number(0, 1) == 0 {
		return
	}
	fill, after := t.part(1), t.row(1)
	s.text = fmt.Sprint(before.text, ", ", fill.text, t.pick(" x fill", "×FILL"), ", ", after.text)
	s.fill, s.after = slices.Concat(fill.leaves...), slices.Concat(after.leaves...)
}

func (s spelt) spread(fill int) threads {
	return slices.Concat(s.before, slices.Repeat(s.fill, fill), s.after)
}

// one names the thread of a run as the twin does.
func one(r Run) string {
	if r.Shaft > 0 {
		return fmt.Sprint(r.Shaft)
	}
	if r.Set != 0 {
		var list []string
		for n := range 64 {
			if r.Set>>n&1 == 1 {
				list = append(list, fmt.Sprint(n+1))
			}
		}
		return strings.Join(list, "+")
	}
	name := r.Name
	if r.Density.Given() {
		name += " at " + r.Density.Typed
	}
	if r.Beam > 0 {
		name += fmt.Sprint(" on beam ", r.Beam)
	}
	return name
}

func unroll(runs []Run) threads {
	var all threads
	for _, r := range runs {
		all = append(all, slices.Repeat(threads{one(r)}, r.Count)...)
	}
	return all
}

func (s spelt) parse(t *rapid.T) Order {
	o, faults := Parse(s.text, s.ctx)
	if len(faults) > 0 {
		t.Fatalf("%q with %q: fault %v at %d", s.text, s.ctx.Groups, faults[0], faults[0].At)
	}
	return o
}

func TestRunsLikeTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		for fill := range 3 {
			runs := o.Runs(fill)
			if got, want := unroll(runs), s.spread(fill); !slices.Equal(got, want) {
				rt.Fatalf("%q with %q, fill %d: got %q, want %q", s.text, s.ctx.Groups, fill, got, want)
			}
			if i := slices.IndexFunc(runs[1:], func(r Run) bool { return r.At < 0 || r.At >= len(s.text) }); i >= 0 {
				rt.Fatalf("%q: %v stands outside", s.text, runs[i+1])
			}
			if got := slices.CompactFunc(slices.Clone(runs), func(a, b Run) bool { return one(a) == one(b) }); len(got) != len(runs) {
				rt.Fatalf("%q: neighbours are not merged in %v", s.text, runs)
			}
		}
	})
}

func TestPartsLikeTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		for _, side := range []struct {
			name string
			got  []Run
			want threads
		}{{"before", o.Before(), s.before}, {"fill", o.FillRuns(), s.fill}, {"after", o.After(), s.after}} {
			if got := unroll(side.got); !slices.Equal(got, side.want) {
				rt.Fatalf("%q: %s is %q, want %q", s.text, side.name, got, side.want)
			}
		}
		if o.Fixed() != len(s.before)+len(s.after) || o.Filler() != len(s.fill) {
			rt.Fatalf("%q: fixed %d, filler %d", s.text, o.Fixed(), o.Filler())
		}
	})
}

func TestCountsLikeTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		for fill := range 4 {
			all := s.spread(fill)
			if got := o.Total(fill); got != len(all) {
				rt.Fatalf("%q, fill %d: total %d, want %d", s.text, fill, got, len(all))
			}
			if got, want := listed(o.Totals(fill)), counted(all); !slices.Equal(got, want) {
				rt.Fatalf("%q, fill %d: totals %q, want %q", s.text, fill, got, want)
			}
			checkShafts(rt, o, fill, all)
		}
	})
}

// counted gives each distinct thread with its number, first come first.
func counted(all threads) []string {
	var order []string
	number := map[string]int{}
	for _, name := range all {
		if number[name]++; number[name] == 1 {
			order = append(order, name)
		}
	}
	for i, name := range order {
		order[i] = fmt.Sprint(name, ": ", number[name])
	}
	return order
}

func listed(runs []Run) []string {
	var out []string
	for _, r := range runs {
		out = append(out, fmt.Sprint(one(r), ": ", r.Count))
	}
	return out
}

func checkShafts(t *rapid.T, o Order, fill int, all threads) {
	for i, got := range o.Shafts(fill) {
		want := 0
		for _, name := range all {
			if name == fmt.Sprint(i+1) {
				want++
			}
		}
		if got != want {
			t.Fatalf("%q, fill %d: %d on shaft %d, want %d", o.Text, fill, got, i+1, want)
		}
	}
}

func TestNamesAndMaxShaftLikeTwin(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		o := s.parse(rt)
		var names []string
		highest := 0
		for _, r := range o.Runs(1) {
			highest = max(highest, r.Shaft)
			if r.Name != "" && !slices.Contains(names, r.Name) {
				names = append(names, r.Name)
			}
		}
		if !slices.Equal(o.Names(), names) || o.MaxShaft() != highest {
			rt.Fatalf("%q: names %q, highest shaft %d; want %q, %d", s.text, o.Names(), o.MaxShaft(), names, highest)
		}
	})
}

// What String writes is the same order, and String writes that the same way.
func TestStringRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := draw(rt)
		checkRoundTrip(rt, s.parse(rt), s.ctx)
	})
}

type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

func checkRoundTrip(t failer, o Order, ctx Context) {
	t.Helper()
	text := o.String()
	again, faults := Parse(text, ctx)
	switch {
	case len(faults) > 0:
		t.Fatalf("%q writes %q: fault %v at %d", o.Text, text, faults[0], faults[0].At)
	case again.String() != text:
		t.Fatalf("%q writes %q, and that %q", o.Text, text, again.String())
	case !o.Equal(again):
		t.Fatalf("%q writes %q, which is another order", o.Text, text)
	}
}
