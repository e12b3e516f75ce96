package draft

import "sley/internal/trade/order"

// ShaftsOf gives the shaft of each end of an order of shafts that was laid out.
func ShaftsOf(runs []order.Run) []int {
	var out []int
	for _, run := range runs {
		for range run.Count {
			out = append(out, run.Shaft)
		}
	}
	return out
}

// SetsOf gives the treadles, or the shafts, of each pick of an order of treadles that
// was laid out.
func SetsOf(runs []order.Run) []Set {
	var out []Set
	for _, run := range runs {
		for range run.Count {
			out = append(out, Set(run.Set))
		}
	}
	return out
}

// Classes numbers sets so that equal ones share a number, counted from 0 as they
// first come, and gives the sets by their numbers.
func Classes(sets []Set) (classes []int, distinct []Set) {
	classes = make([]int, len(sets))
	number := map[Set]int{}
	for i, s := range sets {
		if _, ok := number[s]; !ok {
			number[s] = len(distinct)
			distinct = append(distinct, s)
		}
		classes[i] = number[s]
	}
	return classes, distinct
}
