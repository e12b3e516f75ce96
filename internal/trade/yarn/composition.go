package yarn

import (
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// Part is a fibre's share of a yarn, by weight.
type Part struct {
	Fibre Fibre
	Share qty.Share
}

// Composition is what a yarn is made of, in the order written. The shares sum
// to 100 %. The zero value means that nothing was said.
type Composition struct{ Parts []Part }

// ParseComposition reads what a yarn is made of: cotton; cotton 60 %, linen 40
// %; 60 % cotton + 40 % linen. Faults, besides those of qty.ParseShare:
//
//	fibre.empty    nothing is written
//	fibre.unknown  an unknown fibre: near, valid
//	fibre.twice    a fibre is named twice
//	fibre.share    a share of 0, or none beside several fibres
//	fibre.sum      the shares do not sum to 100 %: sum
func ParseComposition(text string) (Composition, error) {
	items := splitParts(text)
	if len(items) == 0 {
		return Composition{}, &qty.Fault{Code: "fibre.empty"}
	}
	var out Composition
	for _, item := range items {
		p, f := parsePart(item.text, len(items) == 1)
		if f == nil && out.has(p.Fibre) {
			f = &qty.Fault{Code: "fibre.twice", Read: item.text}
		}
		if f != nil {
			f.At += item.at
			return Composition{}, f
		}
		out.Parts = append(out.Parts, p)
	}
	if sum := out.sum(); !sum.Of.Equal(qty.Int(1)) {
		return Composition{}, &qty.Fault{Code: "fibre.sum", Read: text, Args: map[string]any{"sum": sum}}
	}
	return out, nil
}

// item is a part's text and the characters before it.
type item struct {
	text string
	at   int
}

// splitParts splits at commas, semicolons and plus signs; a comma between two
// digits is a decimal mark.
func splitParts(text string) []item {
	var out []item
	from := 0
	for i := 0; i <= len(text); i++ {
		if i < len(text) && !splitsAt(text, i) {
			continue
		}
		part := strings.TrimLeft(text[from:i], " \t\n")
		at := utf8.RuneCountInString(text[:i]) - utf8.RuneCountInString(part)
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, item{part, at})
		}
		from = i + 1
	}
	return out
}

func splitsAt(text string, i int) bool {
	digits := i > 0 && i+1 < len(text) && isDigit(rune(text[i-1])) && isDigit(rune(text[i+1]))
	return strings.ContainsRune(";+", rune(text[i])) || text[i] == ',' && !digits
}

// parsePart reads a fibre with its share before or after it. Alone, a fibre is
// all of the yarn.
func parsePart(text string, alone bool) (Part, *qty.Fault) {
	name, share := cutShare(text)
	fibre, err := ParseFibre(name)
	switch {
	case err != nil:
		return Part{}, faultAt(err, text, name)
	case share == "" && alone:
		return Part{fibre, qty.Share{Of: qty.Int(1)}}, nil
	case share == "":
		return Part{}, &qty.Fault{Code: "fibre.share", Read: text}
	}
	s, err := qty.ParseShare(share)
	switch {
	case err != nil:
		return Part{}, faultAt(err, text, share)
	case s.Of.Sign() == 0:
		return Part{}, &qty.Fault{Code: "fibre.share", Read: text}
	}
	return Part{fibre, s}, nil
}

// cutShare splits a part into the fibre and its share, which is empty where
// none is written.
func cutShare(text string) (name, share string) {
	switch start := numberStart(text); {
	case start > 0:
		return strings.TrimSpace(text[:start]), text[start:]
	case start < 0:
		return text, ""
	}
	end := numberLength(text)
	end += percentLength(text[end:])
	return strings.TrimSpace(text[end:]), text[:end]
}

// percentLength gives the bytes of the per cent that text begins with.
func percentLength(text string) int {
	rest := strings.TrimLeft(text, " \t")
	for _, sign := range []string{"%", "percent", "per cent"} {
		if len(rest) >= len(sign) && strings.EqualFold(rest[:len(sign)], sign) {
			return len(text) - len(rest) + len(sign)
		}
	}
	return 0
}

// faultAt gives the fault of a part as one of the whole text.
func faultAt(err error, whole, part string) *qty.Fault {
	out := qty.Fault{Code: "fibre.share", Read: part}
	if f, ok := err.(*qty.Fault); ok {
		out = *f
	}
	before, _, _ := strings.Cut(whole, part)
	out.At += utf8.RuneCountInString(before)
	return &out
}

func (c Composition) has(f Fibre) bool {
	return slices.ContainsFunc(c.Parts, func(p Part) bool { return p.Fibre.Name == f.Name })
}

func (c Composition) sum() qty.Share {
	var sum qty.Rat
	for _, p := range c.Parts {
		sum = sum.Add(p.Share.Of)
	}
	return qty.Share{Of: sum}
}

// IsZero reports whether nothing was said.
func (c Composition) IsZero() bool { return len(c.Parts) == 0 }

// Equal reports whether two compositions name the same shares in the same
// order.
func (c Composition) Equal(d Composition) bool {
	return slices.EqualFunc(c.Parts, d.Parts, func(p, q Part) bool {
		return p.Fibre.Name == q.Fibre.Name && p.Share.Of.Equal(q.Share.Of)
	})
}

// String writes the composition so that ParseComposition reads it back.
func (c Composition) String() string {
	if len(c.Parts) == 1 {
		return c.Parts[0].Fibre.Name
	}
	var out []string
	for _, p := range c.Parts {
		out = append(out, p.Fibre.Name+" "+p.Share.String())
	}
	return strings.Join(out, ", ")
}

// Main gives the fibre of the largest share, the first of equals, and false
// when nothing was said. It decides which defaults the yarn takes.
func (c Composition) Main() (Fibre, bool) {
	if c.IsZero() {
		return Fibre{}, false
	}
	main := c.Parts[0]
	for _, p := range c.Parts[1:] {
		if main.Share.Of.Less(p.Share.Of) {
			main = p
		}
	}
	return main.Fibre, true
}
