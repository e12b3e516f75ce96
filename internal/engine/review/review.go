// Package review looks a draft over as an experienced weaver would, and says what she
// should know before she weaves it: where it is, how grave it is, and what would mend it.
// It gives topics with figures, and remedies as strokes; the words are package present's.
//
// It is silent on good practice. Sheds that are spread over twice the shafts, tabby tied
// beside a twill, shafts that a loom has and a draft does not use, a point that ends
// balanced: none of these is a finding.
package review

import (
	"slices"

	"sley/internal/engine/strokes"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// Severity says how grave a finding is.
type Severity string

// The severities, gravest first.
const (
	Wrong Severity = "wrong" // it cannot be woven so, or is no cloth
	Care  Severity = "care"  // it can, and may disappoint
	Note  Severity = "note"  // worth knowing
)

// Context is what the draft is looked over for. What is left out is not judged.
type Context struct {
	Use  string     // of defaults.FloatLimits; "" any
	Loom *loom.Loom // what it does not say is not held against the draft
	Ends int        // of the warp that the draft is threaded on
	// Fill is the stretch of the threading that is repeated until it fills the warp, its
	// end left out. None: the whole is.
	Fill        Span
	Sett, Picks qty.Density // ends and picks over a length, on the cloth
	// Shuttles and Start say how the shuttles go, as structure.Weaving does. Where no start
	// is said, any that catches the edges will do.
	Shuttles []int
	Start    []structure.Side
	Floating [2]bool // floating selvedges that the draft does not show, by structure.Side
	Layers   int     // of cloth that are wanted
}

// Span is from a thread, from 0, to another, that one left out; the zero value is none.
type Span struct{ From, To int }

// Place is where a finding is. What is left out is not meant.
type Place struct {
	Part        strokes.Part
	Ends, Picks Span
	Numbers     []int // of shafts, or of treadles, as the part says
}

// Finding is one thing worth telling. Its topic says which of the args it has.
type Finding struct {
	Topic    Topic
	Severity Severity
	Place    Place
	Args     problem.Args
	Remedies []Remedy
}

// Remedy is what mends a finding: any or all of acts on the draft, changes by their names
// in docs/drafts.md, shuttles that start from the other side, floating selvedges beside
// the draft, and ends more, or fewer below 0, that the warp has then.
type Remedy struct {
	Topic    Topic
	Acts     []strokes.Act
	Changes  []string
	Swap     []int
	Floating [2]bool // by structure.Side
	Ends     int
}

// most is how many findings of one kind are told one by one.
const most = 50

// Review gives the findings, the gravest first. A draft without ends or picks, or with
// more shafts than there can be, has none: draft.Check says what is wrong with those.
func Review(d *draft.Draft, c Context) []Finding {
	if d.Ends() == 0 || d.Picks() == 0 || d.Shafts < 1 || d.Shafts > draft.MostShafts || !sound(d) {
		return nil
	}
	r := newReview(d, c)
	shut := r.shutPicks()
	nowhere := r.endsNowhere()
	r.sheds()
	if !shut && !nowhere {
		r.cloth()
	}
	if !nowhere {
		r.filling()
	}
	r.floats()
	r.edges()
	r.loom()
	r.shafts()
	r.treadles()
	slices.SortStableFunc(r.found, func(a, b Finding) int { return a.Severity.rank() - b.Severity.rank() })
	return r.found
}

func (s Severity) rank() int { return slices.Index([]Severity{Wrong, Care, Note}, s) }

// sound reports whether every end is on a shaft that there can be, or on none.
func sound(d *draft.Draft) bool {
	return !slices.ContainsFunc(d.Threading, func(shaft int) bool { return shaft < 0 || shaft > d.Shafts })
}

// review is a draft being looked over.
type review struct {
	*draft.Draft
	Context
	lifts       []draft.Set
	used        draft.Set // shafts with ends
	pressed     draft.Set // treadles that picks press
	first, last int       // ends in heddles
	weave       *structure.Analysis
	found       []Finding
}

func newReview(d *draft.Draft, c Context) *review {
	r := &review{Draft: d, Context: c, lifts: d.LiftPlan(), weave: structure.OfDraft(d)}
	r.first, r.last = r.weave.Floating[0], d.Ends()-1-r.weave.Floating[1]
	r.used, r.pressed = d.Used()
	if c.Loom == nil {
		r.Context.Loom = &loom.Loom{}
	}
	return r
}

func (r *review) tell(f Finding) { r.found = append(r.found, f) }

// loops reports whether the ends of the draft come again beside its last.
func (r *review) loops() bool { return r.Context.Ends != r.Draft.Ends() }
