// Package defaults holds the starting values of a plan that says little: one
// versioned table, each value with its range, the two states it runs between
// and the id of its source. A default is always shown as one.
package defaults

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// Version is the version of the table; it goes into every frozen plan.
const Version = "2026-1"

// Source is where a value comes from.
type Source struct {
	ID     string
	Text   string // the citation, or what kind of knowledge it is
	Status Status
}

// Status says how well a source was seen.
type Status string

// The statuses.
const (
	Seen     Status = "seen"
	Memory   Status = "from memory"
	Practice Status = "common practice, no source"
)

// Value is one starting value. Exactly one of Share, Length, Number is meant,
// as the key says.
type Value struct {
	Key       string // "take-up", "slack", "loom-waste" ...
	Fibre     string // "" any; else cotton, linen, wool, silk
	Weave     string // "" any; else the class of warp.Weave
	Wash      string // "" any; else washed, fulled, unwashed
	Loom      string // "" any; else table, floor
	From, To  warp.State
	Share     qty.Rat // share lost of the earlier state, unless the key says added
	Length    qty.Length
	Low, High qty.Rat // range of Share, or of Length in nanometres
	Source    string  // id of a Source
}

// Case is what a value is looked up for; empty fields are unknown.
type Case struct{ Fibre, Weave, Wash, Loom string }

// For gives the value of key that fits c best: the entry that names most of
// what c says and nothing that it does not. It reports false when the key is
// not in the table.
func For(key string, c Case) (Value, bool) {
	best, rank := Value{}, -1
	for _, v := range Table() {
		if v.Key != key {
			continue
		}
		if r := v.fit(c); r > rank {
			best, rank = v, r
		}
	}
	return best, rank >= 0
}

// fit counts what v names and c says alike; -1 when they differ.
func (v Value) fit(c Case) int {
	pairs := [][2]string{{v.Fibre, c.Fibre}, {v.Weave, c.Weave}, {v.Wash, c.Wash}, {v.Loom, c.Loom}}
	rank := 0
	for _, pair := range pairs {
		switch {
		case pair[0] == "":
		case pair[0] == pair[1]:
			rank++
		default:
			return -1
		}
	}
	return rank
}

// SourceOf gives the source with that id.
func SourceOf(id string) (Source, bool) {
	for _, s := range Sources() {
		if s.ID == id {
			return s, true
		}
	}
	for _, k := range yarn.KValues() {
		if k.ID == id {
			return Source{k.ID, k.Source, Seen}, true
		}
	}
	return Source{}, false
}
