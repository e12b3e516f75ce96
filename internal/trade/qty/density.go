package qty

// densities is how threads over a length are written. The words counted all
// mean the same quantity: which thread it is, the field says that holds it.
var densities = &tally{
	scale:     scale{"density", lengths.units},
	short:     []string{"epi", "ppi", "dpi", "wpi"},
	shortOver: int64(Inch),
	things: []string{
		"ends", "end", "picks", "pick", "dents", "dent", "wraps", "wrap", "threads", "thread",
	},
}

// maxOver is the longest length that threads are counted over: every length
// up to it is said exactly by one number.
const maxOver = Kilometre

// ParseDensity reads a text that is threads over a length: 24 epi, 7 1/2 epi,
// 24/in, 24 per inch, 22 picks/in, 6 ends/cm, 60/10 cm, 40 dents per 10 cm.
// 15/2 cm is 15 over 2 cm, never the fraction 15/2. The threads and the length
// are kept as typed; a length that is not a whole number of nanometres becomes
// the nearest. The codes of its faults, beside those of ParseNumber:
//
//	density.no-unit       a bare number, or no length after per
//	density.unknown-unit  Args near: the nearest word, when one is near
//	density.ambiguous     1/3/4 in: per tells which slash is the fraction's
//	density.zero          no threads, or over no length
//	density.negative      threads have no sign
//	density.trailing      something stands after the density
//	length.too-large      over more than 1 km: Args limit
func ParseDensity(s string) (Density, error) { return parse(s, "density", (*reader).density) }

// ScanDensity reads a leading density, as ParseDensity does, and gives what
// follows it without leading space; after a fault, all of s.
func ScanDensity(s string) (d Density, rest string, err error) {
	return scan(s, (*reader).density)
}

func (r *reader) density() (Density, *Fault) {
	r.space()
	from := r.pos
	threads, nm, f := r.tally(densities)
	if f != nil {
		return Density{}, f
	}
	over, ok := LengthOf(nm, Nearest)
	switch {
	case !ok || over > maxOver:
		return Density{}, r.fault("length.too-large", from, map[string]any{"limit": maxOver})
	case over == 0:
		return Density{}, r.fault("density.zero", from, nil)
	}
	return Density{threads, over}, nil
}

// String gives d as typed, its threads as a decimal or with a fraction: 24/in,
// 15/2 cm, 7 1/3 per in. ParseDensity reads it back to the same threads over
// the same length, unless it was computed and needs more than 15 digits or
// more than 1 km. It is empty when no density was given.
func (d Density) String() string {
	if d.Over == 0 {
		return ""
	}
	return tallyText(d.Threads, overText(d.Over))
}

// overText names a length that something is counted over.
func overText(l Length) string {
	for _, name := range []string{"in", "cm", "mm", "m", "yd", "ft"} {
		if u, _ := lengths.find(name); l == Length(u.size) {
			return name
		}
	}
	switch {
	case l%Centimetre == 0:
		return l.In(Centimetre).String() + " cm"
	case l%Inch == 0:
		return l.In(Inch).String() + " in"
	}
	return l.String()
}
