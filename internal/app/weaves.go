package app

import (
	"context"
	"slices"
	"strings"
	"sync"

	"sley/internal/engine/catalogue"
	"sley/internal/engine/structure"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// Weave is an entry of the catalogue of weaves as it is listed: its ids, whose words
// package present keeps, and what it is by its defaults.
type Weave struct {
	ID, Family string
	Source     string // where its rule is checked against
	Params     []WeaveParam
	Facts      WeaveFacts
}

// WeaveParam is something that a weave asks for.
type WeaveParam struct {
	Name, Default string
	Kind          string // count, choice, ratio, units, threads
	Least, Most   int    // of counts, and of the sums of ratios; 0 and 0: of neither
	Even          bool   // of counts: only even ones
	Options       []string
}

// WeaveFacts are what is computed of a weave.
type WeaveFacts struct {
	Shafts, Treadles                         int
	Ends, Picks                              int // of its draft, orders of colours and all
	RepeatEnds, RepeatPicks                  int // of the weave
	WarpFront, WarpBack, WeftFront, WeftBack int // longest floats
	Balance                                  structure.Balance
	Layers                                   int
	Hangs                                    bool // together, as one cloth
	// Sett is the closest as a share of the closest of plain weave, SettBasis what it
	// goes by.
	Sett      qty.Rat
	SettBasis string
	Coloured  bool // the order of colours makes it
}

// LongestFloat is the longest of all, in threads.
func (f WeaveFacts) LongestFloat() int {
	return max(f.WarpFront, f.WarpBack, f.WeftFront, f.WeftBack)
}

// weaves are found once: the catalogue never changes while the program runs.
var weaves = sync.OnceValue(func() []Weave {
	var out []Weave
	for _, family := range catalogue.Families() {
		for _, e := range catalogue.Of(family) {
			w := Weave{ID: e.ID, Family: string(family), Source: e.Source, Facts: factsOf(e, &Drafted{Draft: e.Default()})}
			for _, p := range e.Params {
				w.Params = append(w.Params, WeaveParam{p.Name, p.Default, p.Kind.String(), p.Least, p.Most, p.Even, p.Options})
			}
			out = append(out, w)
		}
	}
	return out
})

// Weaves lists the catalogue by its families.
func Weaves() []Weave { return slices.Clone(weaves()) }

func factsOf(e *catalogue.Entry, d *Drafted) WeaveFacts {
	f := catalogue.FactsOf(d.Draft)
	return WeaveFacts{
		Shafts: f.Shafts, Treadles: f.Treadles, Ends: f.Ends, Picks: f.Picks,
		RepeatEnds: f.RepeatEnds, RepeatPicks: f.RepeatPicks,
		WarpFront: f.WarpFront, WarpBack: f.WarpBack, WeftFront: f.WeftFront, WeftBack: f.WeftBack,
		Balance: f.Balance, Layers: f.Woven, Hangs: f.Hangs,
		Sett: e.SettFactor(f), SettBasis: e.Sett.String(), Coloured: d.Coloured(),
	}
}

// Coloured reports whether the ends, or the picks, of a draft are of more than one colour.
func (d *Drafted) Coloured() bool {
	return severalColours(d.Draft.Warp.Colours) || severalColours(d.Draft.Weft.Colours)
}

func severalColours(of []int) bool {
	return slices.ContainsFunc(of, func(c int) bool { return c != of[0] })
}

// LookAtWeave tells what the weave of that id is with what it asks for as it is written;
// what is left out is as the catalogue has it. The draft is nil when the list has errors.
func LookAtWeave(id string, values map[string]string) (*Drafted, WeaveFacts, *problem.List) {
	d, list := MakeWeave(id, values)
	if d == nil {
		return nil, WeaveFacts{}, list
	}
	e, _ := catalogue.Find(id)
	return d, factsOf(e, d), list
}

// AddWeave puts a weave of the catalogue on the shelf as a draft of that name.
func (s *Studio) AddWeave(ctx context.Context, window, name, id string, values map[string]string) (Saved, error) {
	d, list := MakeWeave(id, values)
	name = strings.TrimSpace(name)
	checkName(name, "name", list)
	if list.Failed() {
		return refused(list), nil
	}
	d.Draft.Name = name
	b := &body{Name: name, WIF: &text{id + ".wif", string(WriteDraft(d))}}
	return s.keep(ctx, fresh{kind: record.Draft, body: b, window: window})
}
