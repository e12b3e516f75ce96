package present

// strokeWords are for what is wrong with how a draft is drawn.
var strokeWords = map[string]words{
	"act.json":  {"an act cannot be read ({why})", "", "write it as docs/api.md has it, as do=mirror part=threading from=0 to=4"},
	"act.shed":  {"\"{read}\" is no way to open a shed", "", "write one of {valid}"},
	"act.value": {"\"{read}\" is no entry of the {part}", "", "write shafts and colours as whole numbers, sets of shafts or treadles in hexadecimal, colours of the palette as \"#25407c\""},

	"look.use":      {"\"{read}\" is no use of a cloth that is known", "", "write one of {valid}, or none for any cloth"},
	"look.shuttles": {"how the shuttles go cannot be read ({why})", "", "write their order as \"1 1 2 2\", and left or right for where each starts"},

	"table.fixed":     {"this draft cannot be drawn on now", "work on its warp began, or it is shown whole and is written in a text of its own", "amend what was built, draw on a copy, or draw on it as it is written"},
	"table.no-heddle": {"end {end} would be in no heddle", "a plan says floating selvedges by themselves", "put it on a shaft, or leave it out and hang floating selvedges"},
	"table.no-lift":   {"pick {pick} would lift nothing", "a plan cannot say a pick with no shed", "press a treadle for it, or leave it out"},
	"table.no-yarn":   {"there is no yarn of that colour in this warp", "", "use one of {valid}, or take another yarn into the warp first"},
	"table.crammed":   {"the stripes of this warp say how close ends stand, or on which beam", "drawn colours would lose that", "change the stripes as they are written"},
	"table.bordered":  {"the picks of the first piece have borders, or an order of their own", "drawn colours would lose that", "change borders and order of the piece as they are written"},

	"stroke.act":               {"\"{read}\" is nothing that can be done to a draft", "", "do one of {valid}"},
	"stroke.part":              {"\"{read}\" is no part that this can be done to", "", "name one of {valid}"},
	"stroke.lift-plan":         {"this draft has a lift plan, and no treadles", "", "draw in the lift plan, or give every lift a treadle first"},
	"stroke.treadled":          {"this draft is treadled, and has no lift plan", "", "draw in the treadling, or make a lift plan of it first"},
	"stroke.stretch":           {"the stretch {read} does not lie in the {part}", "it has {has}", "begin and end it within that, counted from 0, the last left out"},
	"stroke.large":             {"it would come to {read} threads", "", "a draft has at most {most} each way: make fewer"},
	"stroke.length":            {"{read} entries were put in the place of {remove} in the {part}", "its entries belong to threads", "put as many as are taken out, or draw the threads themselves"},
	"stroke.colour":            {"\"{read}\" is no colour", "", "write it as six hexadecimal digits"},
	"stroke.colours-used":      {"the palette would have {read} colours, and the threads use {used}", "", "give the threads other colours first"},
	"stroke.cell":              {"{read} is no crossing of this draft", "it has {picks} picks and {ends} ends", "draw within it, counted from 0"},
	"stroke.too-many-shafts":   {"that cloth needs {read} shafts", "", "a draft has at most {most}: make more ends alike"},
	"stroke.too-many-treadles": {"that needs {read} treadles", "", "a draft has at most {most}: make more picks alike, or make a lift plan of it"},
	"stroke.more-shafts":       {"that cloth needs {needs} shafts, and the draft had {shafts}", "", "make ends alike again, or see whether the loom has so many"},
	"stroke.more-treadles":     {"those lifts need {needs} treadles, and the draft had {treadles}", "", "make picks alike again, or see whether the loom has so many"},
	"stroke.shafts-used":       {"there cannot be only {read} shafts: shaft {used} is used", "", "move its ends to other shafts first"},
	"stroke.treadles-used":     {"treadle {used} is used", "", "let its picks press other treadles first"},
	"stroke.rule":              {"\"{read}\" is no rule for a threading", "", "use one of {valid}"},
	"stroke.range":             {"{read} are no shafts or treadles of this draft", "it has {has}", "begin and end within those"},
	"stroke.start":             {"it cannot begin at {read}", "", "begin from {first} to {last}"},
	"stroke.number":            {"{read} is no number for that", "", "write one from {least} to {most}"},
	"stroke.times":             {"nothing can be repeated {read} times", "", "write a whole number from 1"},
	"stroke.fill":              {"what fills does not come to {threads} threads", "", "it comes to {less} or to {more}: say one of those"},
}
