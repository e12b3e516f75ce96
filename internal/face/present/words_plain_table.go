package present

import "sley/internal/engine/reckon"

// plain is a number of a formula that no figure has: where it stands, and what it
// is in the plan.
type plain struct {
	op    reckon.Op
	arg   int // anyArg: in any place
	words string
}

// anyArg stands for every place but the first.
const anyArg = -1

// alone is a formula that is one plain number.
const alone reckon.Op = -1

// The words of numbers that several formulas share.
const (
	sayOutside  = "ends outside the repeat"
	sayRepeat   = "ends of one repeat"
	sayInOrder  = "ends in the order"
	sayDents    = "dents in the order"
	sayPasses   = "ends of two passes"
	sayPeg      = "the way from peg to peg, added up"
	sayMotif    = "picks of one motif"
	sayBorders  = "picks of borders and balance"
	sayCounted  = "counted from the left"
	sayInStripe = "its ends, counted in the stripes"
	sayPanels   = "panels"
	sayLayers   = "layers"
	saySeams    = "edges seamed"
	sayOfSett   = "ends of one sett"
	sayItsSett  = "that sett"
	sayReedDent = "dents of that reed"
	sayTimes    = "how many there are"
	sayEachHas  = "ends in each"
)

// plainTable says the plain numbers of formulas by the id of the node's words.
// What is not in it is a number of the formula itself: the 1 of 1 − 5 %, the 2 of
// a half.
var plainTable = map[string][]plain{
	"sett.exact":              {{reckon.Times, 0, sayReedDent}, {reckon.Times, 1, sayInOrder}, {reckon.Over, 1, sayDents}},
	"sett.wanted":             {{reckon.Times, 0, sayReedDent}, {reckon.Times, 1, sayInOrder}, {reckon.Over, 1, sayDents}},
	"sett.stripes[]":          {{reckon.Times, 0, sayReedDent}, {reckon.Times, 1, sayInOrder}, {reckon.Over, 1, sayDents}},
	"sley.other[].exact":      {{reckon.Times, 0, sayReedDent}, {reckon.Times, 1, sayInOrder}, {reckon.Over, 1, sayDents}},
	"sett.greatest":           {{reckon.Times, 1, "ends of the weave"}, {reckon.Plus, 0, "ends of the weave"}, {reckon.Plus, 1, "times they interlace"}},
	"repeats.exact":           {{reckon.Minus, 1, sayOutside}, {reckon.Over, 1, sayRepeat}},
	"ends":                    {{reckon.Plus, 0, sayOutside}, {reckon.Times, 0, sayRepeat}},
	"ends.below":              {{reckon.Plus, 0, sayOutside}, {reckon.Times, 0, sayRepeat}},
	"ends.above":              {{reckon.Plus, 0, sayOutside}, {reckon.Times, 0, sayRepeat}},
	"ends.bundles":            {{reckon.Over, 1, "ends in a bundle"}},
	"ends.below.in-reed":      {{reckon.Over, 0, sayOfSett}, {reckon.Over, 1, sayItsSett}},
	"ends.above.in-reed":      {{reckon.Over, 0, sayOfSett}, {reckon.Over, 1, sayItsSett}},
	"width.in-reed":           {{reckon.Over, 0, sayOfSett}, {reckon.Over, 1, sayItsSett}},
	"width.opened":            {{reckon.Times, 1, sayLayers}},
	"dents":                   {{reckon.Plus, 1, "dents of the floating selvedges"}},
	"pieces[].panel-width":    {{reckon.Times, 0, saySeams}, {reckon.Over, 1, sayPanels}},
	"pieces[].seamed-width":   {{reckon.Times, 1, sayPanels}, {reckon.Times, 0, saySeams}},
	"pieces[].layer-width":    {{reckon.Over, 1, sayLayers}},
	"pieces[].panels":         {{reckon.Times, 1, "panels of one piece"}},
	"pieces[].in-turn":        {{reckon.Times, 1, "weavers"}},
	"pieces[].count":          {{alone, 0, "as many as are wanted"}},
	"pieces[].to-weave":       {{reckon.Minus, 1, "pieces woven already"}},
	"pieces[].picks":          {{reckon.Times, 0, sayMotif}, {reckon.Over, 1, sayMotif}, {reckon.Minus, 1, sayBorders}, {reckon.Plus, 1, sayBorders}},
	"pieces[].treadlings":     {{reckon.Minus, 1, "picks outside the repeat"}, {reckon.Over, 1, "picks of one repeat"}},
	"pieces[].marks[]":        {{alone, 0, "read from the first pick"}, {reckon.Times, 0, "picks up to there"}},
	"pieces[].marks[].picks":  {{alone, 0, "counted in the order of picks"}},
	"winding.split":           {{alone, 0, "passes counted in the stripes"}},
	"yarns[].touching":        {{reckon.Times, 1, "the share of them that lies side by side on a ruler"}},
	"picks.wanted":            {{reckon.Over, 1, sayLayers}},
	"warp.gaps":               {{reckon.Times, 0, "gaps"}},
	"warp.tie-ons":            {{reckon.Times, 0, "times more"}},
	"warp.if-added":           {{reckon.ToUp, 0, "the warp with bare percentages added"}, {alone, 0, "the warp with bare percentages added"}},
	"heddles[]":               {{reckon.Plus, 0, "outside the repeat"}, {reckon.Times, 0, "in one repeat of the threading"}, {reckon.Times, 1, "repeats"}, {reckon.Plus, anyArg, "for doubled edges"}},
	"weft.picks":              {{reckon.Times, 1, sayLayers}},
	"weft.hemstitching":       {{reckon.Times, 0, "ends of pieces with a fringe"}},
	"yarns[].ends":            {{alone, 0, sayInStripe}, {reckon.Plus, 0, sayInStripe}, {reckon.Plus, anyArg, "its doubled ends"}},
	"yarns[].ends-2":          {{alone, 0, sayInStripe}, {reckon.Plus, 0, sayInStripe}},
	"yarns[].picks":           {{alone, 0, "its picks"}, {reckon.Times, 1, "its picks in one piece"}, {reckon.Plus, 0, "its picks in a piece woven"}, {reckon.Plus, anyArg, "its picks in a piece woven"}},
	"yarns[].tails":           {{reckon.Times, 0, "times it begins"}},
	"yarns[].cost":            {{reckon.Over, 1, "weight that the price is for"}},
	"winding.ends":            {{reckon.Minus, 1, "ends on the second beam"}},
	"winding.pegs[]":          {{alone, 0, sayPeg}, {reckon.Plus, 0, sayPeg}, {reckon.Plus, anyArg, sayPeg}},
	"winding.path-length":     {{alone, 0, sayPeg}, {reckon.Plus, 0, sayPeg}, {reckon.Plus, anyArg, sayPeg}},
	"winding.bouts":           {{reckon.ToDown, 1, sayPasses}},
	"winding.ties":            {{reckon.Times, 0, "bouts alike"}, {reckon.Over, 0, "ends of such a bout"}},
	"bouts[].ends":            {{reckon.Times, 0, sayPasses}, {reckon.Over, 1, sayPasses}, {reckon.Minus, 1, "bouts before it"}, {reckon.Plus, 1, "ends left over"}},
	"bouts[].changes[]":       {{alone, 0, "passes before it"}, {reckon.Over, 0, "ends before it"}},
	"raddle.groups[]":         {{alone, 0, sayCounted}, {reckon.Times, 0, "times it comes"}, {reckon.Times, 1, "in one run"}},
	"raddle.groups[].ends":    {{alone, 0, sayCounted}, {reckon.Times, 0, sayTimes}, {reckon.Times, 1, sayEachHas}},
	"sections.whole":          {{reckon.Over, 0, "width of the ends that stand"}},
	"sections.groups[]":       {{alone, 0, sayCounted}, {reckon.Times, 0, "times it comes"}, {reckon.Times, 1, "in one run"}},
	"sections.groups[].ends":  {{alone, 0, sayCounted}, {reckon.Times, 0, sayTimes}, {reckon.Times, 1, sayEachHas}},
	"beam.grows":              {{reckon.Times, 0, "a circle’s girth over its radius"}},
	"packages[].runs[].wound": {{reckon.Times, 0, "sections it is in"}},
	"packages[].runs[].count": {{alone, 0, "counted over one section"}},
}

// slotWords are the plain numbers that every formula says alike: the length that a
// length lost is given for.
func slotWords(says string, at slot) string {
	if at.kind == reckon.Length && at.op == reckon.Over && at.arg == 1 && says != "yarns[].diameters" {
		return "the length it is given for"
	}
	return ""
}

// plainMarks says the marks of a tape that no other figure gives.
var plainMarks = map[string]string{
	"start": "where the tape begins",
	"end":   "the whole weave on the loom",
}

// plainWords says a plain number; nothing where it is the formula's own.
func plainWords(n reckon.Node, at slot) string {
	says := n.Says()
	switch text, ok := plainMarks[n.About.Mark]; {
	case ok && says == "pieces[].marks[]" && at.op == alone:
		return text
	case says == "repeats.exact" && at.kind == reckon.Length:
		return map[reckon.Op]string{reckon.Minus: "width of the ends outside the repeat", reckon.Over: "width of one repeat"}[at.op]
	case says == "dents.cloth" || says == "dents.odd":
		return dentWords(at)
	case says == "yarns[].picks" && at.kind == reckon.Number:
		return sayLayers
	}
	for _, p := range plainTable[says] {
		if p.op == at.op && (p.arg == at.arg || p.arg == anyArg && at.arg > 0) {
			return p.words
		}
	}
	return slotWords(says, at)
}

// dentWords says the plain numbers of the count of dents: their ends stand in
// orders, and the last ends fill the rest.
func dentWords(at slot) string {
	switch {
	case at.op == reckon.Minus && at.arg == 0:
		return "ends sleyed alike"
	case at.op == reckon.Over && at.arg == 1, at.op == reckon.Times && at.kind == reckon.Ends:
		return sayInOrder
	case at.op == reckon.Times && at.kind == reckon.Dents:
		return sayDents
	case at.op == reckon.Plus:
		return "dents of the last ends"
	}
	return ""
}
