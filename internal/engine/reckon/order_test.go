package reckon

import (
	"testing"

	"pgregory.net/rapid"
)

// Whatever the plan, every figure is worked out from figures that were made before
// it, so that the order of the nodes is one to work in.
func TestInputsComeBeforeTheirFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Reckon(drawPlan(t), Options{Workings: true, Tape: true})
		seen := map[string]bool{}
		for _, n := range r.Nodes {
			for _, id := range n.Inputs() {
				if !seen[id] {
					t.Fatalf("%s stands before %s, which it is worked out from", n.ID, id)
				}
			}
			if seen[n.ID] {
				t.Fatalf("%s is there twice", n.ID)
			}
			seen[n.ID] = true
		}
	})
}
