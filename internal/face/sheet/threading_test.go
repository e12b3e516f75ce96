package sheet

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/face/present"
)

// The groups of the threading end with the last end, and take together the heddles
// that were reckoned: the second ends of doubled edges, which are in no group,
// apart.
func TestThreadingGroupsComeToTheHeddles(t *testing.T) {
	some := 0
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		total, ok := r.Node("heddles.total")
		if !ok {
			continue
		}
		some++
		d := &desk{r: r}
		heddles, last := 0, 0
		for _, row := range d.threaded() {
			heddles += row.EndsInGroup() * len(row.After)
			last = max(last, slices.Max(row.After))
		}
		want := total.Is.Count(0)
		if n := r.Plan.Warp.DoubledEnds; !r.Plan.Warp.SharedHeddle {
			want -= 2 * n
		}
		ends, _ := r.Node("ends")
		if heddles != want || last != ends.Is.Count(0) {
			t.Errorf("%s: groups take %d heddles and end at %d; reckoned %d and %s", name, heddles, last, want, ends.Is)
		}
	}
	if some < 5 {
		t.Errorf("only %d plans have a threading", some)
	}
}

// The drawing of the warp has every length that was reckoned: its parts come to the
// wound warp.
func TestTheDrawnWarpIsTheWoundWarp(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		d := &desk{r: r, u: present.UnitsOf(r.Plan)}
		wound, _ := r.Node("warp.wound")
		if m := d.mapped(); !m.whole(wound.Is) {
			t.Errorf("%s: the parts come to %s nm, wound %s nm", name, m.all, wound.Is)
		}
	}
}

// Before so many picks, so much of the tape: the sheet says both of each mark.
func TestMarksSayTheirPicks(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	page := mustMake(t, r, Options{Sheets: []string{"weaving"}}).Pages[0]
	if got := says(page); !strings.Contains(got, "begin blue\n24\n") || !strings.Contains(got, "last pick\n757\n") {
		t.Errorf("the marks do not say their picks:\n%s", got)
	}
}
