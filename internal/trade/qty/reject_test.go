package qty

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// rejected is a text that must not be read, with the fault it must give.
type rejected struct {
	text string
	code string
	read string
	at   int
	args map[string]any
}

// rejects checks that each text gives its fault, and no value.
func rejects[T any](t *testing.T, parse func(string) (T, error), cases []rejected) {
	t.Helper()
	for _, c := range cases {
		_, err := parse(c.text)
		var got *Fault
		if !errors.As(err, &got) {
			t.Errorf("%q was read; want %s", c.text, c.code)
			continue
		}
		want := &Fault{Code: c.code, Read: c.read, At: c.at, Args: c.args}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.text, diff)
		}
		pointsAtRead(t, c.text, got)
	}
}

// pointsAtRead checks that what a fault says was read stands in the text where
// the fault says, counted in characters.
func pointsAtRead(t *testing.T, text string, f *Fault) {
	t.Helper()
	characters := []string{}
	for i := range text {
		characters = append(characters, text[i:])
	}
	characters = append(characters, "")
	if f.At < 0 || f.At >= len(characters) || !strings.HasPrefix(characters[f.At], f.Read) {
		t.Errorf("%q: %s says %q stands at character %d", text, f.Code, f.Read, f.At)
	}
}

// texts gives what a table rejects, as seeds for fuzzing.
func texts(tables ...[]rejected) []string {
	var all []string
	for _, table := range tables {
		for _, c := range table {
			all = append(all, c.text)
		}
	}
	return all
}

// keys gives what a table accepts, as seeds for fuzzing.
func keys[T any](table map[string]T) []string {
	return slices.Sorted(maps.Keys(table))
}
