package reckon

import (
	"slices"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// The marks of a tape, named for their words.
const (
	MarkStart     = "start"
	MarkTurnIn    = "turn-in"
	MarkFold      = "fold"
	MarkBorder    = "border"
	MarkColour    = "colour"
	MarkMiddle    = "middle"
	MarkFarBorder = "far-border"
	MarkFarFold   = "far-fold"
	MarkFarTurnIn = "far-turn-in"
	MarkEnd       = "end"
)

// mostColourMarks keeps the marks of a fine check from filling the tape; the
// marks left out are counted in a note.
const mostColourMarks = 100

// leastStripe is the narrowest stripe that a tape can show: 1/4 in.
const leastStripe = qty.Inch / 4

// reckonMarks places every mark of every kind of piece on the tape: lengths
// from the first pick, as the tape reads them on the loom. Where the on-loom
// length is not known no tape is made, and a note says what to accept.
func (r *run) reckonMarks() {
	for i := range r.pieces {
		pr := &r.pieces[i]
		if _, ok := pr.states[warp.OnLoom]; !ok {
			continue
		}
		m := marker{run: r, pr: pr, tape: pr.states[warp.OnLoom]}
		m.all()
	}
}

// marker makes the marks of one piece.
type marker struct {
	*run
	pr   *pieceRun
	tape term
	list []tapeMark
}

// mark places a mark of the cloth: a hem, or the middle.
func (m *marker) mark(kind, yarn string, at term) {
	about := m.pr.about
	about.Mark, about.Yarn = kind, yarn
	m.list = append(m.list, tapeMark{about: about, at: at})
}

// markPick places a mark that is woven to after so many picks.
func (m *marker) markPick(kind, yarn string, at, picks term) {
	m.mark(kind, yarn, at)
	m.list[len(m.list)-1].picks = &picks
}

type tapeMark struct {
	about About
	at    term
	picks *term // nil where the tape decides
}

// all makes the nodes of every mark in the order they are met in weaving, and of
// the picks woven by then.
func (m *marker) all() {
	m.place()
	slices.SortStableFunc(m.list, func(a, b tapeMark) int { return a.at.Is.Cmp(b.at.Is) })
	for i, mark := range m.list {
		id := m.pr.id + "marks[" + itoa(i) + "]"
		here := m.put(id, mark.at, warp.OnLoom, mark.about)
		switch {
		case !m.counts():
		case mark.picks != nil:
			m.put(id+".picks", *mark.picks, warp.Unsaid, mark.about)
		default:
			m.put(id+".picks", m.picksTo(here), warp.Unsaid, mark.about)
		}
	}
}

// picksTo is the picks woven when the tape reads that much: length × picks ÷
// length on the loom, to the nearest whole pick.
func (m *marker) picksTo(at term) term {
	picks := m.div(Picks, m.mul(Length, at, m.pr.picks), m.tape)
	if m.exact() {
		return picks
	}
	return m.whole(picks, qty.Nearest)
}

// counts reports whether the picks of the piece are known.
func (m *marker) counts() bool { return m.pr.hasPicks && !m.pr.picks.Is.IsZero() }

func (m *marker) place() {
	none := qty.Rat{}
	m.markPick(MarkStart, "", m.plain(figure(none, Length)), m.plain(figure(none, Picks)))
	near := m.hem(&m.pr.piece.First, "first")
	for i, at := range near {
		m.mark([]string{MarkTurnIn, MarkFold}[i+2-len(near)], "", at)
	}
	m.picks()
	far := m.hem(&m.pr.piece.Last, "last")
	for i := len(far) - 1; i >= 0; i-- {
		m.mark([]string{MarkFarTurnIn, MarkFarFold}[i+2-len(far)], "", m.sub(m.tape, far[i]))
	}
	m.markPick(MarkEnd, "", m.plain(m.tape.Figure), m.pr.picks)
}

// hem gives how far from the end its turn-in and its fold lie on the loom. A
// hem in finished measure is carried to the loom in the proportion of the
// whole piece; one outside the allowances has no cloth proportion and is as it
// was written.
func (m *marker) hem(e *warp.End, name string) []term {
	whole, ok := m.pr.states[warp.Finished]
	if e.Finish != warp.Hem || !ok {
		return nil
	}
	parts := m.hemParts(m.pr, pieceEnd{name, e})
	scale := func(x term) term {
		if e.Outside {
			return x
		}
		return m.div(Length, m.mul(Length, x, m.underLoss(warp.OnLoom, m.tape)), m.underLoss(warp.Finished, whole))
	}
	if len(parts) == 1 {
		return []term{scale(parts[0])}
	}
	return []term{scale(parts[1]), scale(m.add(parts[0], parts[1]))}
}

// underLoss is a length of the piece without the hems that no loss touches.
func (m *marker) underLoss(s warp.State, whole term) term {
	if n, ok := m.out.Node(m.pr.id + "under-loss." + stateSlug(s)); ok {
		return m.leaf(n.Figure, n.ID)
	}
	return whole
}

// picks marks the borders, the colour changes and the middle, each at its
// picks ÷ picks per length on the loom.
func (m *marker) picks() {
	if !m.counts() {
		m.mark(MarkMiddle, "", m.div(Length, m.tape, m.plain(number(2))))
		return
	}
	per := m.div(Length, m.tape, m.pr.picks)
	total := m.pr.picks.Is
	at := qty.Rat{}
	seenMiddle := false
	for _, stop := range m.stops() {
		at = stop.at
		if !seenMiddle && total.Cmp(at.Add(at)) <= 0 {
			m.middle()
			seenMiddle = true
		}
		picks := m.plain(figure(at, Picks))
		m.markPick(stop.kind, stop.yarn, m.mul(Length, picks, per), picks)
	}
	if !seenMiddle {
		m.middle()
	}
}

// middle marks half the tape and half the picks, to the nearest whole pick.
func (m *marker) middle() {
	two := m.plain(number(2))
	picks := m.div(Picks, m.pr.picks, two)
	if !m.exact() {
		picks = m.whole(picks, qty.Nearest)
	}
	m.markPick(MarkMiddle, "", m.div(Length, m.tape, two), picks)
}

// stop is a pick at which something changes.
type stop struct {
	kind, yarn string
	at         qty.Rat
}

// stops lists border ends and colour changes in the order they are woven.
func (m *marker) stops() []stop {
	total := m.pr.picks.Is
	near, far := qty.Int(int64(m.pr.near)), total.Sub(qty.Int(int64(m.pr.far)))
	var out []stop
	add := func(s stop) {
		if s.at.Sign() > 0 && s.at.Less(total) {
			out = append(out, s)
		}
	}
	colours := m.colourStops()
	for len(colours) > 0 && colours[0].at.Less(near) {
		add(colours[0])
		colours = colours[1:]
	}
	if m.pr.near > 0 {
		add(stop{MarkBorder, "", near})
	}
	for _, s := range colours {
		if m.pr.far > 0 && far.Cmp(s.at) <= 0 {
			add(stop{MarkFarBorder, "", far})
			far = total
		}
		add(s)
	}
	if m.pr.far > 0 && far.Less(total) {
		add(stop{MarkFarBorder, "", far})
	}
	return out
}

// fine reports whether most stripes are too narrow to be read off a tape.
func (m *marker) fine(stops []stop) bool {
	narrow, last := 0, qty.Rat{}
	per := m.tape.Is.Div(m.pr.picks.Is)
	for _, s := range stops {
		if s.at.Sub(last).Mul(per).Less(leastStripe.Rat()) {
			narrow++
		}
		last = s.at
	}
	return 2*narrow > len(stops) && len(stops) > 12
}

func (m *marker) colourStops() []stop {
	if !m.hasOrders() || len(m.plan.Weft.Shares) > 0 {
		return nil
	}
	var out []stop
	at := qty.Rat{}
	for k, s := range m.pickOrder(m.pr) {
		if k > 0 {
			out = append(out, stop{MarkColour, s.yarn, at})
		}
		at = at.Add(s.n)
	}
	if len(out) > mostColourMarks || !m.exact() && m.fine(out) {
		m.out.Problems.Tell("tape.many-changes", m.pr.id+"order", "", map[string]any{"changes": len(out), "most": mostColourMarks})
		return nil
	}
	return out
}
