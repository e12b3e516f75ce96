package present

import "strings"

// formWords say, for any plan, the figures whose words name a reed, an order, a
// shaft or a mark of this one.
var formWords = map[string]string{
	"yarns[].grist":           "{yarn}, grist, from its count",
	"reed":                    "dents of the reed",
	"dents.in-reed":           "dents in the whole reed",
	"sett.stripes[]":          "stripes of another sett, as sleyed",
	"sley.other[].exact":      "sett of another reed and order",
	"sley.other[].off":        "its difference from the sett wanted",
	"heddles[]":               "heddles on each shaft",
	"heddles.on-loom[]":       "heddles the loom has on each shaft",
	"heddles.spare[]":         "spare heddles on each shaft",
	"pieces[].marks[]":        "{piece}, where each mark lies",
	"pieces[].marks[].picks":  "{piece}, picks woven at each mark",
	"warp.extras[]":           "more warp, for what else is wanted",
	"weft.shares[]":           "share of each yarn in the weft",
	"winding.pegs[]":          "from the start to each peg",
	"bouts[].ends":            "ends of each bout",
	"bouts[].changes[]":       "passes before each colour change",
	"raddle.groups[]":         "spaces that take alike",
	"raddle.groups[].ends":    "ends in them",
	"sections.groups[]":       "sections that take alike",
	"sections.groups[].ends":  "ends in them",
	"packages[].count":        "{yarn}, packages to wind from",
	"packages[].runs[].count": "{yarn}, packages alike",
	"packages[].runs[].wound": "{yarn}, on such a package",
	"packages[].wound":        "{yarn}, on all its packages",
}

// formLabel says what a figure is on a form for any plan, as it stands beside
// another.
func (c *courser) formLabel(s, beside *spot) string {
	says := s.node.Says()
	text, ok := formWords[says]
	if !ok {
		text, ok = nodeText(says)
	}
	if !ok {
		text = strings.ReplaceAll(allowanceLabel(s.node), ", term {n}", "")
	}
	piece, yarn := "piece, ", "yarn, "
	if c.plain(s, beside) {
		piece, yarn = "", ""
	}
	return strings.NewReplacer("{piece}, ", piece, "{yarn}, ", yarn).Replace(text)
}
