package planfile

import (
	"strings"
	"unicode"
)

// clip is a part of a text with the byte where it begins.
type clip struct {
	text string
	at   int
}

// trim takes the space from both ends.
func (c clip) trim() clip {
	left := strings.TrimLeftFunc(c.text, unicode.IsSpace)
	return clip{strings.TrimRightFunc(left, unicode.IsSpace), c.at + len(c.text) - len(left)}
}

// firstWord cuts the first word from a text.
func firstWord(c clip) (word string, rest clip) {
	c = c.trim()
	end := strings.IndexFunc(c.text, unicode.IsSpace)
	if end < 0 {
		end = len(c.text)
	}
	return c.text[:end], clip{c.text[end:], c.at + end}.trim()
}

// isThen and isPlus find what stands between the parts of an allowance, with
// the commas and spaces that belong to it.
func isThen(word string) bool { return strings.EqualFold(word, "then") }
func isPlus(word string) bool { return word == "+" }

// cutAround cuts a text at the words that divide it. A comma before the
// divider goes with it.
func cutAround(c clip, divides func(string) bool) []clip {
	var out []clip
	from := 0
	for at := 0; at < len(c.text); {
		end := wordEnd(c.text, at)
		if word := strings.TrimLeftFunc(c.text[at:end], unicode.IsSpace); divides(word) {
			before := strings.TrimRight(c.text[from:at], " \t")
			out = append(out, clip{strings.TrimSuffix(before, ","), c.at + from})
			from = end
		}
		at = end
	}
	return append(out, clip{c.text[from:], c.at + from})
}

// wordEnd gives where the word ends that begins, after space, at byte at.
func wordEnd(text string, at int) int {
	for seen := false; at < len(text); at++ {
		space := text[at] == ' ' || text[at] == '\t' || text[at] == '\n'
		if space && seen {
			return at
		}
		seen = seen || !space
	}
	return at
}
