package catalogue

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

const (
	wolfSatin = "five ends, binding 1, 3, 5, 2, 4: A. Wolfensberger, Theory of Silk Weaving, 2nd ed. (1921), fig. 43; twelve, move 5: C. P. Brooks, Cotton Manufacturing"
)

var face = choice("face", "weft", "warp")

func satins() []*Entry {
	return []*Entry{
		{
			ID: "satin", Family: Satins, Source: wolfSatin, Params: []Param{count("ends", 5, 32, 5), count("move", 2, 30, 2), face},
			make: func(m *making) *draft.Draft { return m.bound(m.satinBinds()) },
		},
		{
			ID: "broken-crow", Family: Satins, Source: memory, Params: []Param{face},
			make: func(m *making) *draft.Draft { return m.bound([]int{0, 1, 3, 2}) },
		},
		{
			ID: "satin-6", Family: Satins, Source: memory, Params: []Param{face},
			make: func(m *making) *draft.Draft { return m.bound([]int{0, 2, 4, 1, 5, 3}) },
		},
		{
			ID: "granite", Family: Satins, Source: memory, make: granite,
			Params: []Param{count("ends", 5, 24, 8), count("move", 2, 22, 3), count("added", 1, 16, 2)},
		},
		{
			ID: "shaded-satin", Family: Satins, Source: memory, Params: []Param{count("ends", 5, 8, 5), count("move", 2, 6, 2)},
			make: func(m *making) *draft.Draft {
				if binds := m.satinBinds(); binds != nil {
					return m.shaded(binds)
				}
				return nil
			},
		},
		{
			ID: "satin-stripe", Family: Satins, Source: memory, make: satinStripe,
			Params: []Param{count("ends", 5, 16, 5), count("move", 2, 14, 2), count("times", 1, 8, 2), evens("plain", 2, 32, 8)},
		},
		{
			ID: "double-faced-satin", Family: Satins, Source: memory, Params: []Param{count("ends", 5, 16, 8), count("move", 2, 14, 3)},
			make: func(m *making) *draft.Draft {
				if binds := m.satinBinds(); binds != nil {
					return woven(twoFaced(len(binds), m.count("move")))
				}
				return nil
			},
		},
	}
}

// satinBinds gives the end at which each pick of a satin is bound. A move makes a
// satin when it has no factor in common with the ends and is neither one nor one less
// than the ends, which would be a twill (Wolfensberger, the rule for counters).
func (m *making) satinBinds() []int {
	n, move := m.count("ends"), m.count("move")
	if moves := SatinMoves(n); len(moves) == 0 {
		m.fail("catalogue.no-satin", "ends", nil)
		return nil
	}
	if gcd(n, move) != 1 || move >= n-1 {
		m.fail("catalogue.move", "move", problem.Args{"ends": n, "valid": numbers(SatinMoves(n))})
		return nil
	}
	out := make([]int, n)
	for i := range out {
		out[i] = i * move % n
	}
	return out
}

// SatinMoves gives the moves that make a satin of n ends.
func SatinMoves(n int) []int {
	var out []int
	for move := 2; move < n-1; move++ {
		if gcd(n, move) == 1 {
			out = append(out, move)
		}
	}
	return out
}

func coprimes(n int) []string {
	var out []int
	for k := 1; k < n; k++ {
		if gcd(n, k) == 1 {
			out = append(out, k)
		}
	}
	return numbers(out)
}

func numbers(list []int) []string {
	var out []string
	for _, n := range list {
		out = append(out, strconv.Itoa(n))
	}
	return out
}

// bound lifts one end in each pick, or all but one where the warp shows.
func (m *making) bound(binds []int) *draft.Draft {
	if binds == nil {
		return nil
	}
	n := len(binds)
	ties := make([]draft.Set, n)
	for i, at := range binds {
		ties[i] = draft.Of(at + 1)
		if m.is("face", "warp") {
			ties[i] = draft.UpTo(n) &^ ties[i]
		}
	}
	return drawn(straight(n), ties, straight(n))
}

// granite lifts further ends beside each bind of a satin.
func granite(m *making) *draft.Draft {
	binds := m.satinBinds()
	n, added := m.count("ends"), m.count("added")
	if binds == nil {
		return nil
	}
	if added > n-2 {
		m.fail("catalogue.range", "added", problem.Args{"least": 1, "most": n - 2})
		return nil
	}
	return woven(plot(n, n, func(i, j int) bool { return mod(j-binds[i], n) <= added }))
}

// satinStripe sets a stripe of warp satin beside one of plain weave.
func satinStripe(m *making) *draft.Draft {
	binds := m.satinBinds()
	if binds == nil {
		return nil
	}
	n := len(binds)
	wide := n * m.count("times")
	return woven(plot(lcm(n, 2), wide+m.count("plain"), func(i, j int) bool {
		if j < wide {
			return j%n != binds[i%n]
		}
		return odd(i + j - wide)
	}))
}

// twoFaced gives two wefts in turn, one floating on each face. A pick of the back is
// bound where the picks of the front on both sides of it lie over it, as far as may be
// from where they are bound themselves.
func twoFaced(n, move int) *weave.Weave {
	apart := func(h int) int { return min(h, n-h, mod(h-move, n), mod(move-h, n)) }
	best := 1
	for h := range n {
		if apart(h) > apart(best) {
			best = h
		}
	}
	return plot(2*n, n, func(i, j int) bool {
		at := i / 2 * move
		if i%2 == 0 {
			return j == at%n
		}
		return j != (at+best)%n
	})
}
