// Package loom holds the loom and its reeds: what a warp must fit on. Pure
// values; it decides nothing.
package loom

import "sley/internal/trade/qty"

// Shed is how a loom opens the shed.
type Shed int

// The sheds. Rising covers jack looms; a table loom lifts each shaft by its
// own lever and needs no treadles.
const (
	UnsaidShed Shed = iota
	Rising
	Sinking
	Counterbalance
	Countermarch
	Table
)

var shedNames = map[string]Shed{
	"rising": Rising, "sinking": Sinking, "counterbalance": Counterbalance,
	"countermarch": Countermarch, "table": Table,
}

// ParseShed reads the trade's name of a shed.
func ParseShed(text string) (Shed, bool) {
	s, ok := shedNames[text]
	return s, ok
}

// ShedNames lists the names ParseShed reads.
func ShedNames() []string {
	return []string{"rising", "sinking", "counterbalance", "countermarch", "table"}
}

// String gives the trade's name of the shed, or nothing when unsaid.
func (s Shed) String() string {
	for name, shed := range shedNames {
		if shed == s {
			return name
		}
	}
	return ""
}

// Reed is one reed, its dents exactly as its numbering says.
type Reed struct {
	Dents qty.Typed[qty.Density]
	Width qty.Typed[qty.Length] // optional: how wide the reed itself is
}

// Waste is the warp that cannot become cloth. Either Lump is given, or the
// three places where it is lost.
type Waste struct {
	Lump        qty.Typed[qty.Length]
	TieOn       qty.Typed[qty.Length] // knots and spreading at the front
	Unreachable qty.Typed[qty.Length] // between the fell and the last heddle at the end; good warp, so a fringe may be cut from it
	Back        qty.Typed[qty.Length] // loops and knots at the back rod
	// GivesFringe says that the fringes at the two ends of the warp are cut out
	// of the waste: out of TieOn at the front, out of Unreachable at the back.
	GivesFringe bool
}

// Loom is what the checks of a plan need to know of a loom. A zero field was
// not said and is not checked.
type Loom struct {
	Name      string
	Shafts    int
	Treadles  int
	Shed      Shed
	Width     qty.Typed[qty.Length] // weaving width
	Reeds     []Reed
	Heddles   []int // heddles on each shaft, shaft 1 first
	Waste     Waste
	BeamHolds qty.Typed[qty.Length] // longest warp the beam takes
	Beams     int
}
