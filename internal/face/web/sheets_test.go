package web_test

import (
	"bytes"
	"image/png"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/face/sheet"
	"sley/internal/trade/record"
)

type sheets struct {
	Papers []string
	Sheets []sheet.Listed
}

// The sheets are listed with what the plan lacks for those that it has not, and with their
// pages, of which each can be looked at.
func TestSheetsOfAWarp(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	at := "/api/documents/" + itoa(id) + "/sheets"
	var list sheets
	if status := r.ask("GET", at, nil, &list); status != 200 || !slices.Equal(list.Papers, sheet.PaperNames()) || len(list.Sheets) != len(sheet.Names()) {
		t.Fatalf("%d %+v", status, list)
	}
	for _, s := range list.Sheets {
		answer, data := r.fetched(at + ".png?pages=" + s.Name + "&dpi=36&page=" + itoa(max(s.Pages, 1)))
		beyond, _ := r.fetched(at + ".png?pages=" + s.Name + "&dpi=36&page=" + itoa(s.Pages+1))
		switch {
		case !s.Has && (s.Without == "" || s.Pages != 0 || s.Usual || answer.StatusCode != 404):
			t.Errorf("%+v: %s", s, answer.Status)
		case s.Has && (s.Without != "" || s.Pages < 1 || answer.StatusCode != 200 || beyond.StatusCode != 404):
			t.Errorf("%+v: %s, then %s", s, answer.Status, beyond.Status)
		case s.Has:
			if _, err := png.Decode(bytes.NewReader(data)); err != nil {
				t.Errorf("%s: %v", s.Name, err)
			}
		}
	}
	for _, bad := range []string{".png?dpi=9000", ".png?page=x", ".pdf?paper=a9", ".pdf?pages=dyeing", "?paper=a9"} {
		if answer, _ := r.fetched(at + bad); answer.StatusCode != 400 {
			t.Errorf("%s: %s", bad, answer.Status)
		}
	}
	var saved answered
	r.ask("POST", "/api/documents/"+itoa(id)+"/changes", edit(1, "w", "pieces[0].length", "28"), &saved)
	if answer, data := r.fetched(at + ".pdf"); answer.StatusCode != 422 || !strings.Contains(string(data), "pieces[0].length") {
		t.Errorf("a plan with errors: %s", answer.Status)
	}
}

// What is printed from the page is what sley sheet prints from the book.
func TestSheetsAreThoseOfTheCommand(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	answer, got := r.fetched("/api/documents/" + itoa(id) + "/sheets.pdf?pages=glance,winding&paper=letter")
	if answer.StatusCode != 200 || answer.Header.Get("Content-Type") != "application/pdf" || !strings.Contains(answer.Header.Get("Content-Disposition"), "Galley towels.pdf") {
		t.Fatalf("%s %v", answer.Status, answer.Header)
	}
	from, _, err := r.book.WarpSource(t.Context(), record.ID(id))
	if err != nil {
		t.Fatal(err)
	}
	result, _ := app.ReckonPlan(from, "", true)
	pages, err := sheet.Make(result, present.UnitsOf(result.Plan), sheet.Options{Sheets: []string{"glance", "winding"}, Paper: "letter", Mark: app.Mark(from.Text)})
	if err != nil {
		t.Fatal(err)
	}
	if want, err := app.Sheets(pages); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%d bytes, want %d: %v", len(got), len(want), err)
	}
}
