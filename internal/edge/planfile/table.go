package planfile

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// table is one table of the file as it is being read. A table that the file
// does not have gives nothing for every key.
type table struct {
	d    *decoder
	name string // its name among the keys
	n    *node
}

// open begins to read a table, and reports the keys that it cannot have.
func (d *decoder) open(name string, n *node) table {
	t := table{d: d, name: name}
	if n == nil || !d.is(n, tableKind, "a table of keys, as [table] or { key = value }") {
		return t
	}
	t.n = n
	for _, c := range n.items {
		if !slices.Contains(keys[name], c.key) {
			d.unknown(name, c)
		}
	}
	return t
}

// at gives the value under the key, or nil.
func (t table) at(key string) *node {
	if !slices.Contains(keys[t.name], key) {
		panic(fmt.Sprintf("internal error: %q is no key of %q", key, t.name))
	}
	return t.n.child(key)
}

// path gives the path of a key, whether it is there or not.
func (t table) path(key string) string { return join(t.n.path(), key) }

// is reports whether n is of the kind, else it is a problem.
func (d *decoder) is(n *node, want kind, wanted string) bool {
	if n.kind == want {
		return true
	}
	d.wrongKind(n, wanted)
	return false
}

func (d *decoder) wrongKind(n *node, wanted string) {
	d.fail("value.kind", n, problem.Args{"wanted": wanted, "found": n.kind.String()})
}

// fail reports a problem with the whole value n.
func (d *decoder) fail(code string, n *node, args problem.Args) {
	d.list.Add(problem.Problem{
		Code: code, Path: n.path(), Read: d.written(n), Args: args, Place: d.src.place(n.shown()),
	})
}

// written gives what stands in the file for n, for quoting.
func (d *decoder) written(n *node) string {
	if n.kind == tableKind || n.kind == listKind {
		return n.key
	}
	return n.text
}

// failAt reports a problem with a key, which may be missing, at a place.
func (d *decoder) failAt(code, path string, place problem.Place, args problem.Args) {
	d.list.Add(problem.Problem{Code: code, Path: path, Args: args, Place: place})
}

// failKey reports a problem with a key of t that may be missing: it stands at
// the key, or else at the table.
func (t table) failKey(code, key string, args problem.Args) {
	path, read := t.path(key), ""
	if n := t.n.child(key); n != nil {
		read = t.d.written(n)
	}
	place, _ := Places{t.d.src, t.d.top}.Find(path)
	t.d.list.Add(problem.Problem{Code: code, Path: path, Read: read, Args: args, Place: place})
}

// fault reports what a parser of the trade found wrong in n's text.
func (d *decoder) fault(n *node, err error) {
	d.faultAt(n, 0, err)
}

// faultAt does so for a part of the text that begins at character at.
func (d *decoder) faultAt(n *node, at int, err error) {
	var f *qty.Fault
	if !errors.As(err, &f) {
		panic(fmt.Sprintf("internal error: a parser failed without a fault: %v", err))
	}
	args := f.Args
	if valid, ok := args["valid"].([]string); ok && args["near"] == nil {
		args = maps.Clone(args)
		args["near"] = near.To(f.Read, valid)
	}
	d.list.Add(problem.Problem{
		Code: f.Code, Path: n.path(), Read: f.Read, Args: args,
		Place: d.src.place(n.within(n.find(f.Read, at+f.At))),
	})
}

// find gives the characters of n's text that were read: those at character at,
// or where else they stand when they are not there.
func (n *node) find(read string, at int) (from, width int) {
	width = utf8.RuneCountInString(read)
	if strings.HasPrefix(n.text[bytesOf(n.text, at):], read) {
		return at, width
	}
	if i := strings.LastIndex(n.text, read); i >= 0 {
		return utf8.RuneCountInString(n.text[:i]), width
	}
	return at, width
}

// part reports a problem with the part of n's text that begins at byte from.
func (d *decoder) part(code string, n *node, from int, read string, args problem.Args) {
	at := utf8.RuneCountInString(n.text[:from])
	d.faultAt(n, at, &qty.Fault{Code: code, Read: read, Args: args})
}

// unknown reports a key that the table cannot have.
func (d *decoder) unknown(name string, c *node) {
	code, args := "key.unknown", problem.Args{"valid": keys[name], "table": tableName(name)}
	if close := near.To(c.key, keys[name]); close != "" {
		args["near"] = close
	} else if home := home(name, c.key); home != "" {
		code, args["home"] = "key.elsewhere", home
	}
	d.list.Add(problem.Problem{
		Code: code, Path: c.path(), Read: c.key, Args: args, Place: d.src.place(c.keyAt),
	})
}

// String says what a value is, for people who never met TOML.
func (k kind) String() string {
	return [...]string{
		"a table", "a list", "a text", "a whole number", "a decimal number",
		"true or false", "a date", "a date with a time",
	}[k]
}
