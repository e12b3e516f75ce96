package app

import (
	"context"
	"fmt"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// Demo is what a new book begins with, so that there is something to look at.
type Demo struct {
	Warps  []Source
	Shelf  []DemoShelf
	Weaves []DemoWeave
	Work   []DemoWork
}

// DemoShelf puts a part of a warp of the demo on its shelf, and the warp takes it from
// there.
type DemoShelf struct {
	Warp, Part, Name string
	Also             []DemoPart // parts of other warps that are the same
	Stock            []DemoStock
}

// DemoPart is a part of a warp.
type DemoPart struct{ Warp, Part string }

// DemoStock is something that happened to a yarn.
type DemoStock struct{ What, Amount, Note string }

// DemoWeave is a draft of the catalogue on the shelf.
type DemoWeave struct {
	Weave, Name string
	Values      map[string]string
}

// DemoWork is what was done with a warp.
type DemoWork struct {
	Warp     string
	Notes    []string
	Picks    int
	Finished bool
	Sizes    []DemoSize
}

// DemoSize is a size that was measured.
type DemoSize struct{ Path, State, Size string }

// demoWindow is who wrote the demo, so that nobody's Undo takes it.
const demoWindow = "demo"

// FillDemo writes the demo into a book, whole or not at all. An error is a fault of the
// demo's, or of the book's.
func (s *Studio) FillDemo(ctx context.Context, demo Demo) error {
	return s.write(ctx, func(w record.Writer) ([]Changed, error) {
		f := &demoFill{s: s, w: w, bodies: map[string]*body{}, ids: map[string]record.ID{}}
		for _, from := range demo.Warps {
			if err := f.warp(from); err != nil {
				return nil, err
			}
		}
		for _, on := range demo.Shelf {
			if err := f.shelf(on); err != nil {
				return nil, err
			}
		}
		for _, weave := range demo.Weaves {
			if err := f.weave(weave); err != nil {
				return nil, err
			}
		}
		if err := f.addWarps(); err != nil {
			return nil, err
		}
		for _, work := range demo.Work {
			if err := f.work(work); err != nil {
				return nil, err
			}
		}
		return f.changed, nil
	})
}

// demoFill is a demo on its way into a book.
type demoFill struct {
	s       *Studio
	w       record.Writer
	names   []string         // of the warps, in order
	bodies  map[string]*body // of warps, by name
	ids     map[string]record.ID
	changed []Changed
}

// wrong is a demo that is not sound, which only a mistake of ours makes.
func wrong(what string, list *problem.List) error {
	if list != nil && list.Failed() {
		return fmt.Errorf("internal error: the demo's %s: %s at %s", what, list.All()[0].Code, list.All()[0].Path)
	}
	return nil
}

func (f *demoFill) warp(from Source) error {
	b, list := warpBody(from)
	if err := wrong(from.Name, list); err != nil {
		return err
	}
	b.Source = nil
	f.names = append(f.names, b.name(record.Warp))
	f.bodies[b.name(record.Warp)] = b
	return nil
}

func (f *demoFill) add(kind record.Kind, b *body) (record.ID, error) {
	id, changed, err := f.s.add(f.w, fresh{kind: kind, body: b, window: demoWindow, demo: true})
	f.changed = append(f.changed, changed...)
	return id, err
}

// shelf puts a part on its shelf, and says in the warps that it came from there.
func (f *demoFill) shelf(on DemoShelf) error {
	b := f.bodies[on.Warp]
	if b == nil {
		return fmt.Errorf("internal error: the demo has no warp %q", on.Warp)
	}
	taken, kind, list, err := b.take(on.Part, on.Name)
	if err != nil {
		return err
	}
	if err := wrong(on.Name, list); err != nil {
		return err
	}
	taken.rename(kind, on.Name)
	id, err := f.add(kind, taken)
	if err != nil {
		return err
	}
	d, err := f.w.Card(id)
	if err != nil {
		return err
	}
	for _, part := range append(on.Also, DemoPart{on.Warp, on.Part}) {
		if other := f.bodies[part.Warp]; other != nil {
			other.cameFrom(part.Part, d)
		}
	}
	return f.stock(id, on.Stock)
}

func (f *demoFill) stock(id record.ID, events []DemoStock) error {
	for _, e := range events {
		list := &problem.List{}
		happened := f.s.event(Happened{Document: id, What: e.What, Note: e.Note}, record.Stock, list)
		amount, err := yarn.ParseAmount(e.Amount)
		if err != nil {
			return fmt.Errorf("internal error: the demo's stock: %w", err)
		}
		happened.Amount, happened.Typed = amount, e.Amount
		if err := f.w.Happen(happened); err != nil {
			return err
		}
	}
	return nil
}

func (f *demoFill) weave(weave DemoWeave) error {
	d, list := MakeWeave(weave.Weave, weave.Values)
	if err := wrong(weave.Name, list); err != nil {
		return err
	}
	b := &body{Name: weave.Name, WIF: &text{weave.Weave + ".wif", string(WriteDraft(d))}}
	_, err := f.add(record.Draft, b)
	return err
}

// addWarps adds the warps, which know by now what of them is on a shelf.
func (f *demoFill) addWarps() error {
	for _, name := range f.names {
		id, err := f.add(record.Warp, f.bodies[name])
		if err != nil {
			return err
		}
		f.ids[name] = id
	}
	return nil
}

func (f *demoFill) work(work DemoWork) error {
	id := f.ids[work.Warp]
	d, err := f.w.Document(id)
	if err != nil {
		return err
	}
	nodes, list, err := f.s.mayStart(f.w, d)
	if err != nil {
		return err
	}
	if err := wrong(work.Warp, list); err != nil {
		return err
	}
	if _, err := f.s.freeze(f.w, d, nodes, demoWindow); err != nil {
		return err
	}
	for _, note := range work.Notes {
		if err := f.happened(id, record.Log, record.Event{What: record.Noted, Note: note}); err != nil {
			return err
		}
	}
	if work.Picks > 0 {
		if err := f.happened(id, record.Progress, record.Event{What: record.Woven, Place: work.Picks}); err != nil {
			return err
		}
	}
	for _, m := range work.Sizes {
		size, err := qty.ParseLength(m.Size)
		if err != nil {
			return fmt.Errorf("internal error: the demo's size: %w", err)
		}
		e := record.Event{What: record.Size, Path: m.Path, State: m.State, Typed: m.Size, Amount: yarn.Amount{Length: size}}
		if err := f.happened(id, record.Measurement, e); err != nil {
			return err
		}
	}
	if !work.Finished {
		return nil
	}
	return f.happened(id, record.Log, record.Event{What: record.Finished})
}

func (f *demoFill) happened(id record.ID, topic record.Topic, e record.Event) error {
	e.ID, e.Document, e.Topic, e.At = f.s.newID(), id, topic, f.s.moment()
	_, err := f.s.happened(f.w, e, record.Warp, demoWindow)
	return err
}
