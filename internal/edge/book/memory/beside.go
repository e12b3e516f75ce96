package memory

import (
	"bytes"
	"cmp"
	"slices"

	"sley/internal/trade/record"
)

// Photograph gives the photograph of an event. Trouble: NotFound.
func (r *Reader) Photograph(event string) (record.Photograph, error) {
	p, ok := r.photographs[event]
	if !ok {
		return p, notFound("photograph " + event)
	}
	p.Body = bytes.Clone(p.Body)
	return p, nil
}

// PutPhotograph keeps a photograph beside its event.
func (w *Writer) PutPhotograph(p record.Photograph) error {
	if err := w.keep(w.refusePhotograph(p)); err != nil {
		return err
	}
	p.Body = bytes.Clone(p.Body)
	w.photographs[p.Event] = p
	return nil
}

// Devices gives the devices that were let in, the first first; revoked ones too.
func (r *Reader) Devices() ([]record.Device, error) { return slices.Clone(r.devices), nil }

// PutDevice lets a device in, or changes what is known of it.
func (w *Writer) PutDevice(d record.Device) error {
	if err := w.keep(w.refuseDevice(d)); err != nil {
		return err
	}
	d.Made, d.Seen = inBook(d.Made), inBook(d.Seen)
	at := slices.IndexFunc(w.devices, func(o record.Device) bool { return o.ID == d.ID })
	if at < 0 {
		w.devices = append(w.devices, d)
	} else {
		d.Made = w.devices[at].Made
		w.devices[at] = d
	}
	slices.SortStableFunc(w.devices, func(a, b record.Device) int {
		return cmp.Or(a.Made.Compare(b.Made), cmp.Compare(a.ID, b.ID))
	})
	return nil
}
