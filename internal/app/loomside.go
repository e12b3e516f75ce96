package app

import (
	"context"
	"errors"
	"strconv"
	"strings"

	"sley/internal/engine/loomside"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Loomside is a warp as it is worked beside the loom: the steps of dressing it with how
// far each is, and the weaving with where it stands and how it will come out.
type Loomside struct {
	Card
	Mark     string         // of the plan, as sheets bear it
	Result   *reckon.Result // nil where the plan has errors
	Problems *problem.List
	Started  bool
	Stage    string
	Way      loomside.Way
	Steps    []LoomsideStep
	Weaving  *loomside.Weaving // nil where the picks are not known
	Woven    int               // picks, from the start of the warp
	Forecast *loomside.Forecast
	Remedies []loomside.Remedy
	Ended    map[int]string       // pieces that ended otherwise than planned, with the event that says so
	Said     []record.Event       // what stands of the readings and the weighings, in order
	Shown    warp.Units           // of the book
	Leaves   []map[string]qty.Rat // of each yarn after each part of the winding, where it is known
}

// LoomsideStep is a step of dressing, and how much of it is done.
type LoomsideStep struct {
	loomside.Step
	Done int
}

// The paths of what is chosen at the loom, and of where the weaving is.
const (
	ChoiceWay   = "way"
	choiceSide  = "side."
	choiceEnd   = "ends."
	StepWeaving = "weaving"
	// stepFinish begins the names of the steps after the weaving, each done or not.
	stepFinish = "finish."
)

// settingWay is the way that the weaver chose last: she begins the next warp with it.
const settingWay = "loomside-way"

// Loomside tells what is to be done at the loom, and how far it is. Trouble: NotFound
// where there is no such warp.
func (s *Studio) Loomside(ctx context.Context, id record.ID) (*Loomside, error) {
	var out *Loomside
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = s.loomsideOf(r, id)
		return err
	})
	return out, err
}

func (s *Studio) loomsideOf(r record.Reader, id record.ID) (*Loomside, error) {
	d, b, err := openDocument(r, id)
	if err != nil {
		return nil, err
	}
	if d.Kind != record.Warp {
		return nil, &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
	}
	out := &Loomside{Card: cardOf(d)}
	if out.Shown, err = unitsOf(r); err != nil {
		return nil, err
	}
	if out.Stage, err = stageOf(r, d); err != nil {
		return nil, err
	}
	if _, out.Started, err = started(r, id); err != nil {
		return nil, err
	}
	events, err := r.Events(id, record.Progress)
	if err != nil {
		return nil, err
	}
	usual, err := r.Setting(settingWay)
	if err != nil {
		return nil, err
	}
	from, err := b.source(d.Name)
	if err != nil {
		return nil, err
	}
	out.Mark = Mark(from.Text)
	at := atLoom{r: r, b: b, events: record.Standing(events), all: events, out: out}
	at.laid(s.looms.of(d.ID, d.Version, at.asked(loomside.Way(usual)), b))
	return out, errors.Join(at.leaves(), at.weave())
}

// atLoom puts together what is known at the loom.
type atLoom struct {
	r           record.Reader
	b           *body
	all, events []record.Event // all of them, and those that stand
	out         *Loomside
}

// asked is how the weaver wants it, by what she chose, else as the last warp was.
func (a atLoom) asked(usual loomside.Way) loomAsked {
	asked := loomAsked{Asked: loomside.Asked{Way: loomside.BackToFront, Sides: map[string]loomside.Side{}}, ends: map[int]int{}}
	if usual != "" {
		asked.Way = usual
	}
	a.out.Ended = map[int]string{}
	for _, e := range a.events {
		if e.What != record.Chosen {
			continue
		}
		if e.Path == ChoiceWay {
			asked.Way = loomside.Way(e.Typed)
		}
		if step, ok := strings.CutPrefix(e.Path, choiceSide); ok {
			asked.Sides[step] = loomside.Side(e.Typed)
		}
		if k, ok := strings.CutPrefix(e.Path, choiceEnd); ok {
			n, _ := strconv.Atoi(k)
			asked.ends[n], a.out.Ended[n] = e.Place, e.ID
		}
	}
	a.out.Way = asked.Way
	return asked
}

// laid takes over what the plan alone says, with how far each step is.
func (a atLoom) laid(l *laidOut) {
	out := a.out
	out.Result, out.Problems, out.Weaving = l.result, l.problems, l.weaving
	for _, step := range l.steps {
		out.Steps = append(out.Steps, LoomsideStep{step, min(record.Reached(a.all, record.Dressed, step.ID), step.Total)})
	}
	out.Woven = record.Reached(a.all, record.Woven, "")
	if out.Weaving != nil {
		out.Woven = min(out.Woven, out.Weaving.Total)
	}
}

// leaves tells what is left of the yarns of the warp after each bout.
func (a atLoom) leaves() error {
	out := a.out
	if out.Result == nil || len(out.Steps) == 0 || out.Steps[0].ID != loomside.Winding {
		return nil
	}
	wound, ok := out.Result.Node("warp.wound")
	stock := map[string]qty.Rat{}
	for _, y := range out.Result.Plan.Yarns {
		is, known, err := a.stock(y.Name)
		if err != nil {
			return err
		}
		if known {
			stock[y.Name] = is
		}
	}
	if ok {
		out.Leaves = loomside.Leaves(out.Steps[0].Step, wound.Is, stock)
	}
	return nil
}

// weave tells how it will come out.
func (a atLoom) weave() error {
	out := a.out
	if out.Weaving == nil {
		return nil
	}
	told, err := a.told(out.Weaving)
	if err != nil {
		return err
	}
	f := out.Weaving.Look(out.Result, told)
	out.Forecast, out.Remedies = &f, out.Weaving.Remedies(f)
	return nil
}

// told is what was said of tape and yarn.
func (a atLoom) told(w *loomside.Weaving) (loomside.Told, error) {
	told := loomside.Told{Pick: a.out.Woven, Left: map[string]loomside.Scale{}, Stock: map[string]qty.Rat{}}
	for _, e := range a.events {
		switch e.What {
		case record.Taped:
			told.Readings = append(told.Readings, loomside.Reading{Pick: e.Place, Is: e.Amount.Length})
			a.out.Said = append(a.out.Said, e)
		case record.Weighed:
			if y, ok := a.out.Result.Plan.YarnNamed(e.Path); ok {
				told.Left[e.Path] = loomside.Scale{Pick: e.Place, Is: e.Amount.Holds(y.Grist())}
			}
			a.out.Said = append(a.out.Said, e)
		}
	}
	for _, name := range w.Yarns {
		is, known, err := a.stock(name)
		if err != nil {
			return told, err
		}
		if known {
			told.Stock[name] = is
		}
	}
	return told, nil
}

// stock is how much of a yarn there was before this warp was wound: what the plan says is
// there, else what its shelf has, with what was entered as used by this warp.
func (a atLoom) stock(name string) (qty.Rat, bool, error) {
	y, ok := a.out.Result.Plan.YarnNamed(name)
	if !ok {
		return qty.Rat{}, false, nil
	}
	if y.Stock.Given() {
		return y.Stock.Is.Holds(y.Grist()), true, nil
	}
	o := a.b.originOf(YarnPart(name))
	if o == nil {
		return qty.Rat{}, false, nil
	}
	on, err := a.r.Marked(o.Mark)
	if err != nil {
		if record.Is(err, record.NotFound) {
			err = nil
		}
		return qty.Rat{}, false, err
	}
	_, b, err := openDocument(a.r, on.ID)
	if err != nil {
		return qty.Rat{}, false, err
	}
	stock, err := stockOf(a.r, on.ID, b)
	if err != nil || len(record.Standing(stock.Events)) == 0 || stock.Unknown {
		return qty.Rat{}, false, err
	}
	used := RecordYarn{}
	if err := used.usedBy(a.r, o.Mark, a.out.ID); err != nil || used.Used == nil {
		return stock.Length, true, err
	}
	return stock.Length.Add(used.Used.Length), true, nil
}
