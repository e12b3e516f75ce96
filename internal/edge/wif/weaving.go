package wif

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// weaving reads how many shafts and treadles there are and how the shed opens.
func (r *reader) weaving() {
	d := r.draft
	s := r.doc.find(weavingName)
	shafts, treadles := r.used()
	d.Shafts = r.loomCount("Shafts", "shafts", max(1, shafts), draft.MostShafts)
	d.Treadles = r.loomCount("Treadles", "treadles", treadles, draft.MostTreadles)
	if len(d.Ties) > 0 {
		ties := make([]draft.Tie, d.Treadles)
		copy(ties, d.Ties)
		d.Ties = ties
	}
	r.shed(s)
	r.picks()
}

// used gives the highest shaft and the highest treadle that the draft uses.
func (r *reader) used() (shafts, treadles int) {
	for _, shaft := range r.draft.Threading {
		shafts = max(shafts, shaft)
	}
	for _, up := range r.draft.Lifts {
		shafts = max(shafts, up.Most())
	}
	for i, tie := range r.draft.Ties {
		if tie.Tied != 0 {
			shafts, treadles = max(shafts, tie.Tied.Most()), max(treadles, i+1)
		}
	}
	for _, pressed := range r.draft.Treadling {
		treadles = max(treadles, pressed.Most())
	}
	return shafts, treadles
}

// loomCount reads a count of the loom, of which so many are in use.
func (r *reader) loomCount(key, what string, used, most int) int {
	s := r.doc.find(weavingName)
	l := s.get(key)
	if l == nil || l.value == "" {
		if used > 0 {
			r.unsaid("wif."+what+"-unsaid", weavingName, key, used)
		}
		return used
	}
	said, ok := whole(l.value)
	path := r.pathIn(s, key)
	switch {
	case !ok:
		r.warn("wif.value", path, l.valued, problem.Args{"wanted": "a whole number"})
	case said > most:
		r.warn("wif."+what+"-many", path, l.valued, problem.Args{"most": most, "used": used})
		return used // the text keeps what it says
	case said < used:
		r.warn("wif."+what+"-more", path, l.valued, problem.Args{"used": used})
	default:
		return said
	}
	r.repair(weavingName, key, strconv.Itoa(used))
	return used
}

// shed reads how the shed opens.
func (r *reader) shed(s *section) {
	l := s.get("Rising Shed")
	if l == nil || l.value == "" {
		return
	}
	rising, ok := truth(l.value)
	switch {
	case !ok:
		r.warn("wif.truth", r.pathIn(s, l.key), l.valued, nil)
		l.mute()
	case rising:
		r.draft.Shed = loom.Rising
	default:
		r.draft.Shed = loom.Sinking
	}
	if r.draft.Shed == loom.Sinking && len(r.draft.Lifts) > 0 {
		r.tell("wif.lift-plan-sinking", pathOf(liftPlanName), r.doc.find(liftPlanName).at, nil)
	}
}

// picks holds the count of the weft against what is listed.
func (r *reader) picks() {
	r.counted(weftName, r.draft.Picks())
}
