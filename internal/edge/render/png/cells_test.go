package png

import (
	"bytes"
	"image"
	"image/color"
	stdpng "image/png"
	"math"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/draw/scene"
)

var dyes = color.Palette{color.RGBA{37, 64, 124, 255}, color.RGBA{255, 255, 255, 255}, color.RGBA{0, 0, 0, 255}}

// slowCells is the mean of every pixel, asked of every cell, on grey ground.
func slowCells(p scene.Picture, clip scene.Box, x, y int) [3]float64 {
	sum, left := [3]float64{}, 1.0
	pixel := scene.Box{X: float64(x), Y: float64(y), Width: 1, Height: 1}.Intersect(clip)
	w, h := p.Width/float64(p.Cells.Rect.Dx()), p.Height/float64(p.Cells.Rect.Dy())
	for j := range p.Cells.Rect.Dy() {
		for i := range p.Cells.Rect.Dx() {
			common := pixel.Intersect(scene.Box{X: p.X + float64(i)*w, Y: p.Y + float64(j)*h, Width: w, Height: h})
			part := common.Width * common.Height
			c := p.Cells.At(i, j).(color.RGBA)
			for k, v := range []uint8{c.R, c.G, c.B} {
				sum[k] += part * float64(v)
			}
			left -= part
		}
	}
	for k := range sum {
		sum[k] += left * ground
	}
	return sum
}

const ground = 200

// A picture is its slow twin to one step of 255, at any place, size and clip.
func TestCellsAreTheirSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place, size := rapid.Float64Range(-5, 15), rapid.Float64Range(0.5, 40)
		w, h := rapid.IntRange(1, 20).Draw(t, "cells"), rapid.IntRange(1, 20).Draw(t, "rows")
		cells := image.NewPaletted(image.Rect(0, 0, w, h), dyes)
		cells.Pix = rapid.SliceOfN(rapid.Uint8Range(0, 2), w*h, w*h).Draw(t, "inks")
		p := scene.Picture{X: place.Draw(t, "x"), Y: place.Draw(t, "y"), Width: size.Draw(t, "width"), Height: size.Draw(t, "height"), Cells: cells}
		if rapid.Bool().Draw(t, "whole") {
			p.X, p.Y, p.Width, p.Height = math.Round(p.X), math.Round(p.Y), float64(2*w), float64(3*h)
		}
		clip := scene.Box{Width: 24, Height: 20}
		if rapid.Bool().Draw(t, "clipped") {
			clip = scene.Box{X: 3.3, Y: 2.5, Width: 9, Height: 7.25}
		}
		d := drawer{picture: image.NewRGBA(image.Rect(0, 0, 24, 20)), scale: 1}
		for i := range d.picture.Pix {
			d.picture.Pix[i] = ground
		}
		d.items([]scene.Item{p}, 0, 0, clip)
		for y := range 20 {
			for x := range 24 {
				got, want := d.picture.RGBAAt(x, y), slowCells(p, clip, x, y)
				for k, v := range []uint8{got.R, got.G, got.B} {
					if math.Abs(float64(v)-want[k]) > 1 {
						t.Fatalf("pixel %d, %d is %v, want %v", x, y, got, want)
					}
				}
			}
		}
	})
}

// Cells as a file of their own have their inks, and say their size.
func TestEncodeCells(t *testing.T) {
	cells := image.NewPaletted(image.Rect(0, 0, 3, 2), dyes)
	cells.Pix = []uint8{0, 1, 2, 2, 1, 0}
	var out bytes.Buffer
	if err := EncodeCells(&out, cells, 254); err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out.Bytes(), []byte("pHYs\x00\x00\x27\x10\x00\x00\x27\x10\x01")) { // 10,000 dots in a metre
		t.Error("the file does not say how large its dots are")
	}
	got, err := stdpng.Decode(&out)
	if err != nil {
		t.Fatal(err)
	}
	for i, k := range cells.Pix {
		if got.At(i%3, i/3) != dyes[k] {
			t.Errorf("dot %d is %v, want %v", i, got.At(i%3, i/3), dyes[k])
		}
	}
	if EncodeCells(&out, image.NewPaletted(image.Rectangle{}, dyes), 100) == nil {
		t.Error("no cells are a picture")
	}
}
