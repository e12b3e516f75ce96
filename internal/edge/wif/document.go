package wif

import (
	"slices"
	"strings"
)

// span is a range of bytes of a text that was read.
type span struct{ from, to int }

// line is one line of a section: a key with its value, or where the key is empty a
// remark, a blank line or whatever else is kept as written.
type line struct {
	key, value string
	before     string // remarks that are written on lines of their own before it
	at, valued span   // of the key and of the value in the text
}

// section is a section as it is written back.
type section struct {
	spec  *spec // nil of an unknown one
	name  string
	at    span // of the name
	lines []line
}

// document is a whole text, section by section.
type document struct {
	head     []line // before the first section
	sections []*section
	known    map[string]*section // by name
	end      string              // of each line
	latin    bool                // one byte a character
}

func newDocument(end string) *document {
	return &document{known: map[string]*section{}, end: end}
}

// blankDocument is for drafts that are made here. Lines end as the programs of the
// text's time expect it (common practice, no source).
func blankDocument() *document { return newDocument("\r\n") }

// remove takes a section out.
func (d *document) remove(s *section) {
	d.sections = slices.DeleteFunc(d.sections, func(of *section) bool { return of == s })
	delete(d.known, s.name)
}

// find gives the known section of that name, nil when there is none.
func (d *document) find(name string) *section { return d.known[name] }

// add puts a section at a place.
func (d *document) add(at int, s *section) {
	d.sections = slices.Insert(d.sections, at, s)
	if s.spec != nil {
		d.known[s.name] = s
	}
}

// make gives the section of that name, a new one when there is none. The two that
// stand before all others are put there.
func (d *document) make(name string) *section {
	if s := d.find(name); s != nil {
		return s
	}
	s := &section{spec: specOf[fold(name)], name: name}
	at := len(d.sections)
	switch name {
	case wifName:
		at = 0
	case contentsName:
		at = min(1, len(d.sections))
	}
	d.air(at)
	d.add(at, s)
	if at < len(d.sections)-1 && d.airy() {
		s.lines = append(s.lines, line{})
	}
	return s
}

// air puts an empty line at the end of what stands before place at.
func (d *document) air(at int) {
	if at == 0 || !d.airy() {
		return
	}
	s := d.sections[at-1]
	if !endsBlank(s.lines) {
		s.lines = append(s.lines, line{})
	}
}

// airy reports whether an empty line stands between sections: as in the first of
// them, and where there is one only.
func (d *document) airy() bool {
	return len(d.sections) < 2 || endsBlank(d.sections[0].lines)
}

func endsBlank(lines []line) bool {
	return len(lines) > 0 && lines[len(lines)-1].blank()
}

func (l *line) blank() bool { return l.key == "" && strings.TrimSpace(l.value) == "" }

// blank reports whether a section says nothing at all.
func (s *section) blank() bool {
	return !slices.ContainsFunc(s.lines, func(l line) bool { return !l.blank() })
}

// get gives the line of a key, the last of several, nil when there is none.
func (s *section) get(key string) *line {
	if s == nil {
		return nil
	}
	for i := len(s.lines) - 1; i >= 0; i-- {
		if s.lines[i].key == key {
			return &s.lines[i]
		}
	}
	return nil
}

// value gives what a key says, empty when it is not there.
func (s *section) value(key string) string {
	if l := s.get(key); l != nil {
		return l.value
	}
	return ""
}

// set writes a key, in its place or after the last line that has one.
func (s *section) set(key, value string) {
	if l := s.get(key); l != nil {
		l.value = value
		return
	}
	s.lines = slices.Insert(s.lines, s.keyed(), line{key: key, value: value})
}

// keyed is the place behind the last line with a key.
func (s *section) keyed() int {
	for i := len(s.lines); i > 0; i-- {
		if s.lines[i-1].key != "" {
			return i
		}
	}
	return 0
}

// remark adds a remark that is written before the line.
func (l *line) remark(text string) {
	if l.before != "" {
		l.before += "\n"
	}
	l.before += ";" + text
}

// mute makes a remark of the line: it stays in the text and says nothing.
func (l *line) mute() {
	l.value, l.key = ";"+l.key+"="+l.value, ""
}

// instead keeps what was written as a remark and says something else.
func (l *line) instead(value string) {
	l.remark(l.key + "=" + l.value)
	l.value = value
}

// remarks gives the remarks before a line as lines of their own.
func (l *line) remarks() []line {
	if l.before == "" {
		return nil
	}
	var out []line
	for _, text := range strings.Split(l.before, "\n") {
		out = append(out, line{value: text})
	}
	return out
}

// clone gives a document that shares no lines.
func (d *document) clone() *document {
	c := newDocument(d.end)
	c.head, c.latin = d.head, d.latin
	for i, s := range d.sections {
		of := *s
		of.lines = slices.Clone(s.lines)
		c.add(i, &of)
	}
	return c
}
