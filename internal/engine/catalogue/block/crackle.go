package block

import "sley/internal/trade/draft"

// crackle has blocks of four ends over three neighbouring shafts of a circle: 1 2 3 2,
// 2 3 4 3 and so on. Between blocks lie the ends that carry the line on, so that no
// float is longer than three and odd and even shafts stay in turn. A shed that floats
// over two neighbouring shafts shows in two blocks at once: the one asked for and the one
// before it.
func crackle() *System {
	ring := func(blocks int) int { return max(4, blocks+blocks%2) }
	around := func(n, blocks int) int { return (n-1)%ring(blocks) + 1 }
	s := &System{
		ID: "crackle", Source: fromMemory, Tabby: true, Layers: 1,
		shafts: ring,
		unit: func(block, blocks int) []int {
			next, third := around(block+1, blocks), around(block+2, blocks)
			return []int{block, next, third, next}
		},
		between: func(from, to, blocks int) []int { return along(from, to, ring(blocks)) },
		tabby:   func(blocks int) [2]draft.Set { return parity(ring(blocks)) },
		shows: func(pattern draft.Set, blocks int) draft.Set {
			if pattern == 0 {
				return 0
			}
			k := pattern.Most()
			return pattern.With(around(k-1+ring(blocks), blocks)) & draft.UpTo(blocks)
		},
	}
	s.picks = func(pattern draft.Set, blocks int) []Pick {
		if pattern == 0 {
			return onlyTabby(s.tabby(blocks))
		}
		k := pattern.Most()
		up := draft.UpTo(ring(blocks)).Without(k).Without(around(k+1, blocks))
		return onTabby([]draft.Set{up, up}, s.tabby(blocks))
	}
	return s
}

// along gives the first shafts of the blocks from one to before another, round a ring,
// the shorter way; none when they are the same.
func along(from, to, ring int) []int {
	ahead := ((to-from)%ring + ring) % ring
	step, n := 1, ahead
	if 2*ahead > ring {
		step, n = -1, ring-ahead
	}
	var out []int
	for i := range n {
		out = append(out, ((from-1+step*i)%ring+ring)%ring+1)
	}
	return out
}
