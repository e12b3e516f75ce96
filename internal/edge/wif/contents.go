package wif

import (
	"slices"
	"strings"

	"sley/internal/trade/problem"
)

// contents holds the list of contents against the sections that are there.
func (r *reader) contents() {
	s := r.doc.find(contentsName)
	if s == nil {
		r.warn("wif.no-contents", "", span{}, nil)
	} else {
		r.listed(s)
	}
	r.doc.order()
	r.doc.list()
}

// listed looks at each line of the list, and for what is not in it.
func (r *reader) listed(s *section) {
	first, says, there := map[string]*line{}, map[string]bool{}, r.doc.folded()
	for i := range s.lines {
		l := &s.lines[i]
		if l.key == "" {
			continue
		}
		key := fold(l.key)
		if first[key] != nil {
			r.twice(s, first[key], l)
		}
		first[key] = l
		is, ok := truth(l.value)
		if !ok && l.value != "" {
			r.warn("wif.truth", r.pathIn(s, l.key), l.valued, nil)
			l.instead("true")
		}
		says[key] = is || !ok
		if says[key] && there[key] == nil {
			r.warn("wif.contents-absent", r.pathIn(s, l.key), l.at, nil)
			l.mute()
		}
	}
	r.unlisted(s, says)
}

// unlisted tells the sections that are not in the list, and a list that stands
// behind what it lists.
func (r *reader) unlisted(s *section, says map[string]bool) {
	var names []string
	late := false
	for _, other := range r.doc.sections {
		if other.at == (span{}) || other == s || other.name == wifName {
			continue
		}
		late = late || other.at.from < s.at.from
		if listable(other.name) && !says[fold(other.name)] && !slices.Contains(names, other.name) {
			names = append(names, other.name)
		}
		if len(names) > mostOfAKind {
			break
		}
	}
	if len(names) > 0 {
		r.tell("wif.contents-missing", pathOf(contentsName), s.at, problem.Args{"sections": names})
	}
	if late {
		r.tell("wif.order", pathOf(contentsName), s.at, problem.Args{"section": contentsName})
	}
}

// folded finds the sections by their names as folded.
func (d *document) folded() map[string]*section {
	out := map[string]*section{}
	for _, s := range d.sections {
		if listable(s.name) && s.name != wifName && s.name != contentsName {
			out[fold(s.name)] = s
		}
	}
	return out
}

// listable reports whether a name can stand as a key.
func listable(name string) bool {
	return fold(name) != "" && !strings.Contains(name, "=") && name[0] != ';' && name[0] != '['
}

// order puts the two sections first that stand before all others.
func (d *document) order() {
	for _, name := range []string{contentsName, wifName} {
		s := d.find(name)
		if at := slices.Index(d.sections, s); at > 0 {
			d.sections = slices.Insert(slices.Delete(d.sections, at, at+1), 0, s)
		}
	}
}

// list makes the list of contents one of what is there.
func (d *document) list() {
	s := d.make(contentsName)
	there := d.folded()
	kept := s.lines[:0]
	for _, l := range s.lines {
		of := there[fold(l.key)]
		is, ok := truth(l.value)
		switch {
		case l.key == "":
		case of == nil && (is || !ok):
			continue
		case of != nil && !is:
			l.value = "true"
		}
		if of != nil {
			l.key = of.name
			delete(there, fold(l.key))
		}
		kept = append(kept, l)
	}
	s.lines = kept
	s.lines = slices.Insert(s.lines, s.keyed(), d.unlisted(there)...)
}

// unlisted gives the lines of the sections that are left to list.
func (d *document) unlisted(left map[string]*section) []line {
	var added []line
	for _, s := range d.sections {
		if left[fold(s.name)] == s {
			added = append(added, line{key: s.name, value: "true"})
		}
	}
	return added
}
