package planfile

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the large plan of the benchmarks anew")

// largePlan is the file of a plan of 20 kinds of pieces and 40 stripes: the
// size that design and benchmarks of the reckoning speak of.
const largePlan = "../../../testdata/bench/large.toml"

// large writes that plan: 20 towels, runners and mats on one warp of 6 yarns.
func large() string {
	var b strings.Builder
	b.WriteString("sley = 1\nname = \"Twenty pieces on one warp\"\nweave = \"2/2 twill\"\nwash = \"washed\"\n" +
		"gap = \"1 in\"\nheader = \"2 in\"\nwarp.yarn = \"white\"\nwarp.sett = \"24 epi\"\nwarp.floating-selvedges = 2\n" +
		"warp.stripes = \"" + largeStripes() + "\"\nwarp.threading = \"(1 2 3 4) x fill, 1\"\n" +
		"weft.picks = \"22 ppi\"\nweft.yarn = \"white\"\nweft.slack = \"3 %\"\nweft.tail = \"6 in\"\n\n")
	b.WriteString("[allowances]\ntake-up = \"8 %\"\nshrinkage = \"8 %\"\nrelaxation = \"2 %\"\n" +
		"width-shrinkage = \"7 %\"\nreed-to-relaxed = \"6 %\"\n\n[loom]\nshafts = 8\ntreadles = 10\nwidth = \"120 cm\"\n" +
		"reeds = [\"8 dpi\", \"10 dpi\", \"12 dpi\", \"40/10 cm\", \"50/10 cm\"]\nwaste = \"30 in\"\n\n")
	for i, name := range largeYarns {
		fmt.Fprintf(&b, "[yarns.%s]\ncount = \"8/2 Ne\"\nfibre = \"cotton\"\nput-up = \"8 oz cone\"\nprice = \"%d.50 EUR\"\n\n", name, 12+i)
	}
	for i := range 20 {
		fmt.Fprintf(&b, "[[pieces]]\nname = \"piece %d\"\ncount = %d\nlength = \"%d in\"\nwidth = \"20 in\"\n"+
			"both = \"hem 1 1/4 in + 1/4 in\"\nmotif = \"6 + 1\"\nborder = \"%s 4, white 2, %[4]s 4\"\norder = \"(white 6, %[4]s 2) x fill\"\n\n",
			i+1, 1+i%4, 20+i, largeYarns[1+i%5])
	}
	return b.String()
}

var largeYarns = []string{"white", "blue", "red", "green", "grey", "madder"}

// largeStripes are 40 stripes, no two neighbours alike, and a group that fills.
func largeStripes() string {
	var parts []string
	for i := range 39 {
		parts = append(parts, fmt.Sprintf("%s %d", largeYarns[i%6], 4+i%5))
	}
	return strings.Join(parts, ", ") + ", (white 12) x fill"
}

// TestLargePlanIsFresh: the file is what the generator writes, and is read
// without a problem.
func TestLargePlanIsFresh(t *testing.T) {
	if *update {
		if err := os.WriteFile(largePlan, []byte(large()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(largePlan)
	if err != nil {
		t.Fatal(err)
	}
	if string(text) != large() {
		t.Error("it is not what the generator writes: run go test ./internal/edge/planfile -update")
	}
	plan, _, list := Decode("large.toml", text)
	if list.Len() != 0 {
		t.Fatalf("%+v", list.All())
	}
	if len(plan.Pieces) != 20 || len(plan.Yarns) != 6 {
		t.Errorf("%d pieces, %d yarns", len(plan.Pieces), len(plan.Yarns))
	}
	if runs := len(plan.Warp.Stripes.Runs(1)); runs != 40 {
		t.Errorf("%d stripes, want 40", runs)
	}
}

func BenchmarkDecode(b *testing.B) {
	text, err := os.ReadFile(largePlan)
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Decode("large.toml", text)
	}
}
