package order

import "sley/internal/trade/qty"

// Parse reads an order of stripes or of shafts. It gives all the faults of the
// text, by their place, each with a code of this package and its place in
// characters; an order with faults holds its text and no threads. It costs as
// much as the text and the groups it calls are long.
func Parse(text string, ctx Context) (Order, []*qty.Fault) {
	r := newReading(ctx)
	p := parser{reading: r, lexer: lexer{text: text}}
	p.step()
	p.whole()
	if len(r.faults) > 0 {
		return Order{Text: text}, byPlace(r.faults)
	}
	return Order{Text: text, tree: r.tree}, nil
}

// reading is what the parsers of an order's text and of its groups share.
type reading struct {
	ctx     Context
	tree    *tree
	faults  []*qty.Fault
	groups  map[string]*called
	circle  []string        // the groups being read, outermost first
	deepest int             // most groups within groups so far
	filled  *token          // the suffix that fills
	twice   map[string]bool // names already reported as both
	names   []string        // what a slip is compared with, once there is one
	leaves  []Leaf          // of the order's own text, in its order
}

func newReading(ctx Context) *reading {
	return &reading{
		ctx:    ctx,
		tree:   &tree{kind: ctx.Kind, fill: none, numbers: map[sortKey]int{}},
		groups: map[string]*called{},
		twice:  map[string]bool{},
	}
}

// parser reads one text.
type parser struct {
	*reading
	lexer
	tok   token
	call  *call // the named group that is read; nil at the top
	base  int   // groups around the text
	depth int   // groups around the token
	ended int   // bytes into the text: where the token left behind ended
	since int   // of the leaves: the first of the part whose suffixes are read
}

// step goes on to the next token and gives the one left behind.
func (p *parser) step() token {
	t := p.tok
	p.ended = t.pos + len(t.text)
	p.tok = p.next()
	return t
}

// whole reads the text of the order itself.
func (p *parser) whole() {
	if p.tok.shape == end {
		p.fail(codeEmpty, p.tok, nil)
		return
	}
	t := p.tree
	t.parts = t.flat(p.parts())
	for i, id := range t.parts {
		if n := t.nodes[id]; n.form == filled {
			t.fill, t.filler = i, n.threads
		} else {
			t.fixed = over(int64(t.fixed) + int64(n.threads))
		}
	}
}

// parts reads parts up to the bracket that closes their group, or to the end.
// Those that could not be read are left out.
func (p *parser) parts() []int {
	var ids []int
	threads := 0
	p.each(func() {
		mark := p.tok
		if id := p.part(); id != none {
			ids = append(ids, id)
			threads = p.grow(threads, id, mark)
		}
	})
	return ids
}

// each calls read at every part, and minds the commas between parts.
func (p *parser) each(read func()) {
	var waits *token // the comma whose part has not come
	for first := true; !p.done(); first = false {
		switch {
		case p.tok.shape != comma:
			read()
			waits = nil
		case first || waits != nil:
			p.unexpected()
		default:
			mark := p.step()
			waits = &mark
		}
	}
	if waits != nil {
		p.fail(codeUnexpected, *waits, nil)
	}
}

// done reports whether the parts of the group, or of the text, are over.
func (p *parser) done() bool {
	return p.tok.shape == end || p.tok.shape == closing && p.depth > p.base
}

// grow adds a part's threads and says when the order grows too long by it.
func (p *parser) grow(threads, id int, mark token) int {
	n := p.tree.nodes[id].threads
	sum := over(int64(threads) + int64(n))
	if sum > MostThreads && threads <= MostThreads && n <= MostThreads {
		p.fail(codeTooLong, mark, args{"most": MostThreads})
	}
	return sum
}

// unit reads a group, a leaf or the name of a group, at least one token.
func (p *parser) unit() int {
	switch t := p.tok; {
	case t.shape == opening:
		return p.bracket()
	case t.shape == number && p.ctx.Kind == Shafts:
		return p.ends()
	case t.shape == number && p.ctx.Kind == Treadles:
		return p.pressed()
	case t.shape == number:
		return p.countFirst()
	case t.shape == word && !t.reserved():
		return p.name()
	case t.shape == word || t.shape == cross:
		p.unexpected()
		p.skip(false)
	default:
		p.unexpected()
	}
	return none
}

// unexpected says that the token cannot stand here, and passes over it.
func (p *parser) unexpected() {
	p.fail(codeUnexpected, p.step(), nil)
}

// missing says what is missing behind t, unless something unreadable stands
// there.
func (p *parser) missing(code string, t token, a args) {
	if p.tok.shape == junk || p.tok.shape == dash {
		p.unexpected()
		p.skip(false)
		return
	}
	p.fail(code, t, a)
}

// skip passes over what cannot be made out: up to a comma, a bracket or the
// end, or to a word of the shorthand when words are asked for.
func (p *parser) skip(words bool) {
	for {
		switch s := p.tok.shape; {
		case s == end, s == comma, s == opening, s == closing, words && p.tok.reserved():
			return
		}
		p.step()
	}
}
