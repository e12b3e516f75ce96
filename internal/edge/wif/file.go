package wif

import "sley/internal/trade/draft"

// File is a draft with what its text says beside it. Of an unedited file Encode
// writes every value as it was read; of an edited one it writes anew what differs.
type File struct {
	// Draft is the draft; its Name is the text's title, its Note the notes.
	Draft *draft.Draft
	Text  Text

	doc *document
	was state // as the document says it
}

// Text is what a text says of its maker, each a line; empty is unsaid.
type Text struct {
	Author, Address, Email, Telephone, Fax string
	Program, Version                       string // that wrote it
}

// FromDraft gives the file of a draft that was made here.
func FromDraft(d *draft.Draft) *File {
	return &File{Draft: d, Text: Text{Program: "sley"}, doc: blankDocument(), was: state{draft: &draft.Draft{}}}
}

// Kept names the sections that are kept as written and say nothing to the draft, in
// the order of the text.
func (f *File) Kept() []string {
	var names []string
	for _, s := range f.doc.sections {
		if s.verbatim() {
			names = append(names, s.name)
		}
	}
	return names
}

// fields are those of the section TEXT behind the title, in the order of textKeys.
func (t *Text) fields() []*string {
	return []*string{&t.Author, &t.Address, &t.Email, &t.Telephone, &t.Fax}
}
