package catalogue

import "sley/internal/trade/draft"

// crepes have floats of many lengths in no line, so that the face is broken up.
func crepes() []*Entry {
	return []*Entry{
		{
			ID: "crepe-superposed", Family: Textures, Source: memory, make: superposed,
			Params: []Param{count("ends", 5, 16, 8), count("move", 2, 14, 3)},
		},
		{
			ID: "crepe-crossed", Family: Textures, Source: memory, make: crossedTwills,
			Params: []Param{ratio("over", "1/1/1/5", 3, 12), ratio("second", "2/2/3/1", 3, 12)},
		},
		{
			ID: "crepe-turned", Family: Textures, Source: memory, make: turnedCrepe,
			Params: []Param{count("ends", 5, 12, 5), count("move", 2, 10, 2), count("added", 0, 4, 1)},
		},
		{
			ID: "crepe-reversed", Family: Textures, Source: memory, make: reversedCrepe,
			Params: []Param{count("ends", 5, 12, 5), count("move", 2, 10, 2), count("added", 0, 4, 0)},
		},
	}
}

// superposed lifts an end where plain weave or a satin does. The satin begins one end
// on: with an even number of ends every bind would fall on plain weave otherwise.
func superposed(m *making) *draft.Draft {
	binds := m.satinBinds()
	if binds == nil {
		return nil
	}
	n := len(binds)
	side := lcm(n, 2)
	return woven(plot(side, side, func(i, j int) bool { return !odd(i+j) || mod(j-1, n) == binds[i%n] }))
}

// crossedTwills lifts an end where one of a right and a left twill does, and not both.
func crossedTwills(m *making) *draft.Draft {
	a, b := m.word("over"), m.word("second")
	side := lcm(len(a), len(b))
	if side > draft.MostShafts {
		m.fail("catalogue.wide", "second", nil)
		return nil
	}
	return woven(plot(side, side, func(i, j int) bool { return a[mod(j-i, len(a))] != b[mod(j+i, len(b))] }))
}

// motif gives a satin with further ends lifted beside each bind.
func (m *making) motif() (n int, up func(i, j int) bool) {
	binds := m.satinBinds()
	if binds == nil {
		return 0, nil
	}
	n, added := len(binds), m.count("added")
	return n, func(i, j int) bool { return mod(j-binds[i], n) <= added }
}

// turnedCrepe sets a motif in four squares, each turned by a quarter from the one
// before, round the middle.
func turnedCrepe(m *making) *draft.Draft {
	n, up := m.motif()
	if n == 0 {
		return nil
	}
	return woven(plot(2*n, 2*n, func(i, j int) bool {
		a, b := i%n, j%n
		switch {
		case i < n && j < n:
			return up(a, b)
		case i < n:
			return up(b, n-1-a)
		case j < n:
			return up(n-1-b, a)
		}
		return up(n-1-a, n-1-b)
	}))
}

// reversedCrepe sets a motif beside its other face, mirrored, in squares.
func reversedCrepe(m *making) *draft.Draft {
	n, up := m.motif()
	if n == 0 {
		return nil
	}
	return woven(plot(2*n, 2*n, func(i, j int) bool {
		if (i/n+j/n)%2 == 0 {
			return up(i%n, j%n)
		}
		return !up(i%n, n-1-j%n)
	}))
}
