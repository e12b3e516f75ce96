package present

// draftWords are for the texts of weaves and for drafts.
var draftWords = map[string]words{
	"weave.sign":   {"\"{read}\" stands for neither thread", "", "write # where the warp is on top and . where the weft is, a line for each pick"},
	"weave.uneven": {"this pick crosses {ends} ends, the first one {want}", "", "write as many signs in every line"},
	"weave.empty":  {"the weave has no pick", "", "write a line of # and . for each pick, as \"#. / .#\""},
	"weave.large":  {"the text has more than {most} characters", "", "look whether this is a weave"},

	"draft.shafts":       {"{read} is no number of shafts from 1 to {most}", "", "say how many shafts the draft is for"},
	"draft.treadles":     {"{read} is no number of treadles from 0 to {most}", "", "say how many treadles the draft uses"},
	"draft.no-ends":      {"the threading has no end", "", "thread at least one end, as \"1 2 3 4\""},
	"draft.no-picks":     {"there is neither a treadling nor a lift plan", "", "write the treadle of each pick, or the shafts that are up"},
	"draft.end-shaft":    {"end {end} is on shaft {read}, and the draft has {shafts} shafts", "", "put the end on another shaft, or give the draft more"},
	"draft.end-nowhere":  {"end {end} is in no heddle, and stands between ends that are", "an end in no heddle never rises and is caught by no pick", "put it on a shaft; only the outermost ends float"},
	"draft.ties":         {"{read} treadles are tied, and the draft has {treadles}", "", "take ties out, or give the draft more treadles"},
	"draft.tie-shaft":    {"treadle {treadle} is tied to shaft {read}, and the draft has {shafts} shafts", "", "tie it to another shaft, or give the draft more"},
	"draft.tie-both":     {"treadle {treadle} raises and lowers shaft {read}", "the shaft would be drawn both ways and stay where it is", "tie it one way"},
	"draft.tie-lowers":   {"treadle {treadle} is tied to lower shaft {read}, and only a countermarch has such ties", "", "say which shafts the treadle moves; the others stay"},
	"draft.pick-treadle": {"pick {pick} presses treadle {read}, and the draft has {treadles} treadles", "", "press another treadle, or give the draft more"},
	"draft.lift-shaft":   {"pick {pick} lifts shaft {read}, and the draft has {shafts} shafts", "", "lift another shaft, or give the draft more"},
	"draft.locked":       {"pick {pick} presses {read}, which draws shaft {locked} up and down at once", "the shaft is locked and the shed does not open", "press treadles that do not pull against one another, or tie a treadle for this lift"},
	"draft.free":         {"pick {pick} presses {read}, which ties shaft {free} neither up nor down", "its ends hang in the shed, and the shuttle may pass on either side of them", "tie the shaft to rise or to sink"},
	"draft.none-up":      {"pick {pick} ({read}) lifts no end", "the shuttle passes under the whole warp and the pick lies loose on its back", "lift some of the shafts"},
	"draft.all-up":       {"pick {pick} ({read}) lifts every end", "the shuttle passes over no end and the pick lies loose on the back", "leave some of the shafts down"},
	"draft.uneven-shed":  {"pick {pick} ({read}) lifts {up} of {shafts} shafts, and a counterbalance loom opens as many up as down", "the shed is shallow on one side", "weave it slowly with a flat shuttle, or on a loom whose shafts move by themselves"},
	"draft.plans-length": {"the lift plan has {read} picks, and the treadling {picks}", "", "make them the same length, or leave one of them out"},
	"draft.plans-differ": {"at pick {pick} the lift plan says {read} and the treadling lifts {up}", "", "mend one of them, or leave it out"},
	"draft.colour":       {"colour {read} is not in the palette, which has {colours}", "", "give the palette the colour, or the thread another"},
	"draft.more":         {"and {more} more of the same kind", "", "mend the first ones; the others may go with them"},
}
