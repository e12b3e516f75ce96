package draft

// DropUnused gives the draft without the shafts that no end is on and the treadles
// that no pick presses; those that stay are numbered anew in their order. A shaft or
// treadle that is in use and beyond those of the draft stays what it is.
func (d *Draft) DropUnused() *Draft {
	shafts, treadles := d.Used()
	return d.Renumber(numbered(shafts), numbered(treadles))
}

// Used gives the shafts that ends are on and the treadles that picks press.
func (d *Draft) Used() (shafts, treadles Set) {
	for _, shaft := range d.Threading {
		if shaft >= 1 && shaft <= MostShafts {
			shafts = shafts.With(shaft)
		}
	}
	for _, pressed := range d.Treadling {
		treadles |= pressed
	}
	return shafts, treadles
}

// numbered gives, for each in the set, its place from 1.
func numbered(s Set) map[int]int {
	out := map[int]int{}
	for i, n := range s.List() {
		out[n] = i + 1
	}
	return out
}

// Renumber gives the draft with its shafts and treadles under other numbers; those
// that have none are left out, and their ends are in no heddle. Two must not share a
// number.
func (d *Draft) Renumber(shafts, treadles map[int]int) *Draft {
	c := d.Clone()
	c.Shafts, c.Treadles = len(shafts), len(treadles)
	for i, shaft := range d.Threading {
		c.Threading[i] = shafts[shaft]
	}
	for i, up := range d.Lifts {
		c.Lifts[i] = up.renumber(shafts)
	}
	c.Ties = nil
	if len(d.Ties) > 0 {
		c.Ties = make([]Tie, len(treadles))
	}
	for i, tie := range d.Ties {
		if to := treadles[i+1]; to > 0 {
			c.Ties[to-1] = Tie{tie.Tied.renumber(shafts), tie.Lowered.renumber(shafts)}
		}
	}
	for i, pressed := range d.Treadling {
		c.Treadling[i] = pressed.renumber(treadles)
	}
	return c
}

func (s Set) renumber(to map[int]int) Set {
	var out Set
	for _, n := range s.List() {
		if to[n] > 0 {
			out = out.With(to[n])
		}
	}
	return out
}

// Turned gives the draft with warp and weft exchanged: what were picks are ends, on
// a shaft for each treadle, and what were ends are picks, by a treadle for each
// shaft; the thread that was on top is on top. Where picks press several treadles,
// or none, each lift that differs has a shaft. It reports false where that takes
// more than MostShafts; the draft is then nil. Ends in no heddle become picks that
// raise every shaft, since they were never on top.
func (d *Draft) Turned() (*Draft, bool) {
	of, sheds := d.sheds()
	if len(sheds) > MostShafts {
		return nil, false
	}
	c := d.Clone()
	c.Warp, c.Weft = d.Weft.clone(), d.Warp.clone()
	c.Threading, c.Shafts = of, max(len(sheds), 1)
	lifts := turnedLifts(sheds, d.Shafts)
	c.Lifts, c.Treadling, c.Ties, c.Treadles = nil, nil, nil, 0
	if !d.Treadled() || d.Shafts >= MostTreadles {
		for _, shaft := range d.Threading {
			c.Lifts = append(c.Lifts, lifts[shaft])
		}
		return c, true
	}
	c.byTreadles(d.Threading, lifts)
	return c, true
}

// byTreadles ties a treadle for each former shaft, and one more where there were
// ends in no heddle.
func (d *Draft) byTreadles(threading []int, lifts []Set) {
	for _, up := range lifts[1:] {
		d.Ties = append(d.Ties, TieFor(d.Shed, up, d.Shafts))
	}
	loose := len(lifts)
	for _, shaft := range threading {
		if shaft == 0 {
			if len(d.Ties) < loose {
				d.Ties = append(d.Ties, TieFor(d.Shed, lifts[0], d.Shafts))
			}
			shaft = loose
		}
		d.Treadling = append(d.Treadling, Of(shaft))
	}
	d.Treadles = len(d.Ties)
}

// sheds gives the lifts that become shafts, and which each pick has, from 1: one for
// each treadle where picks press one each, else one for each lift that differs.
func (d *Draft) sheds() (of []int, sheds []Set) {
	single := d.Treadled()
	for _, pressed := range d.Treadling {
		single = single && pressed.Len() == 1 && pressed.Most() <= len(d.Ties)
	}
	if single {
		for i := range d.Ties {
			sheds = append(sheds, d.Open(Of(i+1)).Up)
		}
		for _, pressed := range d.Treadling {
			of = append(of, pressed.Most())
		}
		return of, sheds
	}
	number := map[Set]int{}
	for _, up := range d.LiftPlan() {
		if number[up] == 0 {
			sheds = append(sheds, up)
			number[up] = len(sheds)
		}
		of = append(of, number[up])
	}
	return of, sheds
}

// turnedLifts gives, for each former shaft, the new shafts that are up: those whose
// lift left it down. At 0 stands that of ends in no heddle.
func turnedLifts(sheds []Set, shafts int) []Set {
	out := make([]Set, shafts+1)
	for shaft := range out {
		for k, up := range sheds {
			if !up.Has(shaft) {
				out[shaft] = out[shaft].With(k + 1)
			}
		}
	}
	return out
}
