package catalogue

import "sley/internal/trade/draft"

// rosepathOf is the draw of a magazine of the trade.
const rosepathOf = "eight shafts, 1 to 8, 1, 8 to 1: Handwoven magazine, rosepath border"

// pointedTwills turn their line back.
func pointedTwills() []*Entry {
	return []*Entry{
		{
			ID: "point-twill", Family: Twills, Source: wolfDraw, Params: []Param{over("2/2"), count("runs", 1, 6, 1)},
			make: func(m *making) *draft.Draft { return m.twilled(m.pointed, straight) },
		},
		{
			ID: "point-treadled-twill", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("runs", 1, 6, 1)},
			make: func(m *making) *draft.Draft { return m.twilled(straight, m.pointed) },
		},
		{
			ID: "diamond-twill", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("runs", 1, 4, 1)},
			make: func(m *making) *draft.Draft { return m.twilled(m.pointed, m.pointed) },
		},
		{
			ID: "rosepath", Family: Twills, Source: rosepathOf, Params: []Param{over("2/2")},
			make: func(m *making) *draft.Draft { return m.twilled(rosy, rosy) },
		},
		{
			ID: "advancing-twill", Family: Twills, Source: memory,
			Params: []Param{over("2/1/1/1/1/2"), count("run", 3, 24, 4), count("by", 1, 12, 1)},
			make:   func(m *making) *draft.Draft { return m.twilled(m.advancing, m.advancing) },
		},
		{
			ID: "advancing-points", Family: Twills, Source: memory,
			Params: []Param{over("2/1/1/1/1/2"), count("run", 3, 12, 4), count("by", 2, 12, 2)},
			make:   func(m *making) *draft.Draft { return m.twilled(m.advancingPoints, m.advancingPoints) },
		},
	}
}

// pointed gives so many runs in order, and back.
func (m *making) pointed(n int) []int {
	var out []int
	for range m.count("runs") {
		out = append(out, straight(n)...)
	}
	return there(out)
}

// rosy gives 1 to n, then 1, then n back to 2: after the last, 1 comes again.
func rosy(n int) []int {
	out := append(straight(n), 0)
	for i := n - 1; i > 0; i-- {
		out = append(out, i)
	}
	return out
}

// advancing gives runs in order, each beginning further on, until they come round.
func (m *making) advancing(n int) []int {
	return m.advanced(straight(m.count("run")), n)
}

// advancingPoints gives points in the same way.
func (m *making) advancingPoints(n int) []int {
	return m.advanced(there(straight(m.count("run"))), n)
}

func (m *making) advanced(motif []int, n int) []int {
	by := m.count("by")
	if mod(by, n) == 0 {
		m.fail("catalogue.still", "by", nil)
		return nil
	}
	var out []int
	for k := range n / gcd(by, n) {
		out = append(out, moved(motif, k*by, n)...)
	}
	return out
}
