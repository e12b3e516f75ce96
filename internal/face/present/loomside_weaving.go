package present

import (
	"strings"

	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// WeavingJSON is a warp pick by pick.
type WeavingJSON struct {
	Treadled bool            `json:"treadled"` // treadles are pressed; else shafts are lifted
	Treadles int             `json:"treadles"` // of the draft
	Shafts   int             `json:"shafts"`
	Total    int             `json:"total"`
	Reads    string          `json:"reads"` // how the tape is read: with the warp tight, or slackened
	Presses  []PressJSON     `json:"presses"`
	Yarns    []LoomYarnJSON  `json:"yarns"`
	Kinds    []WovenKindJSON `json:"kinds"`
	Pieces   []WovenPiece    `json:"pieces"`
}

// PressJSON is what is pressed or lifted for a pick, and what is on top then.
type PressJSON struct {
	Text     string `json:"text"`
	Aloud    string `json:"aloud"`
	Treadles []int  `json:"treadles"`
	Up       []int  `json:"up"`
	UpSays   string `json:"up_says"`
}

// LoomYarnJSON is a weft yarn.
type LoomYarnJSON struct {
	Name   string `json:"name"`
	Colour string `json:"colour,omitempty"`
}

// WovenKindJSON is pieces that are woven alike.
type WovenKindJSON struct {
	Picks     int           `json:"picks"`
	Presses   []int         `json:"presses"` // of each pick; empty: the plan does not say
	Weft      []int         `json:"weft"`    // of each pick, indices of yarns
	FromRight []bool        `json:"from_right"`
	Stretches []StretchJSON `json:"stretches"`
	Motif     MotifJSON     `json:"motif"`
	Tape      []ReadsJSON   `json:"tape"` // what the tape should read, from each pick on where it changes
}

// StretchJSON is neighbouring picks of a part of a piece.
type StretchJSON struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Says string `json:"says"`
}

// MotifJSON is what the treadling repeats.
type MotifJSON struct {
	Before int `json:"before"`
	Picks  int `json:"picks"`
	Times  int `json:"times"`
}

// ReadsJSON is what the tape should read after so many picks of the piece.
type ReadsJSON struct {
	Picks int    `json:"picks"`
	Says  string `json:"says"`
}

// WovenPiece is one piece on the warp.
type WovenPiece struct {
	Kind   int      `json:"kind"`
	Says   string   `json:"says"`
	Before int      `json:"before"`          // picks of the warp before it
	First  []string `json:"first"`           // to be done before its first pick
	Last   []string `json:"last"`            // to be done after its last
	Ended  string   `json:"ended,omitempty"` // the event that says where it ended, where that is not as planned
}

func (l looming) weaving() *WeavingJSON {
	w := l.Weaving
	plan := l.Result.Plan
	out := &WeavingJSON{
		Treadled: w.Treadled, Treadles: len(plan.Drafting.Ups), Shafts: plan.Shafts(), Total: w.Total,
		Presses: []PressJSON{}, Yarns: []LoomYarnJSON{}, Reads: readTight,
	}
	if plan.Tape == warp.Slackened {
		out.Reads = readSlack
	}
	for _, p := range w.Presses {
		out.Presses = append(out.Presses, l.press(p))
	}
	for _, name := range w.Yarns {
		y, _ := plan.YarnNamed(name)
		one := LoomYarnJSON{Name: name}
		if y != nil {
			one.Colour = y.Colour.Hex
		}
		out.Yarns = append(out.Yarns, one)
	}
	for _, k := range w.Kinds {
		out.Kinds = append(out.Kinds, l.kind(k))
	}
	for i, p := range w.Pieces {
		out.Pieces = append(out.Pieces, l.piece(i, p))
	}
	return out
}

func (l looming) press(p loomside.Press) PressJSON {
	out := PressJSON{Text: SetText(p.Treadles), Treadles: p.Treadles.List(), Up: p.Up.List(), UpSays: SetText(p.Up)}
	out.Aloud = strings.ReplaceAll(out.Text, " ", ", ")
	if !l.Weaving.Treadled {
		out.Aloud = fillIn(upAloud, "{shafts}", out.Aloud)
	}
	return out
}

func (l looming) kind(k loomside.Kind) WovenKindJSON {
	out := WovenKindJSON{
		Picks: k.Picks(), Presses: k.Presses, Weft: k.Weft, FromRight: k.FromRight,
		Motif: MotifJSON{k.Motif.Before, k.Motif.Picks, k.Motif.Times}, Tape: []ReadsJSON{},
	}
	if out.Presses == nil {
		out.Presses = []int{}
	}
	for _, s := range k.Stretches {
		var parts []string
		for _, part := range s.Parts {
			parts = append(parts, partWords[part])
		}
		out.Stretches = append(out.Stretches, StretchJSON{s.From, s.To, strings.Join(parts, ", ")})
	}
	if k.OnLoom.IsZero() {
		return out
	}
	last := ""
	for pick := range k.Picks() + 1 {
		says := l.u.onTape(k.OnLoom.Mul(qty.Frac(int64(pick), int64(k.Picks()))))
		if says != last {
			out.Tape, last = append(out.Tape, ReadsJSON{pick, says}), says
		}
	}
	return out
}

// piece words a piece, with what is to be done at its ends.
func (l looming) piece(i int, p loomside.Piece) WovenPiece {
	w := l.Weaving
	k := w.Kinds[p.Kind]
	out := WovenPiece{Kind: p.Kind, Before: p.Before, First: []string{}, Last: []string{}, Ended: l.Ended[i+1]}
	out.Says = pieceWords(strings.TrimSpace(l.Result.Plan.Pieces[k.Piece].Name), k.Piece)
	if p.Of > 1 {
		out.Says = fillIn(pieceOf, "{piece}", out.Says, "{n}", number(p.Number), "{of}", number(p.Of))
	}
	if i == 0 {
		out.First = l.noted(out.First, weaveHeader, w.Header)
		out.First = l.noted(out.First, weaveSample, w.Sampling)
		if w.Sampling != nil && l.Result.Plan.Sampling.CutOff {
			out.First = append(out.First, cutOffNow)
		}
	} else {
		out.First = l.noted(out.First, leaveGap, w.Gap)
	}
	out.First = l.end(out.First, p.First)
	out.Last = append(l.end(out.Last, p.Last), measureNow)
	if p.CutOff {
		out.Last = append(out.Last, cutOffNow)
	}
	return out
}

// pieceWords is what a kind of piece is called: by its name, or its number.
func pieceWords(name string, index int) string {
	if name == "" {
		return "piece " + number(index+1)
	}
	return name
}

func (l looming) noted(list []string, words string, n *reckon.Node) []string {
	if n == nil {
		return list
	}
	return append(list, fillIn(words, "{is}", l.u.Bench(*n)))
}

func (l looming) end(list []string, e loomside.End) []string {
	list = l.noted(list, leaveFringe, e.Fringe)
	if e.Hemstitch {
		list = append(list, hemstitchNow)
	}
	return list
}
