package present

import (
	"fmt"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/trade/draft"
	"sley/internal/trade/qty"
)

// TableJSON is the documented shape of a draft that is drawn on (docs/api.md).
type TableJSON struct {
	Version     int        `json:"version"`
	Kind        string     `json:"kind"`
	Name        string     `json:"name"`
	Fixed       string     `json:"fixed,omitempty"`
	Whole       bool       `json:"whole,omitempty"`
	Shafts      int        `json:"shafts"`
	Treadles    int        `json:"treadles"`
	Shed        string     `json:"shed"`
	Threading   []int      `json:"threading"`
	Ties        []string   `json:"ties"`
	Lowered     []string   `json:"lowered,omitempty"`
	Treadling   []string   `json:"treadling"`
	Lifts       []string   `json:"lifts"`
	Palette     []string   `json:"palette"`
	Names       []string   `json:"names,omitempty"`
	Uncoloured  bool       `json:"uncoloured,omitempty"`
	WarpColours []int      `json:"warpColours"`
	WeftColours []int      `json:"weftColours"`
	WarpThick   []int64    `json:"warpThick,omitempty"`
	WeftThick   []int64    `json:"weftThick,omitempty"`
	WarpApart   []int64    `json:"warpApart,omitempty"`
	WeftApart   []int64    `json:"weftApart,omitempty"`
	Fill        *FillJSON  `json:"fill,omitempty"`
	Loom        *LimitJSON `json:"loom,omitempty"`
}

// FillJSON are the stretches that a warp repeats.
type FillJSON struct {
	Threading *[2]int `json:"threading,omitempty"`
	Picks     *[2]int `json:"picks,omitempty"`
}

// LimitJSON is what a warp's loom has.
type LimitJSON struct {
	Shafts   int `json:"shafts"`
	Treadles int `json:"treadles"`
}

// TableOf writes a table down.
func TableOf(t *app.Table) TableJSON {
	d := t.Draft
	out := TableJSON{
		Version: t.Version, Kind: string(t.Kind), Name: t.Name, Fixed: string(t.Fixed), Whole: t.Whole, Uncoloured: t.Uncoloured,
		Shafts: d.Shafts, Treadles: d.Treadles, Shed: d.Shed.String(), Threading: list(d.Threading),
		Ties: []string{}, Treadling: setsHex(d.Treadling), Lifts: setsHex(d.Lifts), Palette: []string{}, Names: t.Names,
		WarpColours: list(d.Warp.Colours), WeftColours: list(d.Weft.Colours),
		WarpThick: nanometres(d.Ends(), d.Warp.ThickOf), WarpApart: nanometres(d.Ends(), d.Warp.ApartOf),
		WeftThick: nanometres(d.Picks(), d.Weft.ThickOf), WeftApart: nanometres(d.Picks(), d.Weft.ApartOf),
		Fill: fillOf(t),
	}
	lowers := false
	for _, tie := range d.Ties {
		out.Ties, out.Lowered = append(out.Ties, hexSet(tie.Tied)), append(out.Lowered, hexSet(tie.Lowered))
		lowers = lowers || tie.Lowered != 0
	}
	if !lowers {
		out.Lowered = nil
	}
	for _, c := range d.Palette {
		out.Palette = append(out.Palette, fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B))
	}
	if t.Shafts > 0 || t.Treadles > 0 {
		out.Loom = &LimitJSON{t.Shafts, t.Treadles}
	}
	return out
}

func list(of []int) []int {
	if of == nil {
		return []int{}
	}
	return of
}

func hexSet(s draft.Set) string { return strconv.FormatUint(uint64(s), 16) }

func setsHex(sets []draft.Set) []string {
	out := make([]string, len(sets))
	for i, s := range sets {
		out[i] = hexSet(s)
	}
	return out
}

// nanometres are the sizes of threads, nil where none is said.
func nanometres(n int, of func(int) qty.Length) []int64 {
	out, said := make([]int64, n), false
	for i := range out {
		out[i] = int64(of(i))
		said = said || out[i] != 0
	}
	if !said {
		return nil
	}
	return out
}

func fillOf(t *app.Table) *FillJSON {
	var f FillJSON
	if t.FillEnds[1] > t.FillEnds[0] {
		f.Threading = &t.FillEnds
	}
	if t.FillPicks[1] > t.FillPicks[0] {
		f.Picks = &t.FillPicks
	}
	if f == (FillJSON{}) {
		return nil
	}
	return &f
}

// TableFile is what a command prints of a table.
type TableFile struct {
	Format int `json:"format"`
	TableJSON
}

// TableText sets a table as plain text: what is drawn, part by part.
func TableText(t *app.Table) string {
	d := t.Draft
	lines := []string{d.Name}
	if d.Name == "" {
		lines[0] = t.Name
	}
	lines = append(lines, "threading: "+ThreadingText(d))
	lines = append(lines, tieLines(d)...)
	if d.Treadled() {
		lines = append(lines, "treadling: "+PicksText(d.Treadling))
	} else {
		lines = append(lines, "lift plan: "+PicksText(d.Lifts))
	}
	if t.FillEnds[1] > t.FillEnds[0] {
		lines = append(lines, fmt.Sprintf("ends %d to %d fill the warp", t.FillEnds[0], t.FillEnds[1]-1))
	}
	if t.FillPicks[1] > t.FillPicks[0] {
		lines = append(lines, fmt.Sprintf("picks %d to %d fill the piece", t.FillPicks[0], t.FillPicks[1]-1))
	}
	return strings.Join(lines, "\n") + "\n"
}
