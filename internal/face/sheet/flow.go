package sheet

import "sley/internal/engine/draw/scene"

// block is a part of a sheet that stays on one page.
type block struct {
	high float64 // mm
	gap  float64 // mm above it, left out at the top of a page
	keep bool    // it stays with the block below it
	free bool    // it is left out rather than put on a page of its own
	head *block  // drawn again above it where it begins a page
	draw func(x, y float64) []scene.Item
}

// flow sets the blocks of one sheet, on as many pages as they need.
func (p *press) flow(title string, blocks []block) {
	p.open(title, false)
	for i := 0; i < len(blocks); {
		together := run(blocks[i:])
		if blocks[i].free && p.used && p.y+tall(together) > p.bottom() {
			i += len(together)
			continue
		}
		if p.y+tall(together) > p.bottom() && p.used {
			p.open(title, true)
			p.again(together[0])
		}
		for _, b := range together {
			p.put(b)
		}
		i += len(together)
	}
}

// run is the blocks that stay together, from the first on.
func run(blocks []block) []block {
	n := 1
	for n < len(blocks) && blocks[n-1].keep {
		n++
	}
	return blocks[:n]
}

// tall is the height of blocks one below the other.
func tall(blocks []block) float64 {
	sum := 0.0
	for _, b := range blocks {
		sum += b.gap + b.high
	}
	return sum
}

// again draws the head of a table whose rows go on.
func (p *press) again(b block) {
	if b.head != nil {
		p.put(*b.head)
	}
}

func (p *press) put(b block) {
	if p.used {
		p.y += b.gap
	}
	if p.y+b.high > p.bottom() && p.used {
		p.open(p.title, true)
		p.again(b)
	}
	p.add(b.draw(margin, p.y)...)
	p.y += b.high
	p.used = true
}

// together keeps the blocks of a short list on one page.
func together(blocks []block) []block {
	for i := range blocks {
		blocks[i].keep = i < len(blocks)-1
	}
	return blocks
}

// bound keeps the first two and the last two of a list together, so that no page
// begins or ends with one of them alone.
func bound(blocks []block) []block {
	n := len(blocks)
	if n > 1 {
		blocks[0].keep, blocks[n-2].keep = true, true
	}
	return blocks
}
