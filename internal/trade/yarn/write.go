package yarn

import (
	"strconv"
	"strings"

	"sley/internal/trade/qty"
)

// String gives the strand in sley's own spelling, exactly.
func (s Strand) String() string {
	if s.System == GristSystem {
		return writeGrist(s.grist())
	}
	sys := s.System.system()
	n, plies, symbol := numeral(s.Number), strconv.Itoa(s.Plies), sys.Symbol()
	switch {
	case s.Reading == Single:
		return n + " " + symbol
	case s.Reading == Times:
		return n + " " + symbol + " x " + plies
	case s.Reading == Resultant && sys.Plies == AlreadyFolded:
		return n + "s-" + plies + " " + symbol
	case s.Reading == Resultant:
		return "R " + n + " " + symbol + " / " + plies
	}
	return s.pair(sys) + " " + symbol
}

// pair writes number and plies about a slash, with an s after the number where
// the bare figures would be read otherwise.
func (s Strand) pair(sys System) string {
	number, plies := figure{n: s.Number}, figure{n: qty.Int(int64(s.Plies))}
	number.ess = !s.readsBare(sys, number, plies)
	if s.Reading == PliesFirst {
		return plies.String() + "/" + number.String()
	}
	return number.String() + "/" + plies.String()
}

func (s Strand) readsBare(sys System, number, plies figure) bool {
	first, second := number, plies
	if s.Reading == PliesFirst {
		first, second = plies, number
	}
	reading, either, code := readSlash(sys.Plies, first, second)
	return code == "" && reading == s.Reading && either == s.Either
}

// String writes a figure as a count has it: 40, 5.5, 40s.
func (f figure) String() string {
	if f.ess {
		return numeral(f.n) + "s"
	}
	return numeral(f.n)
}

// numeral writes n so that it is read back exactly: 8, 5.5, 0.25, else with a
// fraction beside a whole number, as in 21 9/11. A lone fraction would look
// like plies, so a small one is written 0 1/3.
func numeral(n qty.Rat) string {
	if places, ok := n.Places(9); ok {
		return n.Decimal(places)
	}
	whole := n.Floor()
	return whole.String() + " " + n.Sub(whole).String()
}

// writeGrist writes a plain grist in metres per kilogram or yards per pound,
// whichever comes out even, else as a weight over a length: never as a count.
func writeGrist(g qty.LinearDensity) string {
	if perKilo := g.Per(qty.Metre, qty.Kilogram); even(perKilo) {
		return numeral(perKilo) + " m/kg"
	}
	if perPound := g.Per(qty.Yard, qty.Pound); even(perPound) {
		return numeral(perPound) + " yd/lb"
	}
	if tex, ok := strings.CutSuffix(g.String(), " tex"); ok {
		return tex + " g/1000 m"
	}
	return g.String()
}

func even(n qty.Rat) bool {
	_, ok := n.Places(6)
	return ok
}
