package order

import (
	"math"
	"math/bits"
	"slices"

	"sley/internal/trade/qty"
)

// The limits of an order. They are far beyond any hand loom and keep a slip of
// the finger from filling the memory.
const (
	MostThreads = 200_000 // threads of the whole order, the fill group once
	MostCount   = 100_000 // any one count
	MostShafts  = 64
	MostBeams   = 2
	MostNested  = 32 // groups within groups; also the suffixes of one part
)

// Kind says what the leaves of an order are.
type Kind int

// The kinds: Stripes orders yarns; Shafts orders ends by their shafts; Treadles
// orders picks by their treadles, or their shafts in a lift plan, of which a pick may
// have several at once.
const (
	Stripes Kind = iota
	Shafts
	Treadles
)

// String gives the kind's plain name.
func (k Kind) String() string { return [...]string{"stripes", "shafts", "treadles"}[k] }

// Run is a number of neighbouring threads that are alike.
type Run struct {
	Name    string                 // the yarn; empty in other orders
	Shaft   int                    // 1 to 64; 0 in other orders
	Set     uint64                 // in an order of treadles: bit n - 1 for the nth; 0 in other orders
	Count   int                    // threads
	Density qty.Typed[qty.Density] // where it is crammed or spaced
	Beam    int                    // 1 or 2; 0 when not said
	At      int                    // characters into the order's text; in a named group, where the group is called
}

// Context is what an order's text is read against.
type Context struct {
	Kind   Kind
	Names  []string          // the yarns there are; nil when any name will do
	Groups map[string]string // named groups: the text each stands for
}

// Order is an order of threads that has been read. It never changes. The zero
// value means that none was given. An order whose text had faults holds its
// text and no threads.
type Order struct {
	Text string // as written
	tree *tree
}

// IsZero reports whether no order was given.
func (o Order) IsZero() bool { return o == Order{} }

// Kind says what the leaves are; Stripes for the zero value.
func (o Order) Kind() Kind {
	if o.tree == nil {
		return Stripes
	}
	return o.tree.kind
}

// Fixed gives the threads outside the fill group.
func (o Order) Fixed() int {
	if o.tree == nil {
		return 0
	}
	return o.tree.fixed
}

// Filler gives the threads in one repeat of the fill group, 0 if there is none.
func (o Order) Filler() int {
	if o.tree == nil {
		return 0
	}
	return o.tree.filler
}

// Total gives the threads when the fill group is repeated fill times. A fill
// below 0 counts as 0. Beyond the range of an int it stays at its top.
func (o Order) Total(fill int) int { return plus(o.Fixed(), o.Filler(), fill) }

// Fills gives how often the fill group is repeated for the order to come to that many
// threads, and reports whether it can come to them.
func (o Order) Fills(threads int) (times int, ok bool) {
	left, each := threads-o.Fixed(), o.Filler()
	if each == 0 {
		return 0, left == 0
	}
	return max(left, 0) / each, left >= 0 && left%each == 0
}

// Fits reports whether Total(fill) is no more than MostThreads.
func (o Order) Fits(fill int) bool { return o.Total(fill) <= MostThreads }

// plus gives fixed + filler × fill, or the largest int when that is less.
func plus(fixed, filler, fill int) int {
	if fill <= 0 || filler == 0 {
		return fixed
	}
	if fill > (math.MaxInt-fixed)/filler {
		return math.MaxInt
	}
	return fixed + filler*fill
}

// Runs gives the threads from left to right with the fill group repeated fill
// times, like neighbours merged into one run. It gives nil when they are more
// than MostThreads: ask Fits first.
func (o Order) Runs(fill int) []Run {
	if o.tree == nil || !o.Fits(fill) {
		return nil
	}
	before, after := o.tree.split()
	s := spread{tree: o.tree}
	s.all(before)
	for range fill {
		s.all(o.tree.filling())
	}
	s.all(after)
	return s.runs
}

// Before gives the runs before the fill group, or all of them when there is
// none.
func (o Order) Before() []Run { return o.side(0) }

// After gives the runs after the fill group.
func (o Order) After() []Run { return o.side(1) }

func (o Order) side(i int) []Run {
	if o.tree == nil {
		return nil
	}
	before, after := o.tree.split()
	return o.tree.runs([][]int{before, after}[i])
}

// FillRuns gives the runs of one repeat of the fill group, nil if there is
// none.
func (o Order) FillRuns() []Run {
	if o.tree == nil {
		return nil
	}
	return o.tree.runs(o.tree.filling())
}

// MaxShaft gives the highest shaft in the order, 0 in other orders than those of
// shafts.
func (o Order) MaxShaft() int {
	if o.tree == nil {
		return 0
	}
	return o.tree.highest
}

// MaxTreadle gives the highest treadle (or shaft of a lift plan) in the order, 0 in
// other orders than those of treadles.
func (o Order) MaxTreadle() int {
	highest := 0
	if o.Kind() == Treadles {
		for _, sort := range o.tree.sorts {
			highest = max(highest, bits.Len64(sort.Set))
		}
	}
	return highest
}

// Names gives the yarns in the order of their first appearance, those of the
// fill group among them.
func (o Order) Names() []string {
	var names []string
	for _, run := range o.Totals(1) {
		if run.Name != "" && !slices.Contains(names, run.Name) {
			names = append(names, run.Name)
		}
	}
	return names
}

// Equal reports whether two orders lay the same threads before, in and after
// the fill group, however they were written. Orders that could not be read are
// equal when their texts are.
func (o Order) Equal(p Order) bool {
	if o.tree == nil || p.tree == nil {
		return o == p
	}
	return o.Kind() == p.Kind() && alike(o.Before(), p.Before()) && alike(o.FillRuns(), p.FillRuns()) && alike(o.After(), p.After())
}

func alike(a, b []Run) bool {
	return slices.EqualFunc(a, b, func(r, s Run) bool { return r.Count == s.Count && r.sort() == s.sort() })
}

// sortKey tells sorts of thread apart: runs that share it are of one thread.
type sortKey struct {
	name, perNM string
	shaft, beam int
	set         uint64
}

func (r Run) sort() sortKey {
	key := sortKey{name: r.Name, shaft: r.Shaft, beam: r.Beam, set: r.Set}
	if r.Density.Given() {
		key.perNM = r.Density.Is.PerNM().Big().RatString()
	}
	return key
}
