package app

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"sley/internal/engine/loomside"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// Reach is how far a step has come: so much of what it counts, from the start of the warp.
type Reach struct {
	Step  string // of dressing, or StepWeaving, or a step of finishing as finish.NAME
	Place int
	From  int  // where who says this knew it to be
	Set   bool // the place is set, wherever the work was; else it went there from From
}

// Reached writes down how far a step has come, and gives where it stands then. The same
// said twice counts once; what is said late never takes the work back (record.Reached).
func (s *Studio) Reached(ctx context.Context, h Happened, to Reach) (int, *problem.List, error) {
	list := &problem.List{}
	h.What = record.Dressed
	path := to.Step
	if to.Step == StepWeaving {
		h.What, path = record.Woven, ""
	}
	e := s.event(h, record.Progress, list)
	e.Path, e.Place, e.From = path, to.Place, to.From
	if !to.Set {
		e.State = record.Step
	}
	place := 0
	err := s.atWork(ctx, h, list, func(w record.Writer) ([]Changed, error) {
		if err := s.mayReach(w, h.Document, to, list); err != nil || list.Failed() {
			return nil, err
		}
		changed, err := s.happened(w, e, record.Warp, h.Window)
		if err != nil {
			return nil, err
		}
		events, err := w.Events(h.Document, record.Progress)
		place = record.Reached(events, e.What, path)
		return changed, err
	})
	return place, list, err
}

// atWork changes something of a warp whose work began.
func (s *Studio) atWork(ctx context.Context, h Happened, list *problem.List, do func(record.Writer) ([]Changed, error)) error {
	return s.write(ctx, func(w record.Writer) ([]Changed, error) {
		if _, on, err := started(w, h.Document); err != nil || !on {
			list.Fail("warp.not-started", "", "", nil)
			return nil, err
		}
		if list.Failed() {
			return nil, nil
		}
		return do(w)
	})
}

// mayReach holds a place against what the step has.
func (s *Studio) mayReach(r record.Reader, id record.ID, to Reach, list *problem.List) error {
	now, err := s.loomsideOf(r, id)
	if err != nil {
		return err
	}
	most, steps := 0, []string{StepWeaving}
	for _, step := range now.Steps {
		steps = append(steps, step.ID)
		if step.ID == to.Step {
			most = step.Total
		}
	}
	switch {
	case to.Step == StepWeaving && now.Weaving != nil:
		most = now.Weaving.Total
	case to.Step == StepWeaving:
		most = mostPicks
	case strings.HasPrefix(to.Step, stepFinish) && len(to.Step) < mostStepName:
		most = 1
	}
	switch {
	case most == 0:
		list.Fail("loomside.step", "step", to.Step, problem.Args{"valid": steps})
	case to.Place < 0 || to.Place > most || to.From < 0:
		list.Fail("loomside.place", "place", strconv.Itoa(to.Place), problem.Args{"most": most})
	}
	return nil
}

// mostStepName is how long the name of a step may be.
const mostStepName = 60

// Choose writes down how something is done at the loom: the way of dressing (way), where a
// step begins (side.STEP), that a piece ended here (ends.NUMBER, value here).
func (s *Studio) Choose(ctx context.Context, h Happened, what, value string) (*problem.List, error) {
	list := &problem.List{}
	h.What = record.Chosen
	e := s.event(h, record.Progress, list)
	e.Path, e.Typed = what, value
	err := s.atWork(ctx, h, list, func(w record.Writer) ([]Changed, error) {
		now, err := s.loomsideOf(w, h.Document)
		if err != nil {
			return nil, err
		}
		e.Place = now.Woven
		if mayChoose(now, what, value, list); list.Failed() {
			return nil, nil
		}
		changed, err := s.happened(w, e, record.Warp, h.Window)
		if err == nil && what == ChoiceWay {
			err = w.Set(settingWay, value)
		}
		return changed, err
	})
	return list, err
}

func mayChoose(now *Loomside, what, value string, list *problem.List) {
	step, side := strings.CutPrefix(what, choiceSide)
	number, end := strings.CutPrefix(what, choiceEnd)
	switch {
	case what == ChoiceWay:
		if ways := loomside.Ways(); !slices.Contains(ways, loomside.Way(value)) {
			list.Fail("loomside.way", "value", value, problem.Args{"valid": textsOf(ways)})
		}
	case side:
		now.maySide(step, value, list)
	case end:
		now.mayEnd(number, value, list)
	default:
		list.Fail("loomside.choice", "what", what, problem.Args{"valid": []string{ChoiceWay, choiceSide + "STEP", choiceEnd + "NUMBER"}})
	}
}

func textsOf[T ~string](list []T) []string {
	var out []string
	for _, one := range list {
		out = append(out, string(one))
	}
	return out
}

// maySide says whether a step may begin at a side: while it is under way it may not, since
// what is done was counted from the other.
func (now *Loomside) maySide(step, value string, list *problem.List) {
	sides := loomside.Sides(step)
	if !slices.Contains(sides, loomside.Side(value)) {
		list.Fail("loomside.side", "value", value, problem.Args{"valid": textsOf(sides)})
		return
	}
	for _, s := range now.Steps {
		if s.ID == step && s.Done > 0 && s.Side != loomside.Side(value) {
			list.Fail("loomside.under-way", "value", value, problem.Args{"done": s.Done})
		}
	}
}

// mayEnd says whether a piece may have ended where the weaving stands: in that piece.
func (now *Loomside) mayEnd(number, value string, list *problem.List) {
	n, err := strconv.Atoi(number)
	if now.Weaving == nil || err != nil || n < 1 || n > len(now.Weaving.Pieces) || value != "here" {
		list.Fail("loomside.piece", "what", choiceEnd+number, nil)
		return
	}
	p := now.Weaving.Pieces[n-1]
	if last := p.Before + now.Weaving.Kinds[p.Kind].Picks(); now.Woven <= p.Before || now.Woven > last {
		list.Fail("loomside.not-there", "what", choiceEnd+number, problem.Args{"pick": now.Woven, "from": p.Before + 1, "to": last})
	}
}

// Taped writes down what the tape reads: from the first pick of the piece under way, as
// the plan says the tape is read.
func (s *Studio) Taped(ctx context.Context, h Happened, pick int) (*problem.List, error) {
	list := &problem.List{}
	h.What = record.Taped
	e := s.event(h, record.Progress, list)
	e.Typed = strings.TrimSpace(h.Typed)
	e.Amount.Length = sizeTyped(h.Typed, list)
	return list, s.said(ctx, h, e, pick, list)
}

// Weighed writes down what is left of a weft yarn, as a weight or a length.
func (s *Studio) Weighed(ctx context.Context, h Happened, name string, pick int) (*problem.List, error) {
	list := &problem.List{}
	h.What = record.Weighed
	e := s.event(h, record.Progress, list)
	e.Path, e.Typed = name, strings.TrimSpace(h.Typed)
	amount, err := yarn.ParseAmount(e.Typed)
	var fault *qty.Fault
	if asFault(err, &fault) {
		list.Fail(fault.Code, "amount", h.Typed, fault.Args)
	}
	e.Amount = amount
	return list, s.said(ctx, h, e, pick, list)
}

// said adds what was read or weighed at a pick; 0 is where the weaving stands.
func (s *Studio) said(ctx context.Context, h Happened, e record.Event, pick int, list *problem.List) error {
	return s.atWork(ctx, h, list, func(w record.Writer) ([]Changed, error) {
		now, err := s.loomsideOf(w, h.Document)
		if err != nil {
			return nil, err
		}
		if e.Place = pick; pick == 0 {
			e.Place = now.Woven
		}
		if maySay(now, e, list); list.Failed() {
			return nil, nil
		}
		return s.happened(w, e, record.Warp, h.Window)
	})
}

func maySay(now *Loomside, e record.Event, list *problem.List) {
	if now.Weaving == nil {
		list.Fail("loomside.no-picks", "", "", nil)
		return
	}
	if e.Place < 0 || e.Place > now.Weaving.Total {
		list.Fail("loomside.place", "pick", strconv.Itoa(e.Place), problem.Args{"most": now.Weaving.Total})
	}
	if e.What == record.Taped && e.Place == 0 {
		list.Fail("loomside.nothing-woven", "size", e.Typed, nil)
	}
	if e.What != record.Weighed {
		return
	}
	y, ok := now.Result.Plan.YarnNamed(e.Path)
	switch {
	case !ok || !slices.Contains(now.Weaving.Yarns, e.Path):
		list.Fail("loomside.yarn", "yarn", e.Path, problem.Args{"valid": now.Weaving.Yarns})
	case y.Grist().IsZero() && e.Amount.Mass > 0:
		list.Fail("loomside.grist", "amount", e.Typed, problem.Args{"yarn": e.Path})
	}
}
