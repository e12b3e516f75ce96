package problem

import (
	"slices"
	"testing"
)

func TestListIsSortedByPlaceThenPathThenCode(t *testing.T) {
	var l List
	l.Add(Problem{Code: "c", Place: Place{File: "a", Line: 2, Col: 1}})
	l.Add(Problem{Code: "b", Place: Place{File: "a", Line: 1, Col: 9}})
	l.Add(Problem{Code: "z", Path: "p", Place: Place{File: "a", Line: 1, Col: 2}})
	l.Add(Problem{Code: "a", Path: "p", Place: Place{File: "a", Line: 1, Col: 2}})
	var got []string
	for _, p := range l.All() {
		got = append(got, p.Code)
	}
	if want := []string{"a", "z", "b", "c"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestSeverities(t *testing.T) {
	var l List
	if l.Failed() || l.Has(Note) {
		t.Error("an empty list has problems")
	}
	l.Tell("n", "", "", nil)
	l.Warn("w", "", "", nil)
	if l.Failed() || !l.Has(Warning) || !l.Has(Note) {
		t.Error("a note and a warning make no error")
	}
	var other List
	other.Fail("e", "", "", nil)
	l.Append(&other)
	if !l.Failed() || l.Len() != 3 {
		t.Errorf("after an error: failed %v, %d problems", l.Failed(), l.Len())
	}
	for s, want := range map[Severity]string{Error: "error", Warning: "warning", Note: "note"} {
		if text, _ := s.MarshalText(); string(text) != want || s.String() != want {
			t.Errorf("got %s, want %s", text, want)
		}
	}
}

func TestLocateKeepsPlacesThatAreKnown(t *testing.T) {
	var l List
	l.Fail("a", "known", "", nil)
	l.Fail("b", "unknown", "", nil)
	l.Add(Problem{Code: "c", Path: "known", Place: Place{File: "f", Line: 7}})
	l.Locate(func(path string) (Place, bool) { return Place{File: "f", Line: 3, Col: 4}, path == "known" })
	lines := map[string]int{}
	for _, p := range l.All() {
		lines[p.Code] = p.Place.Line
	}
	if lines["a"] != 3 || lines["b"] != 0 || lines["c"] != 7 {
		t.Errorf("got %v, want a 3, b 0, c 7", lines)
	}
	if got := (Place{File: "f", Line: 3, Col: 4}).String(); got != "f:3:4" {
		t.Errorf("got %s", got)
	}
	if got := (Place{File: "f"}).String(); got != "f" {
		t.Errorf("got %s", got)
	}
}
