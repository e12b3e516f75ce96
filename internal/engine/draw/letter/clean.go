package letter

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"sley/internal/engine/draw/scene"
)

// Missing is drawn for a character that can be written in no other way: a diamond
// with a question mark in it.
const Missing = '\uFFFD'

// Clean is text as it can be drawn in a font, the same when all of it can. Accents
// are joined to their letters, and left off where the font has no such letter;
// ligatures, wide and circled forms are written out; tabs and line breaks become
// spaces; controls, marks of direction and joiners go; what is left becomes
// Missing. What comes out is valid UTF-8 below U+10000, and clean.
func Clean(text string, f scene.Font) string {
	a := faceOf(f)
	if a.clean(text) {
		return text
	}
	var out strings.Builder
	for _, r := range norm.NFC.String(strings.ToValidUTF8(text, string(Missing))) {
		a.write(&out, r)
	}
	return out.String()
}

// clean says whether a text is drawable as it stands.
func (a *face) clean(text string) bool {
	for i, r := range text {
		if !a.has(r) || r == Missing && !strings.HasPrefix(text[i:], string(Missing)) {
			return false
		}
	}
	return true
}

func (a *face) write(out *strings.Builder, r rune) {
	switch {
	case a.has(r):
		out.WriteRune(r)
	case likenesses[r] != "":
		out.WriteString(likenesses[r])
	case unicode.IsSpace(r):
		out.WriteByte(' ')
	case unicode.In(r, unicode.Cc, unicode.Cf, unicode.M):
	default:
		out.WriteString(a.decomposed(r))
	}
}

// decomposed is the nearest the font has to a character: its canonical letters
// without accents, or else the plain characters it stands for.
func (a *face) decomposed(r rune) string {
	var out strings.Builder
	for _, part := range norm.NFKD.String(string(r)) {
		switch {
		case a.has(part):
			out.WriteRune(part)
		case unicode.Is(unicode.M, part):
		default:
			return string(Missing)
		}
	}
	if out.Len() == 0 {
		return string(Missing)
	}
	return out.String()
}

// likenesses are signs that weavers may well write, for which the letters have
// nothing and Unicode names no equal.
var likenesses = map[rune]string{
	'☐': "[ ]", '☑': "[✓]", '☒': "[x]", '□': "[ ]", '■': "●", '▪': "•", '▶': "→", '◀': "←", '➔': "→", '➜': "→",
	'✅': "✓", '✔': "✓", '❌': "×", '⇒': "→", '⇐': "←", '∼': "~", '‖': "||", '∶': ":", '∕': "/", '⋅': "·", '＿': "_",
}
