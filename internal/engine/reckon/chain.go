package reckon

import (
	"strconv"

	"sley/internal/engine/defaults"
	"sley/internal/trade/warp"
)

// chain carries a size from any state to any other that its links reach. The
// links form a tree: no path applies an allowance twice.
type chain struct{ links []chainLink }

type chainLink struct {
	key   string
	link  warp.Link
	steps []chainStep
}

// chainStep is one step of an allowance, its terms summed on one base:
//
//	start (1 - losses + gains) = x ratio (1 + adds) + lengths
//
// with ratio the before/after of a sample when that is the only term.
type chainStep struct {
	adds, lengths, losses, gains []term
	before, after                term
	measured                     bool
}

// links resolves the allowances of lengths or widths into a chain: what the
// weaver wrote first, then starting values wherever a state is still out of
// reach, unless a lump from warp to washed leaves the states between unknown.
func (r *run) links(prefix string, given warp.Allowances, width bool) chain {
	var c chain
	lump := false
	for _, name := range warp.LinkNames() {
		a := given[name.Key]
		if name.Width == width && a.Given() && !c.joined(name.Link) {
			c.links = append(c.links, r.givenLink(prefix, name, a))
			lump = lump || isLump(name.Link)
		}
	}
	if !lump {
		r.fill(&c, width)
	}
	return c
}

func isLump(l warp.Link) bool {
	return l.Later == warp.Finished && (l.Earlier == warp.Straight || l.Earlier == warp.InReed)
}

// fill adds starting values in the order in which a weaver thinks of them.
func (r *run) fill(c *chain, width bool) {
	keys := []string{"shrinkage", "relaxation", "take-up"}
	if width {
		keys = []string{"width-shrinkage", "reed-to-relaxed", "width-relaxation"}
	}
	for _, key := range keys {
		name := linkNamed(key)
		if !c.joined(name.Link) {
			c.links = append(c.links, r.defaultLink(name))
		}
	}
}

func linkNamed(key string) warp.LinkName {
	for _, name := range warp.LinkNames() {
		if name.Key == key {
			return name
		}
	}
	panic("internal error: no link " + key)
}

func (r *run) givenLink(prefix string, name warp.LinkName, a warp.Allowance) chainLink {
	if a.Accept {
		return r.defaultLink(name)
	}
	out := chainLink{key: name.Key, link: name.Link}
	id := prefix + "allowances." + name.Key
	many := countTerms(a) > 1
	i := 0
	for _, terms := range a.Steps {
		var step chainStep
		for _, t := range terms {
			at := id
			if many {
				at += "[" + strconv.Itoa(i) + "]"
			}
			i++
			r.addTerm(&step, at, given{path: id, typed: t.Typed, about: About{Piece: r.pieceOf(prefix), Index: i}}, t, len(terms) == 1)
		}
		out.steps = append(out.steps, step)
	}
	return out
}

// pieceOf names the piece whose own allowances stand under the prefix.
func (r *run) pieceOf(prefix string) string {
	for i := range r.plan.Pieces {
		if pieceID(i) == prefix {
			return r.plan.Pieces[i].Name
		}
	}
	return ""
}

func countTerms(a warp.Allowance) (n int) {
	for _, step := range a.Steps {
		n += len(step)
	}
	return n
}

// addTerm makes the nodes of one written term and files it in its step.
func (r *run) addTerm(step *chainStep, id string, g given, t warp.Term, alone bool) {
	switch t.Form {
	case warp.Lose:
		step.losses = append(step.losses, r.given(id, share(t.Share), g))
	case warp.Gain:
		step.gains = append(step.gains, r.given(id, share(t.Share), g))
	case warp.Add:
		step.adds = append(step.adds, r.given(id, share(t.Share), g))
	case warp.Plain:
		step.lengths = append(step.lengths, r.sided(r.given(id, length(t.Length), g), t.Sides))
	case warp.PerLength:
		l := r.given(id, length(t.Length), g)
		step.adds = append(step.adds, r.div(Share, l, r.plain(length(t.Per))))
	case warp.Measured:
		r.addMeasured(step, id, t, g, alone)
	}
}

func (r *run) sided(l term, sides int) term {
	if sides < 2 {
		return l
	}
	return r.mul(Length, r.plain(number(int64(sides))), l)
}

// addMeasured files a sample's before and after: as a ratio when it stands
// alone, as the share it lost when it is summed with others.
func (r *run) addMeasured(step *chainStep, id string, t warp.Term, g given, alone bool) {
	before := r.given(id+".before", length(t.Before), g)
	after := r.given(id+".after", length(t.After), g)
	if alone {
		step.before, step.after, step.measured = before, after, true
		return
	}
	lost := r.div(Share, r.sub(before, after), before)
	step.losses = append(step.losses, lost)
}

func (r *run) defaultLink(name warp.LinkName) chainLink {
	out := chainLink{key: name.Key, link: name.Link}
	v, ok := defaults.For(name.Key, r.kase)
	if !ok || v.Share.IsZero() {
		return out
	}
	t := r.byDefault("allowances."+name.Key, share(v.Share), v)
	out.steps = []chainStep{{losses: []term{t}}}
	return out
}

// joined reports whether the chain already carries a size between the link's
// two states.
func (c *chain) joined(l warp.Link) bool {
	_, ok := c.path(l.Later, l.Earlier)
	return ok
}

// hop is one link on a path, up (towards the warp) or down (towards the cloth).
type hop struct {
	link *chainLink
	to   warp.State
	up   bool
}

// path gives the hops from one state to another.
func (c *chain) path(from, to warp.State) ([]hop, bool) {
	return c.walk(from, to, -1)
}

func (c *chain) walk(from, to warp.State, came int) ([]hop, bool) {
	if from == to {
		return nil, true
	}
	for i := range c.links {
		next, up, ok := c.links[i].across(from)
		if !ok || i == came {
			continue
		}
		if rest, found := c.walk(next, to, i); found {
			return append([]hop{{&c.links[i], next, up}}, rest...), true
		}
	}
	return nil, false
}

func (l *chainLink) across(from warp.State) (to warp.State, up, ok bool) {
	switch from {
	case l.link.Later:
		return l.link.Earlier, true, true
	case l.link.Earlier:
		return l.link.Later, false, true
	}
	return warp.Unsaid, false, false
}

// cross carries x over a hop.
func (r *run) cross(x term, h hop) term {
	steps := h.link.steps
	for i := range steps {
		if h.up {
			x = r.up(x, &steps[i])
		} else {
			x = r.down(x, &steps[len(steps)-1-i])
		}
	}
	return x
}

func (r *run) up(x term, s *chainStep) term {
	if s.measured {
		return r.div(Length, r.mul(Length, x, s.before), s.after)
	}
	if len(s.adds) > 0 {
		x = r.mul(Length, x, r.add(r.one(), s.adds...))
	}
	if len(s.lengths) > 0 {
		x = r.add(x, s.lengths...)
	}
	if keeps, some := r.keeps(s); some {
		x = r.div(Length, x, keeps)
	}
	return x
}

func (r *run) down(x term, s *chainStep) term {
	if s.measured {
		return r.div(Length, r.mul(Length, x, s.after), s.before)
	}
	if keeps, some := r.keeps(s); some {
		x = r.mul(Length, x, keeps)
	}
	if len(s.lengths) > 0 {
		x = r.sub(x, s.lengths...)
	}
	if len(s.adds) > 0 {
		x = r.div(Length, x, r.add(r.one(), s.adds...))
	}
	return x
}

// keeps is what remains of the start: 1 - losses + gains.
func (r *run) keeps(s *chainStep) (term, bool) {
	if len(s.losses)+len(s.gains) == 0 {
		return term{}, false
	}
	out := r.one()
	if len(s.losses) > 0 {
		out = r.sub(out, s.losses...)
	}
	if len(s.gains) > 0 {
		out = r.add(out, s.gains...)
	}
	return out, true
}

func (r *run) one() term { return r.plain(number(1)) }
