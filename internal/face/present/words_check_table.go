package present

// checkWords say what the reckoning finds when it holds a plan against the loom
// and the cloth: what will happen, and what to do.
var checkWords = map[string]words{
	"loom.width": {
		"the warp needs {needs} in the reed and the loom weaves {width}",
		"the outermost ends will not pass the frame",
		"make the piece narrower, weave it in panels or double width, or choose a wider loom",
	},
	"loom.reed-short": {
		"the warp fills {needs} dents and reed {read} has {dents}",
		"the last ends find no dent",
		"choose a reed that is wide enough, put more ends in each dent, or make the piece narrower",
	},
	"loom.beam": {
		"the warp is wound {wound} long and the beam holds {holds}",
		"the last layers will slip off the edges of the beam and lose their tension",
		"weave fewer pieces on this warp, or wind two shorter warps",
	},
	"loom.beams": {
		"stripes are put on beam 2 and the loom has one beam",
		"",
		"leave the beam out of the stripes, or weight those ends from the back in chains of their own and write beams = 2",
	},
	"loom.shafts": {
		"the draft uses shaft {needs} and the loom has {shafts}",
		"",
		"choose a draft on fewer shafts, or a loom with more",
	},
	"cloth.loose": {
		"{ends} ends and {picks} picks of a repeat are held by nothing",
		"they lie loose on the cloth or behind it and can be pulled out",
		"look for a shaft that is never tied, or never left down",
	},
	"cloth.layers": {
		"the draft weaves {layers} layers that hang together nowhere but at the edges",
		"",
		"say weave = \"double cloth\" where that is meant, or tie the layers together",
	},
	"cloth.weft-float": {
		"picks pass over {threads} ends at once, {long}",
		"long floats catch on fingers and hooks",
		"take it where the cloth is lace, overshot or lined; else choose a closer weave or sett",
	},
	"cloth.warp-float": {
		"ends pass over {threads} picks at once, {long}",
		"long floats catch on fingers and hooks",
		"take it where the cloth is lace, overshot or lined; else choose a closer weave, or beat closer",
	},
	"edges.start": {
		"the weft catches the outermost end at {left} of {lefts} turns at the left and {right} of {rights} at the right when the shuttle starts at the left",
		"the edge ends that are not caught stand loose",
		"start the shuttle from the right: then every turn is caught",
	},
	"edges.bare": {
		"the weft catches the outermost end at {left} of {lefts} turns at the left and {right} of {rights} at the right",
		"the edge ends that are not caught stand loose",
		"hang floating selvedges, floating-selvedges = 2, or thread the edges otherwise",
	},
	"loom.treadles": {
		"the tie-up has {needs} treadles and the loom has {treadles}",
		"",
		"tie treadles that are pressed two at a time, work the lift plan on a table loom, or choose a draft with fewer lifts",
	},
	"loom.two-footed": {
		"the cloth has {lifts} lifts and the loom has {treadles} treadles",
		"one foot opens no more lifts than there are treadles",
		"tie treadles so that two feet open a lift together, a two-footed or skeleton tie-up, and write the treadles of each pick as 1+4; or weave it on a table loom",
	},
	"loom.heddles": {
		"shafts {shafts} are {short} heddles short",
		"threading will stop there until more are hung",
		"move spare heddles over before beaming, tie string heddles, or give ends to another shaft",
	},
	"second-beam.unused": {
		"a second beam is planned and no stripe is on it",
		"",
		"write \"on beam 2\" after the stripes it carries, or leave second-beam out",
	},
	"threading.ends": {
		"the threading does not come to {ends} ends: it has {fixed} fixed and repeats by {repeat}",
		"the last repeat would break off, and the heddles cannot be counted",
		"change the balancing ends of the threading, or the stripes, until both fill the same number of ends; or leave warp.ends out",
	},
	"stripes.ends": {
		"the stripes come to {stripes} ends and {ends} are wanted",
		"the stripes are cut off at the right, or the last one is made wider",
		"change a stripe, let a group fill the width with \"x fill\", or leave warp.ends out",
	},
	"reed.full": {
		"{ends} ends of {yarn} take up {fill} of the room in a dent of reed {read}",
		"the reed will rub the yarn and knots will not pass",
		"choose a reed with fewer dents and more ends in each, or a more open sett",
	},
	"sett.close": {
		"the sett is {part} of the closest that {yarn} allows in {weave}, {greatest}",
		"the weft will not beat in and the edges will pull apart",
		"choose a sett below {greatest}, a finer yarn, or a weave that interlaces less",
	},
	"sett.open": {
		"the sett is only {part} of the closest that {yarn} allows in {weave}, {greatest}",
		"the cloth will slip and lose its shape unless it is fulled",
		"choose a closer sett, a thicker yarn, or write wash = \"fulled\" if it is wool to be fulled",
	},
	"sett.wraps": {
		"the sett is {sett}, closer than the yarn's own wraps, {wraps}",
		"ends will lie over one another in the reed",
		"choose a more open sett, or wrap the ruler again and say how it was wrapped",
	},
	"sett.off": {
		"no reed at hand gives the sett within 1 %: it comes to {exact}, {off} off",
		"",
		"take it as it is, list another reed under loom.reeds, or change the sett",
	},
	"sett.stripe-off": {
		"the stripe at {read} comes to {exact} in this reed, {off} off",
		"",
		"take it as it is (dents {order}), or say a density that the reed can give",
	},
	"layers.uneven": {
		"{ends} ends do not share out over {layers} layers",
		"one layer will be an end wider than the other and the fold will show it",
		"change the ends by one, or let the fold end be said in the threading",
	},
	"width.under": {
		"the warp finishes at {comes}, {off} narrower than the {read} wanted",
		"",
		"change stripes, threading, ends or sett, or take the width as it comes",
	},
	"width.over": {
		"the warp finishes at {comes}, {off} wider than the {read} wanted",
		"",
		"change stripes, threading, ends or sett, or take the width as it comes",
	},
	"length.under": {
		"with whole motifs the piece finishes at {comes}, {off} shorter than the {read} wanted",
		"",
		"choose a smaller motif or border, or take the length as it comes",
	},
	"length.over": {
		"with whole motifs the piece finishes at {comes}, {off} longer than the {read} wanted",
		"",
		"choose a smaller motif or border, or take the length as it comes",
	},
	"loom.weave": {
		"{weave} needs {needs} shafts and the loom has {read}",
		"",
		"choose a weave on fewer shafts, or a loom with more",
	},
	"picks.close": {
		"{picks} of {yarn} are wanted and {room} lie side by side with nothing between",
		"the weft will not beat in so close",
		"choose fewer picks, a finer weft, or say the weave: a weft-faced cloth takes more",
	},
	"yarn.no-grist": {
		"how long {yarn} is in its weight is not known",
		"its stock, put-ups and price by weight are left out",
		"give it a count, a measured skein, or packed wraps",
	},
	"warp.short": {
		"the warp that is wound is {short} too short: {needed} are needed",
		"the last piece will not come off whole",
		"weave one piece less, make each shorter, or find the length that fits with --find pieces[0].length",
	},
	"allowance.relaxation": {
		"the cloth is longer on the loom ({loom}) than the warp it is woven of ({warp})",
		"more is said to be lost by relaxing than by take-up",
		"look at both figures: relaxation lies inside take-up and is usually smaller",
	},
	"tape.unknown": {
		"no tape can be made: nothing says how the cloth on the loom differs from the warp",
		"warp-to-washed is one figure for the whole way",
		"to take our usual values on the way, write relaxation = \"default\" and shrinkage = \"default\" under allowances",
	},
	"tape.many-changes": {
		"{changes} colour changes are too many or too close for a tape, so it shows none",
		"",
		"weave the changes by their picks",
	},
	"border.long": {
		"the borders and the balancing picks take {border} picks and the piece wanted has {picks}",
		"the piece comes out longer than wanted, all border",
		"make the borders shorter, write far-border = \"none\", or make the piece longer",
	},
	"weft.unknown": {
		"the weft is not in these amounts: nothing says how long the cloth is where the picks are read",
		"the yarn that is bought will do for the warp alone",
		"write relaxation = \"default\" and shrinkage = \"default\" under allowances, say the picks in a state that is known, or estimate the weft with weft.of-warp or weft.per-piece",
	},
	"weft.no-grist": {
		"the weft is given as a weight, and how long {yarn} is in it is not known",
		"its length cannot be reckoned",
		"give {yarn} a count, a skein or wraps; or write the weft as a length",
	},
	"yarn.short": {
		"{yarn} in hand is {short} short",
		"it will run out before the last piece is woven",
		"weave less of it, or say how it is put up so that we can reckon what to buy; --find tells what it is enough for",
	},
	"yarn.taken-warp": {
		"the warp names no yarn, so {yarn} is taken",
		"",
		"write warp.yarn, or stripes",
	},
	"yarn.taken-weft": {
		"the weft names no yarn, so {yarn} is taken",
		"",
		"write weft.yarn",
	},
	"yarn.tight": {
		"only {left} of {yarn} will be left over",
		"one broken skein or one fault woven again and it runs out",
		"buy one put-up more",
	},
	"find.unlimited": {
		"nothing limits {read}",
		"reckoning backwards needs something that is given",
		"give a yarn a stock, or the warp a wound length, and name them in find.within",
	},
	"find.nothing-fits": {
		"not even the smallest {read} fits within {limit}",
		"",
		"give more of it, or make the rest of the plan smaller",
	},
	"find.unused-yarn": {
		"{yarn} is used nowhere in this plan",
		"",
		"name the yarn in the warp or the weft",
	},
}
