package yarn

import (
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// Label is a yarn as one line says it, the way labels and order slips do: 8/2 cotton,
// white. Zero fields were not said.
type Label struct {
	Name        string // the line, without a colour in figures
	Count       qty.Typed[Count]
	Composition qty.Typed[Composition]
	Colour      Colour
	PutUp       qty.Typed[PutUp]
	Wraps       qty.Typed[Wraps]
	Handspun    bool
	// Taken is the system that the fibre's custom gave the figures of the count, by
	// the source of that id; empty where the line names a system. Others are the counts
	// that the same figures are in other systems such yarn is sold by.
	Taken  SystemID
	Source string
	Others []string
}

// ReadLabel reads a yarn from a line of count, fibre, colour, put-up and wraps, in any
// order and parted by commas where that is clearer: 8/2 cotton; Nm 16/2 wool, grey;
// 30 tex linen, #b0a080, 250 g cone. Words that are none of these are the colour's.
// Where no count system is written, the fibre's custom says which is meant.
//
// Errors, at count, fibre and colour: those of ParseCount, ParseComposition and
// ParseColour; label.unread where there is neither count nor fibre, label.long of more
// than 200 characters. Warning: fibre.unknown for a word near a fibre's name where no
// fibre is.
func ReadLabel(text string, l *problem.List) Label {
	r := labelReader{list: l}
	if utf8.RuneCountInString(text) > longestText {
		l.Fail("label.long", "", "", problem.Args{"most": longestText})
		return r.out
	}
	for _, part := range splitLabel(text) {
		r.part(part)
	}
	r.out.Name = strings.Join(r.named, ", ")
	r.readFibres()
	r.readCount()
	if len(r.count) == 0 && r.out.Composition.Is.IsZero() && len(r.fibres) == 0 {
		l.Fail("label.unread", "", strings.TrimSpace(text), nil)
		return r.out
	}
	r.readColour()
	return r.out
}

// splitLabel splits a line at commas and semicolons; a comma between two digits is a
// decimal mark.
func splitLabel(text string) []string {
	var out []string
	for _, item := range splitParts(strings.ReplaceAll(text, "+", plusMark)) {
		out = append(out, strings.ReplaceAll(item.text, plusMark, "+"))
	}
	return out
}

// plusMark stands for a plus, which does not part a label as it parts a composition.
const plusMark = "\x00"

// labelReader gathers what the words of a line say.
type labelReader struct {
	list   *problem.List
	out    Label
	named  []string // the parts, as they are written
	count  []string
	share  string // read last, for the fibre that comes next
	fibres []labelFibre
	others []string
}

// labelFibre is a fibre as it is named, with its share where one is written.
type labelFibre struct {
	fibre Fibre
	share string
}

// part reads what stands between two commas.
func (r *labelReader) part(text string) {
	if p, err := ParsePutUp(text); err == nil && (p.Package != "" || p.Mass != 0) {
		r.out.PutUp = qty.Typed[PutUp]{Is: p, Typed: text}
		return
	}
	if w, err := ParseWraps(text); err == nil {
		r.out.Wraps = qty.Typed[Wraps]{Is: w, Typed: text}
		return
	}
	words := strings.Fields(text)
	var named []string
	for len(words) > 0 {
		n := r.word(words)
		if !strings.HasPrefix(words[0], "#") {
			named = append(named, words[:n]...)
		}
		words = words[n:]
	}
	if len(named) > 0 {
		r.named = append(r.named, strings.Join(named, " "))
	}
}

// readColour takes the words that are left for the colour's.
func (r *labelReader) readColour() {
	if len(r.others) == 0 {
		return
	}
	for _, word := range r.others {
		if meant := near.To(word, fibreNames(true)); meant != "" && len(r.fibres) == 0 {
			r.list.Warn("fibre.unknown", "fibre", word, problem.Args{"near": meant, "valid": fibreNames(false)})
		}
	}
	// Figures stand last in a colour, wherever they stand in the line.
	slices.SortStableFunc(r.others, func(a, b string) int {
		return strings.Count(a[:1], "#") - strings.Count(b[:1], "#")
	})
	c, err := ParseColour(strings.Join(r.others, " "))
	if f, ok := err.(*qty.Fault); ok {
		r.list.Fail(f.Code, "colour", f.Read, f.Args)
		return
	}
	r.out.Colour = c
}
