package wif

import (
	"strings"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// sets reads a section of sets of shafts or treadles, at most that many where most
// is more than 0.
func (r *reader) sets(name string, most int, what string) []draft.Set {
	rows := r.rowsOf[name]
	n := last(rows)
	if most > 0 {
		n = min(n, most)
	}
	out := make([]draft.Set, n)
	for _, w := range rows {
		if w.n > n {
			r.warn("wif.tie-beyond", pathAt(name, w.n), w.at, problem.Args{"most": most})
			continue
		}
		out[w.n-1] = r.set(name, w, what).set
	}
	return out
}

// listed is a value that is a list of shafts or treadles.
type listed struct {
	set   draft.Set
	first int // as written; 0 when there is none
}

// set reads the list of a row. What is no number is taken from the text, which
// keeps it as a remark; a number that no draft here can have stays in the text.
func (r *reader) set(name string, w row, what string) listed {
	if n, ok := whole(w.value); ok && n <= draft.MostShafts { // as most are
		var out listed
		out.add(n)
		return out
	}
	return r.list64(name, w, what)
}

// list64 reads the list part by part.
func (r *reader) list64(name string, w row, what string) listed {
	var out listed
	var good []string
	bad := false
	path := pathAt(name, w.n)
	wanted, most := problem.Args{"wanted": "the number of a " + what}, problem.Args{"most": draft.MostShafts}
	for t, rest, more := r.src.token(w.valued); more; t, rest, more = r.src.token(rest) {
		n, ok := whole(t.text)
		if !ok {
			r.warn("wif.value", path, t.at, wanted)
			bad = true
			continue
		}
		if good = append(good, t.text); n > draft.MostShafts {
			r.warn("wif."+what+"-beyond", path, t.at, most)
			continue
		}
		out.add(n)
	}
	if bad || out.set == 0 && len(good) > 0 {
		r.faulty[path] = true
	}
	r.tidy(w.line, good, bad)
	return out
}

// add puts a number into the list; 0 is none.
func (l *listed) add(n int) {
	if n == 0 {
		return
	}
	l.set = l.set.With(n)
	if l.first == 0 {
		l.first = n
	}
}

// tidy writes a list as its good parts with commas between. What was bad is kept as
// a remark, and a row of which nothing is left says none.
func (r *reader) tidy(l *line, good []string, bad bool) {
	value := strings.Join(good, ",")
	switch {
	case bad && value == "":
		l.instead("0")
	case bad:
		l.instead(value)
	default:
		l.value = value
	}
}
