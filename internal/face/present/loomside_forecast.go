package present

import (
	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// forecast words how it will come out.
func (l looming) forecast() []FigureJSON {
	f := l.Forecast
	out := []FigureJSON{{ID: "left", Says: sayPicksLeft, Value: number(f.Left)}}
	add := func(id, says string, nm *qty.Rat, note string) {
		if nm != nil {
			out = append(out, FigureJSON{ID: id, Says: says, Value: l.u.onTape(*nm), Note: note})
		}
	}
	add("expects", sayExpects, f.Expects, "")
	if f.Reads != nil {
		is := f.Reads.Is.Rat()
		add("reads", sayReads, &is, fillIn(sayReadAt, "{n}", number(f.Reads.Pick-l.Weaving.Pieces[f.Piece].Before)))
	}
	if f.Beat != nil {
		out = append(out, FigureJSON{ID: "beat", Says: sayBeat, Value: l.u.perLength(*f.Beat), Note: l.beatWanted()})
	}
	add("on-loom", sayOnLoom, f.OnLoom, l.plannedNote(f))
	add("finished", sayFinished, f.Finished, l.tapeNote(sayPlannedAt, f.Wanted))
	out = append(out, l.warpLeft(f.Warp)...)
	for _, y := range f.Weft {
		out = append(out, l.weftLeft(y)...)
	}
	return out
}

func (u Units) perLength(perNM qty.Rat) string {
	return u.Bench(reckon.Node{ID: "loomside.beat", Figure: reckon.Figure{Is: perNM, Kind: reckon.Density}})
}

// beatWanted is the beat that was planned.
func (l looming) beatWanted() string {
	n, ok := l.Result.Node("picks.wanted")
	if !ok {
		return ""
	}
	return fillIn(sayBeatWanted, "{is}", l.u.Bench(n))
}

func (l looming) tapeNote(words string, nm *qty.Rat) string {
	if nm == nil {
		return ""
	}
	return fillIn(words, "{is}", l.u.onTape(*nm))
}

// plannedNote says what a piece was to read, and the picks that bring it there.
func (l looming) plannedNote(f *loomside.Forecast) string {
	note := l.tapeNote(sayPlannedAt, f.Planned)
	if f.PicksTo != nil {
		note += "; " + fillIn(saySoMany, "{n}", number(*f.PicksTo))
	}
	return note
}

func (l looming) warpLeft(w *loomside.WarpLeft) []FigureJSON {
	if w == nil {
		return nil
	}
	toGo := len(l.Weaving.Pieces) - l.Forecast.Piece
	spare := FigureJSON{ID: "warp-spare", Says: sayWarpSpare, Value: l.u.onTape(w.Spare), Note: sayAllFits}
	if w.Spare.Sign() < 0 {
		spare = FigureJSON{ID: "warp-short", Says: sayWarpShort, Value: l.u.onTape(w.Spare.Neg())}
		spare.Note = fillIn(saySomeFit, "{n}", number(w.Pieces), "{of}", number(toGo))
	}
	return []FigureJSON{{ID: "warp-left", Says: sayWarpLeft, Value: l.u.onTape(w.Left)}, spare}
}

func (l looming) weftLeft(y loomside.WeftLeft) []FigureJSON {
	say := func(words string) string { return fillIn(words, "{yarn}", y.Yarn) }
	out := []FigureJSON{{ID: "weft." + y.Yarn, Says: say(sayWeft), Value: l.u.yarnLong(y.Needs)}}
	if y.Left != nil {
		left := FigureJSON{ID: "left." + y.Yarn, Says: say(sayWeftLeft), Value: l.u.yarnLong(*y.Left), Note: sayByStock}
		if y.Weighed {
			left.Note = sayByScale
		}
		if y.Lasts != nil {
			left.Note += "; " + fillIn(sayLasts, "{n}", number(*y.Lasts), "{of}", number(y.Picks))
		}
		if y.Long != nil {
			left.Note += ", " + fillIn(sayLong, "{is}", l.u.onTape(*y.Long))
		}
		out = append(out, left)
	}
	if y.Bobbins != nil {
		out = append(out, FigureJSON{ID: "bobbins." + y.Yarn, Says: say(sayBobbins), Value: number(*y.Bobbins)})
	}
	return out
}

// remedies words what can still be changed.
func (l looming) remedies() []string {
	out := []string{}
	for _, one := range l.Remedies {
		is := l.u.onTape(one.Is)
		switch one.Kind {
		case loomside.Looser:
			is = l.u.perLength(one.Is)
		case loomside.MoreYarn:
			is = l.u.yarnLong(one.Is)
		}
		out = append(out, fillIn(changeRemedies[one.Kind], "{pieces}", number(one.Pieces), "{is}", is, "{yarn}", one.Yarn))
	}
	return out
}
