package ribbon

import "sley/internal/engine/draw/scene"

// Tone is how a part is filled. Tones below Waste are for things that are counted,
// from 0: the first five are greys far enough apart to be told in print, those
// after them are the same greys hatched.
type Tone int

// The tones of a warp's lengths: Waste cannot be woven, Begun is woven to begin
// with or to tie on again, Trial to try the cloth; Gap lies between two pieces,
// Spare is left over, Bare is nothing.
const (
	Waste Tone = 1000 + iota
	Begun
	Trial
	Gap
	Spare
	Bare
)

// own is how the tones of a warp's lengths are filled.
var own = map[Tone]struct {
	grey    float64
	hatched bool
	way     scene.Hatching
}{
	Waste: {1, true, scene.Rising},
	Begun: {1, true, scene.Falling},
	Trial: {1, true, scene.Dotted},
	Gap:   {0.3, false, 0},
	Spare: {1, true, scene.Upright},
	Bare:  {1, false, 0},
}

// greys are as far apart as five can be with paper white among them; neighbours
// in the count are far from one another.
var greys = []float64{1, 0.3, 0.72, 0.05, 0.5}

// lightest is the darkest grey that black letters can be read on.
const lightest = 0.6

// hatchings are laid over the greys when they have all been used.
var hatchings = []scene.Hatching{scene.Rising, scene.Dotted, scene.Squared, scene.Falling, scene.Upright, scene.Crossed, scene.Level}

func (t Tone) grey() float64 {
	if o, ok := own[t]; ok {
		return o.grey
	}
	return greys[max(int(t), 0)%len(greys)]
}

func (t Tone) dark() bool { return t.grey() < lightest }

// hatching is how the tone is hatched, if it is.
func (t Tone) hatching() (scene.Hatching, bool) {
	if o, ok := own[t]; ok {
		return o.way, o.hatched
	}
	if t < Tone(len(greys)) {
		return 0, false
	}
	return hatchings[(int(t)/len(greys)-1)%len(hatchings)], true
}

func (t Tone) hatched() bool {
	_, ok := t.hatching()
	return ok
}

// fill is the ground of a box in this tone.
func (t Tone) fill(box scene.Box) []scene.Item {
	ground := frame(box, scene.Pen{})
	ground.Fill = scene.Grey(t.grey())
	items := []scene.Item{ground}
	way, ok := t.hatching()
	if !ok {
		return items
	}
	pen := hatched
	if t.dark() {
		pen.Ink = scene.White
	}
	return append(items, scene.Hatch(box.Corners(), way, pitch, pen))
}
