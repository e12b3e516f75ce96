package dress

import "sley/internal/trade/qty"

// Section is one section of a sectional beam.
type Section struct {
	Ends  int
	Whole bool // false at the edges, where the warp fills only a part
	yarns []ofYarn
}

// Sections lays the warp on a beam with sections of that width: as many whole
// ones as the warp is wide, in the middle, and what is left in part sections at
// both sides, as equal as possible; of an odd end more, the right side has it. A
// warp narrower than a section lies in one.
func Sections(list []Stretch, width qty.Length) []Section {
	each := width.Rat()
	whole := Width(list).Div(each).Floor()
	rest := Width(list).Sub(whole.Mul(each))
	if whole.IsZero() {
		rest = qty.Rat{}
	}
	c := &cutter{list: list}
	left := c.upTo(rest.Div(qty.Int(2)), qty.Down)
	out := add(nil, left, false)
	from := c.edge()
	for k := int64(1); k <= whole.Whole64(); k++ {
		out = add(out, c.upTo(from.Add(qty.Int(k).Mul(each)), qty.Up), true)
	}
	return add(out, c.upTo(Width(list), qty.Up), false)
}

// add adds a section, unless it is empty.
func add(out []Section, part []ofYarn, whole bool) []Section {
	if len(part) == 0 {
		return out
	}
	return append(out, Section{endsOf(part), whole, part})
}

func (s Section) of(yarn string) int {
	for _, y := range s.yarns {
		if y.yarn == yarn {
			return y.ends
		}
	}
	return 0
}

// Package is a run of packages of one yarn, cones or spools behind the loom, that
// take part in equally many sections.
type Package struct {
	Yarn     string
	From, To int // numbers of the packages, the first is 1
	Sections int // each gives one end to so many sections
}

// Packages gives the packages a sectional warp is wound from, yarn by yarn in the
// order in which they come across the warp: of each yarn as many as any section
// has ends. A package holds the wound length once for each section that uses it.
func Packages(sections []Section) []Package {
	var out []Package
	for _, yarn := range yarnsOf(sections) {
		out = append(out, packagesOf(yarn, sections)...)
	}
	return out
}

func packagesOf(yarn string, sections []Section) []Package {
	var out []Package
	for n := 1; ; n++ {
		used := 0
		for _, s := range sections {
			if s.of(yarn) >= n {
				used++
			}
		}
		last := len(out) - 1
		switch {
		case used == 0:
			return out
		case last >= 0 && out[last].Sections == used:
			out[last].To = n
		default:
			out = append(out, Package{yarn, n, n, used})
		}
	}
}

func yarnsOf(sections []Section) []string {
	var all []string
	for _, s := range sections {
		for _, y := range s.yarns {
			all = append(all, y.yarn)
		}
	}
	return distinct(all)
}
