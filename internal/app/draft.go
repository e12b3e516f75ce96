package app

import (
	"bytes"
	"strings"

	"sley/internal/edge/wif"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// Drafted is a draft that was read, with the text it came from.
type Drafted struct {
	Draft *draft.Draft
	file  *wif.File // nil where it came from a plan, or was made here
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

// WriteDraft gives the interchange text of a draft. What the text it came from had
// besides is kept.
func WriteDraft(d *Drafted) []byte {
	if d.file == nil {
		return wif.Encode(wif.FromDraft(d.Draft))
	}
	d.file.Draft = d.Draft
	return wif.Encode(d.file)
}

// Judged is what is known of a draft's cloth and of its edges, woven with one
// shuttle from the left.
type Judged struct {
	Cloth *structure.Analysis
	Edges *structure.Edges
}

// JudgeDraft analyses a draft.
func JudgeDraft(d *Drafted) Judged {
	unit, across := d.unit, d.across
	if unit == nil {
		unit, across = d.Draft, d.Draft
	}
	return Judged{structure.OfDraft(unit), structure.EdgesOfDraft(across, across.Ends(), structure.Weaving{})}
}
