package yarn

// custom is how yarn of a fibre is counted where its label names no system.
type custom struct {
	fibres []string // by name; none: all of the class
	class  Class
	spun   Spinning // UnsaidSpinning: however it was spun
	below  int64    // only numbers below this; 0: any
	system SystemID
	source string // the id of a source
}

// customs are looked through from the first on. All are common practice, no source,
// but silk: that it is sold by the metric count now is in "Yarn systems"
// (lehmkuhl-wus.de, 2020). Cottolin is sold both as a fine linen and as a thick cotton;
// no cottolin is spun below 12 lea, and as a cotton it is below 12.
var customs = []custom{
	{fibres: []string{"cottolin"}, class: Cotton, below: 12, system: "cotton", source: "practice"},
	{fibres: []string{"cottolin"}, class: Cotton, system: "lea", source: "practice"},
	{class: Cotton, system: "cotton", source: "practice"},
	{fibres: []string{"linen", "hemp", "ramie", "nettle"}, class: Linen, system: "lea", source: "practice"},
	{class: Wool, spun: WorstedSpun, system: "worsted", source: "practice"},
	{class: Wool, system: "metric", source: "practice"},
	{class: Silk, system: "metric", source: "yarn-systems"},
	{fibres: []string{"viscose", "lyocell", "modal", "cupro"}, class: Other, system: "cotton", source: "practice"},
}

// unitWords go on with a count that is a plain grist.
var unitWords = []string{
	"/", "x", "×", "+", "per", "m", "yd", "yds", "yards", "metres", "meters", "m/kg", "yd/lb", "yds/lb",
	"g", "kg", "lb", "lbs", "oz", "grams", "gram", "pound", "pounds", "kilogram", "ounce", "ounces",
}

// dullWords say nothing of a yarn that its count and its fibre do not.
var dullWords = []string{"yarn", "yarns", "thread", "count", "of", "and", "ply", "2-ply", "3-ply", "4-ply", "2ply", "3ply", "4ply"}
