// Package png draws a page of a scene as a picture, antialiased, at any number of
// dots per inch; the same scene gives the same pixels.
package png

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/vector"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
)

// MaxPixels is the largest picture drawn: an A4 page at 600 dots per inch has 35
// million.
const MaxPixels = 50_000_000

// Encode writes the page as PNG on white ground, in greys alone when the scene has
// no other ink, and says in it how many dots make an inch, so that it prints at its
// size. The error is that the page cannot be drawn, that it would have no
// pixels or more than MaxPixels, or that w cannot be written to.
func Encode(w io.Writer, page scene.Page, dpi float64) error {
	picture, err := Draw(page, dpi)
	if err != nil {
		return err
	}
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&sizer{to: w, dpi: dpi}, lean(picture)); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return nil
}

// EncodeCells writes cells as a PNG of a dot for each, which says that so many dots
// make an inch. The error is that there are no cells or more than MaxPixels, or that w
// cannot be written to.
func EncodeCells(w io.Writer, cells *image.Paletted, dpi float64) error {
	if cells.Rect.Empty() || cells.Rect.Dx() > MaxPixels/cells.Rect.Dy() {
		return fmt.Errorf("png: %d by %d cells are no picture of 1 to %d pixels", cells.Rect.Dx(), cells.Rect.Dy(), MaxPixels)
	}
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&sizer{to: w, dpi: dpi}, cells); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return nil
}

// Draw is the page as an image on white ground; see Encode.
func Draw(page scene.Page, dpi float64) (*image.RGBA, error) {
	if err := page.Validate(); err != nil {
		return nil, fmt.Errorf("png: %w", err)
	}
	scale := dpi / 25.4
	wide, high := math.Round(page.Width*scale), math.Round(page.Height*scale)
	if !(wide >= 1 && high >= 1 && wide*high <= MaxPixels) {
		return nil, fmt.Errorf("png: %v by %v mm at %v dots per inch is no picture of 1 to %d pixels",
			page.Width, page.Height, dpi, MaxPixels)
	}
	picture := image.NewRGBA(image.Rect(0, 0, int(wide), int(high)))
	draw.Draw(picture, picture.Bounds(), image.White, image.Point{}, draw.Src)
	d := drawer{picture: picture, scale: scale}
	d.items(page.Items, 0, 0, scene.Box{Width: wide, Height: high})
	return picture, nil
}

// lean is the picture as greys when it has no other colour: a quarter of the work
// and of the bytes.
func lean(picture *image.RGBA) image.Image {
	grey := image.NewGray(picture.Rect)
	for i := range grey.Pix {
		p := picture.Pix[4*i : 4*i+3 : 4*i+3]
		if p[0] != p[1] || p[1] != p[2] {
			return picture
		}
		grey.Pix[i] = p[0]
	}
	return grey
}

// drawer turns every item into polygons in pixels and fills them.
type drawer struct {
	picture *image.RGBA
	scale   float64 // pixels per mm
	raster  vector.Rasterizer
}

// items draws shifted by dx, dy mm and within clip, in pixels.
func (d *drawer) items(items []scene.Item, dx, dy float64, clip scene.Box) {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			d.text(it, dx, dy, clip)
		case scene.Picture:
			d.cells(it, dx, dy, clip)
		case scene.Group:
			d.group(it, dx+it.X, dy+it.Y, clip)
		default:
			path, _ := scene.Outline(it) // validated: every other item has one
			d.path(path, dx, dy, clip)
		}
	}
}

func (d *drawer) group(g scene.Group, dx, dy float64, clip scene.Box) {
	if !g.Clip.IsZero() {
		b := g.Clip.Shift(dx, dy)
		clip = clip.Intersect(scene.Box{X: b.X * d.scale, Y: b.Y * d.scale, Width: b.Width * d.scale, Height: b.Height * d.scale})
	}
	d.items(g.Items, dx, dy, clip)
}

func (d *drawer) path(p scene.Path, dx, dy float64, clip scene.Box) {
	parts := flatten(p.Segments, func(q scene.Point) scene.Point {
		return scene.Point{X: (q.X + dx) * d.scale, Y: (q.Y + dy) * d.scale}
	})
	if !p.Fill.IsNone() {
		d.fill(contours(parts), p.Fill, clip)
	}
	if p.Pen.Draws() {
		d.fill(stroke(parts, p.Pen, d.scale), p.Pen.Ink.OrBlack(), clip)
	}
}

func (d *drawer) text(t scene.Text, dx, dy float64, clip scene.Box) {
	x, y := letter.Origin(t)
	anchor := scene.Point{X: t.X, Y: t.Y}
	parts := flatten(letter.Outline(t.Text, t.Font, t.Size), func(q scene.Point) scene.Point {
		on := scene.Point{X: q.X + x, Y: q.Y + y}.Turn(anchor, t.Angle)
		return scene.Point{X: (on.X + dx) * d.scale, Y: (on.Y + dy) * d.scale}
	})
	d.fill(contours(parts), t.Ink.OrBlack(), clip)
}

// fill covers the union of the polygons, cut to clip, by the non-zero rule.
func (d *drawer) fill(polygons [][]scene.Point, ink scene.Ink, clip scene.Box) {
	var cut [][]scene.Point
	var all []scene.Point
	for _, polygon := range polygons {
		if inside := within(polygon, clip); len(inside) >= 3 {
			cut, all = append(cut, inside), append(all, inside...)
		}
	}
	box := scene.Around(all)
	frame := image.Rect(int(math.Floor(box.X)), int(math.Floor(box.Y)), int(math.Ceil(box.Right())), int(math.Ceil(box.Bottom())))
	frame = frame.Intersect(d.picture.Rect)
	if frame.Empty() {
		return
	}
	d.raster.Reset(frame.Dx(), frame.Dy())
	for _, polygon := range cut {
		d.trace(polygon, frame.Min)
	}
	d.raster.Draw(d.picture, frame, image.NewUniform(color.RGBA{ink.R, ink.G, ink.B, 0xFF}), image.Point{})
}

func (d *drawer) trace(polygon []scene.Point, corner image.Point) {
	x, y := float64(corner.X), float64(corner.Y)
	for i, p := range polygon {
		if i == 0 {
			d.raster.MoveTo(float32(p.X-x), float32(p.Y-y))
		} else {
			d.raster.LineTo(float32(p.X-x), float32(p.Y-y))
		}
	}
	d.raster.ClosePath()
}
