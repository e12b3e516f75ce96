package loomside

import "sley/internal/trade/qty"

// Remedy is something that can still be changed when it does not come out.
type Remedy struct {
	Kind   string
	Yarn   string  // that is short; empty: the warp is
	Pieces int     // Fewer: that can still be woven whole; ShorterEach: that are shortened
	Is     qty.Rat // nanometres: of cloth on the loom, or of yarn; Looser: picks per nanometre
}

// The kinds of remedies.
const (
	Fewer       = "fewer"        // weave only so many more whole pieces
	ShorterLast = "shorter-last" // weave the first piece that does not fit so long, as the tape reads it
	ShorterEach = "shorter-each" // weave each piece to go, or the rest of this one, so much shorter
	Looser      = "looser"       // beat so many picks for a length
	MoreYarn    = "more-yarn"    // get so much more of it
)

// Remedies are what can still be changed, for the warp and for each yarn that is short.
func (w *Weaving) Remedies(f Forecast) []Remedy {
	var out []Remedy
	toGo := len(w.Pieces) - f.Piece
	if f.Warp != nil && f.Warp.Spare.Sign() < 0 && f.Left > 0 {
		out = append(out, w.shortWarp(f, toGo)...)
	}
	for _, y := range f.Weft {
		if y.Lasts != nil && *y.Lasts < y.Picks {
			out = append(out, w.shortWeft(f, y, toGo)...)
		}
	}
	return out
}

func (w *Weaving) shortWarp(f Forecast, toGo int) []Remedy {
	var out []Remedy
	if f.Warp.Pieces > 0 {
		out = append(out, Remedy{Kind: Fewer, Pieces: f.Warp.Pieces})
	}
	if f.Warp.Last.Sign() > 0 {
		out = append(out, Remedy{Kind: ShorterLast, Is: f.Warp.Last})
	}
	return append(out, Remedy{Kind: ShorterEach, Pieces: toGo, Is: f.Warp.Spare.Neg().Div(qty.Int(int64(toGo)))})
}

// shortWeft is what helps a yarn of which Lasts picks are left for Picks.
func (w *Weaving) shortWeft(f Forecast, y WeftLeft, toGo int) []Remedy {
	short := y.Needs.Sub(*y.Left)
	out := []Remedy{{Kind: MoreYarn, Yarn: y.Yarn, Is: short}}
	if len(w.Yarns) > 1 || f.OnLoom == nil {
		return out
	}
	k := w.Kinds[w.Pieces[f.Piece].Kind]
	per := qty.Int(int64(k.Picks())).Div(*f.OnLoom) // picks per length, as it goes now
	missing := qty.Int(int64(y.Picks - *y.Lasts))
	out = append(out, Remedy{Kind: ShorterEach, Yarn: y.Yarn, Pieces: toGo, Is: missing.Div(per).Div(qty.Int(int64(toGo)))})
	if *y.Lasts > 0 {
		looser := per.Mul(qty.Frac(int64(*y.Lasts), int64(y.Picks)))
		out = append(out, Remedy{Kind: Looser, Yarn: y.Yarn, Is: looser})
	}
	return out
}
