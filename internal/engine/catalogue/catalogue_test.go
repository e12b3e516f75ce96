package catalogue

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/structure"
	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// TestEntries holds the lists: at least sixty, ids of their own, words of the trade in
// small letters, a source, and defaults that work.
func TestEntries(t *testing.T) {
	shape := regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)*$`)
	seen := map[string]bool{}
	for _, e := range All() {
		if seen[e.ID] || !shape.MatchString(e.ID) || e.Source == "" || !slices.Contains(Families(), e.Family) {
			t.Errorf("%+v", e)
		}
		seen[e.ID] = true
		e.Default()
	}
	if len(seen) < 60 {
		t.Errorf("only %d entries", len(seen))
	}
	total := 0
	for _, family := range Families() {
		total += len(Of(family))
		t.Logf("%s: %d", family, len(Of(family)))
	}
	if total != len(seen) {
		t.Errorf("the families have %d entries, the catalogue %d", total, len(seen))
	}
}

// TestNoEntryTwice: no two entries make the same cloth by their defaults, wherever it
// begins, in the same colours and at the same kind of sett.
func TestNoEntryTwice(t *testing.T) {
	seen := map[string]string{}
	for _, e := range All() {
		d := e.Default()
		key := fmt.Sprint(e.Sett, d.Warp.Colours, d.Weft.Colours, d.Drawdown().Canon(weave.Shifted))
		if len(d.Warp.Colours)+len(d.Weft.Colours) > 0 {
			key = fmt.Sprint(e.Sett, d.Palette, shown(d), d.Drawdown())
		}
		if seen[key] != "" {
			t.Errorf("%s is %s again", e.ID, seen[key])
		}
		seen[key] = e.ID
	}
}

// beside are the codes of parameters that are legal each by itself and not together.
var beside = []string{
	"catalogue.apart", "catalogue.unbroken", "catalogue.still", "catalogue.coprime", "catalogue.unlike",
	"catalogue.no-satin", "catalogue.move", "catalogue.wide", "catalogue.range", "catalogue.long",
	"block.ground", "block.in-turn", "block.treadle", "block.treadles",
}

func drawnParam(t *rapid.T, p Param) string {
	switch p.Kind {
	case Count:
		n := rapid.IntRange(p.Least, p.Most).Draw(t, p.Name)
		if p.Even {
			n -= n % 2
		}
		return strconv.Itoa(max(n, p.Least))
	case Choice:
		return rapid.SampledFrom(p.Options).Draw(t, p.Name)
	case Ratio:
		return drawnRatio(t, p)
	case Threads:
		return rapid.SampledFrom([]string{"dark 1, light 1", "(light 3, dark 1) x 2", "dark 5"}).Draw(t, p.Name)
	}
	if p.Default == "" {
		return ""
	}
	return rapid.SampledFrom([]string{"A", "A B", "A B C D C B", "(A x 2, B) x 2, C", "1-6"}).Draw(t, p.Name)
}

// drawnRatio draws pairs of numbers until the sum is within the bounds.
func drawnRatio(t *rapid.T, p Param) string {
	pairs := rapid.SliceOfN(rapid.IntRange(1, 4), 2, 6).Draw(t, p.Name)
	pairs = pairs[:len(pairs)/2*2]
	for len(pairs) > 2 && sum(pairs) > p.Most {
		pairs = pairs[2:]
	}
	if sum(pairs) < p.Least {
		pairs[0] += p.Least
	}
	return strings.ReplaceAll(strings.Trim(fmt.Sprint(pairs), "[]"), " ", "/")
}

func sum(list []int) int {
	total := 0
	for _, n := range list {
		total += n
	}
	return total
}

// TestEveryChoice makes every entry with drawn parameters: each is woven as promised,
// or says which parameters do not go together. An entry whose parameters seldom go
// together is drawn until some did, since what is drawn differs from run to run.
func TestEveryChoice(t *testing.T) {
	for _, e := range All() {
		made, refused := 0, 0
		for round := 0; made < 3 && round < 20; round++ {
			rapid.Check(t, func(rt *rapid.T) {
				if chosen(rt, e) {
					made++
				} else {
					refused++
				}
			})
		}
		if made < 3 {
			t.Fatalf("%s: made %d times, refused %d times", e.ID, made, refused)
		}
	}
}

// chosen makes an entry with drawn parameters, and says whether they go together.
func chosen(t *rapid.T, e *Entry) bool {
	values := Values{}
	for _, p := range e.Params {
		values[p.Name] = drawnParam(t, p)
	}
	d, list := e.Make(values)
	if d != nil {
		promised(t, e, d)
		return true
	}
	for _, p := range list.All() {
		if !slices.Contains(beside, p.Code) {
			t.Fatalf("%s %v: %+v", e.ID, values, p)
		}
	}
	return false
}

// promised holds a draft to what every entry promises.
func promised(t *rapid.T, e *Entry, d *draft.Draft) {
	if list := d.Check(); list.Len() > 0 {
		t.Fatalf("%s: %+v", e.ID, list.All())
	}
	w := d.Drawdown()
	if !e.Layered && !hangsSlowly(w) {
		t.Fatalf("%s falls apart:\n%s", e.ID, w)
	}
	if again := d.Fewest(); again.Shafts > d.Shafts {
		t.Fatalf("%s: fewest shafts are %d of %d", e.ID, again.Shafts, d.Shafts)
	}
	f := FactsOf(d)
	if factor := e.SettFactor(f); factor.Sign() <= 0 || factor.Float() > 16 {
		t.Fatalf("%s: sett factor %s", e.ID, factor.Short(3))
	}
	if slices.ContainsFunc(d.Threading, func(shaft int) bool { return shaft == 0 }) {
		t.Fatalf("%s has an end in no heddle", e.ID)
	}
}

// hangsSlowly follows "lies over" from the first end: in one cloth it leads to every
// thread, and from every thread back.
func hangsSlowly(w *weave.Weave) bool {
	n := w.Ends() + w.Picks()
	over := func(a, b int) bool {
		switch {
		case a < w.Ends() && b >= w.Ends():
			return w.WarpUp(b-w.Ends(), a)
		case a >= w.Ends() && b < w.Ends():
			return !w.WarpUp(a-w.Ends(), b)
		}
		return false
	}
	return reached(n, over) == n && reached(n, func(a, b int) bool { return over(b, a) }) == n
}

func reached(n int, from func(a, b int) bool) int {
	seen, next := make([]bool, n), []int{0}
	seen[0] = true
	count := 1
	for len(next) > 0 {
		a := next[0]
		next = next[1:]
		for b := range n {
			if !seen[b] && from(a, b) {
				seen[b], next = true, append(next, b)
				count++
			}
		}
	}
	return count
}

// TestLayered: what is woven in layers falls into layers of cloth, none loose, and the
// stitched and the backed ones are one.
func TestLayered(t *testing.T) {
	for id, layers := range map[string]int{
		"double-cloth": 2, "tube": 2, "double-width": 2, "many-layers": 3, "double-twill": 2,
		"stitched-double-cloth": 1, "weft-backed-twill": 1, "warp-backed-twill": 1, "double-cloth-blocks": 1,
	} {
		a := structure.OfDraft(made(t, id))
		if a.Woven() != layers || len(a.Layers) != layers {
			t.Errorf("%s: %d layers, %d of cloth", id, len(a.Layers), a.Woven())
		}
	}
	if f := FactsOf(made(t, "many-layers", "layers=8")); f.Woven != 8 || f.Shafts != 16 {
		t.Errorf("eight layers: %+v", f)
	}
}

// TestTwillsMove: each pick of a straight twill is the one before, moved by one end.
func TestTwillsMove(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		ratio := drawnRatio(rt, over("2/2"))
		for side, by := range map[string]int{"right": 1, "left": -1} {
			w := made(t, "twill", "over="+ratio, "hand="+side).Drawdown()
			if !w.Shift(1, by).Equal(w) {
				rt.Fatalf("%s %s:\n%s", ratio, side, w)
			}
			if w.Ends() != w.Picks() || w.Ends() != sum(numbersOf(ratio)) {
				rt.Fatalf("%s: %d ends", ratio, w.Ends())
			}
		}
	})
}

func numbersOf(ratio string) []int {
	var out []int
	for _, part := range strings.Split(ratio, "/") {
		n, _ := strconv.Atoi(part)
		out = append(out, n)
	}
	return out
}

// TestSatins: every legal move gives floats of n - 1 and binds no two neighbours; n has
// phi(n) - 2 of them.
func TestSatins(t *testing.T) {
	counts := map[int]int{5: 2, 6: 0, 7: 4, 8: 2, 9: 4, 10: 2, 11: 8, 12: 2, 13: 10, 14: 4, 15: 6, 16: 6}
	for n := 5; n <= 16; n++ {
		if got := len(SatinMoves(n)); got != counts[n] {
			t.Errorf("%d moves of %d", got, n)
		}
		for _, move := range SatinMoves(n) {
			for face, long := range map[string][2]int{"weft": {1, n - 1}, "warp": {n - 1, 1}} {
				d := made(t, "satin", fmt.Sprint("ends=", n), fmt.Sprint("move=", move), "face="+face)
				if f := FactsOf(d); f.WarpFront != long[0] || f.WeftFront != long[1] || f.Shafts != n {
					t.Errorf("%d/%d %s: %+v", n, move, face, f)
				}
				if name := structure.OfDraft(d).Name; name.Kind != structure.Satin || name.Size != n {
					t.Errorf("%d/%d %s is called %+v", n, move, face, name)
				}
			}
		}
	}
}

// TestShafts: as many shafts as promised.
func TestShafts(t *testing.T) {
	for _, c := range []struct {
		id, values string
		want       int
	}{
		{"plain", "shafts=8", 8},
		{"twill", "over=3/2/1/2", 8},
		{"point-twill", "over=3/3", 6},
		{"herringbone", "over=4/4; run=8", 8},
		{"herringbone", "over=4/4; run=3", 6},
		{"waffle", "shafts=7", 7},
		{"shaded-twill", "shafts=6", 6},
		{"shaded-satin", "ends=7; move=3", 7},
		{"corkscrew", "pairs=4", 9},
		{"combined-twill", "over=2/2; second=3/1", 8},
		{"mock-leno", "ends=5", 4},
		{"mock-leno", "ends=4", 4},
		{"ms-and-os", "ends=8", 4},
		{"shadow-weave", "shafts=8", 8},
		{"many-layers", "layers=5", 10},
		{"double-twill", "over=2/2", 8},
		{"satin-stripe", "ends=8; move=3", 10},
		{"krokbragd", "", 3},
		{"rep", "units=A B C", 6},
	} {
		if d := made(t, c.id, fieldsOf(c.values)...); d.Shafts != c.want {
			t.Errorf("%s %s: %d shafts, want %d", c.id, c.values, d.Shafts, c.want)
		}
	}
}

// TestNames: what the analysis calls a made weave is what it was made as.
func TestNames(t *testing.T) {
	for id, kind := range map[string]structure.Kind{
		"plain": structure.Plain, "warp-rib": structure.WarpRib, "weft-rib": structure.WeftRib, "basket": structure.Basket,
		"twill": structure.Twill, "point-twill": structure.PointTwill, "point-treadled-twill": structure.PointTwill,
		"diamond-twill": structure.Diamond, "herringbone": structure.Herringbone, "herringbone-across": structure.Herringbone,
		"broken-twill": structure.BrokenTwill, "satin": structure.Satin, "broken-crow": structure.IrregularSatin,
		"satin-6": structure.IrregularSatin, "double-cloth": structure.DoubleCloth, "log-cabin": structure.Plain,
		"houndstooth": structure.Twill,
	} {
		if name := structure.OfDraft(made(t, id)).Name; name.Kind != kind {
			t.Errorf("%s is called %v", id, name)
		}
	}
}

// TestBrighton: the longest float of a Brighton honeycomb is half of the ends, less one,
// for both threads and on both faces; of eight ends, half of the crossings are warp
// (from memory).
func TestBrighton(t *testing.T) {
	for quarter := 2; quarter <= 8; quarter++ {
		f := FactsOf(made(t, "brighton-honeycomb", fmt.Sprint("quarter=", quarter)))
		if long := 2*quarter - 1; f.WarpFront != long || f.WarpBack != long || f.WeftFront != long || f.WeftBack != long || f.Shafts != 4*quarter {
			t.Errorf("%d: %+v", quarter, f)
		}
	}
	if ups := made(t, "brighton-honeycomb").Drawdown().WarpUps(); ups != 32 {
		t.Errorf("%d of 64", ups)
	}
}

// TestMirrored: what turns back is the same from both sides.
func TestMirrored(t *testing.T) {
	for _, id := range []string{"point-twill", "diamond-twill", "rosepath", "waffle", "herringbone"} {
		w := made(t, id).Drawdown()
		if !w.Same(w.Reverse(), weave.Shifted) && id != "herringbone" {
			t.Errorf("%s is not the same from the right", id)
		}
		if !w.Same(w.Reverse(), weave.Moved) {
			t.Errorf("%s mirrored is another weave", id)
		}
	}
	for _, id := range []string{"point-treadled-twill", "diamond-twill", "waffle"} {
		if w := made(t, id).Drawdown(); !w.Same(w.ReversePicks(), weave.Shifted) {
			t.Errorf("%s is not the same from the last pick", id)
		}
	}
}

// TestCleanTurns: where the line of a balanced herringbone turns, every float ends.
func TestCleanTurns(t *testing.T) {
	for _, ratio := range []string{"2/2", "3/3", "4/4", "2/1/1/2", "3/1/1/3"} {
		for run := 3; run < 12; run++ {
			w := made(t, "herringbone", "over="+ratio, fmt.Sprint("run=", run)).Drawdown()
			for pick := range w.Picks() {
				if w.WarpUp(pick, run-1) == w.WarpUp(pick, run) && ratio != "2/1/1/2" && ratio != "3/1/1/3" {
					t.Errorf("%s, %d: pick %d floats over the turn", ratio, run, pick)
				}
			}
		}
	}
}

// TestSettFactors: a 2/2 twill may be a third closer than plain weave (Taylor 1909: 103
// and 137 1/3), a 2/1 a fifth, five-end satin 3/7, eight-end 3/5 (ends over ends and
// interlacings, worked out).
func TestSettFactors(t *testing.T) {
	for _, c := range []struct{ id, values, want string }{
		{"plain", "", "1"},
		{"twill", "over=2/2", "4/3"},
		{"twill", "over=2/1", "6/5"},
		{"basket", "", "4/3"},
		{"satin", "", "10/7"},
		{"satin", "ends=8; move=3", "8/5"},
		{"double-cloth", "", "2"},
		{"many-layers", "layers=4", "4"},
		{"huck", "", "1"},
		{"krokbragd", "", "1/2"},
	} {
		e, _ := Find(c.id)
		got := e.SettFactor(FactsOf(made(t, c.id, fieldsOf(c.values)...))).Big().RatString()
		if got != c.want {
			t.Errorf("%s %s: %s, want %s", c.id, c.values, got, c.want)
		}
	}
}

// TestFaulty: every problem at once, each at its parameter.
func TestFaulty(t *testing.T) {
	for _, c := range []struct {
		id, values string
		want       []string
	}{
		{"satin", "ends=many; move=99; face=wrap; colour=red", []string{"catalogue.parameter colour", "catalogue.number ends", "catalogue.choice face", "catalogue.range move"}},
		{"satin", "ends=6; move=2", []string{"catalogue.no-satin ends"}},
		{"satin", "ends=8; move=2", []string{"catalogue.move move"}},
		{"satin", "ends=8; move=7", []string{"catalogue.move move"}},
		{"plain", "shafts=7", []string{"catalogue.even shafts"}},
		{"twill", "over=2", []string{"catalogue.ratio over"}},
		{"twill", "over=2/0", []string{"catalogue.ratio over"}},
		{"twill", "over=1/1", []string{"catalogue.sum over"}},
		{"twill", "over=20/20", []string{"catalogue.sum over"}},
		{"combined-twill", "over=2/2; second=2/1", []string{"catalogue.unlike second"}},
		{"rearranged-twill", "over=4/4; move=4", []string{"catalogue.coprime move"}},
		{"broken-twill", "over=2/2; run=3; skip=1", []string{"catalogue.unbroken skip"}},
		{"advancing-twill", "over=2/2; by=4", []string{"catalogue.still by"}},
		{"steep-twill", "over=5/1/1/1; move=2", []string{"catalogue.apart "}},
		{"crepe-crossed", "over=6/5; second=5/2", []string{"catalogue.wide second"}},
		{"granite", "ends=5; move=2; added=9", []string{"catalogue.range added"}},
		{"colour-and-weave", "warp=dark; weft=red 2", []string{"order.count-missing warp", "order.name-unknown weft"}},
		{"colour-and-weave", "warp=dark 4000, light 1000", []string{"catalogue.long warp"}},
		{"overshot", "units=A B C; weft-units=A+C", []string{"order.unexpected weft-units"}},
		{"overshot", "units=A B C; weft-units=1+3", []string{"block.together weft-units"}},
		{"monks-belt", "units=A", []string{"block.ground units"}},
		{"huck-half-units", "units=A B C", []string{"block.in-turn units"}},
		{"turned-satin-8", "units=1-9", []string{"block.shafts units"}},
	} {
		e, _ := Find(c.id)
		d, list := e.Make(valuesOf(fieldsOf(c.values)))
		var got []string
		for _, p := range list.All() {
			got = append(got, p.Code+" "+p.Path)
		}
		slices.Sort(got)
		want := slices.Sorted(slices.Values(c.want))
		if d != nil || !slices.Equal(got, want) {
			t.Errorf("%s %s: %q, want %q", c.id, c.values, got, want)
		}
	}
	if e, list := Find("twil"); e != nil || list.All()[0].Args["near"] != "twill" {
		t.Errorf("twil: %+v", list.All())
	}
}

// FuzzMake: no text of any parameter breaks a rule.
func FuzzMake(f *testing.F) {
	r := rand.New(rand.NewPCG(1, 2))
	all := All()
	for range 40 {
		f.Add(r.IntN(len(all)), "2/2", "3", "A B")
	}
	f.Fuzz(func(t *testing.T, at int, a, b, c string) {
		e := all[mod(at, len(all))]
		values := Values{}
		for i, p := range e.Params {
			values[p.Name] = []string{a, b, c}[i%3]
		}
		d, list := e.Make(values)
		if (d == nil) != list.Failed() {
			t.Errorf("%s %v: %v", e.ID, values, list.All())
		}
	})
}
