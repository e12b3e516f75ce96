package structure

import "iter"

// Face is a face of the cloth.
type Face int

// The two faces: the front is the one a weave shows.
const (
	Front Face = iota
	Back
)

// Other is the other face.
func (f Face) Other() Face { return 1 - f }

// up says whether the warp is on top where a thread of that way lies on that face.
func (f Face) up(way Way) bool { return (f == Front) == (way == Warp) }

// Floats are the floats of one way on one face. A float is as long as the threads it
// passes over before it goes to the other face; in plain weave all are 1 long. In a
// repeat a float goes on from the last thread into the first; in a cloth the edges
// end it. A thread of a repeat that never goes to the other face has no float: it is
// counted in Never.
type Floats struct {
	Longest int // 0 where there is none
	// Counts is how many floats there are of each length: Counts[3] are 3 long.
	Counts []int
	// Never is how many threads lie on this face all along, crossing nothing: of a
	// repeat without an end, of a cloth from edge to edge.
	Never int
	// Places are where the longest lie, at most MostPlaces of them, by thread and then
	// along it. Analysis.Places finds the others.
	Places []Place
}

// All gives how many floats there are.
func (f *Floats) All() int {
	sum := 0
	for _, n := range f.Counts {
		sum += n
	}
	return sum
}

// AtLeast gives how many floats are that long or longer.
func (f *Floats) AtLeast(long int) int {
	sum := 0
	for n := max(long, 0); n < len(f.Counts); n++ {
		sum += f.Counts[n]
	}
	return sum
}

// MostPlaces is how many places an analysis holds ready.
const MostPlaces = 100

// Place is where a float lies: on the end, or pick, Thread, from the pick, or end,
// From on, Long threads of them; in a repeat it may go on from the last into the
// first. All are counted from 0.
type Place struct{ Thread, From, Long int }

// floats counts the floats of one way on both faces, and how often each class of
// threads changes sides.
func (l *Lines) floats() (found [2]Floats, changes []int) {
	var t tally
	n, bounded := l.cells.Ends(), l.cells.Bounded
	changes = make([]int, l.Distinct())
	l.longest = make([][2]int, l.Distinct())
	for c := range changes {
		row := l.cells.Row(c)
		changes[c] = t.row(row, n, l.Times[c], bounded)
		l.longest[c] = t.longest
		if changes[c] == 0 && n > 0 {
			found[faceOf(l.way, row[0]&1 == 1)].Never += l.Times[c]
		}
	}
	for face := range found {
		f := &found[face]
		f.Counts = trimmed(t.counts[sideOf(Face(face).up(l.way))])
		f.Longest = max(len(f.Counts)-1, 0)
		f.Places = l.firstPlaces(Face(face), f.Longest)
	}
	return found, changes
}

// faceOf is the face on which a thread of that way lies where the warp is up, or
// is not.
func faceOf(way Way, up bool) Face {
	if up == Front.up(way) {
		return Front
	}
	return Back
}

// trimmed leaves out lengths beyond the longest that comes.
func trimmed(counts []int) []int {
	for len(counts) > 0 && counts[len(counts)-1] == 0 {
		counts = counts[:len(counts)-1]
	}
	return counts
}

func (l *Lines) firstPlaces(face Face, long int) []Place {
	if long == 0 {
		return nil
	}
	var out []Place
	for p := range l.places(face, long) {
		if out = append(out, p); len(out) == MostPlaces {
			break
		}
	}
	return out
}

// places gives the floats of a face that are at least that long, thread by thread.
// Only classes that have one are looked through.
func (l *Lines) places(face Face, atLeast int) iter.Seq[Place] {
	return func(yield func(Place) bool) {
		up := face.up(l.way)
		for thread, c := range l.Class {
			if l.longest[c][sideOf(up)] < atLeast {
				continue
			}
			for r := range floatsOf(l.cells.Row(c), l.cells.Ends(), l.cells.Bounded) {
				if r.up == up && r.long >= atLeast && !yield(Place{thread, r.from, r.long}) {
					return
				}
			}
		}
	}
}
