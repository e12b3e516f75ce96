package wif

import (
	"strings"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// own reads the section of ours: what a draft says and the text cannot. What other
// sections say stands before it.
func (r *reader) own() {
	s := r.doc.find(privateName)
	if s == nil {
		return
	}
	r.draft.Origin = s.value("Origin")
	if l := s.get("Shed"); l != nil {
		shed, ok := loom.ParseShed(strings.ToLower(l.value))
		if !ok || risingOf(shed) == loom.UnsaidShed || risingOf(shed) != r.draft.Shed {
			r.warn("wif.private", r.pathIn(s, l.key), l.shown(), nil)
			l.mute()
		} else {
			r.draft.Shed = shed
		}
	}
	r.lowered(s)
}

// risingOf gives how the text says a shed that it has no word for.
func risingOf(shed loom.Shed) loom.Shed {
	switch shed {
	case loom.Counterbalance:
		return loom.Sinking
	case loom.Countermarch, loom.Table:
		return loom.Rising
	}
	return loom.UnsaidShed
}

// lowered reads the shafts that treadles lower: those that are not raised, unless
// the section says others.
func (r *reader) lowered(s *section) {
	d := r.draft
	march := d.Shed == loom.Countermarch
	for i := range d.Ties {
		if march {
			d.Ties[i].Lowered = draft.UpTo(d.Shafts) &^ d.Ties[i].Tied
		}
	}
	for i := range s.lines {
		l := &s.lines[i]
		text, ok := strings.CutPrefix(l.key, "Lowered ")
		n, is := whole(text)
		if !ok || !is {
			continue
		}
		set, good := r.shafts(l)
		if !good || !march || n > len(d.Ties) || set&d.Ties[n-1].Tied != 0 {
			r.warn("wif.private", r.pathIn(s, l.key), l.shown(), nil)
			l.mute()
			continue
		}
		d.Ties[n-1].Lowered = set
	}
}

// shafts reads a list of shafts of the draft.
func (r *reader) shafts(l *line) (draft.Set, bool) {
	var set draft.Set
	for t, rest, more := r.src.token(l.valued); more; t, rest, more = r.src.token(rest) {
		n, ok := whole(t.text)
		if !ok || n > r.draft.Shafts {
			return 0, false
		}
		if n > 0 {
			set = set.With(n)
		}
	}
	return set, true
}
