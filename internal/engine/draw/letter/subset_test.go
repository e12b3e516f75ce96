package letter_test

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// shapeIn reads a character's outline and advance from a font file, as another
// reader than the one that cut it does.
func shapeIn(t *rapid.T, file []byte, r rune) (sfnt.Segments, fixed.Int26_6, bool) {
	f, err := sfnt.Parse(file)
	if err != nil {
		t.Fatal(err)
	}
	index, err := f.GlyphIndex(nil, r)
	if err != nil {
		t.Fatal(err)
	}
	ppem := fixed.Int26_6(f.UnitsPerEm())
	shape, err := f.LoadGlyph(nil, index, ppem, nil)
	if err != nil {
		t.Fatalf("%q: %v", r, err)
	}
	advance, err := f.GlyphAdvance(nil, index, ppem, font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return slices.Clone(shape), advance, index != 0
}

// A subset has the letters of its text as the whole font has them, accented ones
// made of two among them, and none else.
func TestSubsetHasTheLettersOfItsText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(every).Draw(t, "font")
		text := rapid.StringOfN(rapid.SampledFrom([]rune("aä ǘőΩ½→✓fi1²⁄₃Жй\ufffd織🧶")), 0, 20, -1).Draw(t, "text")
		part := letter.Subset(f, text)
		drawn := letter.Clean(text, f)
		for _, r := range drawn {
			want, wide, _ := shapeIn(t, letter.File(f), r)
			got, narrow, there := shapeIn(t, part, r)
			if !there || narrow != wide || !slices.Equal(got, want) {
				t.Fatalf("%q of %q has another shape", r, text)
			}
		}
		if _, _, there := shapeIn(t, part, 'Q'); there {
			t.Fatal("there is a Q")
		}
	})
}

func TestSubsetIsSmallAndTheSameTwice(t *testing.T) {
	for _, f := range every {
		a, b := letter.Subset(f, "Galley towels 12³⁄₄"), letter.Subset(f, "₄⁄³21 towelsGalley")
		if !bytes.Equal(a, b) {
			t.Errorf("%s: the same characters give other bytes", f)
		}
		if len(a)*8 > len(letter.File(f)) {
			t.Errorf("%s: %d bytes of %d", f, len(a), len(letter.File(f)))
		}
	}
}

// The sums of a font file: of each part, and of the whole (ISO/IEC 14496-22,
// sections 4.5.1 and 5.2.2), added up here byte by byte.
func TestSubsetAddsUp(t *testing.T) {
	for _, f := range every {
		file := letter.Subset(f, "sley ǘ")
		if got := added(file); got != 0xB1B0AFBA {
			t.Errorf("%s: the file comes to %#x", f, got)
		}
		for i := range int(binary.BigEndian.Uint16(file[4:])) {
			entry := file[12+16*i:]
			from, size := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
			part := bytes.Clone(file[from : from+size])
			if string(entry[:4]) == "head" {
				copy(part[8:12], make([]byte, 4))
			}
			if from%4 != 0 || added(part) != binary.BigEndian.Uint32(entry[4:]) {
				t.Errorf("%s: part %s has another sum", f, entry[:4])
			}
		}
	}
}

func added(b []byte) uint32 {
	total := uint32(0)
	for i, v := range b {
		total += uint32(v) << (24 - 8*(i%4))
	}
	return total
}

func BenchmarkSubset(b *testing.B) {
	for b.Loop() {
		letter.Subset(scene.Font{}, "The quick brown fox jumps over the lazy dog 0123456789")
	}
}
