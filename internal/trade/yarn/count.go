package yarn

import (
	"slices"
	"strings"

	"sley/internal/trade/qty"
)

// Count is the size of a yarn as its label writes it. The zero value means
// that no count is known.
type Count struct {
	// Strands is one, or the unlike singles that are folded together, in the
	// order written.
	Strands []Strand
}

// Strand is one number of a count with its plies, exactly as written.
type Strand struct {
	System  SystemID
	Number  qty.Rat // above 0; a plain grist holds its tex
	Plies   int     // 1 when none is written
	Reading Reading
	// Either says that the two numbers would also make a yarn the other way
	// round, as in 6/8 worsted; Other gives it.
	Either bool
}

// Reading says what the figures of a strand were taken for.
type Reading int

// The readings.
const (
	Single     Reading = iota // 30 Ne, 60 tex: no plies written
	CountFirst                // 8/2 Ne: the number of each ply, then the plies
	PliesFirst                // 2/20 worsted, 2/40s Ne: the plies, then the number of each
	Times                     // 30 tex x 2: the number of each ply, times the plies
	Resultant                 // R 60 tex / 2, 40s-2 spun silk: the number of the folded yarn
)

// String gives the reading's plain name.
func (r Reading) String() string {
	return [...]string{"single", "count-first", "plies-first", "times", "resultant"}[r]
}

// IsZero reports whether no count is known.
func (c Count) IsZero() bool { return len(c.Strands) == 0 }

// Equal reports whether two counts are written alike.
func (c Count) Equal(d Count) bool {
	return slices.EqualFunc(c.Strands, d.Strands, Strand.equal)
}

func (s Strand) equal(t Strand) bool {
	return s.System == t.System && s.Number.Equal(t.Number) && s.Plies == t.Plies &&
		s.Reading == t.Reading && s.Either == t.Either
}

// Grist gives the weight of the whole yarn over its length, exactly: direct
// numbers add, indirect ones add as reciprocals (Brooks, Cotton Manufacturing,
// "Folded yarns"). What the twist takes up is left out. It is unknown for the
// zero Count.
func (c Count) Grist() qty.LinearDensity {
	var ng qty.Rat
	for _, s := range c.Strands {
		ng = ng.Add(s.grist().NGPerNM())
	}
	return qty.NewLinearDensity(ng, qty.Int(1))
}

func (s Strand) grist() qty.LinearDensity {
	one := s.System.system().Grist(s.Number)
	if s.Reading == Resultant {
		return one
	}
	return qty.NewLinearDensity(one.NGPerNM().Mul(qty.Int(int64(s.Plies))), qty.Int(1))
}

// In gives the single number that the whole yarn has in a system, exactly; 0
// for the zero Count.
func (c Count) In(s System) qty.Rat { return s.Number(c.Grist()) }

// Plies is the number of singles that are folded together, as far as written.
func (c Count) Plies() int {
	n := 0
	for _, s := range c.Strands {
		n += s.Plies
	}
	return n
}

// Other gives the count with the figures of its strands taken the other way
// round, and false when none of them could be.
func (c Count) Other() (Count, bool) {
	out, any := Count{slices.Clone(c.Strands)}, false
	for i, s := range out.Strands {
		if s.Either {
			out.Strands[i] = s.swapped()
			any = true
		}
	}
	return out, any
}

// swapped takes plies for number and number for plies. Either is only ever
// said of two whole numbers.
func (s Strand) swapped() Strand {
	out := Strand{System: s.System, Number: qty.Int(int64(s.Plies)), Plies: s.Number.Count(qty.Nearest)}
	out.Reading = CountFirst
	if s.Reading == CountFirst {
		out.Reading = PliesFirst
	}
	return out
}

// String gives the count in sley's own spelling, exactly; ParseCount reads the
// same count back.
func (c Count) String() string {
	var parts []string
	for _, s := range c.Strands {
		parts = append(parts, s.String())
	}
	return strings.Join(parts, " + ")
}

// Conversion is the number a yarn has in one system, with the parts of its
// working: Value is tex ÷ Constant in a direct system, Constant ÷ tex in an
// indirect one.
type Conversion struct {
	System   System
	Value    qty.Rat
	Constant qty.Rat // the tex of a yarn numbered 1
	Direct   bool
}

// Conversions gives the number of the whole yarn in every system, in the order
// of Systems; nothing for the zero Count.
func Conversions(c Count) []Conversion {
	if c.IsZero() {
		return nil
	}
	var out []Conversion
	g := c.Grist()
	for _, s := range Systems() {
		out = append(out, Conversion{s, s.Number(g), s.Constant(), s.Direct})
	}
	return out
}
