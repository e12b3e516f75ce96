package drafting

import (
	"flag"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sley/internal/engine/draw/scene"
)

var update = flag.Bool("update", false, "write the goldens anew")

// Small drafts, each in a manner of its own.
func TestGoldens(t *testing.T) {
	small := twill().DeleteEnds(6, 99).DeletePicks(5, 99)
	marks := Marks{
		Repeat: Part{Picks: 4, Ends: 4}, Ends: []int{5}, Picks: []int{1}, FloatsBehind: true,
		Floats: []Float{{Pick: 3, End: 1, Long: 3, Warp: true}, {Pick: 2, End: 0, Long: 2, Face: Back}},
	}
	for name, g := range map[string]struct {
		page scene.Page
		ok   bool
	}{
		"plain":   drawnAs(Draw(plainWeave().DeleteEnds(4, 9).DeletePicks(4, 9), Look{}, Marks{}, words)),
		"marked":  drawnAs(Draw(small, Look{Numbers: true, Below: true, TieUpLeft: true, FromRight: true, Upwards: true}, marks, words)),
		"colours": drawnAs(Draw(small, Look{Cells: Both, Bars: true, LiftPlan: true}, Marks{}, words)),
		"back":    drawnAs(Draw(small, Look{Alone: true, Face: Back}, marks, Words{})),
		"sizes":   drawnAs(Draw(rib().DeleteEnds(4, 99).DeletePicks(4, 99), Look{Cells: Colours, ToScale: true}, Marks{}, words)),
	} {
		if !g.ok {
			t.Fatalf("%s is not drawn", name)
		}
		file := "testdata/" + name + ".txt"
		got := scene.Dump(scene.Document{Pages: []scene.Page{g.page}})
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s has changed; when it should, go test -update (-want +got):\n%s", name, diff)
		}
	}
}

func drawnAs(page scene.Page, ok bool) (out struct {
	page scene.Page
	ok   bool
},
) {
	out.page, out.ok = page, ok
	return out
}
