package drafting

import (
	"image"
	"image/color"

	"sley/internal/engine/draw/scene"
	"sley/internal/trade/draft"
)

// MostDots is the largest picture of a cloth, in dots.
const MostDots = scene.MaxCells

// Picture is the drawdown as flat cells, wide dots across each end and high dots
// along each pick: the colour of the thread on top, or black and white as Look.Cells
// says (Both is Colours here). Of the Look it heeds Face, Upwards, Grey and Cells. It
// is false where the draft has no crossings or the picture would have no dots or more
// than MostDots. A cloth of more than 256 colours has those beyond as the nearest of
// the others.
func Picture(d *draft.Draft, look Look, wide, high int) (*image.Paletted, bool) {
	if none(d) || wide < 1 || high < 1 || wide > MostDots || high > MostDots ||
		d.Ends() > MostDots/wide || d.Picks() > MostDots/high || d.Ends()*wide > MostDots/(d.Picks()*high) {
		return nil, false
	}
	face := look.Face
	look.Alone = true
	g := newDrawing(d, look, Marks{}, Words{})
	g.look.Face = face
	return g.picture(wide, high), true
}

// dyer gives colours of threads places in a palette of at most 256.
type dyer struct {
	palette color.Palette
	places  map[scene.Ink]uint8
}

func (y *dyer) of(k scene.Ink) uint8 {
	if p, ok := y.places[k]; ok {
		return p
	}
	p := len(y.palette)
	if p < 256 {
		y.palette = append(y.palette, colourOf(k))
	} else {
		p = y.palette.Index(colourOf(k))
	}
	y.places[k] = uint8(p)
	return uint8(p)
}

// picture draws all crossings as they lie on the page.
func (g *drawing) picture(wide, high int) *image.Paletted {
	y := dyer{places: map[scene.Ink]uint8{}}
	warp, weft := make([]uint8, g.Ends()), make([]uint8, g.Picks())
	for c := range warp {
		warp[c] = y.of(g.warpInk(c))
	}
	for r := range weft {
		weft[r] = y.of(g.weftInk(r))
	}
	out := image.NewPaletted(image.Rect(0, 0, g.Ends()*wide, g.Picks()*high), y.palette)
	flip := uint64(0)
	if g.look.Face == Back {
		flip = ^uint64(0)
	}
	for r := range weft {
		row := out.Pix[r*high*out.Stride : (r*high+1)*out.Stride]
		g.crossings(row, g.weave.Row(g.pick(r)), warp, weft[r], wide, flip)
		for k := 1; k < high; k++ {
			copy(out.Pix[(r*high+k)*out.Stride:], row)
		}
	}
	return out
}

// crossings writes a row of dots: the bits of a pick, 64 ends in a word, say where
// the warp is on top of the front; flip turns them for the back.
func (g *drawing) crossings(row []uint8, bits []uint64, warp []uint8, weft uint8, wide int, flip uint64) {
	if wide == 1 && !g.endsBackwards() {
		for c, k := range warp {
			up := -uint8((bits[c/64] ^ flip) >> (c % 64) & 1)
			row[c] = k&up | weft&^up
		}
		return
	}
	for c, k := range warp {
		e := g.end(c)
		up := -uint8((bits[e/64] ^ flip) >> (e % 64) & 1)
		dots := row[c*wide : (c+1)*wide]
		for i := range dots {
			dots[i] = k&up | weft&^up
		}
	}
}

// MostShapes is how many crossings are drawn as shapes; more are a picture.
const MostShapes = 50_000

// raster is the drawdown of the whole draft as a picture in its place. It is for
// drawings of one page; a part on paper never has so many cells.
func (g *drawing) raster() scene.Picture {
	box := g.at(g.u(g.c0), g.v(g.r0), g.u(g.c1), g.v(g.r1))
	return scene.Picture{X: box.X, Y: box.Y, Width: box.Width, Height: box.Height, Cells: g.onPage()}
}

// onPage is the picture as it lies on the page, where the frame is mirrored, too.
func (g *drawing) onPage() *image.Paletted {
	p := newDrawing(g.Draft, Look{Alone: true, Face: g.look.Face, Upwards: g.look.Upwards, Grey: g.look.Grey, Cells: g.look.Cells}, Marks{}, Words{})
	return p.picture(1, 1)
}
