package app

import (
	"context"

	"sley/internal/engine/learn"
	"sley/internal/engine/reckon"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// Record is what came of a warp: sizes as planned and as measured, what they teach, what
// yarn it took, and its log.
type Record struct {
	Card
	Sizes  []RecordSize
	Learnt []RecordLearnt
	Yarns  []RecordYarn
	Sett   *reckon.Node   // as sleyed; nil where the plan cannot be reckoned
	Log    []record.Event // those that stand, in the order of the book
}

// RecordSize is a length or a width of a kind of piece, in each state that it was planned
// or measured in, from the warp to the cloth.
type RecordSize struct {
	Path   string // pieces[0].length
	Piece  string // what it is called; may be empty
	Index  int    // of the piece
	Width  bool
	States []RecordState
}

// RecordState is a size in one state.
type RecordState struct {
	State    warp.State
	Planned  *reckon.Node // nil where the plan does not reach the state
	Measured warp.Size    // Typed is empty where it was not measured
	Event    string       // that says so; empty where it is of the plan's [built], or Counted
	Counted  bool         // not measured, but dents that were sleyed
}

// Learnt is an allowance that two sizes of one stretch of cloth say.
type Learnt = learn.Learnt

// RecordLearnt is an allowance that the measured sizes of a piece say.
type RecordLearnt struct {
	Learnt
	Path, Piece string
	Index       int        // of the piece
	Planned     *qty.Rat   // the share that the plan lost on the way; nil where it does not say
	Hems        qty.Length // that the cloth measured has, beside what was between them
	Counted     bool       // the width in the reed is that of the dents sleyed
}

// RecordYarn is a yarn of a warp: what the plan needs of it, and what was entered as used.
type RecordYarn struct {
	Name   string // in the plan
	Shelf  string // on the shelf it came from; empty: it came from none
	ID     record.ID
	Need   *reckon.Node
	Weight *reckon.Node
	Used   *Stock // what was entered of the shelf's yarn for this warp; nil where nothing was
}

// Record tells what came of a warp. Before work began it has what is planned and what was
// measured all the same. Trouble: NotFound where there is no such warp.
func (s *Studio) Record(ctx context.Context, id record.ID) (*Record, error) {
	var out *Record
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = recordOf(r, id)
		return err
	})
	return out, err
}

func recordOf(r record.Reader, id record.ID) (*Record, error) {
	out, b, err := recordWith(r, id)
	if err != nil {
		return nil, err
	}
	log, err := r.Events(id, record.Log)
	if err != nil {
		return nil, err
	}
	out.Log = record.Standing(log)
	return out, out.yarns(r, b)
}

// recordWith is a record without its yarns and its log, and the body it is of.
func recordWith(r record.Reader, id record.ID) (*Record, *body, error) {
	d, b, err := openDocument(r, id)
	if err != nil {
		return nil, nil, err
	}
	if d.Kind != record.Warp {
		return nil, nil, &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
	}
	out := &Record{Card: cardOf(d)}
	return out, b, out.measure(r, b.reckon())
}

// measure finds the sizes of a warp and what they teach.
func (out *Record) measure(r record.Reader, of *reckoned) error {
	events, err := r.Events(out.ID, record.Measurement)
	if err != nil {
		return err
	}
	_, on, err := started(r, out.ID)
	if err != nil {
		return err
	}
	found := sizesOf{reckoned: of, events: record.Standing(events), started: on}
	for i := range of.plan.Pieces {
		for _, width := range []bool{false, true} {
			size := found.size(i, width)
			if len(size.States) > 0 {
				out.Sizes = append(out.Sizes, size)
				out.Learnt = append(out.Learnt, found.learnt(size)...)
			}
		}
	}
	if of.result != nil {
		out.Sett = nodeOf(of.result, "sett.exact")
	}
	return nil
}

func nodeOf(result *reckon.Result, id string) *reckon.Node {
	if result == nil {
		return nil
	}
	if n, ok := result.Node(id); ok {
		return &n
	}
	return nil
}

// yarns finds what of each yarn the warp needs, and what was entered as used by it.
func (out *Record) yarns(r record.Reader, b *body) error {
	of := b.reckon()
	for _, y := range of.plan.Yarns {
		at := "yarns[" + y.Name + "]."
		used := RecordYarn{Name: y.Name, Need: nodeOf(of.result, at+"need"), Weight: nodeOf(of.result, at+"weight")}
		if o := b.originOf(YarnPart(y.Name)); o != nil {
			if err := used.usedBy(r, o.Mark, out.ID); err != nil {
				return err
			}
		}
		out.Yarns = append(out.Yarns, used)
	}
	return nil
}

// usedBy sums up what was entered of a yarn of the shelf as used by a warp. A yarn that
// the book has no more has nothing entered.
func (y *RecordYarn) usedBy(r record.Reader, mark string, by record.ID) error {
	on, err := r.Marked(mark)
	if record.Is(err, record.NotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	y.ID, y.Shelf = on.ID, on.Name
	events, err := r.Events(on.ID, record.Stock)
	if err != nil {
		return err
	}
	_, b, err := openDocument(r, on.ID)
	if err != nil {
		return err
	}
	read, _ := b.yarn()
	for _, e := range record.Standing(events) {
		if e.Warp != by || e.What != record.Used {
			continue
		}
		if y.Used == nil {
			y.Used = &Stock{}
		}
		y.Used.Events = append(y.Used.Events, e)
		e.What = record.Bought // what was used is summed up as what is there
		y.Used.add(e, read.Grist())
	}
	return nil
}
