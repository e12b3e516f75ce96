package sheet

import (
	"strings"
	"testing"
)

const striped = `sley = 1
name = "Harbour cloth"
[[pieces]]
length = "150 cm"
width = "80 cm"
[yarns.white]
count = "16/2 Ne"
fibre = "cotton"
[yarns.blue]
wraps = "14 wraps/cm touching"
[warp]
yarn = "white"
sett = "12 ends/cm"
stripes = "(white 40, blue 9) x fill"
[weft]
yarn = "white"
[winding]
board = "usual"
together = 2
bout = 90
peg = "6 cm"
raddle = "2/cm"
`

// What the pegs hold, and the stripes that make a pass carry two yarns, stand on
// the winding sheet, the stripes below the heading of the bouts; the raddle has
// its centre.
func TestWindingSaysPegsAndUnevenStripes(t *testing.T) {
	r := reckoned(t, "harbour.toml", []byte(striped))
	all := ""
	for _, p := range mustMake(t, r, Options{Sheets: []string{"winding", "raddle"}}).Pages {
		all += says(p) + "\n"
	}
	all = strings.Join(strings.Fields(all), " ")
	for _, want := range []string{
		"usable length of a peg", "ends side by side on a peg, in one layer", "more lie in layers", "most ends in a bout by hand and peg",
		"passes that carry two yarns", "Bouts with 2 ends wound at once", "stripe 2 with 9 ends of blue", "or wind the ends that are over singly",
		"spaces left of the raddle’s centre", "spaces right of the raddle’s centre",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not in %s", want, all)
		}
	}
}

// A winding sheet of even stripes says nothing of passes that carry two yarns.
func TestWindingIsQuietOnEvenStripes(t *testing.T) {
	r := reckoned(t, "harbour.toml", []byte(strings.Replace(striped, "blue 9", "blue 10", 1)))
	for _, p := range mustMake(t, r, Options{Sheets: []string{"winding"}}).Pages {
		if strings.Contains(says(p), "two yarns") {
			t.Errorf("two yarns in a pass: %s", says(p))
		}
	}
}
