package present

// yarnWords are for what is written of yarns.
var yarnWords = map[string]words{
	"count.empty":       {"no count is written here", "", "write the count from the label, as \"8/2 Ne\" or \"3360 yd/lb\""},
	"count.long":        {"the count has more than {most} characters", "", "write one count, as \"8/2 Ne\""},
	"count.strands":     {"the count has more than {most} strands", "", "write the strands that are folded together, as \"60 Ne + 40 Ne\""},
	"count.number":      {"\"{read}\" has no number from {least} to {most}", "", "write the number on the label with its system, as \"8/2 Ne\""},
	"count.plies":       {"the plies of \"{read}\" are not a whole number from {least} to {most}", "", "write number and plies, as \"8/2 Ne\""},
	"count.no-system":   {"\"{read}\" does not say in which system it is counted", "8/2 in cotton, linen and metric are three different yarns", "write the system with the number, as \"{read} Ne\"; the systems are {valid}"},
	"count.system":      {"\"{read}\" is not a count system", "", "the systems are {valid}; a grist is written 3360 yd/lb"},
	"count.two-systems": {"\"{read}\" names two systems", "", "keep the one on the label"},
	"count.ambiguous":   {"\"{read}\" could be several yarns", "", "write which: {readings}"},
	"count.either":      {"\"{read}\" is taken as {taken}, and could be read the other way round", "", "write \"{other}\" if that is your yarn; else all is well"},

	"label.unread": {"\"{read}\" says neither a count nor a fibre", "", "write the yarn as its label does, as \"8/2 cotton, white\""},
	"label.long":   {"the label has more than {most} characters", "", "write count, fibre and colour, as \"8/2 cotton, white\""},

	"fibre.empty":   {"no fibre is written here", "", "write what the yarn is made of, as \"cotton\" or \"cotton 60 %, linen 40 %\""},
	"fibre.unknown": {"\"{read}\" is not a fibre that is known", "", "the fibres are {valid}"},
	"fibre.twice":   {"\"{read}\" is named a second time", "", "bring its shares together"},
	"fibre.share":   {"\"{read}\" has no share", "", "write a share with each fibre, as \"cotton 60 %, linen 40 %\""},
	"fibre.sum":     {"the shares of the fibres come to {sum}", "", "make them come to 100 %"},

	"wraps.kind":        {"\"{read}\" does not say how the wraps lie", "loose, touching and packed wraps of one yarn differ by half and more", "write loose, touching or packed after the wraps, as \"28 wpi touching\""},
	"colour.empty":      {"no colour is written here", "", "write a colour, as \"madder\" or \"#a03020\", or leave the key out"},
	"colour.hex":        {"\"{read}\" is not a colour in figures", "", "write # and three or six of the digits 0 to 9 and a to f, as \"#a03020\""},
	"amount.unit":       {"\"{read}\" is not an amount of yarn", "", "write a length or a weight, as \"1450 m\" or \"8 oz\"; the units are {valid}"},
	"amount.trailing":   {"\"{read}\" is left over after the amount", "", "write a length or a weight alone, as \"1450 m\" or \"8 oz\""},
	"putup.empty":       {"no put-up is written here", "", "write how the yarn is sold, as \"8 oz cone\" or \"100 g skein\""},
	"putup.package":     {"\"{read}\" is not a package of yarn", "", "the packages are {valid}"},
	"putup.zero":        {"\"{read}\" is no yarn at all", "", "write how much yarn is in one put-up, as \"8 oz cone\""},
	"price.per":         {"\"{read}\" does not say for how much yarn", "", "write one of {valid} after the price"},
	"price.negative":    {"\"{read}\" is less than nothing", "", "write the price without a minus"},
	"price.zero-mass":   {"\"{read}\" is no weight to buy", "", "write the weight the price is for, as \"12.50 EUR per 100 g\""},
	"skein.length":      {"the measured skein has no length", "", "write how long one skein is, as length = \"10 yd\""},
	"skein.mass":        {"the measured skein has no weight", "", "write what the skeins weigh together, as weight = \"5 g\""},
	"skein.skeins":      {"{skeins} skeins cannot be measured", "", "write how many skeins were weighed together, at least 1"},
	"skein.not-relaxed": {"the handspun skein is not said to be relaxed", "measured before its twist is set, it comes out too long", "set the twist, measure again and write relaxed = true"},
	"skein.not-scoured": {"the handspun skein is not said to be scoured", "weighed in the grease, it comes out too heavy", "wash it, weigh it again and write scoured = true"},

	"yarn.diameter-k":          {"a diameter constant of {read} fits no yarn", "", "write one from {least} to {most}, or leave it out to have the usual one of the fibre"},
	"yarn.handspun-unmeasured": {"the handspun yarn is not measured", "handspun differs from skein to skein, and wraps alone mislead", "measure and weigh a skein, as skein = { length = \"10 yd\", weight = \"5 g\", relaxed = true, scoured = true }"},
	"yarn.grist-differs":       {"the measured skein has {measured}, the count on the label says {labelled}", "", "the skein is believed: look at both"},
	"yarn.price-put-up":        {"the price is for one put-up, but the put-up is not said", "", "write put-up = \"8 oz cone\", or the price for a weight, as \"12.50 EUR per 100 g\""},
}
