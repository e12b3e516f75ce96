package reckon

import (
	"math"
	"strings"

	"sley/internal/engine/defaults"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

func sqrt(f float64) float64 { return math.Sqrt(f) }

// Origin says where a figure comes from.
type Origin int

// The origins.
const (
	Reckoned Origin = iota // worked out from other nodes
	Given                  // the weaver wrote it
	Default                // a starting value of ours
	AsBuilt                // what stands on the loom
	Found                  // found backwards
)

// About names what a node is about, for its words: which piece, yarn, shaft.
type About struct {
	Piece, Yarn, Reed, Order, Mark string
	Index                          int // number of the shaft or the alternative, from 1
}

// Node is one number of the reckoning.
type Node struct {
	ID string // stable path, "pieces[0].on-loom"
	Figure
	State   warp.State
	Formula *Expr // nil for a figure that was given, and when workings were not asked for
	About   About
	Origin  Origin
	Source  string  // id in the table of defaults
	Path    string  // of a given figure: where it stands in the plan
	Typed   string  // of a given figure: as written
	Low     qty.Rat // of a default: its range
	High    qty.Rat
	Default string // of a default: its key
}

// Says gives the id of the words for the node: its path without indices and
// names.
func (n Node) Says() string { return Says(n.ID) }

// Says strips the indices of a path: pieces[0].on-loom is pieces[].on-loom.
func Says(id string) string {
	open := strings.IndexByte(id, '[')
	if open < 0 {
		return id
	}
	shut := strings.IndexByte(id[open:], ']')
	if shut < 0 {
		return id
	}
	return id[:open+1] + "]" + Says(id[open+shut+1:])
}

// Inputs lists the ids of the nodes in the formula, each once.
func (n Node) Inputs() []string {
	if n.Formula == nil {
		return nil
	}
	var ids []string
	seen := map[string]bool{}
	n.Formula.Leaves(func(e *Expr) {
		if e.Node != "" && !seen[e.Node] {
			seen[e.Node] = true
			ids = append(ids, e.Node)
		}
	})
	return ids
}

// SourceText gives the citation behind the id of a source, or the id itself
// when it is not in the table.
func SourceText(id string) string {
	if s, ok := defaults.SourceOf(id); ok {
		return s.Text
	}
	return id
}
