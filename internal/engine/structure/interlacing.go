package structure

// Interlacing says how often the threads of one way go from one face to the other.
// In a repeat a thread comes back to where it began, so that the number is even;
// from edge to edge of a cloth it may be odd.
type Interlacing struct {
	Least, Most int // of one thread
	All         int // of all of them

	changes []int // of each class
}

func (l *Lines) interlacing(changes []int) Interlacing {
	found := Interlacing{changes: changes}
	for c, n := range changes {
		if c == 0 || n < found.Least {
			found.Least = n
		}
		found.Most = max(found.Most, n)
		found.All += n * l.Times[c]
	}
	return found
}

// Interlacing gives how often the ends, or the picks, change sides.
func (a *Analysis) Interlacing(way Way) Interlacing { return a.crossing[way] }

// InterlacingsOf gives how often one end, or pick, changes sides. Ends of one cloth
// that differ much in this take up differently.
func (a *Analysis) InterlacingsOf(way Way, thread int) int {
	return a.crossing[way].changes[a.Lines(way).Class[thread]]
}
