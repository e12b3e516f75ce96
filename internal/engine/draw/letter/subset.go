package letter

import (
	"encoding/binary"
	"maps"
	"slices"

	"sley/internal/engine/draw/scene"
)

// Subset is a TrueType file that holds of a font the characters of a text alone,
// after Clean: for a picture that has to carry its letters with it. The name and
// the licence inside stay. The same characters give the same bytes.
func Subset(f scene.Font, text string) []byte {
	a := faceOf(f)
	c := cutter{from: tablesOf(a.file), place: map[int]int{}}
	c.add(0) // what is drawn for a character that a font lacks: every font has it
	chars := map[rune]bool{}
	for _, r := range Clean(text, f) {
		chars[r] = true
	}
	sorted := slices.Sorted(maps.Keys(chars))
	places := make([]int, len(sorted))
	for i, r := range sorted {
		places[i] = c.add(int(a.glyphs[r].index))
	}
	return c.cut(characters(sorted, places)).file()
}

// cutter gives the glyphs it keeps new places, in the order they are met.
type cutter struct {
	from  tables
	order []int       // the old places
	place map[int]int // the new places by the old
}

func (c *cutter) add(old int) int {
	if at, known := c.place[old]; known {
		return at
	}
	at := len(c.order)
	c.order, c.place[old] = append(c.order, old), at
	return at
}

// cut is the parts of the new font, of those that a TrueType font must have. Parts
// of glyphs are met, and kept, on the way.
func (c *cutter) cut(cmap []byte) tables {
	var glyf, loca, hmtx []byte
	for i := 0; i < len(c.order); i++ {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		glyf = padded(append(glyf, c.glyph(c.order[i])...))
		hmtx = append(hmtx, c.metric(c.order[i])...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	n := len(c.order)
	return tables{
		"cmap": cmap, "glyf": glyf, "loca": loca, "hmtx": hmtx,
		"head": changed(c.from["head"], map[int]int{8: 0, 10: 0, 50: 1}), // the sum, and the long form of loca
		"hhea": changed(c.from["hhea"], map[int]int{34: n}),
		"maxp": changed(c.from["maxp"], map[int]int{4: n}),
		"post": changed(c.from["post"][:32], map[int]int{0: 3, 2: 0}), // version 3: glyphs without names
		"name": c.from["name"], "OS/2": c.from["OS/2"],
	}
}

// The flags of a part of a glyph (ISO/IEC 14496-22, section 5.3.3).
const (
	argsAreWords  = 0x0001
	hasScale      = 0x0008
	moreParts     = 0x0020
	hasTwoScales  = 0x0040
	hasFourScales = 0x0080
)

// glyph is the outline of a glyph; where it is made of others they are kept, too.
func (c *cutter) glyph(old int) []byte {
	from, to := c.reach(old)
	shape := slices.Clone(c.from["glyf"][from:to])
	if len(shape) == 0 || int16(word(shape, 0)) >= 0 {
		return shape
	}
	for at, flags := 10, uint16(moreParts); flags&moreParts != 0; at += partSize(flags) {
		flags = word(shape, at)
		binary.BigEndian.PutUint16(shape[at+2:], uint16(c.add(int(word(shape, at+2)))))
	}
	return shape
}

// reach is where a glyph lies: loca has words of half the place, or whole longs.
func (c *cutter) reach(old int) (from, to int) {
	loca := c.from["loca"]
	if word(c.from["head"], 50) == 0 {
		return 2 * int(word(loca, 2*old)), 2 * int(word(loca, 2*old+2))
	}
	return int(long(loca, 4*old)), int(long(loca, 4*old+4))
}

// partSize is how many bytes a part takes.
func partSize(flags uint16) int {
	size := 6
	if flags&argsAreWords != 0 {
		size += 2
	}
	switch {
	case flags&hasScale != 0:
		size += 2
	case flags&hasTwoScales != 0:
		size += 4
	case flags&hasFourScales != 0:
		size += 8
	}
	return size
}

// metric is how far a glyph advances and where its ink begins; glyphs beyond the
// last full entry share its advance.
func (c *cutter) metric(old int) []byte {
	hmtx, full := c.from["hmtx"], int(word(c.from["hhea"], 34))
	if old < full {
		return hmtx[4*old : 4*old+4]
	}
	begins := 4*full + 2*(old-full)
	return append(slices.Clone(hmtx[4*full-4:4*full-2]), hmtx[begins:begins+2]...)
}

// characters is the table from characters to glyphs: one subtable for Windows and
// Unicode below U+10000, in format 4 with a segment for each character (ISO/IEC
// 14496-22, section 5.2.1).
func characters(chars []rune, places []int) []byte {
	n := len(chars) + 1 // the last segment is U+FFFF, as the format wants
	var ends, deltas []int
	for i, r := range chars {
		ends, deltas = append(ends, int(r)), append(deltas, places[i]-int(r))
	}
	ends, deltas = append(ends, 0xFFFF), append(deltas, 1)
	help := searching(n, 2)
	segments := append([]int{4, 16 + 8*n, 0, 2 * n}, help[1:]...)
	segments = append(append(segments, ends...), 0)
	segments = append(append(segments, ends...), deltas...) // each begins where it ends
	segments = append(segments, make([]int, n)...)
	return append(words(0, 1, 3, 1, 0, 12), words(segments...)...)
}
