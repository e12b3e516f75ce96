package review

// Topic is what a finding, or a remedy, is about: the id under which its words are kept.
type Topic string

// The topics of findings, with their args. Ends, picks and shafts in args are counts.
const (
	LongFloat     Topic = "long-float"     // way, face, threads, limit; long where the cloth's density is known
	MoreFloats    Topic = "more-floats"    // more: long floats that are not told one by one
	LooseEnds     Topic = "loose-ends"     // count, of
	LoosePicks    Topic = "loose-picks"    // count, of
	Layers        Topic = "layers"         // layers, wanted
	NoEndUp       Topic = "no-end-up"      // picks
	AllEndsUp     Topic = "all-ends-up"    // picks
	InNoHeddle    Topic = "in-no-heddle"   // ends
	Locked        Topic = "locked"         // shafts drawn both ways by what a pick presses
	Hanging       Topic = "hanging"        // shafts tied neither way
	UnevenShed    Topic = "uneven-shed"    // up, shafts
	EdgeBare      Topic = "edge-bare"      // side, caught, turns, run
	LacksShafts   Topic = "lacks-shafts"   // has, needs
	LacksTreadles Topic = "lacks-treadles" // has, needs
	LacksHeddles  Topic = "lacks-heddles"  // shaft, has, needs
	OtherShed     Topic = "other-shed"     // draft, loom: sheds
	SameShafts    Topic = "same-shafts"    // shafts that weave the same
	EmptyShafts   Topic = "empty-shafts"   // shafts that move and have no end
	SameTreadles  Topic = "same-treadles"  // treadles tied alike
	IdleTreadles  Topic = "idle-treadles"  // treadles that are tied and never pressed
	PartRepeat    Topic = "part-repeat"    // ends, repeat, over: ends beyond whole repeats
)

// The topics of remedies.
const (
	Bind          Topic = "bind"            // cells that hold a float down
	StartOther    Topic = "start-other"     // shuttles start from the other side
	ChangeEnds    Topic = "change-ends"     // an end more or less at an edge
	HangFloating  Topic = "hang-floating"   // floating selvedges
	LeaveOutPicks Topic = "leave-out-picks" // picks go
	LeaveOutEnds  Topic = "leave-out-ends"  // ends go
	ThreadEnds    Topic = "thread-ends"     // ends come onto a shaft
	TieToSink     Topic = "tie-to-sink"     // shafts that hang are tied
	FewerShafts   Topic = "fewer-shafts"    // the fewest that weave the same
	DropUnused    Topic = "drop-unused"     // what is not used goes
	LiftPlan      Topic = "lift-plan"       // without treadles
	ForLoom       Topic = "for-loom"        // tied for another shed
	Merge         Topic = "merge"           // what does the same becomes one
	AddEnds       Topic = "add-ends"        // ends to fill whole repeats
	Balance       Topic = "balance"         // ends so that both edges are alike
)

// Topics lists those of findings.
func Topics() []Topic {
	return []Topic{
		LongFloat, MoreFloats, LooseEnds, LoosePicks, Layers, NoEndUp, AllEndsUp, InNoHeddle,
		Locked, Hanging, UnevenShed, EdgeBare, LacksShafts, LacksTreadles, LacksHeddles,
		OtherShed, SameShafts, EmptyShafts, SameTreadles, IdleTreadles, PartRepeat,
	}
}

// RemedyTopics lists those of remedies.
func RemedyTopics() []Topic {
	return []Topic{
		Bind, StartOther, ChangeEnds, HangFloating, LeaveOutPicks, LeaveOutEnds, ThreadEnds,
		TieToSink, FewerShafts, DropUnused, LiftPlan, ForLoom, Merge, AddEnds, Balance,
	}
}
