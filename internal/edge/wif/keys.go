package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
)

// strange tells of a section that is not known.
func (r *reader) strange(s *section) {
	r.tell("wif.section-unknown", "", s.at, problem.Args{"near": r.near("wif.section-unknown", s.name, sectionNames())})
}

// pathIn is the path of a key of a section.
func (r *reader) pathIn(s *section, key string) string {
	if s == nil {
		return ""
	}
	if n, ok := whole(key); ok && n > 0 {
		return pathAt(s.name, n)
	}
	return pathOf(s.name) + "." + strings.ToLower(strings.ReplaceAll(key, " ", "-"))
}

// pathAt is the path of a numbered line, which is counted from 0.
func pathAt(section string, n int) string {
	return pathOf(section) + "[" + strconv.Itoa(n-1) + "]"
}

// keys looks at the keys of a section: each is known, and there once.
func (r *reader) keys(s *section) {
	switch {
	case s.verbatim() || s.spec.name == contentsName:
	case s.spec.numbered:
		r.rowsOf[s.spec.name] = r.rows(s)
	default:
		r.named(s)
	}
}

// named looks at keys that are names.
func (r *reader) named(s *section) {
	first := map[string]*line{}
	for i := range s.lines {
		l := &s.lines[i]
		if l.key == "" {
			continue
		}
		key, ok := s.spec.key(l.key)
		if !ok {
			r.unknownKey(s, l)
			continue
		}
		l.key = key
		if old := first[key]; old != nil {
			r.twice(s, old, l)
		}
		first[key] = l
	}
}

func (r *reader) unknownKey(s *section, l *line) {
	near := r.near("wif.key-unknown", l.key, s.spec.keys)
	r.tell("wif.key-unknown", r.pathIn(s, l.key), l.at, problem.Args{"section": s.name, "near": near})
}

// near guesses what a name was meant for, while problems of the kind are told.
func (r *reader) near(code, name string, names []string) string {
	if r.told[code] >= mostOfAKind {
		return ""
	}
	return near.To(name, names)
}

// twice makes a remark of the first of two lines with one key.
func (r *reader) twice(s *section, old, l *line) {
	if r.told["wif.key-twice"] > mostOfAKind {
		r.told["wif.key-twice"]++ // there may be a hundred thousand
	} else {
		args := problem.Args{"line": r.src.lineOf(old.at.from) + 1, "section": s.name}
		r.warn("wif.key-twice", r.pathIn(s, l.key), l.at, args)
	}
	old.mute()
}
