package dress

import "slices"

// Uneven is a stripe whose ends do not make whole passes, so that the pass at
// its end has to carry the next yarn too. Neighbouring stripes all narrower than
// a pass are meant to be wound from several yarns at once; with a wider stripe
// beside them of one of those yarns they count as one.
type Uneven struct {
	First, Last int // numbers of the stripes, the first from the left is 1; mostly the same
	Ends        int
	Yarns       []string // each once
}

// Uneven gives the stripes of the warp whose ends are no multiple of those wound
// together, from left to right. The last stripe is never among them: nothing
// follows that its last pass would have to carry.
func (w Winder) Uneven(list []Stretch) []Uneven {
	var out []Uneven
	all := w.wholes(list)
	for i, g := range all {
		if i < len(all)-1 && g.Ends%w.Together != 0 {
			out = append(out, g)
		}
	}
	return out
}

// Split gives how many passes carry two yarns or more because a stripe is uneven.
func (w Winder) Split(list []Stretch) int {
	split, last, at := 0, -1, 0
	all := w.wholes(list)
	for _, g := range all[:max(len(all)-1, 0)] {
		at += g.Ends
		if pass := at / w.Together; at%w.Together != 0 && pass != last {
			split, last = split+1, pass
		}
	}
	return split
}

// wholes gives the stripes, those joined that may share a pass.
func (w Winder) wholes(list []Stretch) []Uneven {
	var out []Uneven
	var before Uneven
	for i, s := range w.mixed(stripesOf(list)) {
		if last := len(out) - 1; i > 0 && mayShare(before, s) {
			out[last] = out[last].with(s)
		} else {
			out = append(out, s)
		}
		before = s
	}
	return out
}

// mixed gives the stripes, with neighbours that are all narrower than a pass as
// one of several yarns.
func (w Winder) mixed(stripes []ofYarn) []Uneven {
	var out []Uneven
	narrow := false // whether the last of out is of narrow stripes only
	for i, s := range stripes {
		one := Uneven{i + 1, i + 1, s.ends, []string{s.yarn}}
		if last := len(out) - 1; narrow && s.ends < w.Together {
			out[last] = out[last].with(one)
		} else {
			out = append(out, one)
		}
		narrow = s.ends < w.Together
	}
	return out
}

// mayShare reports whether a pass may hold ends of two neighbours: where one is of
// several yarns and the other of one of them, such a pass is as those beside it.
func mayShare(a, b Uneven) bool {
	return a.Last > a.First && slices.Contains(a.Yarns, b.Yarns[0]) || b.Last > b.First && slices.Contains(b.Yarns, a.Yarns[0])
}

func (u Uneven) with(next Uneven) Uneven {
	return Uneven{u.First, next.Last, u.Ends + next.Ends, distinct(slices.Concat(u.Yarns, next.Yarns))}
}

// stripesOf joins neighbours of one yarn and leaves out what is not wound.
func stripesOf(list []Stretch) []ofYarn {
	var out []ofYarn
	for _, s := range list {
		last := len(out) - 1
		switch {
		case s.Ends() == 0:
		case last >= 0 && out[last].yarn == s.Yarn:
			out[last].ends += s.Ends()
		default:
			out = append(out, ofYarn{s.Yarn, s.Ends()})
		}
	}
	return out
}
