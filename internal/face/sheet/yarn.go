package sheet

// yarn is what to buy and what to weigh out, with lines to write what was.
func (d *desk) yarn() {
	blocks := append([]block{d.heading(wordBuy)}, d.buying()...)
	blocks = append(blocks, d.inHand()...)
	if d.handspun() {
		blocks = append(blocks, d.care(careFibre)...)
	}
	blocks = append(blocks, d.heading(wordWeigh))
	d.flow(titleYarn, append(blocks, d.weighing()...))
}

func (d *desk) buying() []block {
	columns := []column{
		{"", 1, false},
		{wordTheYarn, 3.2, false},
		{wordNeeded, 2.4, true},
		{wordWeight, 2.2, true},
		{wordPutUps, 1.8, true},
		{wordLeft, 2.2, true},
		{wordBought, 5, false},
	}
	var rows [][]cell
	for _, name := range d.yarnNames() {
		id := "yarns[" + name + "]."
		rows = append(rows, []cell{
			tick, words(yarnName(name)), said(d.bench(id + "need")), said(d.bench(id + "weight")),
			say(d.bench(id + "put-ups")), say(d.bench(id + "left")), blank,
		})
	}
	return d.table(columns, rows)
}

// inHand says what is in stock and what one put-up holds.
func (d *desk) inHand() []block {
	var out []block
	for _, name := range d.yarnNames() {
		id := "yarns[" + name + "]."
		out = append(out, d.figures(d.lines(id+"stock", id+"stock-left", id+"to-buy", id+"put-up", id+"cost"))...)
	}
	for _, l := range d.lines("cost.yarn[") {
		out = append(out, d.figure(body, figured, small, l))
	}
	if len(out) == 0 {
		return nil
	}
	return append([]block{d.heading(wordInHand)}, bound(out)...)
}

// weighing has a row for each yarn in the warp and in the weft.
func (d *desk) weighing() []block {
	columns := []column{
		{"", 1, false}, {wordTheYarn, 4, false}, {wordFor, 2, false}, {wordOfYarn, 2.6, true}, {wordWeight, 2.6, true}, {wordWeighed, 4, false},
	}
	var rows [][]cell
	for _, name := range d.yarnNames() {
		id := "yarns[" + name + "]."
		for _, part := range [][3]string{{wordTheWarp, id + "warp", id + "warp-weight"}, {wordTheWeft, d.weftOf(id), id + "weft-weight"}} {
			if d.has(part[1]) {
				rows = append(rows, []cell{tick, words(yarnName(name)), words(part[0]), say(d.bench(part[1])), said(d.bench(part[2])), blank})
			}
		}
	}
	return d.table(columns, rows)
}

// weftOf is the node of the weft of a yarn: with what stays on bobbins, where
// that is reckoned.
func (d *desk) weftOf(id string) string {
	if d.has(id + "weft-wound") {
		return id + "weft-wound"
	}
	return id + "weft"
}

func (d *desk) handspun() bool {
	for i := range d.r.Plan.Yarns {
		if d.r.Plan.Yarns[i].Handspun {
			return true
		}
	}
	return false
}
