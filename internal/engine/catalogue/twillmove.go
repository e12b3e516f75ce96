package catalogue

import (
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/weave"
)

// movedTwills have a line of another slope than one end to the pick, or lines of two
// kinds.
func movedTwills() []*Entry {
	return []*Entry{
		{
			ID: "steep-twill", Family: Twills, Source: memory, Params: []Param{over("4/4"), count("move", 2, 6, 2), hand},
			make: func(m *making) *draft.Draft { return m.sloped(m.count("move"), 1) },
		},
		{
			ID: "reclining-twill", Family: Twills, Source: memory, Params: []Param{over("4/4"), count("move", 2, 6, 2), hand},
			make: func(m *making) *draft.Draft { return m.sloped(1, m.count("move")) },
		},
		{
			ID: "rearranged-twill", Family: Twills, Source: memory, make: rearranged,
			Params: []Param{over("4/4"), count("move", 2, 22, 3)},
		},
		{
			ID: "corkscrew", Family: Twills, Source: memory, Params: []Param{count("pairs", 2, 12, 3)}, Sett: WarpFaced,
			make: func(m *making) *draft.Draft { return woven(corkscrew(m.count("pairs"))) },
		},
		{
			ID: "weft-corkscrew", Family: Twills, Source: memory, Params: []Param{count("pairs", 2, 12, 3)}, Sett: WeftFaced,
			make: func(m *making) *draft.Draft { return woven(corkscrew(m.count("pairs")).Exchange()) },
		},
		{
			ID: "combined-twill", Family: Twills, Source: memory, Params: []Param{over("2/2"), ratio("second", "1/3", 3, 16), hand}, make: combined,
		},
		{
			ID: "combined-twill-across", Family: Twills, Source: memory, Params: []Param{over("2/2"), ratio("second", "3/1", 3, 16), hand}, make: combinedAcross,
		},
	}
}

// sloped takes every so-manieth end, or pick, of a straight twill.
func (m *making) sloped(ends, picks int) *draft.Draft {
	word := m.word("over")
	n := len(word)
	side := 1
	if m.leftHanded() {
		side = -1
	}
	return woven(plot(n/gcd(n, picks), n/gcd(n, ends), func(i, j int) bool {
		return word[mod(ends*j-side*picks*i, n)]
	}))
}

// rearranged puts the ends of a straight twill into the order of a satin.
func rearranged(m *making) *draft.Draft {
	word, move := m.word("over"), m.count("move")
	n := len(word)
	if gcd(move, n) != 1 || move >= n {
		m.fail("catalogue.coprime", "move", problem.Args{"ends": n, "valid": coprimes(n)})
		return nil
	}
	return woven(plot(n, n, func(i, j int) bool { return word[mod(move*j-i, n)] }))
}

// corkscrew takes the ends of a twill of an odd number, one more up than down, in the
// order in which they lie half a repeat apart: two lines of warp cover the weft.
func corkscrew(pairs int) *weave.Weave {
	n := 2*pairs + 1
	return plot(n, n, func(i, j int) bool { return mod((pairs+1)*j-i, n) <= pairs })
}

// combined lays an end of one twill beside an end of another in turn.
func combined(m *making) *draft.Draft {
	words, n := m.two()
	if n == 0 {
		return nil
	}
	return woven(plot(n, 2*n, func(i, j int) bool { return words[j%2][mod(m.climb(j/2, i), n)] }))
}

// combinedAcross weaves a pick of one twill and a pick of another in turn.
func combinedAcross(m *making) *draft.Draft {
	words, n := m.two()
	if n == 0 {
		return nil
	}
	return woven(plot(2*n, n, func(i, j int) bool { return words[i%2][mod(m.climb(j, i/2), n)] }))
}

// climb gives the place in the word of a twill where an end and a pick meet.
func (m *making) climb(end, pick int) int {
	if m.leftHanded() {
		return end + pick
	}
	return end - pick
}

// two gives two words of the same length, which is 0 when they are not.
func (m *making) two() ([2][]bool, int) {
	a, b := m.word("over"), m.word("second")
	if len(a) != len(b) {
		m.fail("catalogue.unlike", "second", problem.Args{"sum": len(b), "ends": len(a)})
		return [2][]bool{}, 0
	}
	return [2][]bool{a, b}, len(a)
}
