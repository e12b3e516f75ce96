package app

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"

	"sley/internal/engine/defaults"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

func asFault(err error, to **qty.Fault) bool { return errors.As(err, to) }

// started gives the start of a warp's work that stands, if there is one.
func started(r record.Reader, id record.ID) (record.Event, bool, error) {
	log, err := r.Events(id, record.Log)
	if err != nil {
		return record.Event{}, false, err
	}
	for _, e := range slices.Backward(record.Standing(log)) {
		if e.What == record.Started {
			return e, true, nil
		}
	}
	return record.Event{}, false, nil
}

// stageOf says where the work of a warp stands; other documents have no stage.
func stageOf(r record.Reader, d record.Document) (string, error) {
	if d.Kind != record.Warp || d.ID == 0 {
		return record.StagePlanned(d.Kind), nil
	}
	log, err := r.Events(d.ID, record.Log)
	if err != nil {
		return "", err
	}
	stage := record.Planned
	for _, e := range record.Standing(log) {
		switch e.What {
		case record.Finished:
			return record.Done, nil
		case record.Started:
			stage = record.Begun
		}
	}
	woven, err := r.Events(d.ID, record.Progress)
	if stage == record.Begun && len(record.Standing(woven)) > 0 {
		stage = record.OnTheWay
	}
	return stage, err
}

// Start freezes a warp's plan, because work begins: the plan with its draft, all its
// numbers, and the versions of the program and of its starting values are kept as they
// are now. What is changed later are amendments. A plan with errors is refused.
func (s *Studio) Start(ctx context.Context, id record.ID, base int, window string) (Saved, error) {
	var saved Saved
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		d, err := w.Document(id)
		if err != nil {
			return nil, err
		}
		if d.Kind != record.Warp {
			return nil, &record.Trouble{Code: record.NotFound, Found: "warp"}
		}
		if d.Version != base || d.Removed {
			saved, err = s.behind(w, d, base)
			return nil, err
		}
		nodes, list, err := s.mayStart(w, d)
		if err != nil || list.Failed() {
			saved = refused(list)
			return nil, err
		}
		saved = Saved{ID: id, Version: d.Version, Problems: list}
		return s.freeze(w, d, nodes, window)
	})
	return saved, err
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

// amendable are the paths that may be changed after work began.
func amendable(path string) bool {
	return path == "name" || path == "note" || path == "built" || strings.HasPrefix(path, "built.") || strings.HasPrefix(path, "built[")
}

// onlyAmends says what in a body differs from what stands that no amendment may change.
func (b *body) onlyAmends(stands []byte) *problem.List {
	list := &problem.List{}
	other := mustOpen(stands)
	for _, a := range apart(record.Warp, other, other, b) {
		if !amendable(a.Path) {
			list.Fail("warp.frozen", a.Path, a.Mine, problem.Args{"was": a.Base})
		}
	}
	return list
}

// Amend says what stands on the loom where it differs from the plan: paths are those of
// [built], as ends. Only a warp whose work began is amended.
func (s *Studio) Amend(ctx context.Context, e Edit) (Saved, error) {
	var on bool
	err := s.read(ctx, func(r record.Reader) (err error) {
		_, on, err = started(r, e.ID)
		return err
	})
	if err != nil {
		return Saved{}, err
	}
	if !on {
		list := &problem.List{}
		list.Fail("warp.not-started", "", "", nil)
		return refused(list), nil
	}
	sets := slices.Clone(e.Sets)
	for i := range sets {
		sets[i].Path = "built." + sets[i].Path
	}
	e.Sets = sets
	return s.change(ctx, e, record.Amend, func(b *body, kind record.Kind) *problem.List {
		list := b.apply(kind, e.Sets)
		if tree, err := b.plan(); err == nil && !list.Failed() {
			_, found := tree.Plan("")
			list.Append(underBuilt(found))
		}
		return list
	})
}

// underBuilt are the errors of what was amended: at the loom nothing is half-typed.
func underBuilt(found *problem.List) *problem.List {
	list := &problem.List{}
	for _, p := range found.All() {
		if p.Severity == problem.Error && strings.HasPrefix(p.Path, "built") {
			list.Add(p)
		}
	}
	return list
}

// Logged writes something into a warp's log: a note, a sitting of some minutes, a broken
// end, that it is finished.
func (s *Studio) Logged(ctx context.Context, h Happened, minutes int) (record.Event, *problem.List, error) {
	list := &problem.List{}
	e := s.event(h, record.Log, list)
	e.Minutes = minutes
	switch {
	case h.What == record.Started:
		list.Fail("event.what", "what", h.What, problem.Args{"valid": record.Log.Whats()[1:]})
	case h.What == record.Sat && (minutes < 1 || minutes > mostMinutes):
		list.Fail("sitting.minutes", "minutes", h.Typed, problem.Args{"most": mostMinutes})
	case h.What == record.Noted && strings.TrimSpace(h.Note) == "":
		list.Fail("note.empty", "note", h.Note, nil)
	}
	if list.Failed() {
		return e, list, nil
	}
	return e, list, s.happen(ctx, e, record.Warp, h.Window)
}

// mostMinutes is how long one sitting may be: a day.
const mostMinutes = 24 * 60

// mostPicks is how many picks a warp may have: far more than any.
const mostPicks = 10_000_000

// Wove writes down how many picks of a warp are woven, counted from its start: so the
// same said twice, or late, does no harm. The last said counts.
func (s *Studio) Wove(ctx context.Context, h Happened, pick int) (*problem.List, error) {
	list := &problem.List{}
	h.What = record.Woven
	e := s.event(h, record.Progress, list)
	e.Place = pick
	if pick < 1 || pick > mostPicks {
		list.Fail("progress.pick", "pick", h.Typed, problem.Args{"most": mostPicks})
	}
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		if _, on, err := started(w, h.Document); err != nil || !on {
			list.Fail("warp.not-started", "", "", nil)
			return nil, err
		}
		if list.Failed() {
			return nil, nil
		}
		return s.happened(w, e, record.Warp, h.Window)
	})
	return list, err
}

// Measured writes down a size that was measured of a warp: what, as pieces[0].length, in
// which state, and the size with its unit.
func (s *Studio) Measured(ctx context.Context, h Happened, path, state string) (record.Event, *problem.List, error) {
	list := &problem.List{}
	h.What = record.Size
	e := s.event(h, record.Measurement, list)
	e.Path, e.State, e.Typed = path, state, strings.TrimSpace(h.Typed)
	if valid := MeasuredStates(path); !slices.Contains(valid, state) {
		list.Fail("measurement.state", "state", state, problem.Args{"valid": valid})
	}
	size, err := qty.ParseLength(e.Typed)
	var fault *qty.Fault
	if asFault(err, &fault) {
		list.Fail(fault.Code, "size", h.Typed, fault.Args)
	} else if size <= 0 {
		list.Fail("measurement.nothing", "size", h.Typed, nil)
	}
	e.Amount.Length = size
	shown, err := s.Show(ctx, h.Document)
	if err != nil {
		return e, list, err
	}
	if valid := measurable(shown.Text); !slices.Contains(valid, path) {
		list.Fail("measurement.path", "path", path, problem.Args{"valid": valid})
	}
	if list.Failed() {
		return e, list, nil
	}
	return e, list, s.happen(ctx, e, record.Warp, h.Window)
}

// MeasuredStates lists the states that what stands at a path may be measured in: those of
// a width, or those of a length.
func MeasuredStates(path string) []string {
	is := warp.State.IsLength
	if strings.HasSuffix(path, ".width") {
		is = warp.State.IsWidth
	}
	var out []string
	for state := warp.Finished; state <= warp.InReed; state++ {
		if is(state) {
			out = append(out, state.String())
		}
	}
	return out
}

// Measurable lists what of a warp can be measured.
func (s *Studio) Measurable(ctx context.Context, id record.ID) ([]string, error) {
	shown, err := s.Show(ctx, id)
	if err != nil {
		return nil, err
	}
	return measurable(shown.Text), nil
}

// measurable lists what of a plan can be measured.
func measurable(plan []byte) []string {
	var out []string
	for _, path := range FindPaths("", plan) {
		if strings.HasSuffix(path, ".length") || strings.HasSuffix(path, ".width") {
			out = append(out, path)
		}
	}
	return out
}

// Events lists what happened to a document in a topic, in the order of the book.
func (s *Studio) Events(ctx context.Context, id record.ID, topic record.Topic) ([]record.Event, error) {
	var out []record.Event
	err := s.read(ctx, func(r record.Reader) error {
		if _, err := r.Card(id); err != nil {
			return err
		}
		found, err := r.Events(id, topic)
		out = found
		return err
	})
	return out, err
}
