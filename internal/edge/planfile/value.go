package planfile

import (
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// has reports whether the file gives the key, even when its value is wrong:
// what was written wrongly is not missing too.
func (t table) has(key string) bool { return t.at(key) != nil }

// words gives the text under the key to be parsed, with its node. A bare
// number passes as its digits, so that the parser can ask for the unit.
func (t table) words(key, wanted string) (*node, string, bool) {
	n := t.at(key)
	if n == nil {
		return nil, "", false
	}
	text, ok := t.d.wordsOf(n, wanted)
	return n, text, ok
}

func (d *decoder) wordsOf(n *node, wanted string) (string, bool) {
	switch n.kind {
	case textKind, wholeKind, decimalKind:
		if strings.TrimSpace(n.text) == "" {
			d.fail("value.empty", n, problem.Args{"wanted": wanted})
			return "", false
		}
		return n.text, true
	}
	d.wrongKind(n, wanted)
	return "", false
}

// typed reads the key with a parser of the trade.
func typed[T any](t table, key, wanted string, parse func(string) (T, error)) qty.Typed[T] {
	n := t.at(key)
	if n == nil {
		return qty.Typed[T]{}
	}
	return typedNode(t.d, n, wanted, parse)
}

func typedNode[T any](d *decoder, n *node, wanted string, parse func(string) (T, error)) qty.Typed[T] {
	text, ok := d.wordsOf(n, wanted)
	if !ok {
		return qty.Typed[T]{}
	}
	is, err := parse(text)
	if err != nil {
		d.fault(n, err)
		return qty.Typed[T]{}
	}
	return qty.Typed[T]{Is: is, Typed: text}
}

// text gives a text as it stands, with plain line ends.
func (t table) text(key string) string {
	n := t.at(key)
	if n == nil || !t.d.is(n, textKind, "a text in quotes") {
		return ""
	}
	return strings.ReplaceAll(n.text, "\r\n", "\n")
}

// truth gives true or false; false when the key is missing.
func (t table) truth(key string) bool {
	n := t.at(key)
	return n != nil && t.d.is(n, truthKind, "true or false, without quotes") && n.text == "true"
}

// whole gives a count between least and most, both included.
func (t table) whole(key string, least, most int) qty.Typed[int] {
	n := t.at(key)
	if n == nil {
		return qty.Typed[int]{}
	}
	return t.d.wholeOf(n, least, most)
}

func (d *decoder) wholeOf(n *node, least, most int) qty.Typed[int] {
	if !d.is(n, wholeKind, "a whole number, without quotes") {
		return qty.Typed[int]{}
	}
	count, ok := wholeNumber(n.text)
	if !ok || count < least || count > most {
		d.fail("whole.range", n, problem.Args{"least": least, "most": most})
		return qty.Typed[int]{}
	}
	return qty.Typed[int]{Is: count, Typed: n.text}
}

// wholeNumber reads an integer as TOML writes it: 1_000 and 0x10 too. It is
// false beyond the range of an int.
func wholeNumber(text string) (int, bool) {
	text = strings.ReplaceAll(text, "_", "")
	base := 10
	if len(text) > 2 && text[0] == '0' {
		base = 0
	}
	n, err := strconv.ParseInt(text, base, strconv.IntSize)
	return int(n), err == nil
}

// choice gives one of the valid names, or nothing.
func (t table) choice(key string, valid []string) string {
	n := t.at(key)
	if n == nil || !t.d.is(n, textKind, "one of "+strings.Join(valid, ", ")) {
		return ""
	}
	return t.d.choiceOf(n, n.text, valid)
}

func (d *decoder) choiceOf(n *node, written string, valid []string) string {
	chosen := strings.Join(strings.Fields(strings.ToLower(written)), " ")
	if slices.Contains(valid, chosen) {
		return chosen
	}
	args := problem.Args{"valid": valid}
	if close := near.To(chosen, valid); close != "" {
		args["near"] = close
	}
	d.fail("choice.unknown", n, args)
	return ""
}

// yarn gives the name of a yarn of the file.
func (t table) yarn(key string) string {
	n := t.at(key)
	if n == nil || !t.d.is(n, textKind, "the name of a yarn") {
		return ""
	}
	t.d.knows(n, n.text)
	return n.text
}
