package loom

import (
	"errors"
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// ReedSystems lists the ways of numbering reeds that ParseReed reads.
func ReedSystems() []ReedSystem {
	out := slices.Clone(reedSystems)
	for i := range out {
		out[i].Aliases = slices.Clone(out[i].Aliases)
	}
	return out
}

// Density gives the dents of a reed of that number, as the system counts them.
func (s ReedSystem) Density(number qty.Rat) qty.Density {
	return qty.Density{Threads: number.Mul(qty.Int(s.Dents)), Over: s.Over}
}

// The dents a reed may have. The finest reeds for silk have some 100 in an
// inch; the limits are far beyond.
var (
	fewestDents = qty.Density{Threads: qty.Int(1), Over: 10 * qty.Inch}
	mostDents   = qty.Density{Threads: qty.Int(200), Over: qty.Inch}
)

// ParseReed reads a reed by its dents over a length (12 dpi, 12/in, 50/10 cm,
// 40 dents per 10 cm) or by its number in one of the ReedSystems (60
// Stockport, 60s Stockport, Stockport 60, 40 Bolton reed). Dents are exact: a
// 50/10 cm reed has 12.7 dents in an inch. How wide the reed itself is may
// follow after a comma: 12 dpi, 90 cm. The codes of its faults, beside
// those of qty.ParseDensity and qty.ParseNumber:
//
//	reed.empty     nothing is written
//	reed.no-unit   a bare number; Args inch and metric, the two readings
//	               "50 dpi" and "50/10 cm"
//	reed.unknown   no numbering of that name; Args valid
//	reed.range     Args least, most
func ParseReed(text string) (Reed, error) {
	written, width := splitWidth(text)
	dents, f := parseDents(written)
	if f == nil && (dents.Cmp(fewestDents) < 0 || dents.Cmp(mostDents) > 0) {
		f = reedFault("reed.range", text, strings.TrimSpace(text),
			map[string]any{"least": fewestDents, "most": mostDents})
	}
	if f != nil {
		return Reed{}, f
	}
	return Reed{Dents: qty.Typed[qty.Density]{Is: dents, Typed: written}, Width: width}, nil
}

// splitWidth takes the width of the reed itself off its end, where one is
// written after a comma: 12 dpi, 90 cm.
func splitWidth(text string) (string, qty.Typed[qty.Length]) {
	at := strings.LastIndex(text, ", ")
	if at < 0 {
		return text, qty.Typed[qty.Length]{}
	}
	after := strings.TrimSpace(text[at+1:])
	l, err := qty.ParseLength(strings.TrimSpace(strings.TrimSuffix(after, "wide")))
	if err != nil || l == 0 {
		return text, qty.Typed[qty.Length]{}
	}
	return text[:at], qty.Typed[qty.Length]{Is: l, Typed: after}
}

func parseDents(text string) (qty.Density, *qty.Fault) {
	written := strings.TrimSpace(text)
	if written == "" {
		return qty.Density{}, reedFault("reed.empty", text, "", nil)
	}
	if _, err := qty.ParseNumber(written); err == nil {
		return qty.Density{}, reedFault("reed.no-unit", text, written, readings(written))
	}
	number, name, ok := numbered(written)
	if !ok {
		return plainDents(text)
	}
	if s, known := systemNamed(name); known {
		return s.Density(number), nil
	}
	return otherDents(text, name)
}

// readings gives the two ways a number without unit could be meant. 50/10 has
// its length already and lacks only the unit of it.
func readings(written string) map[string]any {
	if strings.Contains(written, "/") && !strings.Contains(written, " ") {
		return map[string]any{"inch": written + " in", "metric": written + " cm"}
	}
	return map[string]any{"inch": written + " dpi", "metric": written + "/10 cm"}
}

// numbered takes "60s Stockport reed" or "Stockport 60" apart.
func numbered(written string) (number qty.Rat, name string, ok bool) {
	number, rest, ok := qty.ScanNumber(written)
	if ok {
		return number, reedName(rest), true
	}
	words := strings.Fields(written)
	last := len(words) - 1
	number, rest, ok = qty.ScanNumber(words[last])
	return number, strings.Join(words[:last], " "), ok && (rest == "" || rest == "s") && last > 0
}

// reedName gives the name of a numbering without the words around it: the s
// of 60s before it, and reed, sett or counts after it.
func reedName(rest string) string {
	if after, ok := strings.CutPrefix(rest, "s"); ok && strings.HasPrefix(after, " ") {
		rest = after
	}
	words := strings.Fields(rest)
	for n := len(words); n > 1; n-- {
		switch strings.ToLower(words[n-1]) {
		case "reed", "sett", "set", "count", "counts":
			continue
		}
		return strings.Join(words[:n], " ")
	}
	return strings.Join(words[:min(1, len(words))], " ")
}

func systemNamed(name string) (ReedSystem, bool) {
	for _, s := range reedSystems {
		for _, n := range append([]string{s.Name}, s.Aliases...) {
			if strings.EqualFold(n, name) {
				return s, true
			}
		}
	}
	return ReedSystem{}, false
}

// plainDents reads dents over a length.
func plainDents(text string) (qty.Density, *qty.Fault) {
	d, err := qty.ParseDensity(text)
	var f *qty.Fault
	errors.As(err, &f)
	return d, f
}

// otherDents reads dents over a length, or says that what follows the number
// is neither a length nor a numbering.
func otherDents(text, name string) (qty.Density, *qty.Fault) {
	d, f := plainDents(text)
	if f != nil && f.Code == "density.unknown-unit" && f.Args["near"] == nil {
		return d, reedFault("reed.unknown", text, name, map[string]any{"valid": systemNames()})
	}
	return d, f
}

func systemNames() []string {
	var names []string
	for _, s := range reedSystems {
		names = append(names, s.Name)
	}
	return names
}

// reedFault faults the part that stands somewhere in text.
func reedFault(code, text, part string, args map[string]any) *qty.Fault {
	at := max(0, strings.Index(text, part))
	return &qty.Fault{Code: code, Read: part, At: utf8.RuneCountInString(text[:at]), Args: args}
}
