package photo

import (
	"image"
	"image/draw"
	"math"
	"sync"
)

// shrink draws a picture on white with at most so many dots on its longer side, and says
// whether it made it smaller. Each dot is the mean of the light of those that it stands for,
// by the share that lies in it.
func shrink(from image.Image, longest int) (*image.RGBA, bool) {
	b := from.Bounds()
	wide, high := b.Dx(), b.Dy()
	if more := max(wide, high); more > longest {
		wide, high = lesser(wide, longest, more), lesser(high, longest, more)
	}
	to := image.NewRGBA(image.Rect(0, 0, wide, high))
	s := shrinking{to: to, from: b, row: make([]uint64, 3*(wide+1)), sums: make([]uint64, 3*wide)}
	rows(from, s.add)
	return to, wide < b.Dx() || high < b.Dy()
}

// lesser is a side in proportion, one dot at least.
func lesser(side, to, of int) int { return max(1, (side*to+of/2)/of) }

// stripDots is about how many dots are drawn in one piece.
const stripDots = 1 << 18

// rows draws a picture on white, strip by strip, and gives each row of it, four bytes a dot.
func rows(from image.Image, do func(row []byte)) {
	b := from.Bounds()
	strip := image.NewRGBA(image.Rect(0, 0, b.Dx(), min(b.Dy(), stripDots/b.Dx()+1)))
	for y := b.Min.Y; y < b.Max.Y; y += strip.Rect.Dy() {
		draw.Draw(strip, strip.Rect, image.White, image.Point{}, draw.Src)
		draw.Draw(strip, strip.Rect, from, image.Pt(b.Min.X, y), draw.Over)
		for i := range min(strip.Rect.Dy(), b.Max.Y-y) {
			do(strip.Pix[i*strip.Stride:][:4*b.Dx()])
		}
	}
}

// shrinking adds up rows of light. Places are counted in parts of a dot, so that all
// shares are whole numbers: a dot that is read is as wide as the new picture has dots, one
// that is made as wide as the old picture had.
type shrinking struct {
	to   *image.RGBA
	from image.Rectangle
	row  []uint64 // light of the row that is read, by columns that are made; one more behind
	sums []uint64 // light of the row that is made, as far as it is read
	at   int      // rows that were read
	made int
}

// add takes in the next row.
func (s *shrinking) add(pix []byte) {
	clear(s.row)
	wide, was, light := s.to.Rect.Dx(), s.from.Dx(), lights()
	for i := range was {
		x, left, right := shares(i, wide, was)
		to := s.row[3*x : 3*x+6]
		for c, tone := range pix[4*i : 4*i+3] {
			to[c] += uint64(light[tone]) * left
			to[3+c] += uint64(light[tone]) * right
		}
	}
	_, above, below := shares(s.at, s.to.Rect.Dy(), s.from.Dy())
	s.at++
	s.sum(above)
	if s.at*s.to.Rect.Dy() >= (s.made+1)*s.from.Dy() {
		s.put()
		s.sum(below)
	}
}

// shares says how much of dot i lies in which dot that is made, and how much in the next.
func shares(i, now, was int) (at int, in, next uint64) {
	at = i * now / was
	end := (at + 1) * was
	in = uint64(min(now, end-i*now))
	return at, in, uint64(now) - in
}

func (s *shrinking) sum(share uint64) {
	for i := range s.sums {
		s.sums[i] += s.row[i] * share
	}
}

// put writes the row that is complete.
func (s *shrinking) put() {
	whole := uint64(s.from.Dx()) * uint64(s.from.Dy())
	pix, tone := s.to.Pix[s.made*s.to.Stride:], tones()
	for x := range s.to.Rect.Dx() {
		for c := range 3 {
			pix[4*x+c] = tone[s.sums[3*x+c]/whole]
		}
		pix[4*x+3] = 255
	}
	clear(s.sums)
	s.made++
}

// lights are the light of each tone, of 65535 (IEC 61966-2-1).
var lights = sync.OnceValue(func() *[256]uint16 {
	var out [256]uint16
	for i := range out {
		v := float64(i) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		out[i] = uint16(math.Round(v * 65535))
	}
	return &out
})

// tones are the tone of each light: the one whose light is next to it.
var tones = sync.OnceValue(func() *[65536]uint8 {
	var out [65536]uint8
	tone := 0
	for i := range out {
		for tone < 255 && 2*i >= int(lights()[tone])+int(lights()[tone+1]) {
			tone++
		}
		out[i] = uint8(tone)
	}
	return &out
})
