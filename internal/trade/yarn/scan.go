package yarn

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// figure is a number of a count; ess says that an s marks it as the count, as
// in 40s.
type figure struct {
	n    qty.Rat
	ess  bool
	text string // as written
	left int    // bytes of the strand from its beginning on
}

// written is one strand as its text has it, before its system is known.
type written struct {
	text          string
	at            int    // characters before text in the whole count
	before, after string // words before and after the figures
	first, second figure
	mark          rune // between the figures: 0, '/', '-' or 'x'
	resultant     bool // an R stands before the figures
}

// fault says that the strand could not be read.
func (w *written) fault(code string, args map[string]any) *qty.Fault {
	return w.faultIn(code, w.text, len(w.text), args)
}

// faultIn says that the first length bytes of tail, which ends the strand,
// could not be read.
func (w *written) faultIn(code, tail string, length int, args map[string]any) *qty.Fault {
	from := len(w.text) - len(tail)
	at := w.at + utf8.RuneCountInString(w.text[:from])
	return &qty.Fault{Code: code, Read: tail[:length], At: at, Args: args}
}

// scanStrand takes the text of one strand apart.
func scanStrand(text string, at int) (*written, *qty.Fault) {
	trimmed := strings.TrimLeftFunc(text, unicode.IsSpace)
	at += utf8.RuneCountInString(text[:len(text)-len(trimmed)])
	w := &written{text: strings.TrimRightFunc(trimmed, unicode.IsSpace), at: at}
	start := numberStart(w.text)
	if start < 0 || strings.ContainsAny(w.text[:start], "-−") {
		return nil, w.fault("count.number", limits())
	}
	w.takeBefore(w.text[:start])
	rest, f := w.takeFigures(w.text[start:])
	if f == nil {
		f = w.takeAfter(rest)
	}
	return w, f
}

// takeBefore keeps the words before the figures, less the R of a resultant.
func (w *written) takeBefore(text string) {
	words := strings.Fields(text)
	last := len(words) - 1
	switch {
	case last >= 0 && strings.EqualFold(words[0], "R"):
		w.resultant, words = true, words[1:]
	case last >= 0 && strings.EqualFold(words[last], "R"):
		w.resultant, words = true, words[:last]
	}
	w.before = strings.Join(words, " ")
}

// takeFigures reads 8, 8/2, 40s-2, 2 x 30 and gives what follows.
func (w *written) takeFigures(text string) (string, *qty.Fault) {
	var f *qty.Fault
	if w.first, text, f = w.takeFigure(text); f != nil {
		return "", f
	}
	mark, rest := cutMark(text)
	if mark == 0 {
		return text, nil
	}
	w.mark = mark
	w.second, rest, f = w.takeFigure(rest)
	return rest, f
}

// cutMark takes a slash, a hyphen or a sign of multiplication that stands
// before a figure.
func cutMark(text string) (rune, string) {
	trimmed := strings.TrimLeftFunc(text, unicode.IsSpace)
	mark, size := utf8.DecodeRuneInString(trimmed)
	rest := strings.TrimLeftFunc(trimmed[size:], unicode.IsSpace)
	if numberStart(rest) != 0 {
		return 0, text
	}
	switch mark {
	case '/', '-':
		return mark, rest
	case 'x', 'X', '×':
		return 'x', rest
	}
	return 0, text
}

// takeFigure reads a number and the s after it from the end of the strand.
func (w *written) takeFigure(text string) (figure, string, *qty.Fault) {
	length := numberLength(text)
	n, err := qty.ParseNumber(text[:length])
	if err != nil {
		return figure{}, "", w.passOn(err, text, length)
	}
	rest, ess := cutEss(text[length:])
	return figure{n, ess, text[:length], len(text)}, rest, nil
}

// passOn gives a quantity's fault as one of the whole count.
func (w *written) passOn(err error, tail string, length int) *qty.Fault {
	out := *w.faultIn("count.number", tail, length, limits())
	if inner, ok := err.(*qty.Fault); ok {
		out.Code, out.Read, out.Args = inner.Code, inner.Read, inner.Args
		out.At += inner.At
	}
	return &out
}

// cutEss takes the s of 40s or 40's.
func cutEss(text string) (string, bool) {
	for _, ess := range []string{"s", "S", "'s", "’s"} {
		rest, ok := strings.CutPrefix(text, ess)
		next, _ := utf8.DecodeRuneInString(rest)
		if ok && !unicode.IsLetter(next) {
			return rest, true
		}
	}
	return text, false
}

// takeAfter keeps the words after the figures, less plies written after them
// as in 30 tex x 2. Plies written so leave no doubt which figure is the count.
func (w *written) takeAfter(text string) *qty.Fault {
	words, mark, plies := cutPlies(text)
	w.after = strings.TrimSpace(words)
	switch {
	case mark == 0:
		return nil
	case w.mark != 0:
		return w.fault("count.plies", pliesLimits())
	}
	n, err := qty.ParseNumber(plies)
	if err != nil {
		return w.passOn(err, plies, len(plies))
	}
	w.first.ess, w.mark, w.second = true, mark, figure{n: n, text: plies, left: len(plies)}
	return nil
}

// cutPlies splits "tex x 2" and "tex / 2" before their mark; mark is 0 when
// the text does not end so.
func cutPlies(text string) (words string, mark rune, plies string) {
	words = strings.TrimRightFunc(text, isDigit)
	plies = text[len(words):]
	words = strings.TrimRightFunc(words, unicode.IsSpace)
	mark, size := utf8.DecodeLastRuneInString(words)
	words = words[:len(words)-size]
	spaced := words != strings.TrimRightFunc(words, unicode.IsSpace)
	switch {
	case plies == "":
		return text, 0, ""
	case mark == '/':
		return words, '/', plies
	case mark == '×', (mark == 'x' || mark == 'X') && spaced:
		return words, 'x', plies
	}
	return text, 0, ""
}
