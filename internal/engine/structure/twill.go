package structure

import "slices"

// order is how the threads of one way follow the line of a twill.
type order int

const (
	astray      order = iota // not at all
	straight                 // each one on from the last
	pointed                  // turning back, one thread at the point
	broken                   // cut, and going on elsewhere
	herringbone              // cut and turning back there
)

// twill finds the weaves whose threads are all one thread, moved: ends in the order
// of the shafts, straight or turning back, and picks of one lift that is moved from
// shaft to shaft; or the same with picks and ends exchanged.
func (p *pattern) twill() (Name, bool) {
	if found, ok := p.twillBy(); ok {
		return found, true
	}
	// Only what the order of the ends cuts is left: the rest was found above.
	found, ok := p.turned().twillBy()
	found.Turned = Warp
	return found, ok
}

// twillBy finds a twill by the order of its ends.
func (p *pattern) twillBy() (Name, bool) {
	number, ok := numbered(p.ends, p.n)
	if !ok || len(p.ups) != p.n {
		return Name{}, false
	}
	ends, hand := follow(placed(p.ends, number), p.n)
	if hand == LeftHand {
		for c := range number {
			number[c] = p.n - 1 - number[c]
		}
	}
	moved, word, ok := p.moves(number)
	if !ok {
		return Name{}, false
	}
	picks, hand := follow(placed(p.picks, moved), p.n)
	found := Name{Kind: kindOf(ends, picks), Over: over(word, p.n)}
	if ends == straight {
		found.Hand = hand
	}
	if ends == straight && picks != straight {
		found.Turned = Weft
	}
	return found, found.Kind != Unnamed
}

func kindOf(ends, picks order) Kind {
	switch {
	case ends == straight && picks == straight:
		return Twill
	case ends == straight && picks == pointed, ends == pointed && picks == straight:
		return PointTwill
	case ends == pointed && picks == pointed:
		return Diamond
	case ends == straight && picks == broken:
		return BrokenTwill
	case ends == straight && picks == herringbone:
		return Herringbone
	}
	return Unnamed
}

// placed gives the number of each thread of a repeat by its class.
func placed(repeat, number []int) []int {
	out := make([]int, len(repeat))
	for i, c := range repeat {
		out[i] = number[c]
	}
	return out
}

// numbered numbers the n classes of a repeat in the order in which they are
// neighbours: they must be so in a row, or in a ring.
func numbered(repeat []int, n int) (number []int, ok bool) {
	if n < 3 {
		return nil, false
	}
	beside := make([][]int, n)
	for i, c := range repeat {
		next := repeat[(i+1)%len(repeat)]
		if c == next {
			return nil, false
		}
		for _, pair := range [][2]int{{c, next}, {next, c}} {
			if !slices.Contains(beside[pair[0]], pair[1]) {
				beside[pair[0]] = append(beside[pair[0]], pair[1])
			}
		}
		if len(beside[c]) > 2 || len(beside[next]) > 2 {
			return nil, false
		}
	}
	at := max(slices.IndexFunc(beside, func(list []int) bool { return len(list) == 1 }), 0)
	return walk(beside, at), true
}

// walk numbers the classes from one on to its neighbour, and so on.
func walk(beside [][]int, at int) []int {
	number := slices.Repeat([]int{-1}, len(beside))
	for k := range number {
		number[at] = k
		for _, next := range beside[at] {
			if number[next] < 0 {
				at = next
				break
			}
		}
	}
	return number
}

// moves gives by how many ends each class of picks is moved from the first of them,
// with the ends so numbered, and the bits of that first one. No two moves of it are
// alike, or there would be ends that are.
func (p *pattern) moves(number []int) (moved []int, word uint64, ok bool) {
	by := map[uint64]int{}
	for i, row := range p.ups {
		sorted := uint64(0)
		for c, k := range number {
			sorted |= row >> c & 1 << k
		}
		if i == 0 {
			word = sorted
			for k := range p.n {
				by[turn(word, k, p.n)] = k
			}
		}
		k, is := by[sorted]
		if !is {
			return nil, 0, false
		}
		moved = append(moved, k)
	}
	return moved, word, true
}

// turn moves n bits up by k, round.
func turn(word uint64, k, n int) uint64 {
	return (word<<k | word>>(n-k)) & (^uint64(0) >> (64 - n))
}

// follow says how a repeat of numbers from 0 to n-1, round, goes on from one to the
// next, and of which hand that is.
func follow(numbers []int, n int) (order, Hand) {
	var steps []int
	breaks := 0
	for i, k := range numbers {
		step := mod(numbers[(i+1)%len(numbers)]-k, n)
		switch step {
		case 0:
			return astray, NoHand
		case 1:
		case n - 1:
			step = -1
		default:
			step = 0
			breaks++
		}
		steps = append(steps, step)
	}
	if breaks > 0 {
		return cutLines(steps)
	}
	hand := handOf(steps)
	if hand == NoHand {
		return pointed, NoHand
	}
	return straight, hand
}

// handOf gives the hand of steps by one that all go one way, else none.
func handOf(steps []int) Hand {
	first, last := slices.Min(steps), slices.Max(steps)
	switch {
	case first == 1:
		return RightHand
	case last == -1:
		return LeftHand
	}
	return NoHand
}

// cutLines judges steps with breaks among them, which are 0. Every line between two
// breaks has two threads or more and goes one way.
func cutLines(steps []int) (order, Hand) {
	from := slices.Index(steps, 0) + 1
	var hands []Hand
	shortest, line := len(steps), []int(nil)
	for i := range steps {
		step := steps[(from+i)%len(steps)]
		if step != 0 {
			line = append(line, step)
			continue
		}
		if len(line) == 0 || handOf(line) == NoHand {
			return astray, NoHand
		}
		hands, shortest, line = append(hands, handOf(line)), min(shortest, len(line)+1), nil
	}
	return brokenOr(hands, shortest)
}

// brokenOr tells a herringbone, which turns at every break and has lines of three
// threads or more, from a broken twill.
func brokenOr(hands []Hand, shortest int) (order, Hand) {
	turns := 0
	for i, hand := range hands {
		if hand != hands[(i+1)%len(hands)] {
			turns++
		}
	}
	switch {
	case turns == 0:
		return broken, hands[0]
	case turns == len(hands) && shortest >= 3:
		return herringbone, NoHand
	}
	return broken, NoHand
}

// over gives the ends on top and beneath in turn, round a word of n bits that has
// both.
func over(word uint64, n int) []int {
	bit := make([]int, n)
	for k := range bit {
		bit[k] = int(word >> k & 1)
	}
	from := 0
	for bit[from] == 0 || bit[mod(from-1, n)] == 1 {
		from++
	}
	return greatest(cycleRuns(slices.Concat(bit[from:], bit[:from])), 2)
}
