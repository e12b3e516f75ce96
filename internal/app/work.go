package app

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

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
	if stage == record.Begun && record.Said(woven, record.Woven) {
		stage = record.OnTheWay
	}
	return stage, err
}

// loggable is what is written into a log as it stands. What else a log has is entered by
// Start, SitDown, StandUp and Photographed.
var loggable = []string{record.Noted, record.Sat, record.Broken, record.Finished, record.Advanced}

// Logged writes something into a warp's log: a note, a sitting of some minutes, an end
// that broke (which, says the note), that the warp was wound on, that it is finished. Place is
// the pick that it happened at; of a broken end and of winding on it is, where none is said,
// the pick that is woven.
func (s *Studio) Logged(ctx context.Context, h Happened, minutes int) (record.Event, *problem.List, error) {
	list := &problem.List{}
	e := s.logEvent(h, list)
	e.Minutes = minutes
	switch {
	case !slices.Contains(loggable, h.What) && slices.Contains(record.Log.Whats(), h.What):
		list.Fail("event.what", "what", h.What, problem.Args{"valid": loggable})
	case h.What == record.Sat && (minutes < 1 || minutes > mostMinutes):
		list.Fail("sitting.minutes", "minutes", h.Typed, problem.Args{"most": mostMinutes})
	case h.What == record.Noted && strings.TrimSpace(h.Note) == "":
		list.Fail("note.empty", "note", h.Note, nil)
	}
	if list.Failed() {
		return e, list, nil
	}
	return e, list, s.write(ctx, func(w record.Writer) ([]Changed, error) { return s.entered(w, &e, h.Window) })
}

// logEvent begins an entry of a log.
func (s *Studio) logEvent(h Happened, list *problem.List) record.Event {
	e := s.event(h, record.Log, list)
	e.Place = h.Place
	if h.Place < 0 || h.Place > mostPicks {
		list.Fail("log.place", "place", strconv.Itoa(h.Place), problem.Args{"most": mostPicks})
	}
	return e
}

// entered adds an entry to a log. Where it is of the work at the fell, and does not say at
// which pick, it is at the one that is woven.
func (s *Studio) entered(w record.Writer, e *record.Event, window string) ([]Changed, error) {
	atFell := []string{record.Broken, record.Advanced, record.Pictured, record.SatDown}
	if e.Place == 0 && (slices.Contains(atFell, e.What) || e.Path != "") {
		woven, err := wovenOf(w, e.Document)
		if err != nil {
			return nil, err
		}
		e.Place = woven
	}
	return s.happened(w, *e, record.Warp, window)
}

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
	e.Amount.Length = sizeTyped(h.Typed, list)
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
