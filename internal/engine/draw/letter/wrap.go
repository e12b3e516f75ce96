package letter

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"sley/internal/engine/draw/scene"
)

// Ellipsis ends a text that Fit has cut.
const Ellipsis = "…"

// Fit is the text, cut after as many characters as leave room for an ellipsis
// when it is wider than width mm. It is empty when not even the ellipsis fits.
func Fit(text string, f scene.Font, pt, width float64) string {
	a := faceOf(f)
	text = Clean(text, f)
	room := width / mm(pt)
	if a.width(text) <= room {
		return text
	}
	room -= a.width(Ellipsis)
	if !(room >= 0) {
		return ""
	}
	return strings.TrimRight(text[:a.reach(text, room)], " ") + Ellipsis
}

// reach is how many bytes of a clean text fit into room ems.
func (a *face) reach(text string, room float64) int {
	for i, r := range text {
		room -= a.glyphs[r].advance
		if room < 0 {
			return i
		}
	}
	return len(text)
}

// Wrap breaks text into lines no wider than width mm: at line breaks, at spaces
// and after hyphens between letters, and inside a word only when the word alone is
// wider. It never breaks at thin or no-break spaces, so that numbers stay whole.
// Runs of spaces become one. Where not even one character fits, each stands on a
// line of its own. Text without ink has no lines, but an empty line between others
// stays.
func Wrap(text string, f scene.Font, pt, width float64) []string {
	w := wrapper{face: faceOf(f), room: width / mm(pt)}
	for paragraph := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		for _, word := range strings.FieldsFunc(Clean(paragraph, f), isSpace) {
			w.word(word)
		}
		w.end()
	}
	if len(w.lines) == 1 && w.lines[0] == "" {
		return nil
	}
	return w.lines
}

// isSpace knows the ordinary space alone: the others hold things together.
func isSpace(r rune) bool { return r == ' ' }

// wrapper fills lines, all measures in ems.
type wrapper struct {
	face  *face
	room  float64
	lines []string
	line  strings.Builder // the one being filled
	used  float64
}

func (w *wrapper) word(word string) {
	for i, part := range hyphenated(word) {
		glue := ""
		if i == 0 && w.line.Len() > 0 {
			glue = " "
		}
		w.put(glue, part)
	}
}

// put adds a part to the line or begins a new one with it.
func (w *wrapper) put(glue, part string) {
	if wide := w.face.width(glue + part); w.used+wide <= w.room {
		w.line.WriteString(glue + part)
		w.used += wide
		return
	}
	if w.line.Len() > 0 {
		w.end()
	}
	for w.face.width(part) > w.room && len(part) > first(part) {
		n := max(w.face.reach(part, w.room), first(part))
		w.lines = append(w.lines, part[:n])
		part = part[n:]
	}
	w.line.WriteString(part)
	w.used = w.face.width(part)
}

// end begins a new line.
func (w *wrapper) end() {
	w.lines = append(w.lines, w.line.String())
	w.line.Reset()
	w.used = 0
}

// first is how many bytes the first character has.
func first(text string) int {
	_, n := utf8.DecodeRuneInString(text)
	return n
}

// hyphenated takes a word apart after each hyphen that stands between letters.
func hyphenated(word string) []string {
	var parts []string
	runes, from := []rune(word), 0
	for i := 1; i+1 < len(runes); i++ {
		if runes[i] == '-' && unicode.IsLetter(runes[i-1]) && unicode.IsLetter(runes[i+1]) {
			parts = append(parts, string(runes[from:i+1]))
			from = i + 1
		}
	}
	return append(parts, string(runes[from:]))
}
