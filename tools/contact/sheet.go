package main

import (
	"fmt"
	"image"
	"image/color"
	stddraw "image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"

	"golang.org/x/image/draw"
)

// Sizes on a sheet, in pixels. What is longer than tall is cut off below: the picture
// itself has all of it.
const (
	across = 2240 // a sheet, at the most
	tall   = 720  // a picture, at the most
	label  = 34   // the line above a picture
	gap    = 16
	rows   = 6 // on one sheet
)

var ground = color.Gray{Y: 0xb4} // neither of a light page nor of a dark one

// thumb is how wide a picture of a window is on a sheet: narrow ones lose less.
func thumb(window int) int { return 200 + window*23/100 }

// laySheets lays pictures of one width on as many sheets as they need, and says so.
func laySheets(folder string, shots []shot) error {
	wide := thumb(shots[0].width)
	inRow := max(2, (across-gap)/(wide+gap)/2*2) // light and dark stay together
	n := 0
	for lot := range slices.Chunk(shots, inRow*rows) {
		n++
		sheet, err := drawSheet(lot, wide, inRow)
		if err != nil {
			return err
		}
		file := filepath.Join(folder, fmt.Sprintf("sheet-%d-%d.png", shots[0].width, n))
		if err := writePicture(file, sheet); err != nil {
			return err
		}
		fmt.Printf("%s: %d pictures\n", file, len(lot))
	}
	return nil
}

// drawSheet draws one sheet, row by row; a row is as high as its highest picture.
func drawSheet(shots []shot, wide, inRow int) (image.Image, error) {
	var drawn []image.Image
	high := gap
	for row := range slices.Chunk(shots, inRow) {
		one, err := drawRow(row, wide)
		if err != nil {
			return nil, err
		}
		drawn = append(drawn, one)
		high += one.Bounds().Dy()
	}
	sheet := blank(gap+inRow*(wide+gap), high)
	y := gap
	for _, row := range drawn {
		stddraw.Draw(sheet, row.Bounds().Add(image.Pt(gap, y)), row, image.Point{}, stddraw.Src)
		y += row.Bounds().Dy()
	}
	return sheet, nil
}

// drawRow draws pictures beside one another, each under its name.
func drawRow(shots []shot, wide int) (image.Image, error) {
	var small []image.Image
	high := 0
	for _, s := range shots {
		picture, err := readPicture(s.file)
		if err != nil {
			return nil, err
		}
		small = append(small, shrunk(picture, wide))
		high = max(high, small[len(small)-1].Bounds().Dy())
	}
	row := blank(len(shots)*(wide+gap), label+high+gap)
	for i, picture := range small {
		at := image.Pt(i*(wide+gap), label)
		stddraw.Draw(row, picture.Bounds().Add(at), picture, image.Point{}, stddraw.Src)
		if err := write(row, shots[i].page+", "+shots[i].theme, at.X, label-10, wide); err != nil {
			return nil, err
		}
	}
	return row, nil
}

// shrunk is the upper part of a picture, so wide and no higher than tall.
func shrunk(picture image.Image, wide int) image.Image {
	from := picture.Bounds()
	high := max(1, from.Dy()*wide/from.Dx())
	if high > tall {
		from.Max.Y = from.Min.Y + max(1, from.Dy()*tall/high)
		high = tall
	}
	small := image.NewRGBA(image.Rect(0, 0, wide, high))
	draw.CatmullRom.Scale(small, small.Rect, picture, from, draw.Src, nil)
	return small
}

func blank(wide, high int) *image.RGBA {
	sheet := image.NewRGBA(image.Rect(0, 0, wide, high))
	stddraw.Draw(sheet, sheet.Rect, image.NewUniform(ground), image.Point{}, stddraw.Src)
	return sheet
}

func readPicture(file string) (image.Image, error) {
	in, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	picture, err := png.Decode(in)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return picture, nil
}

func writePicture(file string, picture image.Image) error {
	out, err := os.Create(file)
	if err != nil {
		return err
	}
	if err := png.Encode(out, picture); err != nil {
		out.Close()
		return fmt.Errorf("%s: %w", file, err)
	}
	return out.Close()
}
