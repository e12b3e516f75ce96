package png

import (
	"math"

	"sley/internal/engine/draw/scene"
)

// cells draws a picture: every pixel has the mean of the cells it lies on, by how
// much of it each covers, so that a cell of whole pixels is flat and many cells in a
// pixel are mixed as the eye would.
func (d *drawer) cells(p scene.Picture, dx, dy float64, clip scene.Box) {
	box := scene.Box{X: (p.X + dx) * d.scale, Y: (p.Y + dy) * d.scale, Width: p.Width * d.scale, Height: p.Height * d.scale}
	size := d.picture.Rect
	across := shares(box.X, box.Width, p.Cells.Rect.Dx(), clip.X, clip.Right(), size.Dx())
	down := shares(box.Y, box.Height, p.Cells.Rect.Dy(), clip.Y, clip.Bottom(), size.Dy())
	m := mixer{Picture: p, across: across, sums: make([][3]float64, len(across.of))}
	for i, col := range p.Cells.Palette {
		r, g, b, _ := col.RGBA()
		m.inks[i] = [3]float64{float64(r >> 8), float64(g >> 8), float64(b >> 8)}
	}
	for i, cover := range down.of {
		at := d.picture.PixOffset(across.first, down.first+i)
		dst := d.picture.Pix[at : at+4*len(across.of)]
		if i > 0 && down.same(i) {
			copy(dst, d.picture.Pix[at-d.picture.Stride:])
			continue
		}
		m.row(dst, cover)
	}
}

// share is how much of a pixel a cell covers, along one side.
type share struct {
	cell int
	of   float64
}

// side is the shares of all pixels along a side, from the first that is covered.
type side struct {
	first int
	of    [][]share
}

// shares finds which of n cells between from and from+long, in pixels, cover each
// pixel within the clip.
func shares(from, long float64, n int, low, high float64, pixels int) side {
	low, high = max(from, low, 0), min(from+long, high, float64(pixels))
	if !(low < high) {
		return side{}
	}
	each := long / float64(n)
	s := side{first: int(math.Floor(low))}
	for px := s.first; float64(px) < high; px++ {
		a, b := max(float64(px), low), min(float64(px+1), high)
		var of []share
		for c := clampCell((a-from)/each, n); c < n; c++ {
			left, right := from+float64(c)*each, from+float64(c+1)*each
			if part := min(right, b) - max(left, a); part > 1e-9 {
				of = append(of, share{c, part})
			}
			if right >= b {
				break
			}
		}
		s.of = append(s.of, of)
	}
	return s
}

func clampCell(at float64, n int) int { return min(max(int(math.Floor(at-1e-9)), 0), n-1) }

// same says whether a pixel lies wholly on one cell, as the one before it does.
func (s side) same(i int) bool {
	a, b := s.of[i-1], s.of[i]
	return len(a) == 1 && len(b) == 1 && a[0].cell == b[0].cell && a[0].of > 1-1e-9 && b[0].of > 1-1e-9
}

// mixer makes a row of pixels of a row of cells or several.
type mixer struct {
	scene.Picture
	across side
	inks   [256][3]float64
	sums   [][3]float64
}

// row mixes the cells into dst, which keeps what the cells do not cover.
func (m *mixer) row(dst []uint8, down []share) {
	clear(m.sums)
	whole := 0.0
	for _, v := range down {
		whole += v.of
		cells := m.Cells.Pix[v.cell*m.Cells.Stride:]
		for x, of := range m.across.of {
			for _, h := range of {
				k, part := &m.inks[cells[h.cell]], v.of*h.of
				m.sums[x][0] += k[0] * part
				m.sums[x][1] += k[1] * part
				m.sums[x][2] += k[2] * part
			}
		}
	}
	for x, of := range m.across.of {
		left := 1.0
		for _, h := range of {
			left -= whole * h.of
		}
		left = max(left, 0)
		for i := range 3 {
			dst[4*x+i] = uint8(math.Round(min(m.sums[x][i]+left*float64(dst[4*x+i]), 255)))
		}
	}
}
