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

// from gives the clip from its byte at on.
func (c clip) from(at int) clip { return clip{c.text[at:], c.at + at} }

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
	return c.text[:end], c.from(end).trim()
}

// cutArrow cuts the arrow, or the word to, from the front of a text.
func cutArrow(c clip) (rest clip, ok bool) {
	c = c.trim()
	for _, arrow := range []string{"->", "→"} {
		if strings.HasPrefix(c.text, arrow) {
			return c.from(len(arrow)).trim(), true
		}
	}
	word, rest := firstWord(c)
	return rest, strings.EqualFold(word, "to")
}

// cutPlus cuts a text at every +.
func cutPlus(c clip) []clip {
	var out []clip
	for {
		at := strings.IndexByte(c.text, '+')
		if at < 0 {
			return append(out, c.trim())
		}
		out = append(out, clip{c.text[:at], c.at}.trim())
		c = c.from(at + 1)
	}
}

// cutThen cuts a text at every word then, with the comma before it.
func cutThen(c clip) []clip {
	var out []clip
	for rest := c; ; {
		word, after := firstWord(rest)
		if word == "" {
			return append(out, c.trim())
		}
		if strings.EqualFold(word, "then") {
			before := clip{c.text[:rest.trim().at-c.at], c.at}.trim()
			before.text = strings.TrimRightFunc(strings.TrimSuffix(before.text, ","), unicode.IsSpace)
			out = append(out, before)
			c = after
		}
		rest = after
	}
}
