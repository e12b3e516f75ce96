package reckon

import (
	"sley/internal/engine/defaults"
	"sley/internal/engine/sett"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Options say what a reckoning keeps.
type Options struct {
	Workings bool // keep the formula of every node
	Tape     bool // place every mark of the tapes: as many nodes as there are colour changes
}

// Result is a reckoning: every number of a warp.
type Result struct {
	Plan     *warp.Plan // as reckoned: with what was found backwards in it
	Nodes    []Node     // in the order in which they were worked out
	Problems problem.List
	Sleying  []sett.Choice  // the order used first, then the alternatives
	Reeds    []ReedUsed     // of Sleying's reed indices
	Stripes  []Stripe       // across the warp, left to right, without the floating selvedges
	Defaults string         // version of the table of starting values
	Backward *Backward      // nil when the plan was reckoned forwards
	Readings []Reading      // what else bare percentages could mean, where it makes a difference
	pieces   []pieceRun     // as they were reckoned
	index    map[string]int // of Nodes, by id
	indexed  int            // how many of them are in it
}

// ReedUsed is a reed as its owner names it.
type ReedUsed struct {
	Name  string
	Dents qty.Rat // per nanometre
	Width qty.Length
}

// Stripe is a stretch of neighbouring ends alike in yarn, density and beam.
type Stripe struct {
	Yarn    string
	Ends    qty.Rat // whole unless rounding is off
	Density qty.Rat // ends per nanometre in the reed
	Order   sett.Order
	Beam    int // 1 or 2
}

// Node gives the node with that id.
func (r *Result) Node(id string) (Node, bool) {
	if r.index == nil {
		r.index = make(map[string]int, len(r.Nodes))
	}
	for ; r.indexed < len(r.Nodes); r.indexed++ {
		r.index[r.Nodes[r.indexed].ID] = r.indexed
	}
	i, ok := r.index[id]
	if !ok {
		return Node{}, false
	}
	return r.Nodes[i], true
}

// run is one reckoning under way.
type run struct {
	calc
	plan   *warp.Plan
	out    *Result
	kase   defaults.Case
	shown  map[string]term // givens and defaults already made into nodes
	length chain
	width  chain
	metric bool
	cloth  cloth
	pieces []pieceRun
	warpIs warpRun
	weft   weftRun
	costs  []term // of the yarns, by node
	silent bool   // only the values are wanted, no nodes are made
}

// Room made for nodes beforehand.
const (
	usualNodes   = 128
	nodesOfPiece = 32
)

// Reckon works out every number of the plan, forwards. Problems of the plan
// against the loom and the cloth are in the result; a plan that decoded without
// errors always reckons.
func Reckon(plan *warp.Plan, opt Options) *Result {
	r := &run{
		calc:  calc{show: opt.Workings},
		plan:  plan,
		out:   &Result{Plan: plan, Defaults: defaults.Version, Nodes: make([]Node, 0, usualNodes+nodesOfPiece*len(plan.Pieces))},
		shown: make(map[string]term, usualNodes),
	}
	r.prepare()
	r.reckonWidth()
	r.reckonPieces()
	r.reckonWarp()
	r.reckonHeddles()
	r.reckonYarn()
	r.reckonDressing()
	if opt.Tape {
		r.reckonMarks()
	}
	r.reckonCost()
	r.check()
	r.out.pieces = r.pieces
	return r.out
}

// given says where a written figure stands and how it was typed.
type given struct {
	path, typed string
	state       warp.State
	about       About
	built       bool
}

// put makes a node of t and gives the leaf that stands for it.
func (r *run) put(id string, t term, state warp.State, about About) term {
	if r.silent {
		return t
	}
	r.out.Nodes = append(r.out.Nodes, Node{
		ID: id, Figure: t.Figure, State: state, Formula: t.expr, About: about, Source: "definition",
	})
	return r.leaf(t.Figure, id)
}

// from names the source of the node made last.
func (r *run) from(source string) {
	if !r.silent {
		r.out.Nodes[len(r.out.Nodes)-1].Source = source
	}
}

// given makes a node of a figure the weaver wrote; the same id gives the same
// node.
func (r *run) given(id string, f Figure, g given) term {
	if r.silent {
		return r.leaf(f, id)
	}
	if t, ok := r.shown[id]; ok {
		return t
	}
	origin := Given
	switch {
	case g.built:
		origin = AsBuilt
	case g.path != "" && g.path == r.plan.Find.What:
		origin = Found
	}
	r.out.Nodes = append(r.out.Nodes, Node{
		ID: id, Figure: f, State: g.state, About: g.about, Origin: origin,
		Source: "given", Path: g.path, Typed: g.typed,
	})
	t := r.leaf(f, id)
	r.shown[id] = t
	return t
}

// byDefault makes a node of a starting value.
func (r *run) byDefault(id string, f Figure, v defaults.Value) term {
	if r.silent {
		return r.leaf(f, id)
	}
	if t, ok := r.shown[id]; ok {
		return t
	}
	r.out.Nodes = append(r.out.Nodes, Node{
		ID: id, Figure: f, Origin: Default, Source: v.Source, Low: v.Low, High: v.High, Default: v.Key,
	})
	t := r.leaf(f, id)
	r.shown[id] = t
	return t
}

// lengthOr gives a written length, or the starting value of key.
func (r *run) lengthOr(id, key string, l qty.Typed[qty.Length], path string) term {
	if l.Given() {
		return r.given(id, length(l.Is), given{path: path, typed: l.Typed})
	}
	v, _ := defaults.For(key, r.kase)
	return r.byDefault(id, length(v.Length), v)
}

// shareOr gives a written share, or the starting value of key.
func (r *run) shareOr(id, key string, s qty.Typed[qty.Share], path string) term {
	if s.Given() {
		return r.given(id, share(s.Is.Of), given{path: path, typed: s.Typed})
	}
	v, _ := defaults.For(key, r.kase)
	return r.byDefault(id, share(v.Share), v)
}

// givenLength makes a node of a written length.
func (r *run) givenLength(id, path string, l qty.Typed[qty.Length]) term {
	return r.given(id, length(l.Is), given{path: path, typed: l.Typed})
}
