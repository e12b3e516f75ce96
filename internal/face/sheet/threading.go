package sheet

// threading is the heddles to count out before beaming, and the order as it was
// written.
func (d *desk) threading() {
	blocks := d.figures(d.lines("ends", "ends.doubled", "heddles.total"))
	blocks = append(blocks, d.heading(wordThread))
	blocks = append(blocks, d.text(strong, d.r.Plan.Warp.Threading.Text)...)
	blocks = append(blocks, d.heading(wordHeddles))
	d.flow(titleThreading, append(blocks, d.heddles()...))
}

func (d *desk) heddles() []block {
	columns := []column{{"", 1, false}, {wordShaft, 2, true}, {wordHeddle, 3, true}, {wordHas, 3, true}, {wordSpare, 3, true}, {wordRemark, 5, false}}
	var rows [][]cell
	for _, n := range d.listed("heddles[") {
		at := count(n.About.Index)
		spare := d.nodeOf("heddles.spare[", n.About.Index)
		rows = append(rows, []cell{tick, said(at), said(d.u.Bench(n)), say(d.nodeOf("heddles.on-loom[", n.About.Index)), say(spare), blank})
	}
	return d.table(columns, rows)
}

// nodeOf is the figure of the node of a list that is about that shaft.
func (d *desk) nodeOf(prefix string, index int) string {
	for _, n := range d.listed(prefix) {
		if n.About.Index == index {
			return d.u.Bench(n)
		}
	}
	return ""
}
