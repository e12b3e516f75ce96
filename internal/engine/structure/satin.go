package structure

import "math/bits"

// satin finds weaves in which each thread is bound at one crossing of the repeat: a
// weave of one up in each pick, or one down. Satins are on five ends or more; the
// move has no factor in common with the ends and is neither one, which is a twill,
// nor one less than the ends, which is a twill of the other hand. Six ends have no
// such move.
func (p *pattern) satin() (Name, bool) {
	at, ok := p.bound()
	n := len(at)
	if !ok || n < 4 {
		return Name{}, false
	}
	same, twilled := true, false
	move := mod(at[1]-at[0], n)
	for i := range at {
		step := mod(at[(i+1)%n]-at[i], n)
		same = same && step == move
		twilled = twilled || step == 1 || step == n-1
	}
	switch {
	case same && !twilled:
		return regularSatin(n, move), true
	case !same && (n == 4 || !twilled):
		return Name{Kind: IrregularSatin, Size: n}, true
	}
	return Name{}, false
}

func regularSatin(n, move int) Name {
	if 2*move > n {
		return Name{Kind: Satin, Size: n, Move: n - move, Hand: LeftHand}
	}
	return Name{Kind: Satin, Size: n, Move: move, Hand: RightHand}
}

// bound gives, for each pick of the repeat, the end at which it is bound, where each
// pick and each end is at one place alone.
func (p *pattern) bound() (at []int, ok bool) {
	n := len(p.ends)
	if p.n != n || len(p.ups) != n || len(p.picks) != n || n < 2 {
		return nil, false
	}
	for _, row := range p.ups {
		if bits.OnesCount64(row) != bits.OnesCount64(p.ups[0]) {
			return nil, false
		}
		switch bits.OnesCount64(row) {
		case 1:
		case n - 1:
			row = ^row & (^uint64(0) >> (64 - n))
		default:
			return nil, false
		}
		at = append(at, bits.TrailingZeros64(row))
	}
	return at, true // rows that differ are bound at ends that differ
}

func mod(a, n int) int { return ((a % n) + n) % n }
