package record

import "slices"

// Step, as the state of an event that says how far work has come, says that the work went
// there from its From, one thing after another. Without it the place is set, wherever the
// work was.
const Step = "step"

// Said reports whether something of that kind was said, and stands.
func Said(events []Event, what string) bool {
	return slices.ContainsFunc(Standing(events), func(e Event) bool { return e.What == what })
}

// Reached is how far work has come by the events that say so of a path, in the order of
// the book. What was set last counts. A step onward counts where the work had come to its
// beginning, and never takes it back: said late by a device that was out of reach, it adds
// nothing to what others have said since. A step back counts only where the work still
// stands where it began.
func Reached(events []Event, what, path string) int {
	place := 0
	for _, e := range Standing(events) {
		if e.What == what && e.Path == path {
			place = e.leads(place)
		}
	}
	return place
}

// Leads is where work that stands at a place comes to by an event.
func (e Event) leads(place int) int {
	switch {
	case e.State != Step:
		return e.Place
	case e.Place >= e.From && place >= e.From:
		return max(place, e.Place)
	case e.Place < e.From && place == e.From:
		return e.Place
	}
	return place
}
