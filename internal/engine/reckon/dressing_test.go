package reckon

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/dress"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

func typedInt(n int) qty.Typed[int] { return qty.Typed[int]{Is: n, Typed: itoa(n)} }

func drawWinding(t *rapid.T) warp.Winding {
	w := warp.Winding{Tie: typedInt(rapid.IntRange(1, 40).Draw(t, "tie"))}
	if maybe(t, "together") {
		w.Together = typedInt(rapid.IntRange(1, 6).Draw(t, "at once"))
	}
	if maybe(t, "bouts") {
		w.Bout = typedInt(rapid.IntRange(12, 120).Draw(t, "bout"))
	}
	if maybe(t, "pegs hold") {
		w.Peg = drawLength(t, 1, 8, "peg")
	}
	switch rapid.IntRange(0, 2).Draw(t, "on") {
	case 1:
		w.UsualBoard = true
	case 2:
		w.Mill = drawLength(t, 36, 120, "mill")
	}
	spaces := inches(t, 1, 6, "raddle")
	w.Raddle = qty.Typed[qty.Density]{Is: spaces, Typed: spaces.String()}
	w.Section = drawLength(t, 1, 4, "section")
	if maybe(t, "beam") {
		w.BeamGirth = drawLength(t, 10, 40, "beam's girth")
	}
	return w
}

// Every node of the dressing has a formula that comes to it; every end is wound,
// raddled, beamed and on a package once; bouts are those that dress shares out.
func TestDressingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := drawPlan(t)
		plan.Winding = drawWinding(t)
		r := Reckon(plan, Options{Workings: true})
		seen := map[string]Node{}
		for _, n := range r.Nodes {
			if _, twice := seen[n.ID]; twice {
				t.Fatalf("node %s stands twice", n.ID)
			}
			seen[n.ID] = n
			checkFormula(t, n, seen)
		}
		addsUp(t, seen)
		sharesOut(t, plan, r)
	})
}

// addsUp holds the sums of the dressing against the ends and the wound length.
func addsUp(t *rapid.T, nodes map[string]Node) {
	ends := nodes["ends.wound"].Is.Sub(nodes["ends.floats"].Is)
	for _, id := range []string{"winding.ends", "raddle.ends", "sections.ends"} {
		if got, ok := nodes[id]; ok && !got.Is.Equal(ends) {
			t.Fatalf("%s is %s, want %s", id, got.Is, ends)
		}
	}
	wound := nodes["warp.wound"].Is
	if got := nodes["packages.wound"].Is; !got.Equal(ends.Mul(wound)) {
		t.Fatalf("the packages hold %s, want %s ends of %s", got, ends, wound)
	}
	if path, ok := nodes["winding.path-length"]; ok && path.Is.Less(wound) {
		t.Fatalf("the path is %s, the warp %s", path.Is, wound)
	}
	if turns, ok := nodes["winding.turns"]; ok && !turns.Is.Mul(nodes["winding.mill"].Is).Add(nodes["winding.past"].Is).Equal(wound) {
		t.Fatalf("%s turns of %s and %s", turns.Is, nodes["winding.mill"].Is, nodes["winding.past"].Is)
	}
}

// sharesOut holds each bout, its ties and its changes against the bouts of
// dress.
func sharesOut(t *rapid.T, plan *warp.Plan, r *Result) {
	most, ok := mostOf(t, plan, r)
	if !ok {
		return
	}
	count, ok := r.Node("winding.bouts")
	if !ok {
		return // more than are listed
	}
	all, _ := r.Node("winding.ends")
	w := dress.Winder{Together: max(plan.Winding.Together.Is, 1), Most: most}
	sizes := w.Sizes(all.Is.Count(qty.Nearest))
	ties := 0
	for i, size := range sizes {
		n, _ := r.Node("bouts[" + itoa(i) + "].ends")
		ties += size / plan.Winding.Tie.Is
		if !n.Is.Equal(qty.Int(int64(size))) {
			t.Fatalf("bout %d has %s ends, want %d", i, n.Is, size)
		}
		rest := strings.Contains(formula(n.Formula), "+")
		if last := i == len(sizes)-1 && size%w.Unit() > 0; rest != last {
			t.Fatalf("bout %d of %d, %d ends, adds what is no unit: %v", i, len(sizes), size, rest)
		}
	}
	if n, _ := r.Node("winding.ties"); !n.Is.Equal(qty.Int(int64(ties))) || !count.Is.Equal(qty.Int(int64(len(sizes)))) {
		t.Fatalf("%s ties and %s bouts, want %d and %d", n.Is, count.Is, ties, len(sizes))
	}
}

// mostOf is the most ends in a bout, from what hand and peg hold; false where
// neither says.
func mostOf(t *rapid.T, plan *warp.Plan, r *Result) (int, bool) {
	most, known := plan.Winding.Bout.Is, plan.Winding.Bout.Given()
	n, ok := r.Node("winding.peg-holds")
	if !ok {
		return most, known
	}
	wraps, _ := r.Node("winding.peg-wraps")
	holds := int(plan.Winding.Peg.Is.Rat().Mul(wraps.Is).Float())
	if n.Is.Count(qty.Nearest) != holds {
		t.Fatalf("a peg of %s holds %s at %s", plan.Winding.Peg.Is, n.Is, wraps.Is)
	}
	if least := 2 * max(plan.Winding.Together.Is, 1); holds < least { // said, and left out
		return most, known
	}
	if !known || holds < most {
		most = holds
	}
	return most, true
}

// formula writes the signs of a formula.
func formula(e *Expr) string {
	sign := ""
	if e.Op == Plus {
		sign = "+"
	}
	for _, arg := range e.Args {
		sign += formula(arg)
	}
	return sign
}

// towel is 480 ends in three stripes, wound 4 yd.
func towel(w warp.Winding) *warp.Plan {
	four := qty.Typed[qty.Length]{Is: 4 * qty.Yard, Typed: "4 yd"}
	return &warp.Plan{
		Pieces: []warp.Piece{{
			Count:  1,
			Length: warp.Size{Is: qty.Yard, State: warp.Finished, Typed: "1 yd"},
			Width:  warp.Size{Is: 20 * qty.Inch, State: warp.InReed, Typed: "20 in in the reed"},
		}},
		Warp: warp.Warp{
			Sett:  warp.Sett{Is: qty.Density{Threads: qty.Int(24), Over: qty.Inch}, State: warp.InReed, Typed: "24 epi"},
			Wound: four,
		},
		Winding: w,
	}
}

var fourInches = qty.Typed[qty.Length]{Is: 4 * qty.Inch, Typed: "4 in"}

// striped is the towel with stripes of five yarns: two of 28 wraps just touching
// to the inch, one by its count, a rope of 2 wraps, and a rag that nothing is
// known of.
func striped(w warp.Winding, stripes string) *warp.Plan {
	p := towel(w)
	p.Warp.Stripes, _ = order.Parse(stripes, order.Context{Kind: order.Stripes})
	wrapped := func(name, text string) yarn.Yarn {
		wraps, _ := yarn.ParseWraps(text)
		return yarn.Yarn{Name: name, Wraps: qty.Typed[yarn.Wraps]{Is: wraps, Typed: text}}
	}
	count, _ := yarn.ParseCount("8/2 Ne")
	p.Yarns = []yarn.Yarn{
		wrapped("white", "28 wpi touching"), wrapped("blue", "28 wpi touching"), wrapped("rope", "2 wpi touching"),
		{Name: "cotton", Count: qty.Typed[yarn.Count]{Is: count, Typed: "8/2 Ne"}},
		{Name: "rag"},
	}
	return p
}

// What the pegs hold: 4 in × 28 wraps just touching are 112 ends; of the thickest
// yarn where there are several; the smaller of hand and peg; whole units of two
// passes there and back. 8/2 cotton is 0.9 √3360 = 52.2 diameters in an inch, of
// which a ruler shows 70 %: 36.5, and 4 in hold 146.
func TestPegsHoldABout(t *testing.T) {
	for _, c := range []struct {
		what    string
		winding warp.Winding
		stripes string
		holds   int
		bouts   string
	}{
		{"a peg alone", warp.Winding{Peg: fourInches}, "white 480", 112, "96 96 96 96 96"},
		{"the hand holds less", warp.Winding{Peg: fourInches, Bout: typedInt(100)}, "white 480", 112, "96 96 96 96 96"},
		{"the peg holds less", warp.Winding{Peg: fourInches, Bout: typedInt(480)}, "white 480", 112, "96 96 96 96 96"},
		{"the thickest", warp.Winding{Peg: fourInches}, "white 470, rope 10", 8, strings.TrimSpace(strings.Repeat("8 ", 60))},
		{"three at once", warp.Winding{Peg: fourInches, Together: typedInt(3)}, "white 480", 112, "96 96 96 96 96"},
		{"twenty at once", warp.Winding{Peg: fourInches, Together: typedInt(20)}, "white 480", 112, "80 80 80 80 80 80"},
		{"by its grist", warp.Winding{Peg: fourInches}, "cotton 480", 146, "120 120 120 120"},
		{"what is known", warp.Winding{Peg: fourInches}, "rag 240, white 240", 112, "96 96 96 96 96"},
		{"nothing known", warp.Winding{Peg: fourInches, Bout: typedInt(240)}, "rag 480", 0, "240 240"},
		{"too short, and a hand", warp.Winding{Peg: fourInches, Bout: typedInt(240), Together: typedInt(20)}, "rope 480", 8, "240 240"},
	} {
		r := Reckon(striped(c.winding, c.stripes), Options{Workings: true})
		holds, _ := r.Node("winding.peg-holds")
		var bouts []string
		for i := 0; ; i++ {
			n, ok := r.Node("bouts[" + itoa(i) + "].ends")
			if !ok {
				break
			}
			bouts = append(bouts, n.Is.String())
		}
		if got := strings.Join(bouts, " "); !holds.Is.Equal(qty.Int(int64(c.holds))) || got != c.bouts {
			t.Errorf("%s: a peg holds %s, bouts %s; want %d and %s", c.what, holds.Is, got, c.holds, c.bouts)
		}
	}
}

// Two stripes of odd ends side by side make every other pass carry both.
func TestSplitPassesAreCounted(t *testing.T) {
	for stripes, want := range map[string]int64{"(white 5, blue 7) x fill": 40, "white 100, blue 20, white 360": 0, "white 99, blue 21, white 360": 1} {
		r := Reckon(striped(warp.Winding{Together: typedInt(2)}, stripes), Options{})
		if n, _ := r.Node("winding.split"); !n.Is.Equal(qty.Int(want)) {
			t.Errorf("%s: %s passes carry two yarns, want %d", stripes, n.Is, want)
		}
	}
}

// The warp lies in the middle of the raddle: 20 in are 20 half inches on each
// side of its centre, and of an odd number of spaces the right side has one more.
func TestRaddleHasItsCentre(t *testing.T) {
	for wide, want := range map[qty.Length][2]int64{20 * qty.Inch: {20, 20}, 41 * qty.Inch / 2: {20, 21}} {
		spaces := qty.Density{Threads: qty.Int(2), Over: qty.Inch}
		plan := towel(warp.Winding{Raddle: qty.Typed[qty.Density]{Is: spaces, Typed: "2/in"}})
		plan.Pieces[0].Width.Is = wide
		r := Reckon(plan, Options{})
		left, _ := r.Node("raddle.left")
		right, _ := r.Node("raddle.right")
		if !left.Is.Equal(qty.Int(want[0])) || !right.Is.Equal(qty.Int(want[1])) {
			t.Errorf("%s: %s spaces left and %s right, want %v", wide, left.Is, right.Is, want)
		}
	}
}

func problems(r *Result) string {
	var codes []string
	for _, p := range r.Problems.All() {
		if strings.HasPrefix(p.Code, "winding.") {
			codes = append(codes, p.Severity.String()+" "+p.Code)
		}
	}
	return strings.Join(codes, ", ")
}

var square = []warp.Peg{
	{Name: "start"},
	{Name: "a", X: qty.Yard},
	{Name: "b", X: qty.Yard, Y: qty.Yard},
	{Name: "c", Y: qty.Yard},
	{Name: "d", Y: 2 * qty.Yard},
}

func TestPathOfThePlan(t *testing.T) {
	r := Reckon(towel(warp.Winding{Pegs: square}), Options{})
	n, _ := r.Node("winding.path-length")
	over, _ := r.Node("winding.over")
	if !n.Is.Equal((4 * qty.Yard).Rat()) || !over.Is.IsZero() || n.About.Mark != "start, a, b, c, d" || problems(r) != "" {
		t.Errorf("got %s nm over %q, %s over, %s", n.Is, n.About.Mark, over.Is, problems(r))
	}
	if at, _ := r.Node("winding.pegs[2]"); !at.Is.Equal((2 * qty.Yard).Rat()) || at.About.Mark != "b" {
		t.Errorf("peg b is at %s", at.Is)
	}
}

func TestDressingProblems(t *testing.T) {
	second := towel(warp.Winding{Together: typedInt(2)})
	second.Built.Ends = typedInt(40)
	var dense warp.Winding
	dense.Bout = typedInt(2)
	wide := towel(warp.Winding{Section: qty.Typed[qty.Length]{Is: qty.Centimetre, Typed: "1 cm"}})
	wide.Warp.Ends = typedInt(200_000)
	wide.Warp.Sett.Is = qty.Density{Threads: qty.Int(1), Over: qty.Metre}
	short := towel(warp.Winding{Pegs: square})
	short.Warp.Wound.Is = 10 * qty.Inch
	for _, c := range []struct {
		what string
		plan *warp.Plan
		want string
	}{
		{"a board long enough", towel(warp.Winding{Pegs: square}), ""},
		{"a board too short", towel(warp.Winding{Pegs: square[:4]}), "warning winding.board-short"},
		{"the usual board", towel(warp.Winding{UsualBoard: true}), ""},
		{"a board too long", short, "note winding.far-over"},
		{"a beam and no yarn", towel(warp.Winding{BeamGirth: fourInches}), "note winding.beam-yarn"},
		{"a beam and a yarn of no known thickness", striped(warp.Winding{BeamGirth: fourInches}, "white 240, rag 240"), "note winding.beam-yarn"},
		{"a peg and no yarn", towel(warp.Winding{Peg: fourInches}), "note winding.peg-no-yarn"},
		{"a peg and a yarn of no known thickness", striped(warp.Winding{Peg: fourInches}, "white 240, rag 240"), "note winding.peg-yarn"},
		{"a peg too short", striped(warp.Winding{Peg: fourInches, Together: typedInt(20)}, "rope 480"), "warning winding.peg-full"},
		{"even stripes", striped(warp.Winding{Together: typedInt(2)}, "white 36, blue 12, (white 6) x fill, blue 12, white 36"), ""},
		{"an odd field", striped(warp.Winding{Together: typedInt(2)}, "white 36, blue 12, (white 6) x fill, white 7, blue 12, white 37"), ""},
		{"odd stripes", striped(warp.Winding{Together: typedInt(2)}, "(white 5, blue 7) x fill"), "note winding.uneven"},
		{"odd stripes, one at once", striped(warp.Winding{}, "(white 5, blue 7) x fill"), ""},
		{"end and end", striped(warp.Winding{Together: typedInt(2)}, "(white 1, blue 1) x fill"), ""},
		{"every pass a bout", towel(dense), "note winding.many"},
		{"sections over 200 km", wide, "note winding.many"},
		{"nothing said", towel(warp.Winding{}), ""},
		{"as built", second, ""},
	} {
		if got := problems(Reckon(c.plan, Options{})); got != c.want {
			t.Errorf("%s: got %q, want %q", c.what, got, c.want)
		}
	}
}

// A plan that says nothing of winding has no node of it, and one that says a
// raddle has no bouts.
func TestDressingIsQuiet(t *testing.T) {
	count := func(w warp.Winding, prefix string) int {
		n := 0
		for _, node := range Reckon(towel(w), Options{}).Nodes {
			if strings.HasPrefix(node.ID, prefix) {
				n++
			}
		}
		return n
	}
	spaces := qty.Density{Threads: qty.Int(2), Over: qty.Inch}
	raddled := warp.Winding{Raddle: qty.Typed[qty.Density]{Is: spaces, Typed: "2/in"}}
	for _, prefix := range []string{"winding.", "bouts[", "sections.", "packages"} {
		if count(warp.Winding{}, prefix)+count(raddled, prefix) > 0 {
			t.Errorf("nodes of %s where nothing is said of it", prefix)
		}
	}
	if count(raddled, "raddle") == 0 || count(warp.Winding{}, "raddle") > 0 {
		t.Error("the raddle is there where it is said, and only there")
	}
}

// Ends on beam 2 take their width in the raddle and are neither wound nor
// counted there.
func TestDressingLeavesTheSecondBeamOut(t *testing.T) {
	plan := towel(warp.Winding{Together: typedInt(2), Raddle: qty.Typed[qty.Density]{Is: qty.Density{Threads: qty.Int(1), Over: qty.Inch}, Typed: "1/in"}})
	plan.Warp.Stripes, _ = order.Parse("(white 24, blue 24 on beam 2) x fill", order.Context{Kind: order.Stripes})
	r := Reckon(plan, Options{})
	ends, _ := r.Node("winding.ends")
	first, _ := r.Node("raddle.groups[0]")
	spaces, _ := r.Node("raddle.count")
	if !ends.Is.Equal(qty.Int(240)) || !spaces.Is.Equal(qty.Int(20)) || first.About.Mark != "24-0" || problems(r) != "note winding.one-beam" {
		t.Errorf("%s ends wound, %s spaces that take %s, %q", ends.Is, spaces.Is, first.About.Mark, problems(r))
	}
}

// What is found backwards is dressed, and is the same as without dressing.
func TestFoundIsDressed(t *testing.T) {
	find := func(w warp.Winding) *Result {
		plan := towel(w)
		plan.Find.What = "pieces[0].length"
		return Solve(plan, Options{})
	}
	bare, dressed := find(warp.Winding{}), find(warp.Winding{UsualBoard: true})
	if bare.Backward == nil || dressed.Backward == nil || !bare.Backward.Found.Is.Equal(dressed.Backward.Found.Is) {
		t.Fatalf("found %+v, dressed %+v", bare.Backward, dressed.Backward)
	}
	if _, ok := dressed.Node("winding.path-length"); !ok {
		t.Error("no path for what was found")
	}
}

// turnByTurn lays one turn after another, each as long as the girth in the middle of its
// layer: the slow twin of the turns of the beam.
func turnByTurn(wound, girth, grows float64) int {
	turns := 0
	for at := 0.0; at < wound*(1-1e-9); turns++ {
		at += girth + (float64(turns)+0.5)*grows
	}
	return turns
}

// The turns of a beam are those that are laid one by one, and the girth of the full beam
// is what so many layers make of it.
func TestBeamTurnsAreThoseOfEveryTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wound := drawLength(t, 20, 9000, "wound")
		stripes := rapid.SampledFrom([]string{"cotton 480", "white 480", "cotton 240, white 240", "rope 480"}).Draw(t, "yarns")
		plan := striped(warp.Winding{BeamGirth: drawLength(t, 4, 60, "girth")}, stripes)
		plan.Warp.Wound = wound
		r := Reckon(plan, Options{Workings: true})
		at := map[string]float64{}
		for _, id := range []string{"warp.wound", "beam.girth", "beam.grows", "beam.turns", "beam.full"} {
			n, ok := r.Node(id)
			if !ok {
				t.Fatalf("there is no %s", id)
			}
			at[id] = n.Is.Float()
		}
		turns := turnByTurn(at["warp.wound"], at["beam.girth"], at["beam.grows"])
		if at["beam.turns"] != float64(turns) {
			t.Fatalf("%v turns, %d laid one by one", at["beam.turns"], turns)
		}
		if full := at["beam.girth"] + float64(turns)*at["beam.grows"]; full < at["beam.full"]*(1-1e-9) || full-at["beam.full"] > at["beam.grows"]*(1+1e-9) {
			t.Fatalf("full it is %v round, want %v", full, at["beam.full"])
		}
	})
}

// By hand: 8/2 cotton has 52.17 diameters in an inch, so a layer is 0.01917 in thick and
// the girth of 24 in grows by 0.12044 in a turn; 5 1/2 yd are 8.25 turns of the bare beam,
// of which the layers save little: 198 = 24 n + 0.06022 n² at n = 8.08, nine turns begun.
func TestBeamTurnsByHand(t *testing.T) {
	plan := striped(warp.Winding{BeamGirth: qty.Typed[qty.Length]{Is: 24 * qty.Inch, Typed: "24 in"}}, "cotton 480")
	plan.Warp.Wound = qty.Typed[qty.Length]{Is: 198 * qty.Inch, Typed: "5 1/2 yd"}
	r := Reckon(plan, Options{Workings: true})
	turns, _ := r.Node("beam.turns")
	grows, _ := r.Node("beam.grows")
	if in := grows.Is.Div(qty.Inch.Rat()).Float(); !turns.Is.Equal(qty.Int(9)) || in < 0.1204 || in > 0.1205 {
		t.Errorf("%s turns, growing by %v in", turns.Is, in)
	}
	if _, ok := Reckon(striped(warp.Winding{}, "cotton 480"), Options{}).Node("beam.turns"); ok {
		t.Error("there are turns of a beam that nothing is said of")
	}
}
