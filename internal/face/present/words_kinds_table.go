package present

// pieceKinds say the kinds of pieces that a warp can begin with.
var pieceKinds = map[string]string{
	"hand-towel":   "for drying hands, hemmed",
	"tea-towel":    "for drying dishes, hemmed",
	"scarf":        "narrow, with a fringe",
	"shawl":        "wide enough for the shoulders, with a fringe",
	"blanket":      "for a bed or a berth, in one width, with a fringe",
	"baby-blanket": "for a cradle; hemmed, for a fringe catches small fingers",
	"table-runner": "along the middle of a table, hemmed",
	"place-mats":   "one under each plate, hemmed",
	"napkins":      "square, with narrow hems",
	"cushion":      "the two sides of a cover, with what the seams take",
	"bookmark":     "a narrow band with a fringe",
	"curtain":      "two to a window, with deep hems",
	"yardage":      "plain cloth by the length, to be cut and sewn",
	"sampler":      "to try weaves and colours on, one after another",
	"rug":          "for the floor, weft-faced, with a fringe",
	"bag-strap":    "a warp-faced band, for a bag or a belt",
}
