package yarn

import (
	"slices"

	"sley/internal/trade/near"
	"sley/internal/trade/qty"
)

// Class is a family of fibres that share their defaults.
type Class int

// The classes. Wool holds all animal hair, Linen all bast and leaf fibres.
const (
	UnsaidClass Class = iota
	Cotton
	Linen
	Wool
	Silk
	Other
)

// String gives the class's name, or nothing when unsaid.
func (c Class) String() string {
	return [...]string{"", "cotton", "linen", "wool", "silk", "other"}[c]
}

// Spinning says how a wool was spun, as far as known: worsted from combed
// parallel fibres, firm and smooth; woollen from carded ones, soft and full.
type Spinning int

// The ways of spinning.
const (
	UnsaidSpinning Spinning = iota
	WorstedSpun
	WoollenSpun
)

// String gives the spinning's name, or nothing when unsaid.
func (s Spinning) String() string { return [...]string{"", "worsted", "woollen"}[s] }

// Fibre is what a yarn is spun of, under its generic name.
type Fibre struct {
	Name    string // as sley writes it
	Aliases []string
	Class   Class
	Spun    Spinning
	// Blend lists the fibres that the name stands for together, in shares that
	// the name leaves open.
	Blend []string
}

// Fibres lists every fibre, in a fixed order.
func Fibres() []Fibre {
	out := slices.Clone(fibresTable)
	for i := range out {
		out[i].Aliases, out[i].Blend = slices.Clone(out[i].Aliases), slices.Clone(out[i].Blend)
	}
	return out
}

// FibreNamed gives the fibre of that name or alias; capitals do not matter.
func FibreNamed(text string) (Fibre, bool) {
	i, ok := fibreIndex[plain(text)]
	if !ok {
		return Fibre{}, false
	}
	return fibresTable[i], true
}

// ParseFibre reads a fibre's name or alias. The fault is fibre.unknown, with
// Args valid and near.
func ParseFibre(text string) (Fibre, error) {
	fibre, ok := FibreNamed(text)
	if ok {
		return fibre, nil
	}
	args := map[string]any{"valid": fibreNames(false)}
	if meant := near.To(text, fibreNames(true)); meant != "" {
		args["near"] = meant
	}
	return Fibre{}, &qty.Fault{Code: "fibre.unknown", Read: text, Args: args}
}

var fibreIndex = indexFibres()

func indexFibres() map[string]int {
	out := map[string]int{}
	for i, f := range fibresTable {
		for _, name := range append([]string{f.Name}, f.Aliases...) {
			out[plain(name)] = i
		}
	}
	return out
}

// fibreNames lists the names of the fibres, with their aliases when wanted.
func fibreNames(aliases bool) []string {
	var out []string
	for _, f := range fibresTable {
		out = append(out, f.Name)
		if aliases {
			out = append(out, f.Aliases...)
		}
	}
	return out
}
