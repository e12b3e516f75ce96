// Package catalogue makes the weaves of the handbooks by rule: each entry is a
// structure with its parameters, and gives a draft for every legal choice of them.
// What is known of a draft is computed from it; the words are package present's, by
// the ids that stand here.
package catalogue

import (
	"slices"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/near"
	"sley/internal/trade/problem"
)

// Family is a kin of structures.
type Family string

// The families, in the order of the catalogue.
const (
	Plain    Family = "plain"     // plain weave, ribs and baskets
	Twills   Family = "twill"     // twills and what is made of them
	Satins   Family = "satin"     // satins and what is made of them
	Laces    Family = "lace"      // open cloths, spots and huck
	Textures Family = "texture"   // cells, crepes, cords
	Blocks   Family = "block"     // patterns by blocks and tie-downs
	Faced    Family = "faced"     // one thread covers the other
	Layers   Family = "layer"     // cloths in layers, and backed ones
	Piles    Family = "pile"      // floats to be cut
	Colours  Family = "colouring" // colour-and-weave
)

// Families lists the families in the order of the catalogue.
func Families() []Family {
	return []Family{Plain, Twills, Satins, Laces, Textures, Blocks, Faced, Layers, Piles, Colours}
}

// Entry is a structure made by rule. Its words are kept under its ID, those of a
// parameter under the parameter's name.
type Entry struct {
	ID     string // stable, the trade's name
	Family Family
	Params []Param
	Sett   Basis
	// Layered says that it need not hang together: it is woven in layers.
	Layered bool
	// Source says where the rule is checked against, in words; "from memory" where it
	// was written down from common knowledge of the trade.
	Source string

	make func(m *making) *draft.Draft
}

// All lists the entries by their families.
func All() []*Entry {
	return slices.Concat(plains(), twills(), pointedTwills(), movedTwills(), satins(), laces(), cells(), crepes(), cords(), blocked(), faced(), layered(), backed(), piles(), checks(), colourings())
}

// Of lists the entries of a family.
func Of(family Family) []*Entry {
	return slices.DeleteFunc(All(), func(e *Entry) bool { return e.Family != family })
}

// Find gives the entry of that id. Where there is none it gives nil and the problem
// catalogue.entry at entry, with what was likely meant.
func Find(id string) (*Entry, *problem.List) {
	var list problem.List
	var ids []string
	for _, e := range All() {
		if e.ID == id {
			return e, &list
		}
		ids = append(ids, e.ID)
	}
	list.Fail("catalogue.entry", "entry", id, problem.Args{"near": near.To(id, ids)})
	return nil, &list
}

const memory = "from memory"

// Values are parameters as they are written, by name; those left out have their
// defaults.
type Values map[string]string

// Make gives the draft for those parameters: threading, ties and treadling for a
// rising shed, and colours where they make the structure. Where a parameter is wrong it
// gives nil and all that is wrong, at the names of the parameters: the codes are those
// of param.go, of package order and of package block, and catalogue.apart when threads
// would lie loose.
func (e *Entry) Make(values Values) (*draft.Draft, *problem.List) {
	m := newMaking(e, values)
	if m.list.Failed() {
		return nil, &m.list
	}
	d := e.make(m)
	if !m.list.Failed() && !e.Layered && !structure.HangsTogether(d.Drawdown()) {
		m.list.Fail("catalogue.apart", "", "", problem.Args{"entry": e.ID})
	}
	if m.list.Failed() {
		return nil, &m.list
	}
	d.Shed = loom.Rising
	return d, &m.list
}

// Default gives the draft of the defaults; an entry whose defaults are wrong is a
// fault of the catalogue, and panics.
func (e *Entry) Default() *draft.Draft {
	d, list := e.Make(nil)
	if list.Failed() {
		panic("internal error: the defaults of " + e.ID + ": " + list.All()[0].Code)
	}
	return d
}
