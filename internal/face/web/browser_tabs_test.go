package web_test

import (
	"testing"
	"time"

	"sley/internal/face/web/browsing"
)

func TestTenWindowsShareOneStream(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	windows := browsing.Start(t).TenWindows(t, f.url())
	if now, most, _ := f.count(); now != 1 || most != 1 {
		t.Errorf("streams: %d open, %d at the most", now, most)
	}
	if got := f.posted(); got != len(windows) {
		t.Errorf("%d saves arrived", got)
	}
	for _, window := range windows {
		window.Quiet(t, false)
	}
	// The one that listened for all was the first. When it goes, another takes over.
	windows[0].Close()
	f.elsewhere(3, "After the first was closed")
	for _, window := range windows[1:] {
		window.Says("After the first was closed")
	}
	waitForStreams(f, 1)
	if _, _, opened := f.count(); opened != 2 {
		t.Errorf("%d streams were opened in all", opened)
	}
}

// TestCopiedWindowHasAPastOfItsOwn: a browser that duplicates a window copies what it
// kept, and one window must not undo what another did.
func TestCopiedWindowHasAPastOfItsOwn(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	b := browsing.Start(t)
	original, copied := b.Open(t, f.url()), b.Open(t, f.url())
	original.Wait(shown)
	original.Rename(0, "By the original")
	var kept string
	original.Read(&kept, "JSON.stringify({...sessionStorage})")
	copied.Do("Object.assign(sessionStorage, JSON.parse(" + browsing.Quote(kept) + "))")
	copied.Reload()
	copied.Wait("sessionStorage['sley-window'] !== JSON.parse(" + browsing.Quote(kept) + ")['sley-window']")
	copied.Wait("document.querySelector('.steps button').ariaDisabled === 'true'")
	copied.Press("z", browsing.Ctrl)
	copied.Rename(1, "By the copy")
	if got := f.nameOf(1); got != "By the original" {
		t.Errorf("undone by the copy: %q", got)
	}
	original.Click("Undo")
	original.Says("Undone: " + demoNames[0])
}

// TestWithoutLocks is the page over plain http from another machine, where browsers
// keep locks back: each window has a stream of its own.
func TestWithoutLocks(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	b := browsing.Start(t)
	var windows []*browsing.Tab
	for range 2 {
		window := b.Open(t, "about:blank")
		window.Before("delete Navigator.prototype.locks")
		window.Go(f.url())
		window.Wait(shown)
		windows = append(windows, window)
	}
	windows[0].Rename(0, "Saved without locks")
	windows[1].Says("Saved without locks")
	waitForStreams(f, 2)
	for _, window := range windows {
		window.Quiet(t, false)
	}
}

// TestHiddenWindowLetsGo makes the listening window believe that it is hidden.
func TestHiddenWindowLetsGo(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	b := browsing.Start(t)
	first := b.Open(t, f.url())
	first.Wait(shown)
	waitForStreams(f, 1)
	first.Do("Object.defineProperty(document, 'hidden', {value: true, configurable: true}); document.dispatchEvent(new Event('visibilitychange'))")
	waitForStreams(f, 0)
	f.elsewhere(1, "Changed while it was hidden")
	first.Do("delete document.hidden; document.dispatchEvent(new Event('visibilitychange'))")
	first.Says("Changed while it was hidden")
	f.elsewhere(1, "Heard by a stream again")
	first.Says("Heard by a stream again")
}

// waitForStreams waits until so many are open; the time limit of the tests ends it.
func waitForStreams(f *fake, n int) {
	for now, _, _ := f.count(); now != n; now, _, _ = f.count() {
		time.Sleep(20 * time.Millisecond)
	}
}
