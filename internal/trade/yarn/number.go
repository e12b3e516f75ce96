package yarn

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// The numbers and plies that a count may have; far beyond any yarn, and small
// enough that every sum stays exact and short.
var (
	leastNumber = qty.Frac(1, 1000)
	mostNumber  = qty.Int(1_000_000)
)

const (
	mostPlies   = 99 // of a cord or twine
	fewPlies    = 12 // of a yarn whose plies are written first
	mostStrands = 12
	longestText = 200 // characters of a whole count
)

func limits() map[string]any {
	return map[string]any{"least": leastNumber, "most": mostNumber}
}

func pliesLimits() map[string]any { return map[string]any{"least": 1, "most": mostPlies} }

func isDigit(c rune) bool { return '0' <= c && c <= '9' }

// numberStart gives where the first number of text begins, or -1.
func numberStart(text string) int {
	at := strings.IndexFunc(text, func(c rune) bool { return isDigit(c) || isVulgar(c) })
	if at > 0 && text[at-1] == '.' {
		return at - 1
	}
	return at
}

// isVulgar reports whether c is a fraction in one character, such as ½.
func isVulgar(c rune) bool {
	if !unicode.Is(unicode.No, c) {
		return false
	}
	_, _, ok := qty.ScanNumber(string(c))
	return ok
}

// numberLength gives the bytes of the number that text begins with: 40, 5.5,
// 5½, 5 1/2. Unlike a length, 8/2 is not a fraction here but a number and its
// plies; a fraction needs a whole number before it.
func numberLength(text string) int {
	rest := strings.TrimLeftFunc(text, isDigit)
	whole := len(text) - len(rest)
	if decimal := decimalLength(rest); decimal > 0 {
		return whole + decimal
	}
	gap := len(rest) - len(strings.TrimLeftFunc(rest, unicode.IsSpace))
	if c, size := utf8.DecodeRuneInString(rest[gap:]); isVulgar(c) {
		return whole + gap + size
	}
	if fraction := fractionLength(rest[gap:]); gap > 0 && fraction > 0 {
		return whole + gap + fraction
	}
	return whole
}

// decimalLength gives the bytes of .5 or ,5 and of any further marks, which
// make the number a faulty one.
func decimalLength(text string) int {
	rest := text
	for len(rest) > 1 && strings.ContainsAny(rest[:1], ".,") && isDigit(rune(rest[1])) {
		rest = strings.TrimLeftFunc(rest[1:], isDigit)
	}
	return len(text) - len(rest)
}

// fractionLength gives the bytes of a fraction below 1, or of a faulty one; 0
// when there is none.
func fractionLength(text string) int {
	over, ok := strings.CutPrefix(strings.TrimLeftFunc(text, isDigit), "/")
	end := strings.TrimLeftFunc(over, isDigit)
	length := len(text) - len(end)
	if !ok || over == end || text[0] == '/' {
		return 0
	}
	if n, err := qty.ParseNumber(text[:length]); err == nil && !n.Less(qty.Int(1)) {
		return 0
	}
	return length
}
