package present

import "sley/internal/engine/review"

// reviewWords say what there is to tell of a draft, and what that means for the cloth.
// Places are counted from 1, as a weaver counts.
var reviewWords = map[review.Topic]words{
	review.LongFloat:     {"{way} floats over {threads} threads on the {face}, at {ends-at} and {picks-at}", "longer than {limit}: floats of that length catch on rings, hooks and toes", ""},
	review.MoreFloats:    {"{more} more floats are as long", "", ""},
	review.LooseEnds:     {"{count} of {of} ends are held by nothing: {ends-at}", "no pick passes both over and under them, and they lie loose on the cloth", ""},
	review.LoosePicks:    {"{count} of {of} picks are held by nothing: {picks-at}", "they would slide out of the cloth", ""},
	review.Layers:        {"it weaves {layers} cloths, one on the other", "where one cloth is wanted, something ties no thread of one to the other", ""},
	review.NoEndUp:       {"nothing is up at {picks-at}", "the shed does not open, and the weft lies over all ends", ""},
	review.AllEndsUp:     {"everything is up at {picks-at}", "the shed does not open, and the weft lies under all ends", ""},
	review.InNoHeddle:    {"in no heddle within the cloth: {ends-at}", "only the ends at the edges can float", ""},
	review.Locked:        {"{shafts-are} drawn up and down at once at {picks-at}", "the treadles pressed together work against one another, and none goes down", ""},
	review.Hanging:       {"{shafts-are} tied neither way at {picks-at}", "on a countermarch they hang between, and the shed is not clear", ""},
	review.UnevenShed:    {"{up} of {shafts} shafts are up at {picks-at}", "a counterbalance loom opens as many up as down; others come up unevenly", ""},
	review.EdgeBare:      {"on the {side} the weft catches the edge at {caught} of {turns} turns", "up to {run} picks one after another pass it by, and the edge is loose there", ""},
	review.LacksShafts:   {"the draft needs {needs} shafts, and the loom has {has}", "it cannot be threaded there", ""},
	review.LacksTreadles: {"the draft needs {needs} treadles, and the loom has {has}", "it cannot be tied there", ""},
	review.LacksHeddles:  {"shaft {shaft} needs {needs} heddles, and has {has}", "heddles are put on before the warp is beamed", ""},
	review.OtherShed:     {"the draft is tied for a {draft}, and this is a {loom}", "what is tied must be tied otherwise to weave the same", ""},
	review.SameShafts:    {"{shafts} always move together", "the cloth would be the same with one of them; more shafts spread the heddles", ""},
	review.EmptyShafts:   {"there is no end on {shafts}", "and yet treadles move it: what is tied there is tied for nothing", ""},
	review.SameTreadles:  {"{treadles-are} tied alike", "one of them would do; two may suit the feet", ""},
	review.IdleTreadles:  {"{treadles-are} tied, and never pressed", "what is tied there is tied for nothing", ""},
	review.PartRepeat:    {"the threading comes out with {over} ends over: {ends} ends are no whole repeats of {repeat}", "the pattern breaks off at the right edge", ""},
}

// remedyWords say what mends a finding.
var remedyWords = map[review.Topic]string{
	review.Bind:          "tie the float down in its middle",
	review.StartOther:    "start from the other side",
	review.ChangeEnds:    "thread {ends}",
	review.HangFloating:  "hang a floating selvedge{sides}",
	review.LeaveOutPicks: "leave out those picks",
	review.LeaveOutEnds:  "leave out those ends",
	review.ThreadEnds:    "thread them on a shaft",
	review.TieToSink:     "tie them to go down",
	review.FewerShafts:   "use the fewest shafts that weave the same",
	review.DropUnused:    "leave out what is not used",
	review.LiftPlan:      "make a lift plan of it",
	review.ForLoom:       "tie it for the loom",
	review.Merge:         "make one of them",
	review.AddEnds:       "add ends up to a whole repeat: {ends}",
	review.Balance:       "balance it, so that both edges are alike: {ends}",
}
