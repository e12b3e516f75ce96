package review

import (
	"sley/internal/engine/strokes"
	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// shutPicks tells picks that lift no end, or every one, each run of them once, and
// reports whether there are any.
func (r *review) shutPicks() bool {
	if r.used == 0 {
		return false
	}
	runs := map[Topic]int{}
	for from := 0; from < len(r.lifts); {
		topic, to := r.shut(from), from+1
		for to < len(r.lifts) && r.shut(to) == topic {
			to++
		}
		if topic != "" {
			if runs[topic]++; runs[topic] <= most {
				r.tell(r.shutFinding(topic, Span{from, to}))
			}
		}
		from = to
	}
	return len(runs) > 0
}

func (r *review) shut(pick int) Topic {
	switch r.lifts[pick] & r.used {
	case 0:
		return NoEndUp
	case r.used:
		return AllEndsUp
	}
	return ""
}

func (r *review) shutFinding(topic Topic, at Span) Finding {
	f := Finding{Topic: topic, Severity: Care, Place: Place{Part: r.picked(), Picks: at}, Args: problem.Args{"picks": at.To - at.From}}
	if at.To-at.From < len(r.lifts) {
		f.Remedies = []Remedy{{Topic: LeaveOutPicks, Acts: []strokes.Act{{Do: strokes.Delete, Part: r.picked(), From: at.From, To: at.To}}}}
	}
	return f
}

// picked is the part that says the picks.
func (r *review) picked() strokes.Part {
	if r.Treadled() {
		return strokes.Treadling
	}
	return strokes.Lifts
}

// endsNowhere tells ends in no heddle that do not float at an edge, and reports whether
// there are any.
func (r *review) endsNowhere() bool {
	runs := 0
	for from := r.first; from <= r.last && r.used != 0; {
		to := from + 1
		if r.Threading[from] != 0 {
			from = to
			continue
		}
		for r.Threading[to] == 0 {
			to++
		}
		if runs++; runs <= most {
			r.tell(r.nowhere(Span{from, to}))
		}
		from = to
	}
	return runs > 0
}

func (r *review) nowhere(at Span) Finding {
	f := Finding{Topic: InNoHeddle, Severity: Wrong, Place: Place{Part: strokes.Threading, Ends: at}, Args: problem.Args{"ends": at.To - at.From}}
	before, behind := r.Threading[at.From-1], r.Threading[at.To]
	if n := at.To - at.From; abs(behind-before) == n+1 {
		step := (behind - before) / (n + 1)
		var put []int
		for i := range n {
			put = append(put, before+(i+1)*step)
		}
		f.Remedies = append(f.Remedies, Remedy{Topic: ThreadEnds, Acts: []strokes.Act{{Do: strokes.Put, Part: strokes.Threading, At: at.From, Remove: n, Put: strokes.Numbers(put...)}}})
	}
	out := Remedy{Topic: LeaveOutEnds, Acts: []strokes.Act{{Do: strokes.Delete, Part: strokes.Threading, From: at.From, To: at.To}}}
	if !r.loops() {
		out.Ends = at.From - at.To
	}
	f.Remedies = append(f.Remedies, out)
	return f
}

// sheds tells what pressed treadles cannot do, each shed once at its first pick.
func (r *review) sheds() {
	seen := map[draft.Set]bool{}
	for pick, pressed := range r.Treadling {
		if !seen[pressed] {
			seen[pressed] = true
			r.shed(pick, pressed, r.Open(pressed))
		}
	}
	for pick, up := range r.Lifts {
		if !r.Treadled() && !seen[up] {
			seen[up] = true
			r.shed(pick, up, draft.Shed{Up: up})
		}
	}
}

func (r *review) shed(pick int, pressed draft.Set, s draft.Shed) {
	place := Place{Part: r.picked(), Picks: Span{pick, pick + 1}}
	if locked := s.Locked & r.used; locked != 0 {
		place.Numbers = locked.List()
		r.tell(Finding{Topic: Locked, Severity: Wrong, Place: place, Args: problem.Args{"shafts": locked.String()}})
		return
	}
	if free := s.Free & r.used; free != 0 {
		place.Numbers = free.List()
		r.tell(Finding{Topic: Hanging, Severity: Care, Place: place, Args: problem.Args{"shafts": free.String()}, Remedies: r.sink(pressed, free)})
	}
	if r.Shed == loom.Counterbalance && draft.Opens(r.Shed, s.Up, r.Shafts) == draft.Uneven {
		r.tell(Finding{Topic: UnevenShed, Severity: Note, Place: place, Args: problem.Args{"up": (s.Up & draft.UpTo(r.Shafts)).Len(), "shafts": r.Shafts}})
	}
}

// sink ties shafts that hang free to sink by the treadle that is pressed alone.
func (r *review) sink(pressed, free draft.Set) []Remedy {
	k := pressed.Most() - 1
	if pressed.Len() != 1 {
		return nil
	}
	lowered := free
	if k < len(r.Ties) {
		lowered |= r.Ties[k].Lowered
	}
	return []Remedy{{Topic: TieToSink, Acts: []strokes.Act{{Do: strokes.Put, Part: strokes.Lowered, At: k, Remove: 1, Put: strokes.Sets(lowered)}}}}
}
