package sheet

import "sley/internal/engine/draw/scene"

// head is a heading, kept with what follows.
func (p *press) heading(text string) block {
	text = heading.fit(text, p.width())
	return block{high: heading.lead + 1, gap: 5, keep: true, draw: func(x, y float64) []scene.Item {
		return []scene.Item{heading.at(x, y, text)}
	}}
}

// text is a paragraph, line by line.
func (p *press) text(s style, text string) []block {
	var out []block
	for _, line := range s.even(text, p.width()) {
		out = append(out, block{high: s.lead, draw: func(x, y float64) []scene.Item {
			return []scene.Item{s.at(x, y, line)}
		}})
	}
	if len(out) > 0 {
		out[0].gap = 2
	}
	return bound(out)
}

// care is a caution: set apart by a stroke at its left, in one piece. Something
// always follows it, so that it never stands on a page alone.
func (p *press) care(text string) []block {
	const in = 6
	lines := body.wrap(text, p.width()-in)
	high := strong.lead + float64(len(lines))*body.lead + 2
	return []block{{high: high, gap: 6, draw: func(x, y float64) []scene.Item {
		items := []scene.Item{
			scene.Line{X1: x + 1, Y1: y, X2: x + 1, Y2: y + high, Pen: scene.Solid(1.2)},
			strong.at(x+in, y+1, wordCare),
		}
		for i, line := range lines {
			items = append(items, body.at(x+in, y+1+strong.lead+float64(i)*body.lead, line))
		}
		return items
	}}}
}

// leastRoom is how many lines to write on there are at least.
const leastRoom = 2

// room is lines to write on, under words that say what for; those for which there
// is no place on the page are left out.
func (p *press) room(words string, lines int) []block {
	const apart = 9
	out := []block{p.heading(words)}
	for i := range lines {
		out = append(out, block{high: apart, keep: i < leastRoom-1, free: i >= leastRoom, draw: func(x, y float64) []scene.Item {
			return []scene.Item{scene.Line{X1: x, Y1: y + apart, X2: x + p.width(), Y2: y + apart, Pen: hair}}
		}})
	}
	return out
}
