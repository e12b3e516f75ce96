package order

import (
	"strconv"
	"strings"
)

// Spell writes an order that lays exactly these runs: what comes again one after another is
// written once, with how often, neighbouring shafts as a run. Of stripes the runs are as
// long as they stand here. It reads back by Parse, for runs that an order of this kind can
// hold; no runs are an empty text.
func Spell(kind Kind, runs []Run) string {
	s := speller{kind: kind}
	s.take(runs)
	return s.order(0, len(s.leaves))
}

// speller holds leaves as numbers: equal ones are one number, whose words are kept once.
type speller struct {
	kind   Kind
	leaves []int
	words  []string
	shafts []int // of each number; 0 where it is no shaft
}

// take makes leaves of runs: of stripes one each, else one for each thread.
func (s *speller) take(runs []Run) {
	known := map[string]int{}
	for _, run := range runs {
		times := run.Count
		if s.kind == Stripes {
			times = min(times, 1)
		}
		word := s.word(run)
		number, ok := known[word]
		if !ok {
			number = len(s.words)
			known[word] = number
			s.words, s.shafts = append(s.words, word), append(s.shafts, run.Shaft)
		}
		for range times {
			s.leaves = append(s.leaves, number)
		}
	}
}

func (s *speller) word(run Run) string {
	w := writing{tree: &tree{kind: s.kind}}
	if s.kind == Shafts {
		w.ends(run.Shaft, run.Shaft)
	} else {
		w.stripe(run, run.Count)
	}
	return w.String()
}

// piece is a part of an order as it is written; bare ones are numbers alone.
type piece struct {
	text string
	bare bool
}

// order writes the leaves from lo to hi, hi left out.
func (s *speller) order(lo, hi int) string {
	var pieces []piece
	for lo < hi {
		if each, times := s.again(lo, hi); times > 1 {
			pieces = append(pieces, piece{s.unit(lo, each) + " x " + strconv.Itoa(times), false})
			lo += each * times
			continue
		}
		text, leaves := s.leaf(lo, hi)
		pieces = append(pieces, piece{text, s.kind != Stripes})
		lo += leaves
	}
	return asText(pieces)
}

func asText(pieces []piece) string {
	var b strings.Builder
	for i, p := range pieces {
		switch {
		case i == 0:
		case p.bare && pieces[i-1].bare:
			b.WriteString(" ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(p.text)
	}
	return b.String()
}

// unit writes what comes again, in brackets unless it is one leaf.
func (s *speller) unit(lo, each int) string {
	text := s.order(lo, lo+each)
	if each == 1 {
		return text
	}
	return "(" + text + ")"
}

// leastRun is how many neighbouring shafts are written as a run.
const leastRun = 3

// leaf writes the leaf at lo, or the run of neighbouring shafts from there, up or down, and
// gives how many leaves that are. A run ends before what comes again.
func (s *speller) leaf(lo, hi int) (text string, leaves int) {
	if s.kind != Shafts {
		return s.words[s.leaves[lo]], 1
	}
	for _, step := range []int{1, -1} {
		n := 1
		for lo+n < hi && s.shaft(lo+n) == s.shaft(lo)+step*n {
			if _, times := s.again(lo+n, hi); times > 1 {
				break
			}
			n++
		}
		if n >= leastRun {
			w := writing{}
			w.ends(s.shaft(lo), s.shaft(lo)+step*(n-1))
			return w.String(), n
		}
	}
	return s.words[s.leaves[lo]], 1
}

func (s *speller) shaft(i int) int { return s.shafts[s.leaves[i]] }

// What comes again is looked for up to so many leaves long, and written so only where it
// spares as many leaves as the brackets cost.
const (
	longestUnit = 512
	spares      = 3
)

// again gives the stretch from lo that comes again at once and spares most leaves; times is
// 1 where none does.
func (s *speller) again(lo, hi int) (each, times int) {
	each, times = 1, 1
	most := spares - 1
	for n := 1; n <= min(longestUnit, (hi-lo)/2); n++ {
		if s.leaves[lo] != s.leaves[lo+n] {
			continue
		}
		often := 1 + s.alike(lo, lo+n, hi)/n
		if spared := (often - 1) * n; spared > most {
			each, times, most = n, often, spared
		}
	}
	return each, times
}

// alike counts the leaves from a on that are as those from b on.
func (s *speller) alike(a, b, hi int) int {
	n := 0
	for b+n < hi && s.leaves[a+n] == s.leaves[b+n] {
		n++
	}
	return n
}
