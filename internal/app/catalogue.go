package app

import (
	"sley/internal/engine/catalogue"
	"sley/internal/engine/catalogue/block"
	"sley/internal/engine/draw/drafting"
	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// MakeWeave makes the weave of that id, with what it asks for as it is written. The
// draft is nil when the list has errors.
func MakeWeave(id string, values map[string]string) (*Drafted, *problem.List) {
	entry, list := catalogue.Find(id)
	if entry == nil {
		return nil, list
	}
	d, list := entry.Make(values)
	if d == nil {
		return nil, list
	}
	return &Drafted{Draft: d}, list
}

// SystemNames lists the ways to weave blocks.
func SystemNames() []string {
	var out []string
	for _, s := range block.Systems() {
		out = append(out, s.ID)
	}
	return out
}

// FeetNames lists the ways to make the lifts of blocks: a treadle for each, a skeleton
// tie-up, no treadles.
func FeetNames() []string { return []string{"one", "two", "none"} }

// Blocked is a profile draft to be written out, as it is written, and the loom it is
// for, as far as that is known.
type Blocked struct {
	System               string
	Threading, Treadling string
	Ties                 []string
	Feet                 string
	Loom                 loom.Loom
}

// WriteBlocks writes a profile draft out into threads. The list says what the loom
// lacks; the draft is nil when it has errors.
func WriteBlocks(b Blocked) (*Drafted, *problem.List) {
	system, likely := block.Find(b.System)
	if system == nil {
		list := &problem.List{}
		list.Fail("block.system", "system", b.System, problem.Args{"near": likely, "valid": SystemNames()})
		return nil, list
	}
	profile, list := block.Read(block.Text{Threading: b.Threading, Treadling: b.Treadling, Ties: b.Ties})
	if list.Failed() {
		return nil, list
	}
	if list = system.Capacity(profile, &b.Loom); list.Failed() {
		return nil, list
	}
	feet := map[string]block.Feet{"two": block.TwoFeet, "none": block.LiftPlan}[b.Feet]
	d, found := system.Expand(profile, feet)
	list.Append(found)
	if d == nil {
		return nil, list
	}
	return &Drafted{Draft: d}, list
}

// mostMarked is how many floats a picture points out.
const mostMarked = 5000

// LongFloats gives the floats of a draft that are at least so long, as a drawing
// marks them; of very many, the first.
func LongFloats(d *draft.Draft, least int) []drafting.Float {
	a := structure.OfDraft(d)
	var out []drafting.Float
	for _, way := range []structure.Way{structure.Warp, structure.Weft} {
		for _, face := range []structure.Face{structure.Front, structure.Back} {
			for p := range a.Places(way, face, least) {
				if len(out) == mostMarked {
					return out
				}
				out = append(out, floatAt(p, way, face, a.Floating[0]))
			}
		}
	}
	return out
}

// floatAt is where a float is drawn; floating selvedges, which the analysis leaves
// out, stand before its first end.
func floatAt(p structure.Place, way structure.Way, face structure.Face, before int) drafting.Float {
	f := drafting.Float{Pick: p.Thread, End: p.From + before, Long: p.Long, Face: drafting.Face(face)}
	if way == structure.Warp {
		f.Pick, f.End, f.Warp = p.From, p.Thread+before, true
	}
	return f
}
