package qty

import (
	"slices"
	"strings"
)

// tally is how a number of things over a length or a time is written: 24 epi,
// 24/in, 24 ends per inch, 60/10 cm.
type tally struct {
	scale              // what the things are over; its kind begins the fault codes
	short     []string // words that say all, such as epi
	shortOver int64    // what those are over
	things    []string // what may be counted
}

// tally reads a number of things, and what they are over in the smallest unit
// of the scale. Both are above 0.
func (r *reader) tally(t *tally) (things, over Rat, f *Fault) {
	r.space()
	from := r.pos
	if f = r.twoSlashes(t); f != nil {
		return Rat{}, Rat{}, f
	}
	if things, over, f = r.twoNumbers(t); f != nil && !faultyNumber(f) {
		r.pos = from
		things, over, f = r.worded(t)
	}
	switch {
	case f != nil:
		return Rat{}, Rat{}, f
	case things.Sign() < 0 || over.Sign() < 0:
		return Rat{}, Rat{}, r.fault(t.kind+".negative", from, nil)
	case things.IsZero() || over.IsZero():
		return Rat{}, Rat{}, r.fault(t.kind+".zero", from, nil)
	}
	return things, over, nil
}

// faultyNumber reports whether a number stands where f is, but a wrong one.
func faultyNumber(f *Fault) bool {
	return strings.HasPrefix(f.Code, "number.") && f.Code != "number.missing"
}

// twoNumbers reads 15/2 cm: two numbers, a slash and a unit. The first number
// has no fraction, or the slash would be that fraction's.
func (r *reader) twoNumbers(t *tally) (things, over Rat, f *Fault) {
	if things, f = r.signed((*reader).decimal); f != nil {
		return Rat{}, Rat{}, f
	}
	r.space()
	if !r.take("/") {
		return Rat{}, Rat{}, r.missing()
	}
	from := r.pos
	n, f := r.number()
	if f != nil {
		return Rat{}, Rat{}, f
	}
	u, f := r.unit(&t.scale, from)
	return things, n.Mul(Int(u.size)), f
}

// twoSlashes faults 1/3/4 in, which is 1 over 3/4 in or 1/3 over 4 in.
func (r *reader) twoSlashes(t *tally) *Fault {
	from := r.pos
	for range 2 {
		if r.digits() == "" || !strings.HasPrefix(r.rest(), "/") || !r.digitAt(1) {
			r.pos = from
			return nil
		}
		r.pos++
	}
	r.digits()
	return r.fault(t.kind+".ambiguous", from, nil)
}

// worded reads every other way: 24 epi, 24/in, 24 ends per 10 cm.
func (r *reader) worded(t *tally) (things, over Rat, f *Fault) {
	from := r.pos
	if things, f = r.number(); f != nil {
		return Rat{}, Rat{}, f
	}
	if !r.per() {
		done, f := r.counted(t, from)
		if done || f != nil {
			return things, Int(t.shortOver), f
		}
	}
	over, f = r.perUnit(&t.scale, from)
	return things, over, f
}

// counted reads the word after the number that began at byte from: either one
// that says all, and done is true; or what is counted, and a per.
func (r *reader) counted(t *tally, from int) (done bool, f *Fault) {
	r.space()
	at := r.pos
	word := strings.ToLower(r.word())
	switch {
	case word == "":
		return false, r.fault(t.kind+".no-unit", from, nil)
	case slices.Contains(t.short, word):
		return true, nil
	case !slices.Contains(t.things, word):
		return false, r.uncounted(t, word, at)
	case !r.per():
		return false, r.fault(t.kind+".no-unit", from, nil)
	}
	return false, nil
}

// uncounted faults a word that is neither counted nor says all. A unit lacks
// its slash.
func (r *reader) uncounted(t *tally, word string, at int) *Fault {
	if _, ok := t.find(word); ok {
		return r.fault(t.kind+".unknown-unit", at, map[string]any{"near": "/" + word})
	}
	return r.unknown(t.kind, at, slices.Concat(t.short, t.things, t.names()))
}

// perUnit reads what stands after per: a unit, or a number of it. What the unit
// belongs to began at byte from.
func (r *reader) perUnit(s *scale, from int) (Rat, *Fault) {
	n, f := r.number()
	switch {
	case f != nil && f.Code == "number.missing":
		n = Int(1)
	case f != nil:
		return Rat{}, f
	}
	u, f := r.unit(s, from)
	return n.Mul(Int(u.size)), f
}

// tallyText writes things over what over names, by a slash unless a fraction's
// slash stands in either.
func tallyText(things Rat, over string) string {
	text := numeral(things)
	if strings.Contains(text+over, "/") {
		return text + " per " + over
	}
	return text + "/" + over
}
