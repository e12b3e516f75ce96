package web_test

import (
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// openAt opens a page of a real server at a path, once the page lets it in, and waits
// until an expression holds.
func openAt(t *testing.T, r *real, path, until string) *browsing.Tab {
	t.Helper()
	tab := browsing.Start(t).Open(t, web.Address(r.port, token))
	tab.Wait("!!document.querySelector('.page')")
	tab.Go(r.url(path))
	tab.Wait(until)
	return tab
}

// pictured holds when all pictures in sight have come, and there are some.
const pictured = "(() => { const all = [...document.images]; all.forEach(i => i.loading = 'eager'); return all.length > 0 && all.every(i => i.complete && i.naturalWidth > 0) })()"

// typed types over what stands in a field, by the id of the field.
func typed(tab *browsing.Tab, id, text string) {
	tab.Do("const f = document.getElementById(" + browsing.Quote(id) + "); f.focus(); f.select?.()")
	if text == "" {
		tab.Press("\b")
		return
	}
	tab.Type(text)
}

// chosen chooses what stands in a select.
func chosen(tab *browsing.Tab, id, value string) {
	tab.Do("const f = document.getElementById(" + browsing.Quote(id) + "); f.value = " + browsing.Quote(value) + "; f.dispatchEvent(new Event('change', { bubbles: true }))")
}

// The shelf shows each draft with its cloth, and only those that a loom can weave.
func TestDraftsPage(t *testing.T) {
	r := newReal(t)
	tab := openAt(t, r, "/drafts", "document.querySelectorAll('.draft-card').length === 6")
	tab.Wait(pictured)
	tab.Says("4 shafts, 6 treadles")
	tab.EachLook(t, "drafts")
	tab.ReachedByKeys(t)
	typed(tab, "narrow-shafts", "2")
	tab.Wait("document.querySelectorAll('.draft-card').length === 1")
	tab.Says("Plain weave")
	typed(tab, "narrow-shafts", "")
	chosen(tab, "narrow-weave", "diamond")
	tab.Wait("document.querySelectorAll('.draft-card').length === 2")
	typed(tab, "search", "nothing like it")
	tab.Says("No draft is like that.")
	tab.Click("Show all drafts")
	tab.Wait("document.querySelectorAll('.draft-card').length === 6")
	tab.Click("Rename Rosepath")
	tab.Type("Rosepath for mats")
	tab.Press(browsing.Enter)
	tab.Says("Saved: Rosepath for mats")
	tab.Quiet(t, false)
}
