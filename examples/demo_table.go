package examples

import "sley/internal/app"

// The names of the demo's warps.
const (
	towels    = "Galley towels"
	blanket   = "Berth blanket"
	curtain   = "Huck lace curtain"
	bookmarks = "Bookmarks, a class of eight"
	runner    = "Hatch runner, finished"
	mats      = "Galley mats, finished"
)

// bought is yarn that came in one purchase.
func bought(amount, note string) []app.DemoStock {
	return []app.DemoStock{{What: "bought", Amount: amount, Note: note}}
}

// shelf is what the studio has: all invented.
var shelf = []app.DemoShelf{
	{
		Warp: towels, Part: "loom", Name: "countermarch, 120 cm",
		Also: []app.DemoPart{{Warp: blanket, Part: "loom"}, {Warp: curtain, Part: "loom"}, {Warp: runner, Part: "loom"}},
	},
	{
		Warp: bookmarks, Part: "loom", Name: "table loom, 60 cm",
		Also: []app.DemoPart{{Warp: mats, Part: "loom"}},
	},
	{
		Warp: towels, Part: "yarns.white", Name: "cottolin, white",
		Stock: []app.DemoStock{{What: "bought", Amount: "48 oz", Note: "six cones"}, {What: "used", Amount: "5 oz", Note: "samples"}},
	},
	{Warp: towels, Part: "yarns.blue", Name: "cottolin, harbour blue", Stock: bought("16 oz", "two cones")},
	{Warp: blanket, Part: "yarns.harbour", Name: "wool 7/2, harbour", Stock: bought("2 kg", "")},
	{
		Warp: blanket, Part: "yarns.handspun", Name: "handspun, grey ewe",
		Stock: []app.DemoStock{{What: "measured", Amount: "1450 m", Note: "fourteen skeins, relaxed after the twist was set"}},
	},
	{Warp: curtain, Part: "yarns.bleached", Name: "linen 16/2, bleached", Stock: bought("750 g", "three tubes")},
	{Warp: bookmarks, Part: "yarns.sea", Name: "cotton 10/2, sea", Stock: bought("16 oz", "")},
	{Warp: bookmarks, Part: "yarns.sand", Name: "cotton 10/2, sand", Stock: bought("8 oz", "")},
	{
		Warp: runner, Part: "yarns.flax", Name: "linen 8/1, flax",
		Stock: []app.DemoStock{{What: "bought", Amount: "500 g", Note: "two tubes"}, {What: "used", Amount: "330 g", Note: "hatch runner"}},
	},
	{
		Warp: runner, Part: "yarns.indigo", Name: "cotton 8/2, indigo",
		Stock: []app.DemoStock{{What: "bought", Amount: "250 g"}, {What: "used", Amount: "65 g", Note: "hatch runner"}, {What: "lost", Amount: "10 g", Note: "tangled skein"}},
	},
	{Warp: towels, Part: "draft", Name: "Galley towels, point twill"},
	{Warp: curtain, Part: "draft", Name: "Huck lace, curtain"},
}

// weaves are drafts of the catalogue that the studio keeps at hand.
var weaves = []app.DemoWeave{
	{Weave: "plain", Name: "Plain weave"},
	{Weave: "twill", Name: "Twill, two and two"},
	{Weave: "broken-twill", Name: "Broken twill"},
	{Weave: "rosepath", Name: "Rosepath"},
}

// work is what was done with the two warps that are finished.
var work = []app.DemoWork{
	{
		Warp: runner, Picks: 2200, Finished: true,
		Notes: []string{"Threaded one repeat of the stripes too few, and left it so.", "Washed at 40 °C, pressed damp."},
		Sizes: []app.DemoSize{
			{Path: "pieces[0].length", State: "on the loom", Size: "152 cm"},
			{Path: "pieces[0].length", State: "finished", Size: "131 cm"},
			{Path: "pieces[0].width", State: "finished", Size: "34.5 cm"},
		},
	},
	{
		Warp: mats, Picks: 1000, Finished: true,
		Notes: []string{"Sixteen and a half picks go in, not eighteen."},
		Sizes: []app.DemoSize{
			{Path: "pieces[0].length", State: "finished", Size: "14 1/2 in"},
			{Path: "pieces[0].width", State: "finished", Size: "10 3/4 in"},
		},
	},
}
