package wif

import (
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/problem"
)

// check adds what the draft's own check finds, with its places in the text, and
// without what follows from a fault that was told.
func (r *reader) check() {
	found := r.draft.Check().All()
	told := map[any]bool{}
	found = slices.DeleteFunc(found, func(p problem.Problem) bool {
		told[p.Code] = told[p.Code] || !r.follows(p)
		return r.follows(p)
	})
	for _, p := range found {
		if p.Code == "draft.more" && !told[p.Args["code"]] {
			continue // of those that follow
		}
		if at := r.find(p.Path); at != (span{}) {
			p.Place = r.src.place(at)
		} else {
			p.Place = problem.Place{File: r.src.file}
		}
		r.list.Add(p)
	}
}

// follows reports whether a problem follows from one that was told.
func (r *reader) follows(p problem.Problem) bool {
	switch p.Code {
	case "draft.none-up", "draft.all-up":
		if r.told["wif.no-tie-up"] > 0 {
			return true
		}
	case "draft.end-nowhere":
	default:
		return false
	}
	_, there := r.rowAt(p.Path)
	return !there || r.faulty[p.Path]
}

// find gives where a path of the draft stands: its row, else its section.
func (r *reader) find(path string) span {
	if w, ok := r.rowAt(path); ok {
		return w.shown()
	}
	if s := r.sectionAt(path); s != nil {
		return s.at
	}
	return span{}
}

func (r *reader) sectionAt(path string) *section {
	name, _, _ := strings.Cut(path, "[")
	for _, s := range r.doc.sections {
		if s.spec != nil && pathOf(s.name) == name {
			return s
		}
	}
	return nil
}

// rowAt gives the line of a path such as threading[3].
func (r *reader) rowAt(path string) (row, bool) {
	s := r.sectionAt(path)
	_, index, ok := strings.Cut(strings.TrimSuffix(path, "]"), "[")
	n, err := strconv.Atoi(index)
	if s == nil || !ok || err != nil {
		return row{}, false
	}
	rows := r.rowsOf[s.name]
	at, found := slices.BinarySearchFunc(rows, n+1, func(w row, n int) int { return w.n - n })
	if !found {
		return row{}, false
	}
	return rows[at], true
}
