package tieup

import (
	"slices"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// Opening is how a shed opens, with the reason where it opens badly.
type Opening int

// The openings. Unevenly is that of a counterbalance loom whose shafts do not balance,
// as one against three; Locked and Hanging are those of a countermarch.
const (
	Evenly   Opening = iota
	Unevenly         // as many are not up as down, on a loom that wants them so
	Hanging          // shafts with ends are tied neither way and hang where they like
	Locked           // shafts are drawn both ways at once and do not move
	NoneUp           // no end is on top
	AllUp            // every end is
)

// Shed is what a treadle, or treadles pressed together, do on the draft's loom.
type Shed struct {
	Pressed      draft.Set // treadles; none where the lift is made by hand
	Up, Down     draft.Set // shafts on top, and those that are not
	Locked, Free draft.Set // of a countermarch: drawn both ways, tied neither way
	Opens        Opening
	Woven        bool // whether any pick presses just these; the others stand idle
}

// Sheds gives every shed that the picks open, those of one treadle first, by their
// numbers, then those of several as they first come; and of every treadle that is tied
// and never pressed its own. A treadle that is pressed with others alone is judged with
// them. A draft without treadles has its lifts.
func Sheds(d *draft.Draft) []Shed {
	if !d.Treadled() {
		return liftSheds(d)
	}
	_, used := d.Used()
	var out []Shed
	for i, tie := range d.Ties {
		alone := draft.Of(i + 1)
		woven := slices.Contains(d.Treadling, alone)
		if woven || !used.Has(i+1) && tie != (draft.Tie{}) {
			out = append(out, judge(d, alone, d.Open(alone), woven))
		}
	}
	_, distinct := draft.Classes(d.Treadling)
	for _, pressed := range distinct {
		if pressed.Len() != 1 || pressed.Most() > len(d.Ties) {
			out = append(out, judge(d, pressed, d.Open(pressed), true))
		}
	}
	return out
}

// Poor gives the sheds that do not open evenly.
func Poor(d *draft.Draft) []Shed {
	return slices.DeleteFunc(Sheds(d), func(s Shed) bool { return s.Opens == Evenly })
}

func liftSheds(d *draft.Draft) []Shed {
	_, distinct := draft.Classes(d.Lifts)
	var out []Shed
	for _, up := range distinct {
		out = append(out, judge(d, 0, draft.Shed{Up: up}, true))
	}
	return out
}

func judge(d *draft.Draft, pressed draft.Set, s draft.Shed, woven bool) Shed {
	down := draft.UpTo(d.Shafts) &^ (s.Up | s.Locked | s.Free)
	return Shed{Pressed: pressed, Up: s.Up, Down: down, Locked: s.Locked, Free: s.Free, Opens: opens(d, s), Woven: woven}
}

// opens judges a shed by the gravest thing that is wrong with it, as the check of a
// draft does: by the shafts that have ends, and the balance by all of the draft's.
func opens(d *draft.Draft, s draft.Shed) Opening {
	used, _ := d.Used()
	up := s.Up & used
	switch {
	case s.Locked != 0:
		return Locked
	case s.Free&used != 0:
		return Hanging
	case up == 0:
		return NoneUp
	case up == used:
		return AllUp
	case d.Shed == loom.Counterbalance && draft.Opens(d.Shed, s.Up, d.Shafts) == draft.Uneven:
		return Unevenly
	}
	return Evenly
}
