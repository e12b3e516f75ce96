package reckon

import (
	"strconv"

	"sley/internal/engine/sett"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// cloth is the warp across: what is known of its width and its ends.
type cloth struct {
	wanted   term // width in the reed that is wanted; no expr and zero when no piece says one
	hasWant  bool
	fitted   bool // whole repeats were fitted to the width wanted
	density  term // ends per length in the reed, exact
	dents    term // of the reed chosen, per length
	hasReed  bool
	order    sett.Order
	repeat   stripes // the stripes as they repeat
	ends     term    // working ends, without doubled ends and floating selvedges
	times    qty.Rat // repeats of the group that fills
	inReed   term    // width the working ends take
	finished term
	floats   term
	doubled  term
	wound    term // ends that are wound: working, doubled, floating
	occupied term // width the weft crosses in the reed
	fell     term
	hasFell  bool
	allDents term
	layers   int
}

// panels gives the panels of a piece, at least 1.
func panels(p *warp.Piece) int { return max(p.Panels, 1) }

func pieceID(i int) string { return "pieces[" + strconv.Itoa(i) + "]." }

func (r *run) reckonWidth() {
	r.cloth.layers = max(r.plan.Warp.Layers, 1)
	r.width = r.links("", r.plan.Allowances, true)
	r.wantWidth()
	r.setSett()
	r.sley()
	r.countEnds()
	r.widthOfEnds()
	r.countDents()
}

// wantWidth carries the finished width of every piece to the reed and takes
// the widest.
func (r *run) wantWidth() {
	var all []term
	for i := range r.plan.Pieces {
		if r.plan.Pieces[i].Width.Given() {
			all = append(all, r.pieceInReed(i))
		}
	}
	if len(all) == 0 {
		return
	}
	r.cloth.hasWant = true
	want := all[0]
	if len(all) > 1 {
		want = r.do(Larger, Length, all[0], all[1:]...)
	}
	r.cloth.wanted = r.put("width.wanted", want, warp.InReed, About{})
}

// pieceInReed gives the reed width that one piece's own width asks for: the
// width of one panel, halved when the cloth is woven double.
func (r *run) pieceInReed(i int) term {
	p, id := &r.plan.Pieces[i], pieceID(i)
	about := About{Piece: p.Name}
	w := r.given(id+"width", length(p.Width.Is), given{path: id + "width", typed: p.Width.Typed, state: p.Width.State, about: about})
	if n := panels(p); n > 1 {
		w = r.put(id+"panel-width", r.panelWidth(w, p, id, n), p.Width.State, about)
	}
	if r.cloth.layers > 1 {
		half := r.div(Length, w, r.plain(number(int64(r.cloth.layers))))
		w = r.put(id+"layer-width", half, p.Width.State, about)
	}
	return r.carry(&r.width, w, p.Width.State, warp.InReed, id+"width-", about)
}

// panelWidth is (width + seam × 2 (n - 1)) ÷ n: each seam takes cloth from the
// two edges that meet.
func (r *run) panelWidth(w term, p *warp.Piece, id string, n int) term {
	if p.Seam.Given() {
		w = r.add(w, r.seams(p, id, n))
	}
	return r.div(Length, w, r.plain(number(int64(n))))
}

// seams is what the seams of n panels take: seam × 2 (n - 1).
func (r *run) seams(p *warp.Piece, id string, n int) term {
	seam := r.givenLength(id+"seam", id+"seam", p.Seam)
	return r.mul(Length, r.plain(number(int64(2*(n-1)))), seam)
}

// stateSlug names a state in a node's id.
func stateSlug(s warp.State) string {
	switch s {
	case warp.Finished:
		return "finished"
	case warp.Relaxed:
		return "relaxed"
	case warp.OnLoom:
		return "on-loom"
	case warp.Straight:
		return "warp"
	case warp.AtFell:
		return "fell"
	case warp.InReed:
		return "reed"
	}
	return "unsaid"
}

// carry takes x along the chain, making a node at every state on the way. A
// state that cannot be reached gives x back as it is: the decoder has said so.
func (r *run) carry(c *chain, x term, from, to warp.State, prefix string, about About) term {
	hops, _ := c.path(from, to)
	for _, h := range hops {
		x = r.put(prefix+stateSlug(h.to), r.cross(x, h), h.to, about)
		r.from(sourceOfHop(h))
	}
	return x
}

// sourceOfHop names why a loss is divided by what remains, and a take-up taken
// on the straight end.
func sourceOfHop(h hop) string {
	if h.link.key == "take-up" || h.link.key == "loom-take-up" {
		return "d3883"
	}
	return "cnch-ratio"
}

// spread carries x to every state the chain reaches and gives each.
func (r *run) spread(c *chain, x term, from warp.State, prefix string, about About) map[warp.State]term {
	out := map[warp.State]term{from: x}
	todo := []warp.State{from}
	for len(todo) > 0 {
		at := todo[0]
		todo = todo[1:]
		for i := range c.links {
			next, up, ok := c.links[i].across(at)
			if _, known := out[next]; !ok || known {
				continue
			}
			h := hop{&c.links[i], next, up}
			out[next] = r.put(prefix+stateSlug(next), r.cross(out[at], h), next, about)
			r.from(sourceOfHop(h))
			todo = append(todo, next)
		}
	}
	return out
}

// widthOfEnds gives the width of the working ends in every state.
func (r *run) widthOfEnds() {
	c := &r.cloth
	c.inReed = r.put("width.in-reed", r.widthFor(c.times, c.ends), warp.InReed, About{})
	states := r.spread(&r.width, c.inReed, warp.InReed, "width.", About{})
	c.fell, c.hasFell = states[warp.AtFell]
	c.finished = states[warp.Finished]
	if c.layers > 1 {
		open := r.mul(Length, c.finished, r.plain(number(int64(c.layers))))
		c.finished = r.put("width.opened", open, warp.Finished, About{})
	}
	r.pieceWidths()
}

// pieceWidths gives the finished width of a piece made of panels.
func (r *run) pieceWidths() {
	for i := range r.plan.Pieces {
		p, id := &r.plan.Pieces[i], pieceID(i)
		n := panels(p)
		if n == 1 {
			continue
		}
		w := r.mul(Length, r.cloth.finished, r.plain(number(int64(n))))
		if p.Seam.Given() {
			w = r.sub(w, r.seams(p, id, n))
		}
		r.put(id+"seamed-width", w, warp.Finished, About{Piece: p.Name})
	}
}

// settOf turns a typed sett into a figure.
func settOf(s warp.Sett) Figure { return density(s.Is.PerNM()) }

// exact reports whether rounding is off.
func (r *run) exact() bool { return r.plan.Rounding.Off }

func rounding(t qty.Typed[qty.Rounding], usual qty.Rounding) qty.Rounding {
	if t.Given() {
		return t.Is
	}
	return usual
}
