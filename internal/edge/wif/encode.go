package wif

import (
	"bytes"
	"strconv"
	"strings"

	"sley/internal/trade/draft"
)

// Encode writes a file: every section in its order, in the line ends and the
// characters that were read. What was not edited stands there as it was read; a
// faulty value that was read is a remark. A line break in a text of one line becomes
// a space. Of a thread's size that is above a metre, and of a draft whose own check
// fails, it writes what there is; they are not read back.
func Encode(f *File) []byte {
	doc := f.doc
	now := state{f.Draft, f.Text, f.was.units}
	if f.Text != f.was.text || !f.Draft.Equal(f.was.draft) {
		doc = doc.clone()
		for _, s := range specs {
			if !s.raw && s.name != contentsName {
				f.update(doc, s, &now)
			}
		}
		doc.order()
		doc.list()
	}
	return doc.bytes()
}

// update brings a section to what it says now.
func (f *File) update(doc *document, of *spec, now *state) {
	before, after := f.was.section(of.name), now.section(of.name)
	if of.name == tableName {
		before, after = f.table(doc, now)
	}
	s := doc.find(of.name)
	switch {
	case len(after.pairs) > 0:
		doc.make(of.name).update(before, after)
	case s != nil:
		if s.update(before, after); s.blank() {
			doc.remove(s)
		}
	}
}

// table says the colours in the range of the document, where that tells all 256
// steps of a byte apart; else the range becomes that of a byte, and every colour is
// written anew.
func (f *File) table(doc *document, now *state) (before, after said) {
	in, ok := doc.scale()
	for i, c := range f.was.draft.Palette {
		before.row(i, in.text(c))
	}
	if len(f.was.draft.Palette) == 0 {
		after.base = "anew"
	}
	if fine := ok && in.most-in.least >= 255; !fine && !samePalette(f.was.draft, now.draft) {
		in, after.base = eight, "anew"
		doc.make(paletteName).set("Form", "RGB")
		doc.make(paletteName).set("Range", "0,255")
	}
	for i, c := range now.draft.Palette {
		after.row(i, in.text(c))
	}
	return before, after
}

func samePalette(a, b *draft.Draft) bool {
	if len(a.Palette) != len(b.Palette) {
		return false
	}
	for i, c := range a.Palette {
		if c != b.Palette[i] {
			return false
		}
	}
	return true
}

// scale reads the range of the palette of a document that was mended.
func (d *document) scale() (scale, bool) {
	s := d.find(paletteName)
	if form := s.value("Form"); form != "" && fold(form) != "rgb" {
		return eight, false
	}
	text := s.value("Range")
	if text == "" {
		return eight, true
	}
	first, second, _ := strings.Cut(text, ",")
	least, ok := whole(strings.Trim(first, spaces))
	most, is := whole(strings.Trim(second, spaces))
	return scale{least, most}, ok && is && least < most
}

// update writes what differs between two states of a section. What is the same in
// both stays as it is written, or stays out; but where a list grows or shrinks, its
// gaps are filled.
func (s *section) update(before, after said) {
	if s.blank() {
		s.fill(after)
		return
	}
	anew := before.base != after.base
	was, now := before.byKey(), after.byKey()
	fill := s.spec.numbered && len(was) != len(now)
	differs := func(key string) bool {
		old, had := was[key]
		pair, is := now[key]
		return is != had || pair != old || anew && s.stands(key)
	}
	there := s.rewrite(now, differs)
	s.insert(after.pairs, func(key string) bool { return !there[key] && (fill || differs(key)) })
}

// rewrite writes the lines that are there and differ, takes out those that say
// nothing any more, and gives the keys of the rest.
func (s *section) rewrite(now map[string]pair, differs func(string) bool) map[string]bool {
	kept, there := make([]line, 0, len(s.lines)), map[string]bool{}
	for _, l := range s.lines {
		pair, is := now[l.key]
		if l.key != "" && differs(l.key) {
			if !is {
				kept = append(kept, l.remarks()...)
				continue
			}
			l.value = pair.value
		}
		there[l.key] = true
		kept = append(kept, l)
	}
	s.lines = kept
	return there
}

// fill writes a section that says nothing yet.
func (s *section) fill(after said) {
	lines := make([]line, 0, len(after.pairs)+len(s.lines))
	for _, p := range after.pairs {
		lines = append(lines, line{key: p.key, value: p.value})
	}
	s.lines = append(lines, s.lines...)
}

func (s *said) byKey() map[string]pair {
	out := make(map[string]pair, len(s.pairs))
	for _, p := range s.pairs {
		out[p.key] = p
	}
	return out
}

// stands reports whether a value stands on the base of its section: every number,
// and the sizes.
func (s *section) stands(key string) bool {
	return s.spec.numbered || key == "Spacing" || key == "Thickness"
}

// insert adds the pairs that are missing, numbers in their order.
func (s *section) insert(pairs []pair, missing func(string) bool) {
	var added []line
	for _, p := range pairs {
		if missing(p.key) {
			added = append(added, line{key: p.key, value: p.value})
		}
	}
	if len(added) == 0 {
		return
	}
	end := s.keyed()
	out := make([]line, 0, len(s.lines)+len(added))
	for _, l := range s.lines[:end] {
		for s.spec.numbered && len(added) > 0 && before(added[0].key, l.key) {
			out, added = append(out, added[0]), added[1:]
		}
		out = append(out, l)
	}
	out = append(out, added...)
	s.lines = append(out, s.lines[end:]...)
}

// before reports whether a number comes before another.
func before(a, b string) bool {
	m, _ := strconv.Atoi(a)
	n, err := strconv.Atoi(b)
	return err == nil && m < n
}

// bytes writes a document.
func (d *document) bytes() []byte {
	var b bytes.Buffer
	w := writer{&b, d.end}
	w.lines(d.head)
	for _, s := range d.sections {
		w.line("[", s.name, "]")
		w.lines(s.lines)
	}
	if d.latin {
		if out, ok := toLatin(b.Bytes()); ok {
			return out
		}
	}
	return b.Bytes()
}

type writer struct {
	*bytes.Buffer
	end string
}

func (w writer) line(parts ...string) {
	for _, part := range parts {
		w.WriteString(part)
	}
	w.WriteString(w.end)
}

func (w writer) lines(lines []line) {
	for i := range lines {
		l := &lines[i]
		if l.before != "" {
			for _, remark := range strings.Split(l.before, "\n") {
				w.line(remark)
			}
		}
		if l.key == "" {
			w.line(l.value)
		} else {
			w.line(l.key, "=", l.value)
		}
	}
}
