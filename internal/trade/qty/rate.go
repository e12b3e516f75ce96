package qty

import "slices"

// rates is how a number of things over a time is written. The words counted
// all mean a number: of what, the field says that holds the rate.
var rates = &tally{
	scale: scale{"rate", []unit{
		{3600, metric, []string{"h", "hr", "hour", "hours"}},
		{60, metric, []string{"min", "minute", "minutes"}},
		{1, metric, []string{"s", "sec", "second", "seconds"}},
	}},
	things: slices.Concat(densities.things,
		[]string{"heddles", "heddle", "knots", "knot", "turns", "turn", "things", "thing"}),
}

// ParseRate reads a text that is a number of things over a time: 3 ends/min,
// 12 per minute, 600/h, 20 picks per 10 min. The time is kept as typed, in
// whole seconds. Money over a time is not a rate. The codes of its faults,
// beside those of ParseNumber:
//
//	rate.no-unit       a bare number, or no time after per
//	rate.unknown-unit  Args near: the nearest word, when one is near
//	rate.ambiguous     1/3/4 min: per tells which slash is the fraction's
//	rate.part-second   the time is not a whole number of seconds
//	rate.zero          nothing done, or in no time
//	rate.negative      a rate has no sign
//	rate.trailing      something stands after the rate
func ParseRate(s string) (Rate, error) { return parse(s, "rate", (*reader).rate) }

func (r *reader) rate() (Rate, *Fault) {
	r.space()
	from := r.pos
	things, seconds, f := r.tally(rates)
	if f != nil {
		return Rate{}, f
	}
	over, _ := seconds.Int64(Nearest) // 15 digits of hours at most
	switch {
	case !seconds.IsInt():
		return Rate{}, r.fault("rate.part-second", from, nil)
	case over >= pow10(maxDigits):
		return Rate{}, r.tooLong(from)
	}
	return Rate{Things: things, Over: over}, nil
}

// String gives r as typed, in the largest unit of time of which it is over a
// whole number: 12/min, 20/10 min, 600/h. ParseRate reads it back to the same
// rate, unless it was computed and needs more than 15 digits. It is empty when
// no rate was given.
func (r Rate) String() string {
	if r.Over == 0 {
		return ""
	}
	return tallyText(r.Things, timeText(r.Over))
}

func timeText(seconds int64) string {
	i := slices.IndexFunc(rates.units, func(u unit) bool { return seconds%u.size == 0 })
	u := rates.units[i]
	if seconds == u.size {
		return u.names[0]
	}
	return Frac(seconds, u.size).String() + " " + u.names[0]
}
