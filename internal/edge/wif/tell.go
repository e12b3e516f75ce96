package wif

import (
	"maps"
	"slices"

	"sley/internal/trade/problem"
)

// mostOfAKind is how many problems of one kind are told one by one.
const mostOfAKind = 20

// teller tells problems with their places in a text.
type teller struct {
	src  *source
	list *problem.List
	told map[string]int
}

func (t *teller) fail(code, path string, at span, args problem.Args) {
	t.add(problem.Error, code, path, at, args)
}

func (t *teller) warn(code, path string, at span, args problem.Args) {
	t.add(problem.Warning, code, path, at, args)
}

func (t *teller) tell(code, path string, at span, args problem.Args) {
	t.add(problem.Note, code, path, at, args)
}

// add adds a problem, unless many of its kind were told already. Where the range is
// empty and at the very beginning, the file alone is its place.
func (t *teller) add(severity problem.Severity, code, path string, at span, args problem.Args) {
	if t.told[code]++; t.told[code] > mostOfAKind {
		return
	}
	p := problem.Problem{Severity: severity, Code: code, Path: path, Args: args, Place: problem.Place{File: t.src.file}}
	if at != (span{}) {
		p.Place, p.Read = t.src.place(at), t.src.read(at)
	}
	t.list.Add(p)
}

// more tells how many problems were not told one by one.
func (t *teller) more() {
	for _, code := range slices.Sorted(maps.Keys(t.told)) {
		if n := t.told[code]; n > mostOfAKind {
			args := problem.Args{"more": n - mostOfAKind, "code": code}
			t.list.Add(problem.Problem{Severity: problem.Note, Code: "wif.more", Place: problem.Place{File: t.src.file}, Args: args})
		}
	}
}
