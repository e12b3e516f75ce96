package app

import (
	"context"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// history reads a document's versions backwards, as far as they are asked for.
type history struct {
	r    record.Reader
	id   record.ID
	read map[int]record.Version
	from int // the lowest number that was read; 0: none yet
}

// pageOfHistory is how many versions are read at once.
const pageOfHistory = 200

// at gives a version without its body.
func (h *history) at(number int) (record.Version, error) {
	for h.read == nil || number < h.from {
		page, err := h.r.Versions(h.id, h.from, pageOfHistory)
		if err != nil {
			return record.Version{}, err
		}
		if h.read == nil {
			h.read = map[int]record.Version{}
		}
		if len(page) == 0 {
			break
		}
		for _, v := range page {
			h.read[v.Number] = v
			h.from = v.Number
		}
	}
	v, ok := h.read[number]
	if !ok {
		return v, &record.Trouble{Code: record.NotFound}
	}
	return v, nil
}

// state is the version whose state a version has.
func (h *history) state(number int) (int, error) {
	v, err := h.at(number)
	return v.State, err
}

// undoTo finds the state before the last thing a window did, and says why there is none:
// it is the first version, or what was done last was done elsewhere.
func (h *history) undoTo(head int, window string) (int, string, error) {
	last, err := h.state(head)
	if err != nil {
		return 0, "", err
	}
	v, err := h.at(last)
	switch {
	case err != nil:
		return 0, "", err
	case last == 1:
		return 0, "undo.none", nil
	case v.Window != window:
		return 0, "undo.others", nil
	}
	to, err := h.state(last - 1)
	return to, "", err
}

// redoTo finds the state that the window's last undo left.
func (h *history) redoTo(head int, window string) (int, string, error) {
	first := head
	for {
		v, err := h.at(first)
		if err != nil {
			return 0, "", err
		}
		if (v.Act != record.Undo && v.Act != record.Redo) || v.Window != window {
			break
		}
		first--
	}
	return h.replay(first, head)
}

// replay goes over undos and redos from a version on, and gives what the next redo
// brings back.
func (h *history) replay(first, head int) (int, string, error) {
	now, err := h.state(first)
	if err != nil {
		return 0, "", err
	}
	var undone []int
	for n := first + 1; n <= head; n++ {
		v, err := h.at(n)
		if err != nil {
			return 0, "", err
		}
		if v.Act == record.Undo {
			undone = append(undone, now)
		} else if len(undone) > 0 { // an imported history may tell of a redo of nothing
			undone = undone[:len(undone)-1]
		}
		now = v.State
	}
	if len(undone) == 0 {
		return 0, "redo.none", nil
	}
	return undone[len(undone)-1], "", nil
}

// Undo takes back the last thing that a window did to a document, by a new version with
// the state before. Nothing that another window did is taken back.
func (s *Studio) Undo(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	return s.goTo(ctx, Edit{ID: id, Base: base, Window: window}, record.Undo, (*history).undoTo)
}

// Redo brings back what the window's last Undo took.
func (s *Studio) Redo(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	return s.goTo(ctx, Edit{ID: id, Base: base, Window: window}, record.Redo, (*history).redoTo)
}

func (s *Studio) goTo(ctx context.Context, e Edit, act record.Act, find func(*history, int, string) (int, string, error)) (Saved, error) {
	return s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) {
		d, err := w.Document(e.ID)
		if err != nil {
			return Saved{}, nil, err
		}
		if e.Base != d.Version {
			saved, err := s.behind(w, d, e.Base)
			return saved, nil, err
		}
		to, why, err := find(&history{r: w, id: e.ID}, d.Version, e.Window)
		if err != nil {
			return Saved{}, nil, err
		}
		if why != "" {
			list := &problem.List{}
			list.Fail(why, "", "", nil)
			return refused(list), nil, nil
		}
		return s.appendState(w, d, to, act, e.Window)
	})
}

// appendState writes a version that has the state of an earlier one.
func (s *Studio) appendState(w record.Writer, d record.Document, to int, act record.Act, window string) (Saved, []Changed, error) {
	b, removed, err := stateAt(w, d.ID, to)
	if err != nil {
		return Saved{}, nil, err
	}
	if list, err := s.mayGo(w, d, b, removed); err != nil || list.Failed() {
		return refused(list), nil, err
	}
	saved, changed, err := s.appendVersion(w, d, b, record.Version{Window: window, Act: act, State: to, Removed: removed})
	if err == nil {
		saved.Problems = b.problems(d.Kind)
	}
	return saved, changed, err
}

// mayGo says whether a warp may have that state: after work began only amendments
// differ from what stands, and a warp on the loom is not removed.
func (s *Studio) mayGo(w record.Reader, d record.Document, b *body, removed bool) (*problem.List, error) {
	list := &problem.List{}
	if d.Kind != record.Warp {
		return list, nil
	}
	if removed && !d.Removed {
		found, err := s.mayRemove(w, d, true)
		if err != nil {
			return list, err
		}
		list.Append(found)
	}
	_, on, err := started(w, d.ID)
	if err == nil && on {
		list.Append(b.onlyAmends(d.Body))
	}
	return list, err
}

func stateAt(r record.Reader, id record.ID, number int) (*body, bool, error) {
	data, err := r.Body(id, number)
	if err != nil {
		return nil, false, err
	}
	b, err := openBody(data)
	if err != nil {
		return nil, false, err
	}
	found, err := r.Versions(id, number+1, 1)
	if err != nil || len(found) == 0 {
		return nil, false, err
	}
	return b, found[0].Removed, nil
}

// History lists the versions of a document, the newest first, from before a number on (0:
// from the newest), at most that many.
func (s *Studio) History(ctx context.Context, id record.ID, before, most int) ([]record.Version, error) {
	var out []record.Version
	err := s.read(ctx, func(r record.Reader) error {
		if _, err := r.Card(id); err != nil {
			return err
		}
		found, err := r.Versions(id, before, min(max(most, 1), pageOfHistory))
		out = found
		return err
	})
	return out, err
}

// Return makes a document again what it was in an earlier version, as a new one. It is
// something that the window did, and Undo takes it back.
func (s *Studio) Return(ctx context.Context, id record.ID, base int, window string, to int) (Saved, error) {
	var earlier *body
	err := s.read(ctx, func(r record.Reader) (err error) {
		earlier, _, err = stateAt(r, id, to)
		return err
	})
	if err != nil {
		return Saved{}, err
	}
	return s.change(ctx, Edit{ID: id, Base: base, Window: window}, record.Return, func(b *body, _ record.Kind) *problem.List {
		*b = *earlier
		return &problem.List{}
	})
}

// VersionText gives what a document was in a version, as text.
func (s *Studio) VersionText(ctx context.Context, id record.ID, number int) ([]byte, error) {
	var out []byte
	err := s.read(ctx, func(r record.Reader) error {
		d, err := r.Card(id)
		if err != nil {
			return err
		}
		b, _, err := stateAt(r, id, number)
		if err != nil {
			return err
		}
		out, err = b.readable(d.Kind)
		return err
	})
	return out, err
}
