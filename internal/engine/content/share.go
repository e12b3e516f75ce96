// Package content says what fibre is in a cloth, as its label has it: the yarn that is in
// the pieces, dried and given the allowances that law agrees upon, in shares that come to
// 100, and how such cloth is cared for. Same input, same answer; the words of labels are
// the names that the rules prescribe, all others are of package present.
package content

import (
	"slices"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Basis says in which condition something was weighed.
type Basis int

// The conditions. What lies on a shelf holds the moisture of the air, which the agreed
// allowances stand for; Scoured is such a weight of washed fibre, Grease one of fibre that
// nobody washed, whose grease cannot be told from wool. Dry was dried to a constant weight
// with all that is natural in it, Clean after pre-treatment took that out.
const (
	Shelf Basis = iota
	Scoured
	Grease
	Dry
	Clean
)

// String gives the condition's name.
func (b Basis) String() string {
	return [...]string{"shelf", "scoured", "grease", "dry", "clean"}[b]
}

// Part is so much of one fibre.
type Part struct {
	Fibre yarn.Fibre
	Mass  qty.Rat // in any unit, the same for all parts; above 0
	Basis Basis
	Raw   bool // unbleached: cotton, flax and hemp lose 4 % when pre-treated
}

// Bare is the part without moisture: shelf ÷ (1 + allowance).
func (p Part) Bare() qty.Rat {
	if p.Basis == Dry || p.Basis == Clean {
		return p.Mass
	}
	return p.Mass.Div(one.Add(AllowanceOf(p.Fibre).Share))
}

// Agreed is the part as a label counts it: dry × (1 + allowance + what pre-treatment took),
// the rule of Regulation (EU) No 1007/2011, Annex VIII, chapter 3. Of a weight from the shelf
// it is that weight again.
func (p Part) Agreed() qty.Rat {
	more := AllowanceOf(p.Fibre).Share
	if p.Basis == Clean {
		more = more.Add(p.pretreated())
	}
	return p.Bare().Mul(one.Add(more))
}

// pretreated is the share that pre-treatment takes of a fibre (the same chapter): 4 % of
// unbleached cotton, flax and hemp, 1 % of polypropylene, nothing of others.
func (p Part) pretreated() qty.Rat {
	switch name := p.Fibre.Name; {
	case name == "polypropylene":
		return qty.Frac(1, 100)
	case p.Raw && (name == "cotton" || name == "linen" || name == "hemp"):
		return qty.Frac(4, 100)
	}
	return qty.Rat{}
}

var one, hundred = qty.Int(1), qty.Int(100)

// Share is a fibre's share of a cloth: of its dry weight, and as a label counts it. Both are
// exact and from 0 to 1; each sums to 1 over all shares.
type Share struct {
	Fibre       yarn.Fibre
	Bare, Label qty.Rat
	Allowance   Allowance
}

// Shares adds up parts by fibre, the largest share of the label first, equals in the order
// of the parts. Parts of nothing are left out.
func Shares(parts []Part) []Share {
	var out []Share
	bare, label := qty.Rat{}, qty.Rat{}
	for _, p := range parts {
		if p.Mass.Sign() <= 0 {
			continue
		}
		s := shareIn(&out, p.Fibre)
		s.Bare, s.Label = s.Bare.Add(p.Bare()), s.Label.Add(p.Agreed())
		bare, label = bare.Add(p.Bare()), label.Add(p.Agreed())
	}
	for i := range out {
		out[i].Bare, out[i].Label = out[i].Bare.Div(bare), out[i].Label.Div(label)
	}
	slices.SortStableFunc(out, func(a, b Share) int { return b.Label.Cmp(a.Label) })
	return out
}

// shareIn finds the share of a fibre, or begins it.
func shareIn(all *[]Share, f yarn.Fibre) *Share {
	i := slices.IndexFunc(*all, func(s Share) bool { return s.Fibre.Name == f.Name })
	if i < 0 {
		i = len(*all)
		*all = append(*all, Share{Fibre: f, Allowance: AllowanceOf(f)})
	}
	return &(*all)[i]
}

// Rounded makes shares that sum to 1 whole steps, such as tenths of a per cent, that sum to 1
// again, by largest remainder: each is rounded down, and the steps that are then missing go
// one each to those that lost most, of equals to the larger, then to the earlier. A larger
// share never comes out smaller than another. So the worked example of Regulation (EU)
// No 1007/2011, Annex VIII, chapter 3, section IV comes to 11.0, 48.4 and 40.6 as printed,
// where rounding each for itself gives 40.7 and a sum of 100.1.
func Rounded(shares []qty.Rat, step qty.Rat) []qty.Rat {
	out, missing := make([]qty.Rat, len(shares)), one
	for i, s := range shares {
		out[i] = s.To(step, qty.Down)
		missing = missing.Sub(out[i])
	}
	order := make([]int, len(shares))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if c := shares[b].Sub(out[b]).Cmp(shares[a].Sub(out[a])); c != 0 {
			return c
		}
		return shares[b].Cmp(shares[a])
	})
	for _, i := range order[:missing.Div(step).Count(qty.Nearest)] {
		out[i] = out[i].Add(step)
	}
	return out
}
