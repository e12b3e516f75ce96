package planfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/problem"
)

// ReadJSON reads a document from JSON: an object of keys and values as a plan
// file has them, in UTF-8, no key twice, no null, numbers whole and of 64 bits or
// decimal, within the limits of depth and size of a plan file. The error is a
// *Fault that says at which path of the document what is wrong.
func ReadJSON(text []byte) (*Document, error) {
	top, err := readJSON(text)
	if err != nil {
		return nil, err
	}
	if top.kind != tableKind {
		return nil, faultOf("json.object", "", clipped(text), problem.Args{"found": top.kind.String()})
	}
	list := &problem.List{}
	if newDecoder(nil, top, list).newer() {
		return nil, &Fault{list.All()[0]}
	}
	d := &Document{top: top, size: len(text)}
	if bad := d.tooLarge(); bad != nil {
		return nil, bad
	}
	return d, nil
}

// readJSON reads one value of any kind.
func readJSON(text []byte) (*node, error) {
	switch {
	case len(text) > largest:
		return nil, faultOf("document.large", "", "", problem.Args{"size": len(text), "most": largest})
	case !utf8.Valid(text):
		return nil, faultOf("text.not-utf8", "", "", problem.Args{"at": badByte(text)})
	}
	if at := halfCharacter(text); at >= 0 {
		return nil, faultOf("json.half", "", string(text[at:at+6]), problem.Args{"at": at})
	}
	r := jsonReader{text: text, dec: json.NewDecoder(bytes.NewReader(text))}
	r.dec.UseNumber()
	top := &node{}
	if err := r.value(top); err != nil {
		return nil, err
	}
	if _, err := r.dec.Token(); !errors.Is(err, io.EOF) {
		return nil, r.syntax(top)
	}
	return top, nil
}

// halfCharacter gives where a \u stands for half of a character alone, which
// encoding/json would replace; -1 when nowhere.
func halfCharacter(text []byte) int {
	for at := 0; at < len(text); at++ {
		if text[at] != '\\' {
			continue
		}
		half := surrogate(text[at:])
		if half == 'L' || half == 'H' && surrogate(text[min(at+6, len(text)):]) != 'L' {
			return at
		}
		if half == 'H' {
			at += 6
		}
		at++ // what the backslash stands before
	}
	return -1
}

// surrogate tells whether an escape at the start of text is the high (H) or the
// low (L) half of a character; 0 when it is neither.
func surrogate(text []byte) byte {
	if len(text) < 6 || text[1] != 'u' || text[0] != '\\' || text[2] != 'd' && text[2] != 'D' || !isHex(text[4]) || !isHex(text[5]) {
		return 0
	}
	switch {
	case strings.IndexByte("89abAB", text[3]) >= 0:
		return 'H'
	case strings.IndexByte("cdefCDEF", text[3]) >= 0:
		return 'L'
	}
	return 0
}

func isHex(b byte) bool { return strings.IndexByte("0123456789abcdefABCDEF", b) >= 0 }

// jsonReader reads the values of one JSON text.
type jsonReader struct {
	text []byte
	dec  *json.Decoder
}

// value fills n, which stands in its table or list already.
func (r *jsonReader) value(n *node) error {
	if n.depth() > deepest {
		return deepFault(n.path())
	}
	token, err := r.dec.Token()
	if err != nil {
		return r.syntax(n)
	}
	n.inside = -1
	switch v := token.(type) {
	case json.Delim:
		if v == '{' {
			return r.object(n)
		}
		return r.list(n)
	case string:
		n.kind, n.text = textKind, plainLines(v)
	case bool:
		n.kind, n.text = truthKind, map[bool]string{true: "true", false: "false"}[v]
	case json.Number:
		return number(n, v.String())
	default:
		return faultOf("json.null", n.path(), "null", nil)
	}
	return nil
}

func (r *jsonReader) object(n *node) error {
	n.kind, n.made = tableKind, closed
	for r.dec.More() {
		token, err := r.dec.Token()
		key, ok := token.(string)
		switch {
		case err != nil || !ok:
			return r.syntax(n)
		case n.child(key) != nil:
			return faultOf("json.twice", n.child(key).path(), key, nil)
		}
		c := &node{key: key}
		n.add(c)
		if err := r.value(c); err != nil {
			return err
		}
	}
	return r.end(n)
}

func (r *jsonReader) list(n *node) error {
	n.kind, n.made = listKind, closed
	for r.dec.More() {
		c := &node{}
		n.add(c)
		if err := r.value(c); err != nil {
			return err
		}
	}
	return r.end(n)
}

func (r *jsonReader) end(n *node) error {
	if _, err := r.dec.Token(); err != nil {
		return r.syntax(n)
	}
	return nil
}

// number fills n with a number that TOML could hold too.
func number(n *node, text string) error {
	n.kind = wholeKind
	plain := plainWhole
	if strings.ContainsAny(text, ".eE") {
		n.kind, plain = decimalKind, plainDecimal
	}
	var ok bool
	if n.text, ok = plain(text); !ok {
		return faultOf("json.number", n.path(), text, nil)
	}
	return nil
}

// syntax is the fault of a text that is no JSON, met while n was read. Reading
// it once more as a whole tells at which byte it is.
func (r *jsonReader) syntax(n *node) *Fault {
	var bad *json.SyntaxError
	if !errors.As(json.Unmarshal(r.text, new(json.RawMessage)), &bad) {
		panic(fmt.Sprintf("internal error: JSON at %q fails only in parts", n.path()))
	}
	at, says := int(bad.Offset), bad.Error()
	if at < len(r.text) || !strings.Contains(says, "unexpected end") {
		at = max(at-1, 0)
	}
	return faultOf("json.syntax", n.path(), clipped(r.text[at:]), problem.Args{"says": says, "at": at})
}

// clipped gives the first characters of a text, for quoting.
func clipped(text []byte) string {
	const most = 20
	if len(text) > most {
		text = text[:most]
	}
	return strings.ToValidUTF8(string(text), "")
}
