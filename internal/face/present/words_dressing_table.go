package present

// dressingWords says the nodes of winding, raddle and sectional beam, as
// nodeWords does those of the rest.
var dressingWords = map[string]string{
	"winding.ends":        "ends to wind in bouts",
	"winding.apart":       "floating selvedges, wound by themselves",
	"winding.together":    "ends wound at once",
	"winding.passes":      "passes from peg to peg",
	"winding.path-length": "path on the board",
	"winding.pegs[]":      "from the start to {mark}",
	"winding.over":        "longer than needed",
	"winding.mill":        "girth of the mill",
	"winding.turns":       "whole turns of the mill",
	"winding.past":        "past the last whole turn",
	"winding.bout":        "most ends in a bout",
	"winding.bouts":       "bouts",
	"winding.tie":         "counting tie after each",
	"winding.ties":        "counting ties",
	"bouts[].ends":        "bout {n}, ends, beginning with {yarn}",
	"bouts[].changes[]":   "bout {n}, to {yarn} {mark}, after passes",

	"raddle":                  "spaces of the raddle",
	"raddle.per-space":        "ends in a space at the main sett",
	"raddle.groups[]":         "spaces that take {mark}",
	"raddle.groups[].ends":    "ends in the spaces that take {mark}",
	"raddle.count":            "spaces used",
	"raddle.ends":             "ends in the raddle",
	"sections.width":          "width of a section",
	"sections.each":           "ends in a section at the main sett",
	"sections.whole":          "whole sections",
	"sections.groups[]":       "sections that take {mark}",
	"sections.groups[].ends":  "ends in the sections that take {mark}",
	"sections.count":          "sections used",
	"sections.ends":           "ends on the sections",
	"packages[].count":        "{yarn}, packages to wind from",
	"packages[].runs[].count": "{yarn}, how many are package {mark}",
	"packages[].runs[].wound": "{yarn}, on package {mark}",
	"packages[].wound":        "{yarn}, on all packages",
	"packages.wound":          "on the packages of all yarns",
}

// nodeText gives the words of a node by its path without indices.
func nodeText(says string) (string, bool) {
	if text, ok := nodeWords[says]; ok {
		return text, true
	}
	text, ok := dressingWords[says]
	return text, ok
}

// windingWords are for what is wrong in the table [winding].
var windingWords = map[string]words{
	"bout.small":     {"a bout of {read} ends is less than two passes of {together} ends wound at once", "a bout goes to the far peg and comes back, else its cross is not whole", "write at least {least}, or wind fewer ends at once"},
	"section.narrow": {"\"{read}\" is narrower than {least}, the least for a section", "", "look at the number and its unit"},
	"pegs.count":     {"the board has {found} pegs, and there must be from {least} to {most}", "the first is the start and the next two hold the cross", "write every peg the warp may go to, each as \"left-2 0 cm, 25 cm\""},
	"peg.form":       {"\"{read}\" does not say a peg", "", "write its name as one word, how far it stands to the right and, after a comma, how far down, as \"left-2 0 cm, 25 cm\""},
	"peg.twice":      {"\"{read}\" has the name or the place of the peg {other}", "", "give each peg a name and a place of its own"},
}

// dressingCheckWords say what the reckoning finds about winding and beaming.
var dressingCheckWords = map[string]words{
	"winding.board-short": {
		"the longest path over the board is {longest} and the warp is wound {wound} long",
		"the last pegs are reached before the warp is long enough",
		"wind it on a mill, write mill = with its girth; or weave less, and wind two shorter warps",
	},
	"winding.not-found": {
		"no path of {wound} was found over the board; the longest that was found is {longest}",
		"there are more paths than were looked at",
		"wind it on a mill, write mill = with its girth; or leave out the pegs that you do not use",
	},
	"winding.not-best": {
		"the path over the board is long enough, but there may be one with less left over",
		"there are more paths than were looked at",
		"take it as it is, or leave out the pegs that you do not use",
	},
	"winding.one-beam": {
		"the ends on beam 2 are left out of the winding, the raddle and the sections",
		"",
		"wind and spread them as a warp of their own",
	},
	"winding.many": {
		"{lines} lines are more than the {most} that are listed, so none is",
		"",
		"make the bouts larger, wind as many ends at once as the colours repeat, or choose wider spaces or sections",
	},
}
