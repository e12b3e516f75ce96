package book

import (
	"database/sql"
	"fmt"
	"time"

	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

const eventColumns = `seq, id, document, topic, what, at_ms, place, came_from, path, state, typed,
	length_nm, mass_ng, minutes, warp, note, cancels`

func scanEvent(scan func(...any) error) (record.Event, error) {
	var e record.Event
	var at int64
	var place, from, length, mass, minutes, warp sql.NullInt64
	var cancels sql.NullString
	err := scan(&e.Seq, &e.ID, &e.Document, &e.Topic, &e.What, &at, &place, &from, &e.Path, &e.State, &e.Typed,
		&length, &mass, &minutes, &warp, &e.Note, &cancels)
	e.At = time.UnixMilli(at).UTC()
	e.Place, e.From, e.Minutes, e.Warp, e.Cancels = int(place.Int64), int(from.Int64), int(minutes.Int64), record.ID(warp.Int64), cancels.String
	e.Amount = yarn.Amount{Length: lengthOf(length), Mass: massOf(mass)}
	return e, err
}

// Events gives what happened to a document in a topic, in the order it was taken.
func (r *Reader) Events(id record.ID, topic record.Topic) ([]record.Event, error) {
	return r.events("WHERE document = ? AND topic = ? ORDER BY seq", id, topic)
}

// AllEvents gives everything that happened, in the order it was taken.
func (r *Reader) AllEvents() ([]record.Event, error) { return r.events("ORDER BY seq") }

func (r *Reader) events(where string, args ...any) ([]record.Event, error) {
	var out []record.Event
	err := r.each(func(scan func(...any) error) error {
		e, err := scanEvent(scan)
		out = append(out, e)
		return err
	}, "SELECT "+eventColumns+" FROM events "+where, args...)
	return out, err
}

// Event gives the event of that id. Trouble: NotFound.
func (r *Reader) Event(id string) (record.Event, error) {
	e, err := scanEvent(r.row("SELECT "+eventColumns+" FROM events WHERE id = ?", id).Scan)
	if none(err) {
		return record.Event{}, notFound("event " + id)
	}
	return e, err
}

// Happen adds an event. One whose id is there already is the same one said twice, and
// changes nothing.
func (w *Writer) Happen(e record.Event) error {
	if w.failed != nil {
		return w.failed
	}
	if _, err := w.Event(e.ID); !record.Is(err, record.NotFound) {
		return err
	}
	return w.exec(`INSERT INTO events (id, document, topic, what, at_ms, place, came_from, path, state, typed,
		length_nm, mass_ng, minutes, warp, note, cancels) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		e.ID, e.Document, e.Topic, e.What, e.At.UnixMilli(), figure(e.Place), figure(e.From), e.Path, e.State, e.Typed,
		figure(int64(e.Amount.Length)), figure(int64(e.Amount.Mass)), figure(e.Minutes), figure(int64(e.Warp)), e.Note,
		sql.NullString{String: e.Cancels, Valid: e.Cancels != ""})
}

// figure is a number, or nothing where it is 0.
func figure[N int | int64](n N) sql.NullInt64 { return sql.NullInt64{Int64: int64(n), Valid: n != 0} }

func lengthOf(n sql.NullInt64) qty.Length { return qty.Length(n.Int64) }
func massOf(n sql.NullInt64) qty.Mass     { return qty.Mass(n.Int64) }

// Frozen gives the plans of a warp that were frozen, the newest first, whatever the clock
// said.
func (r *Reader) Frozen(warp record.ID) ([]record.Frozen, error) {
	var out []record.Frozen
	err := r.each(func(scan func(...any) error) error {
		f, err := scanFrozen(scan)
		out = append(out, f)
		return err
	}, "SELECT "+frozenColumns+" FROM frozen WHERE warp = ? ORDER BY seq DESC", warp)
	return out, err
}

const frozenColumns = "warp, version, at_ms, event, program, defaults, body, nodes"

func scanFrozen(scan func(...any) error) (record.Frozen, error) {
	var f record.Frozen
	var at int64
	var body, nodes []byte
	err := scan(&f.Warp, &f.Version, &at, &f.Event, &f.Program, &f.Defaults, &body, &nodes)
	if err != nil {
		return f, err
	}
	f.At = time.UnixMilli(at).UTC()
	if f.Body, err = opened(body, nil); err == nil {
		f.Nodes, err = opened(nodes, nil)
	}
	if err != nil {
		found := fmt.Sprintf("the plan of warp %d that was frozen does not open", f.Warp)
		err = &record.Trouble{Code: record.Damaged, Found: found, Err: err}
	}
	return f, err
}

// AllFrozen gives every plan that was frozen, in the order they were.
func (r *Reader) AllFrozen() ([]record.Frozen, error) {
	var out []record.Frozen
	err := r.each(func(scan func(...any) error) error {
		f, err := scanFrozen(scan)
		out = append(out, f)
		return err
	}, "SELECT "+frozenColumns+" FROM frozen ORDER BY seq")
	return out, err
}

// Freeze keeps a plan as it is when work begins.
func (w *Writer) Freeze(f record.Frozen) error {
	body, err := pressed(f.Body, nil)
	if err != nil {
		return w.fail(err)
	}
	nodes, err := pressed(f.Nodes, nil)
	if err != nil {
		return w.fail(err)
	}
	return w.exec("INSERT INTO frozen ("+frozenColumns+") VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
		f.Warp, f.Version, f.At.UnixMilli(), f.Event, f.Program, f.Defaults, body, nodes)
}

// Setting gives what was set under a name; nothing where nothing was.
func (r *Reader) Setting(name string) (string, error) {
	var value string
	err := r.row("SELECT value FROM settings WHERE name = ?", name).Scan(&value)
	if none(err) {
		return "", nil
	}
	return value, err
}

// Settings gives everything that was set.
func (r *Reader) Settings() (map[string]string, error) {
	out := map[string]string{}
	err := r.each(func(scan func(...any) error) error {
		var name, value string
		err := scan(&name, &value)
		out[name] = value
		return err
	}, "SELECT name, value FROM settings")
	return out, err
}

// Set sets a value under a name; an empty one unsets it.
func (w *Writer) Set(name, value string) error {
	if value == "" {
		return w.exec("DELETE FROM settings WHERE name = ?", name)
	}
	return w.exec("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)", name, value)
}
