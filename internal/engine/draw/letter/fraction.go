package letter

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Fraction is a whole number and a fraction set properly, as raised and lowered
// figures about a fraction slash: 1 and 1/2 as 1¹⁄₂. All are put together so, also
// those that exist as one character, because one character's figures are too small
// to read from the bench and a column should look alike. Without a numerator it is
// the whole number alone. A minus sign, when whole or num is negative, stands first.
func Fraction(whole, num, den int) string {
	sign := ""
	if whole < 0 || num < 0 {
		sign = "−"
	}
	lead, upper, lower := figures(whole), figures(num), figures(den)
	switch {
	case num == 0:
		return sign + lead
	case whole == 0:
		lead = ""
	}
	return sign + lead + raised.Replace(upper) + "⁄" + lowered.Replace(lower)
}

// figures of a number, without its sign.
func figures(n int) string { return strings.TrimPrefix(strconv.Itoa(n), "-") }

// FractionText sets every fraction of a measure: "1 1/2 in" becomes "1¹⁄₂ in" and
// "2 3/16 x 1/8" becomes "2³⁄₁₆ x ¹⁄₈". It is for measures alone, never for 2/2
// twill or 10/2 cotton, so it touches proper fractions only; a fraction whose
// figures touch a letter, a point or another slash is left as it stands.
func FractionText(measure string) string {
	var out strings.Builder
	from := 0
	for _, m := range mixed.FindAllStringSubmatchIndex(measure, -1) {
		if touches(measure, m[0], m[1]) {
			continue
		}
		part := func(i int) string { return measure[max(m[2*i], 0):max(m[2*i+1], 0)] }
		out.WriteString(measure[from:m[0]] + set(part(1), part(2), part(3)))
		from = m[1]
	}
	return out.String() + measure[from:]
}

// mixed is an optional whole number with a space or a hyphen, and a fraction; the
// space may be thin or not break.
var mixed = regexp.MustCompile(`(?:(\d{1,9})[ \-\x{A0}\x{2009}\x{202F}])?(\d{1,4})/(\d{1,4})`)

// touches says whether what was found is part of something longer.
func touches(text string, from, to int) bool {
	before, _ := utf8.DecodeLastRuneInString(text[:from])
	after, _ := utf8.DecodeRuneInString(text[to:])
	return strings.ContainsRune("0123456789/.,", before) || unicode.IsLetter(before) ||
		strings.ContainsRune("0123456789/", after) || unicode.IsLetter(after)
}

// set is one match with its fraction set, or as it stood when the fraction is not
// a proper one.
func set(whole, num, den string) string {
	n, _ := strconv.Atoi(num) // digits alone, few of them
	d, _ := strconv.Atoi(den)
	w, _ := strconv.Atoi(whole)
	if n > 0 && n < d {
		return Fraction(w, n, d)
	}
	if whole != "" {
		whole += " "
	}
	return whole + num + "/" + den
}

var (
	raised = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
		"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
	lowered = strings.NewReplacer("0", "₀", "1", "₁", "2", "₂", "3", "₃", "4", "₄",
		"5", "₅", "6", "₆", "7", "₇", "8", "₈", "9", "₉")
)
