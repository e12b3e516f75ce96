package planfile

import (
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// allowances gives the allowances of a table by their keys; nil when there is
// none.
func (d *decoder) allowances(name string, n *node) warp.Allowances {
	t := d.open(name, n)
	if t.n == nil {
		return nil
	}
	out := warp.Allowances{}
	for _, key := range keys[name] {
		if a := t.allowance(key); a.Given() {
			out[key] = a
		}
	}
	return out
}

// allowance reads one allowance, as the grammar in docs/planfile.md says it.
func (t table) allowance(key string) warp.Allowance {
	n, text, ok := t.words(key, wantAllow)
	if !ok {
		return warp.Allowance{}
	}
	a := warp.Allowance{Typed: text}
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "none":
		a.None = true
		return a
	case "default":
		a.Accept = true
		return a
	}
	r := &allowanceReader{d: t.d, n: n}
	if a.Steps = r.steps(text); a.Steps == nil || !r.sound(a) {
		return warp.Allowance{}
	}
	return a
}

// allowanceReader reads the terms of one allowance.
type allowanceReader struct {
	d *decoder
	n *node
}

// The most steps an allowance has, and terms a step.
const mostTerms = 10

// steps reads steps with ", then" between them; nil after a problem.
func (r *allowanceReader) steps(text string) [][]warp.Term {
	var out [][]warp.Term
	parts := cutThen(clip{text: text})
	if r.long(parts) {
		return nil
	}
	for _, c := range parts {
		terms := r.terms(c)
		if terms == nil {
			return nil
		}
		out = append(out, terms)
	}
	return out
}

// long reports an allowance of more parts than any weaver writes.
func (r *allowanceReader) long(parts []clip) bool {
	if len(parts) <= mostTerms {
		return false
	}
	r.d.fail("allowance.long", r.n, problem.Args{"most": mostTerms})
	return true
}

// terms reads terms with + between them.
func (r *allowanceReader) terms(c clip) []warp.Term {
	var out []warp.Term
	parts := cutPlus(c)
	if r.long(parts) {
		return nil
	}
	for _, part := range parts {
		term, ok := r.term(part.trim(), out)
		if !ok {
			return nil
		}
		out = append(out, term)
	}
	return out
}

// term reads one term that stands after others on the same base.
func (r *allowanceReader) term(c clip, before []warp.Term) (warp.Term, bool) {
	word, rest := firstWord(c)
	switch strings.ToLower(word) {
	case "":
		r.bad("allowance.empty", c, nil)
		return warp.Term{}, false
	case "none", "default":
		r.bad("allowance.alone", c, nil)
		return warp.Term{}, false
	case "lose":
		return r.share(warp.Lose, c, rest)
	case "gain":
		return r.share(warp.Gain, c, rest)
	case "add":
		return r.share(warp.Add, c, rest)
	}
	if _, err := qty.ParseNumber(c.text); err == nil {
		r.bad("allowance.no-unit", c, problem.Args{"share": shareMeant(c.text)})
		return warp.Term{}, false
	}
	if strings.Contains(c.text, "%") || strings.Contains(c.text, "per cent") || strings.Contains(c.text, "percent") {
		return r.bare(c, before)
	}
	return r.length(c)
}

// shareMeant gives the share that a bare number would be: 0.08 and 8 are both 8
// in the hundred.
func shareMeant(number string) string {
	n, err := qty.ParseNumber(number)
	if err == nil && n.Sign() > 0 && n.Less(qty.Int(1)) {
		return qty.Share{Of: n}.String()
	}
	return number + " %"
}

// bare reads a share without a word: lost, or added after a term that adds.
func (r *allowanceReader) bare(c clip, before []warp.Term) (warp.Term, bool) {
	form := warp.Lose
	for _, t := range before {
		switch t.Form {
		case warp.Add:
			form = warp.Add
		case warp.Gain:
			r.bad("allowance.unclear", c, nil)
			return warp.Term{}, false
		}
	}
	return r.share(form, c, c)
}

// share reads the share of a term; whole is the term with its word.
func (r *allowanceReader) share(form warp.Form, whole, share clip) (warp.Term, bool) {
	if _, _, err := qty.ScanLength(share.text); err == nil {
		r.bad("allowance.word-length", whole, nil)
		return warp.Term{}, false
	}
	is, err := qty.ParseShare(share.text)
	if err != nil {
		r.d.faultAt(r.n, r.characters(share), err)
		return warp.Term{}, false
	}
	return warp.Term{Form: form, Share: is.Of, Typed: whole.text}, true
}

// length reads a term that begins with a length.
func (r *allowanceReader) length(c clip) (warp.Term, bool) {
	is, rest, err := qty.ScanLength(c.text)
	if err != nil {
		r.d.faultAt(r.n, r.characters(c), err)
		return warp.Term{}, false
	}
	term := warp.Term{Form: warp.Plain, Length: is, Sides: 1, Typed: c.text}
	return r.tail(term, clip{rest, c.at + len(c.text) - len(rest)})
}

// tail reads what follows the length of a term.
func (r *allowanceReader) tail(term warp.Term, c clip) (warp.Term, bool) {
	if after, ok := cutArrow(c); ok {
		return r.measured(term, after)
	}
	word, after := firstWord(c)
	switch {
	case word == "":
		return term, true
	case strings.EqualFold(word, "per") && after.text != "":
		return r.per(term, after)
	case isEachSide(c.text):
		term.Sides = 2
		return term, true
	}
	r.bad("allowance.form", c, nil)
	return term, false
}

// isEachSide reports whether the words say that a length is added twice.
func isEachSide(words string) bool {
	switch strings.TrimPrefix(strings.Join(strings.Fields(strings.ToLower(words)), " "), "at ") {
	case "each edge", "each end", "each side":
		return true
	}
	return false
}

// per reads the length that another is added for: "yd", "1 yd" or "37 in".
func (r *allowanceReader) per(term warp.Term, c clip) (warp.Term, bool) {
	text, shift := c.text, 0
	if _, rest, ok := qty.ScanNumber(text); !ok || rest == text {
		text, shift = "1 "+text, 2
	}
	is, err := qty.ParseLength(text)
	if err != nil {
		r.d.faultAt(r.n, max(0, r.characters(c)-shift), err)
		return term, false
	}
	if is == 0 {
		r.bad("allowance.zero", c, nil)
		return term, false
	}
	term.Form, term.Per, term.Sides = warp.PerLength, is, 0
	return term, true
}

// measured reads what a sample became.
func (r *allowanceReader) measured(term warp.Term, c clip) (warp.Term, bool) {
	after, err := qty.ParseLength(c.text)
	if err != nil {
		r.d.faultAt(r.n, r.characters(c), err)
		return term, false
	}
	if term.Length == 0 || after == 0 {
		r.bad("allowance.zero", c, nil)
		return term, false
	}
	return warp.Term{Form: warp.Measured, Before: term.Length, After: after, Typed: term.Typed}, true
}

func (r *allowanceReader) characters(c clip) int { return len([]rune(r.n.text[:c.at])) }

func (r *allowanceReader) bad(code string, c clip, args problem.Args) {
	r.d.part(code, r.n, c.at, c.text, args)
}
