package present

import (
	"fmt"
	"slices"
	"strings"

	"sley/internal/engine/structure"
)

// Told is a finding of a weave in words: a title, the figures, and what they mean to
// someone who learns.
type Told struct{ Title, Figures, Explanation string }

// Structure says what an analysis found.
func Structure(a *structure.Analysis) []Told { return tellAll(a.Findings()) }

// Edges says how the edges of a cloth are caught.
func Edges(e *structure.Edges) []Told { return tellAll(e.Findings()) }

func tellAll(findings []structure.Finding) []Told {
	var out []Told
	for _, f := range findings {
		out = append(out, Tell(f))
	}
	return out
}

// Tell says one finding.
func Tell(f structure.Finding) Told {
	w := structureWords[f.Topic]
	fill := strings.NewReplacer(pairsOf(f)...)
	return Told{fill.Replace(w.title), fill.Replace(w.figures), fill.Replace(w.explanation)}
}

// WeaveName says what handbooks call a weave.
func WeaveName(n structure.Name) string {
	return fillIn(kindWords[n.Kind][0], namePairs(n)...)
}

// pairsOf gives what stands for each name in braces.
func pairsOf(f structure.Finding) []string {
	across := threadWords[f.Way.Across()]
	return []string{
		"{name}", WeaveName(f.Name), "{name-means}", kindWords[f.Name.Kind][1],
		"{way}", wayWords[f.Way], "{threads}", threadWords[f.Way],
		"{across}", across, "{across-of}", several(f.Of, across),
		"{face}", faceWords[f.Face], "{side}", sideWords[f.Side],
		"{balance}", balanceWords[f.Balance][0], "{balance-means}", balanceWords[f.Balance][1],
		"{ends}", several(f.Ends, "ends"), "{picks}", several(f.Picks, "picks"),
		"{shafts}", several(f.Ends, "shafts"), "{lifts}", several(f.Picks, "lifts"),
		"{count}", number(f.Count), "{of}", number(f.Of), "{run}", number(f.Most),
		"{evenly-means}", evenlyWords[f.Way], "{unevenly-means}", unevenlyWords[f.Way],
		"{least}", howOften(f.Least), "{most}", howOften(f.Most),
		"{front}", floatLong(f.Front), "{back}", floatLong(f.Back),
		"{front-at}", placeOf(f, structure.Front), "{back-at}", placeOf(f, structure.Back),
		"{which}", plural(len(f.Threads), oneOf(f.Way)) + " " + ranges(f.Threads),
		"{swap}", swapOf(f.Fix), "{change}", changeOf(f.Fix), "{hung}", hungOf(f.Fix), "{caught-then}", caughtThen(f.Fix),
	}
}

// several says a number of things, whose name is given for many.
func several(n int, many string) string {
	if n == 1 {
		return "1 " + strings.TrimSuffix(many, "s")
	}
	return number(n) + " " + many
}

func howOften(n int) string {
	switch n {
	case 0:
		return "never"
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return several(n, "times")
}

func floatLong(n int) string {
	if n == 0 {
		return "none"
	}
	return number(n)
}

// placeOf says where the first of the longest floats lies, counted from 1 as they
// are at the loom.
func placeOf(f structure.Finding, face structure.Face) string {
	if int(face) >= len(f.Places) || f.Places[face].Long == 0 {
		return ""
	}
	p := f.Places[face]
	return fmt.Sprintf(" (%s %d from %s %d)", oneOf(f.Way), p.Thread+1, oneOf(f.Way.Across()), p.From+1)
}

func oneOf(way structure.Way) string { return strings.TrimSuffix(threadWords[way], "s") }

// mostRanges is how many stretches of threads are listed one by one.
const mostRanges = 8

// ranges lists threads counted from 1, neighbours as a stretch.
func ranges(threads []int) string {
	var parts []string
	for i := 0; i < len(threads); {
		k := i
		for k+1 < len(threads) && threads[k+1] == threads[k]+1 {
			k++
		}
		if len(parts) == mostRanges {
			return strings.Join(parts, ", ") + " and " + number(len(threads)-i) + " more"
		}
		part := number(threads[i] + 1)
		if k > i {
			part += "–" + number(threads[k]+1)
		}
		parts, i = append(parts, part), k+1
	}
	return strings.Join(parts, ", ")
}

// namePairs gives what stands for each name in braces of a weave's name.
func namePairs(n structure.Name) []string {
	faced, satin, broken := "", "satin", "3/1"
	if n.Face != structure.Even {
		faced = ", " + balanceWords[n.Face][0]
	}
	if n.Face == structure.WeftFaced {
		satin, broken = "sateen", "1/3"
	}
	asBroken := ""
	if n.Size == 4 {
		asBroken = ", which is a broken " + broken + " twill"
	}
	return []string{
		"{over}", slashed(n.Over), "{hand}", handWords[n.Hand], "{faced}", faced,
		"{turned}", orderOfWay[n.Turned], "{satin}", satin, "{as-broken}", asBroken,
		"{size}", number(n.Size), "{move}", number(n.Move) + moveTo(n.Hand),
		"{pick-groups}", grouped(n.PickGroups), "{end-groups}", grouped(n.EndGroups), "{basket}", basketName(n),
	}
}

func moveTo(hand structure.Hand) string {
	return map[structure.Hand]string{structure.RightHand: " to the right", structure.LeftHand: " to the left"}[hand]
}

func slashed(list []int) string {
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = number(n)
	}
	return strings.Join(parts, "/")
}

// grouped says the groups of a rib: 2/2 where all are alike.
func grouped(groups []int) string {
	if len(groups) == 1 {
		return slashed([]int{groups[0], groups[0]})
	}
	return slashed(groups)
}

func basketName(n structure.Name) string {
	if n.Regular() {
		return grouped(n.EndGroups) + " basket"
	}
	return "irregular basket, ends " + grouped(n.EndGroups) + " and picks " + grouped(n.PickGroups)
}

// swapOf says which shuttles start from the other side.
func swapOf(f structure.Fix) string {
	if len(f.Swap) == 1 && f.Swap[0] == 0 {
		return "start the shuttle from the other side"
	}
	return "start " + plural(len(f.Swap), "shuttle") + " " + ranges(f.Swap) + " from the other side"
}

func plural(n int, one string) string {
	if n == 1 {
		return one
	}
	return one + "s"
}

// changeOf says which ends are added or left out, and which shuttles start elsewhere.
func changeOf(f structure.Fix) string {
	var parts []string
	for side, n := range f.Ends {
		where := " at the " + sideWords[structure.Side(side)]
		switch {
		case n < 0:
			parts = append(parts, "leave out "+several(-n, "ends")+where)
		case n > 0:
			parts = append(parts, "add "+several(n, "ends")+where+", threaded as the repeat goes on")
		}
	}
	if len(f.Swap) > 0 {
		parts = append(parts, swapOf(f))
	}
	return strings.Join(parts, ", and ")
}

func hungOf(f structure.Fix) string {
	if !slices.Contains(f.Floating[:], false) {
		return "on both sides"
	}
	for side, hung := range f.Floating {
		if hung {
			return "on the " + sideWords[structure.Side(side)]
		}
	}
	return ""
}

func caughtThen(f structure.Fix) string {
	then := "Then every turn is caught."
	if !f.All() {
		then = fmt.Sprintf("Then %d of %d turns are caught on the left and %d of %d on the right.", f.Caught[0], f.Turns[0], f.Caught[1], f.Turns[1])
	}
	return then
}
