package present

import "strings"

// kindOfStage is a heading of the order of work, and whether it is told anew for
// each piece or yarn.
type kindOfStage struct {
	title string
	each  Each
}

// The stages in the order of the work.
const (
	stageWanted = iota
	stageWidth
	stageSett
	stageEnds
	stageDents
	stageAlong
	stagePiece
	stageWarp
	stageWarpYarn
	stageWeft
	stageYarn
	stageWinding
	stageSpreading
	stageHeddles
	stageTape
	stageCost
)

var stages = [...]kindOfStage{
	stageWanted:    {"What is wanted", Once},
	stageWidth:     {"Width, from the cloth back to the reed", Once},
	stageSett:      {"Sett and reed", Once},
	stageEnds:      {"Ends, and the width they give", Once},
	stageDents:     {"Dents in the reed", Once},
	stageAlong:     {"Picks, and losses in length", Once},
	stagePiece:     {"Picks and lengths of a piece", EachPiece},
	stageWarp:      {"Length of the warp", Once},
	stageWarpYarn:  {"Yarn in the warp", Once},
	stageWeft:      {"Yarn in the weft", Once},
	stageYarn:      {"Yarn in all", EachYarn},
	stageWinding:   {"Winding the warp", Once},
	stageSpreading: {"Raddle and beam", Once},
	stageHeddles:   {"Heddles", Once},
	stageTape:      {"Marks on the tape", Once},
	stageCost:      {"Cost and time", Once},
}

// stagesOf says the stage of a node by how its words' id begins. The longest that
// fits holds.
var stagesOf = map[string]int{
	"class.": stageWanted, "sampling.length": stageWanted, "pieces[].count": stageWanted, "pieces[].panels": stageWanted, "pieces[].in-turn": stageWanted,
	"pieces[].length": stageWanted, "pieces[].width": stageWanted, "built.": stagePiece,

	"pieces[].width-": stageWidth, "pieces[].panel-width": stageWidth, "pieces[].layer-width": stageWidth,
	"pieces[].seam": stageWidth, "width.wanted": stageWidth,
	"allowances.width-": stageWidth, "allowances.draw-in": stageWidth, "allowances.reed-to-": stageWidth, "allowances.fell-to-": stageWidth,
	"pieces[].seamed-width": stageEnds,

	"sett.": stageSett, "reed": stageSett, "sley.": stageSett,
	"yarns[].diameter": stageSett, "yarns[].wraps": stageSett, "yarns[].yards-per-pound": stageSett,

	"ends": stageEnds, "repeats.": stageEnds, "width.": stageEnds,
	"dents": stageDents, "loom.width": stageDents, "width.occupied": stageDents,

	"picks.": stageAlong, "allowances.": stageAlong,
	"pieces[].": stagePiece, "pieces[].second-beam": stageWarp, "pieces[].marks[]": stageTape, "pieces[].marks[].picks": stageTape,

	"warp.": stageWarp, "gap": stageWarp, "tie-on": stageWarp, "unreachable": stageWarp, "back": stageWarp, "step": stageWarp,
	"loom.beam-holds": stageWarp, "second-beam.": stageWarp, "sampling.": stageWarp, "pieces[].warp-all": stagePiece,

	"yarns[].ends": stageWarpYarn, "yarns[].warp": stageWarpYarn, "yarn.warp": stageWarpYarn,
	"weft.": stageWeft, "sampling.picks": stageWeft, "sampling.weft": stageWeft, "sampling.woven-": stageWeft,
	"yarns[].picks": stageWeft, "yarns[].weft": stageWeft, "yarns[].tails": stageWeft, "yarns[].reserve": stageWeft, "yarns[].bobbin": stageWeft,
	"yarns[].": stageYarn, "yarns[].warp-weight": stageYarn, "yarns[].weft-weight": stageYarn,

	"winding.": stageWinding, "bouts": stageWinding,
	"raddle": stageSpreading, "sections": stageSpreading, "packages": stageSpreading, "beam": stageSpreading,
	"heddles": stageHeddles,
	"cost.":   stageCost, "time": stageCost, "work.": stageCost,
}

// stageOf is the stage whose words begin the id at the greatest length.
func stageOf(says string) int {
	best, at := "", stageCost
	for begin, stage := range stagesOf {
		if strings.HasPrefix(says, begin) && len(begin) > len(best) {
			best, at = begin, stage
		}
	}
	return at
}
