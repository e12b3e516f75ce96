package present

// quantityWords are for texts that cannot be read as a quantity, and for
// reeds.
var quantityWords = map[string]words{
	"number.missing":          {"\"{read}\" does not begin with a number", "", "write a number, as 12, 12.5, 1/2 or 4 1/2, and its unit"},
	"number.grouped":          {"\"{read}\" could be {decimal} or {whole}", "the comma is read as a decimal mark, but not before three digits", "write {decimal} or {whole}, without the comma"},
	"number.two-marks":        {"\"{read}\" has more than one decimal mark", "", "write one point or comma, and nothing between thousands"},
	"number.hyphen":           {"\"{read}\" could be a sum or a difference", "", "write \"{reading}\", with a space"},
	"number.too-long":         {"\"{read}\" has too many digits", "", "write at most 15 digits"},
	"number.zero-denominator": {"\"{read}\" is a fraction over nothing", "", "write a fraction, as 1/2"},
	"number.trailing":         {"\"{read}\" is left over after the number", "", "write the number alone"},
	"rounding.unknown":        {"\"{read}\" is not a way to round", "", "write nearest, up or down"},

	"length.no-unit":      {"\"{read}\" has no unit", "", "write the unit with the number, as \"{read} in\" or \"{read} cm\""},
	"length.unknown-unit": {"\"{read}\" is not a unit of length", "", "the units are mm, cm, m, in, ft and yd"},
	"length.negative":     {"\"{read}\" is less than nothing", "", "write the length without a minus"},
	"length.too-large":    {"\"{read}\" is longer than any length that can be reckoned with", "", "look at the number and its unit"},
	"length.trailing":     {"\"{read}\" is left over after the length", "", "write a length alone, as 28 in, 4 1/2 yd or 1 m 20 cm"},

	"mass.no-unit":      {"\"{read}\" has no unit", "", "write the unit with the number, as \"{read} g\" or \"{read} oz\""},
	"mass.unknown-unit": {"\"{read}\" is not a unit of weight", "", "the units are g, kg, oz and lb"},
	"mass.negative":     {"\"{read}\" is less than nothing", "", "write the weight without a minus"},
	"mass.too-large":    {"\"{read}\" is heavier than any weight that can be reckoned with", "", "look at the number and its unit"},
	"mass.trailing":     {"\"{read}\" is left over after the weight", "", "write a weight alone, as 250 g or 1 lb 4 oz"},

	"density.no-unit":      {"\"{read}\" does not say over what length", "", "write the length with the number, as \"24 epi\", \"24/in\" or \"60/10 cm\""},
	"density.unknown-unit": {"\"{read}\" does not say over what length", "", "write epi, ppi or dpi, or a length after a slash, as 24/in or 60/10 cm"},
	"density.ambiguous":    {"\"{read}\" has two slashes", "", "write per for the second, as \"1/3 per 4 in\""},
	"density.zero":         {"\"{read}\" has no threads, or none over a length", "", "write how many there are over a length, as \"24 epi\""},
	"density.negative":     {"\"{read}\" is less than nothing", "", "write the number without a minus"},
	"density.trailing":     {"\"{read}\" is left over after the threads over a length", "", "write a density alone, as 24 epi or 60/10 cm"},
	"density.none":         {"\"{read}\" has no threads", "", "write how many there are over a length, as \"24 epi\""},

	"share.no-percent": {"\"{read}\" has no %", "", "write \"{percent}\" for so many in the hundred, \"{part}\" for so many times the whole"},
	"share.negative":   {"\"{read}\" is less than nothing", "", "write the share without a minus; a gain is written gain 3 %"},
	"share.trailing":   {"\"{read}\" is left over after the share", "", "write a share alone, as 8 %; in an allowance, + and then stand between terms"},

	"money.no-currency": {"\"{read}\" has no currency", "", "write the currency with the amount, as \"{read} EUR\""},
	"money.trailing":    {"\"{read}\" is left over after the amount", "", "write an amount with its currency, as 12.50 EUR"},

	"rate.no-unit":      {"\"{read}\" does not say in what time", "", "write the time with the number, as \"30 ends/min\" or \"600/h\""},
	"rate.unknown-unit": {"\"{read}\" is not a time or a thing that is counted", "", "write a rate as 30 ends/min, 12 per minute or 600/h"},
	"rate.ambiguous":    {"\"{read}\" has two slashes", "", "write per for the second, as \"1/3 per min\""},
	"rate.part-second":  {"\"{read}\" is over a part of a second", "", "write a rate over whole seconds, minutes or hours"},
	"rate.zero":         {"\"{read}\" gets nothing done", "", "write how many are done in a time, as \"30 ends/min\""},
	"rate.negative":     {"\"{read}\" is less than nothing", "", "write the rate without a minus"},
	"rate.trailing":     {"\"{read}\" is left over after the rate", "", "write a rate alone, as 30 ends/min or 600/h"},

	"grist.no-unit":      {"\"{read}\" does not say how much yarn weighs how much", "", "write both, as \"3360 yd/lb\" or \"120 m/50 g\""},
	"grist.unknown-unit": {"\"{read}\" is not a unit of length or weight", "", "write a grist as 3360 yd/lb, 8000 m/kg or 120 m/50 g"},
	"grist.zero":         {"\"{read}\" is no yarn, or weighs nothing", "", "write a length of yarn and its weight, as \"120 m/50 g\""},
	"grist.negative":     {"\"{read}\" is less than nothing", "", "write the grist without a minus"},
	"grist.trailing":     {"\"{read}\" is left over after the grist", "", "write a grist alone, as 3360 yd/lb"},

	"reed.empty":   {"no reed is written here", "", "write its dents, as \"12 dpi\" or \"50/10 cm\""},
	"reed.no-unit": {"\"{read}\" could be dents in inches or in centimetres", "", "write \"{inch}\" or \"{metric}\", whichever is stamped on the reed"},
	"reed.unknown": {"\"{read}\" is not a numbering of reeds", "", "write dents over a length, as 12 dpi or 50/10 cm, or one of the numberings {valid}"},
	"reed.range":   {"no reed has \"{read}\"", "reeds have from {least} to {most}", "look at the number and its unit"},
}
