package problem

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// escapes are the characters that TOML and JSON both write with one letter
// behind a backslash.
var escapes = map[rune]byte{'"': '"', '\\': '\\', '\b': 'b', '\t': 't', '\n': 'n', '\f': 'f', '\r': 'r'}

// Quote writes a text in quotes as both TOML and JSON read it: other characters
// that do not print as \u and four digits.
func Quote(text string) string { return string(AppendQuote(nil, text)) }

// AppendQuote appends what Quote writes.
func AppendQuote(b []byte, text string) []byte {
	b = append(b, '"')
	for _, r := range text {
		letter, short := escapes[r]
		switch {
		case short:
			b = append(b, '\\', letter)
		case r < ' ' || r == 0x7f:
			b = fmt.Appendf(b, `\u%04x`, r)
		default:
			b = utf8.AppendRune(b, r)
		}
	}
	return append(b, '"')
}

// Unquote reads a text that Quote could have written, with any character as \u
// and four digits that is one by itself. It is false for every other text.
func Unquote(quoted string) (string, bool) {
	if len(quoted) < 2 || quoted[0] != '"' || quoted[len(quoted)-1] != '"' || !utf8.ValidString(quoted) {
		return "", false
	}
	text := quoted[1 : len(quoted)-1]
	var b strings.Builder
	for text != "" {
		r, rest, ok := unquoteRune(text)
		if !ok {
			return "", false
		}
		b.WriteRune(r)
		text = rest
	}
	return b.String(), true
}

func unquoteRune(text string) (r rune, rest string, ok bool) {
	r, size := utf8.DecodeRuneInString(text)
	if r != '\\' {
		return r, text[size:], r >= ' ' && r != '"' && r != 0x7f
	}
	if len(text) < 2 {
		return 0, "", false
	}
	for c, letter := range escapes {
		if text[1] == letter {
			return c, text[2:], true
		}
	}
	if text[1] != 'u' || len(text) < 6 {
		return 0, "", false
	}
	code, err := strconv.ParseUint(text[2:6], 16, 16)
	return rune(code), text[6:], err == nil && utf8.ValidRune(rune(code))
}
