package reckon

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/engine/dress"
	"sley/internal/trade/order"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
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
	switch rapid.IntRange(0, 2).Draw(t, "on") {
	case 1:
		w.UsualBoard = true
	case 2:
		w.Mill = drawLength(t, 36, 120, "mill")
	}
	spaces := inches(t, 1, 6, "raddle")
	w.Raddle = qty.Typed[qty.Density]{Is: spaces, Typed: spaces.String()}
	w.Section = drawLength(t, 1, 4, "section")
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
	if !plan.Winding.Bout.Given() {
		return
	}
	count, ok := r.Node("winding.bouts")
	if !ok {
		return // more than are listed
	}
	all, _ := r.Node("winding.ends")
	w := dress.Winder{Together: max(plan.Winding.Together.Is, 1), Most: plan.Winding.Bout.Is}
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
	for _, c := range []struct {
		what string
		plan *warp.Plan
		want string
	}{
		{"a board long enough", towel(warp.Winding{Pegs: square}), ""},
		{"a board too short", towel(warp.Winding{Pegs: square[:4]}), "warning winding.board-short"},
		{"the usual board", towel(warp.Winding{UsualBoard: true}), ""},
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
