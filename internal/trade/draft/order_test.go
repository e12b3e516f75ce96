package draft

import (
	"slices"
	"testing"

	"sley/internal/trade/order"
)

func TestOrdersLaidOut(t *testing.T) {
	shafts, _ := order.Parse("(1-3 x 2) x fill, 1 1", order.Context{Kind: order.Shafts})
	if got := ShaftsOf(shafts.Runs(1)); !slices.Equal(got, []int{1, 2, 3, 1, 2, 3, 1, 1}) {
		t.Errorf("shafts %v", got)
	}
	picks, _ := order.Parse("1+3 2 2 1+3", order.Context{Kind: order.Treadles})
	sets := SetsOf(picks.Runs(0))
	if !slices.Equal(sets, []Set{Of(1, 3), Of(2), Of(2), Of(1, 3)}) {
		t.Errorf("sets %v", sets)
	}
	classes, distinct := Classes(sets)
	if !slices.Equal(classes, []int{0, 1, 1, 0}) || !slices.Equal(distinct, []Set{Of(1, 3), Of(2)}) {
		t.Errorf("classes %v of %v", classes, distinct)
	}
}
