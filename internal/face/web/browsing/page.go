package browsing

import (
	"fmt"
	"slices"
	"testing"
)

// The checks in this file are of the page of sley, and hold whatever server is behind
// it: one of a test, or the real one. address is where a window comes in.

// Quiet holds the page to having complained of nothing and asked for nothing elsewhere.
// Answers that refuse are complaints of the browser's, and expected where expected says.
func (b *Tab) Quiet(t testing.TB, expected bool) {
	t.Helper()
	for _, complaint := range b.Complaints() {
		if !complaint.Network || !expected {
			t.Errorf("in the console: %s", complaint.Text)
		}
	}
	for _, address := range b.OffLoopback() {
		t.Errorf("a request leaves the machine: %s", address)
	}
	if len(b.Requests()) == 0 {
		t.Error("no request was seen at all: the check does not hear")
	}
}

// ReachedByKeys holds the page to being used by keyboard alone: the tabulator comes to
// everything, in the order of the page, and shows where it is.
func (b *Tab) ReachedByKeys(t testing.TB) {
	t.Helper()
	stops, all := b.Walk(), b.Reachable()
	if got := names(stops); !slices.Equal(got, all) || len(all) == 0 {
		t.Errorf("the keyboard comes to\n%q, and there are\n%q", got, all)
	}
	for _, stop := range stops {
		if stop.Ring == "" {
			t.Errorf("nothing shows that the keyboard is at %s", stop.Name)
		}
	}
}

// WarpNames are the names of the warps that the page shows, in its order.
func (b *Tab) WarpNames() []string {
	b.t.Helper()
	var names []string
	b.Read(&names, "[...document.querySelectorAll('.warps h2')].map(e => e.innerText)")
	return names
}

// Rename gives the warp that is shown at a place, from 0, another name, by keyboard as
// a weaver does, and waits until it is saved.
func (b *Tab) Rename(place int, name string) {
	b.t.Helper()
	was := b.WarpNames()[place]
	b.Edit(was, name)
	b.Press(Enter)
	b.Says("Saved: " + name)
}

// Edit opens the name of a warp and types another over it.
func (b *Tab) Edit(was, name string) {
	b.t.Helper()
	b.Click("Rename " + was)
	b.Wait("document.activeElement.value === " + Quote(was))
	if name == "" {
		b.Press("\b")
	}
	b.Type(name)
	b.Wait("document.activeElement.value === " + Quote(name))
}

// TenWindows opens ten windows of the page, saves from each, and sees each change come
// to all of them. It returns them.
func (b *Browser) TenWindows(t testing.TB, address string) []*Tab {
	t.Helper()
	var windows []*Tab
	for range 10 {
		window := b.Open(t, address)
		window.Wait("document.querySelectorAll('.warps h2').length > 0")
		windows = append(windows, window)
	}
	shown := len(windows[0].WarpNames())
	for i, window := range windows {
		name := fmt.Sprintf("Saved from window %d", i+1)
		window.Rename(i%shown, name)
		for _, other := range windows {
			other.Wait("[...document.querySelectorAll('.warps h2')].some(e => e.innerText === " + Quote(name) + ")")
		}
	}
	return windows
}
