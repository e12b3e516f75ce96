package planfile

import (
	"bytes"
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"sley/internal/trade/problem"
)

// deepest is how far values may lie inside one another. The format needs five.
const deepest = 12

// builder makes the tree of a file. What is written twice is a problem, and
// the first of the two stays.
type builder struct {
	src  *source
	list *problem.List
	top  *node
	now  *node // the table that keys are added to; nil after a header that failed
	deep bool  // something lay too deep, so that the tree is not whole
}

// build reads the whole file into a tree. It gives nil and the problem when the
// file is not TOML, or nests too deep.
func build(src *source, list *problem.List) *node {
	var p unstable.Parser
	p.Reset(src.text)
	top := &node{kind: tableKind}
	b := &builder{src: src, list: list, top: top, now: top}
	for p.NextExpression() {
		b.expression(p.Expression())
	}
	var bad *unstable.ParserError
	if errors.As(p.Error(), &bad) {
		from := min(cap(src.text)-cap(bad.Highlight), len(src.text))
		list.Add(syntaxProblem(src, span{from, from + len(bad.Highlight)}, bad.Message))
		return nil
	}
	if b.deep {
		return nil
	}
	return top
}

func (b *builder) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.Table:
		b.now = b.header(e, byHeader)
	case unstable.ArrayTable:
		b.now = b.header(e, byHeaders)
	case unstable.KeyValue:
		if b.now != nil {
			b.keyValue(b.now, e)
		}
	}
}

// part is one name of a dotted key.
type part struct {
	name string
	at   span
}

func parts(e *unstable.Node) []part {
	var out []part
	for it := e.Key(); it.Next(); {
		n := it.Node()
		out = append(out, part{string(n.Data), rangeOf(n.Raw)})
	}
	return out
}

func rangeOf(r unstable.Range) span {
	return span{int(r.Offset), int(r.Offset + r.Length)}
}

// keyValue adds the value of key = value below t.
func (b *builder) keyValue(t *node, e *unstable.Node) {
	names := parts(e)
	last := len(names) - 1
	for _, p := range names[:last] {
		if t = b.dotted(t, p); t == nil {
			return
		}
	}
	if c := t.child(names[last].name); c != nil {
		b.twice(c, names[last])
		return
	}
	if !b.shallow(t, names[last]) {
		return
	}
	at := valueSpan(b.src.text, names[last].at, rangeOf(e.Raw))
	c := &node{key: names[last].name, keyAt: names[last].at}
	t.add(c)
	b.value(c, e.Value(), at)
}

// dotted gives the table that a dotted key passes. Only tables that dotted
// keys made may be passed.
func (b *builder) dotted(t *node, p part) *node {
	c := t.child(p.name)
	if c == nil {
		return b.newTable(t, p, byDots)
	}
	if c.kind == tableKind && c.made == byDots {
		return c
	}
	b.twice(c, p)
	return nil
}

// valueSpan finds the value behind the equals sign: the parser tells where
// single values stand, but not where lists and inline tables end.
func valueSpan(text []byte, key, whole span) span {
	from := key.to + bytes.IndexByte(text[key.to:whole.to], '=') + 1
	for from < whole.to && (text[from] == ' ' || text[from] == '\t') {
		from++
	}
	return span{from, whole.to}
}

// value fills c with the value v that stands at.
func (b *builder) value(c *node, v *unstable.Node, at span) {
	c.at, c.inside = at, -1
	switch v.Kind {
	case unstable.Array:
		c.kind, c.made = listKind, closed
		for it := v.Children(); it.Next(); {
			b.item(c, it.Node(), at)
		}
	case unstable.InlineTable:
		c.kind, c.made = tableKind, byDots
		for it := v.Children(); it.Next(); {
			b.keyValue(c, it.Node())
		}
		c.made = closed
	default:
		b.single(c, v)
	}
}

func (b *builder) item(list *node, v *unstable.Node, at span) {
	if !b.shallow(list, part{at: at}) {
		return
	}
	if v.Raw.Length > 0 {
		at = rangeOf(v.Raw)
	}
	c := &node{keyAt: at}
	list.add(c)
	b.value(c, v, at)
}

var kinds = map[unstable.Kind]kind{
	unstable.String: textKind, unstable.Bool: truthKind, unstable.Float: decimalKind,
	unstable.Integer: wholeKind, unstable.LocalDate: dateKind,
}

func (b *builder) single(c *node, v *unstable.Node) {
	kind, known := kinds[v.Kind]
	if !known {
		kind = otherKind
	}
	c.kind, c.text = kind, string(v.Data)
	if v.Raw.Length > 0 {
		c.at = rangeOf(v.Raw)
	}
	c.inside = c.at.from
	if kind == textKind {
		c.inside = inside(b.src.text[c.at.from:c.at.to], v.Data, c.at.from)
	}
}

// inside gives where the characters of a quoted text begin, or -1 when it
// holds escapes, so that its characters are not those of the file.
func inside(raw, data []byte, from int) int {
	at, end := 1, 1
	if bytes.HasPrefix(raw, []byte(`"""`)) || bytes.HasPrefix(raw, []byte("'''")) {
		at, end = 3, 3
		if rest := raw[3:]; bytes.HasPrefix(rest, []byte("\r\n")) {
			at = 5
		} else if bytes.HasPrefix(rest, []byte("\n")) {
			at = 4
		}
	}
	if len(raw) < at+end || !bytes.Equal(raw[at:len(raw)-end], data) {
		return -1
	}
	return from + at
}

// shallow reports whether one more value fits below t, else it is a problem,
// said once.
func (b *builder) shallow(t *node, p part) bool {
	if t.depth() < deepest {
		return true
	}
	if b.deep {
		return false
	}
	b.deep = true
	b.list.Add(problem.Problem{
		Code: "file.deep", Args: problem.Args{"most": deepest}, Place: b.src.place(p.at),
	})
	return false
}

// twice reports that the key at p was already given as c.
func (b *builder) twice(c *node, p part) {
	code := "key.twice"
	if c.kind == tableKind || c.made == byHeaders {
		code = "table.twice"
	}
	b.list.Add(problem.Problem{
		Code: code, Path: c.path(), Read: p.name,
		Args: problem.Args{"line": b.src.line(c.keyAt.from) + 1}, Place: b.src.place(p.at),
	})
}
