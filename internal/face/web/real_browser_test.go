package web_test

import (
	"slices"
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// openReal opens the page of a real server by the address that sley prints.
func openReal(t testing.TB, r *real) *browsing.Tab {
	t.Helper()
	tab := browsing.Start(t).Open(t, web.Address(r.port, token))
	tab.Wait("document.querySelectorAll('.warps h2').length > 0")
	return tab
}

// From the book's file to the browser: the demo's warps in hand with the numbers that the
// reckoning has, without a barrier, a complaint, or a request that leaves the machine.
func TestRealPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	if got := tab.WarpNames(); len(got) != 4 || !slices.Contains(got, "Galley towels") {
		t.Errorf("warps: %q", got)
	}
	for _, text := range []string{"483", "ends to wind", r.book.Path(), "9 yarns, 2 looms, 6 drafts"} {
		tab.Says(text)
	}
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
}

// What looks like a script is a name like any other.
func TestRealPageShowsScriptAsText(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	const name = `<img src=x onerror="document.title='broken in'"><script>document.title='broken in'</script>`
	tab.Rename(0, name)
	tab.Reload()
	tab.Wait("document.querySelectorAll('.warps h2').length > 0")
	if got := tab.WarpNames(); !slices.Contains(got, name) {
		t.Errorf("names: %q", got)
	}
	var title string
	tab.Read(&title, "document.title")
	if title == "broken in" {
		t.Error("a name ran as a script")
	}
	tab.Quiet(t, false)
}

// Ten windows of one browser load, save and hear one another, on the real book.
func TestRealTenWindows(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	browser := browsing.Start(t)
	first := browser.Open(t, web.Address(r.port, token)) // takes the cookie
	first.Wait("document.querySelectorAll('.warps h2').length > 0")
	first.Close()
	for _, window := range browser.TenWindows(t, web.Home(r.port)) {
		window.Quiet(t, false)
	}
}

// The demo is cleared by one press.
func TestRealDemoIsCleared(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	tab.Click("Clear the demo")
	tab.Says("This book is empty")
	if n := r.warps(); n != 0 {
		t.Errorf("%d warps are left", n)
	}
	tab.Quiet(t, false)
}
