package learn

import (
	"strings"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// Lengths gives the stretch of cloth under the allowances for each measured length of a
// piece. A finished piece is measured between its hems, in every other state the whole
// stretch is: so the hems are added to the finished length, and hems outside the
// allowances taken from the others. hems is what they come to in all.
func Lengths(p *warp.Piece, sizes []warp.Size) (cloth []warp.Size, hems qty.Length) {
	inside, outside := hemsOf(p)
	for _, s := range sizes {
		if s.State == warp.Finished {
			s = longer(s, inside)
		} else {
			s = longer(s, -outside)
		}
		cloth = append(cloth, s)
	}
	return cloth, inside + outside
}

// hemsOf is what the hems of a piece take of finished cloth, inside the allowances and
// outside them.
func hemsOf(p *warp.Piece) (inside, outside qty.Length) {
	for _, e := range []*warp.End{&p.First, &p.Last} {
		switch {
		case e.Finish != warp.Hem:
		case e.Outside:
			outside += e.Depth.Is + e.TurnIn.Is
		default:
			inside += e.Depth.Is + e.TurnIn.Is
		}
	}
	return inside, outside
}

// longer is a size with so much added, and its text as it would be typed.
func longer(s warp.Size, by qty.Length) warp.Size {
	if by == 0 {
		return s
	}
	s.Is += by
	s.Typed = Text(s.Is, s.Typed)
	return s
}

// Text writes a length as somebody would who typed another one like that: in inches and
// 64ths, or in centimetres, where that is exact, else as package qty does.
func Text(l qty.Length, like string) string {
	inches, centimetres := l.In(qty.Inch), l.In(qty.Centimetre)
	switch {
	case l > 0 && imperial(like) && inches.Mul(qty.Int(64)).IsInt():
		return mixed(inches) + " in"
	case l > 0 && !imperial(like) && centimetres.Mul(qty.Int(1000)).IsInt():
		return centimetres.Short(3) + " cm"
	}
	return l.String()
}

// mixed writes a number as a whole one and a fraction.
func mixed(n qty.Rat) string {
	whole := n.Floor()
	part := n.Sub(whole)
	switch {
	case part.IsZero():
		return whole.String()
	case whole.IsZero():
		return part.String()
	}
	return whole.String() + " " + part.String()
}

// imperial reports whether a length was typed in inches, feet or yards.
func imperial(typed string) bool {
	for _, unit := range []string{"in", "ft", "foot", "feet", "yd", "yard", `"`, "'", "″", "′", "”", "’"} {
		if strings.Contains(strings.ToLower(typed), unit) {
			return true
		}
	}
	return false
}
