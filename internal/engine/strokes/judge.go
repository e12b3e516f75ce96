package strokes

import (
	"fmt"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// judge tells when a value cannot stand in a part.
func (s *stroke) judge(part Part, at int, v Value, field string) {
	switch part {
	case Threading:
		if v > Value(max(s.Shafts, 0)) {
			s.fail("draft.end-shaft", field, number(v), problem.Args{"end": at + 1, "shafts": s.Shafts})
		}
	case Ties, Lowered:
		s.judgeTie(part, at, v, field)
	case Treadling, Lifts:
		s.judgePick(part, at, v, field)
	case WarpColours, WeftColours:
		if v >= Value(max(len(s.Draft.Palette), 1)) {
			s.fail("draft.colour", field, number(v), problem.Args{"thread": at, "colours": len(s.Draft.Palette)})
		}
	case Palette:
		if v > 0xffffff {
			s.fail("stroke.colour", field, fmt.Sprintf("#%x", uint64(v)), nil)
		}
	}
}

func (s *stroke) judgeTie(part Part, at int, v Value, field string) {
	args := problem.Args{"treadle": at + 1, "shafts": s.Shafts}
	if beyond := draft.Set(v) &^ draft.UpTo(s.Shafts); beyond != 0 {
		s.fail("draft.tie-shaft", field, beyond.String(), args)
	}
	if part == Lowered && v != 0 && s.Shed != loom.Countermarch {
		s.fail("draft.tie-lowers", field, draft.Set(v).String(), args)
	}
}

func (s *stroke) judgePick(part Part, at int, v Value, field string) {
	if part == Treadling {
		if beyond := draft.Set(v) &^ draft.UpTo(treadles(s.Draft)); beyond != 0 {
			s.fail("draft.pick-treadle", field, beyond.String(), problem.Args{"pick": at + 1, "treadles": treadles(s.Draft)})
		}
		return
	}
	if beyond := draft.Set(v) &^ draft.UpTo(s.Shafts); beyond != 0 {
		s.fail("draft.lift-shaft", field, beyond.String(), problem.Args{"pick": at + 1, "shafts": s.Shafts})
	}
}

// number says a value that was meant to be one.
func number(v Value) string { return strconv.FormatInt(int64(v), 10) }
