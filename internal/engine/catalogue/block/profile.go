// Package block weaves in blocks: it writes a profile draft, the short form of a
// block weave, out into threads by a system of units, and says what of it a loom
// lacks.
//
// Blocks are numbered from 1, which a profile writes as A. A unit is the threading of
// one square of the profile's warp; the picks woven for one square of its weft are a
// unit of the treadling.
package block

import (
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
)

// The limits of a profile. They are far beyond any hand loom.
const (
	MostBlocks = 26 // as many as letters
	mostUnits  = 2000
)

// Profile is a draft whose threads are units: the block of each unit across the
// warp, which blocks weave pattern by each profile treadle, and the profile treadle
// of each unit along the weft.
type Profile struct {
	Blocks    int
	Threading []int       // the block of each unit, from the left
	Ties      []draft.Set // the blocks of each profile treadle, the first first; none: treadle n is block n
	Treadling []draft.Set // the profile treadles of each unit of picks; none is background
}

// Patterns gives the blocks that weave pattern in each unit of picks.
func (p *Profile) Patterns() []draft.Set {
	out := make([]draft.Set, len(p.Treadling))
	for i, pressed := range p.Treadling {
		if len(p.Ties) == 0 {
			out[i] = pressed
			continue
		}
		for k, tied := range p.Ties {
			if pressed.Has(k + 1) {
				out[i] |= tied
			}
		}
	}
	return out
}

// AsDrawnIn gives the profile with a unit of picks for each unit of ends, by the
// profile treadle of the same number.
func (p *Profile) AsDrawnIn() *Profile {
	c := *p
	c.Treadling = nil
	for _, block := range p.Threading {
		c.Treadling = append(c.Treadling, draft.Of(block))
	}
	return &c
}

// Text is a profile as it is written.
type Text struct {
	Threading, Treadling string
	Ties                 []string          // of each profile treadle, as "1+3"
	Groups               map[string]string // named orders that the others call
}

// Read reads a profile: orders of blocks by letters or numbers in the one shorthand
// of package order, "A B C D C B" or "(A B) x 3, C", the treadling also
// "1+3" for blocks that weave pattern together. Where no treadling is written the
// profile is treadled as it is drawn in. Problems have the codes of package order and
// those of Check, at threading, treadling and tie-up.
func Read(t Text) (*Profile, *problem.List) {
	r := reader{groups: letters(t.Groups)}
	p := &Profile{}
	for _, run := range r.order("threading", t.Threading, order.Shafts) {
		p.Threading = append(p.Threading, slices.Repeat([]int{run.Shaft}, run.Count)...)
		p.Blocks = max(p.Blocks, run.Shaft)
	}
	for i, tie := range t.Ties {
		p.Ties = append(p.Ties, r.tie(i, tie))
	}
	if t.Treadling == "" {
		return r.done(p.AsDrawnIn())
	}
	for _, run := range r.order("treadling", t.Treadling, order.Treadles) {
		p.Treadling = append(p.Treadling, slices.Repeat([]draft.Set{draft.Set(run.Set)}, run.Count)...)
	}
	return r.done(p)
}

// letters adds a group for each block to those that were written: A stands for 1.
func letters(groups map[string]string) map[string]string {
	out := map[string]string{}
	for n := range MostBlocks {
		out[Letter(n+1)] = strconv.Itoa(n + 1)
	}
	for name, text := range groups {
		out[name] = text
	}
	return out
}

// Letter gives the letter of a block.
func Letter(block int) string {
	if block < 1 || block > MostBlocks {
		return strconv.Itoa(block)
	}
	return string(rune('A' + block - 1))
}

type reader struct {
	groups map[string]string
	list   problem.List
}

// done checks what could be read.
func (r *reader) done(p *Profile) (*Profile, *problem.List) {
	if r.list.Failed() {
		return nil, &r.list
	}
	if list := p.Check(); list.Failed() {
		return nil, list
	}
	return p, &r.list
}

func (r *reader) order(path, text string, kind order.Kind) []order.Run {
	o, faults := order.Parse(text, order.Context{Kind: kind, Groups: r.groups})
	for _, f := range faults {
		r.list.Fail(f.Code, path, f.Read, f.Args)
	}
	if len(faults) > 0 {
		return nil
	}
	return o.Runs(1)
}

func (r *reader) tie(i int, text string) draft.Set {
	var tied draft.Set
	for _, run := range r.order("tie-up["+strconv.Itoa(i)+"]", text, order.Treadles) {
		tied |= draft.Set(run.Set)
	}
	return tied
}

// Check tells all that is wrong with a profile, whatever it is woven in.
func (p *Profile) Check() *problem.List {
	var list problem.List
	if p.Blocks < 1 || p.Blocks > MostBlocks {
		list.Fail("block.blocks", "blocks", strconv.Itoa(p.Blocks), problem.Args{"most": MostBlocks})
		return &list
	}
	p.checkUnits(&list, "threading", len(p.Threading))
	p.checkUnits(&list, "treadling", len(p.Treadling))
	for i, block := range p.Threading {
		if block < 1 || block > p.Blocks {
			list.Fail("block.unknown", "threading["+strconv.Itoa(i)+"]", Letter(block), problem.Args{"blocks": p.Blocks})
		}
	}
	p.checkTies(&list)
	return &list
}

func (p *Profile) checkUnits(list *problem.List, path string, n int) {
	if n < 1 || n > mostUnits {
		list.Fail("block.units", path, strconv.Itoa(n), problem.Args{"most": mostUnits})
	}
}

// checkTies checks what the profile treadles are tied to and that there are those
// that are pressed.
func (p *Profile) checkTies(list *problem.List) {
	treadles := p.Blocks
	if len(p.Ties) > 0 {
		treadles = len(p.Ties)
	}
	for i, tied := range p.Ties {
		if beyond := tied &^ draft.UpTo(p.Blocks); beyond != 0 {
			list.Fail("block.unknown", "tie-up["+strconv.Itoa(i)+"]", beyond.String(), problem.Args{"blocks": p.Blocks})
		}
	}
	for i, pressed := range p.Treadling {
		if beyond := pressed &^ draft.UpTo(treadles); beyond != 0 {
			list.Fail("block.treadle", "treadling["+strconv.Itoa(i)+"]", beyond.String(), problem.Args{"treadles": treadles})
		}
	}
}
