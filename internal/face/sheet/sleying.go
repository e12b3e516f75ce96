package sheet

import (
	"slices"

	"sley/internal/trade/qty"
)

// sleying is the reed with its order, where it begins, and the dents in groups to
// tick with the count of ends so far.
func (d *desk) sleying() {
	blocks := d.keyed(
		d.lines("sett.exact", "sett.stripes[", "width.occupied", "dents"),
		d.lines("ends", "ends.doubled", "ends.floats", "dents.cloth", "dents.odd", "dents.left", "dents.right", "dents.in-reed", "dents.first", "dents.last", "width.in-reed"),
	)
	if d.has("dents.cloth") {
		blocks = append(blocks, d.heading(wordSley))
		if d.has("ends.doubled") {
			blocks = append(blocks, d.text(body, wordDoubled)...)
		}
		blocks = append(blocks, d.text(body, wordGroups)...)
		blocks = append(blocks, d.floatAt(wordFloatL, "dents.first")...)
		for _, s := range stretchesOf(d.stripes()) {
			blocks = append(blocks, d.stretch(s)...)
		}
		blocks = append(blocks, d.floatAt(wordFloatR, "dents.last")...)
	}
	d.flow(titleSleying, blocks)
}

// floatAt is a box for a floating selvedge in a dent of its own, which the node counts.
func (d *desk) floatAt(words, dent string) []block {
	if !d.has("ends.floats") {
		return nil
	}
	if d.has(dent) {
		words = filled(wordFloatAt, "{float}", words, "{dent}", d.bench(dent))
	}
	return d.ticks(1, []string{words})
}

// sleyed is neighbouring ends in one order.
type sleyed struct {
	order string
	dents []int // ends in each dent of the order
	ends  int
	// from is the dents and the ends before them.
	fromDent, fromEnd int
}

func (d *desk) stripes() []sleyed {
	var out []sleyed
	for _, s := range d.r.Stripes {
		out = append(out, sleyed{order: s.Order.String(), dents: s.Order, ends: s.Ends.Count(qty.Nearest)})
	}
	return out
}

// stretchesOf joins neighbours in the same order: it goes on through them, and a
// new order begins in a new dent.
func stretchesOf(stripes []sleyed) []sleyed {
	var out []sleyed
	for _, s := range stripes {
		last := len(out) - 1
		if last >= 0 && slices.Equal(out[last].dents, s.dents) {
			out[last].ends += s.ends
			continue
		}
		out = append(out, s)
	}
	dents, ends := 0, 0
	for i := range out {
		out[i].fromDent, out[i].fromEnd = dents, ends
		for _, g := range out[i].groups(1) {
			dents, ends = g.dents, g.ends
		}
	}
	return out
}

// reached is how far the sleying has come: dents and ends from the left.
type reached struct{ dents, ends int }

// groups gives where each group of whole orders ends, and where the last ends.
func (s sleyed) groups(orders int) []reached {
	at := reached{s.fromDent, s.fromEnd}
	var out []reached
	for left := s.ends; left > 0; {
		for i := 0; i < orders*len(s.dents) && left > 0; i++ {
			in := min(s.dents[i%len(s.dents)], left)
			at.dents, at.ends, left = at.dents+1, at.ends+in, left-in
		}
		out = append(out, at)
	}
	return out
}

// About ten dents make a group; a wide warp has larger ones.
const (
	dentsInGroup = 10
	mostGroups   = 48
)

// inGroup is how many orders make a group.
func (s sleyed) inGroup() int {
	n := max(dentsInGroup/len(s.dents), 1)
	for len(s.groups(n)) > mostGroups {
		n *= 2
	}
	return n
}

// stretch sets the groups of one order.
func (d *desk) stretch(s sleyed) []block {
	words := wordEachDent
	if len(s.dents) > 1 {
		words = wordOrderOf
	}
	var texts []string
	for _, g := range s.groups(s.inGroup()) {
		texts = append(texts, filled(wordGroup, "{dents}", count(g.dents), "{ends}", count(g.ends)))
	}
	title := d.text(strong, filled(words, "{order}", s.order, "{ends}", count(s.ends)))
	title[len(title)-1].keep = true
	return append(title, d.ticks(3, texts)...)
}
