package present

import (
	"sley/internal/engine/loomside"
	"sley/internal/engine/tieup"
)

// stepWords are the steps of dressing: what each is called, what is done, what it counts,
// and what an item of its parts is.
type stepWords struct{ name, lead, unit, item string }

var stepNames = map[string]stepWords{
	loomside.Winding:    {"Wind the warp", "Bout by bout, with the cross at every pass. Count in the cross, not on the pegs.", "ends wound", "ends"},
	loomside.Sections:   {"Wind the sections", "Section by section onto the beam, each through the tension box with its cross kept.", "sections", "ends"},
	loomside.Spreading:  {"Spread in the raddle", "From the cross, in order. Floating selvedges are not in it.", "spaces", "ends in the space"},
	loomside.Beaming:    {"Beam", "Under even tension, with packing between the layers.", "things done", ""},
	loomside.Threading:  {"Thread", "Group by group, each checked before the next.", "ends threaded", "shaft"},
	loomside.Sleying:    {"Sley", "Dent by dent in the order’s rhythm.", "dents", "ends in the dent"},
	loomside.Knotting:   {"Tie the new ends to the old", "One to one, in the order of the cross.", "ends tied", ""},
	loomside.TyingFront: {"Tie on", "Small bundles, from the middle to the edges, until all feel alike.", "things done", ""},
	loomside.TyingUp:    {"Tie up", "Treadle by treadle.", "treadles", ""},
	loomside.FirstInch:  {"First inch", "Open each lift and read it across all ends, before tying tight.", "things read", ""},
}

// stepCare are cautions of a step.
var stepCare = map[string]string{
	loomside.Beaming:    "A warp under tension stores hundreds of newtons, and ratchets pinch: hands, hair and sleeves away from pawl and ratchet. Your workshop’s rules come first.",
	loomside.Sections:   "A warp under tension stores hundreds of newtons, and ratchets pinch: hands, hair and sleeves away from pawl and ratchet. Your workshop’s rules come first.",
	loomside.TyingFront: "The warp is under tension now: let it off by the brake, never by a knocked-out pawl.",
	loomside.Threading:  "Stand up and look far every half hour: long threading strains eyes and back.",
}

// thingWords are the things to do: in a word or two, to be read from afar; in a sentence;
// and what to see to.
var thingWords = map[string][3]string{
	"rod-in":        {"Rod in", "Put the rod through the loops at the end of the warp", "every loop on it, none twisted"},
	"lease-in":      {"Sticks in", "Lease sticks into the cross, and tie them together", "the cross stands on both sides before its ties are cut"},
	"raddle-shut":   {"Raddle shut", "Put its cap on, or a cord round every few pegs", "no space skipped, none filled twice"},
	"chokes-off":    {"Chokes off", "Undo the choke ties as they come to the raddle", "not before"},
	"tie-behind":    {"Tie behind", "Tie the ends to the back rod in small bundles", "threaded and sleyed, none left behind"},
	"pull-through":  {"Draw through", "Draw the knots through heddles and reed, a hand’s width at a time", "each knot seen through"},
	"lease-out":     {"Sticks back", "Move the lease sticks back as the warp winds on, or take them out", "keep them until the front is tied"},
	"ratchet":       {"Look first", "Look at pawl, ratchet and brake", "they hold before anybody pulls"},
	"wind-on":       {"Wind on", "Under even tension; stop each turn and tug", "no loose ends, none over the edge of the packing"},
	"pack":          {"Pack", "Lay packing between the layers, wider than the warp", "for the first two turns, then at each turn or as your yarn needs"},
	"stop-short":    {"Stop", "When the ends hang a hand’s width before the reed", "or before the heddles, where they are still to be threaded"},
	"tie-bundles":   {"Bundles", "Tie bundles of about an inch to the front rod, the middle ones first", "half a knot, so that it can be drawn tight"},
	"tie-even":      {"Even out", "Feel across with the flat of the hand, then finish each knot", "no bundle softer than its neighbours"},
	"tie-floats":    {"Floats", "Hang the floating selvedges with a weight of their own", "in the reed, in no heddle"},
	"one-repeat":    {"One repeat", "Weave one whole repeat of the treadling and look at it on both faces, the back with a mirror", "each treadle does what the draft says, every row"},
	"dents-even":    {"Dents", "Look along the reed: a gap is a dent left empty, crowding a dent that has too many", "from edge to edge"},
	"ends-crossed":  {"Crossed", "Open each shed and look through it: an end that catches is crossed behind the reed", "sheds are clear from edge to edge"},
	"tie-tight":     {"Tie tight", "Mend what was found, then even the tension once more and tie tight", "nothing is left to mend"},
	"spread-header": {"Spread", "Weave a few picks of thick waste to close the gaps of the knots", "beat after three picks, not after each"},
}

// opensWords say why a shed opens badly.
var opensWords = map[tieup.Opening]string{
	tieup.Unevenly: "as many shafts are not up as down", tieup.Hanging: "shafts hang, tied neither way",
	tieup.Locked: "shafts are drawn both ways and do not move", tieup.NoneUp: "no shaft is up", tieup.AllUp: "every shaft is up",
}

// partWords are the parts of a piece that is woven.
var partWords = map[string]string{
	loomside.PartTurnIn: "turned in", loomside.PartHem: "hem", loomside.PartBorder: "border", loomside.PartBody: "body",
}

// beginsAt are the sides a step begins at; dressWays the ways of dressing.
var (
	beginsAt  = map[loomside.Side]string{loomside.Left: "from the left", loomside.Right: "from the right", loomside.Centre: "from the centre"}
	dressWays = map[loomside.Way]string{
		loomside.BackToFront: "back to front: wind, raddle, beam, thread, sley, tie on",
		loomside.FrontToBack: "front to back: wind, sley, thread, tie on behind, beam",
		loomside.TyingOn:     "tying the new warp to the old one",
	}
)

// changeRemedies are what can still be changed.
var changeRemedies = map[string]string{
	loomside.Fewer:       "Weave only {pieces} more whole",
	loomside.ShorterLast: "weave the one that does not fit only to {is} on the tape",
	loomside.ShorterEach: "weave each of the {pieces} still to go {is} shorter on the tape",
	loomside.Looser:      "beat looser, at {is}",
	loomside.MoreYarn:    "get {is} more of {yarn}",
}

// The words of parts, checks and notes at the loom.
const (
	readTight     = "with the warp under tension"
	readSlack     = "with the warp slackened"
	millTurns     = "On the mill: {turns} whole turns, and {past} more"
	beamTurns     = "The beam takes {turns} turns, growing as it fills"
	packagesHold  = "Package {packages} of {yarn}: {is} on each"
	heddlesOf     = "Shaft {shaft}: {n} heddles"
	heddlesSpare  = "; {has} on it, {spare} to spare"
	heddlesShort  = "; {has} on it, put {spare} more on before you begin"
	shaftTied     = "Shaft {shaft}:"
	raisedBy      = " raised by {treadles}"
	loweredBy     = " lowered by {treadles}"
	boutTitle     = "Bout {n} of {of}: {ends} ends in {passes} passes"
	boutChange    = "After {n} passes change to {yarn}, at {peg}"
	atStartPeg    = "the peg where the warp starts"
	atFarPeg      = "the far peg"
	boutTies      = "Counting ties: {n}, one after every {tie} ends; then a choke tie below the cross"
	boutChoke     = "Choke ties below the cross and every yard or so; tie the cross on both sides"
	boutEach      = "Wind {each} together, a finger between them"
	boutOdd       = "The last pass takes {odd} alone"
	boutTie       = "counting tie"
	boutChangeNow = "change to {yarn} at {peg}"
	yarnAfter     = "{yarn}: {is} left after it"
	yarnShort     = "{yarn}: {is} short after it"
	sectionTitle  = "Section {n} of {of}: {ends} ends"
	sectionPartly = "Section {n} of {of}, a part: {ends} ends"
	sectionLong   = "Wind {is}, the same turns for every section"
	endsTitle     = "Ends {from} to {to}"
	endsTitleBack = "Ends {from} to {to}, counted from the right"
	heddlesHere   = "This group takes {heddles}"
	heddlesTaken  = "So far {heddles}"
	onShaftN      = "{n} on shaft {shaft}"
	sumOfEnds     = "{n} of {of} ends"
	dentsTitle    = "Dents {from} to {to}"
	dentsReed     = ", numbers {from} to {to} in your reed"
	dentsSum      = "{n} of {of} dents, {ends} ends so far"
	spacesTitle   = "Spaces {from} to {to}"
	floatWord     = "float"
	treadleTitle  = "Treadle {n}"
	raisesWords   = "raises {shafts}"
	lowersWords   = "lowers {shafts}"
	putsOnTop     = "On top when it is pressed: {shafts}"
	opensBadly    = "It opens badly on this loom: {why}"
	readTitle     = "Open {shafts}{by} and read across all ends, from the left"
	readByTreadle = " with treadle {treadles}"
	readByHand    = " by hand"
	readUp        = "{n} up"
	readDown      = "{n} down"
	readTimes     = "{runs}, {times} times"
	readMany      = "No short pattern: read it by the threading, shafts {shafts} up"
	readWrong     = "An end that does not fit is on a wrong shaft; mend it now"
	feetTurns     = "The feet can take turns: left {left}, right {right}"
	feetNot       = "The feet cannot take turns all through this treadling"
	pieceOf       = "{piece} {n} of {of}"
	upAloud       = "{shafts} up"
	leaveFringe   = "Leave {is} of warp for the fringe"
	hemstitchNow  = "Hemstitch this end on the loom"
	leaveGap      = "Leave a gap of {is}, or a spacer"
	weaveHeader   = "Weave a header of waste weft over {is} of warp"
	weaveSample   = "Sample over {is} of warp, and look at it on both faces"
	cutOffNow     = "Cut the cloth off and tie on again"
	measureNow    = "Read the tape, and pin it on anew for the next piece"
)

// The words of the forecast.
const (
	sayPicksLeft  = "picks to go"
	sayExpects    = "the tape should read"
	sayReads      = "the tape read last"
	sayReadAt     = "after {n} picks of the piece"
	sayBeat       = "your beat"
	sayBeatWanted = "planned {is}"
	sayOnLoom     = "this piece will read"
	sayPlannedAt  = "planned {is}"
	saySoMany     = "{n} picks make the planned length at your beat"
	sayFinished   = "finished it will be"
	sayWarpLeft   = "warp that can still be woven"
	sayWarpSpare  = "to spare when all is woven"
	sayWarpShort  = "warp short"
	sayAllFits    = "all that is to be woven fits"
	saySomeFit    = "{n} of the {of} to go fit"
	sayWeft       = "{yarn}, needed"
	sayWeftLeft   = "{yarn}, left"
	sayByScale    = "by the scale"
	sayByStock    = "by the shelf"
	sayLasts      = "lasts {n} picks, {of} to go"
	sayLong       = "about {is} of cloth"
	sayBobbins    = "{yarn}, bobbins to wind"
)
