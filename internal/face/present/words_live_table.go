package present

// soughtWords say what can be found backwards, and what limits it, by its path.
var soughtWords = map[string]string{
	"warp.sett":       "sett",
	"warp.wound":      "the length wound",
	"loom.beam-holds": "what the beam holds",
	"loom.width":      "the width of the loom",
}

// soughtYarn says a yarn that is found, or limits; soughtPiece what of a piece is found.
const soughtYarn = "{yarn} yarn"

var soughtPiece = map[string]string{
	"length": "length of each {piece}",
	"width":  "width of each {piece}",
	"count":  "how many of {piece}",
}

// originNone is where an allowance comes from that nothing says.
const originNone = "none"

// The words of allowances and setts.
const (
	gainWords  = "gains {share}"
	addedWords = "read as a share added: wind {wound}"
	spanWords  = "{low} to {high}"
)

// The words of where a warp stands.
const (
	kindsOfPieces  = "{kinds} kinds, {pieces} pieces"
	allFits        = "all fits"
	careOne        = "1 thing needs care"
	careSeveral    = "{n} things need care"
	mendOne        = "1 thing to mend"
	mendSeveral    = "{n} things to mend"
	notBegun       = "not begun"
	begun          = "begun"
	warpWound      = "warp wound"
	dressed        = "dressed"
	wovenPicks     = "{woven} picks"
	wovenOfPicks   = "{woven} of {of} picks"
	measuredOnly   = "measured"
	washedMeasured = "washed and measured"
)

// oddPlurals are the ends of names of woven things whose plural is odd.
var oddPlurals = map[string]string{"scarf": "scarves", "cloth": "cloths", "half": "halves"}

// defaultPaths are where in a plan the usual values are said otherwise, by the id of
// their node.
var defaultPaths = map[string]string{
	"weft.slack":   "weft.slack",
	"weft.reserve": "weft.reserve",
	"warp.waste":   "loom.waste",
	"step":         "rounding.step",
	"sett.working": "warp.sett",
	"tie-on":       "loom.waste.tie-on",
}

// unitsAsTyped is what figures are shown in where the book says nothing.
const unitsAsTyped = "as each plan was typed"

// The words of what there is to do next, and of a cloth in a list.
const (
	nextDress   = "print the sheets, then wind the warp"
	nextBegin   = "dress the loom and begin to weave"
	nextPick    = "weave on from pick {pick}"
	nextFinish  = "cut it off, wash it and measure it"
	shaftsWords = "{n} shafts"
)
