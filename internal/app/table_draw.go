package app

import (
	"context"
	"fmt"
	"strings"

	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// TableAct is one act on a table: a stroke, or what else makes another draft of it.
type TableAct struct {
	strokes.Act
	Name, Value string            // of DeedChange: a change of Changes, and what it takes
	Weave       string            // of DeedWeave: of the catalogue
	Values      map[string]string // of DeedWeave: what it asks for
	Blocks      Blocked           // of DeedBlocks
}

// The deeds beside those of strokes.
const (
	DeedChange strokes.Deed = "change" // one of Changes
	DeedWeave  strokes.Deed = "weave"  // a weave of the catalogue in the place of the draft
	DeedBlocks strokes.Deed = "blocks" // a profile written out in the place of the draft
)

// Drawing is one gesture on a table.
type Drawing struct {
	Edit
	Whole bool // on the whole warp, as Table has it
	Acts  []TableAct
}

// Drew is what came of it. Table is as it is now, nil where nothing was written; Splices
// lead there from what it was.
type Drew struct {
	Saved
	Table   *Table
	Splices map[strokes.Part]strokes.Splice
	// Told is what there is to say of acts that were made: that they take more shafts or
	// treadles than the loom has, or than there were. Problems are those of the document.
	Told *problem.List

	was *Table
}

// DrawOn makes acts on the draft of the shelf, or of a warp, in their order as one new
// version. Problems of acts are at acts[i]. Trouble: NotFound where e is of neither.
func (s *Studio) DrawOn(ctx context.Context, asked Drawing) (Drew, error) {
	var out Drew
	saved, err := s.saving(ctx, func(w record.Writer) (Saved, []Changed, error) {
		saved, changed, err := s.changeIn(w, asked.Edit, record.Edit, func(b *body, kind record.Kind) *problem.List {
			return out.draw(b, kind, asked)
		})
		if err == nil && !saved.Refused && saved.Conflict == nil {
			err = out.finish(w, asked)
		}
		return saved, changed, err
	})
	out.Saved = saved
	return out, err
}

// TryDrawing says what would come of a gesture. Nothing is written.
func (s *Studio) TryDrawing(ctx context.Context, asked Drawing) (Drew, error) {
	var out Drew
	err := s.read(ctx, func(r record.Reader) error {
		d, b, err := openDocument(r, asked.ID)
		if err != nil {
			return err
		}
		out.Saved = Saved{ID: d.ID, Version: d.Version}
		if asked.Base != d.Version || d.Removed {
			out.Saved, err = s.behind(r, d, asked.Base)
			return err
		}
		if out.Problems, err = s.mayChange(r, d, b, func(b *body, kind record.Kind) *problem.List { return out.draw(b, kind, asked) }); err != nil || out.Problems.Failed() {
			out.Refused = true
			return err
		}
		out.Problems = b.problems(d.Kind) // as they would be
		out.Table, _, err = tableOf(r, d, b, asked.Whole)
		out.compare()
		return err
	})
	return out, err
}

// draw makes the acts on a body and keeps what was there before.
func (o *Drew) draw(b *body, kind record.Kind, asked Drawing) *problem.List {
	was, list := tableIn(b, kind, asked.Whole)
	if was == nil {
		return list
	}
	if was.Fixed != "" {
		list = &problem.List{}
		list.Fail("table.fixed", "", string(was.Fixed), nil)
		return list
	}
	if list = uncolourable(was, asked.Acts); list.Failed() {
		return list
	}
	is, list := drawnOn(was, asked.Acts)
	if is != nil {
		o.Told = beyondLoom(was, is, list)
		list.Append(b.takeTable(was, is))
	}
	o.was = was
	return list
}

// finish reads what stands now.
func (o *Drew) finish(r record.Reader, asked Drawing) error {
	d, b, err := openDocument(r, asked.ID)
	if err != nil {
		return err
	}
	o.Table, _, err = tableOf(r, d, b, asked.Whole)
	o.compare()
	return err
}

func (o *Drew) compare() {
	if o.Table != nil && o.was != nil {
		o.Splices = strokes.Between(o.was.Draft, o.Table.Draft)
	}
}

// drawnOn makes acts one after another. What cannot be made is told for each; the draft is
// then nil.
func drawnOn(t *Table, acts []TableAct) (*draft.Draft, *problem.List) {
	d, list := t.Draft, &problem.List{}
	for i := range acts {
		made, found := drawnOnce(d, &acts[i], t)
		for _, p := range found.All() {
			p.Path = actPath(i, p.Path)
			list.Add(p)
		}
		if made != nil {
			d = made
		}
	}
	if list.Failed() {
		return nil, list
	}
	return d, list
}

// actPath is the place of a problem in one act of several.
func actPath(i int, path string) string {
	for _, whole := range []string{"acts[0]", "changes[0]"} {
		if rest, ok := strings.CutPrefix(path, whole); ok {
			return fmt.Sprintf("acts[%d]%s", i, rest)
		}
	}
	return fmt.Sprintf("acts[%d].%s", i, path)
}

// drawnOnce makes one act; paths of its problems begin acts[0], as those of strokes do.
func drawnOnce(d *draft.Draft, a *TableAct, t *Table) (*draft.Draft, *problem.List) {
	switch a.Do {
	case DeedChange:
		return changedBy(d, a, t)
	case DeedWeave:
		made, list := MakeWeave(a.Weave, a.Values)
		return laidIn(d, a, made, list)
	case DeedBlocks:
		made, list := WriteBlocks(a.Blocks)
		return laidIn(d, a, made, list)
	}
	act := a.Act
	if act.Names == nil {
		act.Names = t.Names
	}
	return strokes.Do(d, []strokes.Act{act})
}

func changedBy(d *draft.Draft, a *TableAct, t *Table) (*draft.Draft, *problem.List) {
	name := a.Name
	if a.Value != "" {
		name += "=" + a.Value
	}
	change := func() (*Drafted, error) { return ChangeDraft(&Drafted{Draft: d}, []string{name}) }
	if name == forFeetName && d == t.Draft {
		change = func() (*Drafted, error) { return onFeetOf(d, t.FillPicks) }
	}
	made, err := change()
	if err != nil {
		return nil, notMade(0, err)
	}
	coloured(made.Draft)
	return made.Draft, &problem.List{}
}

// laidIn puts a draft that was made in the place of a stretch of the threading, or of all
// where none is said.
func laidIn(d *draft.Draft, a *TableAct, made *Drafted, list *problem.List) (*draft.Draft, *problem.List) {
	if made == nil || a.To == 0 {
		return inPlaceOf(d, made, list)
	}
	is, ok := strokes.Threaded(d, made.Draft, a.From, a.To)
	if !ok {
		list.Fail("stroke.stretch", "acts[0].from", fmt.Sprintf("%d-%d", a.From, a.To), problem.Args{"part": string(strokes.Threading), "has": d.Ends()})
		return nil, list
	}
	coloured(is)
	return is, list
}

// inPlaceOf puts a draft that was made in the place of another, tied for its loom.
func inPlaceOf(d *draft.Draft, made *Drafted, list *problem.List) (*draft.Draft, *problem.List) {
	if made == nil {
		return nil, list
	}
	is := made.Draft
	if tied, ok := is.OnLoom(d.Shed); ok && d.Shed != is.Shed {
		is = tied
	}
	is.Name, is.Note = d.Name, d.Note
	coloured(is)
	return is, list
}
