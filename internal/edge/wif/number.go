package wif

import "strings"

// beyondAll stands for every number above it; ten times it fits an int anywhere.
const beyondAll = 100_000_000

// whole reads a whole number without a sign; what is above beyondAll reads as that.
func whole(text string) (int, bool) {
	n := 0
	for i := range len(text) {
		c := text[i]
		if c < '0' || c > '9' {
			return 0, false
		}
		n = min(n*10+int(c-'0'), beyondAll)
	}
	return n, text != ""
}

// token is a part of a value.
type token struct {
	text string
	at   span
}

// token cuts the first part from a value, at commas and spaces, and gives what is
// left. Empty parts are passed over.
func (s *source) token(rest span) (t token, left span, ok bool) {
	text := s.read(rest)
	from := strings.IndexFunc(text, func(r rune) bool { return !parting(r) })
	if from < 0 {
		return token{}, rest, false
	}
	to := strings.IndexFunc(text[from:], parting)
	if to < 0 {
		to = len(text) - from
	}
	at := span{rest.from + from, rest.from + from + to}
	return token{text[from : from+to], at}, span{at.to, rest.to}, true
}

func parting(r rune) bool { return r == ',' || r < 0x80 && isSpace(byte(r)) }

// truth reads one of the words for true and false.
func truth(text string) (is, ok bool) {
	switch strings.ToLower(text) {
	case "true", "on", "yes", "1":
		return true, true
	case "false", "off", "no", "0":
		return false, true
	}
	return false, false
}
