package present

import (
	"cmp"
	"slices"
	"strings"

	"sley/internal/app"
	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/engine/tieup"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// bout words a bout: its yarns, its changes and ties, and what is left of each yarn.
func (l looming) bout(out *LoomPartJSON, s app.LoomsideStep, n int) {
	p := s.Parts[n]
	out.Title = fillIn(boutTitle, "{n}", number(p.Number), "{of}", number(len(s.Parts)), "{ends}", number(p.Ends), "{passes}", number(p.Passes))
	out.Items = yarnItems(p.Yarns)
	for _, c := range p.Changes {
		out.Check = append(out.Check, fillIn(boutChange, "{n}", number(c.After), "{yarn}", strings.Join(c.Yarns, " and "), "{peg}", pegWords(c.Far)))
	}
	w := l.Result.Plan.Winding
	if each := w.Together.Is; each > 1 {
		out.Check = append(out.Check, fillIn(boutEach, "{each}", number(each)))
		if odd := p.Ends % each; odd > 0 {
			out.Check = append(out.Check, fillIn(boutOdd, "{odd}", number(odd)))
		}
	}
	if p.Ties > 0 {
		out.Check = append(out.Check, fillIn(boutTies, "{n}", number(p.Ties), "{tie}", number(w.Tie.Is)))
	} else {
		out.Check = append(out.Check, boutChoke)
	}
	out.Check = append(out.Check, l.sumOf(p, s.Total))
	out.Check = append(out.Check, l.leaves(n)...)
	out.Stops = stopsOf(p, max(w.Together.Is, 1), w.Tie.Is)
}

// stopsOf are the places in a bout at which a yarn changes, or a counting tie is made.
func stopsOf(p loomside.Part, each, tie int) []StopJSON {
	var out []StopJSON
	for _, c := range p.Changes {
		says := fillIn(boutChangeNow, "{yarn}", strings.Join(c.Yarns, " and "), "{peg}", pegWords(c.Far))
		out = append(out, StopJSON{p.From + min(c.After*each, p.Ends), says})
	}
	for n := 1; n <= p.Ties; n++ {
		out = append(out, StopJSON{p.From + n*tie, boutTie})
	}
	slices.SortStableFunc(out, func(a, b StopJSON) int { return cmp.Compare(a.At, b.At) })
	return out
}

func pegWords(far bool) string {
	if far {
		return atFarPeg
	}
	return atStartPeg
}

// leaves words what is left of the yarns after a bout.
func (l looming) leaves(n int) []string {
	var out []string
	if n >= len(l.Leaves) {
		return nil
	}
	for _, y := range l.Result.Plan.Yarns {
		is, known := l.Leaves[n][y.Name]
		if !known {
			continue
		}
		words := yarnAfter
		if is.Sign() < 0 {
			words, is = yarnShort, is.Neg()
		}
		out = append(out, fillIn(words, "{yarn}", y.Name, "{is}", l.u.yarnLong(is)))
	}
	return out
}

// yarnLong shows a length of yarn.
func (u Units) yarnLong(nm qty.Rat) string {
	return u.Bench(reckon.Node{ID: "yarn.left", Figure: reckon.Figure{Is: nm, Kind: reckon.YarnLength}})
}

// onTape shows a length that the tape reads, or of cloth or warp.
func (u Units) onTape(nm qty.Rat) string {
	return u.Bench(reckon.Node{ID: "loomside.reads", Figure: reckon.Figure{Is: nm, Kind: reckon.Length}})
}

func yarnItems(yarns []loomside.OfYarn) []LoomItemJSON {
	var out []LoomItemJSON
	for _, y := range yarns {
		text := number(y.Count) + " " + y.Yarn
		out = append(out, LoomItemJSON{Text: text, Aloud: text})
	}
	return out
}

func (l looming) sumOf(p loomside.Part, of int) string {
	return fillIn(sumOfEnds, "{n}", number(p.Sum), "{of}", number(of))
}

func (l looming) section(out *LoomPartJSON, s app.LoomsideStep, p loomside.Part) {
	words := sectionTitle
	if !p.Whole {
		words = sectionPartly
	}
	out.Title = fillIn(words, "{n}", number(p.Number), "{of}", number(len(s.Parts)), "{ends}", number(p.Ends))
	out.Items, out.Big = yarnItems(p.Yarns), number(p.Ends)
	out.Check = []string{fillIn(sectionLong, "{is}", l.u.onTape(p.Distance.Rat()))}
}

// ends words a group of a threading, or of ends that are tied to the old ones.
func (l looming) ends(out *LoomPartJSON, s app.LoomsideStep, p loomside.Part) {
	words := endsTitle
	if s.Side == loomside.Right {
		words = endsTitleBack
	}
	out.Title = fillIn(words, "{from}", number(p.From+1), "{to}", number(p.To))
	for _, shaft := range p.Shafts {
		out.Items = append(out.Items, LoomItemJSON{Text: number(shaft), Aloud: number(shaft)})
	}
	if s.ID == loomside.Knotting {
		out.Items = yarnItems(p.Yarns)
	} else {
		out.Check = append(out.Check, fillIn(heddlesHere, "{heddles}", onShafts(p.Heddles)), fillIn(heddlesTaken, "{heddles}", onShafts(p.Taken)))
	}
	out.Check = append(out.Check, l.sumOf(p, s.Total))
}

// onShafts says how many are on each shaft.
func onShafts(list []int) string {
	var parts []string
	for i, n := range list {
		if n > 0 {
			parts = append(parts, fillIn(onShaftN, "{n}", number(n), "{shaft}", number(i+1)))
		}
	}
	return strings.Join(parts, ", ")
}

func (l looming) dents(out *LoomPartJSON, s app.LoomsideStep, p loomside.Part) {
	first, last := p.Dents[0], p.Dents[len(p.Dents)-1]
	out.Title = fillIn(dentsTitle, "{from}", number(first.At), "{to}", number(last.At))
	if first.Reed > 0 {
		out.Title += fillIn(dentsReed, "{from}", number(first.Reed), "{to}", number(last.Reed))
	}
	for _, d := range p.Dents {
		item := LoomItemJSON{Text: number(d.Ends), Aloud: number(d.Ends)}
		if d.Float {
			item = LoomItemJSON{Text: floatWord, Aloud: floatWord, Kind: "float"}
		}
		out.Items = append(out.Items, item)
	}
	out.Check = []string{fillIn(dentsSum, "{n}", number(p.To), "{of}", number(s.Total), "{ends}", number(p.Sum))}
}

func (l looming) spaces(out *LoomPartJSON, s app.LoomsideStep, p loomside.Part) {
	out.Title = fillIn(spacesTitle, "{from}", number(p.From+1), "{to}", number(p.To))
	for _, n := range p.Spaces {
		out.Items = append(out.Items, LoomItemJSON{Text: number(n), Aloud: number(n)})
	}
	total := s.Parts[len(s.Parts)-1].Sum
	out.Check = []string{l.sumOf(p, total)}
}

// treadle words the cords of a treadle by what they do on this loom.
func (l looming) treadle(out *LoomPartJSON, p loomside.Part) {
	out.Title = fillIn(treadleTitle, "{n}", number(p.Number))
	raise, lower := tieup.Kinds(l.Result.Plan.Loom.Shed)
	if raise {
		out.Items = append(out.Items, cordItem(raisesWords, p.Cords.Raises))
	}
	if lower && (!raise || p.Cords.Lowers != 0) {
		out.Items = append(out.Items, cordItem(lowersWords, p.Cords.Lowers))
	}
	out.Check = []string{fillIn(putsOnTop, "{shafts}", SetText(p.Up))}
	if why := opensWords[p.Opens.Opens]; why != "" {
		out.Check = append(out.Check, fillIn(opensBadly, "{why}", why))
	}
}

func cordItem(words string, shafts draft.Set) LoomItemJSON {
	text := fillIn(words, "{shafts}", SetText(shafts))
	return LoomItemJSON{Text: text, Aloud: text}
}

// feetWords say whether the feet can take turns.
func feetWords(f *tieup.Feet) string {
	switch {
	case f == nil:
		return ""
	case f.Why == tieup.Alternate:
		return fillIn(feetTurns, "{left}", SetText(f.Left), "{right}", SetText(f.Right))
	}
	return feetNot
}

// inch words a lift to read across, or a thing to look at.
func (l looming) inch(out *LoomPartJSON, p loomside.Part) {
	if p.Reads == nil {
		said := thingWords[p.Thing]
		out.Big, out.Title, out.Check = said[0], said[1], []string{said[2]}
		return
	}
	by := readByHand
	if p.Pressed != 0 {
		by = fillIn(readByTreadle, "{treadles}", SetText(p.Pressed))
	}
	out.Big = SetText(p.Up)
	out.Title = fillIn(readTitle, "{shafts}", SetText(p.Up), "{by}", by)
	out.Check = append(readRuns(p), readWrong)
}

// mostReads is how many stretches of a reading are written; more are read by the threading.
const mostReads = 24

func readRuns(p loomside.Part) []string {
	if len(p.Reads) > mostReads {
		return []string{fillIn(readMany, "{shafts}", SetText(p.Up))}
	}
	var out []string
	for _, run := range p.Reads {
		var parts []string
		for _, n := range run.Cycle {
			if n > 0 {
				parts = append(parts, fillIn(readUp, "{n}", number(n)))
			} else {
				parts = append(parts, fillIn(readDown, "{n}", number(-n)))
			}
		}
		text := strings.Join(parts, ", ")
		if run.Times > 1 {
			text = fillIn(readTimes, "{runs}", text, "{times}", number(run.Times))
		}
		out = append(out, text)
	}
	return out
}
