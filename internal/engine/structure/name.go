package structure

import "sley/internal/trade/draft"

// Kind is a weave that handbooks have a name for.
type Kind int

// The kinds. What tells them apart is common practice, no source, where nothing else
// is said.
const (
	Unnamed Kind = iota
	Plain        // every thread over one and under one
	// WarpRib is plain weave with several picks in a shed, so that ends float over them
	// and the ribs run across. WeftRib is plain weave with neighbouring ends that work
	// together, so that picks float over them and the ribs run along the cloth.
	WarpRib
	WeftRib
	Basket // both at once
	Twill  // each pick is the one before, moved by one end
	// BrokenTwill is a twill whose line is cut and goes on elsewhere, one way or, after
	// every second thread, the other way.
	BrokenTwill
	PointTwill  // its line turns back, with one thread at the point
	Herringbone // its line turns back where it is cut, after three threads or more
	Diamond     // its line turns back both from end to end and from pick to pick
	Satin       // one crossing of each thread is bound, a fixed move from that before
	// IrregularSatin has one crossing of each thread bound, none next to that of a
	// neighbour, and no fixed move; or it is the one of four ends that is no twill.
	IrregularSatin
	DoubleCloth // two layers of plain weave
)

// Kinds lists all of them.
func Kinds() []Kind {
	var out []Kind
	for k := Unnamed; k <= DoubleCloth; k++ {
		out = append(out, k)
	}
	return out
}

// Hand is which way the lines of a twill rise, as the front is seen with the first
// pick at the bottom.
type Hand int

// The hands. A line of the right hand rises from the left to the right, as the
// middle of the letter Z; one of the left hand as that of the letter S.
const (
	NoHand Hand = iota
	RightHand
	LeftHand
)

// Name is what handbooks call a weave. It is the same wherever its repeat begins;
// mirrored only the hand changes, and turned over only the face. Of a cloth with
// edges the smallest repeat that fills it is named, which is sure where it holds two
// repeats each way.
type Name struct {
	Kind Kind
	Face Balance // which thread the front shows more of
	Hand Hand    // of a twill, of a twill broken one way, of the move of a satin
	// Over are the ends that a pick of a twill passes under and over in turn, beginning
	// with those on top: 2, 2 or 3, 1, 1, 3. It is read from the side where the greater
	// numbers come first.
	Over []int
	// EndGroups and PickGroups are how many neighbouring ends, and picks, of a rib or a
	// basket work as one; a single number when all groups are alike.
	EndGroups, PickGroups []int
	Size, Move            int // of a satin: its ends; from pick to pick, to the side of its hand
	// Turned is the way whose order cuts or turns the line of a broken, a point or a
	// herringbone twill: Warp where the threading does, Weft where the treadling does.
	Turned Way
}

// Regular reports whether all groups of a rib are of one size, and of a basket both
// ways.
func (n *Name) Regular() bool {
	switch n.Kind {
	case WarpRib:
		return len(n.PickGroups) == 1
	case WeftRib:
		return len(n.EndGroups) == 1
	case Basket:
		return len(n.EndGroups) == 1 && len(n.PickGroups) == 1 && n.EndGroups[0] == n.PickGroups[0]
	}
	return false
}

// pattern is one repeat: the class of each end and pick, and which classes of ends
// are on top of each class of picks.
type pattern struct {
	ends, picks []int
	n           int // classes of ends
	ups         []uint64
}

// name looks the weave up among the kinds. Names are for what a loom can weave: with
// more than draft.MostShafts shafts or lifts a weave has none.
func (a *Analysis) name() Name {
	if a.Shafts == 0 || a.Shafts > draft.MostShafts || a.Lifts > draft.MostShafts {
		return Name{}
	}
	p := pattern{ends: a.cloth.ends.Class[:a.RepeatEnds], picks: a.cloth.picks.Class[:a.RepeatPicks], n: a.Shafts}
	for i := range a.Lifts {
		p.ups = append(p.ups, a.cloth.block.Row(i)[0])
	}
	found, ok := Name{}, false
	if a.HangsTogether() {
		found, ok = p.oneCloth()
	} else {
		found, ok = a.doubleCloth(p)
	}
	if ok {
		found.Face = p.face(found.Over)
	}
	return found
}

func (p *pattern) oneCloth() (Name, bool) {
	for _, look := range []func() (Name, bool){p.grouped, p.satin, p.twill} {
		if found, ok := look(); ok {
			return found, true
		}
	}
	return Name{}, false
}

// face says which thread the front shows more of: of a twill, in one of its picks; of
// any other, in the whole repeat.
func (p *pattern) face(over []int) Balance {
	ups, all := 0, len(p.ends)*len(p.picks)
	if len(over) > 0 {
		all = 0
		for i, n := range over {
			ups, all = ups+n*(1-i%2), all+n
		}
		return more(ups, all)
	}
	times := make([]int, p.n)
	for _, c := range p.ends {
		times[c]++
	}
	for _, c := range p.picks {
		for k, n := range times {
			ups += n * int(p.ups[c]>>k&1)
		}
	}
	return more(ups, all)
}

func more(ups, all int) Balance {
	switch {
	case 2*ups > all:
		return WarpFaced
	case 2*ups < all:
		return WeftFaced
	}
	return Even
}

// turned exchanges ends and picks; a bit stays what it is.
func (p *pattern) turned() *pattern {
	out := &pattern{ends: p.picks, picks: p.ends, n: len(p.ups), ups: make([]uint64, p.n)}
	for i, row := range p.ups {
		for j := range out.ups {
			out.ups[j] |= row >> j & 1 << i
		}
	}
	return out
}

// doubleCloth reports whether the weave is two layers of plain weave.
func (a *Analysis) doubleCloth(p pattern) (Name, bool) {
	if len(a.Layers) != 2 || a.Woven() != 2 || a.Shafts != 4 || a.Lifts != 4 {
		return Name{}, false
	}
	for i := range a.Layers {
		l := &a.Layers[i]
		if !alternate(p.ends, a.cloth.ends.Class, l.Ends) || !alternate(p.picks, a.cloth.picks.Class, l.Picks) {
			return Name{}, false
		}
	}
	return Name{Kind: DoubleCloth}, true
}

// alternate reports whether those threads of a layer that lie in the repeat belong to
// its two classes in turn.
func alternate(repeat, class, threads []int) bool {
	var of []int
	for _, thread := range threads {
		if thread < len(repeat) {
			of = append(of, class[thread])
		}
	}
	for i, c := range of {
		if c != of[(i+2)%len(of)] {
			return false
		}
	}
	return true
}
