package yarn

// fibresTable is the generic names of fibres. The names are those of
// Regulation (EU) No 1007/2011, annexes I and IX, put as weavers say them;
// aliases and the classing are common practice, no source. Rayon, nylon and
// spandex are generic names in United States law (16 CFR 303.7, from memory).
var fibresTable = []Fibre{
	{Name: "cotton", Aliases: []string{"unmercerised cotton", "unmercerized cotton"}, Class: Cotton},
	{Name: "mercerised cotton", Aliases: []string{"mercerized cotton", "pearl cotton"}, Class: Cotton},
	{Name: "kapok", Class: Cotton},
	{Name: "cottolin", Aliases: []string{"cotton linen", "cotton-linen"}, Class: Cotton, Blend: []string{"cotton", "linen"}},

	{Name: "linen", Aliases: []string{"flax", "line linen", "tow linen"}, Class: Linen},
	{Name: "hemp", Aliases: []string{"true hemp"}, Class: Linen},
	{Name: "ramie", Class: Linen},
	{Name: "nettle", Class: Linen},
	{Name: "jute", Class: Linen},
	{Name: "sunn", Class: Linen},
	{Name: "abaca", Class: Linen},
	{Name: "sisal", Class: Linen},
	{Name: "henequen", Class: Linen},
	{Name: "coir", Class: Linen},

	{Name: "wool", Aliases: []string{"sheep's wool", "sheeps wool", "virgin wool", "lambswool"}, Class: Wool},
	{Name: "worsted wool", Aliases: []string{"wool worsted", "worsted", "combed wool"}, Class: Wool, Spun: WorstedSpun},
	{Name: "woollen wool", Aliases: []string{"wool woollen", "woollen", "woolen", "carded wool"}, Class: Wool, Spun: WoollenSpun},
	{Name: "superwash wool", Aliases: []string{"wool superwash", "superwash"}, Class: Wool},
	{Name: "merino wool", Aliases: []string{"merino"}, Class: Wool},
	{Name: "alpaca", Class: Wool},
	{Name: "llama", Class: Wool},
	{Name: "vicuna", Aliases: []string{"vicuña"}, Class: Wool},
	{Name: "mohair", Class: Wool},
	{Name: "cashmere", Class: Wool},
	{Name: "angora", Aliases: []string{"angora rabbit"}, Class: Wool},
	{Name: "camel hair", Aliases: []string{"camel"}, Class: Wool},
	{Name: "yak", Class: Wool},
	{Name: "goat hair", Class: Wool},
	{Name: "horsehair", Class: Wool},

	{Name: "silk", Aliases: []string{"mulberry silk"}, Class: Silk},
	{Name: "reeled silk", Aliases: []string{"silk reeled"}, Class: Silk},
	{Name: "spun silk", Aliases: []string{"silk spun"}, Class: Silk},
	{Name: "silk noil", Aliases: []string{"noil silk"}, Class: Silk},
	{Name: "tussah silk", Aliases: []string{"tussah", "wild silk"}, Class: Silk},

	{Name: "viscose", Aliases: []string{"rayon", "bamboo viscose"}, Class: Other},
	{Name: "lyocell", Class: Other},
	{Name: "modal", Class: Other},
	{Name: "cupro", Class: Other},
	{Name: "acetate", Class: Other},
	{Name: "triacetate", Class: Other},
	{Name: "paper", Class: Other},
	{Name: "acrylic", Class: Other},
	{Name: "modacrylic", Class: Other},
	{Name: "polyamide", Aliases: []string{"nylon"}, Class: Other},
	{Name: "polyester", Class: Other},
	{Name: "polypropylene", Class: Other},
	{Name: "polylactide", Class: Other},
	{Name: "elastane", Aliases: []string{"spandex"}, Class: Other},
	{Name: "metallic", Aliases: []string{"metal", "metallised", "metallized"}, Class: Other},
}
