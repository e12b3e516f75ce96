package present

// dressingWords says the nodes of winding, raddle and sectional beam, as
// nodeWords does those of the rest.
var dressingWords = map[string]string{
	"winding.ends":        "ends to wind in bouts",
	"winding.apart":       "floating selvedges, wound by themselves",
	"winding.together":    "ends wound at once",
	"winding.passes":      "passes from peg to peg",
	"winding.split":       "passes that carry two yarns, after uneven stripes",
	"winding.path-length": "path on the board",
	"winding.pegs[]":      "from the start to {mark}",
	"winding.over":        "longer than needed",
	"winding.mill":        "girth of the mill",
	"winding.turns":       "whole turns of the mill",
	"winding.past":        "past the last whole turn",
	"winding.bout":        "most ends in a bout that the hand holds",
	"winding.peg":         "usable length of a peg",
	"winding.peg-wraps":   "{yarn}, the thickest, wraps just touching",
	"winding.peg-holds":   "ends side by side on a peg, in one layer",
	"winding.most":        "most ends in a bout by hand and peg",
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
	"raddle.left":             "spaces left of the raddle’s centre",
	"raddle.right":            "spaces right of the raddle’s centre",
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
	"beam.girth":              "girth of the bare beam",
	"beam.layer":              "a layer of the thickest yarn",
	"beam.grows":              "the girth grows at each turn",
	"beam.full":               "girth of the full beam",
	"beam.turns":              "turns of the beam",
}

// nodeNotes are said beside the figure, wherever it stands.
var nodeNotes = map[string]string{
	"winding.peg-holds": "more lie in layers, and the outer threads come out longer",
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
	"beam.small":     {"\"{read}\" is less than {least}, the least for the girth of a beam", "", "write how far it is once around the bare beam; look at the number and its unit"},
	"section.narrow": {"\"{read}\" is narrower than {least}, the least for a section", "", "look at the number and its unit"},
	"peg.short":      {"\"{read}\" is shorter than {least}, the least for a peg", "", "write how much of the peg the warp can lie on; look at the number and its unit"},
	"pegs.count":     {"the board has {found} pegs, and there must be from {least} to {most}", "the first is the start and the next two hold the cross", "write every peg the warp may go to, each as \"left-2 0 cm, 25 cm\""},
	"peg.form":       {"\"{read}\" does not say a peg", "", "write its name as one word, how far it stands to the right and, after a comma, how far down, as \"left-2 0 cm, 25 cm\""},
	"peg.twice":      {"\"{read}\" has the name of another peg", "the path is said by the names of the pegs", "give each peg a name of its own"},
	"peg.negative":   {"\"{read}\" says a length below nothing", "places are measured to the right and down", "measure every peg from the corner at the upper left of the board"},
	"peg.place":      {"\"{read}\" stands where the peg {other} stands", "", "look at both places, or leave one of the two out"},
}

// dressingCheckWords say what the reckoning finds about winding and beaming.
var dressingCheckWords = map[string]words{
	"winding.board-short": {
		"the longest path over the board is {longest} and the warp is wound {wound} long",
		"a path comes to no peg twice, runs over no peg and never crosses itself",
		"wind it on a board with more pegs or farther ones, or on a mill (write mill = with its girth); or weave less, and wind two shorter warps",
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
	"winding.far-over": {
		"the path over the board is {path}, {over} longer than the warp, and no other comes nearer",
		"yarn is reckoned for a warp of {wound}",
		"under [warp], write wound = with the length of the path, so that there is yarn for it; or use pegs that stand closer",
	},
	"winding.uneven": {
		"with {together} ends wound at once, a pass carries two yarns after each stripe that is no multiple of {together}: {stripes}",
		"the threads of such a pass have to be changed one by one",
		"make those counts multiples of {together}, or wind the ends that are over singly",
	},
	"winding.peg-full": {
		"{holds} ends of {yarn} lie side by side on a peg, and a bout of {together} wound at once needs {least}",
		"the threads lie in layers, and the outer ones come out longer",
		"wind fewer ends at once or on longer pegs; else leave peg out, and write bout = with what the hand holds",
	},
	"winding.peg-yarn": {
		"nothing says how thick {yarn} is, so it is left out of what lies side by side on a peg",
		"",
		"give {yarn} a count, a measured skein, or touching wraps as \"28 wpi touching\"",
	},
	"winding.peg-no-yarn": {
		"the plan names no yarn of the warp, so how many ends lie side by side on a peg is not known",
		"",
		"write warp.yarn and a table [yarns.NAME] with its count or its wraps; or leave peg out, and write bout = with what the hand holds",
	},
	"winding.beam-yarn": {
		"nothing says how thick the yarns of the warp are, so the turns of the beam are not reckoned",
		"the girth grows with every layer",
		"give every yarn of the warp a count, a measured skein, or touching wraps as \"28 wpi touching\"",
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
