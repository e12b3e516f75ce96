package qty

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxDigits is how many digits a part of a number may have: more than any
// measure of cloth needs, and few enough for exact machine words.
const maxDigits = 15

// vulgar holds the fractions that have a character of their own. They are
// looked up one by one: Unicode's compatibility forms would read 1½ as 11/2.
var vulgar = map[rune]Rat{
	'½': Frac(1, 2), '⅓': Frac(1, 3), '⅔': Frac(2, 3),
	'¼': Frac(1, 4), '¾': Frac(3, 4),
	'⅕': Frac(1, 5), '⅖': Frac(2, 5), '⅗': Frac(3, 5), '⅘': Frac(4, 5),
	'⅙': Frac(1, 6), '⅚': Frac(5, 6), '⅐': Frac(1, 7),
	'⅛': Frac(1, 8), '⅜': Frac(3, 8), '⅝': Frac(5, 8), '⅞': Frac(7, 8),
	'⅑': Frac(1, 9), '⅒': Frac(1, 10), '↉': Int(0),
}

// ParseNumber reads a text that is one number: 12, 12.5, 38,1, 1/2, 4 1/2,
// 1½, with a leading - or − (U+2212) for a negative one. There are no
// exponents and no grouping. The codes of its faults:
//
//	number.missing           no number stands there
//	number.grouped           1,234: Args decimal "1.234" and whole "1234"
//	number.two-marks         1,234.5 or 1.2.3
//	number.hyphen            4-1/2: Args reading "4 1/2"
//	number.too-long          more than 15 digits in a part: Args limit
//	number.zero-denominator  1/0
//	number.trailing          something stands after the number
func ParseNumber(s string) (Rat, error) { return parse(s, "number", (*reader).number) }

// ScanNumber reads a leading number, as ParseNumber does, and gives the rest
// of the text untouched. ok is false, and rest all of s, when s does not begin
// with a number or begins with a faulty one.
func ScanNumber(s string) (n Rat, rest string, ok bool) {
	r := &reader{text: s}
	n, f := r.number()
	if f != nil {
		return Rat{}, s, false
	}
	return n, r.rest(), true
}

func isDigit(c rune) bool { return '0' <= c && c <= '9' }

func (r *reader) digits() string { return r.while(isDigit) }

// digitAt reports whether a digit stands that many bytes ahead.
func (r *reader) digitAt(ahead int) bool {
	at := r.pos + ahead
	return at < len(r.text) && isDigit(rune(r.text[at]))
}

// number reads a number with its sign.
func (r *reader) number() (Rat, *Fault) { return r.signed((*reader).magnitude) }

func (r *reader) signed(read func(*reader) (Rat, *Fault)) (Rat, *Fault) {
	r.space()
	mark := r.pos
	minus := r.take("-") || r.take("−")
	n, f := read(r)
	if f != nil && f.Code == "number.missing" {
		r.pos = mark
		return Rat{}, r.missing()
	}
	if minus {
		n = n.Neg()
	}
	return n, f
}

// missing faults the text from here on, which is not a number.
func (r *reader) missing() *Fault {
	end := &reader{text: r.text, pos: len(r.text)}
	return end.fault("number.missing", r.pos, nil)
}

// magnitude reads a number without sign. Only a whole number takes a fraction
// after it: 1.5 1/2 is two numbers.
func (r *reader) magnitude() (Rat, *Fault) {
	if v, ok := r.vulgar(); ok {
		return v, nil
	}
	from := r.pos
	n, f := r.decimal()
	if f != nil || strings.ContainsAny(r.text[from:r.pos], ".,") {
		return n, f
	}
	return r.fraction(n, from)
}

func (r *reader) vulgar() (Rat, bool) {
	c, size := utf8.DecodeRuneInString(r.rest())
	v, ok := vulgar[c]
	if ok {
		r.pos += size
	}
	return v, ok
}

// decimal reads digits with at most one decimal mark among them.
func (r *reader) decimal() (Rat, *Fault) {
	from := r.pos
	whole := r.digits()
	if whole == "" && !(strings.HasPrefix(r.rest(), ".") && r.digitAt(1)) {
		return Rat{}, r.missing()
	}
	part, marks := "", 0
	for strings.IndexAny(r.rest(), ".,") == 0 && r.digitAt(1) {
		r.pos++
		part = r.digits()
		marks++
	}
	return r.value(from, whole, part, marks)
}

func (r *reader) value(from int, whole, part string, marks int) (Rat, *Fault) {
	switch {
	case marks > 1:
		return Rat{}, r.fault("number.two-marks", from, nil)
	case len(part) == 3 && strings.Contains(r.text[from:r.pos], ","):
		return Rat{}, r.fault("number.grouped", from,
			map[string]any{"decimal": whole + "." + part, "whole": whole + part})
	}
	n, ok := wholeOf(whole + part)
	if !ok || len(part) > maxDigits {
		return Rat{}, r.tooLong(from)
	}
	return Frac(n, pow10(len(part))), nil
}

func (r *reader) tooLong(from int) *Fault {
	return r.fault("number.too-long", from, map[string]any{"limit": maxDigits})
}

// wholeOf gives the value of digits, and false when there are too many.
func wholeOf(digits string) (int64, bool) {
	digits = strings.TrimLeft(digits, "0")
	if len(digits) > maxDigits {
		return 0, false
	}
	n, _ := strconv.ParseInt("0"+digits, 10, 64) // digits only, and few
	return n, true
}

func pow10(places int) int64 {
	n := int64(1)
	for range places {
		n *= 10
	}
	return n
}
