package app

import (
	"math/big"
	"slices"
	"strings"
	"unicode"

	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// Take is what a warp takes of a yarn that it has from the shelf.
type Take struct {
	Mark string // of the yarn on the shelf
	// Length in nanometres and Mass in nanograms, exactly; 0 where it is unknown.
	Length, Mass qty.Rat
}

// listedTake is how a take is kept; what is unknown is empty.
type listedTake struct {
	Mark   string `json:"mark"`
	Length string `json:"length_nm,omitempty"`
	Mass   string `json:"mass_ng,omitempty"`
}

// takes lists what a warp takes of the yarns of the shelf, one for each of those; result
// is nil where the plan has errors, and then it is unknown how much that is.
func (b *body) takes(result *reckon.Result) []listedTake {
	sums := map[string]*Take{}
	var marks []string
	for _, o := range b.Origins {
		steps, err := problem.ParsePath(o.Part)
		if o.Kind != record.Yarn || err != nil || len(steps) != 2 {
			continue
		}
		need := needOf(result, steps[1].Key)
		if result != nil && need.Length.IsZero() {
			continue // the plan has it, and nothing is woven of it
		}
		if sums[o.Mark] == nil {
			sums[o.Mark] = &Take{Mark: o.Mark}
			marks = append(marks, o.Mark)
		}
		sums[o.Mark].Length = sums[o.Mark].Length.Add(need.Length)
		sums[o.Mark].Mass = sums[o.Mark].Mass.Add(need.Mass)
	}
	var out []listedTake
	for _, mark := range marks {
		out = append(out, listedTake{mark, exactly(sums[mark].Length), exactly(sums[mark].Mass)})
	}
	return out
}

// needOf is what a plan needs of the yarn that it calls by a name.
func needOf(result *reckon.Result, name string) Take {
	var t Take
	if result == nil {
		return t
	}
	if n, ok := result.Node("yarns[" + name + "].need"); ok {
		t.Length = n.Is
	}
	if n, ok := result.Node("yarns[" + name + "].weight"); ok {
		t.Mass = n.Is
	}
	return t
}

func exactly(r qty.Rat) string {
	if r.IsZero() {
		return ""
	}
	return r.String()
}

func takesOf(kept []listedTake) []Take {
	var out []Take
	for _, k := range kept {
		out = append(out, Take{k.Mark, amountOf(k.Length), amountOf(k.Mass)})
	}
	return out
}

func amountOf(text string) qty.Rat {
	is, ok := new(big.Rat).SetString(text)
	if !ok {
		return qty.Rat{}
	}
	return qty.FromBig(is)
}

// takesLetter begins the word that a warp in hand is found by for each yarn of the shelf
// that it has: a letter that nobody types, so that no search by words meets it.
const takesLetter = "ꙮ"

func wordsOfTakes(takes []listedTake) []string {
	var out []string
	for _, t := range takes {
		out = append(out, takesWord(t.Mark))
	}
	return out
}

// takesWord is one word, whatever stands in the mark.
func takesWord(mark string) string {
	return takesLetter + strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsNumber(c) {
			return c
		}
		return -1
	}, mark)
}

// takeOf is what a warp takes of the yarn with that mark; false where it takes none.
func (c Card) takeOf(mark string) (Take, bool) {
	i := slices.IndexFunc(c.Takes, func(t Take) bool { return t.Mark == mark })
	if i < 0 {
		return Take{}, false
	}
	return c.Takes[i], true
}
