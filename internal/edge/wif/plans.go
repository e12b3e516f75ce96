package wif

import (
	"slices"
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// plans reads the threading, the tie-up, the treadling and the lift plan.
func (r *reader) plans() {
	r.threading()
	ties := r.sets(tieUpName, draft.MostTreadles, "shaft")
	treadling := r.sets(treadlingName, 0, "treadle")
	r.draft.Lifts = r.sets(liftPlanName, 0, "shaft")
	r.draft.Treadling = treadling
	if len(r.rowsOf[tieUpName]) == 0 && slices.ContainsFunc(treadling, func(pressed draft.Set) bool { return pressed != 0 }) {
		r.untied()
	}
	for _, tied := range ties {
		r.draft.Ties = append(r.draft.Ties, draft.Tie{Tied: tied})
	}
	for _, name := range []string{threadingName, treadlingName, liftPlanName} {
		r.gaps(name, r.rowsOf[name])
	}
}

// threading reads the shaft of each end.
func (r *reader) threading() {
	rows := r.rowsOf[threadingName]
	ends := r.counted(warpName, last(rows))
	r.draft.Threading = make([]int, ends)
	for _, w := range rows {
		on := r.set(threadingName, w, "shaft")
		if on.set.Len() > 1 {
			r.warn("wif.end-in-two", pathAt(threadingName, w.n), w.valued, problem.Args{"end": w.n, "shaft": on.first})
		}
		r.draft.Threading[w.n-1] = on.first
	}
	r.float(rows, ends)
}

// float tells the ends at the edges that the threading leaves out.
func (r *reader) float(rows []row, ends int) {
	var out []string
	if len(rows) > 0 && rows[0].n > 1 {
		out = append(out, between(1, rows[0].n-1))
	}
	if from := last(rows) + 1; from <= ends {
		out = append(out, between(from, ends))
	}
	if out != nil {
		at := r.doc.find(threadingName).at
		r.tell("wif.ends-float", pathOf(threadingName), at, problem.Args{"range": out})
	}
}

// counted gives how many threads there are, of which n are listed: for counts lie.
func (r *reader) counted(name string, n int) int {
	l := r.doc.find(name).get("Threads")
	switch {
	case n == 0:
		return 0
	case l == nil || l.value == "":
		r.unsaid("wif.threads-unsaid", name, "Threads", n)
		return n
	}
	said, ok := whole(l.value)
	if ok && said >= n && said <= n+mayFloat[name] {
		return said
	}
	args := problem.Args{"listed": n, "what": threadsOf[name]}
	switch path := r.pathIn(r.doc.find(name), "Threads"); {
	case !ok:
		r.warn("wif.value", path, l.valued, problem.Args{"wanted": "a whole number"})
	case said > n:
		r.warn("wif.threads-short", path, l.valued, args)
	default:
		r.warn("wif.threads-more", path, l.valued, args)
	}
	r.repair(name, "Threads", strconv.Itoa(n))
	return n
}

// mayFloat is how many threads at the far edge need not be listed.
var mayFloat = map[string]int{warpName: floating}

var threadsOf = map[string]string{warpName: "ends", weftName: "picks"}

// unsaid tells that a count is not there, and writes it.
func (r *reader) unsaid(code, section, key string, n int) {
	at := span{}
	if s := r.doc.find(section); s != nil {
		at = s.at
	}
	r.warn(code, pathOf(section), at, problem.Args{"section": section, "count": n, "what": threadsOf[section]})
	r.repair(section, key, strconv.Itoa(n))
}

// untied sorts out a treadling without a tie-up: where there is a lift plan it says
// the lifts, else no pick lifts anything.
func (r *reader) untied() {
	at := r.doc.find(treadlingName).at
	if len(r.draft.Lifts) == 0 {
		r.fail("wif.no-tie-up", pathOf(treadlingName), at, nil)
		return
	}
	r.warn("wif.treadling-untied", pathOf(treadlingName), at, nil)
	r.draft.Treadling = nil
}
