package strokes

import (
	"strconv"

	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
)

// drawnIn are the parts that a rule can lay: an end is on one shaft, a pick by one
// treadle, or with one shaft up.
var drawnIn = []Part{Threading, Treadling, Lifts}

// usualRun is how many threads a run of an advancing rule has.
const usualRun = 4

// path is where a rule leads: the place of each thread among n shafts, or treadles, from
// start on, all from 0, each by further. Run is how long the runs of an advancing one are.
type path func(i, start, by, run, n int) int

// paths are the rules, as handbooks define them: a straight draw takes the shafts one
// after another and begins again (with By, a skip or satin draw does so too); a point
// draw on n shafts turns at both, so that it repeats on 2n - 2 ends (A. Wolfensberger,
// Theory of Silk Weaving, 2nd ed. 1921, p. 11); an advancing one has straight runs, each
// beginning further on (from memory).
var paths = map[Rule]path{
	Straight: func(i, start, by, _, n int) int { return mod(start+i*by, n) },
	Point: func(i, start, by, _, n int) int {
		if n == 1 {
			return 0
		}
		at := mod(start+i*by, 2*n-2)
		return min(at, 2*n-2-at)
	},
	Advancing: func(i, start, by, run, n int) int { return mod(start+i/run*by+i%run, n) },
}

// Rules lists the rules.
func Rules() []Rule { return []Rule{Straight, Point, Advancing} }

func (s *stroke) rule(a *Act) {
	if _, ok := s.stretch(a, drawnIn...); !ok {
		return
	}
	way, ok := paths[a.Rule]
	if !ok {
		s.fail("stroke.rule", "rule", string(a.Rule), problem.Args{"valid": texts(Rules())})
	}
	r := s.ranged(a)
	if s.failed() {
		return
	}
	put := make([]Value, r.length)
	for i := range put {
		n := r.first + way(i, r.start-r.first, r.by, r.run, r.last-r.first+1)
		if put[i] = Value(n); a.Part != Threading {
			put[i] = Value(draft.Of(n))
		}
	}
	s.lay(a.Part, "length", exchange(a.From, a.To-a.From, put))
}

// ranging is what a rule goes by, with what was left unsaid.
type ranging struct{ first, last, start, by, run, length int }

func (s *stroke) ranged(a *Act) ranging {
	r := ranging{orElse(a.First, 1), orElse(a.Last, s.ruled(a.Part)), 0, orElse(a.By, 1), orElse(a.Run, usualRun), orElse(a.Length, a.To-a.From)}
	if r.start = orElse(a.Start, r.first); a.Start == 0 && r.by < 0 {
		r.start = r.last
	}
	most := s.ruled(a.Part)
	if r.first < 1 || r.last < r.first || r.last > most {
		s.fail("stroke.range", "first", strconv.Itoa(r.first)+"-"+strconv.Itoa(r.last), problem.Args{"has": most})
	} else if r.start < r.first || r.start > r.last {
		s.fail("stroke.start", "start", strconv.Itoa(r.start), problem.Args{"first": r.first, "last": r.last})
	}
	if r.run < 1 || r.run > MostThreads {
		s.fail("stroke.number", "run", strconv.Itoa(r.run), problem.Args{"least": 1, "most": MostThreads})
	}
	if r.by < -MostThreads || r.by > MostThreads {
		s.fail("stroke.number", "by", strconv.Itoa(r.by), problem.Args{"least": -MostThreads, "most": MostThreads})
	}
	if r.length < 1 || r.length > MostThreads {
		s.fail("stroke.number", "length", strconv.Itoa(r.length), problem.Args{"least": 1, "most": MostThreads})
	}
	return r
}

// ruled is how many shafts, or treadles, a rule may use.
func (s *stroke) ruled(part Part) int {
	if part == Threading {
		return min(s.Shafts, draft.MostShafts)
	}
	return s.kinds(part)
}

func orElse(n, unsaid int) int {
	if n == 0 {
		return unsaid
	}
	return n
}
