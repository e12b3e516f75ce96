package drafting

import (
	"image"
	"image/color"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// The shades of a thread that lies on top, in hundredths of its colour: the middle of an
// end, of a pick a little deeper in the cloth, and both where they go under at their edges.
var shades = []uint32{100, 93, 80, 72}

const (
	endMiddle = iota
	pickMiddle
	endEdge
	pickEdge
)

// Cloth is the drawdown as a cloth to be looked at: each crossing dots wide and high, in
// the colour of the thread on top, its edges shaded so that threads of one colour are told
// apart. The first pick is at the bottom, as it lies before the weaver. A draft without a
// palette has a dark warp and a light weft, as handbooks print them. It is false where the
// draft has no crossings, or the picture would have no dots or more than MostDots.
func Cloth(d *draft.Draft, dots int) (*image.Paletted, bool) {
	if none(d) || dots < 1 || dots > MostDots || d.Ends()*d.Picks() > MostDots/dots/dots {
		return nil, false
	}
	c := cloth{Draft: d, weave: d.Drawdown(), dots: dots, places: map[draft.Colour]uint8{}}
	out := image.NewPaletted(image.Rect(0, 0, d.Ends()*dots, d.Picks()*dots), nil)
	for pick := range d.Picks() {
		for y := range dots {
			row := out.Pix[((d.Picks()-1-pick)*dots+y)*out.Stride:]
			for end := range d.Ends() {
				c.crossing(row[end*dots:(end+1)*dots], pick, end, y)
			}
		}
	}
	out.Palette = c.palette
	return out, true
}

type cloth struct {
	*draft.Draft
	weave   *weave.Weave
	dots    int
	palette color.Palette
	places  map[draft.Colour]uint8
}

// crossing writes the dots of a crossing in one row of them.
func (c *cloth) crossing(row []uint8, pick, end, y int) {
	edge := func(at int) bool { return c.dots > 2 && (at == 0 || at == c.dots-1) }
	if !c.weave.WarpUp(pick, end) {
		shade := pickMiddle
		if edge(y) {
			shade = pickEdge
		}
		place := c.place(c.colour(&c.Weft, pick, draft.Colour{R: 0xef, G: 0xe7, B: 0xd6}), shade)
		for x := range row {
			row[x] = place
		}
		return
	}
	first := c.place(c.colour(&c.Warp, end, draft.Colour{R: 0x5b, G: 0x53, B: 0x47}), endMiddle)
	for x := range row {
		row[x] = first
		if edge(x) {
			row[x] = first + endEdge
		}
	}
}

func (c *cloth) colour(t *draft.Threads, i int, otherwise draft.Colour) draft.Colour {
	if at := t.ColourOf(i); at >= 0 && at < len(c.Palette) {
		return c.Palette[at]
	}
	return otherwise
}

// mostDyed is how many colours a picture has, each in all its shades.
const mostDyed = 64

// place gives a colour in a shade its place in the palette; of very many colours those
// beyond are as the last.
func (c *cloth) place(of draft.Colour, shade int) uint8 {
	at, ok := c.places[of]
	if !ok {
		if len(c.palette) < mostDyed*len(shades) {
			for _, s := range shades {
				c.palette = append(c.palette, color.RGBA{shaded(of.R, s), shaded(of.G, s), shaded(of.B, s), 0xff})
			}
		}
		at = uint8(len(c.palette) - len(shades))
		c.places[of] = at
	}
	return at + uint8(shade)
}

func shaded(part uint8, share uint32) uint8 { return uint8(uint32(part) * share / 100) }
