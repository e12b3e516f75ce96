package yarn

import (
	"slices"
	"strings"

	"sley/internal/trade/qty"
)

// readFibres makes a composition of the fibres. Of several without shares that are of
// one class, as in worsted merino, the last says what the yarn is.
func (r *labelReader) readFibres() {
	if len(r.fibres) == 0 {
		return
	}
	of := r.fibres
	if r.oneClass() {
		of = of[len(of)-1:]
	}
	var parts []string
	for _, f := range of {
		parts = append(parts, strings.TrimSpace(f.fibre.Name+" "+f.share))
	}
	text := strings.Join(parts, ", ")
	c, err := ParseComposition(text)
	if f, ok := err.(*qty.Fault); ok {
		r.list.Fail(f.Code, "fibre", f.Read, f.Args)
		return
	}
	r.out.Composition = qty.Typed[Composition]{Is: c, Typed: text}
}

func (r *labelReader) oneClass() bool {
	for _, f := range r.fibres {
		if f.share != "" || f.fibre.Class != r.fibres[0].fibre.Class {
			return false
		}
	}
	return true
}

// readCount reads the figures, in the system that is written or that the fibre says.
func (r *labelReader) readCount() {
	if len(r.count) == 0 {
		return
	}
	text := strings.Join(r.count, " ")
	c, f := parseCount(text)
	if f != nil && f.Code == "count.no-system" && r.takeCustom(text) {
		return
	}
	if f != nil {
		f = r.misspelt(text, f)
		r.list.Fail(f.Code, "count", f.Read, f.Args)
		return
	}
	r.out.Count = qty.Typed[Count]{Is: c, Typed: text}
}

// misspelt is the fault of a system that was meant by a word beside figures without one,
// or else the fault as it is.
func (r *labelReader) misspelt(text string, f *qty.Fault) *qty.Fault {
	if f.Code != "count.no-system" {
		return f
	}
	for _, word := range r.others {
		_, other := parseCount(text + " " + word)
		if other != nil && other.Code == "count.system" && other.Args["near"] != nil {
			return other
		}
	}
	return f
}

// takeCustom reads figures in the system of the fibre's custom; false where no custom
// is known. What is wrong then is told.
func (r *labelReader) takeCustom(text string) bool {
	by, ok := r.custom(text)
	if !ok {
		return false
	}
	c, f := parseCount(text + " " + by.system.system().Symbol())
	if f != nil {
		r.list.Fail(f.Code, "count", f.Read, f.Args)
		return true
	}
	r.out.Count = qty.Typed[Count]{Is: c, Typed: c.String()}
	r.out.Taken, r.out.Source = by.system, by.source
	for _, id := range openWords[r.system().Name] {
		if other, f := parseCount(text + " " + id.system().Symbol()); f == nil && !other.Equal(c) {
			r.out.Others = append(r.out.Others, other.String())
		}
	}
	return true
}

// system is the fibre that says how the yarn is counted: one whose spinning is said
// before the others.
func (r *labelReader) system() Fibre {
	var out Fibre
	for _, f := range r.fibres {
		if out.Name == "" || f.fibre.Spun != UnsaidSpinning {
			out = f.fibre
		}
	}
	if main, ok := r.out.Composition.Is.Main(); ok && out.Spun == UnsaidSpinning {
		return main
	}
	return out
}

// custom finds how yarn of the label's fibre is counted.
func (r *labelReader) custom(text string) (custom, bool) {
	fibre := r.system()
	if fibre.Class == Silk && strings.Contains(text, "-") {
		return custom{system: "spun-silk", source: "practice"}, true // 50s-2 is written of no other
	}
	length := 0
	if start := numberStart(text); start >= 0 {
		text = text[start:]
		length = numberLength(text)
	}
	first, err := qty.ParseNumber(text[:length])
	for _, c := range customs {
		if err == nil && c.fits(fibre, first) {
			return c, true
		}
	}
	return custom{}, false
}

func (c custom) fits(f Fibre, number qty.Rat) bool {
	return f.Name != "" && c.class == f.Class &&
		(len(c.fibres) == 0 || slices.Contains(c.fibres, f.Name)) &&
		(c.spun == UnsaidSpinning || c.spun == f.Spun) &&
		(c.below == 0 || number.Less(qty.Int(c.below)))
}
