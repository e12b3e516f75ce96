package yarn

import "sley/internal/trade/qty"

// strand reads the figures by the custom of the system.
func (w *written) strand(sys System) (Strand, *qty.Fault) {
	if f := w.outside(); f != nil {
		return Strand{}, f
	}
	switch {
	case w.mark == 0:
		return Strand{System: sys.ID, Number: w.first.n, Plies: 1}, nil
	case w.mark == 'x':
		return w.times(sys)
	case w.mark == '-':
		return w.dashed(sys)
	case w.resultant:
		return w.folded(sys, Resultant, w.first, w.second)
	}
	return w.slashed(sys)
}

// outside faults the first of the figures that no yarn has.
func (w *written) outside() *qty.Fault {
	figures := []figure{w.first}
	if w.mark != 0 {
		figures = append(figures, w.second)
	}
	for _, f := range figures {
		if f.n.Less(leastNumber) || mostNumber.Less(f.n) {
			return w.faultIn("count.number", w.text[len(w.text)-f.left:], len(f.text), limits())
		}
	}
	return nil
}

// folded makes a strand of a number and its plies.
func (w *written) folded(sys System, r Reading, number, plies figure) (Strand, *qty.Fault) {
	if !isPlies(plies, mostPlies) {
		return Strand{}, w.fault("count.plies", pliesLimits())
	}
	return Strand{System: sys.ID, Number: number.n, Plies: plies.n.Count(qty.Nearest), Reading: r}, nil
}

func isPlies(f figure, most int64) bool {
	return !f.ess && f.n.IsInt() && f.n.Sign() > 0 && !qty.Int(most).Less(f.n)
}

// times reads 30 tex x 2 and 2 x 30 tex. R says that the number is the folded
// yarn's, x that it is each ply's: both together are asked.
func (w *written) times(sys System) (Strand, *qty.Fault) {
	number, plies := w.first, w.second
	named := w.first.ess || w.before != "" // the number stands beside its system
	switch {
	case w.resultant:
		return Strand{}, w.asks(w.write(sys, w.first, w.second, Times, Resultant))
	case !named && isPlies(w.first, fewPlies):
		number, plies = w.second, w.first
	case !named && isPlies(w.second, fewPlies) && !w.second.ess:
		return Strand{}, w.asks(append(w.write(sys, w.first, w.second, Times), w.write(sys, w.second, w.first, Times)...))
	}
	return w.folded(sys, Times, number, plies)
}

// dashed reads 40s-2, which only spun silk is written by: there the folded
// yarn itself is a 40s, the opposite of cotton's custom (Taylor, Cotton
// Weaving and Designing, web page 239).
func (w *written) dashed(sys System) (Strand, *qty.Fault) {
	if sys.Plies == AlreadyFolded || w.resultant {
		return w.folded(sys, Resultant, w.first, w.second)
	}
	return Strand{}, w.asks(w.write(sys, w.first, w.second, Times, Resultant))
}

// slashed reads two figures about a slash.
func (w *written) slashed(sys System) (Strand, *qty.Fault) {
	r, either, code := readSlash(sys.Plies, w.first, w.second)
	switch {
	case code == "count.ambiguous":
		return Strand{}, w.asks(w.slashReadings(sys))
	case code != "":
		return Strand{}, w.fault(code, pliesLimits())
	}
	number, plies := w.first, w.second
	if r == PliesFirst {
		number, plies = plies, number
	}
	s, f := w.folded(sys, r, number, plies)
	s.Either = either
	return s, f
}

// readSlash decides what the figures about a slash are; see ParseCount for the
// customs. The code is of a fault, or empty.
func readSlash(form PlyForm, first, second figure) (r Reading, either bool, code string) {
	switch {
	case form == Multiplied || form == AlreadyFolded:
		return 0, false, "count.ambiguous"
	case first.ess && isPlies(second, mostPlies):
		return CountFirst, false, ""
	case second.ess && isPlies(first, mostPlies):
		return PliesFirst, false, ""
	case first.ess || second.ess:
		return 0, false, "count.plies"
	case form == EitherOrder:
		return readEither(first, second)
	}
	return readCotton(form, first, second)
}

// readEither reads 16/2 and 2/16 alike.
func readEither(first, second figure) (r Reading, either bool, code string) {
	few1, few2 := isPlies(first, fewPlies), isPlies(second, fewPlies)
	either = few1 && few2 && !moreThan(first, 2, second) && !moreThan(second, 2, first)
	switch {
	case few1 && first.n.Less(second.n):
		return PliesFirst, either, ""
	case few2, isPlies(second, mostPlies) && !first.n.Less(second.n):
		return CountFirst, either, ""
	}
	return 0, false, "count.plies"
}

// readCotton reads 8/2 as two-fold 8s, and asks where the figures look turned
// about.
func readCotton(form PlyForm, first, second figure) (r Reading, either bool, code string) {
	rises := isPlies(first, mostPlies) && first.n.Less(second.n)
	switch {
	case rises && form == CountOrFraction,
		rises && isPlies(first, 3), rises && moreThan(second, 4, first):
		return 0, false, "count.ambiguous"
	case !isPlies(second, mostPlies):
		return 0, false, "count.plies"
	}
	return CountFirst, false, ""
}

// moreThan reports whether a is more than n times b.
func moreThan(a figure, n int64, b figure) bool {
	return b.n.Mul(qty.Int(n)).Less(a.n)
}

// slashReadings writes every yarn that the figures about a slash could mean.
func (w *written) slashReadings(sys System) []string {
	a, b := w.first, w.second
	switch sys.Plies {
	case Multiplied:
		out := w.write(sys, a, b, Times, Resultant)
		if a.n.Less(b.n) { // raw silk of 20/22 den runs from 20 to 22 denier
			out = append(out, Strand{System: sys.ID, Number: a.n.Add(b.n).Div(qty.Int(2))}.String())
		}
		return out
	case AlreadyFolded:
		metric := SystemID("metric").system()
		s, f := (&written{first: a, second: b, mark: '/'}).slashed(metric)
		if f != nil {
			return w.write(sys, a, b, Resultant)
		}
		return append(w.write(sys, a, b, Resultant), s.String())
	case CountOrFraction:
		half := Strand{System: sys.ID, Number: a.n.Div(b.n)}.String()
		return append([]string{half}, w.bothWays(sys)...)
	}
	return w.bothWays(sys)
}

// bothWays writes the figures with the plies last and with the plies first.
func (w *written) bothWays(sys System) []string {
	return append(w.write(sys, w.first, w.second, CountFirst), w.write(sys, w.second, w.first, PliesFirst)...)
}

// write gives the spelling of a number and plies in each of the readings,
// where they make a yarn.
func (w *written) write(sys System, number, plies figure, readings ...Reading) []string {
	var out []string
	for _, r := range readings {
		if s, f := w.folded(sys, r, number, plies); f == nil {
			out = append(out, s.String())
		}
	}
	return out
}
