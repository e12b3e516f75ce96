package present_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/qty"
)

// steps are those of all stages, in order.
func steps(c present.Course) []present.Step {
	var out []present.Step
	for _, s := range c.Stages {
		out = append(out, s.Steps...)
	}
	return out
}

type fails interface {
	Errorf(format string, args ...any)
}

// checkCourse holds a course to its order: every node once, after those that it is
// worked out from, with a number that no other has.
func checkCourse(t fails, name string, r *reckon.Result) {
	all := steps(present.CourseOf(r, present.UnitsOf(r.Plan)))
	if len(all) != len(r.Nodes) {
		t.Errorf("%s: %d steps of %d nodes", name, len(all), len(r.Nodes))
	}
	lines, numbers := map[string]int{}, map[string]bool{}
	for _, s := range all {
		n, _ := r.Node(s.ID)
		for _, id := range n.Inputs() {
			line, ok := lines[id]
			if !ok {
				t.Errorf("%s: line %s, %s, stands before %s, which it is worked out from", name, s.Number, s.ID, id)
			}
			if line > s.Line && !opposite(r, s.ID, id) {
				t.Errorf("%s: line %s, %s, is worked out from line %d, %s", name, s.Number, s.ID, line, id)
			}
		}
		if numbers[s.Number] {
			t.Errorf("%s: two lines have the number %s", name, s.Number)
		}
		lines[s.ID], numbers[s.Number] = s.Line, true
	}
}

// opposite reports whether another piece goes the other way, from what this one comes
// to back to what it comes from: the two have no order of lines in common.
func opposite(r *reckon.Result, id, from string) bool {
	reached := map[string]bool{reckon.Says(from): true}
	for range r.Nodes {
		before := len(reached)
		for _, n := range r.Nodes {
			for _, in := range n.Inputs() {
				if reached[reckon.Says(n.ID)] {
					reached[reckon.Says(in)] = true
				}
			}
		}
		if len(reached) == before {
			break
		}
	}
	return reached[reckon.Says(id)]
}

func TestFiguresStandAfterThoseTheyComeFrom(t *testing.T) {
	for name, r := range plans(t) {
		checkCourse(t, name, r)
	}
}

// drawText draws a plan file: pieces that differ in their ends, yarns, allowances
// of every reach, and what a warp may have besides.
func drawText(t *rapid.T) string {
	var b strings.Builder
	maybe := func(name, text string) {
		if rapid.Bool().Draw(t, name) {
			b.WriteString(text + "\n")
		}
	}
	one := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	b.WriteString("sley = 1\n")
	b.WriteString("weave = \"" + one("weave", "plain", "2/2 twill") + "\"\nwash = \"washed\"\n")
	maybe("gap", `gap = "1 in"`)
	maybe("header", `header = "2 in"`)
	b.WriteString(one("class", "", "[class]\nlooms = 8\n", "[class]\nin-turn = 3\n"))
	for i := range rapid.IntRange(1, 4).Draw(t, "kinds") {
		fmt.Fprintf(&b, "[[pieces]]\nname = \"kind %d\"\ncount = %d\nlength = \"%d in\"\nwidth = \"18 in\"\n", i, rapid.IntRange(1, 4).Draw(t, "count"), rapid.IntRange(10, 60).Draw(t, "long"))
		b.WriteString(one("ends", "", "both = \"fringe 4 in\"\n", "both = \"hem 1 in + 1/4 in\"\n", "first = \"hem 1 in\"\nlast = \"fringe 3 in\"\n"))
		maybe("motif", `motif = "4"`)
	}
	for _, name := range []string{"white", "blue", "rust"} {
		fmt.Fprintf(&b, "[yarns.%s]\ncount = \"8/2 Ne\"\nfibre = \"cotton\"\n", name)
		maybe("put-up", "put-up = \"8 oz cone\"\nprice = \"12.50 EUR\"")
	}
	b.WriteString("[warp]\nsett = \"" + one("sett", "24 epi", "20 epi", "15 epi") + "\"\n")
	b.WriteString(one("stripes", "yarn = \"white\"\n", "stripes = \"white 8, (blue 2, white 2) x fill, white 8\"\n", "stripes = \"(blue 3, white 3 at 40 epi, rust 2) x fill\"\n"))
	maybe("threading", `threading = "(1 2 3 4) x fill, 1 2"`)
	maybe("floats", "floating-selvedges = 2")
	b.WriteString("[weft]\npicks = \"20 ppi\"\nyarn = \"" + one("weft", "white", "rust") + "\"\n")
	maybe("reserve", `reserve = "10 %"`)
	maybe("tail", `tail = "3 in"`)
	b.WriteString(one("allowances", "", "[allowances]\ntake-up = \"8 %\"\nshrinkage = \"6 %\"\nrelaxation = \"2 %\"\n", "[allowances]\nwarp-to-washed = \"15 %\"\n", "[allowances]\ntape-to-washed = \"10 in -> 8 1/2 in\"\nloom-take-up = \"3 %\"\n"))
	b.WriteString("[loom]\nshafts = 4\nwidth = \"36 in\"\nreeds = [\"8 dpi\", \"10 dpi\", \"12 dpi\"]\n")
	maybe("heddles", "heddles = 200")
	b.WriteString("waste = \"30 in\"\n")
	maybe("sampling", "[sampling]\nlength = \"6 in\"")
	maybe("winding", "[winding]\ntogether = 2\nbout = 60\ntie = 20\nraddle = \"2/in\"\nmill = \"2 yd\"")
	return b.String()
}

// drawn reckons a drawn plan; plans that do not decode are passed over, and counted.
func drawn(t *rapid.T) *reckon.Result {
	text := drawText(t)
	plan, _, list := planfile.Decode("drawn", []byte(text))
	if list.Failed() {
		t.Fatalf("%s\n%v", text, list.All())
	}
	return reckon.Solve(plan, reckon.Options{Workings: true, Tape: true})
}

func TestDrawnPlansRunInTheOrderOfTheWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkCourse(t, "drawn", drawn(t)) })
}

// reference is a name in [ ] with the number of its line.
var reference = regexp.MustCompile(`\[\d+[A-Z]*(\.\d+)? [^\]]*\]`)

// ownOfFormulas are the numbers that formulas have of themselves: whole parts,
// halves, both sides, the units of a rule of thumb.
var ownOfFormulas = regexp.MustCompile(`^(0|1|2|16|60|100)$`)

// The words of a formula have no number of the plan: it stands in words, or on the
// line of its own. What is printed for any plan has none of this one's names.
func TestWordsHaveNoNumberOfThePlan(t *testing.T) {
	for name, r := range plans(t) {
		checkWords(t, name, r)
	}
	rapid.Check(t, func(t *rapid.T) { checkWords(t, "drawn", drawn(t)) })
}

func checkWords(t fails, name string, r *reckon.Result) {
	for _, s := range steps(present.CourseOf(r, present.UnitsOf(r.Plan))) {
		for _, text := range []string{s.Words, s.Ask} {
			text, _, _ := strings.Cut(reference.ReplaceAllString(text, ""), "the same for")
			for _, n := range numberText.FindAllString(text, -1) {
				if !ownOfFormulas.MatchString(n) {
					t.Errorf("%s: line %s, %s: %s in %q has no words", name, s.Number, s.ID, n, text)
				}
			}
		}
		if strings.ContainsAny(s.Form, "{}") {
			t.Errorf("%s: %s is asked as %q", name, s.ID, s.Form)
		}
	}
}

// Terms alike are told once, with whose the others are.
func TestTermsAlikeAreToldOnce(t *testing.T) {
	c := present.CourseOf(reckoned(t, "../../../testdata/bench/large.toml"), present.Imperial)
	for _, s := range steps(c) {
		if want, ok := map[string]string{
			"weft.picks":          "+ the same for B to T",
			"yarns[blue].picks":   "+ the same for F, K, P",
			"yarns[madder].picks": "+ the same for J, O, T",
		}[s.ID]; ok && !strings.HasSuffix(s.Words, want) {
			t.Errorf("%s: %q does not end with %q", s.ID, s.Words, want)
		}
	}
}

func TestLetters(t *testing.T) {
	for n, want := range map[int]string{1: "A", 26: "Z", 27: "AA", 52: "AZ", 53: "BA", 703: "AAA"} {
		if got := present.Letter(n); got != want {
			t.Errorf("%d is %s, want %s", n, got, want)
		}
	}
}

// A step says no more than its node, and its figures come to what stands behind
// them, long sums too, whose equal terms are folded.
func TestStepsSayTheirNodes(t *testing.T) {
	for name, r := range plans(t) {
		checkSteps(t, name, r)
	}
	rapid.Check(t, func(t *rapid.T) { checkSteps(t, "drawn", drawn(t)) })
}

func checkSteps(t fails, name string, r *reckon.Result) {
	u := present.UnitsOf(r.Plan)
	for _, s := range steps(present.CourseOf(r, u)) {
		n, _ := r.Node(s.ID)
		if s.Value != u.Bench(n) || s.Derived != (n.Formula != nil) {
			t.Errorf("%s: %s: %q, worked out %v", name, s.ID, s.Value, s.Derived)
		}
		if s.Derived && s.Words == "" {
			t.Errorf("%s: %s has no words", name, s.ID)
		}
		formula, value, ok := strings.Cut(s.Figures, " = ")
		if !ok {
			continue
		}
		got, err := readFormula(formula)
		want, worth := readFormula(value)
		shown := reckon.Figure{Is: got, Kind: n.Kind, Currency: n.Currency}
		if err != nil || worth != nil || u.Exact(shown) != value && got.Sub(want).Abs().Cmp(want.Abs().Mul(qty.Frac(1, 1000))) > 0 {
			t.Errorf("%s: %s: %q does not come to %q: %v", name, s.ID, formula, value, err)
		}
	}
}

// A warp of hundreds of stripes is not told term by term.
func TestLongSumsAreFolded(t *testing.T) {
	text := "sley = 1\nweave = \"plain\"\n[[pieces]]\nlength = \"2 m\"\nwidth = \"60 cm\"\n[yarns.a]\ncount = \"8/2 Ne\"\n[yarns.b]\ncount = \"8/2 Ne\"\n" +
		"[warp]\nsett = \"8 ends/cm\"\nstripes = \"(a 3, b 4 at 16 ends/cm) x fill\"\n[weft]\nyarn = \"b\"\npicks = \"7 picks/cm\"\n[loom]\nreeds = [\"40/10 cm\"]\nwaste = \"60 cm\"\n"
	plan, _, list := planfile.Decode("stripes", []byte(text))
	if list.Failed() {
		t.Fatal(list.All())
	}
	for _, s := range steps(present.CourseOf(reckon.Solve(plan, reckon.Options{Workings: true}), present.Metric)) {
		if s.ID == "dents.cloth" && (len(s.Figures) > 200 || len(s.Words) > 300) {
			t.Errorf("%q, %q", s.Words, s.Figures)
		}
	}
}
