package scene

// ScaleBar shows at what scale a page came out of the printer: a bar of 100 mm in
// centimetres above one of 4 in in half inches, both beginning at x, each with its
// label to the right in the given manner. y is the line they share. It reaches
// ScaleBarHalf above and below y and is 102 mm wide without the labels, which the
// caller words.
//
// A weaver lays a ruler on it: when the bar is short, so is the page.
func ScaleBar(x, y float64, metric, imperial string, manner Text) Group {
	upper, lower := manner, manner
	capital := manner.Size * MMPerPoint * 0.7 // height of one, near enough to centre it
	upper.X, upper.Y, upper.Text = x+4*inch+3, y-(ScaleBarHalf-capital)/2, metric
	lower.X, lower.Y, lower.Text = x+4*inch+3, y+(ScaleBarHalf+capital)/2, imperial
	upper.Anchor, lower.Anchor = Start, Start
	items := append(blocks(x, y-ScaleBarHalf, 10, 10), blocks(x, y, inch/2, 8)...)
	return Group{Items: append(items, upper, lower)}
}

// ScaleBarMM is the length of the upper bar and ScaleBarHalf the height of each, in
// mm; an inch is 25.4 mm (international yard and pound agreement of 1959).
const (
	ScaleBarMM   = 100.0
	ScaleBarHalf = 3.6
	inch         = 25.4
)

// blocks are count blocks in a row, black and white in turn.
func blocks(x, y, wide float64, count int) []Item {
	frame := Solid(0.2)
	items := []Item{Rect{X: x, Y: y, Width: wide * float64(count), Height: ScaleBarHalf, Pen: frame, Fill: White}}
	for i := 0; i < count; i += 2 {
		items = append(items, Rect{X: x + wide*float64(i), Y: y, Width: wide, Height: ScaleBarHalf, Fill: Black})
	}
	return items
}
