package qty

// ParseShare reads a text that is a share in hundredths: 8 %, 12.5%,
// 33 1/3 per cent, 8 percent. Shares above 100 % are read; the field that
// holds one says whether it may be so. The codes of its faults, beside those
// of ParseNumber:
//
//	share.no-percent  a bare number; Args percent: the number taken as
//	                  hundredths ("8 %"), part: as a part of 1 ("800 %")
//	share.negative    gains are said in words, not by a sign
//	share.trailing    something stands after the share
func ParseShare(s string) (Share, error) { return parse(s, "share", (*reader).share) }

func (r *reader) share() (Share, *Fault) {
	r.space()
	from := r.pos
	n, f := r.number()
	if f != nil {
		return Share{}, f
	}
	if !r.percent() {
		return Share{}, r.fault("share.no-percent", from,
			map[string]any{"percent": Percent(n).String(), "part": Share{n}.String()})
	}
	if n.Sign() < 0 {
		return Share{}, r.fault("share.negative", from, nil)
	}
	return Percent(n), nil
}

// percent passes over %, percent or per cent.
func (r *reader) percent() bool {
	mark := r.pos
	if r.takeWord("%") || r.takeWord("percent") || r.takeWord("per") && r.takeWord("cent") {
		return true
	}
	r.pos = mark
	return false
}

// String gives s exactly in hundredths, as a decimal or with a fraction: 8 %,
// 33 1/3 %. ParseShare reads it back to the same share, unless it is negative
// or was computed and needs more than 15 digits.
func (s Share) String() string { return numeral(s.Percent()) + " %" }
