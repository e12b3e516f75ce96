package web_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

var updateVectors = flag.Bool("update-vectors", false, "write the drafts that the page's drawing is held against anew")

// vectorsFile holds drafts with what is on top in them, for the tests of the page.
const vectorsFile = "page/test/vectors/drafts.json"

// vector is a draft as the page reads it, with the lift of every pick and every crossing:
// 1 where the end is on top.
type vector struct {
	Name  string         `json:"name"`
	Table map[string]any `json:"table"`
	Up    []string       `json:"up"`
	Rows  []string       `json:"rows"`
}

// The page draws a draft by the rule of package draft: its tests compare every crossing
// of these.
func TestVectorsOfThePage(t *testing.T) {
	var lines [][]byte // a draft to a line, so that a change is seen
	for _, d := range vectorDrafts() {
		line, err := json.Marshal(vectorOf(t, d))
		if err != nil {
			t.Fatal(err)
		}
		lines = append(lines, line)
	}
	want := append(append([]byte("[\n"), bytes.Join(lines, []byte(",\n"))...), "\n]\n"...)
	if *updateVectors {
		if err := os.WriteFile(vectorsFile, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(vectorsFile)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s is not what package draft says (%v): run go test ./internal/face/web -run Vectors -update-vectors", vectorsFile, err)
	}
	if len(lines) < 40 {
		t.Errorf("only %d drafts", len(lines))
	}
}

// vectorDrafts are drafts of every shed, treadled with one foot and with several, on few
// shafts and on as many as there may be, with ends in no heddle, and with nothing.
func vectorDrafts() []*draft.Draft {
	random := rand.New(rand.NewPCG(64, 7))
	sheds := []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}
	var all []*draft.Draft
	for _, shed := range sheds {
		for _, shafts := range []int{1, 4, 8, 33, 64} {
			d := randomDraft(random, shed, shafts)
			d.Name = fmt.Sprintf("%d shafts, %q", shafts, shed.String())
			all = append(all, d)
		}
		if d, ok := randomDraft(random, shed, 6).WithTreadles(shed); ok {
			d.Name = fmt.Sprintf("a treadle for each lift, %q", shed.String())
			all = append(all, d)
		}
	}
	return append(all, plainDrafts(random)...)
}

// plainDrafts are those that are a case each.
func plainDrafts(random *rand.Rand) []*draft.Draft {
	lifts := randomDraft(random, loom.Table, 16).WithoutTreadles()
	lifts.Name = "a lift plan"
	nowhere := randomDraft(random, loom.Sinking, 4)
	nowhere.Name, nowhere.Threading = "no end in a heddle", make([]int, 9)
	over := randomDraft(random, loom.Countermarch, 4)
	over.Name, over.Ties = "picks on treadles that are not tied", over.Ties[:2]
	return []*draft.Draft{
		lifts, nowhere, over,
		{Name: "nothing", Shafts: 4},
		{Name: "no picks", Shafts: 4, Threading: []int{1, 2, 3, 4}},
		{Name: "no ends", Shafts: 4, Lifts: []draft.Set{draft.Of(1, 3), draft.Of(2, 4)}},
	}
}

// randomDraft is a draft with one, several or no treadles to a pick, and now and then an
// end in no heddle.
func randomDraft(random *rand.Rand, shed loom.Shed, shafts int) *draft.Draft {
	d := &draft.Draft{Shafts: shafts, Treadles: 1 + random.IntN(64), Shed: shed}
	for range 9 + random.IntN(40) {
		d.Threading = append(d.Threading, random.IntN(shafts+1))
	}
	some := func(n int) draft.Set { return draft.Set(random.Uint64()&random.Uint64()) & draft.UpTo(n) }
	for range d.Treadles {
		tie := draft.Tie{Tied: some(shafts)}
		if shed == loom.Countermarch {
			tie.Lowered = some(shafts) // some shafts are drawn both ways, some neither
		}
		d.Ties = append(d.Ties, tie)
	}
	for i := range 9 + random.IntN(20) {
		pressed := draft.Of(1 + random.IntN(d.Treadles))
		if i%3 == 2 {
			pressed = some(d.Treadles)
		}
		d.Treadling = append(d.Treadling, pressed)
	}
	return d
}

func vectorOf(t *testing.T, d *draft.Draft) vector {
	t.Helper()
	ties, lowered := []draft.Set{}, []draft.Set{}
	for _, tie := range d.Ties {
		ties, lowered = append(ties, tie.Tied), append(lowered, tie.Lowered)
	}
	table := map[string]any{
		"version": 1, "kind": "draft", "name": d.Name, "frozen": false, "shed": d.Shed.String(),
		"shafts": d.Shafts, "treadles": d.Treadles, "threading": append([]int{}, d.Threading...),
		"ties": setTexts(ties), "treadling": setTexts(d.Treadling), "lifts": setTexts(d.Lifts), "palette": []string{},
		"warpColours": make([]int, d.Ends()), "weftColours": make([]int, d.Picks()),
	}
	if d.Shed == loom.Countermarch {
		table["lowered"] = setTexts(lowered)
	}
	return vector{d.Name, table, setTexts(d.LiftPlan()), rowsOf(t, d)}
}

func setTexts(sets []draft.Set) []string {
	out := make([]string, len(sets))
	for i, s := range sets {
		out[i] = strconv.FormatUint(uint64(s), 16)
	}
	return out
}

// rowsOf writes the drawdown, which the two ways of package draft must agree on.
func rowsOf(t *testing.T, d *draft.Draft) []string {
	t.Helper()
	w, rows := d.Drawdown(), make([]string, d.Picks())
	for pick := range rows {
		row := make([]byte, d.Ends())
		for end := range row {
			row[end] = '0'
			if d.UpAt(pick, end) {
				row[end] = '1'
			}
			if w.WarpUp(pick, end) != d.UpAt(pick, end) {
				t.Errorf("%s: pick %d, end %d is drawn otherwise than it is", d.Name, pick, end)
			}
		}
		rows[pick] = string(row)
	}
	return rows
}
