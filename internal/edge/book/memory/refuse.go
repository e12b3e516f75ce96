package memory

import (
	"slices"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/record"
)

// unless gives what is wrong unless right.
func unless(right bool, wrong string) string {
	if right {
		return ""
	}
	return wrong
}

// firstOf is the first that is wrong.
func firstOf(wrong ...string) string {
	for _, one := range wrong {
		if one != "" {
			return one
		}
	}
	return ""
}

// between reports whether a text has so many characters, counted as SQLite does: to the
// first that is none.
func between(text string, least, most int) bool {
	text, _, _ = strings.Cut(text, "\x00")
	n := utf8.RuneCountInString(text)
	return least <= n && n <= most
}

func refuseDocument(d record.Document, marked bool) string {
	return firstOf(
		unless(slices.Contains(record.Kinds(), d.Kind), "the kind of a document"),
		unless(between(d.Mark, 8, 64), "the mark of a document"),
		unless(!marked, "a mark that is there"),
		unless(between(d.Name, 1, record.MostName), "the name of a document"),
	)
}

func refuseVersion(v record.Version) string {
	return firstOf(
		unless(between(v.Window, 0, 64), "the window of a version"),
		unless(slices.Contains(record.Acts(), v.Act), "the act of a version"),
		unless(v.State <= v.Number, "the state of a version"),
	)
}

func refuseFacts(f record.Facts) string {
	least := min(f.Engine, f.Shafts, f.Treadles, f.Ends, f.Picks, f.LongestFloat, f.Errors, f.Warnings)
	return unless(least >= 0, "a figure below nothing")
}

func (w *Writer) refuseEvent(e record.Event) string {
	_, noDocument := w.find(e.Document)
	_, noWarp := w.find(e.Warp)
	_, noEvent := w.Event(e.Cancels)
	cancelled := slices.ContainsFunc(w.events, func(o record.Event) bool { return o.Cancels == e.Cancels })
	return firstOf(
		unless(between(e.ID, 8, 64), "the id of an event"),
		unless(noDocument == nil, "an event of no document"),
		unless(slices.Contains(e.Topic.Whats(), e.What), "what happened"),
		unless(e.Place >= 0 && e.From >= 0 && e.Minutes >= 0 && e.Amount.Length >= 0 && e.Amount.Mass >= 0, "a figure below nothing"),
		unless(e.Amount.Length == 0 || e.Amount.Mass == 0, "a length and a weight"),
		unless(e.Warp == 0 || noWarp == nil, "a warp that is not there"),
		unless(e.Cancels == "" || noEvent == nil && !cancelled && e.Cancels != e.ID, "the event that is cancelled"),
	)
}

func (w *Writer) refuseFrozen(f record.Frozen) string {
	_, noVersion := w.Body(f.Warp, f.Version)
	_, noEvent := w.Event(f.Event)
	taken := slices.ContainsFunc(w.frozen, func(o record.Frozen) bool { return o.Event == f.Event })
	return firstOf(
		unless(noVersion == nil, "a version that is not there"),
		unless(noEvent == nil && !taken, "the event of a plan"),
	)
}

func (w *Writer) refusePhotograph(p record.Photograph) string {
	_, noEvent := w.Event(p.Event)
	_, taken := w.photographs[p.Event]
	inside := func(n int) bool { return 1 <= n && n <= record.MostWide }
	return firstOf(
		unless(noEvent == nil && !taken, "the event of a photograph"),
		unless(p.Kind == "image/jpeg" || p.Kind == "image/png", "the kind of a photograph"),
		unless(inside(p.Wide) && inside(p.High) && len(p.Body) > 0, "the size of a photograph"),
	)
}

func (w *Writer) refuseDevice(d record.Device) string {
	taken := slices.ContainsFunc(w.devices, func(o record.Device) bool { return o.ID != d.ID && o.Sum == d.Sum })
	return firstOf(
		unless(between(d.ID, 8, 64), "the id of a device"),
		unless(between(d.Name, 1, record.MostName), "the name of a device"),
		unless(!taken, "what a device proves itself by"),
	)
}
