package warp

import (
	"slices"

	"sley/internal/trade/loom"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Format is the newest version of the plan file that this program reads and
// the only one it knows.
const Format = 1

// Plan is everything a weaver wrote down for one warp, exactly as she wrote
// it. Zero fields were not said.
type Plan struct {
	Format     int
	Name       string
	Note       string
	Date       string // as written, 2026-03-01
	Weave      string // one of WeaveNames
	Wash       string // one of WashNames
	Units      Units
	Pieces     []Piece
	Gap        qty.Typed[qty.Length] // unwoven warp between two pieces
	Tape       TapeRead
	Allowances Allowances
	Yarns      []yarn.Yarn // in the order of the file
	Groups     map[string]string
	Warp       Warp
	Drafting   Drafting
	Weft       Weft
	Sampling   Sampling
	Winding    Winding
	Header     qty.Typed[qty.Length] // waste weft at the start, as warp
	Extras     []Extra
	Loom       loom.Loom
	Rounding   Rounding
	Work       Work
	Class      Class
	Built      Built
	Find       Find
}

// TapeRead is how the tape is read on the loom.
type TapeRead int

// Under tension the cloth still has its relaxation before it; slackened it has
// none.
const (
	UnderTension TapeRead = iota
	Slackened
)

// Units are the units a person wants to see, by kind of quantity. Empty means
// as the plan was typed. Known: length in, cm; yarn yd, m; weight oz, lb, g,
// kg; density in, cm, 10cm; count: a symbol of a count system.
type Units struct{ Length, Yarn, Weight, Density, Count string }

// Warp is the making of the warp.
type Warp struct {
	Yarn      string // the yarn of every end that Stripes do not name
	Sett      Sett   // bare: in the reed
	Stripes   order.Order
	Threading order.Order
	Ends      qty.Typed[int] // a fixed number of ends
	Choose    qty.Rounding   // which neighbour of the exact ends
	Wound     qty.Typed[qty.Length]
	// Floats is the number of floating selvedges: 0, 2, or 4 where each edge has
	// two ends in its dent.
	Floats    int
	FloatYarn string
	// DoubledEnds is how many working ends at each edge carry one more end.
	// SharedHeddle says that the two share one heddle; otherwise the second has
	// a heddle of its own and only the dent is shared.
	DoubledEnds  int
	SharedHeddle bool
	// Layers is 2 for cloth woven double that opens out to twice its width.
	Layers int
	Unit   int // ends of the weave's unit that a dent should not split; 0: not said
	Bundle int // ends in one bundle of fringe
	// Sleying is an order the weaver has settled on: ends in successive dents.
	Sleying []int
	Reed    qty.Typed[qty.Density] // the reed she has settled on
	// SecondTakeUp is the take-up (relaxed to straight) of the ends on beam 2,
	// SecondExtra what they are longer in all.
	SecondTakeUp Allowance
	SecondExtra  qty.Typed[qty.Length]
}

// Weft is the making of the weft.
type Weft struct {
	Picks  Sett // bare: on the loom
	Yarn   string
	Order  order.Order
	Shares []YarnShare
	// OfWarp estimates the weft as a share of the warp yarn; PerPiece as a
	// length or a weight for each piece. With neither, picks are counted.
	OfWarp   qty.Typed[qty.Share]
	PerPiece qty.Typed[yarn.Amount]
	// Slack is laid into each pick, a share of the width; Crimp is said instead
	// of it, as a share added to the width at the fell. Never both.
	Slack, Crimp qty.Typed[qty.Share]
	Turn         qty.Typed[qty.Length] // extra for the turn of each pick
	// Reserves of their own.
	Reserve   qty.Typed[qty.Share]  // of the weft laid
	Tail      qty.Typed[qty.Length] // at each colour change
	Hemstitch qty.Typed[qty.Rat]    // widths of the cloth at each fringed end
	Repairs   qty.Typed[qty.Length] // kept for repairs, of the main weft
	Bobbin    qty.Typed[qty.Length] // what one bobbin holds
	BobbinEnd qty.Typed[qty.Length] // left over on each bobbin
}

// YarnShare is a yarn's share of the weft.
type YarnShare struct {
	Yarn  string
	Share qty.Typed[qty.Share]
}

// Sampling is the warp woven to sample before the pieces.
type Sampling struct {
	Length Size // bare: warp
	CutOff bool
	NoWeft bool   // its weft is not reckoned
	Yarn   string // its weft; none given: the main weft
}

// Extra is a plain length added to the warp once.
type Extra struct {
	Name   string
	Length qty.Typed[qty.Length]
}

// Rounding says the steps figures are made whole to. Off leaves every figure
// exact, except threads where Ends or Picks are wanted whole.
type Rounding struct {
	Off   bool
	Step  qty.Typed[qty.Length] // of the wound warp
	Warp  qty.Typed[qty.Rounding]
	Picks qty.Typed[qty.Rounding]
	Bench qty.Typed[qty.Length] // of figures read at the loom
}

// Work holds the rates and the wage that time and cost are reckoned from.
type Work struct {
	Winding, Threading, Sleying, Weaving qty.Typed[qty.Rate]
	Wage                                 qty.Typed[qty.Money] // for an hour
}

// Class is a class weaving the plan: on Looms looms, each with its own warp,
// or InTurn one after another on one warp. Zero: no class.
type Class struct{ Looms, InTurn int }

// Built is what stands on the loom, where it differs from the plan.
type Built struct {
	Ends     qty.Typed[int]
	Wound    qty.Typed[qty.Length]
	Sett     Sett // in the reed
	Picks    Sett // on the loom
	Note     string
	Woven    []Woven
	Waste    qty.Typed[qty.Length] // loom waste that was measured
	Sampling qty.Typed[qty.Length] // warp the sampling really took
}

// Woven is a piece that came off the loom otherwise than planned.
type Woven struct {
	Piece  int // index into Pieces
	OnLoom qty.Typed[qty.Length]
}

// Find is what is to be reckoned backwards: the path of the unknown, and the
// paths of what limits it. No path means that the plan is reckoned forwards.
type Find struct {
	What   string   // pieces[0].length, pieces[0].width, pieces[0].count, warp.sett, yarns.NAME
	Within []string // warp.wound, yarns.NAME; none: everything the plan gives
}

// YarnNamed gives the yarn of that name.
func (p *Plan) YarnNamed(name string) (*yarn.Yarn, bool) {
	for i := range p.Yarns {
		if p.Yarns[i].Name == name {
			return &p.Yarns[i], true
		}
	}
	return nil, false
}

// MainYarn gives the yarn that most of the warp is planned in: the one named, else the
// first of the stripes, else the first of all.
func (p *Plan) MainYarn() (*yarn.Yarn, bool) {
	name := p.Warp.Yarn
	if names := p.Warp.Stripes.Names(); name == "" && len(names) > 0 {
		name = names[0]
	}
	if name == "" && len(p.Yarns) > 0 {
		return &p.Yarns[0], true
	}
	return p.YarnNamed(name)
}

// MainPiece is the first kind of piece that has the order of picks of the weft; 0 where
// none has.
func (p *Plan) MainPiece() int {
	return max(0, slices.IndexFunc(p.Pieces, func(one Piece) bool { return one.Order.IsZero() }))
}
