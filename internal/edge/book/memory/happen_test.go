package memory_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

func event(id string, of record.ID) record.Event {
	return record.Event{ID: id, Document: of, Topic: record.Log, What: record.Noted, At: noon, Note: "a note"}
}

func TestEventsAreTakenOnce(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "{}")
		all := []record.Event{
			event("event-02", id),
			{ID: "event-01", Document: id, Topic: record.Stock, What: record.Bought, At: noon.AddDate(-1, 0, 0), Typed: "200 g", Amount: yarn.Amount{Mass: 200 * qty.Gram}, Warp: id},
			{ID: "event-03", Document: id, Topic: record.Measurement, What: record.Size, At: noon, Path: "pieces[0].length", State: "washed", Typed: "1 m", Amount: yarn.Amount{Length: qty.Metre}},
			{ID: "event-04", Document: id, Topic: record.Progress, What: record.Woven, At: noon, Place: 12, Minutes: 3},
			{ID: "event-05", Document: id, Topic: record.Log, What: record.Noted, At: noon, Cancels: "event-02"},
		}
		for i, e := range all {
			for range 2 {
				write(t, b, func(w record.Writer) error { return w.Happen(e) })
			}
			again := e
			again.Note = "another note under the same id"
			write(t, b, func(w record.Writer) error { return w.Happen(again) })
			all[i].Seq, all[i].At = int64(i+1), kept(e.At)
		}
		read(t, b, func(r record.Reader) error {
			got, err := r.AllEvents()
			if diff := same(all, got); diff != "" {
				t.Error(diff)
			}
			log, failed := r.Events(id, record.Log)
			if diff := same([]record.Event{all[0], all[4]}, log); diff != "" {
				t.Error(diff)
			}
			one, worse := r.Event("event-03")
			if diff := same(all[2], one); diff != "" {
				t.Error(diff)
			}
			return errors.Join(err, failed, worse)
		})
	})
}

// A change with one wrong thing in it is refused, by the code only what is wrong inside
// the program has, and nothing of it is there.
func TestWhatTheSchemaForbidsIsRefused(t *testing.T) {
	long := strings.Repeat("ü", 201)
	for name, do := range map[string]func(record.Writer, record.ID) error{
		"kind":              func(w record.Writer, _ record.ID) error { d := draft("x"); d.Kind = "cat"; return added(w, d) },
		"short mark":        func(w record.Writer, _ record.ID) error { d := draft("x"); d.Mark = "1234567"; return added(w, d) },
		"long mark":         func(w record.Writer, _ record.ID) error { d := draft("x"); d.Mark = long[:130]; return added(w, d) },
		"mark twice":        func(w record.Writer, _ record.ID) error { return added(w, draft("one")) },
		"no name":           func(w record.Writer, _ record.ID) error { d := draft("x"); d.Name = ""; return added(w, d) },
		"long name":         func(w record.Writer, _ record.ID) error { d := draft("x"); d.Name = long; return added(w, d) },
		"name from nothing": func(w record.Writer, _ record.ID) error { d := draft("x"); d.Name = "\x00x"; return added(w, d) },
		"act": func(w record.Writer, id record.ID) error {
			v := edit(id, 2, "")
			v.Act = ""
			return w.Append(v, card("x"))
		},
		"window": func(w record.Writer, id record.ID) error {
			v := edit(id, 2, "")
			v.Window = long
			return w.Append(v, card("x"))
		},
		"name of an edit": func(w record.Writer, id record.ID) error { return w.Append(edit(id, 2, ""), card(long)) },
		"facts":           func(w record.Writer, id record.ID) error { return w.PutFacts(id, record.Facts{Of: 1, Shafts: -1}) },
		"event id":        func(w record.Writer, id record.ID) error { return w.Happen(event("short", id)) },
		"event of none":   func(w record.Writer, id record.ID) error { return w.Happen(event("event-01", id+99)) },
		"topic": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Topic = record.Stock
			return w.Happen(e)
		},
		"place": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Place = -1
			return w.Happen(e)
		},
		"minutes": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Minutes = -1
			return w.Happen(e)
		},
		"negative amount": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Amount.Mass = -1
			return w.Happen(e)
		},
		"two amounts": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Amount.Mass, e.Amount.Length = 1, 1
			return w.Happen(e)
		},
		"no such warp": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Warp = id + 99
			return w.Happen(e)
		},
		"cancels itself": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Cancels = e.ID
			return w.Happen(e)
		},
		"cancels nothing": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Cancels = "event-99"
			return w.Happen(e)
		},
		"cancelled before": func(w record.Writer, id record.ID) error {
			e := event("event-01", id)
			e.Cancels = "event-a0"
			return w.Happen(e)
		},
		"frozen without one": func(w record.Writer, id record.ID) error {
			return w.Freeze(record.Frozen{Warp: id, Version: 1, Event: "event-99"})
		},
		"frozen no version": func(w record.Writer, id record.ID) error {
			return w.Freeze(record.Frozen{Warp: id, Version: 2, Event: "event-a1"})
		},
		"frozen twice": func(w record.Writer, id record.ID) error {
			return w.Freeze(record.Frozen{Warp: id, Version: 1, Event: "event-a0"})
		},
		"setting":      func(w record.Writer, _ record.ID) error { return w.Set("", "x") },
		"long setting": func(w record.Writer, _ record.ID) error { return w.Set(long, "x") },
	} {
		t.Run(name, func(t *testing.T) {
			both(t, func(t *testing.T, b record.Book) {
				id := add(t, b, draft("one"), "{}")
				cancel := event("event-a1", id)
				cancel.Cancels = "event-a0"
				write(t, b, func(w record.Writer) error {
					return errors.Join(w.Happen(event("event-a0", id)), w.Happen(cancel),
						w.Freeze(record.Frozen{Warp: id, Version: 1, Event: "event-a0"}))
				})
				refused(t, b, record.Unforeseen, func(w record.Writer) error {
					return errors.Join(w.Set("before", "x"), do(w, id))
				})
				// Nor is it made in part where nobody looks at the error, or goes on after it.
				refused(t, b, record.Unforeseen, func(w record.Writer) error {
					_, err := w.Add(draft("before"), first(""))
					do(w, id)
					w.Set("after", "x")
					w.Add(draft("after"), first(""))
					return err
				})
			})
		})
	}
}

func added(w record.Writer, d record.Document) error {
	_, err := w.Add(d, first("{}"))
	return err
}

func TestFrozenPlansStay(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, record.Document{Kind: record.Warp, Mark: "mark-of-warp", Card: card("w")}, "{}")
		other := add(t, b, record.Document{Kind: record.Warp, Mark: "mark-of-other", Card: card("w")}, "{}")
		var want []record.Frozen
		for i, of := range []record.ID{id, other, id} {
			f := record.Frozen{
				Warp: of, Version: 1, At: noon.AddDate(0, 0, -i), Event: fmt.Sprintf("event-%03d", i), Program: "1.0",
				Defaults: fmt.Sprint(i), Body: []byte(fmt.Sprint(i)), Nodes: []byte(strings.Repeat("node", 100)),
			}
			write(t, b, func(w record.Writer) error { return errors.Join(w.Happen(event(f.Event, of)), w.Freeze(f)) })
			f.At = kept(f.At)
			want = append(want, f)
		}
		read(t, b, func(r record.Reader) error {
			all, err := r.AllFrozen()
			if diff := same(want, all); diff != "" {
				t.Error(diff)
			}
			of, failed := r.Frozen(id)
			if diff := same([]record.Frozen{want[2], want[0]}, of); diff != "" {
				t.Error(diff)
			}
			return errors.Join(err, failed)
		})
	})
}

func TestSettingsAreSetAndUnset(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		write(t, b, func(w record.Writer) error {
			return errors.Join(w.Set("units", "in"), w.Set("units", "cm"), w.Set("side", "left"), w.Set("side", ""), w.Set("none", ""))
		})
		read(t, b, func(r record.Reader) error {
			all, err := r.Settings()
			if diff := same(map[string]string{"units": "cm"}, all); diff != "" {
				t.Error(diff)
			}
			none, failed := r.Setting("side")
			set, worse := r.Setting("units")
			if none != "" || set != "cm" {
				t.Errorf("%q and %q", none, set)
			}
			return errors.Join(err, failed, worse)
		})
	})
}

var errOurs = errors.New("an error of the caller's")

func TestAChangeIsWholeOrNotAtAll(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "{}")
		before := dump(t, b)
		change := func(w record.Writer) {
			if err := errors.Join(
				w.Append(edit(id, 2, "x"), card("y")), w.Happen(event("event-01", id)), w.Set("a", "b"), added(w, draft("z")),
			); err != nil {
				t.Error(err)
			}
			if d, err := w.Document(id); d.Name != "y" || string(d.Body) != "x" || err != nil {
				t.Error("a writer does not see its own change:", d, err)
			}
		}
		err := b.Write(t.Context(), func(w record.Writer) error { change(w); return errOurs })
		if err != errOurs {
			t.Errorf("the caller's error came back as %v", err)
		}
		func() {
			defer func() {
				if recover() == nil {
					t.Error("a panic was swallowed")
				}
			}()
			b.Write(t.Context(), func(w record.Writer) error { change(w); panic("ours") })
		}()
		ctx, cancel := context.WithCancel(t.Context())
		err = b.Write(ctx, func(w record.Writer) error { change(w); cancel(); return nil })
		if !errors.Is(err, context.Canceled) {
			t.Error(err)
		}
		if err := b.Read(ctx, func(record.Reader) error { return nil }); !errors.Is(err, context.Canceled) {
			t.Error(err)
		}
		if diff := same(before, dump(t, b)); diff != "" {
			t.Error(diff)
		}
		if err := b.Read(t.Context(), func(record.Reader) error { return errOurs }); err != errOurs {
			t.Errorf("the caller's error came back as %v", err)
		}
		write(t, b, func(w record.Writer) error { change(w); return nil })
	})
}

func TestReadingSeesOneMoment(t *testing.T) {
	both(t, func(t *testing.T, b record.Book) {
		id := add(t, b, draft("one"), "old")
		read(t, b, func(r record.Reader) error {
			// Nothing was read before the change, and yet the moment is that of Read.
			write(t, b, func(w record.Writer) error {
				return errors.Join(w.Append(edit(id, 2, "new"), card("new")), added(w, draft("two")), w.Set("a", "b"))
			})
			d, err := r.Document(id)
			all, failed := r.All()
			set, worse := r.Setting("a")
			if d.Version != 1 || string(d.Body) != "old" || len(all) != 1 || set != "" {
				t.Errorf("reading saw a later change: %+v, %d, %q", d, len(all), set)
			}
			read(t, b, func(r record.Reader) error {
				if d, err := r.Document(id); string(d.Body) != "new" || err != nil {
					t.Error("a new reader does not see the change:", d, err)
				}
				return nil
			})
			return errors.Join(err, failed, worse)
		})
	})
}
