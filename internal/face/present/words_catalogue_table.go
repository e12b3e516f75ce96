package present

// catalogueTables hold the words of the catalogue of weaves.
var catalogueTables = []map[string]CatalogueWords{plainFamilyWords, twillFamilyWords, satinFamilyWords, laceFamilyWords, textureFamilyWords, blockFamilyWords, facedFamilyWords, layerFamilyWords, pileFamilyWords, colourFamilyWords}

// familyWords head the families.
var familyWords = map[string]CatalogueWords{
	"plain":     {"Plain weave, ribs and baskets", "Two sheds, opened in turn; neighbours may work together.", ""},
	"twill":     {"Twills", "Each pick is the one before, moved on, so that the binds lie in slanting lines.", ""},
	"satin":     {"Satins", "Binds lie scattered, so that floats make a smooth face.", ""},
	"lace":      {"Laces, huck and spots", "Plain weave with floats that draw threads together and leave openings, or stand as spots.", ""},
	"texture":   {"Waffle, honeycomb, crepe and cords", "Floats that stand up, sink in or break up the face.", ""},
	"block":     {"Block weaves", "A figure of blocks, written short as a profile draft.", ""},
	"faced":     {"Weft-faced and warp-faced weaves", "One thread covers the other.", ""},
	"layer":     {"Double and backed cloths", "Two cloths or more at once, or one with threads of its own for each face.", ""},
	"pile":      {"Cut pile", "Floats that are cut after weaving.", ""},
	"colouring": {"Colour-and-weave", "The order of two colours or more makes the pattern on a simple weave.", ""},
}

var plainFamilyWords = map[string]CatalogueWords{
	"plain":         {"plain weave", "Every pick goes over one end and under the next, and the next pick the other way. More than two shafts spread the ends so that heddles are not crowded.", "towels, linings, warps of any yarn; the ground of many other weaves"},
	"warp-rib":      {"warp rib", "Plain weave with several picks in each shed, so that ends float over them and ribs run from edge to edge. With unequal numbers, broad and narrow ribs lie in turn.", "upholstery, bags and borders that must be firm across"},
	"weft-rib":      {"weft rib", "Plain weave with neighbouring ends that rise together, so that picks float over them and ribs run along the cloth. With unequal numbers, broad and narrow ribs lie in turn.", "soft stripes in towels and blankets; selvedge borders"},
	"basket":        {"basket", "Plain weave of groups: several ends and several picks work as one, and make squares.", "drapes, summer blankets, cloths that should hang softly"},
	"uneven-basket": {"uneven basket", "A basket whose groups are of different sizes, so that large squares are framed by bars and small squares.", "towels and furnishing cloths with a woven grid"},
	"rib-squares":   {"ribs in squares", "Squares of warp rib and of weft rib lie like a draughtboard, so that ribs run along in one and across in the next.", "cushions and table mats in one colour"},
}

var twillFamilyWords = map[string]CatalogueWords{
	"twill":                 {"twill", "Each pick goes over and under the same numbers of ends as the one before, moved on by one, so that a line climbs at an even slant.", "blankets, suitings, jeans, scarves: cloth that drapes and wears well"},
	"broken-twill":          {"broken twill", "A twill whose line is cut after so many ends and goes on further along, in the same direction.", "clothing and blankets in which a long slanting line would be too plain"},
	"herringbone":           {"herringbone", "A twill that turns back after so many ends; half a repeat is left out at each turn, so that floats end there and the halves look cut apart.", "coats, blankets and scarves"},
	"herringbone-across":    {"herringbone across", "A herringbone whose line turns in the treadling: the stripes lie from edge to edge.", "borders and blankets on a straight threading"},
	"herringbone-diamond":   {"broken diamond twill", "A herringbone both in the threading and in the treadling: diamonds whose centres are split, without long floats.", "blankets and coats; a sturdier diamond than that of a point"},
	"undulating-twill":      {"undulating twill", "Ends are threaded singly, then doubled and more on the same shaft, and back, so that the line grows flat and steep in waves.", "scarves and curtains; sley doubled ends closer for the curve to show"},
	"undulating-treadling":  {"undulating treadling", "The same treadle is used once, then twice and more, and back, so that the line of a twill swings along the cloth.", "waves on any straight warp; beat lightly where picks repeat"},
	"shaded-twill":          {"shaded twill", "The twill changes step by step from one end up in each repeat to all but one, so that the weft fades into the warp.", "shading in two colours"},
	"twill-squares":         {"twill in squares", "Right and left twill lie in squares like a draughtboard.", "blankets and shawls that catch the light by turns"},
	"point-twill":           {"point twill", "The threading turns back at its last shaft and comes again to the first: the line goes up and down in zigzags across.", "towels, scarves and runners"},
	"point-treadled-twill":  {"point-treadled twill", "The treadling turns back on a straight threading: the zigzags run along the cloth.", "borders on a straight warp"},
	"diamond-twill":         {"diamond twill", "Both threading and treadling turn back: the lines close into diamonds. Small ones are called bird's-eye, large ones goose-eye.", "towels, blankets and shawls"},
	"rosepath":              {"rosepath", "A point threading in which the first shaft comes again after the last, treadled the same way, for small roses and crosses.", "borders on linen and wool, rugs, ribbons"},
	"advancing-twill":       {"advancing twill", "Short runs of a straight threading, each beginning a shaft or more further on, treadled as threaded: long curves at a gentle slope.", "shawls and scarves on eight shafts and more"},
	"advancing-points":      {"advancing points", "Small points, each beginning further on, treadled as threaded: rows of zigzags that climb together.", "shawls and scarves on eight shafts and more"},
	"steep-twill":           {"steep twill", "Only every second, third or further end of a straight twill is kept, so that the line climbs faster than the ends go on.", "whipcords, trousers and coats; a line that stands out"},
	"reclining-twill":       {"reclining twill", "Only every second, third or further pick of a straight twill is kept, so that the line lies flat.", "cloths that show the weft"},
	"rearranged-twill":      {"rearranged twill", "The ends of a straight twill are put into the order of a satin, so that its line dissolves into small groups.", "fine suitings and crepe-like cloths"},
	"corkscrew":             {"warp corkscrew", "Ends of an uneven twill lie half a repeat apart in turn, so close that two slanting lines of warp cover the weft.", "firm bands, worsteds and upholstery with two colours of warp"},
	"weft-corkscrew":        {"weft corkscrew", "The corkscrew with warp and weft exchanged: two slanting lines of weft cover the warp.", "rugs and cushions with two wefts in turn"},
	"combined-twill":        {"combined twill, end and end", "Ends of two twills lie in turn, one of each, so that two lines run beside one another.", "suitings and upholstery on eight shafts"},
	"combined-twill-across": {"combined twill, pick and pick", "Picks of two twills are woven in turn on one straight threading.", "blankets and wraps with two wefts"},
}

var satinFamilyWords = map[string]CatalogueWords{
	"satin":              {"satin", "Each pick is bound by one end, each time a fixed move further on, so that no two binds touch and one thread covers the face.", "smooth, lustrous cloth of fine yarn; damask"},
	"broken-crow":        {"broken crow", "Four shafts, one up, in an order that breaks the line of the twill after every second: the nearest that four shafts come to a satin.", "soft blankets, linings and napped cloth"},
	"satin-6":            {"satin of six", "Six ends have no steady move that makes a satin, so the binds lie in an order of changing steps that keeps them apart.", "satin stripes on six shafts"},
	"granite":            {"granite weave", "A satin with further ends lifted beside each bind, so that small grains lie scattered.", "hard-wearing dress and furnishing cloth without a line"},
	"shaded-satin":       {"shaded satin", "A satin to whose binds one end is added in each repeat, until it has become its other face.", "shading in two colours, smoother than by twills"},
	"satin-stripe":       {"satin stripe", "Stripes of warp satin and of plain weave lie side by side. Sley the satin closer.", "towels, shirts and bed linen"},
	"double-faced-satin": {"double-faced satin", "Two wefts in turn: one floats on the front and one on the back, on one warp, so that both faces are smooth and may differ in colour.", "blankets and ribbons with two right sides"},
}

var laceFamilyWords = map[string]CatalogueWords{
	"mock-leno":       {"mock leno", "Squares of a few ends and picks in which the outer threads float and the inner ones weave plain; the groups draw together and leave holes.", "curtains, summer shawls and open table linen; leave a dent empty between groups"},
	"ms-and-os":       {"M's and O's", "Two blocks on four shafts: while one weaves plain, the picks of the other float over groups of ends, so that its threads swell into rounds. It has no true tabby.", "towels, table linen and light blankets"},
	"huck":            {"huck, weft floats", "Half units of five ends, with the ground on shafts 1 and 2 in turn. In pattern blocks five picks float over one half unit, then over the other; elsewhere lies plain weave.", "hand towels and table linen that must soak up water"},
	"huck-lace":       {"huck lace", "As huck, and where the weft floats in one half unit the warp floats in the other, so that threads part and leave openings.", "curtains, table linen, shawls"},
	"huck-half-units": {"huck lace in half units", "Each half unit of five ends is a block of its own, with its ground on shaft 1 or 2 in turn, so that blocks take a shaft each and odd and even blocks lie side by side.", "huck lace of many blocks on few shafts"},
	"bronson-lace":    {"Bronson lace", "Units of six ends, every other one on shaft 1 and the last on shaft 2. In pattern blocks two picks of six pass over five ends, and openings form where units meet.", "table linen and curtains with windows of lace in plain cloth"},
	"spot-bronson":    {"spot Bronson", "Every other end is on shaft 1, the others on the shaft of the block. The weft floats over the blocks that are left down and makes spots on plain weave.", "small figures on dress cloth and towels; floats are as wide as the block"},
}

var textureFamilyWords = map[string]CatalogueWords{
	"waffle":             {"waffle", "On a point both ways, lines of single binds part the cloth into cells; warp floats in one and weft floats in the next, which shrink into hollows when washed.", "towels, face cloths and warm blankets; it draws in a great deal"},
	"brighton-honeycomb": {"Brighton honeycomb", "On a straight threading, a single line one way and a double line the other part the cloth into cells of two sizes, with floats of both threads.", "towels and bed covers; a waffle that needs no point"},
	"honeycomb":          {"honeycomb", "One block weaves plain while the ends of the other lie idle on top; two thick picks from edge to edge then bend round the cells, and the blocks change places.", "cushions and hangings; the back has long floats"},
	"crepe-superposed":   {"crepe, satin over plain weave", "An end is up where plain weave or a satin would lift it; the satin's marks join the specks of plain weave at random.", "dress cloth with a pebbled face"},
	"crepe-crossed":      {"crepe of two twills", "A right and a left twill lie over one another; an end is up where just one of them lifts it.", "a broken face with small figures"},
	"crepe-turned":       {"crepe, motif turned", "A small motif stands in four squares, each turned by a quarter from the one before, so that no line goes through.", "dress and curtain cloth without a direction"},
	"crepe-reversed":     {"crepe, motif reversed", "A small motif and its other face, mirrored, lie in squares like a draughtboard, so that warp and weft show alike.", "balanced crepes for clothing"},
	"bedford-cord":       {"Bedford cord", "Cords run along the cloth. Two picks weave the face of every second cord and float behind the others, the next two the other way; grooves lie between.", "upholstery, trousers and warm bed covers"},
	"cord-across":        {"cord across", "Cords run from edge to edge: the ends weave the face of one cord and float behind the next.", "hat bands, bags and cushions"},
}

var blockFamilyWords = map[string]CatalogueWords{
	"turned-twill-3":      {"turned twill, three shafts to the block", "Blocks of 2/1 twill lie beside blocks of 1/2 twill: the warp shows in pattern, the weft in background, and the back is the other way.", "table linen and blankets in two colours"},
	"turned-twill-4":      {"turned twill, four shafts to the block", "Blocks of 3/1 twill lie beside blocks of 1/3 twill, of the other hand, so that floats end where blocks meet.", "table linen, towels and blankets in two colours"},
	"turned-broken-twill": {"turned broken twill", "Blocks of 3/1 and of 1/3 broken twill: it looks like damask and takes four shafts to the block. Handbooks call it false damask too.", "fine table linen"},
	"turned-satin-5":      {"damask, five shafts to the block", "Blocks of warp satin of five lie beside blocks of weft satin, and light falls on them differently even in one colour.", "table linen of fine flax or cotton"},
	"turned-satin-8":      {"damask, eight shafts to the block", "Damask in satin of eight: smoother than that of five, and for finer yarn.", "the finest table linen"},
	"overshot":            {"overshot", "A thick pattern weft floats over blocks of ends between picks of plain weave. Neighbouring blocks share a shaft, where every other end covers the weft: half-tone.", "coverlets, runners, cushions"},
	"monks-belt":          {"monk's belt", "A pattern weft floats over whole blocks between picks of plain weave. Blocks share no shafts, so there is no half-tone.", "borders, curtains and aprons; floats are as wide as the block"},
	"summer-and-winter":   {"summer and winter", "Two tie-downs bind a pattern weft over three ends and under one in pattern, and the other way in background, on plain weave. The back shows the colours exchanged.", "coverlets and cushions of many blocks without long floats"},
	"crackle":             {"crackle", "Blocks of small points over three neighbouring shafts with a pattern weft on plain weave. No float is longer than three, and every shed shows in two blocks.", "curtains, upholstery and coats with soft edges between blocks"},
}

var facedFamilyWords = map[string]CatalogueWords{
	"weft-faced-plain": {"weft-faced plain weave", "Plain weave with ends so far apart that the beaten weft covers them; colours lie in bands.", "rugs, tapestry ground, bags"},
	"krokbragd":        {"krokbragd", "Three shafts in a point. Three picks fill one line of the cloth between them, and each colour shows where its shaft is left down.", "rugs, wall hangings, bands"},
	"boundweave":       {"boundweave", "Weft-faced weave on the rosepath threading: each shed is followed by its opposite in another colour.", "rugs and hangings with small figures"},
	"weft-faced-twill": {"weft-faced twill", "A twill on ends set far apart, so that the beaten weft covers them.", "thick rugs and saddle cloths"},
	"taquete":          {"taqueté", "Threaded as summer and winter and woven without tabby: of two wefts in turn one shows in pattern and the other in background, and the ends are covered.", "rugs and bags with blocks in two colours"},
	"rep":              {"rep in blocks", "Ends of two colours in turn stand so close that they cover the weft. A thick and a thin pick in turn bring one colour or the other to the top in each block.", "rugs, mats and runners with clear-cut blocks"},
}

var layerFamilyWords = map[string]CatalogueWords{
	"double-cloth":          {"double cloth", "Two layers of plain weave, one over the other, each with a shuttle of its own.", "pockets, quilted cloth, hangings of two faces"},
	"tube":                  {"tube", "Two layers of plain weave with one shuttle that goes over and under in turn, so that both edges are closed.", "bags and cushions without seams"},
	"double-width":          {"double width", "Two layers with one shuttle that passes both layers before it turns at one edge: the cloth opens to twice the width of the loom.", "blankets wider than the loom"},
	"many-layers":           {"many layers", "Three layers of plain weave or more, each on two shafts of its own.", "cloth folded several times over, nested pockets"},
	"double-twill":          {"double twill", "Two layers of a twill, one over the other.", "thick reversible blankets and coats"},
	"stitched-double-cloth": {"stitched double cloth", "Double cloth in which now and then an end of the layer beneath is lifted over a pick of the one on top, which holds them together.", "coats and rugs; cloth of two faces that does not part"},
	"weft-backed-twill":     {"weft-backed twill", "One warp and two wefts in turn: one is bound in twill on the front, the other on the back, hidden from one another.", "warm blankets with two right sides"},
	"warp-backed-twill":     {"warp-backed twill", "One weft and two warps in turn: one shows on the front, the other on the back.", "coats and trousers of some weight"},
	"double-cloth-blocks":   {"double cloth in blocks", "Two layers in two colours change places from block to block; the edges of blocks hold them together.", "hangings, cushions and coverlets with the colours exchanged on the back"},
}

var pileFamilyWords = map[string]CatalogueWords{
	"corduroy":  {"corduroy", "Each pick of plain weave is followed by pile picks bound by single ends side by side; their floats lie in rows, and are cut along the middle after weaving.", "cushions, coats and rugs with cords of pile"},
	"velveteen": {"velveteen", "As corduroy, with each pile pick bound some ends further on, so that the cut pile covers the cloth evenly.", "soft clothing and cushions"},
}

var colourFamilyWords = map[string]CatalogueWords{
	"houndstooth":      {"houndstooth", "Four dark and four light threads each way on a 2/2 twill, so that the checks have jagged teeth.", "scarves, coats and blankets"},
	"shepherds-check":  {"shepherd's check", "Equal dark and light stripes of four, six, eight threads or more each way on a 2/2 twill: plain squares, with mixed ones between.", "plaids, wraps and blankets"},
	"gun-club-check":   {"gun club check", "A shepherd's check in which every second dark stripe is of a third colour.", "jackets and blankets"},
	"glen-check":       {"glen check", "Squares of four and four lie beside squares of two and two on a 2/2 twill, both ways.", "suits, coats, wraps"},
	"birds-eye":        {"bird's-eye", "Two dark and two light threads each way on a 2/2 twill: small dots in rows.", "fine suitings, scarves"},
	"step-pattern":     {"step pattern", "One dark and one light thread each way on a 2/2 twill: thin lines climb in steps.", "suitings, scarves"},
	"gingham":          {"gingham", "Equal dark and light stripes each way on plain weave: dark, light and mixed squares.", "towels, aprons, shirts"},
	"windowpane-check": {"windowpane check", "Thin light lines far apart, both ways, on a dark ground.", "coats, blankets, dish towels"},
	"log-cabin":        {"log cabin", "Dark and light threads in turn on plain weave, both ways; two of one colour meet where blocks do, so that thin lines run along in one block and across in the next.", "mats, scarves, rugs, on two shafts"},
	"hairline":         {"hairline", "Dark and light threads in turn both ways on plain weave: lines one thread wide, along or across.", "suitings and scarves"},
	"shadow-weave":     {"shadow weave", "Dark and light threads in turn both ways; each light one is up where its dark neighbour is not, and thin lines change direction along the figure of a twill.", "scarves, cushions, jackets"},
	"pick-and-pick":    {"pick and pick", "Two colours of weft in turn on covered ends: each colour stands in columns.", "rugs and tapestry"},
	"warp-faced-bars":  {"warp-faced bars", "Ends of two colours in turn, so close that they cover the weft: bars of each colour from edge to edge, that change places where two ends of one colour meet.", "bands, belts, straps"},
	"colour-and-weave": {"colour-and-weave", "A twill or plain weave with any orders of dark and light along the warp and the weft.", "trying out stripes and checks"},
}

// paramWords say the parameters; those of one entry alone stand under the entry too.
var paramWords = map[string]struct{ name, says string }{
	"added":          {"ends added", "how many further ends are lifted beside each bind"},
	"apart":          {"threads between stitches", "the repeat of each layer, in which two stitches lie"},
	"by":             {"advance", "how many shafts further on each run begins"},
	"draw":           {"draw", "the order in which the shafts are threaded"},
	"ends":           {"ends", "how many ends the repeat has"},
	"face":           {"face", "which thread covers the face"},
	"feet":           {"treadling", "whether one foot works, or two on a skeleton tie-up, or no treadles at all"},
	"ground":         {"ground", "the weave of the ground"},
	"hand":           {"hand", "which way the line climbs"},
	"layers":         {"layers", "how many layers lie one over another"},
	"line":           {"threads of a line", "how many threads a light line has"},
	"lines":          {"lines", "whether lines run along or across"},
	"move":           {"move", "how many ends each bind lies further on than the one before"},
	"over":           {"over and under", "how many ends a pick passes beneath and above in turn, those on top first"},
	"pairs":          {"pairs", "the repeat has twice as many ends and one more, and each end is over one pick more than it is under"},
	"picks":          {"picks", "how many picks work as a group"},
	"plain":          {"ends of plain weave", "how many ends the plain stripe has"},
	"quarter":        {"a quarter", "a quarter of the ends and picks of the repeat"},
	"run":            {"run", "how many ends, or picks, lie in one run before the line turns or breaks"},
	"runs":           {"runs", "how many times the shafts are run through before the point"},
	"second":         {"second twill", "over and under of the second twill"},
	"shafts":         {"shafts", "how many shafts it is threaded on"},
	"side":           {"side", "ends and picks of a square"},
	"skip":           {"shafts left out", "how many shafts are left out where the line breaks"},
	"swell":          {"swell", "how many threads of the same shaft, or treadle, lie together where the line is flattest or steepest"},
	"times":          {"times", "how often the small repeat comes"},
	"units":          {"blocks across", "the block of each unit of ends, as \"A B C B\""},
	"warp":           {"colours of the warp", "the order of dark and light ends"},
	"weft":           {"colours of the weft", "the order of dark and light picks"},
	"weft-units":     {"blocks along", "the blocks that weave pattern in each unit of picks, as \"1+3 2\"; left empty, as they are threaded"},
	"weft-rib ends":  {"ends", "how many neighbouring ends rise together, group by group"},
	"warp-rib picks": {"picks", "how many picks lie in one shed, group by group"},

	"basket ends":                 {"ends", "how many ends work as a group"},
	"uneven-basket ends":          {"ends", "how many ends each group has, in turn"},
	"uneven-basket picks":         {"picks", "how many picks each group has, in turn"},
	"steep-twill move":            {"move", "which ends of the straight twill are kept: every second, third or further one"},
	"reclining-twill move":        {"move", "which picks of the straight twill are kept: every second, third or further one"},
	"rearranged-twill move":       {"move", "how far apart in the straight twill neighbouring ends lie"},
	"satin-stripe ends":           {"ends of the satin", "how many ends one repeat of the satin has"},
	"mock-leno ends":              {"ends", "ends and picks of a square"},
	"ms-and-os ends":              {"ends", "how many ends a pick floats over"},
	"honeycomb ends":              {"ends", "how many ends a cell has"},
	"honeycomb picks":             {"picks", "how many picks a cell has"},
	"crepe-turned ends":           {"ends", "ends and picks of the motif"},
	"crepe-reversed ends":         {"ends", "ends and picks of the motif"},
	"bedford-cord ends":           {"ends", "how many ends a cord has, without the two of the groove"},
	"cord-across ends":            {"picks", "how many picks a cord has, without the two of the groove"},
	"weft-faced-plain picks":      {"pairs of picks", "how many pairs of picks a band has"},
	"corduroy picks":              {"pile picks", "how many pile picks follow each pick of plain weave"},
	"velveteen picks":             {"pile picks", "how many pile picks follow each pick of plain weave"},
	"shepherds-check ends":        {"threads of a stripe", "how many threads each stripe has"},
	"gun-club-check ends":         {"threads of a stripe", "how many threads each stripe has"},
	"gingham ends":                {"threads of a stripe", "how many threads each stripe has"},
	"windowpane-check ends":       {"threads between lines", "how many dark threads lie between two lines"},
	"log-cabin ends":              {"threads of a block", "how many threads each block has"},
	"warp-faced-bars ends":        {"ends of a block", "how many ends each block has"},
	"twill-squares times":         {"times", "how many repeats of the twill a square has"},
	"glen-check times":            {"times", "how often four and four come; two and two come twice as often"},
	"krokbragd times":             {"times", "how many lines of three picks are woven"},
	"boundweave times":            {"times", "how many pairs of picks each shed and its opposite have"},
	"many-layers layers":          {"layers", "how many layers lie one over another"},
	"herringbone-across run":      {"run", "how many picks lie in one run before the line turns"},
	"herringbone-diamond run":     {"run", "how many threads lie in one run before the line turns, both ways"},
	"shadow-weave shafts":         {"shafts", "how many shafts the figure is drawn on"},
	"double-faced-satin ends":     {"ends", "how many ends one repeat of the satin has"},
	"point-treadled-twill runs":   {"runs", "how many times the treadles are run through before the point"},
	"undulating-treadling swell":  {"swell", "how many picks of the same treadle lie together where the line is steepest"},
	"combined-twill-across over":  {"first twill", "over and under of the odd picks"},
	"combined-twill over":         {"first twill", "over and under of the odd ends"},
	"crepe-crossed over":          {"right twill", "over and under of the twill to the right"},
	"crepe-crossed second":        {"left twill", "over and under of the twill to the left"},
	"stitched-double-cloth apart": {"threads between stitches", "ends and picks of each layer in the repeat, in which two stitches lie"},
}

// optionWords say the choices.
var optionWords = map[string]string{
	"straight": "in order", "skip": "from each half in turn", "odd-then-even": "the odd ones, then the even ones",
	"right": "to the right", "left": "to the left",
	"weft": "the weft", "warp": "the warp",
	"along": "along the cloth", "across": "from edge to edge",
	"plain": "plain weave", "twill": "2/2 twill",
	"one": "one foot", "two": "two feet", "none": "no treadles",
}

// settWords say what a sett goes by.
var settWords = map[string]string{
	"by-interlacings": "ends and interlacings",
	"as-plain":        "as its plain ground",
	"layer":           "plain weave for each layer",
	"two-layers":      "plain weave, twice",
	"warp-faced":      "ends cover the weft",
	"weft-faced":      "the weft covers the ends",
}

// catalogueWords are what is wrong with the parameters of a weave, or with a profile.
var catalogueWords = map[string]words{
	"catalogue.entry":     {"\"{read}\" is no weave of the catalogue", "", "look for it in the list of the catalogue"},
	"catalogue.parameter": {"\"{read}\" is nothing that this weave asks for", "", "it asks for {valid}"},
	"catalogue.number":    {"\"{read}\" is no whole number", "", "write a number from {least} to {most}"},
	"catalogue.range":     {"{read} is not from {least} to {most}", "", "write a number from {least} to {most}"},
	"catalogue.even":      {"{read} is odd", "half of it goes to each side", "write an even number"},
	"catalogue.choice":    {"\"{read}\" is not one of the choices", "", "write one of {valid}"},
	"catalogue.ratio":     {"\"{read}\" does not say over and under in turn", "", "write an even number of figures parted by strokes, as 2/2 or 3/1/1/3"},
	"catalogue.sum":       {"{read} makes {sum} ends, and the weave takes {least} to {most}", "", "write figures that add up to a number between"},
	"catalogue.apart":     {"with these figures the threads do not hold one another", "some of them lie over all the others wherever they cross, and would come off", "change one of the figures"},
	"catalogue.unbroken":  {"leaving out {read} brings the line back to where it was", "the line would not break, or the run would only repeat itself", "leave out another number of shafts, or change the run"},
	"catalogue.still":     {"an advance of {read} brings every run back to the same shafts", "", "advance by another number"},
	"catalogue.coprime":   {"a move of {read} does not come to all {ends} ends", "it shares a factor with the number of ends, or is as large", "write one of {valid}"},
	"catalogue.unlike":    {"this twill repeats on {sum} ends, and the other on {ends}", "ends or picks in turn need twills of the same length", "write figures that add up to {ends}"},
	"catalogue.no-satin":  {"{read} ends have no move that makes a satin", "every move shares a factor with them, or makes a twill", "take five ends, or seven and more; six have an entry of their own"},
	"catalogue.move":      {"a move of {read} makes no satin of {ends} ends", "it shares a factor with them, so that some ends are never bound, or makes a twill", "write one of {valid}"},
	"catalogue.wide":      {"the two twills come round together only after more ends than shafts can weave", "", "take twills whose lengths have a factor in common"},
	"catalogue.long":      {"the order makes more than {most} threads before it comes round", "", "write a shorter order"},

	"block.system":   {"\"{read}\" is no way to weave blocks", "", "the ways are {valid}"},
	"block.blocks":   {"{read} is no number of blocks from 1 to {most}", "", "write blocks as letters, A for the first"},
	"block.units":    {"the profile has {read} units here, and takes 1 to {most}", "", "write at least one unit, and look at the counts"},
	"block.unknown":  {"there is no block {read}: the profile has {blocks}", "", "write another letter, or thread that block too"},
	"block.in-turn":  {"unit {unit} is of block {read} and the next of block {next}, and half units of odd and even blocks must lie in turn", "plain weave would break where they meet", "put a block of the other kind between, or take whole units of huck"},
	"block.treadle":  {"there is no profile treadle {read}: there are {treadles}", "", "write another number, or tie that treadle"},
	"block.together": {"unit {unit} asks blocks {read} to weave pattern at once, and {system} weaves one at a time", "its blocks share shafts, and what one leaves down another lifts", "ask for one block in each unit, or take a weave whose blocks have shafts of their own"},
	"block.ground":   {"unit {unit} asks all blocks to weave pattern, and in {system} that lifts no end", "", "leave one block at least in background"},
	"block.shafts":   {"{read} blocks of {system} need {needs} shafts, and there are {shafts}", "", "take {fit} blocks, which fit, or a weave that needs fewer shafts for a block"},
	"block.treadles": {"with one foot this takes {read} treadles, and there are {treadles}", "", "use fewer combinations of blocks, work with two feet if a skeleton tie-up ({two} treadles) fits a rising shed, or weave by a lift plan on a table loom"},
	"block.two-feet": {"with one foot this takes {read} treadles, and there are {treadles}", "", "tie a skeleton of {two} treadles, binders apart from patterns, and press two at a time"},
}
