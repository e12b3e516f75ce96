package app

import (
	"context"
	"slices"

	"sley/internal/edge/photo"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// MostPhotographBytes is how large the file of a photograph may be that is taken in.
const MostPhotographBytes = photo.MostBytes

// Photographed takes a photograph into a warp's log: upright, at most photo.Longest dots
// wide and high, and without anything but what is seen. The note says what it shows, the
// place is the pick it was taken at. The same event said twice is one photograph.
func (s *Studio) Photographed(ctx context.Context, h Happened, file []byte) (record.Event, *problem.List, error) {
	list := &problem.List{}
	h.What = record.Pictured
	e := s.logEvent(h, list)
	if !isMark(e.ID) && !list.Failed() {
		list.Fail("event.id", "id", e.ID, nil) // a file is called so when the book is exported
	}
	taken := s.develop(file, list)
	if list.Failed() {
		return e, list, nil
	}
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		if was, said, err := alreadySaid(w, e.ID); err != nil || said {
			e = was
			return nil, err
		}
		changed, err := s.entered(w, &e, h.Window)
		if err != nil {
			return nil, err
		}
		return changed, w.PutPhotograph(record.Photograph{Event: e.ID, Kind: taken.Kind, Wide: taken.Wide, High: taken.High, Body: taken.Body})
	})
	return e, list, err
}

// develop takes a picture in. One at a time, for each may take a quarter of a gigabyte.
func (s *Studio) develop(file []byte, list *problem.List) photo.Picture {
	s.darkroom.Lock()
	defer s.darkroom.Unlock()
	return photo.Take(file, list)
}

// alreadySaid gives the event of that ID, where the book has it.
func alreadySaid(r record.Reader, id string) (record.Event, bool, error) {
	was, err := r.Event(id)
	if record.Is(err, record.NotFound) {
		return was, false, nil
	}
	return was, err == nil, err
}

// Photograph gives the photograph of an event. Trouble: NotFound where there is none, or
// where it was taken back; the book keeps it, and shows it no more.
func (s *Studio) Photograph(ctx context.Context, event string) (record.Photograph, error) {
	var out record.Photograph
	err := s.read(ctx, func(r record.Reader) error {
		e, err := r.Event(event)
		if err != nil {
			return err
		}
		log, err := r.Events(e.Document, record.Log)
		if err != nil {
			return err
		}
		if !slices.ContainsFunc(record.Standing(log), func(o record.Event) bool { return o.ID == event }) {
			return &record.Trouble{Code: record.NotFound, Found: "photograph " + event}
		}
		out, err = r.Photograph(event)
		return err
	})
	return out, err
}

// PhotographOf is a photograph of a warp's log as a list shows it.
type PhotographOf struct {
	record.Event
	Kind       string // image/jpeg or image/png
	Wide, High int    // in dots
	Bytes      int    // of its file
}

// Photographs lists the photographs of a warp's log that stand, in the order of the book.
func (s *Studio) Photographs(ctx context.Context, id record.ID) ([]PhotographOf, error) {
	var out []PhotographOf
	err := s.read(ctx, func(r record.Reader) error {
		log, err := logOf(r, id)
		for _, e := range log {
			if e.What != record.Pictured || err != nil {
				continue
			}
			var p record.Photograph
			if p, err = r.Photograph(e.ID); err == nil {
				out = append(out, PhotographOf{e, p.Kind, p.Wide, p.High, len(p.Body)})
			}
		}
		return err
	})
	return out, err
}

// logOf gives what stands in a warp's log. Trouble: NotFound where it is no warp.
func logOf(r record.Reader, id record.ID) ([]record.Event, error) {
	d, err := r.Card(id)
	if err != nil {
		return nil, err
	}
	if d.Kind != record.Warp {
		return nil, &record.Trouble{Code: record.NotFound, Found: string(record.Warp)}
	}
	log, err := r.Events(id, record.Log)
	return record.Standing(log), err
}
