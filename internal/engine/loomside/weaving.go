package loomside

import (
	"slices"

	"sley/internal/engine/reckon"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Weaving is a warp as it is woven, from its first pick to its last.
type Weaving struct {
	Treadled bool         // the feet press treadles; else shafts are lifted
	Presses  []Press      // the different ones
	Yarns    []string     // the weft yarns, the main one first
	Kinds    []Kind       // pieces that are woven alike, pick for pick
	Pieces   []Piece      // in the order in which they are woven
	Total    int          // picks
	Header   *reckon.Node // warp of the header and of the sampling before the first pick; nil: none
	Sampling *reckon.Node
	Gap      *reckon.Node // warp between two pieces; nil: none
}

// Press is what is pressed or lifted for a pick, and what is on top then.
type Press struct{ Treadles, Up draft.Set }

// Kind is how pieces of one kind that have the same picks are woven.
type Kind struct {
	Piece     int   // index of the plan's pieces
	Presses   []int // of each pick, indices of Weaving.Presses; nil: the plan does not say
	Weft      []int // of each pick, indices of Weaving.Yarns
	FromRight []bool
	Stretches []Stretch
	Motif     Motif
	OnLoom    qty.Rat // what the tape reads at its end, in nanometres; 0: not known
}

// Picks is how many picks it has.
func (k Kind) Picks() int { return len(k.Weft) }

// Stretch is neighbouring picks of one part of a piece, or of several at once: a border
// may lie in a hem.
type Stretch struct {
	From, To int // picks of the piece woven before it, and by its end
	Parts    []string
}

// The parts of a piece.
const (
	PartTurnIn = "turn-in"
	PartHem    = "hem"
	PartBorder = "border"
	PartBody   = "body"
)

// Motif is what the treadling repeats.
type Motif struct {
	Before int // picks before the first
	Picks  int // of one; 0: nothing is repeated
	Times  int // whole or begun
}

// Piece is one piece on the warp.
type Piece struct {
	Kind        int // index of Weaving.Kinds
	Number, Of  int // among those of its kind of piece, from 1
	Before      int // picks of the warp before it
	First, Last End
	CutOff      bool // the cloth is cut off after it, and the warp tied on again
}

// End is what is done at one end of a piece at the loom.
type End struct {
	Fringe    *reckon.Node // warp to leave for it; nil: none
	Hemstitch bool
}

// Weave lays a warp out pick by pick. ends are the picks at which pieces really ended,
// from the start of the warp, by their number from 1; others end as planned. It reports
// false where the picks are not known, or are no whole number.
func Weave(r *reckon.Result, ends map[int]int) (*Weaving, bool) {
	laid, ok := r.Laid()
	if !ok {
		return nil, false
	}
	w := &weaver{Weaving: &Weaving{}, r: r, laid: laid, known: map[[2]int]int{}, ends: ends}
	w.Treadled = len(r.Plan.Drafting.Ups) > 0 && r.Plan.Drafting.LiftPlan.IsZero()
	w.Header, w.Sampling, w.Gap = w.node("warp.header"), w.node("warp.sampling"), w.node("gap")
	for i := range laid {
		w.pieces(i)
	}
	if w.Total == 0 || w.Total > mostPicks {
		return nil, false
	}
	return w.Weaving, true
}

// mostPicks keeps a warp of kilometres from filling the memory.
const mostPicks = 2_000_000

type weaver struct {
	*Weaving
	r     *reckon.Result
	laid  []reckon.Laid
	known map[[2]int]int // kinds by piece and picks
	ends  map[int]int
}

func (w *weaver) node(id string) *reckon.Node {
	if n, ok := w.r.Node(id); ok && n.Is.Sign() > 0 {
		return &n
	}
	return nil
}

// pieces adds the pieces of a kind: first those that came off the loom otherwise.
func (w *weaver) pieces(i int) {
	laid := w.laid[i]
	all := slices.Concat(laid.Woven, slices.Repeat([]int{laid.Picks}, max(laid.Count, 0)))
	for n, picks := range all {
		if w.Total > mostPicks {
			return
		}
		if end, ok := w.ends[len(w.Pieces)+1]; ok && end > w.Total {
			picks = end - w.Total
		}
		p := Piece{Kind: w.kind(i, picks), Number: n + 1, Of: len(all), Before: w.Total}
		p.First, p.Last = w.end(i, "first"), w.end(i, "last")
		p.CutOff = w.r.Plan.Pieces[i].CutOff && n == len(all)-1
		w.Pieces = append(w.Pieces, p)
		w.Total += picks
	}
}

func (w *weaver) end(i int, which string) End {
	e := w.r.Plan.Pieces[i].First
	if which == "last" {
		e = w.r.Plan.Pieces[i].Last
	}
	if e.Finish != warp.Fringe {
		return End{}
	}
	return End{Fringe: w.node(pieceID(i) + which + ".fringe-cut"), Hemstitch: true}
}

// kind finds how a piece of so many picks is woven, or lays it out.
func (w *weaver) kind(i, picks int) int {
	key := [2]int{i, picks}
	if at, ok := w.known[key]; ok {
		return at
	}
	k := Kind{Piece: i}
	k.Presses, k.Motif = w.presses(picks)
	k.Weft = w.weft(w.laid[i], picks)
	k.FromRight = sides(k.Weft)
	k.Stretches = w.stretches(i, picks)
	if n := w.node(pieceID(i) + "on-loom"); n != nil {
		k.OnLoom = n.Is.Mul(qty.Frac(int64(picks), int64(max(w.laid[i].Picks, 1))))
	}
	w.known[key] = len(w.Kinds)
	w.Kinds = append(w.Kinds, k)
	return w.known[key]
}

// weft is the yarn of each pick.
func (w *weaver) weft(laid reckon.Laid, picks int) []int {
	out := make([]int, 0, picks)
	for _, run := range laid.Yarns(picks) {
		at := slices.Index(w.Yarns, run.Name)
		if at < 0 {
			at = len(w.Yarns)
			w.Yarns = append(w.Yarns, run.Name)
		}
		out = append(out, slices.Repeat([]int{at}, run.Count)...)
	}
	return out
}

// sides is the side each pick's shuttle is thrown from: each begins at the left and turns
// at every pick of its own.
func sides(weft []int) []bool {
	thrown := map[int]int{}
	out := make([]bool, len(weft))
	for i, yarn := range weft {
		out[i] = thrown[yarn]%2 == 1
		thrown[yarn]++
	}
	return out
}

func pieceID(i int) string { return "pieces[" + itoa(i) + "]." }
