package present

import "sley/internal/engine/structure"

// telling says a finding of a weave: what it is, its figures, and what they mean.
// What stands in braces is put in by told.
type telling struct{ title, figures, explanation string }

// structureWords are for the findings of weaves and their edges.
var structureWords = map[structure.Topic]telling{
	structure.Named: {
		"weave", "{name}", "{name-means}",
	},
	structure.NoName: {
		"weave", "no name of its own",
		"It is none of the weaves that handbooks have one name for. Many good weaves are not.",
	},
	structure.OneShed: {
		"one pick in each shed", "a weft rib, no basket",
		"The ends work together as those of a basket do, and each shed holds one pick. For a basket throw as many picks into a shed as ends work together, catching the edge end in between.",
	},
	structure.Hangs: {
		"holds together", "yes, as one cloth",
		"Its threads cannot be parted so that some lie on top of all the others. Followed from crossing to crossing, each holds every other.",
	},
	structure.Layered: {
		"holds together", "no: {count} layers, one on another",
		"Each layer is a cloth of its own. They are joined only where a weft passes from one to the other, as at the edge of a tube; change a crossing of two layers to stitch them. What is counted below is counted over all layers.",
	},
	structure.Nothing: {
		"holds together", "no: nothing is held",
		"Every thread lies on top of, or beneath, all that it crosses, and can be lifted off. This is no cloth.",
	},
	structure.Loose: {
		"loose {threads}", "{count} of {of}: {which}",
		"Nothing holds them: they lie on top of the threads beneath them, or hang below those above. See that each goes over some threads and under others, and that those are held themselves.",
	},
	structure.Repeats: {
		"repeat", "{ends} and {picks}",
		"After so many the weave comes again, so that widths and lengths are best counted in whole repeats.",
	},
	structure.Once: {
		"repeat", "none in {ends} and {picks}",
		"The weave does not come again within this cloth.",
	},
	structure.Fewest: {
		"fewest it needs", "{shafts} and {lifts}",
		"Ends that always rise together can share a shaft, and picks that cross alike share a lift: with one foot, a treadle.",
	},
	structure.Floating: {
		"longest float, {way}", "{front} on the front{front-at}; {back} on the back{back-at}",
		"A float is how many {across} one of the {threads} passes over before it goes to the other side. Long ones catch on rings and buttons, and let the cloth move; how long is too long depends on the sett and the use.",
	},
	structure.Shortest: {
		"longest float, {way}", "1",
		"Each of the {threads} passes over one of the {across} and under the next: nothing is shorter or firmer.",
	},
	structure.Never: {
		"{threads} that never interlace", "{count} of {of}, on the {face} all along",
		"They never go to the other side: in a repeat such a float has no end and no length. Nothing binds them; change one of their crossings.",
	},
	structure.Evenly: {
		"interlacings, {way}", "each of the {threads} changes sides {most} over {across-of}",
		"{evenly-means}",
	},
	structure.NearlyEvenly: {
		"interlacings, {way}", "the {threads} change sides {least} to {most} over {across-of}",
		"Only the edges, which cut the weave, make a difference. {evenly-means}",
	},
	structure.Unevenly: {
		"interlacings, {way}", "the {threads} change sides {least} to {most} over {across-of}",
		"{unevenly-means}",
	},
	structure.Balanced: {
		"warp on the front", "{count} of {of} crossings, {balance}",
		"{balance-means}",
	},

	structure.AllCaught: {
		"{side} edge", "caught at each of {of} turns",
		"The weft turns round the outermost end every time, and the edge stays closed.",
	},
	structure.SomeCaught: {
		"{side} edge", "caught at {count} of {of} turns, at most {run} missed in a row",
		"Where the outermost end lies the same way in both picks, the weft turns round one further in, and the outermost floats past the turn. One such turn is seldom seen; several in a row leave the edge loose.",
	},
	structure.NoneCaught: {
		"{side} edge", "caught at none of {of} turns",
		"The outermost end lies the same way in both picks of every turn here. The weft never goes round it, and it hangs loose beside the cloth.",
	},
	structure.SameShed: {
		"back into the same shed", "{count} of {of} turns",
		"No end moves between the two picks, so that the second pulls the first out again. A floating selvedge holds it, or the edge end put by hand over one pick and under the other.",
	},
	structure.StartOther: {
		"to catch more", "{swap}",
		"A shuttle turns at one side after every odd pick and at the other after every even one; begun from the other side, it turns there after the picks at which the edge end changes. {caught-then}",
	},
	structure.ChangeEnds: {
		"to catch more", "{change}",
		"Another end of the repeat then stands at the edge, and changes at other picks. {caught-then}",
	},
	structure.HangFloating: {
		"to catch every turn", "a floating selvedge {hung}",
		"An end in no heddle, sleyed in a dent of its own and weighted: pass the shuttle over it going in and under it coming out. It holds every turn, whatever the weave.",
	},
}

// kindWords are for the weaves that have names: the name and what it means.
var kindWords = map[structure.Kind][2]string{
	structure.Unnamed:        {"no name of its own", "It is none of the weaves that handbooks have one name for."},
	structure.Plain:          {"plain weave", "Each thread goes over one and under one. No weave binds more closely, so it wants the most open sett."},
	structure.WarpRib:        {"{pick-groups} warp rib", "Plain weave with several picks in a shed: the ends float over them, and the ribs run from edge to edge."},
	structure.WeftRib:        {"{end-groups} weft rib", "Plain weave with neighbouring ends that rise together: the picks float over them, and the ribs run along the cloth."},
	structure.Basket:         {"{basket}", "Plain weave of groups: neighbouring ends rise together, and as a group they are crossed by several picks in each shed. It is soft, and its threads slip if the sett is open."},
	structure.Twill:          {"{over} twill{hand}{faced}", "Each pick does what the one before did, one end further on, so that the floats form a slanting line."},
	structure.BrokenTwill:    {"broken {over} twill{hand}, broken in the {turned}", "A twill whose line is cut and goes on elsewhere, so that no long slant shows."},
	structure.PointTwill:     {"{over} point twill, turned in the {turned}", "A twill whose line turns back at a point. One thread stands alone at each point, and the floats beside it may be longer than those of the twill."},
	structure.Herringbone:    {"{over} herringbone twill, turned in the {turned}", "A twill whose line turns back and is cut where it turns, which keeps the floats short there."},
	structure.Diamond:        {"{over} diamond twill", "A twill whose line turns back both in the threading and in the treadling, so that the lines close to diamonds."},
	structure.Satin:          {"{satin} on {size} ends, move {move}", "Each thread is bound once in a repeat, and no two bindings lie side by side: the floats cover them and the face is smooth."},
	structure.IrregularSatin: {"irregular {satin} on {size} ends{as-broken}", "Each thread is bound once in a repeat, without a fixed move from one binding to the next: it looks nearly as smooth as a satin."},
	structure.DoubleCloth:    {"double cloth, two layers of plain weave", "Two cloths woven one above the other. They are joined only where a weft passes from one to the other."},
}

// balanceWords say which thread the front shows, and what that means.
var balanceWords = map[structure.Balance][2]string{
	structure.Even:      {"even", "Front and back show about as much of the warp as of the weft, and the colours of both count alike."},
	structure.WarpFaced: {"warp-faced", "The front shows more of the warp, the back more of the weft: the colours of the warp lead on the front."},
	structure.WeftFaced: {"weft-faced", "The front shows more of the weft, the back more of the warp: the colours of the weft lead on the front."},
}

// evenlyWords and unevenlyWords say what it means that threads change sides as often
// as one another, or that they do not.
var (
	evenlyWords = map[structure.Way]string{
		structure.Warp: "All ends bend alike, so that they take up alike and one tension serves for all.",
		structure.Weft: "All picks bend alike, so that they lie as close to one another throughout.",
	}
	unevenlyWords = map[structure.Way]string{
		structure.Warp: "Ends that change sides more often take up more. Mixed among one another they even out; as stripes of their own they do not, and the slacker stripe wants a beam, or weights, of its own.",
		structure.Weft: "Picks that change sides more often need more room. Mixed among one another they even out; as bands of their own they do not, and the bands differ in picks to the inch, and in width.",
	}
)

var (
	wayWords    = map[structure.Way]string{structure.Warp: "warp", structure.Weft: "weft"}
	threadWords = map[structure.Way]string{structure.Warp: "ends", structure.Weft: "picks"}
	orderOfWay  = map[structure.Way]string{structure.Warp: "threading", structure.Weft: "treadling"}
	faceWords   = map[structure.Face]string{structure.Front: "front", structure.Back: "back"}
	sideWords   = map[structure.Side]string{structure.Left: "left", structure.Right: "right"}
	handWords   = map[structure.Hand]string{structure.NoHand: "", structure.RightHand: ", right hand (Z)", structure.LeftHand: ", left hand (S)"}
)
