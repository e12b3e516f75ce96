package book

import (
	"time"

	"sley/internal/trade/record"
)

// Photograph gives the photograph of an event. Trouble: NotFound.
func (r *Reader) Photograph(event string) (record.Photograph, error) {
	var p record.Photograph
	err := r.row("SELECT event, kind, wide, high, body FROM photographs WHERE event = ?", event).
		Scan(&p.Event, &p.Kind, &p.Wide, &p.High, &p.Body)
	if none(err) {
		return record.Photograph{}, notFound("photograph " + event)
	}
	return p, err
}

// PutPhotograph keeps a photograph beside its event.
func (w *Writer) PutPhotograph(p record.Photograph) error {
	return w.exec("INSERT INTO photographs (event, kind, wide, high, body) VALUES (?, ?, ?, ?, ?)",
		p.Event, p.Kind, p.Wide, p.High, p.Body)
}

// Devices gives the devices that were let in, the first first; revoked ones too.
func (r *Reader) Devices() ([]record.Device, error) {
	var out []record.Device
	err := r.each(func(scan func(...any) error) error {
		var d record.Device
		var sum []byte
		var made, seen int64
		err := scan(&d.ID, &d.Name, &sum, &made, &seen, &d.Revoked)
		copy(d.Sum[:], sum)
		d.Made, d.Seen = time.UnixMilli(made).UTC(), time.UnixMilli(seen).UTC()
		out = append(out, d)
		return err
	}, "SELECT id, name, sum, made_ms, seen_ms, revoked FROM devices ORDER BY made_ms, id")
	return out, err
}

// PutDevice lets a device in, or changes what is known of it.
func (w *Writer) PutDevice(d record.Device) error {
	return w.exec(`INSERT INTO devices (id, name, sum, made_ms, seen_ms, revoked) VALUES (?, ?, ?, ?, ?, ?)
		ON CONFLICT (id) DO UPDATE SET name = excluded.name, sum = excluded.sum, seen_ms = excluded.seen_ms, revoked = excluded.revoked`,
		d.ID, d.Name, d.Sum[:], d.Made.UnixMilli(), d.Seen.UnixMilli(), d.Revoked)
}
