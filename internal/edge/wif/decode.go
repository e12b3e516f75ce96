// Package wif reads and writes the trade's open interchange text for drafts, WIF
// version 1.1 (20 April 1997), as docs/wif.md describes it: from memory of the
// published specification, so it reads generously and writes strictly. Whatever a
// draft cannot hold is kept with it and written back; whatever is repaired or left
// out is said.
package wif

import (
	"bytes"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// reader reads one text into a file.
type reader struct {
	teller
	doc     *document
	draft   *draft.Draft
	rowsOf  map[string][]row // of the numbered sections that were read
	units   [2]unit          // of the warp and the weft
	faulty  map[string]bool  // paths of rows that were told already
	scaled  scale            // of the palette
	repairs []repair         // of the document, made when all is read
}

// repair is a value that the text ought to have.
type repair struct{ section, key, value string }

// Decode reads a text; name is that of its file, for messages. The draft can be
// woven only when the list holds no Error, and the list ends with what the draft's
// own check finds. Of a text that is refused as a whole the draft is empty. Decode
// never fails in another way, and takes memory in proportion to the text, whatever
// the text counts.
func Decode(name string, text []byte) (*File, *problem.List) {
	r := &reader{draft: &draft.Draft{}, rowsOf: map[string][]row{}, faulty: map[string]bool{}}
	r.list = &problem.List{}
	r.told = map[string]int{}
	f := &File{Draft: r.draft, doc: blankDocument()}
	if r.readable(name, text) {
		r.src = newSource(name, text)
		if r.split() {
			r.doc.latin = r.src.latin
			f.doc = r.doc
			f.Text = r.readAll()
		}
		r.more()
	}
	f.was = state{f.Draft.Clone(), f.Text, r.units}
	return f, r.list
}

// readable looks at the bytes as a whole, before anything is made of them.
func (r *reader) readable(name string, text []byte) bool {
	code, args := "", problem.Args(nil)
	switch {
	case len(text) > largest:
		code, args = "wif.large", problem.Args{"size": len(text), "most": largest}
	case bytes.IndexByte(text, 0) >= 0 || bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")):
		code = "wif.binary"
	default:
		return true
	}
	r.list.Add(problem.Problem{Code: code, Place: problem.Place{File: name}, Args: args})
	return false
}

// readAll reads every section and then looks at the draft as a whole.
func (r *reader) readAll() Text {
	if r.src.latin {
		at := badByte(r.src.text)
		r.tell("wif.latin", "", at, nil)
	}
	if !r.anyKnown() {
		r.list.Add(problem.Problem{Code: "wif.not-wif", Place: problem.Place{File: r.src.file}})
		return Text{}
	}
	for _, s := range r.doc.sections {
		r.keys(s)
	}
	text := r.head()
	r.palette()
	r.defaults()
	r.plans()
	r.weaving()
	r.threads(warpName, &r.draft.Warp, len(r.draft.Threading))
	r.threads(weftName, &r.draft.Weft, r.draft.Picks())
	r.own()
	r.mend()
	r.contents()
	r.check()
	return text
}

func (r *reader) repair(section, key, value string) {
	r.repairs = append(r.repairs, repair{section, key, value})
}

// mend makes the repairs, where no line is held any more. What stood there stays as
// a remark.
func (r *reader) mend() {
	for _, m := range r.repairs {
		s := r.doc.make(m.section)
		if l := s.get(m.key); l != nil && l.value != "" {
			l.instead(m.value)
			continue
		}
		s.set(m.key, m.value)
	}
}

// anyKnown reports whether there is a section that such a text has.
func (r *reader) anyKnown() bool {
	for _, s := range r.doc.sections {
		if s.spec != nil {
			return true
		}
	}
	return false
}

// badByte gives the first character that is no plain ASCII.
func badByte(text string) span {
	for i, c := range text {
		if c > 0x7f {
			return span{i, i + len(string(c))}
		}
	}
	return span{}
}
