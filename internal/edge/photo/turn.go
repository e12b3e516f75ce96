package photo

import "image"

// turn sets a picture upright that was held as an orientation of Exif says (CIPA DC-008,
// 4.6.5.1): 2, 4, 5 and 7 are mirrored, 5 to 8 lie on their side.
func turn(from *image.RGBA, orientation int) *image.RGBA {
	wide, high := from.Rect.Dx(), from.Rect.Dy()
	source := map[int]func(x, y int) (int, int){
		2: func(x, y int) (int, int) { return wide - 1 - x, y },
		3: func(x, y int) (int, int) { return wide - 1 - x, high - 1 - y },
		4: func(x, y int) (int, int) { return x, high - 1 - y },
		5: func(x, y int) (int, int) { return y, x },
		6: func(x, y int) (int, int) { return y, high - 1 - x },
		7: func(x, y int) (int, int) { return wide - 1 - y, high - 1 - x },
		8: func(x, y int) (int, int) { return wide - 1 - y, x },
	}[orientation]
	if source == nil {
		return from
	}
	size := image.Rect(0, 0, wide, high)
	if orientation >= 5 {
		size = image.Rect(0, 0, high, wide)
	}
	to := image.NewRGBA(size)
	for y := range size.Dy() {
		for x := range size.Dx() {
			sx, sy := source(x, y)
			copy(to.Pix[to.PixOffset(x, y):][:4], from.Pix[from.PixOffset(sx, sy):][:4])
		}
	}
	return to
}
