package sheet

// kind is one kind of sheet.
type kind struct {
	name, about string
	has         func(*desk) bool // whether the plan has anything for it
	without     string           // what the plan then lacks
	usual       func(*desk) bool // whether it is made unasked; nil: always
	make        func(*desk)
}

// kinds are the sheets in the order in which they are needed.
var kinds = []kind{
	{name: "glance", about: "the plan at a glance", has: always, make: (*desk).glance},
	{name: "yarn", about: "yarn to buy and to weigh out", has: (*desk).hasYarn, without: "it names no yarn", make: (*desk).yarn},
	{name: "winding", about: "the way of the warp, the bouts and their colours", has: always, make: (*desk).winding},
	{name: "raddle", about: "ends in the raddle or on the sections of the beam", has: (*desk).hasSpreading, without: "[winding] says neither raddle, section nor beam-girth", make: (*desk).raddle},
	{name: "draft", about: "threading, tie-up, treadling and drawdown as handbooks print them", has: (*desk).hasDrawn, without: "it has no [draft], or no threading that comes to its ends", make: (*desk).drafted},
	{name: "threading", about: "heddles on each shaft", has: (*desk).hasThreading, without: "it has no threading that comes to its ends", make: (*desk).threading},
	{name: "sleying", about: "the reed, its order, and groups of dents to tick", has: (*desk).hasReed, without: "it names no reed", make: (*desk).sleying},
	{name: "tie-up", about: "what to tie to each treadle, by treadle and by shaft, and which foot has which", has: (*desk).hasTieup, without: "it has no [draft] with a tie-up", make: (*desk).tieup},
	{name: "first-inch", about: "what to read across all ends, and one whole repeat, before the knots are tied tight", has: (*desk).hasInch, without: "it has no threading on two shafts or more that comes to its ends", make: (*desk).firstInch},
	{name: "treadling", about: "the treadles or lifts of the picks, in groups to tick", has: (*desk).hasTreadling, without: "it has no [draft] with a treadling or a lift plan", make: (*desk).treadling},
	{name: "weaving", about: "for each kind of piece its picks, lengths and marks", has: (*desk).hasPieces, without: "it has no pieces", make: (*desk).weaving},
	{name: "tape", about: "measuring tapes at true scale, to cut out", has: (*desk).hasTape, without: "no length on the loom is known", make: (*desk).tape},
	{name: "finishing", about: "the steps after the last pick, sizes planned beside sizes measured, hems, fringes, the wash", has: (*desk).hasPieces, without: "it has no pieces", make: (*desk).finishing},
	{name: "label", about: "what the label of the cloth says of its fibres and its care", has: (*desk).hasLabel, without: "it does not say the fibres, shares and counts of all its yarns", make: (*desk).label},
	{name: "record", about: "what came of it: sizes planned and measured, what they teach, yarn used, the log", has: (*desk).hasPieces, without: "it has no pieces", make: (*desk).record},
	{name: "class", about: "every figure with its working, to hand out", has: always, usual: (*desk).isClass, make: (*desk).class},
	{name: "worksheet", about: "the same to be worked out by hand", has: always, usual: (*desk).isClass, make: (*desk).worksheet},
	{name: "kits", about: "amounts of yarn for each loom or weaver of a class", has: (*desk).isClass, without: "it has no [class]", make: (*desk).kits},
}

func always(*desk) bool { return true }

func kindNamed(name string) (kind, bool) {
	for _, k := range kinds {
		if k.name == name {
			return k, true
		}
	}
	return kind{}, false
}

func (d *desk) hasYarn() bool { return len(d.yarnNames()) > 0 }
func (d *desk) hasSpreading() bool {
	return d.has("raddle") || d.has("sections.width") || d.has("beam.girth")
}
func (d *desk) hasThreading() bool { return d.has("heddles.total") }
func (d *desk) hasReed() bool      { return d.has("sett.exact") }
func (d *desk) hasPieces() bool    { return len(d.r.Plan.Pieces) > 0 }

func (d *desk) isClass() bool { return d.r.Plan.Class.Looms > 0 || d.r.Plan.Class.InTurn > 0 }

// Titles of the sheets.
const (
	titleGlance    = "The plan at a glance"
	titleYarn      = "Yarn"
	titleWinding   = "Winding"
	titleRaddle    = "Raddle"
	titleSections  = "Sectional beam"
	titleBeam      = "Beam"
	titleThreading = "Threading"
	titleSleying   = "Sleying"
	titleDraft     = "The draft"
	titleTieup     = "Tie-up"
	titleInch      = "First inch"
	titleTreadling = "Treadling"
	titleLifts     = "Lifts"
	titleWeaving   = "Weaving: "
	titleFinishing = "Finishing"
	titleLabel     = "Label"
	titleRecord    = "Record"
	titleClass     = "The reckoning, with every working"
	titleWorksheet = "The reckoning, by hand"
	titleKits      = "Kits for the class"
)
