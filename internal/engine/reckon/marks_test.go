package reckon

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// marksOf are the marks of a piece with the picks woven by then.
func marksOf(r *Result, piece string) (marks, picks []Node) {
	for i := 0; ; i++ {
		id := piece + "marks[" + itoa(i) + "]"
		mark, ok := r.Node(id)
		if !ok {
			return marks, picks
		}
		n, _ := r.Node(id + ".picks")
		marks, picks = append(marks, mark), append(picks, n)
	}
}

// Every mark lies within half a pick of its picks on the loom, and the last mark is
// the last pick.
func TestMarksAndTheirPicks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Reckon(drawPlan(t), Options{Workings: true, Tape: true})
		for i := range r.Plan.Pieces {
			all, ok := r.Node(pieceID(i) + "picks")
			long, known := r.Node(pieceID(i) + "on-loom")
			marks, picks := marksOf(r, pieceID(i))
			if !ok || !known || all.Is.IsZero() || len(marks) == 0 {
				continue
			}
			if !picks[len(picks)-1].Is.Equal(all.Is) {
				t.Fatalf("the last mark is at %s picks of %s", picks[len(picks)-1].Is, all.Is)
			}
			for k, mark := range marks {
				off := mark.Is.Mul(all.Is).Div(long.Is).Sub(picks[k].Is)
				if off.Mul(qty.Int(2)).Cmp(qty.Int(1)) > 0 || off.Mul(qty.Int(-2)).Cmp(qty.Int(1)) > 0 {
					t.Fatalf("%s reads %s nm, which is %s picks from %s", mark.ID, mark.Is, off, picks[k].Is)
				}
				if mark.State != warp.OnLoom {
					t.Fatalf("%s is read %s", mark.ID, mark.State)
				}
			}
		}
	})
}
