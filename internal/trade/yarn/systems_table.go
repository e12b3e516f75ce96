package yarn

import "sley/internal/trade/qty"

// GristSystem is the system of a count that was written as a plain grist, such
// as 3360 yd/lb. Its number is kept in tex.
const GristSystem SystemID = "grist"

var gristSystem = System{
	ID: GristSystem, Name: "plain grist", Symbols: []string{"grist"}, Direct: true,
	Length: 1000 * qty.Metre, Mass: qty.Gram, Source: "metres and grams, yards and pounds as written",
}

// Sources of the definitions.
const (
	srcD2260   = "ASTM D2260-03(2013), table 1"
	srcUnits   = "GNU Units definitions file"
	srcSchool  = "TextileSchool, Yarn conversions"
	srcBlanco  = "A. E. Blanco, Piece Goods Manual"
	srcTaylor  = "John T. Taylor, Cotton Weaving and Designing, 6th ed., web pages 238-239"
	srcBrooks  = "American Correspondence School of Textiles, Calculations, Part IV (C. P. Brooks, 1898)"
	srcTexCalc = "textilecalculations.com, worked problems"
	srcMemory  = "from memory of the ISO 2947 and BS 947 annex lists"
)

// systemsTable is the count systems, each by an exact length and an exact
// mass. A dram is 1/16 oz and an old silk denier 3/1600 oz; neither is a whole
// number of nanograms, so their lengths are multiplied instead.
var systemsTable = []System{
	{
		ID: "tex", Name: "tex", Symbols: []string{"tex"}, Direct: true,
		Length: 1000 * qty.Metre, Mass: qty.Gram, Plies: Multiplied,
		Source: srcUnits + "; " + srcSchool,
	},
	{
		ID: "dtex", Name: "decitex", Symbols: []string{"dtex", "decitex", "drex"}, Direct: true,
		Length: 10_000 * qty.Metre, Mass: qty.Gram, Plies: Multiplied, Source: srcSchool,
	},
	{
		ID: "denier", Name: "denier", Symbols: []string{"den", "denier", "deniers"}, Direct: true,
		Length: 9000 * qty.Metre, Mass: qty.Gram, Plies: Multiplied,
		Source: srcD2260 + "; " + srcUnits,
	},
	{
		ID: "metric", Name: "metric count", Symbols: []string{"Nm", "metric", "metric count"},
		Length: 1000 * qty.Metre, Mass: qty.Kilogram, Plies: EitherOrder,
		Source: srcD2260 + "; " + srcUnits,
	},
	{
		ID: "cotton", Name: "English cotton count",
		Symbols: []string{
			"Ne", "NeC", "cotton", "cottons", "cotton count", "English cotton",
			"pearl cotton", "mercerised cotton", "mercerized cotton", "unmercerised cotton", "unmercerized cotton",
		},
		Length: 840 * qty.Yard, Mass: qty.Pound, Plies: CountThenPlies,
		Source: srcD2260 + "; " + srcUnits + "; " + srcSchool,
	},
	{
		ID: "spun-silk", Name: "spun silk count", Symbols: []string{"spun silk", "spun silk count"},
		Length: 840 * qty.Yard, Mass: qty.Pound, Plies: AlreadyFolded,
		Source: srcD2260 + "; plies: " + srcTaylor,
	},
	{
		ID: "worsted", Name: "worsted count",
		Symbols: []string{"worsted", "Nw", "NeW", "NeK", "worsted count"},
		Length:  560 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder,
		Source: srcD2260 + "; " + srcUnits,
	},
	{
		ID: "lea", Name: "linen lea",
		Symbols: []string{"lea", "leas", "NeL", "linen", "linens", "linen lea", "flax"},
		Length:  300 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder,
		Source: srcD2260 + "; " + srcUnits,
	},
	{
		ID: "run", Name: "American woollen run",
		Symbols: []string{"run", "runs", "US run", "woollen run", "woolen run"},
		Length:  1600 * qty.Yard, Mass: qty.Pound, Plies: CountOrFraction,
		Source: srcD2260 + "; " + srcBrooks,
	},
	{
		ID: "cut", Name: "American woollen cut",
		Symbols: []string{"cut", "cuts", "US cut", "woollen cut", "woolen cut"},
		Length:  300 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder, Source: srcTexCalc,
	},
	{
		ID: "yorkshire", Name: "Yorkshire woollen skein",
		Symbols: []string{"YSW", "Yorkshire", "Yorkshire skein", "Yorkshire skeins", "woollen skein", "woollen skeins"},
		Length:  1536 * qty.Yard, Mass: 6 * qty.Pound, Plies: EitherOrder,
		Source: srcBlanco + "; " + srcTexCalc,
	},
	{
		ID: "galashiels", Name: "Galashiels cut", Symbols: []string{"Galashiels", "Galashiels cut", "Galashiels cuts"},
		Length: 300 * qty.Yard, Mass: 24 * qty.Ounce, Plies: EitherOrder, Source: srcBlanco,
	},
	{
		ID: "french", Name: "French cotton count", Symbols: []string{"Nf", "French", "French cotton"},
		Length: 1000 * qty.Metre, Mass: 500 * qty.Gram, Plies: EitherOrder,
		Source: srcBlanco + "; C. P. Brooks, Cotton Manufacturing, web page 91",
	},
	{
		ID: "typp", Name: "thousand yards per pound", Symbols: []string{"typp"},
		Length: 1000 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder, Source: srcUnits,
	},
	{
		ID: "ypp", Name: "yards per pound", Symbols: []string{"ypp"},
		Length: qty.Yard, Mass: qty.Pound, Plies: CountThenPlies,
		Source: srcD2260 + "; Conneaut, Common measures & conversions",
	},
	{
		ID: "jute", Name: "jute count",
		Symbols: []string{"lb/spyndle", "lb per spyndle", "spyndle", "jute"}, Direct: true,
		Length: 14_400 * qty.Yard, Mass: qty.Pound, Plies: Multiplied, Source: srcTexCalc,
	},
	{
		ID: "grain", Name: "American grain count",
		Symbols: []string{"grain", "grains", "grains per 120 yd", "American grain"}, Direct: true,
		Length: 120 * qty.Yard, Mass: qty.Grain, Plies: Multiplied, Source: srcD2260,
	},
	{
		ID: "asbestos", Name: "American asbestos count", Symbols: []string{"asbestos"},
		Length: 100 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder, Source: srcTexCalc,
	},
	{
		ID: "dram", Name: "silk dram count",
		Symbols: []string{"dram", "drams", "drams per 1000 yd", "silk dram", "silk drams"}, Direct: true,
		Length: 16 * 1000 * qty.Yard, Mass: qty.Ounce, Plies: Multiplied,
		Source: srcTaylor + "; A. Wolfensberger, Theory of Silk Weaving, 2nd ed., 1921",
	},
	{
		ID: "old-denier", Name: "old silk denier",
		Symbols: []string{"old denier", "old deniers", "old silk denier"}, Direct: true,
		Length: 1600 * 520 * qty.Yard, Mass: 3 * qty.Ounce, Plies: Multiplied, Source: srcTaylor,
	},
	{
		ID: "alloa", Name: "Alloa woollen count", Symbols: []string{"Alloa"},
		Length: 11_520 * qty.Yard, Mass: 24 * qty.Pound, Plies: EitherOrder, Source: srcMemory, Status: Memory,
	},
	{
		ID: "west-of-england", Name: "West of England woollen count", Symbols: []string{"West of England"},
		Length: 320 * qty.Yard, Mass: qty.Pound, Plies: EitherOrder, Source: srcMemory, Status: Memory,
	},
	{
		ID: "hawick", Name: "Hawick woollen count", Symbols: []string{"Hawick"},
		Length: 300 * qty.Yard, Mass: 26 * qty.Ounce, Plies: EitherOrder, Source: srcMemory, Status: Memory,
	},
}

// openWords are names of fibres that leave the count system open, with the
// systems that yarn of such a name is sold by. Common practice, no source;
// 20/2 silk at about 5,000 yd/lb, which is Nm 20/2, is in "Yarn systems"
// (lehmkuhl-wus.de, 2020).
var openWords = map[string][]SystemID{
	"silk":     {"metric", "spun-silk"},
	"wool":     {"worsted", "metric"},
	"woollen":  {"metric", "run", "cut", "yorkshire", "galashiels"},
	"woolen":   {"metric", "run", "cut"},
	"cottolin": {"lea", "cotton"},
	"hemp":     {"lea", "metric"},
}
