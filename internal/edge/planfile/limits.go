package planfile

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// The limits of a plan. They lie far beyond any hand loom; they keep a slip of
// the finger from making figures that no machine holds, and every count the
// reckoning comes to far below 2^53.
const (
	mostPieces  = 10_000
	mostKinds   = 1000 // kinds of pieces in one file
	mostYarns   = 200  // in one file
	mostSamples = 100  // of one yarn
	mostEnds    = 200_000
	mostPanels  = 20
	mostShafts  = 64
	mostMotif   = 100_000 // picks
	mostDoubled = 20      // working ends at an edge with a second end
	mostUnit    = 1000    // ends in a unit of the weave or a bundle of fringe
	mostHeddles = 10_000  // on one shaft
	mostLooms   = 1000    // in a class
	mostInDent  = 20
	mostDents   = 64 // of a sleying order
	mostSkeins  = 1000
	mostWidths  = 20 // of the cloth, for hemstitching
	mostFaults  = 50 // said of one order: who has mended those reads it again
)

// bound is the range a length must lie in. A length of none is said by leaving
// the key out, so a size has to be more than 0.
type bound struct {
	zero  bool // 0 is allowed
	least qty.Length
	most  qty.Length
}

var (
	pieceLength = bound{least: qty.Millimetre, most: 500 * qty.Metre}
	pieceWidth  = bound{least: qty.Millimetre, most: 10 * qty.Metre}
	detail      = bound{zero: true, most: 10 * qty.Metre}      // hems, gaps, waste
	wholeWarp   = bound{most: 10 * qty.Kilometre}              // wound, on a beam
	yarnLength  = bound{most: 100_000 * qty.Kilometre}         // in stock
	stepLength  = bound{most: 100 * qty.Metre}                 // roundings
	pieceOfYarn = bound{zero: true, most: qty.Kilometre * 100} // bobbins, repairs
)

// fits reports whether l lies in the range, else it is a problem with n.
func (d *decoder) fits(n *node, l qty.Length, b bound) bool {
	switch {
	case l <= 0 && !b.zero:
		d.fail("length.zero", n, nil)
	case l < b.least:
		d.fail("length.small", n, problem.Args{"least": b.least})
	case l > b.most:
		d.fail("length.range", n, problem.Args{"most": b.most})
	default:
		return true
	}
	return false
}

// length gives a plain length in the range.
func (t table) length(key string, b bound) qty.Typed[qty.Length] {
	n := t.at(key)
	l := typed(t, key, wantLength, qty.ParseLength)
	if !l.Given() || !t.d.fits(n, l.Is, b) {
		return qty.Typed[qty.Length]{}
	}
	return l
}

// What is wanted where a value is of the wrong kind.
const (
	wantLength  = `a length with its unit, as "28 in"`
	wantDensity = `a number of threads over a length, as "24 epi"`
	wantPicks   = `a number of picks over a length, as "22 ppi"`
	wantShare   = `a share, as "8 %"`
	wantAllow   = `an allowance, as "8 %" or "3 in per yd"`
	wantOrder   = `an order of threads, as "blue 12, white 4"`
	wantRate    = `a rate, as "30 ends/min"`
	wantMoney   = `an amount of money, as "12.50 EUR"`
)

// maxShare is the most a share of the weft, of the warp or of slack may be.
var maxShare = qty.Percent(qty.Int(1000))

// share gives a share of at most 1000 %.
func (t table) share(key string) qty.Typed[qty.Share] {
	s := typed(t, key, wantShare, qty.ParseShare)
	if s.Given() && maxShare.Of.Less(s.Is.Of) {
		t.d.fail("share.range", t.at(key), problem.Args{"most": maxShare})
		return qty.Typed[qty.Share]{}
	}
	return s
}

// lostShare gives a share that is lost, so less than 100 %.
func (t table) lostShare(key string) qty.Typed[qty.Share] {
	s := t.share(key)
	if s.Given() && !s.Is.Of.Less(qty.Int(1)) {
		t.d.fail("share.all", t.at(key), nil)
		return qty.Typed[qty.Share]{}
	}
	return s
}

var (
	// densest is 1,000 threads in an inch: the finest silk reeds take 400.
	densest = qty.Density{Threads: qty.Int(1000), Over: qty.Inch}
	// thinnest is one thread in a metre.
	thinnest = qty.Density{Threads: qty.Int(1), Over: qty.Metre}
)

// fitsDensity reports whether a density lies in the range, else it is a
// problem with n.
func (d *decoder) fitsDensity(n *node, is qty.Density) bool {
	if is.Cmp(thinnest) < 0 || is.Cmp(densest) > 0 {
		d.fail("density.range", n, problem.Args{"least": thinnest, "most": densest})
		return false
	}
	return true
}
