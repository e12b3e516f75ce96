package app

import (
	"context"
	"math"
	"slices"
	"time"

	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// Hours is the time at the loom for a warp: so far, and to go.
type Hours struct {
	Card
	Minutes   int           // of all sittings, and of the one that is on
	Sitting   *record.Event // where the one that is on began; nil: none is
	Since     int           // minutes of it; 0 where it was forgotten
	Forgotten bool          // it began more than a day ago, and must be told how long it was
	Of        int           // picks in all; 0 where the plan cannot be reckoned
	Picks     int           // woven in sittings of which that is known
	Pace      qty.Rat       // picks an hour; 0: unknown
	Own       bool          // the pace is of those sittings, and not of the plan's [work]
	ToGo      int           // minutes, at that pace; 0 where it is unknown, or all is woven
	Days      []DayAtLoom   // on which she sat, the first first
	Broken    int           // ends that broke
	Advanced  int           // times that the warp was wound on
	picking   int           // minutes of the sittings that Picks are of
}

// DayAtLoom is what was sat on one day of this machine's calendar, by when sittings ended.
type DayAtLoom struct {
	Day               time.Time // its beginning
	Sittings, Minutes int
}

// leastPicking is how many minutes of weaving make a pace of her own: fewer are chance
// (common practice, no source).
const leastPicking = 15

// Hours tells how long was sat at the loom for a warp, and at which pace how long is to go:
// her own where it is known from sittings that began and ended here, else the plan's.
// Trouble: NotFound where it is no warp.
func (s *Studio) Hours(ctx context.Context, id record.ID) (*Hours, error) {
	from, _, err := s.WarpSource(ctx, id)
	if err != nil {
		return nil, err
	}
	out := &Hours{}
	err = s.read(ctx, func(r record.Reader) error {
		log, err := logOf(r, id)
		if err != nil {
			return err
		}
		d, err := r.Card(id)
		if err != nil {
			return err
		}
		out.Card = cardOf(d)
		out.Woven, err = wovenOf(r, id)
		out.sat(log, s.now())
		return err
	})
	result, _ := ReckonPlan(from, "", false)
	if result != nil {
		out.Of = wholeOf(result, "weft.picks")
	}
	if rate := nodeOf(result, "work.weaving"); rate != nil {
		out.Pace = rate.Is.Mul(qty.Int(3600))
	}
	out.keepPace()
	return out, err
}

// sat sums up what stands in the log.
func (h *Hours) sat(log []record.Event, now time.Time) {
	for _, e := range log {
		switch e.What {
		case record.Sat:
			h.ended(e, now.Location())
		case record.Broken:
			h.Broken++
		case record.Advanced:
			h.Advanced++
		}
	}
	open, on := openSitting(log)
	if !on {
		return
	}
	h.Sitting = &open
	if h.Since, h.Forgotten = lasting(open, now); !h.Forgotten {
		h.Minutes += h.Since
		h.wove(open.Place, h.Woven, h.Since)
	}
}

// ended counts a sitting.
func (h *Hours) ended(e record.Event, in *time.Location) {
	h.Minutes += e.Minutes
	if e.Path != "" { // it began here, so that both picks are known
		h.wove(e.From, e.Place, e.Minutes)
	}
	year, month, day := e.At.In(in).Date()
	at := time.Date(year, month, day, 0, 0, 0, 0, in)
	i, there := slices.BinarySearchFunc(h.Days, at, func(d DayAtLoom, at time.Time) int { return d.Day.Compare(at) })
	if !there {
		h.Days = slices.Insert(h.Days, i, DayAtLoom{Day: at})
	}
	h.Days[i].Sittings++
	h.Days[i].Minutes += e.Minutes
}

// wove counts the picks of a sitting; what was taken out again is less. Before the first
// pick she dressed the loom, which is no weaving.
func (h *Hours) wove(from, to, minutes int) {
	if from > 0 || to > 0 {
		h.Picks += to - from
		h.picking += minutes
	}
}

// keepPace takes her own pace in the place of the plan's where it is known, and says how
// long the rest takes.
func (h *Hours) keepPace() {
	if h.Picks > 0 && h.picking >= leastPicking {
		h.Pace, h.Own = qty.Frac(int64(h.Picks)*60, int64(h.picking)), true
	}
	if left := h.Of - h.Woven; left > 0 && h.Pace.Sign() > 0 {
		h.ToGo = int(math.Round(qty.Int(int64(left) * 60).Div(h.Pace).Float()))
	}
}
