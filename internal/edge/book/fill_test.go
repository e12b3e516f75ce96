package book

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// fill writes something into every table of a book.
func fill(w record.Writer) error {
	var failed []error
	try := func(err error) { failed = append(failed, err) }
	ids := map[record.Kind]record.ID{}
	for i, kind := range record.Kinds() {
		d := record.Document{
			Kind: kind, Mark: fmt.Sprintf("mark-%04d", i), Demo: kind == record.Loom,
			Card: record.Card{Name: "Näme of a " + string(kind), Sort: []byte(kind), Words: "linen 8/2"},
		}
		if kind == record.Draft {
			d.Facts = record.Facts{
				Of: 1, Engine: 1, Weave: "twill", Shafts: 4, Treadles: 6, Ends: 40, Picks: 44, LongestFloat: 3,
				Figures: []byte(`{"key":1}`), Errors: 1, Warnings: 2,
			}
		}
		id, err := w.Add(d, record.Version{At: noon, Window: "window", Act: record.Add, Body: threads(300, uint64(i))})
		try(err)
		ids[kind] = id
	}
	try(edits(w, ids[record.Draft]))
	removed := record.Version{Document: ids[record.Yarn], Number: 2, State: 2, At: noon, Act: record.Remove, Removed: true, Body: threads(300, 1)}
	try(w.Append(removed, record.Card{Name: "yarn", Sort: []byte("yarn")}))
	try(happenings(w, ids[record.Warp], ids[record.Yarn]))
	try(w.Freeze(record.Frozen{
		Warp: ids[record.Warp], Version: 1, At: noon, Event: "event-start", Program: "1.0.0", Defaults: "2026-1",
		Body: threads(300, 0), Nodes: []byte(`{"nodes":[]}`),
	}))
	try(w.Set("units", "metric"))
	try(w.PutPhotograph(record.Photograph{Event: "event-picture", Kind: "image/png", Wide: 2, High: 1, Body: []byte("dots")}))
	try(w.PutDevice(record.Device{ID: "device-1", Name: "the tablet", Sum: [32]byte(sha([]byte("token"))), Made: noon, Seen: noon, Revoked: true}))
	return errors.Join(failed...)
}

// edits makes versions of every way to keep a body: whole, as a difference, an earlier one's.
func edits(w record.Writer, id record.ID) error {
	body := threads(300, 7)
	var failed []error
	for number := 2; number < 12; number++ {
		v := record.Version{Document: id, Number: number, State: number, At: noon, Window: "window", Act: record.Edit}
		switch number {
		case 5, 11:
			v.Act, v.State = record.Undo, 3
		case 7:
			body = threads(2000, 8)
		}
		body = bytes.Clone(body)
		body[number*10] = 'x'
		v.Body = body
		failed = append(failed, w.Append(v, record.Card{Name: "draft", Sort: []byte("draft"), Words: "twill"}))
	}
	return errors.Join(failed...)
}

func happenings(w record.Writer, warp, white record.ID) error {
	var failed []error
	for _, e := range []record.Event{
		{ID: "event-bought", Document: white, Topic: record.Stock, What: record.Bought, Typed: "200 g", Amount: yarn.Amount{Mass: 200 * qty.Gram}},
		{ID: "event-used", Document: white, Topic: record.Stock, What: record.Used, Typed: "90 m", Amount: yarn.Amount{Length: 90 * qty.Metre}, Warp: warp},
		{ID: "event-start", Document: warp, Topic: record.Log, What: record.Started, Place: 1},
		{ID: "event-sat", Document: warp, Topic: record.Log, What: record.Sat, Minutes: 90, Note: "quiet"},
		{ID: "event-woven", Document: warp, Topic: record.Progress, What: record.Woven, Place: 120},
		{ID: "event-dressed", Document: warp, Topic: record.Progress, What: record.Dressed, Path: "threading", Place: 24, From: 12},
		{ID: "event-picture", Document: warp, Topic: record.Log, What: record.Pictured, Note: "the first inch"},
		{ID: "event-size", Document: warp, Topic: record.Measurement, What: record.Size, Path: "pieces[0].width", State: "washed", Typed: "45 cm"},
		{ID: "event-undone", Document: warp, Topic: record.Log, What: record.Noted, Cancels: "event-sat"},
	} {
		e.At = noon
		failed = append(failed, w.Happen(e))
	}
	return errors.Join(failed...)
}

// filled is a book with something in every table.
func filled(t testing.TB, path string) *Book {
	t.Helper()
	b := open(t, path)
	if err := b.Write(t.Context(), fill); err != nil {
		t.Fatal(err)
	}
	return b
}

// tablesOf are the tables that hold what was written, without those a search keeps for itself.
func tablesOf(t testing.TB, q querier) []string {
	t.Helper()
	return column(t, q, `SELECT name FROM pragma_table_list
		WHERE schema = 'main' AND type IN ('table', 'virtual') AND name NOT LIKE 'sqlite\_%' ESCAPE '\' ORDER BY name`)
}

// column is the first column of an answer.
func column(t testing.TB, q querier, query string, args ...any) []string {
	t.Helper()
	rows, err := q.QueryContext(context.Background(), query, args...)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var out []string
	for rows.Next() {
		var cell sql.NullString
		if err := rows.Scan(&cell); err != nil {
			t.Fatal(err)
		}
		out = append(out, cell.String)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// raw is a connection to a file that asks for nothing and forbids nothing.
func raw(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	t.Cleanup(func() { db.Close() })
	return db
}

func run(t testing.TB, db *sql.DB, statements ...string) {
	t.Helper()
	for _, s := range statements {
		if _, err := db.Exec(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
}

// textOf is all that a file holds as text: its schema and every row of every table, with
// pressed bodies as they are.
func textOf(t testing.TB, path string) string {
	t.Helper()
	db := raw(t, path)
	defer db.Close()
	out := slices.Concat(
		column(t, db, "SELECT 'version ' || user_version FROM pragma_user_version"),
		column(t, db, "SELECT sql FROM sqlite_schema WHERE name NOT LIKE 'search\\_%' ESCAPE '\\' ORDER BY name"),
	)
	for _, table := range tablesOf(t, db) {
		var cells []string
		for _, name := range column(t, db, "SELECT name FROM pragma_table_info(?)", table) {
			cells = append(cells, fmt.Sprintf("'%s=' || quote(%s)", name, name))
		}
		out = append(out, column(t, db, "SELECT '"+table+" ' || "+strings.Join(cells, " || ' ' || ")+" AS row FROM "+table+" ORDER BY row")...)
	}
	return strings.Join(out, "\n") + "\n"
}
