package qty

import "strings"

// fraction reads what may follow whole, which began at byte from: the rest of
// 1/2, 4 1/2, 4½ or 4 ½, or nothing.
func (r *reader) fraction(whole Rat, from int) (Rat, *Fault) {
	if r.slash() {
		return r.over(whole, from)
	}
	if f := r.hyphen(from); f != nil {
		return Rat{}, f
	}
	mark := r.pos
	r.space()
	if v, ok := r.vulgar(); ok {
		return whole.Add(v), nil
	}
	part, ok, f := r.proper()
	if !ok {
		r.pos = mark
	}
	return whole.Add(part), f
}

// slash passes over a fraction's slash, plain or U+2044, before a digit.
func (r *reader) slash() bool {
	for _, mark := range []string{"/", "⁄"} {
		if r.digitAt(len(mark)) && r.take(mark) {
			return true
		}
	}
	return false
}

// over reads the denominator of n, which began at byte from.
func (r *reader) over(n Rat, from int) (Rat, *Fault) {
	d, ok := wholeOf(r.digits())
	switch {
	case !ok:
		return Rat{}, r.tooLong(from)
	case d == 0:
		return Rat{}, r.fault("number.zero-denominator", from, nil)
	}
	return n.Div(Int(d)), nil
}

// proper reads a fraction below one, such as the 1/2 of 4 1/2. ok is false
// when none stands there: 60/10 after a number is not a part of it.
func (r *reader) proper() (part Rat, ok bool, f *Fault) {
	from := r.pos
	n, short := wholeOf(r.digits())
	if r.pos == from || !r.slash() {
		return Rat{}, false, nil
	}
	if !short {
		r.digits()
		return Rat{}, true, r.tooLong(from)
	}
	part, f = r.over(Int(n), from)
	if f == nil && !part.Less(Int(1)) {
		return Rat{}, false, nil
	}
	return part, true, f
}

// hyphen faults 4-1/2, which some write for 4 1/2 and others for a sum.
func (r *reader) hyphen(from int) *Fault {
	mark := r.pos
	if r.take("-") {
		n := r.digits()
		if n != "" && r.slash() {
			reading := r.text[from:mark] + " " + n + "/" + r.digits()
			return r.fault("number.hyphen", from, map[string]any{"reading": reading})
		}
	}
	r.pos = mark
	return nil
}

// numeral writes n so that ParseNumber reads the same number back: a decimal
// when 15 digits are enough, else a whole number and a fraction. Of a number
// that was read, neither part is ever too long; of a computed one it may be.
func numeral(n Rat) string {
	if n.Sign() < 0 {
		return "-" + numeral(n.Neg())
	}
	if places, ok := n.Places(maxDigits); ok {
		if text := n.Decimal(places); readable(text) {
			return text
		}
	}
	whole := n.Floor()
	if whole.IsZero() {
		return n.String()
	}
	return strings.TrimSuffix(whole.String()+" "+n.Sub(whole).String(), " 0")
}

// readable reports whether text is a number short enough to be read.
func readable(text string) bool {
	_, err := ParseNumber(text)
	return err == nil
}
