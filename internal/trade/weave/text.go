package weave

import (
	"strings"

	"sley/internal/trade/qty"
)

// The codes of what can be wrong with the text of a weave.
const (
	codeSign   = "weave.sign"   // a sign that is none
	codeUneven = "weave.uneven" // ends, want: the ends of this pick and of the first
	codeEmpty  = "weave.empty"  // no pick at all
	codeLarge  = "weave.large"  // most: characters
)

// mostText keeps a text that is no weave from filling the memory.
const mostText = 1 << 24

// String gives the text of the weave: a line for each pick, the first pick first,
// # where the warp is on top and . where the weft is.
func (w *Weave) String() string {
	var out strings.Builder
	out.Grow(w.picks * (w.ends + 1))
	for i := range w.picks {
		for j := range w.ends {
			out.WriteByte(".#"[w.words[i*w.stride+j/wordBits]>>(j%wordBits)&1])
		}
		out.WriteByte('\n')
	}
	return out.String()
}

// Parse reads the text that String writes, as a repeat. Empty lines and spaces are
// left out, and / ends a line too, so that a weave can be said in one: "#. / .#".
// It gives all that is wrong with the text, with places in characters; the weave is
// then nil.
func Parse(text string) (*Weave, []*qty.Fault) {
	if len(text) > mostText {
		return nil, []*qty.Fault{{Code: codeLarge, Args: map[string]any{"most": mostText}}}
	}
	p := parser{}
	at := 0
	for _, c := range text {
		p.sign(c, at)
		at++
	}
	p.line(at)
	if len(p.rows) == 0 && len(p.faults) == 0 {
		p.faults = append(p.faults, &qty.Fault{Code: codeEmpty})
	}
	if len(p.faults) > 0 {
		return nil, p.faults
	}
	return p.weave(), nil
}

// parser collects the rows of a text.
type parser struct {
	rows   [][]bool
	row    []bool
	bad    bool // a sign of the row could not be read
	faults []*qty.Fault
}

func (p *parser) sign(c rune, at int) {
	switch c {
	case '#', '.':
		p.row = append(p.row, c == '#')
	case '\n', '/':
		p.line(at)
	case ' ', '\t', '\r':
	default:
		p.bad = true
		p.faults = append(p.faults, &qty.Fault{Code: codeSign, Read: string(c), At: at})
	}
}

// line ends a row. A row with signs that could not be read is not counted.
func (p *parser) line(at int) {
	n := len(p.row)
	if n > 0 && !p.bad && len(p.rows) > 0 && n != len(p.rows[0]) {
		p.faults = append(p.faults, &qty.Fault{Code: codeUneven, At: at - n, Args: map[string]any{"ends": n, "want": len(p.rows[0])}})
	}
	if n > 0 && !p.bad {
		p.rows = append(p.rows, p.row)
	}
	p.row, p.bad = nil, false
}

func (p *parser) weave() *Weave {
	w := New(len(p.rows), len(p.rows[0]))
	for i, row := range p.rows {
		for j, up := range row {
			w.Set(i, j, up)
		}
	}
	return w
}

// Must is Parse for a text that the program itself holds; it panics on a fault.
func Must(text string) *Weave {
	w, faults := Parse(text)
	if len(faults) > 0 {
		panic("internal error: a weave that cannot be read: " + faults[0].Error())
	}
	return w
}
