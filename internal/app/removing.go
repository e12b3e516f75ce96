package app

import (
	"context"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Remove takes a document off its shelf. Its versions and events stay in the book, and
// BringBack puts it back. A warp on the loom is removed only when its start was
// cancelled or its work is finished.
func (s *Studio) Remove(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	return s.flag(ctx, id, base, window, true)
}

// BringBack puts a document that was removed back on its shelf.
func (s *Studio) BringBack(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	return s.flag(ctx, id, base, window, false)
}

func (s *Studio) flag(ctx context.Context, id record.ID, base int, window string, remove bool) (Saved, error) {
	return s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) {
		d, err := w.Document(id)
		if err != nil {
			return Saved{}, nil, err
		}
		if d.Removed == remove { // it is so already, whoever did it
			return Saved{ID: id, Version: d.Version, Problems: &problem.List{}}, nil, nil
		}
		if base != 0 && base != d.Version {
			saved, err := s.behind(w, d, base)
			return saved, nil, err
		}
		if list, err := s.mayRemove(w, d, remove); err != nil || list.Failed() {
			return refused(list), nil, err
		}
		return s.appendFlag(w, d, window, remove)
	})
}

func (s *Studio) mayRemove(r record.Reader, d record.Document, remove bool) (*problem.List, error) {
	list := &problem.List{}
	if d.Kind != record.Warp || !remove || d.Demo {
		return list, nil
	}
	stage, err := stageOf(r, d)
	if stage == record.Begun || stage == record.OnTheWay {
		list.Fail("warp.on-the-loom", "", d.Name, nil)
	}
	return list, err
}

func (s *Studio) appendFlag(w record.Writer, d record.Document, window string, remove bool) (Saved, []Changed, error) {
	act := map[bool]record.Act{true: record.Remove, false: record.BringBack}[remove]
	b, err := openBody(d.Body)
	if err != nil {
		return Saved{}, nil, err
	}
	return s.appendVersion(w, d, b, record.Version{
		Window: window, Act: act, State: d.Version + 1, Removed: remove, Body: d.Body,
	})
}

// ClearDemo removes everything that came with the demo, and gives how many documents
// that were. Each can be brought back.
func (s *Studio) ClearDemo(ctx context.Context, window string) (int, error) {
	n := 0
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		all, err := w.All()
		if err != nil {
			return nil, err
		}
		var changed []Changed
		for _, d := range all {
			if !d.Demo || d.Removed {
				continue
			}
			if d, err = w.Document(d.ID); err != nil {
				return nil, err
			}
			_, made, err := s.appendFlag(w, d, window, true)
			if err != nil {
				return nil, err
			}
			changed = append(changed, made...)
			n++
		}
		return changed, nil
	})
	return n, err
}
