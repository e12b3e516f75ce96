package qty

import (
	"slices"
	"strings"
	"unicode/utf8"
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

func (s *scale) names() []string {
	var all []string
	for _, u := range s.units {
		all = append(all, u.names...)
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
	if near := nearest(f.Read, known); near != "" {
		f.Args = map[string]any{"near": near}
	}
	return f
}

// nearest gives the known word within two slips of the pen, and at most one
// slip for two letters; of words that are as near, a longer one.
func nearest(word string, known []string) string {
	word = strings.ToLower(word)
	length := utf8.RuneCountInString(word)
	best, slips := "", min(2, length/2)
	if length > 20 {
		return ""
	}
	for _, k := range known {
		d := distance(word, k)
		if d < slips || d == slips && len(k) > len(best) {
			best, slips = k, d
		}
	}
	return best
}

// distance counts the letters to put in, leave out or change to turn a into b
// (Levenshtein 1966).
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, c := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j, e := range to {
			change := diagonal
			if c != e {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
