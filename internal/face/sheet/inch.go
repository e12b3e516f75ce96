package sheet

import (
	"strings"

	"sley/internal/engine/draw/drafting"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/dress"
	"sley/internal/engine/tieup"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// hasInch reports whether there is a threading to be read across.
func (d *desk) hasInch() bool {
	_, lifts := d.inch()
	return len(lifts) > 0
}

// inch gives the draft of the whole warp, without picks where it has none, and the lifts
// that tell its shafts apart.
func (d *desk) inch() (*draft.Draft, []tieup.Opened) {
	times, ok := d.r.Threadings()
	if !ok {
		return nil, nil
	}
	p := d.r.Plan
	whole := d.tied()
	whole.Threading = draft.ShaftsOf(p.Warp.Threading.Runs(times))
	return whole, tieup.FirstInch(whole)
}

// firstInch is what shows errors while they are quickly mended: a few lifts read across
// all ends, then one whole repeat looked at from both faces, before the knots are tied
// tight.
func (d *desk) firstInch() {
	whole, lifts := d.inch()
	blocks := append(d.care(careTight), d.text(body, wordInch)...)
	for i, lift := range lifts {
		blocks = append(blocks, d.heading(d.liftWords(i+1, lift)))
		blocks = append(blocks, d.readAcross(tieup.Across(whole.Threading, lift.Up))...)
	}
	blocks = append(blocks, d.heading(wordReadWrong))
	blocks = append(blocks, d.text(body, wordWrongEnd)...)
	blocks = append(blocks, d.text(body, wordWrongCount)...)
	blocks = append(blocks, d.oneRepeat()...)
	blocks = append(blocks, d.lookFor(wordSleyWrong, wordsWrongDents)...)
	blocks = append(blocks, d.lookFor(wordThenTight, wordsTight)...)
	d.flow(titleInch, blocks)
}

// liftWords say which shafts a lift puts up, and how it is opened.
func (d *desk) liftWords(n int, lift tieup.Opened) string {
	words := wordLiftHand
	switch {
	case lift.Pressed.Len() == 1:
		words = wordLiftTreadle
	case lift.Pressed != 0:
		words = wordLiftTreadles
	case d.r.Plan.Loom.Shed == loom.Table:
		words = wordLiftLevers
	}
	return filled(words, "{n}", count(n), "{shafts}", present.SetText(lift.Up), "{treadles}", present.SetText(lift.Pressed))
}

// What is read at a glance: about so many ends to a tick, patterns of so many numbers.
const (
	endsRead     = 48
	longestRead  = 64
	mostReadings = 60 // stretches that differ; more are read by the threading
)

// readAcross is what stands up and down, from the left, with a box for each so many ends.
func (d *desk) readAcross(across []int) []block {
	runs := dress.RunsOf(across, longestRead)
	if len(runs) > mostReadings {
		return d.text(body, wordManyReads)
	}
	var out []block
	ends := 0
	for _, run := range runs {
		head := d.text(strong, readWords(run))
		head[0].gap = 2
		var texts []string
		long, per := endsOf(run), 1
		for per < run.Times && (per+1)*long <= endsRead || (run.Times+per-1)/per > mostGroups {
			per++
		}
		for left := run.Times; left > 0; left -= per {
			ends += min(per, left) * long
			texts = append(texts, filled(wordReadTo, "{ends}", endsIn(ends)))
		}
		out = append(out, together(append(head, block{}))[:len(head)]...)
		out = append(out, d.ticks(5, texts)...)
	}
	return out
}

func endsOf(run dress.Run) int {
	sum := 0
	for _, n := range run.Cycle {
		sum += max(n, -n)
	}
	return sum
}

// readWords say what is up and down in a run, and how often.
func readWords(run dress.Run) string {
	parts := make([]string, len(run.Cycle))
	for i, n := range run.Cycle {
		if parts[i] = filled(wordUp, "{n}", count(n)); n < 0 {
			parts[i] = filled(wordDown, "{n}", count(-n))
		}
	}
	words := strings.Join(parts, ", ")
	if run.Times > 1 {
		words = filled(wordRepeated, "{shafts}", words, "{times}", count(run.Times))
	}
	return words
}

// lookFor is a heading over things to look for, each with a box.
func (d *desk) lookFor(title string, list []string) []block {
	out := []block{d.heading(title)}
	g := newGrid(d.width(), []column{{"", 1, false}, {"", 20, false}})
	for _, text := range list {
		out = append(out, g.row([]cell{tick, words(text)}))
	}
	return together(out)
}

// oneRepeat is the whole repeat of the treadling to weave, and how both its faces look.
func (d *desk) oneRepeat() []block {
	unit, _, ok := d.r.Cycles()
	if !ok {
		return nil
	}
	text := filled(wordWeaveOnce, "{picks}", count(unit.Picks()))
	if unit.Treadled() && unit.Picks() <= mostShown {
		text += " " + filled(wordWeaveBy, "{treadles}", pressedInTurn(unit.Treadling))
	}
	out := append([]block{d.heading(wordOnce)}, d.text(body, text)...)
	out[len(out)-1].keep = true
	return append(append(out, d.faces(unit)...), d.ticks(2, []string{wordFront, wordBack})...)
}

func pressedInTurn(sets []draft.Set) string {
	texts := make([]string, len(sets))
	for i, s := range sets {
		texts[i] = s.String()
	}
	return strings.Join(texts, " ")
}

// faces draws one repeat of the cloth as it stands at the fell, the first pick nearest to
// the weaver, and beside it the other face as a mirror below shows it, left on the left;
// nothing where it is too large to be read.
func (d *desk) faces(unit *draft.Draft) []block {
	if unit.Ends() > mostShown || unit.Picks() > mostShown {
		return nil
	}
	shown := unit
	if times := max(leastEndsShown/unit.Ends(), 1); times > 1 {
		shown = unit.RepeatEnds(times).RepeatPicks(max(leastPicksShown/unit.Picks(), 1))
	}
	half := (d.width() - gutter) / 2
	front, ok := d.faceOf(shown, half)
	back, also := d.faceOf(shown.OtherFace(), half)
	if !ok || !also {
		return nil
	}
	return []block{{high: max(front.Height, back.Height), gap: 2, keep: true, draw: func(x, y float64) []scene.Item {
		return []scene.Item{scene.Group{X: x, Y: y, Items: front.Items}, scene.Group{X: x + half + gutter, Y: y, Items: back.Items}}
	}}}
}

// A small repeat is shown several times over.
const (
	leastEndsShown  = 12
	leastPicksShown = 8
)

// faceOf draws a cloth alone, if it is no wider than that.
func (d *desk) faceOf(shown *draft.Draft, wide float64) (scene.Page, bool) {
	cells := draftWords(shown)
	cells.Heading = ""
	look := drafting.Look{Alone: true, Upwards: true, Cell: min(wide/float64(shown.Ends()+8), 4)}
	page, ok := drafting.Draw(shown, look, drafting.Marks{}, cells)
	return page, ok && page.Width <= wide
}
