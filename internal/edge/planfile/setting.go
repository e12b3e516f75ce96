package planfile

import (
	"encoding/json"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// Value is one value of a document: a text, a number, true or false, a list, or
// a table. It never changes; the zero Value is none.
type Value struct{ n *node }

// TextValue gives a text.
func TextValue(text string) Value {
	return Value{&node{kind: textKind, text: plainLines(text), inside: -1}}
}

// ValueOf reads a value from JSON, as ReadJSON reads a document.
func ValueOf(raw json.RawMessage) (Value, error) {
	n, err := readJSON(raw)
	if err != nil {
		return Value{}, err
	}
	return Value{n}, nil
}

// ParseValue gives what a person means who writes key=value on a command line:
// what TOML reads there, as 6, true, "six", ["12 dpi"] or { hem = "1 in" }, else
// the text as it stands, as 30 in. A date is a text.
func ParseValue(text string) Value {
	const key = "value = "
	line := strings.TrimSpace(text)
	list := &problem.List{}
	if line == "" || !utf8.ValidString(text) || len(line) > largest {
		return TextValue(text)
	}
	top := build(newSource("", []byte(key+line)), list)
	if top == nil || list.Len() > 0 || len(top.items) != 1 || top.items[0].key != "value" {
		return TextValue(text)
	}
	n := top.items[0]
	if n.at.to != len(key)+len(line) { // a remark, which would be lost
		return TextValue(text)
	}
	return Value{n.copy().settled()}
}

// CutSetting cuts key=value of a command line into the path and the text of the
// value, without the spaces around them, at the first = that stands in no quoted
// key. It is false when there is none.
func CutSetting(text string) (path, value string, ok bool) {
	quoted := false
	for i := 0; i < len(text); i++ {
		switch {
		case text[i] == '"':
			quoted = !quoted
		case text[i] == '\\' && quoted:
			i++
		case text[i] == '=' && !quoted:
			return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1:]), true
		}
	}
	return "", "", false
}

// settled makes every single value below n what both writings have.
func (n *node) settled() *node {
	n.key, n.inside = keyBelow(n), -1
	if n.kind != tableKind && n.kind != listKind {
		n.kind, n.text = n.plain()
	}
	for _, c := range n.items {
		c.settled()
	}
	return n
}

// keyBelow gives the key of a value in a table; a value by itself has none.
func keyBelow(n *node) string {
	if n.parent == nil {
		return ""
	}
	return n.key
}

// IsZero reports whether there is no value.
func (v Value) IsZero() bool { return v.n == nil }

// JSON writes the value as JSON; nothing at all when there is none.
func (v Value) JSON() json.RawMessage {
	if v.n == nil {
		return nil
	}
	return appendJSON(nil, v.n)
}

// MarshalJSON writes the value, and none as null.
func (v Value) MarshalJSON() ([]byte, error) {
	if v.n == nil {
		return []byte("null"), nil
	}
	return v.JSON(), nil
}

// UnmarshalJSON reads a value as ValueOf does.
func (v *Value) UnmarshalJSON(raw []byte) error {
	read, err := ValueOf(raw)
	*v = read
	return err
}

// Text gives the characters of a text; false when the value is none.
func (v Value) Text() (string, bool) {
	if v.n == nil || v.n.kind != textKind {
		return "", false
	}
	return v.n.text, true
}

// String gives the value as people read it: a text without quotes, everything
// else as a plan file has it on one line.
func (v Value) String() string {
	if v.n == nil {
		return ""
	}
	return v.n.readable()
}

func (n *node) readable() string {
	if n.kind == textKind {
		return plainLines(n.text)
	}
	return n.spelled()
}

// spelled gives the value as a plan file has it, a text in its quotes.
func (n *node) spelled() string { return string(appendTOML(nil, n, "*")) }
