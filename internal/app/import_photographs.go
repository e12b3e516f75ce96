package app

import (
	"sley/internal/edge/photo"
	"sley/internal/trade/record"
)

// readPhotographs looks whether each photograph of the log that was not taken back has its
// file, and each file its entry. The files are read anew when they are written into the
// book, so that only one of them is in memory.
func (in *importing) readPhotographs() {
	want := map[string]bool{} // by the entry
	for _, e := range in.standing() {
		want[e.ID] = e.What == record.Pictured
	}
	for _, p := range in.index.Photographs {
		data, ok := in.file(p.File)
		if ok && (!want[p.Event] || !photo.Is(photo.Picture{Kind: p.Kind, Wide: p.Wide, High: p.High, Body: data})) {
			in.list.Fail("import.photograph", p.File, p.Event, nil)
		}
		delete(want, p.Event)
	}
	for _, e := range in.events {
		if want[e.ID] {
			in.list.Fail("import.event", eventsFile, e.ID, nil)
		}
	}
}

// standing gives the entries that were not taken back.
func (in *importing) standing() []record.Event {
	var all []record.Event
	for _, e := range in.events {
		all = append(all, e.Event)
	}
	return record.Standing(all)
}

// photographs puts those into the book whose entries it had not, which were added just now.
func (in *importing) photographs(w record.Writer, added map[string]bool) error {
	for _, p := range in.index.Photographs {
		if !added[p.Event] {
			continue
		}
		data, ok := in.file(p.File)
		if !ok {
			return errRefused
		}
		if err := w.PutPhotograph(record.Photograph{Event: p.Event, Kind: p.Kind, Wide: p.Wide, High: p.High, Body: data}); err != nil {
			return err
		}
	}
	return nil
}
