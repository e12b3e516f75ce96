package sheet

import "sley/internal/engine/draw/scene"

// afterBox is from a box to the text it belongs to, in mm.
const afterBox = 2.5

// ticks sets texts with a box before each, in rows of as many as fit, at most so
// many.
func (p *press) ticks(most int, texts []string) []block {
	const high = 8.0
	widest := 0.0
	for _, text := range texts {
		widest = max(widest, body.wide(text))
	}
	abreast := max(min(most, int(p.width()/(widest+box+afterBox+gutter))), 1)
	each := p.width() / float64(abreast)
	var out []block
	for len(texts) > 0 {
		row := texts[:min(abreast, len(texts))]
		texts = texts[len(row):]
		out = append(out, block{high: high, draw: func(x, y float64) []scene.Item {
			return ticked(row, x, y+(high-body.lead)/2, each)
		}})
	}
	if len(out) > 0 {
		out[0].gap = 1
	}
	return bound(out)
}

func ticked(row []string, x, y, each float64) []scene.Item {
	var items []scene.Item
	for i, text := range row {
		left := x + float64(i)*each
		items = append(items,
			scene.TickBox(left, y+(body.lead+box)/2, box),
			body.at(left+box+afterBox, y, body.fit(text, each-box-afterBox-gutter)))
	}
	return items
}
