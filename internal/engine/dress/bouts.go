package dress

import "slices"

// Winder says how a warp is wound: Together ends at once, 1 or more, and at most
// Most ends in a bout, at least twice as many as are wound together.
type Winder struct{ Together, Most int }

// Bout is a part of the warp that is wound, tied and taken off by itself.
type Bout struct {
	Ends, Passes int
	Yarns        []string // of the first pass, each once
	Changes      []Change
}

// Change is a place in a bout where the yarns of the pass become others.
type Change struct {
	After int      // whole passes wound before it
	Far   bool     // it is made at the far peg: after an odd number of passes
	Yarns []string // of the pass that follows, each once; two where it carries both
}

// Unit is the ends that bouts grow by. Ends wound several at once go there and
// back, so that each bout has an even number of passes and comes home with its
// cross whole; only what is left over at the end of the warp does not.
func (w Winder) Unit() int {
	if w.Together < 2 {
		return 1
	}
	return 2 * w.Together
}

// Sizes shares n ends out to as few bouts as hold them, as even as units allow;
// the larger come first, and what is no whole unit goes to the last.
func (w Winder) Sizes(n int) []int {
	if n == 0 {
		return nil
	}
	unit := w.Unit()
	most := max(w.Most/unit, 1) * unit
	bouts := (n + most - 1) / most
	units, rest := n/unit, n%unit
	sizes := make([]int, bouts)
	for i := range sizes {
		sizes[i] = unit * ((units - i + bouts - 1) / bouts)
	}
	sizes[bouts-1] += rest
	return sizes
}

// Bouts winds the stretches from left to right.
func (w Winder) Bouts(list []Stretch) []Bout {
	yarns := yarnByEnd(list)
	var out []Bout
	for _, size := range w.Sizes(len(yarns)) {
		out = append(out, w.bout(yarns[:size]))
		yarns = yarns[size:]
	}
	return out
}

// yarnByEnd gives the yarn of every end that is wound.
func yarnByEnd(list []Stretch) []string {
	out := make([]string, 0, Ends(list))
	for _, s := range list {
		for range s.Ends() {
			out = append(out, s.Yarn)
		}
	}
	return out
}

func (w Winder) bout(yarns []string) Bout {
	b := Bout{Ends: len(yarns)}
	var before []string
	for pass := range slices.Chunk(yarns, w.Together) {
		switch {
		case b.Passes == 0:
			b.Yarns = distinct(pass)
		case !within(pass, before):
			b.Changes = append(b.Changes, Change{After: b.Passes, Far: b.Passes%2 == 1, Yarns: distinct(pass)})
		}
		b.Passes++
		before = pass
	}
	return b
}

// within reports whether the yarns of a pass are all among those of the pass
// before, in whatever order: then nothing has to be tied on.
func within(pass, before []string) bool {
	if slices.Equal(pass, before) {
		return true
	}
	for _, yarn := range pass {
		if count(pass, yarn) > count(before, yarn) {
			return false
		}
	}
	return true
}

func count(list []string, s string) int {
	n := 0
	for _, have := range list {
		if have == s {
			n++
		}
	}
	return n
}

func distinct(list []string) []string {
	var out []string
	for _, s := range list {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}
