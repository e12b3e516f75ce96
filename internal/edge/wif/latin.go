package wif

import (
	"strings"
	"unicode/utf8"
)

// latinHigh are the characters of the bytes 80 to 9F of the code page 1252, which
// is Latin-1 with printable characters there (the published table of the code page,
// from memory). The five that it leaves free stand for themselves, as in Latin-1.
var latinHigh = [32]rune{
	'€', 0x81, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0x8d, 'Ž', 0x8f,
	0x90, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0x9d, 'ž', 'Ÿ',
}

// fromLatin makes characters of bytes that are one each.
func fromLatin(raw []byte) string {
	var b strings.Builder
	b.Grow(len(raw) + len(raw)/8)
	for _, c := range raw {
		if 0x80 <= c && c <= 0x9f {
			b.WriteRune(latinHigh[c-0x80])
			continue
		}
		b.WriteRune(rune(c))
	}
	return b.String()
}

// toLatin makes bytes of characters, one each. It reports false where there is a
// character that has none, and where the bytes would be read as UTF-8.
func toLatin(text []byte) ([]byte, bool) {
	out := make([]byte, 0, len(text))
	plain := true
	for _, r := range string(text) {
		c, ok := latinByte(r)
		if !ok {
			return nil, false
		}
		plain = plain && c < utf8.RuneSelf
		out = append(out, c)
	}
	return out, plain || !utf8.Valid(out)
}

func latinByte(r rune) (byte, bool) {
	if r < 0x80 || 0xa0 <= r && r <= 0xff {
		return byte(r), true
	}
	for i, high := range latinHigh {
		if r == high {
			return byte(0x80 + i), true
		}
	}
	return 0, false
}
