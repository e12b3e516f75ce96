package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// unit is what the sizes of threads are written in. A unit has nm/part nanometres.
type unit struct {
	name     string
	nm, part int64
}

// The units of sizes. A decipoint is a tenth of a point, 1/720 in (from memory of
// the specification); an inch is 25.4 mm.
var (
	decipoints  = unit{"Decipoints", 25_400_000, 720}
	inches      = unit{"Inches", 25_400_000, 1}
	centimetres = unit{"Centimeters", 10_000_000, 1}
)

// unitNames are what the units are written as.
var unitNames = map[string]unit{
	"decipoints": decipoints, "decipoint": decipoints,
	"inches": inches, "inch": inches, "in": inches,
	"centimeters": centimetres, "centimetres": centimetres, "centimeter": centimetres, "centimetre": centimetres, "cm": centimetres,
}

// unitOf reads the unit of the warp's or the weft's sizes; none where there are no
// sizes, or none that can be read.
func (r *reader) unitOf(name string) unit {
	u := r.unitSaid(name)
	if name == warpName {
		r.units[0] = u
	} else {
		r.units[1] = u
	}
	return u
}

func (r *reader) unitSaid(name string) unit {
	s := r.doc.find(name)
	if l := s.get("Units"); l != nil && l.value != "" {
		u, known := unitNames[fold(l.value)]
		if !known {
			r.warn("wif.units", r.pathIn(s, l.key), l.valued, nil)
		}
		return u
	}
	if !r.hasSizes(s, name) {
		return unit{}
	}
	at := span{}
	if s != nil {
		at = s.at
	}
	r.tell("wif.units-unsaid", pathOf(name), at, problem.Args{"section": name})
	r.repair(name, "Units", decipoints.name)
	return decipoints
}

func (r *reader) hasSizes(s *section, name string) bool {
	return s.value("Spacing") != "" || s.value("Thickness") != "" ||
		len(r.rowsOf[name+thicknessOf]) > 0 || len(r.rowsOf[name+spacingOf]) > 0
}

// size reads a size; 0 is unsaid.
func (r *reader) size(s *section, key string, u unit) qty.Length {
	l := s.get(key)
	if l == nil || l.value == "" {
		return 0
	}
	size, _ := r.sized(s, l, u)
	return size
}

// sizes reads the size of each thread.
func (r *reader) sizes(list string, u unit, n int) []qty.Length {
	name, _, _ := strings.Cut(list, " ")
	s := r.doc.find(list)
	var out []qty.Length
	for _, w := range r.rowsOf[list] {
		if w.value == "" || r.beyond(name, list, w, n) {
			continue
		}
		if size, ok := r.sized(s, w.line, u); ok {
			for len(out) < w.n-1 {
				out = append(out, 0)
			}
			out = append(out, size)
		}
	}
	return out
}

// sized reads one size; what is none becomes a remark.
func (r *reader) sized(s *section, l *line, u unit) (qty.Length, bool) {
	text := l.value
	if whole, part, ok := strings.Cut(text, ","); ok && !strings.Contains(text, ".") {
		text = whole + "." + part
	}
	size, ok := u.parse(text)
	switch {
	case !ok:
		r.warn("wif.size", r.pathIn(s, l.key), l.valued, nil)
		l.mute()
		return 0, false
	case text != l.value:
		r.tell("wif.comma", r.pathIn(s, l.key), l.valued, problem.Args{"reading": text})
		l.value = text
	}
	return size, true
}

// parse reads a decimal number of units, from 0 to mostSize, as whole nanometres,
// the nearest.
func (u unit) parse(text string) (qty.Length, bool) {
	whole, part, _ := strings.Cut(text, ".")
	digits := whole + part
	if digits == "" || len(digits) > longestDigits || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.ParseInt(digits, 10, 64)
	if err != nil {
		return 0, false
	}
	return u.of(n, len(part))
}

// of gives n units over a power of ten as whole nanometres.
func (u unit) of(n int64, places int) (qty.Length, bool) {
	by := int64(1)
	for range places {
		by *= 10
	}
	size, ok := qty.LengthOf(qty.Frac(n, by).Mul(qty.Frac(u.nm, u.part)), qty.Nearest)
	return size, ok && size <= mostSize
}

// text writes a size with as few decimals as read back to it.
func (u unit) text(size qty.Length) string {
	in := size.Rat().Mul(qty.Frac(u.part, u.nm))
	for places := 0; ; places++ {
		text := in.Decimal(places)
		if back, ok := u.parse(text); ok && back == size || places == 9 {
			return text
		}
	}
}
