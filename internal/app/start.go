package app

import (
	"context"
	"encoding/json"

	"sley/internal/engine/defaults"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Start freezes a warp's plan, because work begins: the plan with its draft, all its
// numbers, and the versions of the program and of its starting values are kept as they
// are now. What is changed later are amendments. A plan with errors is refused.
func (s *Studio) Start(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	return s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) {
		d, err := w.Document(id)
		if err != nil {
			return Saved{}, nil, err
		}
		if d.Kind != record.Warp {
			return Saved{}, nil, &record.Trouble{Code: record.NotFound, Found: "warp"}
		}
		if d.Version != base || d.Removed {
			saved, err := s.behind(w, d, base)
			return saved, nil, err
		}
		nodes, list, err := s.mayStart(w, d)
		if err != nil || list.Failed() {
			return refused(list), nil, err
		}
		changed, err := s.freeze(w, d, nodes, window)
		return Saved{ID: id, Version: d.Version, Problems: list}, changed, err
	})
}

// mayStart reckons the plan and says whether work may begin.
func (s *Studio) mayStart(r record.Reader, d record.Document) ([]byte, *problem.List, error) {
	list := &problem.List{}
	if _, on, err := started(r, d.ID); err != nil || on {
		list.Fail("warp.started", "", d.Name, nil)
		return nil, list, err
	}
	b, err := openBody(d.Body)
	if err != nil {
		return nil, list, err
	}
	from, err := b.source(d.Name)
	if err != nil {
		return nil, list, err
	}
	result, list := ReckonPlan(from, "", false)
	list = unplaced(list)
	if result == nil {
		return nil, list, nil
	}
	return frozenNodes(result), list, nil
}

func (s *Studio) freeze(w record.Writer, d record.Document, nodes []byte, window string) ([]Changed, error) {
	e := record.Event{
		ID: s.newID(), Document: d.ID, Topic: record.Log, What: record.Started,
		At: s.moment(), Place: d.Version,
	}
	changed, err := s.happened(w, e, record.Warp, window)
	if err != nil {
		return nil, err
	}
	return changed, w.Freeze(record.Frozen{
		Warp: d.ID, Version: d.Version, At: e.At, Event: e.ID, Program: s.program,
		Defaults: defaults.Version, Body: d.Body, Nodes: nodes,
	})
}

// frozenNode is a number of a plan that was frozen.
type frozenNode struct {
	ID       string      `json:"id"`
	Is       string      `json:"is"`
	Kind     reckon.Kind `json:"kind"`
	State    string      `json:"state,omitempty"`
	Currency string      `json:"currency,omitempty"`
}

func frozenNodes(result *reckon.Result) []byte {
	nodes := make([]frozenNode, 0, len(result.Nodes))
	for _, n := range result.Nodes {
		nodes = append(nodes, frozenNode{n.ID, n.Is.String(), n.Kind, n.State.String(), n.Currency})
	}
	data, _ := json.Marshal(nodes) // plain values, which cannot fail
	return data
}

// Frozen gives the plan of a warp as it was when the work that is on now began; nil when
// none is.
func (s *Studio) Frozen(ctx context.Context, id record.ID) (*record.Frozen, error) {
	var out *record.Frozen
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = frozen(r, id)
		return err
	})
	return out, err
}

func frozen(r record.Reader, id record.ID) (*record.Frozen, error) {
	start, on, err := started(r, id)
	if err != nil || !on {
		return nil, err
	}
	all, err := r.Frozen(id)
	for _, f := range all {
		if f.Event == start.ID {
			return &f, nil
		}
	}
	if err == nil {
		err = &record.Trouble{Code: record.Damaged, Found: "a start without the plan that was frozen"}
	}
	return nil, err
}

// WarpSource gives a warp as a plan file with its draft beside it, for reckoning and for
// sheets. After work began it is the plan that was frozen, with the amendments since.
// The list warns where this program reckons that plan otherwise than was reckoned then.
func (s *Studio) WarpSource(ctx context.Context, id record.ID) (Source, *problem.List, error) {
	var from Source
	list := &problem.List{}
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, id)
		if err != nil {
			return err
		}
		if d.Kind != record.Warp {
			return &record.Trouble{Code: record.NotFound, Found: "warp"}
		}
		if from, err = b.source(d.Name); err != nil {
			return err
		}
		if from.Units, err = unitsOf(r); err != nil {
			return err
		}
		f, err := frozen(r, id)
		if err == nil && f != nil {
			list, err = reckonedOtherwise(f)
		}
		return err
	})
	return from, list, err
}

// reckonedOtherwise reckons a frozen plan again and warns of each number that is another now.
func reckonedOtherwise(f *record.Frozen) (*problem.List, error) {
	list := &problem.List{}
	b, err := openBody(f.Body)
	if err != nil {
		return list, err
	}
	from, err := b.source("")
	if err != nil {
		return list, err
	}
	result, found := ReckonPlan(from, "", false)
	if result == nil {
		return unplaced(found), nil
	}
	var was []frozenNode
	if err := json.Unmarshal(f.Nodes, &was); err != nil {
		return list, &record.Trouble{Code: record.Damaged, Found: "the numbers of a plan that was frozen", Err: err}
	}
	for _, n := range was {
		now, ok := result.Node(n.ID)
		if !ok || now.Is.String() != n.Is {
			list.Warn("frozen.differs", n.ID, n.Is, problem.Args{"program": f.Program})
		}
	}
	return list, nil
}
