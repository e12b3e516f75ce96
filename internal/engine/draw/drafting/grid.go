package drafting

import "sley/internal/engine/draw/scene"

// fifth is how often a line of the grid is stronger.
const fifth = 5

// The inks of a grid: light enough to be passed over on white, and to be seen on
// black, so that cells of a run can be counted.
var (
	fine   = scene.Grey(0.62)
	strong = scene.Grey(0.42)
)

// pens are those of a grid with cells so large, in mm.
func (g *drawing) pens() (thin, heavy, around scene.Pen) {
	thin = scene.Pen{Width: min(max(g.cell/30, 0.07), 0.14), Ink: fine}
	heavy = scene.Pen{Width: min(max(g.cell/12, 0.16), 0.32), Ink: strong}
	return thin, heavy, scene.Pen{Width: min(max(g.cell/10, 0.2), 0.35), Ink: scene.Black}
}

// lines are the places of a grid along one side, from the first to the last, and
// which of them are stronger.
type lines struct {
	at     []float64
	strong []bool
}

// ruled are the lines between things that are numbered: the one after every fifth is
// strong.
func ruled(from, to int, at func(int) float64, num func(int) int) lines {
	var l lines
	for i := from; i <= to; i++ {
		between := i > from && i < to && min(num(i-1), num(i))%fifth == 0
		l.at, l.strong = append(l.at, at(i)), append(l.strong, between)
	}
	return l
}

// grid rules a rectangle.
func (g *drawing) grid(across, down lines) {
	thin, heavy, around := g.pens()
	light, dark := scene.Path{Pen: thin}, scene.Path{Pen: heavy}
	u0, u1, v0, v1 := across.at[0], across.at[len(across.at)-1], down.at[0], down.at[len(down.at)-1]
	pathOf := func(strong bool) *scene.Path {
		if strong {
			return &dark
		}
		return &light
	}
	for i := 1; i+1 < len(across.at); i++ {
		p := pathOf(across.strong[i])
		*p = g.line(*p, across.at[i], v0, across.at[i], v1)
	}
	for i := 1; i+1 < len(down.at); i++ {
		p := pathOf(down.strong[i])
		*p = g.line(*p, u0, down.at[i], u1, down.at[i])
	}
	for _, p := range []scene.Path{light, dark} {
		if len(p.Segments) > 0 {
			g.add(p)
		}
	}
	g.add(g.rect(u0, v0, u1, v1, scene.None, around))
}

func (g *drawing) colLines() lines { return ruled(g.c0, g.c1, g.u, g.endNumber) }
func (g *drawing) rowLines() lines { return ruled(g.r0, g.r1, g.v, g.pickNumber) }

// shaftLines are those of the threading, treadleLines those of what stands beside the
// cloth; both counted from the cloth on.
func (g *drawing) shaftLines() lines {
	return ruled(0, g.Shafts, g.threadingAt, func(i int) int { return i + 1 })
}

func (g *drawing) treadleLines() lines {
	return ruled(0, g.across(), func(i int) float64 { return g.treadleAt(i + 1) }, func(i int) int { return i + 1 })
}

// numbers writes the numbers around a part.
func (g *drawing) numbers() {
	g.endNumbers()
	g.pickNumbers()
	if g.head {
		g.shaftNumbers()
	}
	if g.head && g.side {
		g.treadleNumbers()
	}
}

func (g *drawing) endNumbers() {
	low, high := g.u(g.c0), g.u(g.c1)
	middle := func(c int) float64 {
		return inside((g.u(c)+g.u(c+1))/2, wide(number(g.endNumber(c))), low, high)
	}
	for _, c := range labelled(g.c0, g.c1, middle, g.endNumber, wide(number(g.Ends()))+2*air, threadSteps) {
		g.add(g.say(middle(c), line/2, scene.Middle, plain, number(g.endNumber(c))))
	}
	g.word(low-2*air, line/2, scene.End, g.words.Ends)
}

func (g *drawing) pickNumbers() {
	middle := func(r int) float64 { return inside((g.v(r)+g.v(r+1))/2, high, g.v(g.r0), g.v(g.r1)) }
	u := g.u(g.c1) + g.treadling(g.side) + air
	for _, r := range labelled(g.r0, g.r1, middle, g.pickNumber, high+air, threadSteps) {
		g.add(g.say(u, middle(r), scene.Start, plain, number(g.pickNumber(r))))
	}
	g.word(u, g.pickWord(), scene.Start, g.words.Picks)
}

// pickWord is where the word of the picks stands: above their numbers, or below them.
func (g *drawing) pickWord() float64 {
	if g.picksAbove(g.head) {
		return g.top(true) - line/2 - gap/2
	}
	return g.v(g.r1) + line/2 + air
}

// inside is the middle of a label moved so that it stays over what it belongs to,
// where that is longer than the label: labels then keep off their neighbours.
func inside(middle, label, low, high float64) float64 {
	if label > high-low {
		return (low + high) / 2
	}
	return min(max(middle, low+label/2), high-label/2)
}

func (g *drawing) shaftNumbers() {
	middle := func(i int) float64 {
		return inside(g.threadingAt(i+1)+g.cell/2, high, g.threadingAt(g.Shafts), g.threadingAt(0))
	}
	for _, i := range labelled(0, g.Shafts, middle, func(i int) int { return i + 1 }, high+air, shaftSteps) {
		g.add(g.say(g.u(g.c0)-air, middle(i), scene.End, plain, number(i+1)))
	}
	g.word(g.u(g.c0)-g.pointers()-air, g.top(true)+high/2+air, scene.End, g.words.Shafts)
}

// treadleNumbers stand above the tie-up; those of a lift plan just above it, since
// there is no tie-up.
func (g *drawing) treadleNumbers() {
	middle := func(i int) float64 {
		return inside(g.treadleAt(i+1)+g.cell/2, wide(number(i+1)), g.treadleAt(1), g.treadleAt(g.across()+1))
	}
	v := line/2 + g.bar()
	if g.lifts != nil {
		v = g.top(true) - line/2 - gap/2
	}
	room := wide(number(g.across())) + air
	for _, i := range labelled(0, g.across(), middle, func(i int) int { return i + 1 }, room, shaftSteps) {
		g.add(g.say(middle(i), v, scene.Middle, plain, number(i+1)))
	}
	g.word(g.treadleAt(g.across()+1)+2*air, v, scene.Start, g.treadleWord())
}

// treadleWord is the word beside the numbers of treadling or lift plan.
func (g *drawing) treadleWord() string {
	if g.lifts != nil {
		return g.words.Shafts
	}
	return g.words.Treadles
}

// word writes a word, where there is one.
func (g *drawing) word(u, v float64, anchor scene.Anchor, text string) {
	if text != "" {
		g.add(g.say(u, v, anchor, plain, text))
	}
}
