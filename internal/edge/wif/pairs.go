package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// state is all that the known sections say.
type state struct {
	draft *draft.Draft
	text  Text
	units [2]unit // of the sizes of warp and weft
}

// pair is a key and what it says; the value holds as long as what it stands on.
type pair struct{ key, value, on string }

// said is what one section says.
type said struct {
	pairs []pair
	base  string // on which the values stand: where it differs, all are written anew
}

func (s *said) add(key, value string) { s.pairs = append(s.pairs, pair{key, value, ""}) }

// text adds what is said, and nothing where it is empty.
func (s *said) text(key, value string) {
	if value = clean(value); value != "" {
		s.add(key, value)
	}
}

// row adds what the thread, treadle or colour i counted from 0 has.
func (s *said) row(i int, value string) { s.add(strconv.Itoa(i+1), value) }

// clean makes a line of a text as it is read back.
func clean(text string) string {
	text = strings.Map(func(r rune) rune {
		switch r {
		case '\r', '\n':
			return ' '
		case 0:
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\ufffd"))
	return strings.Trim(text, spaces)
}

// section gives what the state says in a section.
func (s *state) section(name string) said {
	var out said
	if of := parts[name]; of != nil {
		of(s, &out)
	} else {
		s.ofThreads(&out, name)
	}
	return out
}

// parts are the sections that are not of warp or weft.
var parts = map[string]func(*state, *said){
	wifName:       (*state).head,
	paletteName:   (*state).palette,
	tableName:     func(*state, *said) {}, // in the range of the document: see table
	textName:      (*state).maker,
	notesName:     (*state).notes,
	weavingName:   (*state).weaving,
	threadingName: (*state).threading,
	tieUpName:     (*state).ties,
	treadlingName: func(s *state, out *said) { out.sets(s.draft.Treadling) },
	liftPlanName:  func(s *state, out *said) { out.sets(s.draft.Lifts) },
	privateName:   (*state).own,
}

func (s *state) threading(out *said) {
	for i, shaft := range s.draft.Threading {
		out.row(i, strconv.Itoa(shaft))
	}
}

// ties says what each treadle is tied to, those of a treadling that are tied to
// nothing too.
func (s *state) ties(out *said) {
	for i := range s.tied() {
		out.row(i, listOf(s.tie(i).Tied))
	}
}

// tied is how many treadles have a tie, or could be pressed.
func (s *state) tied() int {
	if s.draft.Treadled() {
		return max(len(s.draft.Ties), s.draft.Treadles)
	}
	return len(s.draft.Ties)
}

func (s *state) tie(i int) draft.Tie {
	if i < len(s.draft.Ties) {
		return s.draft.Ties[i]
	}
	return draft.Tie{}
}

func (s *said) sets(of []draft.Set) {
	for i, set := range of {
		s.row(i, listOf(set))
	}
}

// listOf writes a set; nothing is 0.
func listOf(set draft.Set) string {
	if set == 0 {
		return "0"
	}
	return strings.ReplaceAll(set.String(), "+", ",")
}

func (s *state) head(out *said) {
	if !s.empty() {
		for _, c := range constants {
			out.add(c.key, c.value)
		}
	}
	out.text("Source Program", s.text.Program)
	out.text("Source Version", s.text.Version)
}

func (s *state) palette(out *said) {
	if n := len(s.draft.Palette); n > 0 {
		out.add("Form", "RGB")
		out.add("Range", "0,255")
		out.add("Entries", strconv.Itoa(n))
	}
}

// text writes a colour in a range.
func (s scale) text(c draft.Colour) string {
	return strconv.Itoa(s.to(c.R)) + "," + strconv.Itoa(s.to(c.G)) + "," + strconv.Itoa(s.to(c.B))
}

func (s *state) maker(out *said) {
	out.text(textKeys[0], s.draft.Name)
	for i, field := range s.text.fields() {
		out.text(textKeys[i+1], *field)
	}
}

// notes gives the notes line by line, blank ones too.
func (s *state) notes(out *said) {
	if s.draft.Note == "" {
		return
	}
	for i, line := range strings.Split(s.draft.Note, "\n") {
		out.row(i, clean(line))
	}
}

func (s *state) weaving(out *said) {
	d := s.draft
	if s.empty() {
		return
	}
	out.add("Shafts", strconv.Itoa(d.Shafts))
	out.add("Treadles", strconv.Itoa(d.Treadles))
	switch d.Shed {
	case loom.UnsaidShed:
	case loom.Sinking, loom.Counterbalance:
		out.add("Rising Shed", "false")
	default:
		out.add("Rising Shed", "true")
	}
}

// own says what the text has no words for.
func (s *state) own(out *said) {
	d := s.draft
	if risingOf(d.Shed) != loom.UnsaidShed {
		out.add("Shed", d.Shed.String())
	}
	out.text("Origin", d.Origin)
	if d.Shed != loom.Countermarch || s.tied() == 0 {
		return
	}
	for i := range max(d.Treadles, len(d.Ties)) {
		tie := s.tie(i)
		if tie.Lowered != draft.UpTo(d.Shafts)&^tie.Tied {
			out.add(loweredKey(i+1), listOf(tie.Lowered))
		}
	}
}

// empty reports whether there is no draft yet: the state of a new document.
func (s *state) empty() bool { return s.draft.Shafts == 0 && len(s.draft.Threading) == 0 }
