package strokes

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// shafts says how many shafts there are: no fewer than are threaded, tied or lifted.
func (s *stroke) shafts(a *Act) {
	if a.Number < 1 || a.Number > draft.MostShafts {
		s.fail("draft.shafts", "number", strconv.Itoa(a.Number), problem.Args{"most": draft.MostShafts})
		return
	}
	most := 0
	for _, shaft := range s.Threading {
		most = max(most, shaft)
	}
	for _, tie := range s.Ties {
		most = max(most, s.moving(tie).Most())
	}
	for _, up := range s.Lifts {
		most = max(most, up.Most())
	}
	if most > a.Number {
		s.fail("stroke.shafts-used", "number", strconv.Itoa(a.Number), problem.Args{"used": most})
		return
	}
	s.Shafts = a.Number
	for i := range s.Ties {
		s.Ties[i].Tied &= draft.UpTo(a.Number)
		s.Ties[i].Lowered &= draft.UpTo(a.Number)
	}
}

// moving are the shafts that keep a tie from being left out. What a loom lowers to keep
// it out of the shed may hang without ends.
func (s *stroke) moving(tie draft.Tie) draft.Set {
	if s.Shed == loom.Rising || s.Shed == loom.UnsaidShed {
		return tie.Tied | tie.Lowered
	}
	return 0
}

// treadles says how many treadles there are: no fewer than are pressed. What those that
// go were tied to goes with them.
func (s *stroke) treadles(a *Act) {
	switch used := s.pressed().Most(); {
	case a.Number < 0 || a.Number > draft.MostTreadles:
		s.fail("draft.treadles", "number", strconv.Itoa(a.Number), problem.Args{"most": draft.MostTreadles})
	case len(s.Lifts) > 0 && !s.Treadled() && a.Number > 0:
		s.fail("stroke.lift-plan", "number", strconv.Itoa(a.Number), nil)
	case used > a.Number:
		s.fail("stroke.treadles-used", "number", strconv.Itoa(a.Number), problem.Args{"used": used})
	default:
		s.Draft.Treadles = a.Number
		s.Ties = s.Ties[:min(len(s.Ties), a.Number)]
	}
}

// shed says what loom the draft is for. It weaves the same as before: treadles are tied
// anew, each lift gets one where two feet would open another shed there, and on a table
// loom there are none.
func (s *stroke) shed(a *Act) {
	d := s.Clone()
	if d.Treadled() {
		d.Ties = append(d.Ties, make([]draft.Tie, max(d.Treadles-len(d.Ties), 0))...)
	}
	switch {
	case a.Shed == loom.Table:
		d = d.WithoutTreadles()
		d.Shed = loom.Table
	case !d.Treadled():
		d.Shed = a.Shed
	default:
		tied, same := d.OnLoom(a.Shed)
		if !same || locks(tied) {
			tied, same = d.WithTreadles(a.Shed)
		}
		if !same {
			s.fail("stroke.too-many-treadles", "shed", a.Shed.String(), problem.Args{"most": draft.MostTreadles})
			return
		}
		d = tied
	}
	s.Draft = d
	forgetLifts(s.Draft)
}

// locks reports whether treadles of a countermarch that are pressed together draw a shaft
// both ways.
func locks(d *draft.Draft) bool {
	for _, pressed := range d.Treadling {
		if d.Open(pressed).Locked != 0 {
			return true
		}
	}
	return false
}
