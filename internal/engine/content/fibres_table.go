package content

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Allowance is the moisture that law agrees upon for a fibre: a share of its dry weight.
type Allowance struct {
	Share  qty.Rat
	Known  bool // false where the rules agree on none; the share is then 0
	Assume bool // one of several, because the yarn does not say which
}

// AllowanceOf gives the allowance of a fibre.
func AllowanceOf(f yarn.Fibre) Allowance {
	known := knownFibres[f.Name]
	return Allowance{qty.Frac(known.allowance, 10000), known.allowance > 0, known.assumed}
}

// named gives the name of a fibre on a label.
func named(f yarn.Fibre, form Form) string {
	known := knownFibres[f.Name]
	name := known.eu
	if form == US && known.us != "" {
		name = known.us
	}
	if name == "" {
		return f.Name
	}
	return name
}

// knownFibre is what the rules say of a fibre. An allowance of 0 means that there is none.
type knownFibre struct {
	allowance int64  // in hundredths of a per cent
	assumed   bool   // it depends on what a yarn does not say
	eu, us    string // its name on a label; us as eu, eu as the yarn's, where not said
}

// knownFibres are the fibres by the names of package yarn. Allowances are those of Regulation
// (EU) No 1007/2011, Annex IX. Wool of which nobody says whether it was combed or carded has
// 17 %, as the footnote there has it; of other fibres with two values the one marked assumed
// is taken. Names are those of its Annex I and of 16 CFR 303.7, both from memory.
var knownFibres = map[string]knownFibre{
	"cotton":            {allowance: 850},
	"mercerised cotton": {allowance: 1050, eu: "cotton"},
	"kapok":             {allowance: 1090},

	"linen":    {allowance: 1200},
	"hemp":     {allowance: 1200, eu: "true hemp", us: "hemp"},
	"ramie":    {allowance: 850},
	"nettle":   {},
	"jute":     {allowance: 1700},
	"sunn":     {allowance: 1200},
	"abaca":    {allowance: 1400},
	"sisal":    {allowance: 1400},
	"henequen": {allowance: 1400},
	"coir":     {allowance: 1300},

	"wool":           {allowance: 1700, assumed: true},
	"worsted wool":   {allowance: 1825, eu: "wool"},
	"woollen wool":   {allowance: 1700, eu: "wool"},
	"superwash wool": {allowance: 1700, assumed: true, eu: "wool"},
	"merino wool":    {allowance: 1700, assumed: true, eu: "wool"},
	"alpaca":         {allowance: 1700, assumed: true},
	"llama":          {allowance: 1700, assumed: true},
	"vicuna":         {allowance: 1700, assumed: true},
	"mohair":         {allowance: 1700, assumed: true},
	"cashmere":       {allowance: 1700, assumed: true},
	"angora":         {allowance: 1700, assumed: true},
	"camel hair":     {allowance: 1700, assumed: true, eu: "camel"},
	"yak":            {allowance: 1700, assumed: true},
	"goat hair":      {allowance: 1700, assumed: true},
	"horsehair":      {allowance: 1500, assumed: true},

	"silk":        {allowance: 1100},
	"reeled silk": {allowance: 1100, eu: "silk"},
	"spun silk":   {allowance: 1100, eu: "silk"},
	"silk noil":   {allowance: 1100, eu: "silk"},
	"tussah silk": {allowance: 1100, eu: "silk"},

	"viscose":       {allowance: 1300, us: "rayon"},
	"lyocell":       {allowance: 1300},
	"modal":         {allowance: 1300},
	"cupro":         {allowance: 1300},
	"acetate":       {allowance: 900},
	"triacetate":    {allowance: 700},
	"paper":         {allowance: 1375},
	"acrylic":       {allowance: 200},
	"modacrylic":    {allowance: 200},
	"polyamide":     {allowance: 625, assumed: true, us: "nylon"},
	"polyester":     {allowance: 150},
	"polypropylene": {allowance: 200, us: "olefin"},
	"polylactide":   {allowance: 150},
	"elastane":      {allowance: 150, us: "spandex"},
	"metallic":      {allowance: 200, eu: "metal fibre", us: "metallic"},
}
