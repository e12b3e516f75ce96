package planfile

import "sley/internal/trade/warp"

// The tables of a plan file by the name their keys are kept under. Tables of
// the weaver's own names have an asterisk for the name.
const (
	topTable      = ""
	unitsTable    = "units"
	piecesTable   = "pieces"
	hemTable      = "pieces.hem"
	fringeTable   = "pieces.fringe"
	yarnsTable    = "yarns"
	yarnTable     = "yarns.*"
	skeinTable    = "yarns.*.skein"
	samplesTable  = "yarns.*.samples"
	sampleTable   = "yarns.*.samples.*"
	warpTable     = "warp"
	floatsTable   = "warp.floating-selvedges"
	doubledTable  = "warp.doubled-edges"
	secondTable   = "warp.second-beam"
	draftTable    = "draft"
	weftTable     = "weft"
	samplingTable = "sampling"
	windingTable  = "winding"
	loomTable     = "loom"
	wasteTable    = "loom.waste"
	roundingTable = "rounding"
	workTable     = "work"
	classTable    = "class"
	builtTable    = "built"
	wovenTable    = "built.woven"
	findTable     = "find"
	linksTable    = "allowances"
	pieceLinks    = "pieces.allowances"
)

// endKeys are the keys of a piece whose tables are hems or fringes.
var endKeys = []string{"both", "first", "last"}

// ownNames are the paths of the tables whose keys are names of the weaver's own,
// in an order that she chose.
var ownNames = []string{"extras", yarnsTable, "groups", "weft.shares", "draft.colours"}

// keys lists the keys each table of a plan file may have, in the order they
// are shown. Tables whose keys are names of the weaver's own (extras, groups,
// yarns, their samples, weft.shares) are not among them.
var keys = map[string][]string{
	topTable: {
		"sley", "name", "note", "date", "weave", "wash", "tape", "gap", "header", "units",
		"pieces", "allowances", "extras", "yarns", "groups", "warp", "draft", "weft", "sampling",
		"winding", "loom", "rounding", "work", "class", "built", "find",
	},
	unitsTable: {"length", "yarn", "weight", "density", "count"},
	piecesTable: {
		"name", "count", "length", "width", "both", "first", "last", "motif", "border",
		"far-border", "order", "trim", "cut-off", "panels", "seam", "allowances",
	},
	hemTable:    {"hem", "turn-in", "turned", "outside"},
	fringeTable: {"fringe", "twist", "yarn-shrinkage", "knot", "inside"},
	yarnTable: {
		"count", "fibre", "skein", "wraps", "diameter-constant", "put-up", "price",
		"colour", "stock", "handspun", "samples",
	},
	skeinTable: {"length", "weight", "skeins", "relaxed", "scoured"},
	sampleTable: {
		"weave", "wash", "sett", "picks", "warp", "on-loom", "relaxed", "washed",
		"reed", "fell", "width-relaxed", "width-washed",
	},
	warpTable: {
		"yarn", "sett", "stripes", "threading", "ends", "choose", "wound",
		"floating-selvedges", "doubled-edges", "layers", "unit", "bundle", "reed",
		"sleying", "second-beam",
	},
	floatsTable:  {"ends", "yarn"},
	doubledTable: {"ends", "heddle"},
	secondTable:  {"take-up", "extra"},
	draftTable:   {"wif", "colours", "tie-up", "treadling", "lift-plan"},
	weftTable: {
		"picks", "yarn", "order", "shares", "of-warp", "per-piece", "slack", "crimp", "turn",
		"reserve", "tail", "hemstitch", "repairs", "bobbin", "bobbin-end",
	},
	samplingTable: {"length", "cut-off", "weft"},
	windingTable:  {"board", "pegs", "mill", "together", "bout", "peg", "tie", "raddle", "section", "beam-girth"},
	loomTable: {
		"name", "shafts", "treadles", "shed", "width", "reeds", "heddles", "waste",
		"beam-holds", "beams",
	},
	wasteTable:    {"tie-on", "unreachable", "back", "gives-fringe"},
	roundingTable: {"off", "step", "warp", "picks", "bench"},
	workTable:     {"winding", "threading", "sleying", "weaving", "wage"},
	classTable:    {"looms", "in-turn"},
	builtTable:    {"ends", "wound", "sett", "picks", "note", "waste", "sampling", "woven"},
	wovenTable:    {"piece", "on-loom"},
	findTable:     {"what", "within"},
	linksTable:    linkKeys(true),
	pieceLinks:    linkKeys(false),
}

// linkKeys lists the keys of the allowances, those of widths when asked.
func linkKeys(widths bool) []string {
	var keys []string
	for _, link := range warp.LinkNames() {
		if widths || !link.Width {
			keys = append(keys, link.Key)
		}
	}
	return keys
}

// called are the tables that their bracketed name does not say.
var called = map[string]string{
	topTable:    "the top of the file",
	piecesTable: "[[pieces]]",
	hemTable:    "the table of a hem",
	fringeTable: "the table of a fringe",
	yarnTable:   "[yarns.NAME]",
	skeinTable:  "the skein of a yarn",
	sampleTable: "a sample of a yarn",
	wovenTable:  "the pieces of built.woven",
	pieceLinks:  "the allowances of a piece",
}

// shownBy are the tables that an example says better.
var shownBy = map[string]string{
	hemTable:    "both, first and last, as both = { hem = \"1 in\" }",
	fringeTable: "both, first and last, as both = { fringe = \"5 in\" }",
}

// tableName gives what people call a table.
func tableName(name string) string {
	if words, ok := called[name]; ok {
		return words
	}
	return "[" + name + "]"
}
