package dress

// Threaded is ends that are threaded alike, in groups to be checked one by one.
type Threaded struct {
	Shafts []int // of the neighbouring ends, left to right; a group repeats them
	Times  int   // how often in one group
	After  []int // working ends from the left that are threaded after each group
}

// EndsInGroup gives the ends of one group.
func (t Threaded) EndsInGroup() int { return t.Times * len(t.Shafts) }

// Threading puts the ends of a threading into groups of at most most ends, 1 or
// more: before and after stand once, fill is repeated times. Whole repeats share a
// group where two or more fit into one; a longer repeat is cut into stretches as
// even as can be, each of which comes back in every repeat.
func Threading(before, fill, after []int, times, most int) []Threaded {
	t := threader{most: most}
	t.once(before)
	if len(fill) > 0 && times > 0 {
		t.repeats(fill, times)
	}
	t.once(after)
	return t.out
}

type threader struct {
	most, ends int
	out        []Threaded
}

// once threads a stretch that does not come back.
func (t *threader) once(shafts []int) {
	for _, part := range evenly(shafts, t.most) {
		t.ends += len(part)
		t.out = append(t.out, Threaded{part, 1, []int{t.ends}})
	}
}

func (t *threader) repeats(fill []int, times int) {
	if per := t.most / len(fill); per > 1 {
		t.inGroups(fill, times, per)
		return
	}
	from, long := t.ends, len(fill)
	for _, part := range evenly(fill, t.most) {
		from += len(part)
		row := Threaded{Shafts: part, Times: 1}
		for i := range times {
			row.After = append(row.After, from+i*long)
		}
		t.out = append(t.out, row)
	}
	t.ends += times * long
}

// inGroups takes so many repeats to a group, and what is over in a smaller one.
func (t *threader) inGroups(fill []int, times, per int) {
	for _, g := range [][2]int{{per, times / per}, {times % per, 1}} {
		row := Threaded{Shafts: fill, Times: g[0]}
		for range g[1] {
			t.ends += row.EndsInGroup()
			row.After = append(row.After, t.ends)
		}
		if g[0] > 0 && g[1] > 0 {
			t.out = append(t.out, row)
		}
	}
}

// evenly cuts a stretch into as few parts as hold at most most, the longer first.
func evenly(shafts []int, most int) [][]int {
	n := (len(shafts) + most - 1) / most
	var out [][]int
	for left := n; left > 0; left-- {
		size := (len(shafts) + left - 1) / left
		out, shafts = append(out, shafts[:size]), shafts[size:]
	}
	return out
}
