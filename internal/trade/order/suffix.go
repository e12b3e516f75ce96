package order

import "strings"

// part reads a unit and its suffixes, from left to right.
func (p *parser) part() int {
	since, start := len(p.leaves), p.tok
	id := p.unit()
	p.note(id, start)
	for n := 0; p.tok.is("mirrored") || p.tok.isTimes(); n++ {
		if n == MostNested {
			p.fail(codeTooDeep, p.tok, args{"most": MostNested})
		}
		p.since = since
		id = p.suffix(id)
		if n >= MostNested {
			id = none
		}
	}
	return id
}

func (p *parser) suffix(id int) int {
	if id != none && p.tree.nodes[id].form == filled {
		p.fail(codeFillNested, p.tok, nil)
		id = none
	}
	if p.tok.is("mirrored") {
		return p.mirrored(id)
	}
	return p.times(id)
}

func (p *parser) mirrored(id int) int {
	mark := p.step()
	how := once
	switch {
	case p.tok.is("open"):
		how = joined
		p.step()
	case p.tok.is("doubled"):
		how = doubled
		p.step()
	}
	if id == none {
		return none
	}
	return p.within(p.tree.addTurned(id, how, mark.at), id, mark)
}

// within says when a suffix makes a part too long.
func (p *parser) within(id, kid int, mark token) int {
	if p.tree.nodes[id].threads > MostThreads && p.tree.nodes[kid].threads <= MostThreads {
		p.fail(codeTooLong, mark, args{"most": MostThreads})
	}
	return id
}

// times reads x 3, x3, × 3 or x fill. For a star it reads the same, and says
// that it is none of the shorthand.
func (p *parser) times(id int) int {
	mark := p.step()
	if mark.shape == junk {
		p.fail(codeUnexpected, mark, args{"near": "x"})
		id = none
	}
	t, counted := mark.counted()
	switch {
	case counted:
		return p.repeat(id, t, mark)
	case p.tok.is("fill"):
		p.step()
		return p.fill(id, mark)
	case p.tok.shape == number:
		return p.repeat(id, p.step(), mark)
	}
	p.missing(codeCountMissing, mark, nil)
	return none
}

// counted gives the count of a word such as x3.
func (t token) counted() (count token, ok bool) {
	digits := strings.TrimLeft(t.text, "xX×*")
	skip := len(t.text) - len(digits)
	return token{shape: number, text: digits, value: value(digits), at: t.at + skip, pos: t.pos + skip}, digits != ""
}

func (p *parser) repeat(id int, t, mark token) int {
	n, ok := p.count(t)
	if !ok || id == none {
		return none
	}
	p.noteTimes(n)
	return p.within(p.tree.addTimes(id, n, mark.at), id, mark)
}

func (p *parser) fill(id int, mark token) int {
	switch {
	case p.depth > 0:
		p.fail(codeFillNested, mark, nil)
		return none
	case p.filled != nil:
		p.fail(codeFillTwice, mark, args{"first": p.filled.at})
		return none
	}
	p.filled = &mark
	if id == none {
		return none
	}
	p.noteFill()
	return p.tree.addFilled(id, mark.at)
}
