package tape

import (
	"math"

	"sley/internal/engine/draw/letter"
)

// Widths across a strip in mm.
const (
	narrow = 30.0 // the least width of a strip
	broad  = 46.0 // the greatest: four beside one another on A4 and Letter
	ticks  = 4.8  // the longest graduation
	air    = 0.7  // between graduations, numbers and labels
	leader = 4.0  // for the line that leads from a mark to its label
	inch   = 25.4 // international yard and pound agreement of 1959
	keep   = 2.0  // how far from a part's end a number's middle must stay
)

// columns are what lies beside one another on a strip: graduations, numbers,
// leaders, labels, numbers, graduations; all from its left edge in mm.
type columns struct {
	width        float64
	cm, cmEnd    float64 // the numbers of the left edge
	text, end    float64 // the labels
	inch, inches float64 // the numbers of the right edge
}

// measure finds the width in which the words fit: between narrow and broad.
func measure(strips []Strip, words Words) columns {
	longest, label, head := 0.0, 0.0, 0.0
	for _, s := range strips {
		if !s.drawable() {
			continue
		}
		longest = max(longest, s.Length)
		head = max(head, letter.Width(s.Title, bold, pt)+2*air, tabWidth(s.Length, words))
		for _, m := range s.Marks {
			label = max(label, letter.Width(m.Label, face(m.Strong), pt))
		}
	}
	cm := letter.Width(number(int(longest/10)), bold, pt)
	in := letter.Width(number(int(longest/inch)), bold, pt)
	sides := 2*ticks + 6*air + cm + in + leader
	return split(min(max(sides+label, head, narrow), broad), cm, in)
}

func split(width, cm, in float64) columns {
	width = math.Ceil(width)
	c := columns{width: width, cm: ticks + air, inches: width - ticks - air}
	c.cmEnd, c.inch = c.cm+cm, c.inches-in
	c.text, c.end = c.cmEnd+leader+2*air, c.inch-2*air
	return c
}

// tabWidth is what the line of the tab takes at the strip's end, where its numbers
// are longest.
func tabWidth(length float64, words Words) float64 {
	units := letter.Width(words.Centimetres, plain, pt) + letter.Width(words.Inches, plain, pt)
	if words.Running == nil {
		return units + 4*air
	}
	return units + letter.Width(words.Running(math.Max(length-whole, 0), length), plain, pt) + 6*air
}
