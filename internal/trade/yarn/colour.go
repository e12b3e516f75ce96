package yarn

import (
	"strings"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// Colour is a yarn's colour: a name in any words, a hex value, or both. The
// zero value means that none was said.
type Colour struct {
	Name string // as written
	Hex  string // #a03020: red, green and blue of sRGB, small letters; or empty
}

// ParseColour reads a colour: madder, #a03020, madder #a03020, #a32 (each
// digit twice). Faults: colour.empty; colour.hex when a # is not followed by
// three or six hexadecimal digits at the end of the text.
func ParseColour(text string) (Colour, error) {
	name, hex, ok := strings.Cut(text, "#")
	c := Colour{Name: strings.Join(strings.Fields(name), " ")}
	if ok {
		if c.Hex, ok = wholeHex(strings.TrimSpace(hex)); !ok {
			at := utf8.RuneCountInString(name)
			return Colour{}, &qty.Fault{Code: "colour.hex", Read: "#" + strings.TrimSpace(hex), At: at}
		}
	}
	if c == (Colour{}) {
		return Colour{}, &qty.Fault{Code: "colour.empty"}
	}
	return c, nil
}

// wholeHex gives #rrggbb of rrggbb or rgb.
func wholeHex(digits string) (string, bool) {
	digits = strings.ToLower(digits)
	if strings.Trim(digits, "0123456789abcdef") != "" {
		return "", false
	}
	switch len(digits) {
	case 6:
		return "#" + digits, true
	case 3:
		out := "#"
		for _, d := range digits {
			out += string(d) + string(d)
		}
		return out, true
	}
	return "", false
}

// String writes the colour so that ParseColour reads it back.
func (c Colour) String() string { return strings.TrimSpace(c.Name + " " + c.Hex) }
