package app

import (
	"context"

	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Reckoned is a warp of the book with all its numbers and workings, as sheets print them.
type Reckoned struct {
	Result   *reckon.Result // nil when the plan has errors
	Mark     string         // of the plan
	Problems *problem.List
	Units    warp.Units // of the book
}

// ReckonWarp reckons a warp of the book: after work began the plan that was frozen, with
// the amendments since. Trouble: NotFound where it is no warp.
func (s *Studio) ReckonWarp(ctx context.Context, id record.ID) (*Reckoned, error) {
	from, warned, err := s.WarpSource(ctx, id)
	if err != nil {
		return nil, err
	}
	result, list := ReckonPlan(from, "", true)
	list = unplaced(list)
	list.Append(warned)
	return &Reckoned{result, Mark(from.Text), list, from.Units}, nil
}
