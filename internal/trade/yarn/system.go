package yarn

import (
	"slices"
	"strings"

	"sley/internal/trade/qty"
)

// SystemID is the stable name of a count system: "cotton", "metric", "tex".
type SystemID string

// PlyForm is how a count system writes plies.
type PlyForm int

// The ply forms. The rules each one is read by are at ParseCount.
const (
	CountThenPlies  PlyForm = iota // 8/2: two plies of 8s
	CountOrFraction                // as above, but 1/2 may also be a half
	EitherOrder                    // 16/2 and 2/16 are the same yarn
	AlreadyFolded                  // 40s-2: the folded yarn itself is a 40s
	Multiplied                     // 30 tex x 2, or R 60 tex / 2
)

// Status says how well the definition of a count system is known.
type Status int

// Seen: the definition was read at the source named. Memory: from memory, no
// source was read.
const (
	Seen Status = iota
	Memory
)

// String gives the status in plain words.
func (s Status) String() string { return [...]string{"seen", "from memory"}[s] }

// System is a way of numbering yarn. A direct system counts units of Mass in
// Length of yarn: tex counts grams in 1,000 metres. An indirect one counts
// units of Length in Mass of yarn: the cotton count hanks of 840 yards in a
// pound.
type System struct {
	ID      SystemID
	Name    string   // in English
	Symbols []string // what people write; the first is ours
	Direct  bool
	Length  qty.Length
	Mass    qty.Mass
	Plies   PlyForm
	Source  string // where the definition stands
	Status  Status
}

// Systems lists every count system, in a fixed order.
func Systems() []System {
	out := slices.Clone(systemsTable)
	for i := range out {
		out[i].Symbols = slices.Clone(out[i].Symbols)
	}
	return out
}

// SystemNamed gives the count system of that id or symbol; capitals do not
// matter.
func SystemNamed(text string) (System, bool) {
	i, ok := systemIndex[plain(text)]
	if !ok {
		return System{}, false
	}
	return systemsTable[i], true
}

// system gives the system of an id that ParseCount stored; a plain grist has
// one too, though no table lists it.
func (id SystemID) system() System {
	if id == GristSystem {
		return gristSystem
	}
	s, ok := SystemNamed(string(id))
	if !ok {
		panic("internal error: no count system " + string(id))
	}
	return s
}

// Symbol gives the symbol that sley writes.
func (s System) Symbol() string { return s.Symbols[0] }

// Grist gives the grist of a yarn of that number, exactly; unknown when the
// number is not above 0.
func (s System) Grist(number qty.Rat) qty.LinearDensity {
	if number.Sign() <= 0 {
		return qty.LinearDensity{}
	}
	if s.Direct {
		return qty.NewLinearDensity(s.Mass.Rat().Mul(number), s.Length.Rat())
	}
	return qty.NewLinearDensity(s.Mass.Rat(), s.Length.Rat().Mul(number))
}

// Number gives the one number that a yarn of that grist has, exactly; 0 when
// the grist is unknown.
func (s System) Number(g qty.LinearDensity) qty.Rat {
	if g.IsZero() {
		return qty.Rat{}
	}
	ratio := g.Weigh(s.Length.Rat()).Div(s.Mass.Rat())
	if s.Direct {
		return ratio
	}
	return ratio.Inv()
}

// Constant gives the tex of a yarn numbered 1, exactly. In a direct system tex
// is Constant × number, in an indirect one Constant ÷ number.
func (s System) Constant() qty.Rat { return s.Grist(qty.Int(1)).Tex() }

// systemIndex finds systems by id and by every symbol.
var systemIndex = indexSystems()

func indexSystems() map[string]int {
	out := map[string]int{}
	for i, s := range systemsTable {
		out[string(s.ID)] = i
		for _, symbol := range s.Symbols {
			out[plain(symbol)] = i
		}
	}
	return out
}

// symbols lists the symbol of each system that sley writes.
func symbols() []string {
	var out []string
	for _, s := range systemsTable {
		out = append(out, s.Symbol())
	}
	return out
}

// plain gives text in small letters with single spaces.
func plain(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(text)), " ")
}
