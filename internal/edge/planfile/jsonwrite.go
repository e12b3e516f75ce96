package planfile

import (
	"math"
	"strconv"
	"strings"

	"sley/internal/trade/problem"
)

// JSON writes the document as one line of JSON: tables as objects with their
// keys in order, texts as strings, whole and decimal numbers as numbers with the
// digits that were typed. A date, and a number that JSON does not have, is
// written as a text.
func (d *Document) JSON() []byte { return appendJSON(nil, d.top) }

func appendJSON(b []byte, n *node) []byte {
	switch n.kind {
	case tableKind:
		b = append(b, '{')
		for i, c := range n.items {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(problem.AppendQuote(b, c.key), ':')
			b = appendJSON(b, c)
		}
		return append(b, '}')
	case listKind:
		b = append(b, '[')
		for i, c := range n.items {
			if i > 0 {
				b = append(b, ',')
			}
			b = appendJSON(b, c)
		}
		return append(b, ']')
	}
	if is, text := n.plain(); is == textKind {
		return problem.AppendQuote(b, text)
	} else {
		return append(b, text...)
	}
}

// plain gives a single value as both writings have it: a text, a number in its
// plain digits, true or false.
func (n *node) plain() (kind, string) {
	switch n.kind {
	case truthKind:
		return truthKind, n.text
	case wholeKind:
		if digits, ok := plainWhole(n.text); ok {
			return wholeKind, digits
		}
	case decimalKind:
		if digits, ok := plainDecimal(n.text); ok {
			return decimalKind, digits
		}
	}
	return textKind, plainLines(n.text)
}

// plainWhole gives the decimal digits of a whole number of TOML, where it is of
// 64 bits.
func plainWhole(text string) (string, bool) {
	text = strings.ReplaceAll(text, "_", "")
	base := 10
	if len(text) > 2 && text[0] == '0' {
		base = 0
	}
	n, err := strconv.ParseInt(text, base, 64)
	return strconv.FormatInt(n, 10), err == nil
}

// plainDecimal gives the digits of a decimal number of TOML as they were typed,
// where it is one that JSON has.
func plainDecimal(text string) (string, bool) {
	text = strings.TrimPrefix(strings.ReplaceAll(text, "_", ""), "+")
	f, err := strconv.ParseFloat(text, 64)
	return text, err == nil && !math.IsInf(f, 0) && !math.IsNaN(f)
}
