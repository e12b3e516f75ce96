package order

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/qty"
)

// ends reads a shaft or a run of shafts.
func (p *parser) ends() int {
	a := p.step()
	b := a
	if p.tok.shape == dash {
		mark := p.step()
		if p.tok.shape != number {
			p.fail(codeUnexpected, mark, nil)
			return none
		}
		b = p.step()
	}
	okA, okB := p.shaft(a), b == a || p.shaft(b)
	if !okA || !okB {
		return none
	}
	return p.tree.addEnds(a.value, b.value, a.at)
}

func (p *parser) shaft(t token) bool {
	return p.between(codeShaft, t, MostShafts)
}

// between says when a number is not from 1 to most.
func (p *parser) between(code string, t token, most int) bool {
	if t.value < 1 || t.value > most {
		p.fail(code, t, args{"least": 1, "most": most})
		return false
	}
	return true
}

// count gives a count within the limits. A count such as 1,200 has two
// readings, one number or two parts, and is neither.
func (p *parser) count(t token) (int, bool) {
	switch {
	case p.joins(t):
		p.step()
		t.text += "," + p.step().text
		p.fail(codeGrouped, t, nil)
	case t.value == 0:
		p.fail(codeCountZero, t, nil)
	case t.value > MostCount:
		p.fail(codeCountLarge, t, args{"most": MostCount})
	default:
		return t.value, true
	}
	return 0, false
}

// joins reports whether a comma and three digits follow t without a space, and
// a yarn could have been meant to follow those as well as not.
func (p *parser) joins(t token) bool {
	if p.ctx.Kind != Stripes || p.tok.shape != comma || p.tok.pos != t.pos+len(t.text) {
		return false
	}
	rest := p.text[p.tok.pos+1:]
	return len(rest)-len(strings.TrimLeft(rest, "0123456789")) == 3
}

// name reads a stripe that begins with its yarn, or a group called by name.
func (p *parser) name() int {
	t := p.step()
	if _, isGroup := p.ctx.Groups[t.text]; isGroup && !p.isYarn(t) {
		return p.group(t)
	}
	if p.ctx.Kind != Stripes {
		p.unknown(t)
		return none
	}
	ok := p.yarn(t)
	if p.tok.shape == number {
		return p.stripe(t, p.step(), ok)
	}
	if ok {
		p.missing(codeCountMissing, t, p.guess(t))
	}
	p.details(&Run{})
	return none
}

// countFirst reads a stripe that begins with its count.
func (p *parser) countFirst() int {
	count, t := p.step(), p.tok
	if t.shape != word || t.reserved() {
		p.missing(codeNameMissing, count, nil)
		p.details(&Run{})
		return none
	}
	if _, isGroup := p.ctx.Groups[t.text]; isGroup && !p.isYarn(t) {
		p.fail(codeNameMissing, count, args{"before": t.text})
		return none
	}
	p.step()
	return p.stripe(t, count, p.yarn(t))
}

// stripe reads what follows a stripe's name and count.
func (p *parser) stripe(name, count token, ok bool) int {
	run := Run{Name: name.text, At: min(name.at, count.at)}
	n, counted := p.count(count)
	run.Count = n
	detailed := p.details(&run)
	if !ok || !counted || !detailed {
		return none
	}
	return p.tree.addStripe(run)
}

// details reads a stripe's own density and its beam.
func (p *parser) details(run *Run) bool {
	ok := true
	for {
		switch {
		case p.tok.is("at") && !run.Density.Given():
			ok = p.density(run) && ok
		case p.tok.is("on") && run.Beam == 0:
			ok = p.beam(run) && ok
		default:
			return ok
		}
	}
}

func (p *parser) beam(run *Run) bool {
	mark := p.step()
	if p.tok.is("beam") {
		p.step()
		if p.tok.shape == number {
			t := p.step()
			run.Beam = t.value
			return p.between(codeBeam, t, MostBeams)
		}
	}
	p.fail(codeBeam, mark, args{"least": 1, "most": MostBeams})
	return false
}

// widest is more bytes than any density is written with.
const widest = 96

func (p *parser) density(run *Run) bool {
	p.step()
	start := p.tok
	text := clip(p.text[start.pos:])
	d, rest, err := qty.ScanDensity(text)
	if err != nil || d.Threads.Sign() <= 0 || d.Over <= 0 {
		p.skip(true)
		start.text = strings.TrimSpace(p.text[start.pos:p.tok.pos])
		p.fail(codeDensity, start, why(err))
		return false
	}
	read := strings.TrimSpace(strings.TrimSuffix(text, rest))
	run.Density = qty.Typed[qty.Density]{Is: d, Typed: read}
	p.lexer.pos, p.lexer.at = start.pos, start.at
	p.jump(start.pos + len(read))
	p.step()
	p.ended = start.pos + len(read)
	return true
}

// clip cuts a text to the widest density, between two characters.
func clip(text string) string {
	if len(text) <= widest {
		return text
	}
	n := widest
	for n > 0 && !utf8.RuneStart(text[n]) {
		n--
	}
	return text[:n]
}

// why gives the code and args of a density's own fault.
func why(err error) args {
	a := args{"why": "density.none"}
	var f *qty.Fault
	if errors.As(err, &f) {
		maps.Copy(a, f.Args)
		a["why"] = f.Code
	}
	return a
}

func (p *parser) isYarn(t token) bool {
	return p.ctx.Kind == Stripes && slices.Contains(p.ctx.Names, t.text)
}

// yarn says when t is no yarn, or a group too.
func (p *parser) yarn(t token) bool {
	_, isGroup := p.ctx.Groups[t.text]
	switch {
	case p.ctx.Names == nil:
		return true
	case !p.isYarn(t):
		p.unknown(t)
		return false
	case isGroup && !p.twice[t.text]:
		p.twice[t.text] = true
		p.fail(codeNameTwice, t, nil)
	}
	return !isGroup
}
