package qty

import (
	"slices"
	"strings"
)

// gristLengths and gristMasses are the units of length and weight with the
// fault codes of a grist.
var (
	gristLengths = &scale{"grist", lengths.units}
	gristMasses  = &scale{"grist", masses.units}
)

// gristUnit is a unit that says weight and length in one word. The number
// before or after it counts the weight, or the length when byLength is set.
type gristUnit struct {
	name     string
	mass     Mass
	length   Length
	byLength bool
}

// Tex is grams per 1,000 m and dtex a tenth of it, denier grams per 9,000 m
// (ASTM D2260-03, table 1); ypp is yards per pound.
var gristUnits = []gristUnit{
	{"tex", Gram, 1000 * Metre, false},
	{"dtex", Gram, 10_000 * Metre, false},
	{"den", Gram, 9000 * Metre, false},
	{"denier", Gram, 9000 * Metre, false},
	{"ypp", Pound, Yard, true},
}

// of gives what n of the unit weigh, and how long that is.
func (u gristUnit) of(n Rat) (ng, nm Rat) {
	if u.byLength {
		return u.mass.Rat(), n.Mul(u.length.Rat())
	}
	return n.Mul(u.mass.Rat()), u.length.Rat()
}

// ParseGrist reads a text that is the grist of a yarn: a length over a weight
// (3360 yd/lb, 120 m/50 g, 400 yd per 100 g), a weight over a length (5 g/10
// m), or one word for both (60 tex, tex 60, 735 dtex, 150 denier, 3360 ypp).
// Count systems such as Ne and Nm are not read here. The codes of its faults,
// beside those of ParseNumber, of which number.too-long also says that the
// whole grist needs more digits than can be written back:
//
//	grist.no-unit       a bare number, or no weight or length after it
//	grist.unknown-unit  Args near: the nearest unit, when one is near
//	grist.zero          no length or no weight
//	grist.negative      a grist has no sign
//	grist.trailing      something stands after the grist
func ParseGrist(s string) (LinearDensity, error) { return parse(s, "grist", (*reader).grist) }

func (r *reader) grist() (LinearDensity, *Fault) {
	r.space()
	from := r.pos
	u, ok := r.gristUnit()
	if !ok {
		r.pos = from
		return r.numberedGrist(from)
	}
	n, f := r.number()
	if f != nil {
		return LinearDensity{}, f
	}
	ng, nm := u.of(n)
	return r.checked(ng, nm, from)
}

// gristUnit reads a unit that says weight and length in one word.
func (r *reader) gristUnit() (u gristUnit, ok bool) {
	word := strings.ToLower(r.word())
	i := slices.IndexFunc(gristUnits, func(u gristUnit) bool { return u.name == word })
	if i < 0 {
		return gristUnit{}, false
	}
	return gristUnits[i], true
}

// numberedGrist reads a grist that begins with a number, at byte from.
func (r *reader) numberedGrist(from int) (LinearDensity, *Fault) {
	n, f := r.number()
	if f != nil {
		return LinearDensity{}, f
	}
	r.space()
	at := r.pos
	if u, ok := r.gristUnit(); ok {
		ng, nm := u.of(n)
		return r.checked(ng, nm, from)
	}
	ng, nm, f := r.ratio(from, at)
	if f != nil {
		return LinearDensity{}, f
	}
	return r.checked(ng, nm, from)
}

// ratio reads a weight over a length or a length over a weight from byte from;
// its first unit, which tells which, stands from byte at to here.
func (r *reader) ratio(from, at int) (ng, nm Rat, f *Fault) {
	word := r.text[at:r.pos]
	if word == "" {
		return Rat{}, Rat{}, r.fault("grist.no-unit", from, nil)
	}
	if _, ok := masses.find(word); ok {
		ng, nm, f = r.measures(gristMasses, gristLengths, from)
		return ng, nm, f
	}
	if _, ok := lengths.find(word); ok {
		nm, ng, f = r.measures(gristLengths, gristMasses, from)
		return ng, nm, f
	}
	return Rat{}, Rat{}, r.unknown("grist", at, gristNames())
}

func gristNames() []string {
	names := slices.Concat(lengths.names(), masses.names())
	for _, u := range gristUnits {
		names = append(names, u.name)
	}
	return names
}

// measures reads, from byte from, a measure of one scale over one of another.
func (r *reader) measures(top, bottom *scale, from int) (a, b Rat, f *Fault) {
	r.pos = from
	if a, f = r.measure(top); f != nil {
		return Rat{}, Rat{}, f
	}
	if !r.per() {
		return Rat{}, Rat{}, r.fault("grist.no-unit", from, nil)
	}
	if b, f = r.measure(bottom); f != nil && f.Code == "number.missing" {
		var u unit
		u, f = r.unit(bottom, from)
		b = Int(u.size)
	}
	return a, b, f
}

// checked gives the grist, when neither part of it is 0 or below and it can be
// written back.
func (r *reader) checked(ng, nm Rat, from int) (LinearDensity, *Fault) {
	switch {
	case ng.Sign() < 0 || nm.Sign() < 0:
		return LinearDensity{}, r.fault("grist.negative", from, nil)
	case ng.IsZero() || nm.IsZero():
		return LinearDensity{}, r.fault("grist.zero", from, nil)
	}
	g := NewLinearDensity(ng, nm)
	if _, ok := g.written(); !ok {
		return LinearDensity{}, r.tooLong(from)
	}
	return g, nil
}
