package present

import (
	"strings"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// DraftJSON is the documented shape of a draft (docs/json.md).
type DraftJSON struct {
	Format    int           `json:"format"`
	Name      string        `json:"name,omitempty"`
	Note      string        `json:"note,omitempty"`
	Origin    string        `json:"origin,omitempty"`
	Shafts    int           `json:"shafts"`
	Treadles  int           `json:"treadles"`
	Shed      string        `json:"shed"`
	Threading []int         `json:"threading"`
	TieUp     [][]int       `json:"tie_up,omitempty"`
	Lowers    [][]int       `json:"tie_up_lowers,omitempty"`
	Treadling [][]int       `json:"treadling,omitempty"`
	LiftPlan  [][]int       `json:"lift_plan"`
	Drawdown  []string      `json:"drawdown"`
	Repeat    [2]int        `json:"repeat"` // picks, ends
	Fewest    [2]int        `json:"fewest"` // shafts, lifts
	Weave     string        `json:"weave,omitempty"`
	Layers    int           `json:"layers"`
	Floats    FloatsJSON    `json:"floats"`
	WarpUp    int           `json:"warp_up"`
	Told      []ToldJSON    `json:"told"`
	Problems  []ProblemJSON `json:"problems"`
}

// FloatsJSON is the longest float of each kind; 0 where there is none.
type FloatsJSON struct {
	WarpFront int `json:"warp_front"`
	WarpBack  int `json:"warp_back"`
	WeftFront int `json:"weft_front"`
	WeftBack  int `json:"weft_back"`
}

// ToldJSON is a finding in words.
type ToldJSON struct {
	Topic       string `json:"topic"`
	Title       string `json:"title"`
	Figures     string `json:"figures,omitempty"`
	Explanation string `json:"explanation,omitempty"`
}

// DraftJSONOf gives the shape of a draft with what is known of it; d is nil where it
// could not be read, and so are a and e.
func DraftJSONOf(d *draft.Draft, a *structure.Analysis, e *structure.Edges, list *problem.List) DraftJSON {
	out := DraftJSON{Format: 1, Threading: []int{}, LiftPlan: [][]int{}, Drawdown: []string{}, Told: []ToldJSON{}, Problems: []ProblemJSON{}}
	for _, p := range list.All() {
		out.Problems = append(out.Problems, ProblemJSON{p.Severity.String(), p.Code, p.Path, p.Read, Wrong(p), Fix(p), p.Place})
	}
	if d == nil {
		return out
	}
	out.Name, out.Note, out.Origin = d.Name, d.Note, d.Origin
	out.Shafts, out.Treadles, out.Shed = d.Shafts, d.Treadles, d.Shed.String()
	out.Threading, out.LiftPlan = append(out.Threading, d.Threading...), lists(d.LiftPlan())
	for _, tie := range d.Ties {
		out.TieUp = append(out.TieUp, list0(tie.Tied))
		out.Lowers = append(out.Lowers, list0(tie.Lowered))
	}
	if d.Treadled() {
		out.Treadling = lists(d.Treadling)
	}
	out.Drawdown = strings.Fields(d.Drawdown().String())
	out.judged(a, e)
	return out
}

func (out *DraftJSON) judged(a *structure.Analysis, e *structure.Edges) {
	out.Repeat, out.Fewest = [2]int{a.RepeatPicks, a.RepeatEnds}, [2]int{a.Shafts, a.Lifts}
	out.Layers, out.WarpUp = len(a.Layers), a.WarpUps
	out.Weave = WeaveName(a.Name)
	out.Floats = FloatsJSON{
		a.Floats(structure.Warp, structure.Front).Longest, a.Floats(structure.Warp, structure.Back).Longest,
		a.Floats(structure.Weft, structure.Front).Longest, a.Floats(structure.Weft, structure.Back).Longest,
	}
	out.Told = JudgedTold(a, e)
}

// lists gives sets as lists of numbers.
func lists(sets []draft.Set) [][]int {
	out := make([][]int, len(sets))
	for i, s := range sets {
		out[i] = list0(s)
	}
	return out
}

// list0 is a set's numbers, never null.
func list0(s draft.Set) []int { return append([]int{}, s.List()...) }
