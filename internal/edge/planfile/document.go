package planfile

import (
	"bytes"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// Document is a plan as its weaver typed it: a tree of keys and values, in
// order, also where a value cannot be read yet or a key is unknown. A plan file
// and a JSON document are two ways of writing the same tree. A document is not
// safe for changes from several goroutines at once; reading is.
type Document struct {
	top   *node
	src   *source // the file it was read from, until something is changed
	table string  // under which name the keys of its top are kept
	size  int     // no fewer than the bytes of its JSON
}

// NewDocument gives a document without a key.
func NewDocument() *Document { return &Document{top: &node{kind: tableKind}, size: 2} }

// ReadText reads the text of a plan file; file is its name for messages. The
// document is nil, and the list says why, when the text is no TOML in UTF-8, of
// a later version of the format, deeper than 12 tables and lists, or larger than
// a megabyte in either writing. The list else holds only what was written twice,
// of which the first stays; what values mean is read by Plan.
func ReadText(file string, text []byte) (*Document, *problem.List) {
	src, top, list := readTree(file, text)
	if top == nil {
		return nil, list
	}
	d := newDecoder(src, top, list)
	if d.newer() {
		return nil, list
	}
	doc := &Document{top: top, src: src, size: len(text)}
	if bad := doc.tooLarge(); bad != nil {
		bad.Code, bad.Place = "file.large", problem.Place{File: file}
		list.Add(bad.Problem)
		return nil, list
	}
	return doc, list
}

// Plan reads the plan that the document writes; find is what is to be found in
// the place of what the document itself looks for, or empty. Every fault is a
// problem with its path; only one that was read from a file and not changed
// since has places. The plan is whole only when the list holds no Error.
func (d *Document) Plan(find string) (*warp.Plan, *problem.List) {
	list := &problem.List{}
	r := newDecoder(d.src, d.top, list)
	r.find = find
	r.read()
	return r.plan, list
}

// Places knows where the values of the document stand; nowhere, unless it was
// read from a file and not changed since.
func (d *Document) Places() Places { return Places{d.src, d.top} }

// Clone gives a copy that shares nothing which can change.
func (d *Document) Clone() *Document {
	c := *d
	c.top = d.top.copy()
	return &c
}

// Equal reports whether both documents say the same: the same values at the same
// paths, and names of the weaver's own in the same order. The order of the keys
// of the format says nothing, nor does the spelling of numbers (1_000 is 1000).
func (d *Document) Equal(other *Document) bool { return len(Differences(d, other)) == 0 }

// copy gives a copy of n and all below it, without a parent.
func (n *node) copy() *node {
	c := *n
	c.parent, c.byKey, c.items = nil, nil, nil
	if len(n.items) > 0 {
		c.items = make([]*node, 0, len(n.items))
	}
	for _, below := range n.items {
		c.add(below.copy())
	}
	return &c
}

// swelling is how many times larger than what was read a document can become in
// either writing, at most: a character that does not print takes six for one,
// tables inside one another four for one.
const swelling = 32

// tooLarge gives the fault of a document that is larger than a plan file may be,
// as JSON or as a plan file; nil when it is not. Ordinary plans are not measured.
func (d *Document) tooLarge() *Fault {
	if d.size <= largest/swelling {
		return nil
	}
	d.size = len(d.JSON())
	size := max(d.size, len(d.Text()))
	if size <= largest {
		return nil
	}
	return faultOf("document.large", "", "", problem.Args{"size": size, "most": largest})
}

// plainLines writes every end of a line as one character.
func plainLines(text string) string {
	return string(bytes.ReplaceAll([]byte(text), []byte("\r\n"), []byte("\n")))
}
