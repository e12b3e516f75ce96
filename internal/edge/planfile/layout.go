package planfile

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sley/internal/trade/problem"
)

// longLine is how many characters a line of a list has before its items go on
// lines of their own.
const longLine = 100

// Text writes the document as a plan file: single values first, then a table
// under each heading, keys of the format in the order of docs/planfile.md and
// other keys after them, small tables on one line. Read again it is an equal
// document, and the same plan.
func (d *Document) Text() []byte {
	w := &layout{}
	var headed []*node
	values, samples := apart(ordered(d.top, d.table), d.table)
	for _, c := range values {
		if d.table == topTable && c.heads() {
			headed = append(headed, c)
			continue
		}
		w.line(c, below(d.table, c))
	}
	for _, c := range headed {
		w.table(c)
	}
	w.samples("", samples)
	return w.text
}

// heads reports whether a value at the top of the file stands under headings.
func (n *node) heads() bool {
	if n.kind == tableKind {
		return n.key != "sley" // which stands before everything else
	}
	return n.key == piecesTable && n.kind == listKind && len(n.items) > 0 &&
		!slices.ContainsFunc(n.items, func(c *node) bool { return c.kind != tableKind })
}

// ordered gives the values of a table, those of keys of the format first and in
// its order. Names of the weaver's own keep theirs.
func ordered(n *node, table string) []*node {
	format, known := keys[table]
	if !known || n.kind != tableKind {
		return n.items
	}
	rank := func(c *node) int {
		if i := slices.Index(format, c.key); i >= 0 {
			return i
		}
		return math.MaxInt
	}
	return slices.SortedStableFunc(slices.Values(n.items), func(a, b *node) int { return cmp.Compare(rank(a), rank(b)) })
}

// below gives the name under which the keys of c are kept, a value of the table.
func below(table string, c *node) string {
	switch {
	case table == topTable:
		return c.key
	case table == yarnsTable:
		return yarnTable
	case table == samplesTable:
		return sampleTable
	case table == piecesTable && slices.Contains(endKeys, c.key):
		if c.child("fringe") != nil {
			return fringeTable
		}
		return hemTable
	}
	return table + "." + c.key
}

// layout writes the lines of a plan file.
type layout struct{ text []byte }

func (w *layout) heading(open, name, end string) {
	if len(w.text) > 0 {
		w.text = append(w.text, '\n')
	}
	w.text = append(w.text, open+name+end+"\n"...)
}

// table writes a table of the top under its headings.
func (w *layout) table(n *node) {
	switch {
	case n.kind == listKind:
		for _, c := range n.items {
			w.heading("[[", tomlKey(n.key), "]]")
			w.lines(ordered(c, n.key), n.key)
		}
	case n.key == yarnsTable:
		w.named(n)
	default:
		w.heading("[", tomlKey(n.key), "]")
		w.lines(ordered(n, n.key), n.key)
	}
}

// named writes a table of tables with names of the weaver's own, each under a
// heading. Where one of them is no table, all up to it stand on lines, so that
// their order stays.
func (w *layout) named(n *node) {
	on := 0
	for i, c := range n.items {
		if c.kind != tableKind {
			on = i + 1
		}
	}
	if on > 0 || len(n.items) == 0 {
		w.heading("[", tomlKey(n.key), "]")
		w.lines(n.items[:on], n.key)
	}
	for _, c := range n.items[on:] {
		name, table := tomlKey(n.key)+"."+tomlKey(c.key), below(n.key, c)
		w.heading("[", name, "]")
		values, samples := apart(ordered(c, table), table)
		w.lines(values, table)
		w.samples(name+".", samples)
	}
}

// apart parts the samples of a yarn from its other values; nil where there are none that
// can stand under headings.
func apart(values []*node, table string) ([]*node, *node) {
	at := slices.IndexFunc(values, func(c *node) bool { return c.key == "samples" })
	if table != yarnTable || at < 0 || values[at].kind != tableKind || len(values[at].items) == 0 {
		return values, nil
	}
	samples := values[at]
	if slices.ContainsFunc(samples.items, func(c *node) bool { return c.kind != tableKind }) {
		return values, nil
	}
	return slices.Concat(values[:at], values[at+1:]), samples
}

// samples writes each sample of a yarn under a heading.
func (w *layout) samples(before string, n *node) {
	if n == nil {
		return
	}
	for _, c := range n.items {
		w.heading("[", before+"samples."+tomlKey(c.key), "]")
		w.lines(ordered(c, sampleTable), sampleTable)
	}
}

func (w *layout) lines(values []*node, table string) {
	for _, c := range values {
		w.line(c, below(table, c))
	}
}

// line writes a key and its value, whose own keys are kept under the name.
func (w *layout) line(c *node, table string) {
	w.text = append(w.text, tomlKey(c.key)+" = "...)
	from := len(w.text)
	switch {
	case c.kind == textKind && strings.Contains(c.text, "\n"):
		w.text = appendLines(w.text, plainLines(c.text))
	default:
		w.text = appendTOML(w.text, c, table)
		if c.kind == listKind && len(c.items) > 1 && len(w.text)-from > longLine {
			w.text = appendTall(w.text[:from], c, table)
		}
	}
	w.text = append(w.text, '\n')
}

// appendTOML writes a value on one line.
func appendTOML(b []byte, n *node, table string) []byte {
	switch n.kind {
	case textKind:
		return problem.AppendQuote(b, plainLines(n.text))
	case listKind:
		b = append(b, '[')
		for i, c := range n.items {
			if i > 0 {
				b = append(b, ", "...)
			}
			b = appendTOML(b, c, table)
		}
		return append(b, ']')
	case tableKind:
		return appendInline(b, n, table)
	}
	return append(b, n.text...)
}

func appendInline(b []byte, n *node, table string) []byte {
	if len(n.items) == 0 {
		return append(b, "{}"...)
	}
	b = append(b, "{ "...)
	for i, c := range ordered(n, table) {
		if i > 0 {
			b = append(b, ", "...)
		}
		b = append(b, tomlKey(c.key)+" = "...)
		b = appendTOML(b, c, below(table, c))
	}
	return append(b, " }"...)
}

// appendTall writes a long list with each item on a line of its own.
func appendTall(b []byte, n *node, table string) []byte {
	b = append(b, "[\n"...)
	for _, c := range n.items {
		b = append(appendTOML(append(b, "  "...), c, table), ",\n"...)
	}
	return append(b, ']')
}

// appendLines writes a text of several lines between three quotes. Only a quote
// by itself stands as it is: more of them could end the text.
func appendLines(b []byte, text string) []byte {
	b = append(b, `"""`+"\n"...)
	for i, r := range text {
		alone := i+1 < len(text) && text[i+1] != '"'
		if r == '\n' || r == '\t' || r == '"' && alone {
			b = append(b, byte(r))
			continue
		}
		quoted := problem.Quote(string(r))
		b = append(b, quoted[1:len(quoted)-1]...)
	}
	return append(b, `"""`...)
}

// tomlKey writes a key, in quotes where TOML wants them.
func tomlKey(key string) string {
	bare := key != "" && strings.IndexFunc(key, func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') && (r < '0' || r > '9') && r != '-' && r != '_'
	}) < 0
	if bare {
		return key
	}
	return problem.Quote(key)
}
