// Package problem holds what is wrong with a person's input: a list of
// problems, each with where it stands, what was read, and the code under which
// the words for it are kept. It writes no words itself: the faces do.
//
// Three channels are never mixed: a Problem is for what a person wrote, an
// error for what could not be done, a panic for our own mistake.
package problem

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Severity says how much a problem stops.
type Severity int

// The severities, gravest first. An Error means that no numbers can be
// trusted until it is mended; a Warning that the numbers stand but the cloth
// may disappoint; a Note is worth knowing and asks for nothing.
const (
	Error Severity = iota
	Warning
	Note
)

// String gives the severity's plain name.
func (s Severity) String() string {
	return [...]string{"error", "warning", "note"}[s]
}

// MarshalText writes the severity as its plain name.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Place is a position in a text a person wrote. Line and Col count from 1, in
// characters; a zero Line means that the place is not known.
type Place struct {
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`
	Col     int    `json:"col,omitempty"`
	Width   int    `json:"width,omitempty"`   // characters the fault covers
	Excerpt string `json:"excerpt,omitempty"` // the line as written
}

// String gives file:line:col, as far as known.
func (p Place) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// Args are the figures and names that the words of a problem need, by name.
// Values are quantities of the trade, strings, string lists or counts.
type Args map[string]any

// Problem is one thing wrong, worth care, or worth knowing.
type Problem struct {
	Severity Severity
	Code     string // stable kebab-case slug, "length.no-unit"
	Path     string // "pieces[2].width"; the first item of a list is 0
	Read     string // what was read there, as written
	Args     Args
	Place    Place
}

// List collects problems. The zero value is ready for use.
type List struct {
	items []Problem
}

// Add appends p.
func (l *List) Add(p Problem) { l.items = append(l.items, p) }

// Fail appends an Error with the code at the path.
func (l *List) Fail(code, path, read string, args Args) {
	l.Add(Problem{Severity: Error, Code: code, Path: path, Read: read, Args: args})
}

// Warn appends a Warning with the code at the path.
func (l *List) Warn(code, path, read string, args Args) {
	l.Add(Problem{Severity: Warning, Code: code, Path: path, Read: read, Args: args})
}

// Tell appends a Note with the code at the path.
func (l *List) Tell(code, path, read string, args Args) {
	l.Add(Problem{Severity: Note, Code: code, Path: path, Read: read, Args: args})
}

// All gives the problems in the order of file, line, column, path and code.
func (l *List) All() []Problem {
	out := slices.Clone(l.items)
	slices.SortStableFunc(out, compare)
	return out
}

func compare(a, b Problem) int {
	return cmp.Or(
		strings.Compare(a.Place.File, b.Place.File),
		cmp.Compare(a.Place.Line, b.Place.Line),
		cmp.Compare(a.Place.Col, b.Place.Col),
		strings.Compare(a.Path, b.Path),
		strings.Compare(a.Code, b.Code),
	)
}

// Len is the number of problems of every severity.
func (l *List) Len() int { return len(l.items) }

// Failed reports whether the list holds an Error.
func (l *List) Failed() bool { return l.Has(Error) }

// Has reports whether the list holds a problem of severity s.
func (l *List) Has(s Severity) bool {
	return slices.ContainsFunc(l.items, func(p Problem) bool { return p.Severity == s })
}

// Append adds all of other's problems.
func (l *List) Append(other *List) { l.items = append(l.items, other.items...) }

// Locate gives every problem that has no place yet the place that find knows
// for its path.
func (l *List) Locate(find func(path string) (Place, bool)) {
	for i := range l.items {
		if l.items[i].Place.Line != 0 {
			continue
		}
		if place, ok := find(l.items[i].Path); ok {
			l.items[i].Place = place
		}
	}
}
