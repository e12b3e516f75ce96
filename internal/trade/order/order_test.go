package order

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/qty"
)

// inShafts and inStripes read what must be read without faults.
func inShafts(t testing.TB, text string) Order {
	t.Helper()
	return read(t, text, Context{Kind: Shafts})
}

func inStripes(t testing.TB, text string) Order {
	t.Helper()
	return read(t, text, Context{Kind: Stripes})
}

func read(t testing.TB, text string, ctx Context) Order {
	t.Helper()
	o, faults := Parse(text, ctx)
	for _, f := range faults {
		t.Fatalf("%q: unwanted fault %v at %d, %v", text, f, f.At, f.Args)
	}
	return o
}

// spell writes runs short: b12 w4, or the shafts, each as often as it has ends.
func spell(runs []Run) string {
	var out []string
	for _, r := range runs {
		switch {
		case r.Shaft > 0:
			out = append(out, slices.Repeat([]string{fmt.Sprint(r.Shaft)}, r.Count)...)
		default:
			out = append(out, strings.TrimSuffix(fmt.Sprintf("%s%d%s/%d", r.Name, r.Count, at(r), r.Beam), "/0"))
		}
	}
	return strings.Join(out, " ")
}

func at(r Run) string {
	if !r.Density.Given() {
		return ""
	}
	return "@" + r.Density.Typed
}

var shaftTests = []struct{ text, want string }{
	{"1 2 3 4", "1 2 3 4"},
	{"1,2, 3\t4\n", "1 2 3 4"},
	{"1-4", "1 2 3 4"},
	{"1–4 4 – 1", "1 2 3 4 4 3 2 1"},
	{"64-62", "64 63 62"},
	{"5-5", "5"},
	{"1 1 2", "1 1 2"},
	{"(1 2) x 2", "1 2 1 2"},
	{"(1 2)x2, (3)X3 ×2", "1 2 1 2 3 3 3 3 3 3"},
	{"1-3 x 2", "1 2 3 1 2 3"},
	{"3 x 2 mirrored", "3 3 3"},
	{"(1 2 3 4) mirrored", "1 2 3 4 3 2 1"},
	{"1-4 Mirrored", "1 2 3 4 3 2 1"},
	{"(1 2 3 4) mirrored open", "1 2 3 4 3 2"},
	{"(1 2 3 4) mirrored doubled", "1 2 3 4 4 3 2 1"},
	{"(1 2 3 4) mirrored open x 2 mirrored", "1 2 3 4 3 2 1 2 3 4 3 2 3 4 3 2 1 2 3 4 3 2 1"},
	{"(1 2 3) mirrored mirrored", "1 2 3 2 1 2 3 2 1"},
	{"(1 2 3) mirrored open mirrored open", "1 2 3 2 3 2"},
	{"(1 2) mirrored", "1 2 1"},
	{"(1 2) mirrored open", "1 2"},
	{"7 mirrored", "7"},
	{"7 mirrored open", "7"},
	{"7 mirrored doubled", "7 7"},
	{"((1 2) x 2, 3) mirrored", "1 2 1 2 3 2 1 2 1"},
	{"1 (2 3) 4", "1 2 3 4"},
	{"point, 1", "1 2 3 4 3 2 1"},
	{"point x 2 1", "1 2 3 4 3 2 1 2 3 4 3 2 1"},
	{"twice mirrored", "1 2 3 4 3 2 8 1 2 3 4 3 2 3 4 3 2 1 8 2 3 4 3 2 1"},
}

func TestShafts(t *testing.T) {
	groups := map[string]string{"point": "1-4 mirrored open", "twice": "point 8 point"}
	for _, test := range shaftTests {
		o := read(t, test.text, Context{Kind: Shafts, Groups: groups})
		if got := spell(o.Runs(0)); got != test.want {
			t.Errorf("%q: got %s, want %s", test.text, got, test.want)
		}
	}
}

var stripeTests = []struct{ text, want string }{
	{"blue 12", "blue12"},
	{"12 blue", "blue12"},
	{"12blue, white 4", "blue12 white4"},
	{"blue 12 white 4 2 red", "blue12 white4 red2"},
	{"12 blue 4 white", "blue12 white4"},
	{"blue 12, blue 3", "blue15"},
	{"blue 2 x 3 white 1", "blue6 white1"},
	{"blue 2x3 white 1", "blue6 white1"},
	{"blue 12, (white 4, red 2) x 2", "blue12 white4 red2 white4 red2"},
	{"(blue 12, white 4, red 8) mirrored", "blue12 white4 red8 white4 blue12"},
	{"(blue 12, white 4, red 8) mirrored open", "blue12 white4 red8 white4"},
	{"(blue 12, white 4, red 8) mirrored doubled", "blue12 white4 red16 white4 blue12"},
	{"(blue 2, red 3 x 2) mirrored", "blue2 red9 blue2"}, // the leaf at the turn is red 3
	{"blue 12 at 36 epi, blue 4", "blue12@36 epi blue4"},
	{"blue 12 at 36 epi, blue 4 at 36/in", "blue16@36 epi"}, // one density, two spellings
	{"blue 12 at 14/cm on beam 2 x 2", "blue24@14/cm/2"},
	{"blue 12 on beam 2 at 14 ends per cm white 4", "blue12@14 ends per cm/2 white4"},
	{"blue 12 at 7,5/cm,4 white", "blue12@7,5/cm white4"},
	{"blue 12 on beam 1, blue 4", "blue12/1 blue4"},
	{"blå-2 4, grün_b 1, é 3", "blå-24 grün_b1 é3"},
	{"open 3, fill 2, beam 4, doubled 1", "open3 fill2 beam4 doubled1"},
	{"(red 4) mirrored, open 4", "red4 open4"},
	{"xylem 3, x3a 4", "xylem3 x3a4"},
	{"edge, white 4, edge", "blue1 red2 white4 blue1 red2"},
	{"edge 3 blue", "blue1 red2 blue3"},
}

func TestStripes(t *testing.T) {
	for _, test := range stripeTests {
		o := read(t, test.text, Context{Kind: Stripes, Groups: map[string]string{"edge": "blue 1 red 2"}})
		if got := spell(o.Runs(0)); got != test.want {
			t.Errorf("%q: got %s, want %s", test.text, got, test.want)
		}
	}
}

func TestFill(t *testing.T) {
	o := inStripes(t, "edge 4, (blue 12, white 4) x fill, blue 12, edge 4")
	if o.Fixed() != 20 || o.Filler() != 16 {
		t.Errorf("fixed and filler: got %d and %d, want 20 and 16", o.Fixed(), o.Filler())
	}
	for fill, want := range map[int]string{
		-1: "edge4 blue12 edge4",
		0:  "edge4 blue12 edge4",
		2:  "edge4 blue12 white4 blue12 white4 blue12 edge4",
	} {
		if got := spell(o.Runs(fill)); got != want {
			t.Errorf("fill %d: got %s, want %s", fill, got, want)
		}
	}
	sides := []string{spell(o.Before()), spell(o.FillRuns()), spell(o.After())}
	if want := []string{"edge4", "blue12 white4", "blue12 edge4"}; !slices.Equal(sides, want) {
		t.Errorf("before, fill, after: got %q, want %q", sides, want)
	}
	if got := o.Names(); !slices.Equal(got, []string{"edge", "blue", "white"}) {
		t.Errorf("names: got %q", got)
	}
}

// The fill group is counted without being laid out, however often it repeats.
func TestHugeFill(t *testing.T) {
	o := inShafts(t, "1 (1-4) x fill 4")
	if got, want := o.Total(400_000_000), 1_600_000_002; got != want {
		t.Errorf("total: got %d, want %d", got, want)
	}
	if got, want := o.Shafts(400_000_000), []int{400_000_001, 400_000_000, 400_000_000, 400_000_001}; !slices.Equal(got, want) {
		t.Errorf("shafts: got %v, want %v", got, want)
	}
	if got := o.Total(math.MaxInt); got != math.MaxInt {
		t.Errorf("total: got %d, want the largest int", got)
	}
	if o.Fits(50_000) || !o.Fits(49_999) {
		t.Errorf("fits: 50,000 repeats of 4 ends do not, 49,999 and two ends do")
	}
	if runs := o.Runs(50_000); runs != nil {
		t.Errorf("runs beyond the limit: got %d of them, want none", len(runs))
	}
}

func TestTotals(t *testing.T) {
	o := inStripes(t, "(red 4, blue 12 at 36 epi) x fill, blue 6, (red 1 on beam 2, blue 2) mirrored")
	if got, want := spell(o.Totals(3)), "red12 blue36@36 epi blue8 red2/2"; got != want {
		t.Errorf("totals: got %s, want %s", got, want)
	}
	if got, want := spell(o.Totals(0)), "blue8 red2/2"; got != want {
		t.Errorf("totals without the fill group: got %s, want %s", got, want)
	}
	if got := o.Shafts(1); got != nil {
		t.Errorf("shafts of stripes: got %v, want none", got)
	}
}

// A run stands where its thread first does: in a group, where it is called.
func TestRunAt(t *testing.T) {
	o := read(t, "é 1, edge, (blue 2) x 2 5 blue", Context{Groups: map[string]string{"edge": "  tip  ", "tip": "red 1, blue 1"}})
	var got []int
	for _, r := range append(o.Runs(0), o.Totals(0)...) {
		got = append(got, r.At)
	}
	if want := []int{0, 5, 5, 0, 5, 5}; !slices.Equal(got, want) {
		t.Errorf("places: got %v, want %v", got, want)
	}
}

func TestZero(t *testing.T) {
	var o Order
	if !o.IsZero() || o.Total(5) != 0 || o.Runs(1) != nil || o.Totals(1) != nil || o.String() != "" ||
		o.Before() != nil || o.After() != nil || o.FillRuns() != nil || o.Names() != nil || o.MaxShaft() != 0 {
		t.Errorf("the zero order is not empty: %+v", o)
	}
	if inShafts(t, "1").IsZero() {
		t.Error("an order of one end says it was not given")
	}
	failed, faults := Parse("blue", Context{})
	if len(faults) == 0 || failed.IsZero() || failed.Total(1) != 0 || failed.String() != "blue" {
		t.Errorf("a faulty order: got %+v, want its text and no threads", failed)
	}
}

func TestKind(t *testing.T) {
	if (Order{}).Kind() != Stripes || inShafts(t, "1").Kind() != Shafts || inStripes(t, "a 1").Kind() != Stripes {
		t.Error("an order forgot its kind")
	}
	if Shafts.String() != "shafts" || Stripes.String() != "stripes" {
		t.Errorf("names of the kinds: %v, %v", Stripes, Shafts)
	}
}

func TestEqual(t *testing.T) {
	base := inStripes(t, "(blue 2, red 1 at 12/cm) mirrored, (red 1) x fill")
	for text, want := range map[string]bool{
		"blue 2, 1 red at 120/10 cm, blue 2, red 1 x fill": true,
		"blue 2, red 1, blue 2, red 1 x fill":              false,
		"blue 2, red 1 at 12/cm, blue 2, red 1":            false,
	} {
		if got := base.Equal(inStripes(t, text)); got != want {
			t.Errorf("%q: equal is %v, want %v", text, got, want)
		}
	}
	if base.Equal(Order{}) || !(Order{}).Equal(Order{}) || inShafts(t, "1").Equal(inShafts(t, "2")) {
		t.Error("equal takes orders for one another")
	}
}

func TestDensityOfRun(t *testing.T) {
	run := inStripes(t, "blue 12 at  36 epi").Runs(0)[0]
	if want := (qty.Density{Threads: qty.Int(36), Over: qty.Inch}); run.Density.Is.Cmp(want) != 0 {
		t.Errorf("density: got %v, want 36 over an inch", run.Density.Is)
	}
}

func TestValidName(t *testing.T) {
	for name, want := range map[string]bool{
		"blue": true, "blå-2": true, "x3a": true, "open": true, "atoll": true,
		"": false, "2blue": false, "x": false, "X3": false, "At": false, "on": false,
		"mirrored": false, "light blue": false, " blue": false, "a,b": false, "(": false,
	} {
		if got := ValidName(name); got != want {
			t.Errorf("%q: valid is %v, want %v", name, got, want)
		}
	}
}

// Fills is Total read backwards: what it answers makes the sum, and what it refuses nothing
// makes.
func TestFillsUndoesTotal(t *testing.T) {
	for _, text := range []string{"blue 4", "edge 4, (blue 3, white 2) x fill, edge 4", "(red 3) x fill"} {
		o := inStripes(t, text)
		for threads := range 40 {
			times, ok := o.Fills(threads)
			want := false
			for n := range 40 {
				want = want || o.Total(n) == threads
			}
			if ok != want || (ok && o.Total(times) != threads) {
				t.Errorf("%q to %d threads: %d, %v; it can be done: %v", text, threads, times, ok, want)
			}
		}
	}
}
