// Package letter knows the letters of the house: how wide and how high text comes
// out, where to cut and break it, what can be written at all, and the outlines of
// its glyphs. Back ends draw the same letters, without kerning and ligatures, so
// that what is reckoned here is what is printed.
//
// Sizes are points (1/72 in), lengths millimetres. Nothing here fails: characters
// the letters lack come out as near as they can be written (see Clean).
package letter

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"sley/internal/engine/draw/scene"
	"sley/third_party/fonts"
)

// Resolve is the font that is drawn for the one asked for: bold goes before
// italic, and there is no Sans Italic.
func Resolve(f scene.Font) scene.Font {
	if f.Family != scene.Serif {
		return scene.Font{Family: scene.Sans, Bold: f.Bold}
	}
	return scene.Font{Family: scene.Serif, Bold: f.Bold, Italic: f.Italic && !f.Bold}
}

// File is the TrueType file of the resolved font. It is shared: do not write to it.
func File(f scene.Font) []byte { return faceOf(f).file }

// face is one font file, read.
type face struct {
	file   []byte
	font   *sfnt.Font
	em     float64 // units in an em
	glyphs map[rune]glyph
	shapes sync.Map // of sfnt.GlyphIndex to []scene.Segment, in ems
	inks   sync.Map // of sfnt.GlyphIndex to scene.Box, in ems
}

type glyph struct {
	index   sfnt.GlyphIndex
	advance float64 // em
}

var faces = map[scene.Font]func() *face{
	{Family: scene.Sans}:                sync.OnceValue(func() *face { return read(fonts.SansRegular) }),
	{Family: scene.Sans, Bold: true}:    sync.OnceValue(func() *face { return read(fonts.SansBold) }),
	{Family: scene.Serif}:               sync.OnceValue(func() *face { return read(fonts.SerifRegular) }),
	{Family: scene.Serif, Bold: true}:   sync.OnceValue(func() *face { return read(fonts.SerifBold) }),
	{Family: scene.Serif, Italic: true}: sync.OnceValue(func() *face { return read(fonts.SerifItalic) }),
}

func faceOf(f scene.Font) *face { return faces[Resolve(f)]() }

// read takes a font file in. The files are embedded, so one that cannot be read is
// a fault of the program, which every test of this package would meet.
func read(file []byte) *face {
	f, err := sfnt.Parse(file)
	if err != nil {
		panic("letter: " + err.Error())
	}
	a := &face{file: file, font: f, em: float64(f.UnitsPerEm()), glyphs: map[rune]glyph{}}
	var buffer sfnt.Buffer
	for r := ' '; r <= highest; r++ {
		if index, err := f.GlyphIndex(&buffer, r); err == nil && index != 0 && r != softHyphen {
			a.glyphs[r] = glyph{index, a.advance(&buffer, index)}
		}
	}
	return a
}

// highest is the last character any file holds.
const highest = '\uFFFD'

// softHyphen shows only where a word is broken, and no word is broken at one here.
const softHyphen = '\u00AD'

// ppem is the size at which the font answers in its own units.
func (a *face) ppem() fixed.Int26_6 { return fixed.Int26_6(a.em) }

func (a *face) advance(buffer *sfnt.Buffer, index sfnt.GlyphIndex) float64 {
	wide, err := a.font.GlyphAdvance(buffer, index, a.ppem(), font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(wide) / a.em
}

func (a *face) has(r rune) bool {
	_, ok := a.glyphs[r]
	return ok
}

// mm is how long an em is at a size in points.
func mm(pt float64) float64 { return pt * scene.MMPerPoint }
