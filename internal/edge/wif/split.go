package wif

import (
	"strings"

	"sley/internal/trade/problem"
)

// split takes the text apart into sections and their lines. It reports false where
// the text has more of them than any draft needs.
func (r *reader) split() bool {
	r.doc = newDocument(r.src.end)
	if n := len(r.src.lines); n > mostLines {
		r.fail("wif.many-lines", "", span{}, problem.Args{"lines": n, "most": mostLines})
		return false
	}
	var now *section
	after := 0
	for n := range r.src.lines {
		whole := r.src.line(n)
		at := r.src.trim(whole)
		if n == len(r.src.lines)-1 && whole.from == whole.to {
			break // the end of the last line begins no other
		}
		if r.heading(at, now) {
			if now = r.open(at); len(r.doc.sections) > mostSections {
				r.fail("wif.many-sections", "", span{}, problem.Args{"most": mostSections})
				return false
			}
			continue
		}
		l, remarked := r.lineOf(whole, at, now)
		after += remarked
		if after == 1 && remarked == 1 {
			r.tell("wif.comment-after", r.pathIn(now, l.key), l.valued, nil)
		}
		if now == nil {
			r.doc.head = append(r.doc.head, l)
			continue
		}
		now.lines = append(now.lines, l)
	}
	return true
}

// heading reports whether a line begins a section. In a section that is kept as
// written it must be a whole heading.
func (r *reader) heading(at span, now *section) bool {
	text := r.src.read(at)
	return strings.HasPrefix(text, "[") && (now == nil || !now.verbatim() || strings.Contains(text, "]"))
}

// verbatim reports whether the lines of a section are kept as written.
func (s *section) verbatim() bool { return s.spec == nil || s.spec.raw }

// open begins a section, or goes on with the one of that name that is there.
func (r *reader) open(at span) *section {
	text := r.src.read(at)
	end := strings.IndexByte(text, ']')
	rest := span{at.to, at.to}
	if end >= 0 {
		rest = r.src.trim(span{at.from + end + 1, at.to})
	} else {
		end = len(text)
	}
	named := r.src.trim(span{at.from + 1, at.from + end})
	name := r.src.read(named)
	s := &section{spec: specOf[fold(name)], name: name, at: named}
	if at.from+end == at.to || rest.from < rest.to && text[rest.from-at.from] != ';' {
		r.warn("wif.bracket", "", at, problem.Args{"section": name})
	}
	if s.spec != nil {
		s.name = s.spec.name
		if old := r.doc.find(s.name); old != nil {
			r.warn("wif.section-twice", pathOf(s.name), named, problem.Args{"line": r.src.lineOf(old.at.from) + 1})
			s = old
		}
	} else if !private(name) {
		r.strange(s)
	}
	if s.at == named {
		r.doc.add(len(r.doc.sections), s)
	}
	if rest.from < rest.to {
		s.lines = append(s.lines, line{value: ";" + strings.TrimPrefix(r.src.read(rest), ";")})
	}
	return s
}

// lineOf reads a line of a section, and counts the remark behind its value.
func (r *reader) lineOf(whole, at span, now *section) (line, int) {
	text := r.src.read(at)
	switch {
	case now != nil && now.verbatim():
		return line{value: r.src.read(whole)}, 0
	case text == "":
		return line{}, 0
	case text[0] == ';':
		return line{value: text}, 0
	}
	equals := strings.IndexByte(text, '=')
	switch {
	case now == nil:
		r.warn("wif.outside", "", at, nil)
		return line{value: ";" + text}, 0
	case equals < 1:
		r.warn("wif.no-equals", pathOf(now.name), at, problem.Args{"section": now.name})
		return line{value: ";" + text}, 0
	}
	l := line{at: r.src.trim(span{at.from, at.from + equals}), valued: r.src.trim(span{at.from + equals + 1, at.to})}
	l.key = r.src.read(l.at)
	return l, r.behind(&l, now)
}

// behind takes the remark from behind a value, unless the value is any text, where
// a semicolon may be meant.
func (r *reader) behind(l *line, now *section) int {
	l.value = r.src.read(l.valued)
	cut := strings.IndexByte(l.value, ';')
	if cut < 0 || now.spec.name == notesName || now.spec.isFree(l.key) {
		return 0
	}
	l.remark(l.value[cut+1:])
	l.valued = r.src.trim(span{l.valued.from, l.valued.from + cut})
	l.value = r.src.read(l.valued)
	return 1
}

// isFree reports whether the value of a key is any text; so is that of a key which
// is not known.
func (s *spec) isFree(name string) bool {
	if s.numbered || s.name == contentsName {
		return false
	}
	key, ok := s.key(name)
	for _, free := range s.free {
		if free == key {
			return true
		}
	}
	return !ok
}
