package draft

import (
	"slices"

	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

// Draft is how a weave is made on a loom. Read as a repeat it goes on in both ways;
// as a cloth it is bounded by its first and last threads. A draft says its lifts
// either by treadles, Ties and Treadling, or as a lift plan, Lifts; where it has
// both they must agree. See Check for what else must hold.
type Draft struct {
	Name, Note string
	Shafts     int       // of the loom it is for, at least 1
	Treadles   int       // 0 where lifts are made without
	Shed       loom.Shed // how the loom opens the shed; unsaid reads as rising
	Threading  []int     // the shaft of each end; 0: in no heddle
	Ties       []Tie     // of each treadle, treadle 1 first
	Treadling  []Set     // the treadles that each pick presses
	Lifts      []Set     // the shafts that are up at each pick
	Warp, Weft Threads
	Palette    []Colour // what the colours of the threads number, from 0
	Origin     string   // where it came from, in words; empty: drafted here
}

// Tie is what one treadle is tied to.
type Tie struct {
	// Tied are the shafts that the treadle moves: on a rising shed those it raises,
	// on a sinking shed or a counterbalance loom those it lowers, on a countermarch
	// those it raises.
	Tied Set
	// Lowered are those that a treadle of a countermarch lowers; a shaft that is
	// tied neither way is left free. Empty on every other loom.
	Lowered Set
}

// Colour is a colour of sRGB (IEC 61966-2-1).
type Colour struct{ R, G, B uint8 }

// Threads are the colours and the sizes of the ends, or of the picks.
type Threads struct {
	Colour  int   // of every thread that Colours does not say, an index of the palette
	Colours []int // of each thread from the first; shorter than the threads, or empty
	// Thick is how thick a thread is drawn, Apart how far threads lie from middle to
	// middle; 0 is unsaid. Thicks and Aparts say it of each thread from the first.
	Thick, Apart   qty.Length
	Thicks, Aparts []qty.Length
}

// ColourOf gives the palette's index of a thread's colour.
func (t *Threads) ColourOf(i int) int {
	if i < len(t.Colours) {
		return t.Colours[i]
	}
	return t.Colour
}

// ThickOf gives how thick a thread is, 0 when that is unsaid.
func (t *Threads) ThickOf(i int) qty.Length { return sized(t.Thicks, i, t.Thick) }

// ApartOf gives how far apart a thread stands, 0 when that is unsaid.
func (t *Threads) ApartOf(i int) qty.Length { return sized(t.Aparts, i, t.Apart) }

func sized(each []qty.Length, i int, all qty.Length) qty.Length {
	if i < len(each) && each[i] != 0 {
		return each[i]
	}
	return all
}

// Ends gives the number of ends.
func (d *Draft) Ends() int { return len(d.Threading) }

// Picks gives the number of picks.
func (d *Draft) Picks() int {
	if d.Treadled() {
		return len(d.Treadling)
	}
	return len(d.Lifts)
}

// Treadled reports whether the lifts are said by treadles.
func (d *Draft) Treadled() bool { return len(d.Treadling) > 0 }

// Clone gives a copy that shares no memory.
func (d *Draft) Clone() *Draft {
	c := *d
	c.Threading, c.Ties = slices.Clone(d.Threading), slices.Clone(d.Ties)
	c.Treadling, c.Lifts = slices.Clone(d.Treadling), slices.Clone(d.Lifts)
	c.Warp, c.Weft, c.Palette = d.Warp.clone(), d.Weft.clone(), slices.Clone(d.Palette)
	return &c
}

func (t *Threads) clone() Threads {
	c := *t
	c.Colours, c.Thicks, c.Aparts = slices.Clone(t.Colours), slices.Clone(t.Thicks), slices.Clone(t.Aparts)
	return c
}

// Equal reports whether two drafts say the same, names and notes and all.
func (d *Draft) Equal(e *Draft) bool {
	return d.Name == e.Name && d.Note == e.Note && d.Origin == e.Origin &&
		d.Shafts == e.Shafts && d.Treadles == e.Treadles && d.Shed == e.Shed &&
		slices.Equal(d.Threading, e.Threading) && slices.Equal(d.Ties, e.Ties) &&
		slices.Equal(d.Treadling, e.Treadling) && slices.Equal(d.Lifts, e.Lifts) &&
		d.Warp.equal(&e.Warp) && d.Weft.equal(&e.Weft) && slices.Equal(d.Palette, e.Palette)
}

func (t *Threads) equal(u *Threads) bool {
	return t.Colour == u.Colour && t.Thick == u.Thick && t.Apart == u.Apart &&
		slices.Equal(t.Colours, u.Colours) && slices.Equal(t.Thicks, u.Thicks) && slices.Equal(t.Aparts, u.Aparts)
}
