package scene

import (
	"fmt"
	"hash/crc32"
	"image"
)

// Picture is flat cells of colour that fill a rectangle with its top left corner at
// X, Y: for drawings of so many cells that a shape for each would be a burden. Every
// cell is as large as the next and its edges stay sharp; back ends never smooth. It
// is shared, not copied: whoever makes it does not change it afterwards.
type Picture struct {
	X, Y, Width, Height float64 // mm
	Cells               *image.Paletted
}

func (Picture) item() {}

// MaxCells is how many cells a picture may have.
const MaxCells = 50_000_000

func (p Picture) validate() error {
	if err := within(p.X, p.Y, p.Width, p.Height); err != nil {
		return err
	}
	if !(p.Width > 0 && p.Height > 0) {
		return fmt.Errorf("a picture of %v by %v mm", p.Width, p.Height)
	}
	if p.Cells == nil || p.Cells.Rect.Empty() || p.Cells.Rect.Dx()*p.Cells.Rect.Dy() > MaxCells {
		return fmt.Errorf("a picture of no cells, or of more than %d", MaxCells)
	}
	return p.inked()
}

// inked says whether every cell has an ink of its palette, and every ink covers.
func (p Picture) inked() error {
	for _, c := range p.Cells.Palette {
		if _, _, _, a := c.RGBA(); a != 0xFFFF {
			return fmt.Errorf("a picture that can be seen through")
		}
	}
	for y := range p.Cells.Rect.Dy() {
		for _, k := range p.row(y) {
			if int(k) >= len(p.Cells.Palette) {
				return fmt.Errorf("a picture with a cell of ink %d of %d", k, len(p.Cells.Palette))
			}
		}
	}
	return nil
}

// row is a row of cells from the top, as places in the palette.
func (p Picture) row(y int) []uint8 {
	from := y * p.Cells.Stride
	return p.Cells.Pix[from : from+p.Cells.Rect.Dx()]
}

// Mark is a number that pictures of other cells or other inks hardly share
// (CRC-32, ISO/IEC 15948, annex D), for dumps and for names within files.
func (p Picture) Mark() uint32 {
	sum := crc32.NewIEEE()
	fmt.Fprintln(sum, p.Cells.Rect.Dx(), p.Cells.Rect.Dy())
	for _, c := range p.Cells.Palette {
		r, g, b, _ := c.RGBA()
		sum.Write([]byte{byte(r >> 8), byte(g >> 8), byte(b >> 8)})
	}
	for y := range p.Cells.Rect.Dy() {
		sum.Write(p.row(y))
	}
	return sum.Sum32()
}

// IsGrey says whether all inks of the picture are greys.
func (p Picture) IsGrey() bool {
	for _, c := range p.Cells.Palette {
		if r, g, b, _ := c.RGBA(); r != g || g != b {
			return false
		}
	}
	return true
}
