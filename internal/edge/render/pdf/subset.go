package pdf

import (
	"bytes"
	"hash/fnv"
	"maps"
	"slices"
	"strings"

	"sley/internal/engine/draw/scene"
	"sley/third_party/fonts"
)

// subset is a font with the characters drawn in it, which are all that goes into
// the file. The name of such a font begins with a tag of six capitals and a plus
// (ISO 32000-1, 9.6.4), so that a program that joins files does not take two
// subsets for one font.
type subset struct {
	font  scene.Font
	drawn map[rune]bool
}

func newSubset(f scene.Font) *subset { return &subset{f, map[rune]bool{}} }

func (s *subset) draw(words string) {
	for _, r := range words {
		s.drawn[r] = true
	}
}

// name is the font's own.
func (s *subset) name() string {
	family := fonts.Sans
	if s.font.Family == scene.Serif {
		family = fonts.Serif
	}
	return strings.ReplaceAll(family, " ", "")
}

// fpdf writes the name of a font as utf8, the family in small letters, the cut, and
// knows no tag. The family is given to it with as many letters before it as make
// room for one.
const (
	fpdfBegins = "utf8"
	room       = "tag"
)

func (s *subset) family() string { return room + strings.ToLower(s.name()) }

// tag is six capitals made of the characters drawn: other characters, in all
// likelihood another tag.
func (s *subset) tag() string {
	hash := fnv.New64a()
	hash.Write([]byte(string(slices.Sorted(maps.Keys(s.drawn)))))
	var tag [6]byte
	for i, rest := 0, hash.Sum64(); i < len(tag); i, rest = i+1, rest/26 {
		tag[i] = 'A' + byte(rest%26)
	}
	return string(tag[:])
}

// tagged is the file with the names of its fonts tagged; no byte changes its place.
func (e *encoder) tagged(file []byte) []byte {
	for f, s := range e.fonts {
		was, is := fpdfBegins+s.family()+style(f), s.tag()+"+"+s.name()+style(f)
		for _, after := range []string{"\n", " ", ">"} {
			file = bytes.ReplaceAll(file, []byte("/"+was+after), []byte("/"+is+after))
		}
	}
	return file
}
