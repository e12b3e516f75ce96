package loomside

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
)

// solved reckons a plan file's text.
func solved(t testing.TB, text string) *reckon.Result {
	t.Helper()
	plan, _, list := planfile.Decode("plan.toml", []byte(text))
	if list.Failed() {
		t.Fatalf("%+v", list.All())
	}
	return reckon.Solve(plan, reckon.Options{Tape: true})
}

// demo reckons a plan of the demo.
func demo(t testing.TB, name string) *reckon.Result {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "examples", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return solved(t, string(text))
}

// p1 is our own worked project P1 (shared conventions, not an outside check): four towels
// of 505 ends, threading (1 2 3 4 3 2) x 84 + 1, in a reed of 12 dents to the inch.
const p1 = `sley = 1
[[pieces]]
name = "towel"
count = 4
length = "28 in"
width = "18 in"
both = "hem 1 in + 1/4 in"
[yarns.white]
count = "3360 yd/lb"
[warp]
yarn = "white"
sett = "24 epi"
ends = 505
threading = "(1 2 3 4 3 2) x fill, 1"
floating-selvedges = { ends = 2, yarn = "white" }
[draft]
tie-up = ["1 2", "2 3", "3 4", "1 4"]
treadling = "(1 2 3 4 3 2) x fill, 1"
[weft]
picks = "22 ppi"
slack = "3 %"
[allowances]
take-up = "8 %"
relaxation = "3 %"
shrinkage = "8 %"
[winding]
raddle = "2/in"
together = 2
bout = 60
[loom]
shafts = 4
treadles = 4
shed = "rising"
width = "24 in"
reeds = ["12 dpi"]
`

// set puts keys in the place of others of a plan's text.
func set(text string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

func stepOf(t testing.TB, steps []Step, id string) Step {
	t.Helper()
	for _, s := range steps {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no step %s", id)
	return Step{}
}

func count(r *reckon.Result, id string) int {
	n, _ := r.Node(id)
	return n.Is.Count(qty.Nearest)
}
