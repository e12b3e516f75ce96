package present

import (
	"strconv"

	"sley/internal/app"
	"sley/internal/engine/structure"
)

// WeaveJSON is the shape of an entry of the catalogue of weaves.
type WeaveJSON struct {
	ID         string           `json:"id"`
	Family     string           `json:"family"`
	FamilySays string           `json:"family_says"`
	Name       string           `json:"name"`
	Says       string           `json:"says"`
	Use        string           `json:"use,omitempty"`
	Source     string           `json:"source"`
	Shafts     int              `json:"shafts"` // by its defaults, as all below
	Treadles   int              `json:"treadles"`
	Ends       int              `json:"ends"`
	Picks      int              `json:"picks"`
	Float      int              `json:"float"`
	Params     []WeaveParamJSON `json:"params"`
}

// WeaveParamJSON is the shape of something that a weave asks for.
type WeaveParamJSON struct {
	Name    string            `json:"name"`
	Says    string            `json:"says"`
	Means   string            `json:"means,omitempty"`
	Kind    string            `json:"kind"`
	Default string            `json:"default"`
	Least   int               `json:"least,omitempty"`
	Most    int               `json:"most,omitempty"`
	Even    bool              `json:"even,omitempty"`
	Options []WeaveOptionJSON `json:"options,omitempty"`
}

// WeaveOptionJSON is a value that can be chosen.
type WeaveOptionJSON struct {
	Value string `json:"value"`
	Says  string `json:"says"`
}

// WeavesJSONOf gives the shape of the catalogue.
func WeavesJSONOf(all []app.Weave) []WeaveJSON {
	out := []WeaveJSON{}
	for _, w := range all {
		said := Catalogue(w.ID)
		shape := WeaveJSON{
			ID: w.ID, Family: w.Family, FamilySays: CatalogueFamily(w.Family).Name, Name: said.Name, Says: said.Is, Use: said.Use,
			Source: w.Source, Shafts: w.Facts.Shafts, Treadles: w.Facts.Treadles, Ends: w.Facts.Ends, Picks: w.Facts.Picks,
			Float: w.Facts.LongestFloat(), Params: []WeaveParamJSON{},
		}
		for _, p := range w.Params {
			shape.Params = append(shape.Params, weaveParam(w.ID, p))
		}
		out = append(out, shape)
	}
	return out
}

func weaveParam(weave string, p app.WeaveParam) WeaveParamJSON {
	says, means := CatalogueParam(weave, p.Name)
	out := WeaveParamJSON{
		Name: p.Name, Says: says, Means: means, Kind: p.Kind, Default: p.Default, Least: p.Least, Most: p.Most, Even: p.Even,
	}
	for _, o := range p.Options {
		out.Options = append(out.Options, WeaveOptionJSON{o, CatalogueOption(o)})
	}
	return out
}

// WeaveFigures says what is computed of a weave, in the words of the catalogue's paper.
func WeaveFigures(f app.WeaveFacts) []FigureJSON {
	together := "yes"
	if !f.Hangs {
		together = several(f.Layers, "layers")
	}
	out := draftFigures(f.Shafts, f.Treadles, f.Ends, f.Picks, f.RepeatEnds, f.RepeatPicks)
	out = append(out, floatFigures(f.WarpFront, f.WarpBack, f.WeftFront, f.WeftBack)...)
	return append(out,
		FigureJSON{ID: "face", Says: "face", Value: balanceWords[f.Balance][0]},
		FigureJSON{ID: "cloth", Says: "one cloth", Value: together},
		FigureJSON{ID: "sett", Says: "closest sett, plain weave being 1", Value: f.Sett.Short(2), Note: CatalogueSett(f.SettBasis)},
	)
}

// draftFigures are the numbers that a draft is told by.
func draftFigures(shafts, treadles, ends, picks, repeatEnds, repeatPicks int) []FigureJSON {
	out := []FigureJSON{{ID: "shafts", Says: "shafts", Value: strconv.Itoa(shafts)}}
	if treadles > 0 {
		out = append(out, FigureJSON{ID: "treadles", Says: "treadles", Value: strconv.Itoa(treadles)})
	}
	return append(out,
		FigureJSON{ID: "ends", Says: "ends", Value: number(ends)}, FigureJSON{ID: "picks", Says: "picks", Value: number(picks)},
		FigureJSON{ID: "repeat", Says: "repeat", Value: several(repeatEnds, "ends") + " × " + several(repeatPicks, "picks")},
	)
}

// floatFigures are the longest floats; a cloth without any has none of a thread.
func floatFigures(warpFront, warpBack, weftFront, weftBack int) []FigureJSON {
	faces := func(front, back int) string {
		return floatLong(front) + " on the face, " + floatLong(back) + " on the back"
	}
	return []FigureJSON{
		{ID: "floats.warp", Says: "longest warp float", Value: faces(warpFront, warpBack)},
		{ID: "floats.weft", Says: "longest weft float", Value: faces(weftFront, weftBack)},
	}
}

// JudgedFigures says what is known of a draft in figures.
func JudgedFigures(d *app.Drafted, a *structure.Analysis) []FigureJSON {
	out := draftFigures(d.Draft.Shafts, d.Draft.Treadles, d.Draft.Ends(), d.Draft.Picks(), a.RepeatEnds, a.RepeatPicks)
	if name := WeaveName(a.Name); name != "" {
		out = append(out, FigureJSON{ID: "weave", Says: "weave", Value: name})
	}
	long := func(way structure.Way, face structure.Face) int { return a.Floats(way, face).Longest }
	out = append(out, floatFigures(
		long(structure.Warp, structure.Front), long(structure.Warp, structure.Back),
		long(structure.Weft, structure.Front), long(structure.Weft, structure.Back))...)
	return append(out, FigureJSON{ID: "fewest", Says: "fewest it can do with", Value: several(a.Shafts, "shafts") + ", " + several(a.Lifts, "lifts")})
}

// JudgedTold says what was found of a cloth and of its edges.
func JudgedTold(a *structure.Analysis, e *structure.Edges) []ToldJSON {
	out := []ToldJSON{}
	for _, f := range append(a.Findings(), e.Findings()...) {
		t := Tell(f)
		out = append(out, ToldJSON{string(f.Topic), t.Title, t.Figures, t.Explanation})
	}
	return out
}
