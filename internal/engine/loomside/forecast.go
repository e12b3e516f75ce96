package loomside

import (
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// Reading is what the tape reads at a pick: from the first pick of its piece on.
type Reading struct {
	Pick int // of the warp: so many were woven
	Is   qty.Length
}

// Told is what was said at the loom so far.
type Told struct {
	Pick     int // woven, from the start of the warp
	Readings []Reading
	Left     map[string]Scale   // of weft yarns, by name: the last weighing of each
	Stock    map[string]qty.Rat // nanometres there were of each weft yarn before the warp was wound; absent: not known
}

// Scale is what was left of a yarn, in nanometres, when so many picks were woven.
type Scale struct {
	Pick int
	Is   qty.Rat
}

// Forecast is how it will come out if she goes on as she does. Lengths are nanometres;
// what is not known is nil.
type Forecast struct {
	Pick, Left int      // picks woven, and to go
	Piece      int      // index of Weaving.Pieces of the pick to come; the last when all is woven
	InPiece    int      // picks of it that are woven
	Expects    *qty.Rat // what the tape should read now, as planned
	Beat       *qty.Rat // picks per nanometre as measured: of this piece, else of those before; nil where nothing was measured
	Reads      *Reading // the last reading of this piece
	OnLoom     *qty.Rat // what the tape will read at the piece's end
	Planned    *qty.Rat // what it was to read there
	Finished   *qty.Rat // what the piece comes out at
	Wanted     *qty.Rat // as planned
	PicksTo    *int     // picks of the whole piece that make the planned length at this beat
	Warp       *WarpLeft
	Weft       []WeftLeft
}

// WarpLeft is the warp that is still to be woven.
type WarpLeft struct {
	Used   qty.Rat // from the front rod to the fell
	Left   qty.Rat // from the fell to where it can be woven no more
	Waste  qty.Rat // behind that
	Needs  qty.Rat // for what is still to be woven
	Spare  qty.Rat // Left − Needs; below 0 it does not come out
	Pieces int     // whole pieces that are still to be begun and fit
	Last   qty.Rat // how much cloth, as the tape reads it, the first piece that does not fit can still be
}

// Look tells how it will come out.
func (w *Weaving) Look(r *reckon.Result, told Told) Forecast {
	l := &looking{Weaving: w, r: r, told: told}
	at := w.At(told.Pick)
	f := Forecast{Pick: told.Pick, Left: w.Total - told.Pick, Piece: at, InPiece: told.Pick - w.Pieces[at].Before}
	l.piece(&f)
	f.Warp = l.warp(f)
	f.Weft = l.weft(f)
	return f
}

// At is the piece of the pick that comes after so many.
func (w *Weaving) At(picks int) int {
	for i, p := range w.Pieces {
		if picks < p.Before+w.Kinds[p.Kind].Picks() {
			return i
		}
	}
	return len(w.Pieces) - 1
}

type looking struct {
	*Weaving
	r    *reckon.Result
	told Told
}

func (l *looking) picks(piece int) int { return l.Kinds[l.Pieces[piece].Kind].Picks() }

// planned is what the tape reads at the end of a piece, as planned; 0: not known.
func (l *looking) planned(piece int) qty.Rat { return l.Kinds[l.Pieces[piece].Kind].OnLoom }

// reading is the last reading of a piece; a piece that is woven to its end is as long as
// it was read last, and what came after that at the same beat.
func (l *looking) reading(piece int) *Reading {
	p := l.Pieces[piece]
	var out *Reading
	for _, one := range l.told.Readings {
		if one.Pick > p.Before && one.Pick <= p.Before+l.picks(piece) && one.Is > 0 {
			out = &one
		}
	}
	return out
}

// leastRead is how much cloth says how she beats: a tape is read to a few millimetres,
// which of less is too much to foretell a warp by. Common practice, no source.
const leastRead = 10 * qty.Centimetre

// beat is the picks per nanometre of a piece as measured, else of the nearest piece before
// it that was; nil where none was over enough cloth.
func (l *looking) beat(piece int) *qty.Rat {
	for i := piece; i >= 0; i-- {
		if one := l.reading(i); one != nil && one.Is >= leastRead {
			b := qty.Int(int64(one.Pick - l.Pieces[i].Before)).Div(one.Is.Rat())
			return &b
		}
	}
	return nil
}

// long is what the tape reads after so many picks of a piece: planned, or from what was
// read last at its beat.
func (l *looking) long(piece, picks int) (qty.Rat, bool) {
	if beat := l.beat(piece); beat != nil {
		return qty.Int(int64(picks)).Div(*beat), true
	}
	whole := l.planned(piece)
	return whole.Mul(qty.Frac(int64(picks), int64(max(l.picks(piece), 1)))), !whole.IsZero()
}

// piece tells of the piece under way.
func (l *looking) piece(f *Forecast) {
	whole := l.planned(f.Piece)
	f.Beat, f.Reads = l.beat(f.Piece), l.reading(f.Piece)
	if !whole.IsZero() {
		now := whole.Mul(qty.Frac(int64(f.InPiece), int64(max(l.picks(f.Piece), 1))))
		f.Expects, f.Planned = &now, &whole
		f.Finished, f.Wanted = l.finished(f.Piece, whole), l.finished(f.Piece, whole)
	}
	long, ok := l.long(f.Piece, l.picks(f.Piece))
	if !ok {
		return
	}
	f.OnLoom = &long
	f.Finished = l.finished(f.Piece, long)
	if f.Beat != nil && !whole.IsZero() {
		n := whole.Mul(*f.Beat).Count(qty.Nearest)
		f.PicksTo = &n
	}
}

// finished is what a piece comes out at that is so long on the loom: its cloth in the
// proportion of the plan, less what its hems take; nil where the plan does not say.
func (l *looking) finished(piece int, long qty.Rat) *qty.Rat {
	id := pieceID(l.Kinds[l.Pieces[piece].Kind].Piece)
	onLoom, a := l.r.Node(id + "on-loom")
	cloth, b := l.r.Node(id + "finished")
	comes, c := l.r.Node(id + "comes-out")
	if !a || !b || onLoom.Is.IsZero() {
		return nil
	}
	hems := qty.Rat{}
	if c {
		hems = cloth.Is.Sub(comes.Is)
	}
	out := cloth.Is.Mul(long).Div(onLoom.Is).Sub(hems)
	return &out
}
