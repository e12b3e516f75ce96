package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/problem"
)

// constants are what the specification fixes of the section WIF.
var constants = []struct{ key, value string }{
	{"Version", "1.1"},
	{"Date", "April 20, 1997"},
	{"Developers", "wif@mhsoft.com"},
}

// head reads what the text says of itself and of its maker.
func (r *reader) head() Text {
	s := r.doc.find(wifName)
	r.constants(s)
	if s != nil && r.doc.sections[0] != s {
		r.tell("wif.order", pathOf(wifName), s.at, problem.Args{"section": wifName})
	}
	text := Text{Program: s.value("Source Program"), Version: s.value("Source Version")}
	t := r.doc.find(textName)
	r.draft.Name = t.value("Title")
	for i, field := range text.fields() {
		*field = t.value(textKeys[i+1])
	}
	r.notes()
	return text
}

// constants checks and mends the section WIF.
func (r *reader) constants(s *section) {
	if s == nil {
		r.warn("wif.no-wif", "", span{}, nil)
	}
	for _, c := range constants {
		l := s.get(c.key)
		if l != nil && l.value == c.value {
			continue
		}
		r.repair(wifName, c.key, c.value)
		args := problem.Args{"key": c.key, "value": c.value}
		switch {
		case s == nil:
		case l == nil || l.value == "":
			r.tell("wif.constant-missing", pathOf(wifName), s.at, args)
		case c.key == "Version":
			r.warn("wif.version", r.pathIn(s, c.key), l.valued, args)
		default:
			r.tell("wif.constant", r.pathIn(s, c.key), l.valued, args)
		}
	}
}

// shown is what is pointed at for a value: its key where it is blank.
func (l *line) shown() span {
	if l.valued.from == l.valued.to {
		return l.at
	}
	return l.valued
}

// notes reads the lines of the notes. Their numbers are those of the lines, so that
// they are counted anew where some are missing.
func (r *reader) notes() {
	rows := r.rowsOf[notesName]
	lines := make([]string, len(rows))
	for i, w := range rows {
		lines[i] = w.value
		if w.n == i+1 {
			continue
		}
		if before := last(rows[:i]); w.n > before+1 {
			r.tell("wif.notes", pathOf(notesName), w.at, problem.Args{"range": between(before+1, w.n-1)})
		}
		w.key = strconv.Itoa(i + 1)
	}
	r.draft.Note = strings.Join(lines, "\n")
}
