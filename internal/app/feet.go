package app

import (
	"errors"
	"fmt"
	"strings"

	"sley/internal/engine/tieup"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// forFeetName is the change that orders treadles for the feet.
const forFeetName = "for-feet"

// forFeet numbers the treadles anew so that they lie well for feet that take turns, all
// of them wherever they stand: in tie-up and treadling. The picks are read as a repeat;
// a last one that is the first again balances the cloth, and is not followed by it.
func forFeet(d *draft.Draft, _ string) (*draft.Draft, error) {
	picks := d.Treadling
	if last := len(picks) - 1; last > 1 && picks[last] == picks[0] {
		picks = picks[:last]
	}
	return onFeet(d, tieup.Walk{Picks: picks, Round: true})
}

// onFeet is forFeet for a walk that is said.
func onFeet(d *draft.Draft, w tieup.Walk) (*draft.Draft, error) {
	numbers, ok := tieup.Order(w, d.Treadles)
	if !ok {
		return nil, &footbound{tieup.FeetOf(w)}
	}
	to := map[int]int{}
	for i, n := range numbers {
		to[i+1] = n
	}
	return d.Renumber(same(d.Shafts), to), nil
}

// onFeetOf is the change of a table's draft, of whose picks some fill the piece.
func onFeetOf(d *draft.Draft, fill [2]int) (*Drafted, error) {
	from, to := fill[0], fill[1]
	if from >= to || to > len(d.Treadling) || to-from == len(d.Treadling) {
		return ChangeDraft(&Drafted{Draft: d}, []string{forFeetName})
	}
	picks := append([]draft.Set{}, d.Treadling[:to]...)
	made, err := onFeet(d, tieup.Walk{Picks: append(picks, d.Treadling[from:]...)})
	if err != nil {
		return nil, unordered(err)
	}
	return &Drafted{Draft: made}, nil
}

// unordered is what is told of treadles that could not be ordered.
func unordered(err error) error {
	return &unchanged{forFeetName, forFeetName, fmt.Errorf("the change %s cannot be made of this draft: %w", forFeetName, err)}
}

// footbound is why feet cannot take turns.
type footbound struct{ tieup.Feet }

func (f *footbound) Error() string {
	switch list := f.treadles(); f.Why {
	case tieup.Twice:
		return fmt.Sprintf("treadle %s is pressed twice running, so that the feet cannot take turns", list)
	case tieup.Many:
		return fmt.Sprintf("pick %d presses more than two treadles, so that the feet cannot take turns", f.Pick+1)
	case tieup.Odd:
		return fmt.Sprintf("the treadles %s follow one another in a ring of an odd number, so that the feet cannot take turns", list)
	}
	return "no pick presses a treadle that is there"
}

// treadles are those that the reason is about, as they follow one another.
func (f *footbound) treadles() string { return strings.Trim(fmt.Sprint(f.Ring), "[]") }

func (f *footbound) code() string {
	switch f.Why {
	case tieup.Twice:
		return "feet.twice"
	case tieup.Many:
		return "feet.many"
	case tieup.Odd:
		return "feet.ring"
	}
	return "feet.none"
}

// toldOf adds what is known of feet that cannot take turns to what a problem says, and
// gives its code; of anything else nothing.
func toldOf(err error, args problem.Args) string {
	var why *footbound
	if !errors.As(err, &why) {
		return ""
	}
	args["treadles"], args["pick"] = why.treadles(), why.Pick+1
	return why.code()
}
