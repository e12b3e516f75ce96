package order

// pressed reads the treadles of a pick, 1+3, or a run of picks with one treadle
// each, 1-4.
func (p *parser) pressed() int {
	t := p.step()
	if p.tok.shape == dash {
		return p.treadles(t)
	}
	set, ok := p.treadle(t, 0)
	for p.tok.shape == joint {
		mark := p.step()
		if p.tok.shape != number {
			p.fail(codeUnexpected, mark, nil)
			return none
		}
		var one bool
		set, one = p.treadle(p.step(), set)
		ok = ok && one
	}
	if !ok {
		return none
	}
	return p.tree.addStripe(Run{Set: set, Count: 1, At: t.at})
}

// treadle adds a treadle to those that are pressed with it.
func (p *parser) treadle(t token, set uint64) (uint64, bool) {
	if !p.between(codeTreadle, t, MostShafts) {
		return set, false
	}
	return set | 1<<(t.value-1), true
}

// treadles reads what follows the first treadle of a run.
func (p *parser) treadles(a token) int {
	mark := p.step()
	if p.tok.shape != number {
		p.fail(codeUnexpected, mark, nil)
		return none
	}
	b := p.step()
	_, okA := p.treadle(a, 0)
	_, okB := p.treadle(b, 0)
	if !okA || !okB {
		return none
	}
	step, ids := 1, []int(nil)
	if b.value < a.value {
		step = -1
	}
	for n := a.value; n != b.value+step; n += step {
		ids = append(ids, p.tree.addStripe(Run{Set: 1 << (n - 1), Count: 1, At: a.at}))
	}
	return p.tree.addRow(ids, a.at)
}
