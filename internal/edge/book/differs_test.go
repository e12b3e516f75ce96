package book

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"sley/internal/trade/record"
)

// differs says what two books do not have alike. Bodies that were seen to be alike are
// not read again: a version is never written twice.
func differs(t *testing.T, a, b record.Book, seen map[string]bool) error {
	var out error
	err := a.Read(t.Context(), func(a record.Reader) error {
		return b.Read(t.Context(), func(b record.Reader) (err error) {
			out, err = differ(a, b, seen)
			return err
		})
	})
	if err != nil {
		return err
	}
	return out
}

// questions are the questions whose answers are held against one another.
var questions = []func(record.Reader) (any, error){
	func(r record.Reader) (any, error) { return r.All() },
	func(r record.Reader) (any, error) { return r.AllEvents() },
	func(r record.Reader) (any, error) { return r.AllFrozen() },
	func(r record.Reader) (any, error) { return r.Settings() },
	func(r record.Reader) (any, error) { return r.Counts() },
	func(r record.Reader) (any, error) {
		docs, _, err := r.List(record.Query{Kind: record.Draft, Words: "lin 3", Most: 50})
		return docs, err
	},
}

func differ(a, b record.Reader, seen map[string]bool) (diff, err error) {
	for _, ask := range questions {
		one, err := ask(a)
		if err != nil {
			return nil, err
		}
		other, err := ask(b)
		if err != nil {
			return nil, err
		}
		if d := cmp.Diff(other, one, cmpopts.EquateEmpty()); d != "" {
			return fmt.Errorf("the book differs: %.2000s", d), nil
		}
	}
	docs, err := a.All()
	for _, d := range docs {
		if diff, err := versionsDiffer(a, b, d.ID, seen); diff != nil || err != nil {
			return diff, err
		}
	}
	return nil, err
}

func versionsDiffer(a, b record.Reader, id record.ID, seen map[string]bool) (diff, err error) {
	one, err := a.Versions(id, 0, 1<<20)
	if err != nil {
		return nil, err
	}
	other, err := b.Versions(id, 0, 1<<20)
	if err != nil {
		return nil, err
	}
	if d := cmp.Diff(other, one); d != "" {
		return fmt.Errorf("the versions of document %d differ: %.2000s", id, d), nil
	}
	for _, v := range one {
		key := fmt.Sprintf("%d/%d", id, v.Number)
		if seen[key] {
			continue
		}
		body, err := a.Body(id, v.Number)
		if err != nil {
			return nil, err
		}
		if want, err := b.Body(id, v.Number); err != nil || string(want) != string(body) {
			return fmt.Errorf("version %s is another: %d bytes, %d expected, %w", key, len(body), len(want), err), nil
		}
		seen[key] = true
	}
	return nil, nil
}
