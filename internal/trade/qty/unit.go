package qty

import (
	"slices"
	"strings"

	"sley/internal/trade/near"
)

// system tells metric units from inches and pounds: 3 yd 4 in is one length,
// 3 yd 4 cm is not.
type system int

const (
	metric system = iota
	imperial
)

// unit is a unit with the names it may be called by.
type unit struct {
	size   int64 // nanometres, nanograms or seconds
	system system
	names  []string
}

// scale is the units of one kind of quantity. Its kind begins the codes of
// its faults.
type scale struct {
	kind  string
	units []unit
}

// find gives the unit of that name, in any case.
func (s *scale) find(name string) (unit, bool) {
	name = strings.ToLower(name)
	i := slices.IndexFunc(s.units, func(u unit) bool { return slices.Contains(u.names, name) })
	if i < 0 {
		return unit{}, false
	}
	return s.units[i], true
}

// tiny are units far below anything woven: never offered for a misspelt one.
var tiny = []string{"nm", "µm", "ng", "µg"}

func (s *scale) names() []string {
	var all []string
	for _, u := range s.units {
		if !slices.Contains(tiny, u.names[0]) {
			all = append(all, u.names...)
		}
	}
	return all
}

// measure reads a sum of numbers with units of one system in falling order,
// such as 3 yd 4 1/2 in, and gives it in the scale's smallest unit, exactly.
func (r *reader) measure(s *scale) (Rat, *Fault) {
	total, last, f := r.part(s)
	if f != nil {
		return Rat{}, f
	}
	for {
		mark := r.pos
		more, next, f := r.part(s)
		if f != nil || next.system != last.system || next.size >= last.size {
			r.pos = mark
			return total, nil
		}
		total, last = total.Add(more), next
	}
}

// part reads a number and its unit.
func (r *reader) part(s *scale) (Rat, unit, *Fault) {
	r.space()
	from := r.pos
	n, f := r.number()
	if f != nil {
		return Rat{}, unit{}, f
	}
	u, f := r.unit(s, from)
	if f == nil && n.Sign() < 0 {
		f = r.fault(s.kind+".negative", from, nil)
	}
	return n.Mul(Int(u.size)), u, f
}

// unit reads the unit of what began at byte from.
func (r *reader) unit(s *scale, from int) (unit, *Fault) {
	r.space()
	at := r.pos
	word := r.word()
	if word == "" {
		return unit{}, r.fault(s.kind+".no-unit", from, nil)
	}
	u, ok := s.find(word)
	if !ok {
		return unit{}, r.unknown(s.kind, at, s.names())
	}
	return u, nil
}

// unknown faults the word since byte at, with the nearest known one if there
// is one.
func (r *reader) unknown(kind string, at int, known []string) *Fault {
	f := r.fault(kind+".unknown-unit", at, nil)
	if meant := near.To(f.Read, known); meant != "" {
		f.Args = map[string]any{"near": meant}
	}
	return f
}
