// Package finishing says what is done with a cloth after its last pick, and in which order.
// The order depends on how the ends of the pieces are finished, on when hems are turned, on
// the wash and on the fibres. Same input, same answer; package present has the words.
package finishing

import (
	"strconv"

	"sley/internal/engine/content"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// Step is one thing to do.
type Step struct {
	ID       ID
	Ends     []End     // of the pieces that it is done at; none: all of the cloth
	Notes    []Note    // how, for this cloth
	Cautions []Caution // where someone can be hurt
	Measure  []Measure // what to measure then, and to write down
	Most     int       // highest temperature in °C, of the wash and the iron; 0: none is said
	Hours    int       // how long it takes at least
	Pieces   int       // how many there are to cut apart
}

// ID names a step. It does not change, so that what was done can be kept by it.
type ID string

// The steps, in the order in which they are done. The order is common practice, no source.
const (
	Hemstitch       ID = "hemstitch"
	MeasureOnLoom   ID = "measure-on-loom"
	CutOff          ID = "cut-off"
	Secure          ID = "secure"
	Rest            ID = "rest"
	MeasureRelaxed  ID = "measure-relaxed"
	Mend            ID = "mend"
	CutApart        ID = "cut-apart"
	FinishFringe    ID = "fringe"
	HemBefore       ID = "hem-before"
	Wash            ID = "wash"
	Full            ID = "full"
	Dry             ID = "dry"
	Press           ID = "press"
	Trim            ID = "trim"
	Seam            ID = "seam"
	HemAfter        ID = "hem-after"
	RestAgain       ID = "rest-again"
	MeasureFinished ID = "measure-finished"
)

// Order lists every step there is, in the order in which they are done.
func Order() []ID {
	return []ID{
		Hemstitch, MeasureOnLoom, CutOff, Secure, Rest, MeasureRelaxed, Mend, CutApart, FinishFringe, HemBefore,
		Wash, Full, Dry, Press, Trim, Seam, HemAfter, RestAgain, MeasureFinished,
	}
}

// End is one end of a kind of piece.
type End struct {
	Piece int // index into the pieces of the plan
	Last  bool
}

// Measure is a size to write down.
type Measure struct {
	Path  string // as measurements name it: pieces[0].length
	State warp.State
}

// Caution names what can hurt.
type Caution string

// The cautions.
const (
	TightWarp Caution = "tight-warp"
	Dust      Caution = "dust"
	HotWater  Caution = "hot-water"
	HotIron   Caution = "hot-iron"
)

// Note says how a step is done for a cloth.
type Note string

// The notes. Each is common practice, no source.
const (
	FloatsOff   Note = "floats-off"    // floating selvedges have weights of their own
	OpenOut     Note = "open-out"      // cloth woven double opens
	LeaveTails  Note = "leave-tails"   // until the wash has drawn all up
	TwistFringe Note = "twist-fringe"  // the plan has shares for twisting it
	KnotFringe  Note = "knot-fringe"   // it does not
	OnUnwashed  Note = "on-unwashed"   // hems turned before are folded deeper
	CoolForWool Note = "cool-for-wool" // no shock, no wringing
	HotForLinen Note = "hot-for-linen"
	WaterHarms  Note = "water-harms" // a fibre that wants none
	LookOften   Note = "look-often"  // fulling does not go back
	DoesNotFelt Note = "does-not-felt"
	DryFlat     Note = "dry-flat"
	DryHanging  Note = "dry-hanging"
	PressDamp   Note = "press-damp"
	SteamWool   Note = "steam-wool"
)

// restHours is how long cloth lies before it is measured: common practice, no source.
const restHours = 24

// Steps gives what is done with the cloth of a plan, each step once, in order.
func Steps(p *warp.Plan) []Step {
	c := clothOf(p)
	var out []Step
	for _, id := range Order() {
		s := Step{ID: id}
		if c.does(&s) {
			out = append(out, s)
		}
	}
	return out
}

// cloth is what the order depends on.
type cloth struct {
	plan   *warp.Plan
	fibres []yarn.Fibre
	care   content.Care
	known  bool // whether the fibres are
	pieces int  // woven, with panels and the weavers of a class
	panels bool
}

func clothOf(p *warp.Plan) cloth {
	c := cloth{plan: p}
	var of []yarn.Composition
	for i := range p.Yarns {
		of = append(of, p.Yarns[i].Composition.Is)
	}
	c.fibres = content.Fibres(of)
	c.care, c.known = content.CareFor(c.fibres, p.Wash)
	for i := range p.Pieces {
		one := &p.Pieces[i]
		c.pieces += max(one.Count, 1) * max(one.Panels, 1) * max(p.Class.InTurn, 1)
		c.panels = c.panels || one.Panels > 1
	}
	return c
}

// ends gives the ends of all pieces that are as asked.
func (c cloth) ends(as func(warp.End) bool) []End {
	var out []End
	for i := range c.plan.Pieces {
		if as(c.plan.Pieces[i].First) {
			out = append(out, End{i, false})
		}
		if as(c.plan.Pieces[i].Last) {
			out = append(out, End{i, true})
		}
	}
	return out
}

// sizes gives the sizes of all pieces in a state of lengths and in one of widths.
func (c cloth) sizes(long, wide warp.State) []Measure {
	var out []Measure
	for i := range c.plan.Pieces {
		path := "pieces[" + strconv.Itoa(i) + "]."
		out = append(out, Measure{path + "length", long}, Measure{path + "width", wide})
	}
	return out
}

// has reports whether one of the fibres is of a class.
func (c cloth) has(class yarn.Class) bool {
	for _, f := range c.fibres {
		if f.Class == class {
			return true
		}
	}
	return false
}

// felts reports whether one of the fibres does.
func (c cloth) felts() bool {
	for _, f := range c.fibres {
		if content.Felts(f) {
			return true
		}
	}
	return false
}
