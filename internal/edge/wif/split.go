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
	c := cutter{reader: r, lines: make([]line, 0, len(r.src.lines))}
	for n := range r.src.lines {
		whole := r.src.line(n)
		if n == len(r.src.lines)-1 && whole.from == whole.to {
			break // the end of the last line begins no other
		}
		c.line(whole)
		if len(r.doc.sections) > mostSections {
			r.fail("wif.many-sections", "", span{}, problem.Args{"most": mostSections})
			return false
		}
	}
	c.close()
	return true
}

// cutter goes through a text line by line.
type cutter struct {
	*reader
	now   *section // nil before the first
	lines []line   // of all sections
	from  int      // where those of this one begin
	after bool     // a remark behind a value was told
}

// line begins a section, or adds a line to the one that is begun.
func (c *cutter) line(whole span) {
	at := c.src.trim(whole)
	if c.heading(at, c.now) {
		c.close()
		c.now = c.open(at)
		return
	}
	l, remarked := c.lineOf(whole, at, c.now)
	if remarked && !c.after {
		c.after = true
		c.tell("wif.comment-after", c.pathIn(c.now, l.key), l.valued, nil)
	}
	c.lines = append(c.lines, l)
}

// close gives a section its lines.
func (c *cutter) close() {
	lines := c.lines[c.from:len(c.lines):len(c.lines)]
	c.from = len(c.lines)
	switch {
	case c.now == nil:
		c.doc.head = lines
	case len(c.now.lines) == 0:
		c.now.lines = lines
	default:
		c.now.lines = append(c.now.lines, lines...)
	}
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
	named, rest := r.parted(at)
	name := r.src.read(named)
	s := &section{spec: specOf[fold(name)], name: name, at: named}
	if s.spec != nil {
		s.name = s.spec.name
	}
	old := r.doc.find(s.name)
	switch {
	case old != nil:
		r.warn("wif.section-twice", pathOf(s.name), named, problem.Args{"line": r.src.lineOf(old.at.from) + 1})
		s = old
	case s.spec == nil && !private(name):
		r.strange(s)
	}
	if old == nil {
		r.doc.add(len(r.doc.sections), s)
	}
	if rest.from < rest.to {
		s.lines = append(s.lines, line{value: ";" + strings.TrimPrefix(r.src.read(rest), ";")})
	}
	return s
}

// parted gives the name in a heading, and what stands behind it: a remark, or it is
// not quite a heading.
func (r *reader) parted(at span) (named, rest span) {
	text := r.src.read(at)
	end := strings.IndexByte(text, ']')
	whole := end >= 0
	if !whole {
		end = len(text)
	}
	named = r.src.trim(span{at.from + 1, at.from + end})
	rest = r.src.trim(span{min(at.from+end+1, at.to), at.to})
	if !whole || rest.from < rest.to && text[rest.from-at.from] != ';' {
		r.warn("wif.bracket", "", at, problem.Args{"section": r.src.read(named)})
	}
	return named, rest
}

// lineOf reads a line of a section, and reports a remark behind its value.
func (r *reader) lineOf(whole, at span, now *section) (l line, remarked bool) {
	text := r.src.read(at)
	switch {
	case now != nil && now.verbatim():
		return line{value: r.src.read(whole)}, false
	case text == "":
		return line{}, false
	case text[0] == ';':
		return line{value: text}, false
	}
	equals := strings.IndexByte(text, '=')
	switch {
	case now == nil:
		r.warn("wif.outside", "", at, nil)
		return line{value: ";" + text}, false
	case equals < 1:
		r.warn("wif.no-equals", pathOf(now.name), at, problem.Args{"section": now.name})
		return line{value: ";" + text}, false
	}
	l = line{at: r.src.trim(span{at.from, at.from + equals}), valued: r.src.trim(span{at.from + equals + 1, at.to})}
	l.key = r.src.read(l.at)
	return l, r.behind(&l, now)
}

// behind takes the remark from behind a value, unless the value is any text, where
// a semicolon may be meant.
func (r *reader) behind(l *line, now *section) bool {
	l.value = r.src.read(l.valued)
	cut := strings.IndexByte(l.value, ';')
	if cut < 0 || now.spec.name == notesName || now.spec.isFree(l.key) {
		return false
	}
	l.remark(l.value[cut+1:])
	l.valued = r.src.trim(span{l.valued.from, l.valued.from + cut})
	l.value = r.src.read(l.valued)
	return true
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
