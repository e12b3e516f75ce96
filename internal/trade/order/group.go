package order

import "slices"

// call is where a named group is called for.
type call struct {
	name string
	at   int // characters into the order's own text
}

// called is a named group that has been read, or is being read.
type called struct {
	id     int // none when it has faults
	height int // groups within it
	done   bool
}

// bracket reads a group in brackets.
func (p *parser) bracket() int {
	mark := p.step()
	if !p.enter(mark) {
		p.pass()
		return none
	}
	defer p.leave()
	if p.tok.shape == closing {
		p.fail(codeEmpty, mark, nil)
	}
	ids := p.parts()
	if p.tok.shape != closing {
		p.fail(codeUnclosed, mark, nil)
		return none
	}
	p.step()
	return p.row(ids, mark.at)
}

func (p *parser) row(ids []int, at int) int {
	if len(ids) == 0 {
		return none
	}
	return p.tree.addRow(ids, at)
}

// enter goes one group deeper, unless that is too deep.
func (p *parser) enter(mark token) bool {
	if p.depth == MostNested {
		p.fail(codeTooDeep, mark, args{"most": MostNested})
		return false
	}
	p.depth++
	p.deepest = max(p.deepest, p.depth)
	return true
}

func (p *parser) leave() { p.depth-- }

// pass goes behind the bracket that closes the group just opened.
func (p *parser) pass() {
	for level := 1; level > 0 && p.tok.shape != end; {
		switch p.step().shape {
		case opening:
			level++
		case closing:
			level--
		}
	}
}

// group reads the group called by t.
func (p *parser) group(t token) int {
	g, met := p.groups[t.text]
	if !met {
		g = p.define(t)
	}
	switch {
	case !g.done:
		p.fail(codeGroupCircle, t, args{"circle": p.around(t.text)})
		return none
	case g.id == none:
		return none
	case p.depth+1+g.height > MostNested:
		p.fail(codeTooDeep, t, args{"most": MostNested})
		return none
	}
	p.deepest = max(p.deepest, p.depth+1+g.height)
	return p.tree.addGroup(g.id, t.text, t.at)
}

// around gives the groups from name on that call one another back to name.
func (p *parser) around(name string) []string {
	return append(slices.Clone(p.circle[slices.Index(p.circle, name):]), name)
}

// define reads the text of the group called by t.
func (p *parser) define(t token) *called {
	g := &called{id: none}
	p.groups[t.text] = g
	if p.enter(t) {
		outside := p.deepest
		p.deepest = p.depth
		p.circle = append(p.circle, t.text)
		g.id = p.inner(t)
		p.circle = p.circle[:len(p.circle)-1]
		g.height = p.deepest - p.depth
		p.deepest = max(p.deepest, outside)
		p.leave()
	}
	g.done = true
	return g
}

// inner reads a group's text with a parser of its own.
func (p *parser) inner(t token) int {
	q := parser{reading: p.reading, lexer: lexer{text: p.ctx.Groups[t.text]}, base: p.depth, depth: p.depth}
	q.call = &call{name: t.text, at: t.at}
	if p.call != nil {
		q.call.at = p.call.at
	}
	q.step()
	if q.tok.shape == end {
		p.fail(codeGroupEmpty, t, nil)
	}
	return q.row(q.parts(), 0)
}
