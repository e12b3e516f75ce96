package present

// strokeWords are for what is wrong with strokes on a draft.
var strokeWords = map[string]words{
	"stroke.act":               {"\"{read}\" is nothing that can be done to a draft", "", "write one of {valid}"},
	"stroke.part":              {"\"{read}\" is no part of a draft for \"{do}\"", "", "the parts for it are {valid}"},
	"stroke.lift-plan":         {"the draft is a lift plan and has no treadles", "", "change the lifts, or give every lift a treadle first"},
	"stroke.treadled":          {"the draft is treadled, and its treadles say the lifts", "", "change ties or treadling, or make a lift plan of it first"},
	"stroke.stretch":           {"{read} does not lie in the {part}, which has {has} places", "", "take a stretch from 0 to {has}"},
	"stroke.length":            {"{read} values are to stand in the place of {remove}", "there is one for each thread, or for each treadle", "give as many as are taken away"},
	"stroke.large":             {"that would come to {read} threads", "", "a draft has at most {most} ends, and as many picks"},
	"stroke.times":             {"{read} times over is not possible", "", "write a number from 1"},
	"stroke.colour":            {"{read} is no colour", "", "write it as # and six digits, as \"#25407c\""},
	"stroke.colours-used":      {"the palette would have {read} colours, and threads have colour {used}", "", "give those threads another colour first"},
	"stroke.rule":              {"\"{read}\" is no rule that can be laid", "", "write one of {valid}"},
	"stroke.range":             {"{read} is no range of what the draft has", "", "take it from 1 to {has}"},
	"stroke.start":             {"the rule cannot start at {read}", "", "start from {first} to {last}"},
	"stroke.number":            {"{read} is out of range", "", "write a number from {least} to {most}"},
	"stroke.fill":              {"what fills comes to {less} or {more} threads, and {threads} are to be filled", "", "add or leave out threads beside what fills, or take a stretch of another length"},
	"stroke.cell":              {"there is no crossing of pick and end at {read}", "", "the draft has {picks} picks and {ends} ends, counted from 0"},
	"stroke.shafts-used":       {"there cannot be {read} shafts: shaft {used} is threaded, tied or lifted", "", "free the shafts that are to go first"},
	"stroke.treadles-used":     {"treadle {used} is pressed and cannot go", "", "let another treadle be pressed there first"},
	"stroke.more-shafts":       {"this takes {needs} shafts, and the draft had {shafts}", "an end that does what no other does needs a shaft of its own", "look whether the loom has as many; undo it otherwise"},
	"stroke.more-treadles":     {"this takes {needs} treadles, and the draft had {treadles}", "a lift that no treadle makes needs one of its own", "look whether the loom has as many; undo it otherwise, or weave from a lift plan"},
	"stroke.too-many-shafts":   {"this takes {read} shafts or more, and there are {most} at most", "an end that does what no other does needs a shaft of its own", "change fewer crossings, or change them alike along whole ends"},
	"stroke.too-many-treadles": {"this takes more than {most} treadles", "", "make a lift plan of the draft first"},
}
