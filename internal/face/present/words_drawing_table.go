package present

// tableWords are for what is wrong with how a table is asked for, and drawn on.
var tableWords = map[string]words{
	"act.json":            {"an act cannot be read ({why})", "", "write it as docs/api.md has it, as do=mirror part=threading from=0 to=4"},
	"act.cell":            {"\"{read}\" is no crossing", "", "write the pick and the end, both from 0, as [3, 12], or as cells=3:12 in a command"},
	"act.shed":            {"\"{read}\" is no way to open a shed", "", "write one of {valid}"},
	"act.value":           {"\"{read}\" is no entry of the {part}", "", "write shafts and colours as whole numbers, sets of shafts or treadles in hexadecimal, colours of the palette as \"#25407c\""},
	"look.use":            {"\"{read}\" is no use of a cloth that is known", "", "write one of {valid}, or none for any cloth"},
	"look.shuttles":       {"how the shuttles go cannot be read ({why})", "", "write their order as \"1 1 2 2\", and left or right for where each starts"},
	"table.fixed":         {"this draft cannot be drawn on now", "work on its warp began, or it is shown whole and is written in a text of its own", "amend what was built, draw on a copy, or draw on it as it is written"},
	"table.loom-shafts":   {"this takes {needs} shafts, and the loom has {has}", "an end that does what no other does needs a shaft of its own", "undo it, or take another loom for this warp"},
	"table.loom-treadles": {"this takes {needs} treadles, and the loom has {has}", "a lift that no treadle makes needs one of its own", "undo it, tie the treadles so that two feet make a lift, or weave from a lift plan"},
	"table.whole-colours": {"a warp as it is written has no colours of its own", "its threads have those of its yarns", "draw colours on the whole warp, or write stripes and orders of picks"},
	"table.no-heddle":     {"end {end} would be in no heddle", "a plan says floating selvedges by themselves", "put it on a shaft, or leave it out and hang floating selvedges"},
	"table.no-lift":       {"pick {pick} would lift nothing", "a plan cannot say a pick with no shed", "press a treadle for it, or leave it out"},
	"table.no-yarn":       {"there is no yarn of that colour in this warp", "", "use one of {valid}, or take another yarn into the warp first"},
	"table.crammed":       {"the stripes of this warp say how close ends stand, or on which beam", "drawn colours would lose that", "change the stripes as they are written"},
	"table.bordered":      {"the picks of the first piece have borders, or an order of their own", "drawn colours would lose that", "change borders and order of the piece as they are written"},
}
