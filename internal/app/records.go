package app

import (
	"context"

	"sley/internal/trade/record"
)

// mostRecords is how many records a list gives at once: each is reckoned anew.
const mostRecords = 50

// Records gives the records of the warps that are finished, in the order of their names,
// and how many there are in all. At most 50 come at once.
func (s *Studio) Records(ctx context.Context, q record.Query) (out []*Record, total int, err error) {
	q.Kind, q.Stage, q.Most = record.Warp, record.Done, min(max(q.Most, 1), mostRecords)
	err = s.read(ctx, func(r record.Reader) error {
		found, n, err := r.List(q)
		total = n
		for _, d := range found {
			one, err := recordOf(r, d.ID)
			if err != nil {
				return err
			}
			out = append(out, one)
		}
		return err
	})
	return out, total, err
}
