package present

// changeWords say what each change of a draft makes of it, by its name.
var changeWords = map[string]string{
	"turned":              "warp and weft exchanged; the thread on top stays on top",
	"other-face":          "the same cloth with its other face up",
	"lift-plan":           "without treadles, as a table loom is worked",
	"treadles":            "a treadle for each lift, the fewest for one foot",
	"fewest":              "the fewest shafts and treadles that weave the same",
	"used":                "without shafts and treadles that are not used",
	"as-drawn-in":         "treadled as it is threaded",
	"ends-mirrored":       "the ends followed by themselves backwards, the turn once",
	"picks-mirrored":      "the picks followed by themselves backwards, the turn once",
	"ends-reversed":       "the ends backwards",
	"picks-reversed":      "the picks backwards",
	"ends-times":          "the ends so many times over",
	"picks-times":         "the picks so many times over",
	"ends-advanced":       "the ends so many times over, each time so many shafts further",
	"picks-advanced":      "the picks so many times over, each time so many treadles further",
	"shafts-shifted":      "every end so many shafts further, round the shafts",
	"ends-deleted":        "without those ends, counted from 1",
	"picks-deleted":       "without those picks, counted from 1",
	"ends-inserted":       "with ends on those shafts before the end of that number",
	"picks-inserted":      "with picks by those treadles, or lifts, before the pick of that number",
	"shafts-renumbered":   "shaft 1 under the first of those numbers, and so on",
	"treadles-renumbered": "treadle 1 under the first of those numbers, and so on",
	"for-feet":            "the treadles numbered so that left and right foot take turns and go the least way",
	"rising":              "tied for a loom whose treadles raise shafts",
	"sinking":             "tied for a loom whose treadles lower shafts",
	"counterbalance":      "tied for a counterbalance loom",
	"countermarch":        "tied for a countermarch loom",
	"table":               "for a table loom, a lift for each pick",
}

// ChangeSays says what a change of a draft makes of it; of none that there is, nothing.
func ChangeSays(name string) string { return changeWords[name] }
