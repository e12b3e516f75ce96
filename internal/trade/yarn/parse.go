package yarn

import (
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/near"
	"sley/internal/trade/qty"
)

// ParseCount reads a count as its label writes it: the symbol of the system
// before or after the figures, unlike singles joined by + (one without a
// symbol takes the next one's):
//
//	30 Ne, 20s cotton, 5 1/2 run, 60 tex, 150 den, 3360 yd/lb, 120 m/50 g
//	8/2 Ne, Ne 8/2, 16/2 lea, 2/20 worsted, Nm 8/2, 2/40s cotton
//	50s-2 spun silk, 30 tex x 2, R 60 tex / 2
//	60 Ne + 40 Ne, 40s + 80s + 120s Ne, 24 Ne + 30 tex
//
// Two figures about a slash are read by the system's own custom.
//
//   - Cotton: number/plies. An s marks the number, so 2/40s is two-fold 40s.
//     Where the first figure is below the second and at most 3, or less than a
//     quarter of it, as in 2/20, it could be either and is asked.
//   - Run: as cotton; and where the first is below the second it could also be
//     a fraction, and is asked.
//   - Worsted, linen, metric and the rest: a first figure of 1 to 12 that is
//     below the second is the plies; otherwise the second is. Where both are 1
//     to 12 and neither more than twice the other, as in 6/8, the strand says
//     Either.
//   - Spun silk: 40s-2 is two-fold and itself a 40s. With a slash it could be
//     metric, as silk is sold now, and is asked.
//   - Direct systems: a slash could mean singles or the folded yarn and is
//     asked, unless R says the latter. x is always singles times plies.
//
// Faults (*qty.Fault), besides those of qty.ParseNumber and qty.ParseGrist:
//
//	count.empty      nothing is written
//	count.long       more than 200 characters
//	count.strands    more than 12 strands
//	count.number     no number, or none from 1/1000 to 1,000,000: least, most
//	count.plies      plies that are no whole number from 1 to 99: least, most
//	count.no-system  figures without a system: valid
//	count.system     an unknown system: near, valid
//	count.two-systems  different systems before and after the figures
//	count.ambiguous  it could be several yarns: readings
func ParseCount(text string) (Count, error) {
	c, f := parseCount(text)
	if f != nil {
		return Count{}, f
	}
	return c, nil
}

func parseCount(text string) (Count, *qty.Fault) {
	parts := strings.Split(text, "+")
	switch {
	case strings.TrimSpace(text) == "":
		return Count{}, &qty.Fault{Code: "count.empty"}
	case utf8.RuneCountInString(text) > longestText:
		return Count{}, &qty.Fault{Code: "count.long", Args: map[string]any{"most": longestText}}
	case len(parts) > mostStrands:
		return Count{}, &qty.Fault{Code: "count.strands", Read: text, Args: map[string]any{"most": mostStrands}}
	}
	texts, f := scanStrands(parts)
	if f != nil {
		return Count{}, f
	}
	return resolve(texts)
}

func scanStrands(parts []string) ([]*written, *qty.Fault) {
	var out []*written
	at := 0
	for _, part := range parts {
		w, f := scanStrand(part, at)
		if f != nil {
			return nil, f
		}
		out = append(out, w)
		at += utf8.RuneCountInString(part) + 1
	}
	return out, nil
}

// resolve finds the systems from the last strand to the first, so that a
// strand without one can take the next one's.
func resolve(texts []*written) (Count, *qty.Fault) {
	strands := make([]Strand, len(texts))
	words := ""
	for i := len(texts) - 1; i >= 0; i-- {
		w := texts[i]
		if w.before == "" && w.after == "" {
			w.after = words
		}
		var f *qty.Fault
		if strands[i], f = w.resolve(); f != nil {
			return Count{}, f
		}
		words = w.before
		if words == "" {
			words = w.after
		}
	}
	return Count{strands}, nil
}

// resolve finds the strand's system and reads its figures by it.
func (w *written) resolve() (Strand, *qty.Fault) {
	if w.before == "" && w.after == "" {
		return Strand{}, w.fault("count.no-system", map[string]any{"valid": symbols()})
	}
	before, ok1 := SystemNamed(w.before)
	after, ok2 := SystemNamed(w.after)
	switch {
	case ok1 && ok2 && before.ID != after.ID:
		return Strand{}, w.fault("count.two-systems", nil)
	case ok1 && (ok2 || w.after == ""):
		return w.strand(before)
	case ok2 && w.before == "":
		return w.strand(after)
	}
	return w.otherwise()
}

// otherwise reads a strand whose words name no system: a plain grist, or the
// name of a fibre that leaves the system open.
func (w *written) otherwise() (Strand, *qty.Fault) {
	word := strings.TrimSpace(w.before + " " + w.after)
	if open, ok := openWords[plain(word)]; ok {
		return Strand{}, w.asks(w.readings(open))
	}
	g, err := qty.ParseGrist(w.text)
	if err == nil && g.NGPerNM().Sign() > 0 {
		return Strand{System: GristSystem, Number: g.Tex(), Plies: 1}, nil
	}
	if err != nil && (strings.Contains(word, "/") || strings.Contains(plain(word), " per ")) {
		return Strand{}, w.passOn(err, w.text, len(w.text))
	}
	return Strand{}, w.unknown(word)
}

// unknown says that the words name no system that is known.
func (w *written) unknown(word string) *qty.Fault {
	args := map[string]any{"valid": symbols()}
	if meant := near.To(word, names()); meant != "" {
		args["near"] = meant
	}
	f := w.fault("count.system", args)
	if at := strings.Index(w.text, word); at >= 0 {
		f = w.faultIn("count.system", w.text[at:], len(word), args)
	}
	return f
}

// names lists every symbol of every system.
func names() []string {
	var out []string
	for _, s := range systemsTable {
		out = append(out, s.Symbols...)
	}
	return out
}

// readings writes the strand as each of those systems would read it, each
// reading once.
func (w *written) readings(ids []SystemID) []string {
	var out []string
	for _, id := range ids {
		for _, text := range w.readingsIn(id.system()) {
			if !slices.Contains(out, text) {
				out = append(out, text)
			}
		}
	}
	return out
}

func (w *written) readingsIn(sys System) []string {
	s, f := w.strand(sys)
	if f == nil {
		return []string{s.String()}
	}
	readings, _ := f.Args["readings"].([]string)
	return readings
}

// asks says that the text could be several yarns.
func (w *written) asks(readings []string) *qty.Fault {
	return w.fault("count.ambiguous", map[string]any{"readings": readings})
}
