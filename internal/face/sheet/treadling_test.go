package sheet

import (
	"slices"
	"testing"
)

// The groups of a treadling end with the last pick, and hold every pick once.
func TestTreadlingGroupsComeToThePicks(t *testing.T) {
	r := reckoned(t, "drafted", []byte(drafted))
	d := &desk{r: r}
	for i := range r.Plan.Pieces {
		n, _ := r.Node(pieceID(i) + "picks")
		_, rows := d.grouped(n.Is.Count(0))
		picks, last := 0, 0
		for _, row := range rows {
			picks += row.EndsInGroup() * len(row.After)
			last = max(last, slices.Max(row.After))
		}
		if picks != n.Is.Count(0) || last != picks {
			t.Errorf("piece %d: %d picks in groups to %d, reckoned %s", i, picks, last, n.Is)
		}
	}
}

// A countermarch is told which cords raise and which lower, by treadle and by shaft,
// and where two feet pull against one another.
func TestTieupOfACountermarch(t *testing.T) {
	wants(t, sheetOf(t, drafted, "tie-up"), "1\n1 2 3 4\n1 2 3 4\n5 6 7 8\n", "8\n5 6 7 8 10\n1 2 3 4 9\n", "presses 1+2")
}
