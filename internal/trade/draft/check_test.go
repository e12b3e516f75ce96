package draft

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// faulty are drafts with one fault each.
var faulty = []struct {
	name string
	make func(*Draft)
	code string
	path string
	sev  problem.Severity
}{
	{"no shafts", func(d *Draft) { d.Shafts, d.Threading, d.Ties = 0, []int{0}, []Tie{{}, {}, {}, {}} }, "draft.shafts", "shafts", problem.Error},
	{"no ends", func(d *Draft) { d.Threading = nil }, "draft.no-ends", "threading", problem.Error},
	{"no picks", func(d *Draft) { d.Treadling = nil }, "draft.no-picks", "treadling", problem.Error},
	{"treadles", func(d *Draft) { d.Treadles = 65 }, "draft.treadles", "treadles", problem.Error},
	{"shaft beyond", func(d *Draft) { d.Threading[5] = 9 }, "draft.end-shaft", "threading[5]", problem.Error},
	{"end in no heddle", func(d *Draft) { d.Threading[3] = 0 }, "draft.end-nowhere", "threading[3]", problem.Warning},
	{"more ties", func(d *Draft) { d.Treadles, d.Treadling = 3, []Set{Of(1), Of(2), Of(3)} }, "draft.ties", "tie-up", problem.Error},
	{"tie beyond", func(d *Draft) { d.Ties[1].Tied = Of(2, 7) }, "draft.tie-shaft", "tie-up[1]", problem.Error},
	{"tied to lower", func(d *Draft) { d.Ties[1].Lowered = Of(1) }, "draft.tie-lowers", "tie-up[1]", problem.Error},
	{"treadle beyond", func(d *Draft) { d.Treadling[2] = Of(5) }, "draft.pick-treadle", "treadling[2]", problem.Error},
	{"nothing pressed", func(d *Draft) { d.Treadling[2] = 0 }, "draft.none-up", "treadling[2]", problem.Warning},
	{"everything up", func(d *Draft) { d.Treadling[2] = Of(1, 3) }, "draft.all-up", "treadling[2]", problem.Warning},
	{"colour", func(d *Draft) { d.Weft.Colours = []int{0, 3} }, "draft.colour", "weft", problem.Error},
	{"plans differ", func(d *Draft) { d.Lifts = d.LiftPlan(); d.Lifts[1] = Of(4) }, "draft.plans-differ", "lift-plan[1]", problem.Error},
	{"plans of two lengths", func(d *Draft) { d.Lifts = d.LiftPlan()[:2] }, "draft.plans-length", "lift-plan", problem.Error},
	{"lift beyond", func(d *Draft) { *d = *d.WithoutTreadles(); d.Lifts[3] = Of(6) }, "draft.lift-shaft", "lift-plan[3]", problem.Error},
	{"counterbalance", func(d *Draft) { d.Shed, d.Ties[1].Tied = loom.Counterbalance, Of(2) }, "draft.uneven-shed", "treadling[1]", problem.Warning},
	{"locked", func(d *Draft) { *d, _ = onCountermarch(d); d.Treadling[0] = Of(1, 2) }, "draft.locked", "treadling[0]", problem.Error},
	{"free", func(d *Draft) { *d, _ = onCountermarch(d); d.Ties[0].Lowered = Of(3) }, "draft.free", "treadling[0]", problem.Warning},
	{"both ways", func(d *Draft) { *d, _ = onCountermarch(d); d.Ties[0].Lowered = Of(1, 3, 4) }, "draft.tie-both", "tie-up[0]", problem.Error},
}

func onCountermarch(d *Draft) (Draft, bool) {
	c, ok := d.OnLoom(loom.Countermarch)
	return *c, ok
}

func TestFaultyDrafts(t *testing.T) {
	if list := twill().Check(); list.Len() > 0 {
		t.Fatalf("a sound draft: %v", list.All())
	}
	for _, c := range faulty {
		d := twill()
		c.make(d)
		all := d.Check().All()
		if len(all) != 1 || all[0].Code != c.code || all[0].Path != c.path || all[0].Severity != c.sev {
			t.Errorf("%s: got %+v, want %s at %s", c.name, all, c.code, c.path)
		}
	}
}

// Many faults of one kind are told some of them and counted.
func TestManyFaultsOfAKind(t *testing.T) {
	d := twill().RepeatEnds(20)
	for i := range d.Threading {
		d.Threading[i] += 4
	}
	list := d.Check()
	if got := list.Len(); got != mostOfAKind+1 {
		t.Errorf("%d problems", got)
	}
}

// Whatever stands in a draft, checking it ends, and a draft it finds no error in
// can be drawn.
func TestCheckedDraftsCanBeDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.IntRange(-2, 70)
		set := rapid.Map(rapid.Uint64(), func(v uint64) Set { return Set(v >> (v % 60)) })
		d := &Draft{
			Shafts: number.Draw(t, "shafts"), Treadles: number.Draw(t, "treadles"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed"),
			Threading: rapid.SliceOfN(number, 0, 9).Draw(t, "threading"),
			Treadling: rapid.SliceOfN(set, 0, 5).Draw(t, "treadling"), Lifts: rapid.SliceOfN(set, 0, 5).Draw(t, "lifts"),
		}
		for range rapid.IntRange(0, 70).Draw(t, "ties") {
			d.Ties = append(d.Ties, Tie{set.Draw(t, "tied"), set.Draw(t, "lowered")})
		}
		if !d.Check().Failed() {
			d.Drawdown()
			d.Fewest()
			d.OtherFace()
		}
	})
}
