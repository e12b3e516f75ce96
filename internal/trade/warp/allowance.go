package warp

import "sley/internal/trade/qty"

// Form is how an allowance is said.
type Form int

// The forms. With x the size in the later state (nearer the finished cloth):
//
//	Lose      a share p of the start is lost: start = x / (1 - p)
//	Gain      the piece grows by a share p of the start: start = x / (1 + p)
//	Add       a share p of x is added: start = x (1 + p)
//	Plain     a length is added: start = x + length
//	PerLength a length for each length of x: start = x (1 + length / per)
//	Measured  a sample went from Before to After: start = x before / after
const (
	Lose Form = iota
	Gain
	Add
	Plain
	PerLength
	Measured
)

// Term is one term of an allowance.
type Term struct {
	Form   Form
	Share  qty.Rat    // Lose, Gain, Add: 0 to 1
	Length qty.Length // Plain, PerLength: the length added
	Per    qty.Length // PerLength
	Sides  int        // Plain: 2 for "at each edge" or "at each end", else 1
	Before qty.Length // Measured
	After  qty.Length // Measured
	Typed  string     // the term as written
}

// Allowance is what is added between two states, exactly as written. Steps are
// chained, in the order from the finished cloth towards the warp; the terms of
// one step are summed on one base. The zero value means not said.
type Allowance struct {
	Steps  [][]Term
	Accept bool   // "default" was written: the weaver accepts our starting value
	None   bool   // "none" was written: nothing is lost
	Typed  string // the whole text
}

// Given reports whether the allowance was typed.
func (a Allowance) Given() bool { return a.Typed != "" }

// Link names the two states an allowance runs between, the later first:
// Finished before Relaxed before OnLoom before Straight.
type Link struct{ Later, Earlier State }

// LinkName is one link with its key in a plan file.
type LinkName struct {
	Key   string
	Link  Link
	Width bool
}

// LinkNames lists every link an allowance may have, in the order they are
// shown. relaxation lies inside take-up, so take-up and loom-take-up are never
// both applied; tape-to-washed already holds relaxation and shrinkage.
func LinkNames() []LinkName {
	return []LinkName{
		{"shrinkage", Link{Finished, Relaxed}, false},
		{"relaxation", Link{Relaxed, OnLoom}, false},
		{"take-up", Link{Relaxed, Straight}, false},
		{"loom-take-up", Link{OnLoom, Straight}, false},
		{"tape-to-washed", Link{Finished, OnLoom}, false},
		{"warp-to-washed", Link{Finished, Straight}, false},
		{"width-shrinkage", Link{Finished, Relaxed}, true},
		{"width-relaxation", Link{Relaxed, AtFell}, true},
		{"draw-in", Link{AtFell, InReed}, true},
		{"reed-to-relaxed", Link{Relaxed, InReed}, true},
		{"reed-to-washed", Link{Finished, InReed}, true},
		{"fell-to-washed", Link{Finished, AtFell}, true},
	}
}

// Allowances are the allowances of a warp by the key of LinkNames.
type Allowances map[string]Allowance
