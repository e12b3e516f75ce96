package app

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"sley/internal/edge/wif"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
)

// Drafted is a draft that was read, with the text it came from.
type Drafted struct {
	Draft  *draft.Draft
	Called string    // what the book calls it; empty where it is of no book
	file   *wif.File // nil where it came from a plan, or was made here
	// Of a plan: what comes again both ways, and the whole threading over what comes
	// again of the treadling. Nil elsewhere, where the draft is both.
	unit, across *draft.Draft
}

// ReadDraft reads a draft: an interchange text, or a plan file with a threading and
// a treadling. What a text is, it says itself: an interchange text begins with its
// section WIF, a plan with its version. The draft is nil when the list has errors.
func ReadDraft(s Source) (*Drafted, *problem.List) {
	if !isInterchange(s) {
		return draftOfPlan(s)
	}
	file, list := wif.Decode(s.Name, s.Text)
	if list.Failed() {
		return nil, list
	}
	return &Drafted{Draft: file.Draft, file: file}, list
}

// isInterchange reports whether a source is an interchange text, by its name or by
// the section that such a text must have.
func isInterchange(s Source) bool {
	name := strings.ToLower(s.Name)
	if strings.HasSuffix(name, ".wif") {
		return true
	}
	return !strings.HasSuffix(name, ".toml") && bytes.Contains(bytes.ToLower(s.Text), []byte("[wif]"))
}

// draftOfPlan gives the draft of a reckoned plan.
func draftOfPlan(s Source) (*Drafted, *problem.List) {
	r, list := ReckonPlan(s, "", false)
	if r == nil || list.Failed() {
		return nil, list
	}
	d, ok := r.Drawn()
	if !ok {
		list.Fail("draft.none", "draft", "", nil)
		return nil, list
	}
	out := &Drafted{Draft: d}
	if unit, across, ok := r.Cycles(); ok {
		out.unit, out.across = unit, across
	}
	return out, list
}

// WholeDraft reads a draft as ReadDraft does, but that of a plan file whole: every end of
// the warp and every pick of its first piece, at most 8,000 of each, in the colours of its
// yarns. The draft is nil when the list has errors.
func WholeDraft(s Source) (*Drafted, *problem.List) {
	if isInterchange(s) {
		return ReadDraft(s)
	}
	r, list := ReckonPlan(s, "", false)
	if r == nil || list.Failed() {
		return nil, list
	}
	if d, _ := wovenWhole(r, list); d != nil {
		return &Drafted{Draft: d}, list
	}
	return nil, list
}

// WriteDraft gives the interchange text of a draft. What the text it came from had
// besides is kept.
func WriteDraft(d *Drafted) []byte {
	if d.file == nil {
		return wif.Encode(wif.FromDraft(d.Draft))
	}
	d.file.Draft = d.Draft
	return wif.Encode(d.file)
}

// Shuttles says how a cloth is woven: which shuttle throws each pick, as an order of
// their numbers, "1 1 2 2"; and from which side each starts, left or right. Empty is
// one shuttle from the left.
type Shuttles struct {
	Order  string
	Starts []string
}

// weaving reads it; the error is what cannot be read.
func (s Shuttles) weaving() (structure.Weaving, error) {
	var w structure.Weaving
	for _, start := range s.Starts {
		side := slices.Index([]string{"left", "right"}, start)
		if side < 0 {
			return w, fmt.Errorf("%q is no side: a shuttle starts left or right", start)
		}
		w.Start = append(w.Start, structure.Side(side))
	}
	if s.Order == "" {
		return w, nil
	}
	o, faults := order.Parse(s.Order, order.Context{Kind: order.Shafts})
	if len(faults) > 0 || o.Filler() > 0 {
		return w, fmt.Errorf("%q does not say the shuttle of each pick: write their numbers, as \"1 1 2 2\"", s.Order)
	}
	for _, run := range o.Runs(0) {
		w.Shuttles = append(w.Shuttles, slices.Repeat([]int{run.Shaft - 1}, run.Count)...)
	}
	return w, nil
}

// Judged is what is known of a draft's cloth and of its edges.
type Judged struct {
	Cloth *structure.Analysis
	Edges *structure.Edges
}

// cycles gives what the cloth is judged by, and what the edges are.
func (d *Drafted) cycles() (unit, across *draft.Draft) {
	if d.unit == nil {
		return d.Draft, d.Draft
	}
	return d.unit, d.across
}

// Repeat gives the ends and the picks after which the cloth comes again.
func (d *Drafted) Repeat() (ends, picks int) {
	unit, _ := d.cycles()
	a := structure.OfDraft(unit)
	return a.RepeatEnds, a.RepeatPicks
}

// JudgeDraft analyses a draft, woven with one shuttle from the left.
func JudgeDraft(d *Drafted) Judged {
	judged, _ := JudgeWoven(d, Shuttles{})
	return judged
}

// JudgeWoven analyses a draft as it is woven. An order of shuttles shorter than the
// picks is gone through again and again. The error is what of it cannot be read.
func JudgeWoven(d *Drafted, s Shuttles) (Judged, error) {
	w, err := s.weaving()
	if err != nil {
		return Judged{}, err
	}
	unit, across := d.cycles()
	if n := len(w.Shuttles); n > 0 {
		across = across.RepeatPicks(n / gcd(n, across.Picks()))
		for len(w.Shuttles) < across.Picks() {
			w.Shuttles = append(w.Shuttles, w.Shuttles[len(w.Shuttles)-n])
		}
	}
	return Judged{structure.OfDraft(unit), structure.EdgesOfDraft(across, across.Ends(), w)}, nil
}

func gcd(a, b int) int {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}
