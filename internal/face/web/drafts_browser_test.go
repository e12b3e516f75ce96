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
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/drafts", "document.querySelectorAll('.draft-card').length === 6")
	tab.Wait(pictured)
	tab.Says("4 shafts, 6 treadles")
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
	tab.Edit("Rosepath", "Rosepath for mats")
	tab.Press(browsing.Enter)
	tab.Says("Saved: Rosepath for mats")
	tab.Quiet(t, false)
}

// A file that is whole leads to its draft; one that is not says everything that is wrong
// with it, and nothing of it is kept.
func TestDraftsAreBroughtIn(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/drafts", "document.querySelectorAll('.draft-card').length === 6")
	drop(tab, file{"broken.wif", "Threading as on page 40, and so on"})
	tab.Says("broken.wif was not added")
	tab.Wait("document.querySelectorAll('.problem-list li').length > 0")
	tab.Click("Put away")
	drop(tab, file{"loose.wif", "[WIF]\nVersion=1.1\n[WEAVING]\nShafts=4\nTreadles=x\n[WARP]\nThreads=2\n[WEFT]\nThreads=2\n[THREADING]\n1=9\n2=two\n[TIEUP]\n1=1\n[TREADLING]\n1=1\n2=7\n"})
	tab.Says("loose.wif was added as loose")
	tab.Wait("document.querySelectorAll('.problem-list li').length > 5")
	tab.EachLook(t, "drafts-came")
	tab.Click("Put away")
	drop(tab, file{"Kelp.wif", wif("Kelp")}, file{"Wrack.wif", wif("Wrack")})
	tab.Says("Wrack.wif was added as Wrack")
	tab.Wait("document.querySelectorAll('.draft-card').length === 9")
	tab.Click("Put away")
	before := r.warps()
	drop(tab, file{"mats.toml", droppedPlan + "\n[draft]\nwif = \"Oarweed.wif\"\n"}, file{"Oarweed.wif", wif("Oarweed")}, file{"Kelp.wif", wif("Kelp")})
	tab.Says("mats.toml was added as Slipway mats")
	tab.Says("Oarweed.wif was read together with mats.toml")
	if n := r.warps(); n != before {
		t.Errorf("%d warps before, %d after: the shelf of drafts takes drafts alone", before, n)
	}
	drop(tab, file{"Dulse.wif", wif("Dulse")})
	tab.Wait("document.querySelector('h1')?.innerText === 'Dulse' && location.pathname.startsWith('/drafts/')")
	tab.Says("Dulse.wif was added as Dulse")
	tab.Quiet(t, true) // the refusal is in the console
}

// What is written in one byte a letter is read so, wherever it is let go.
func TestOldFilesAreRead(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	tab.Do("const all = new DataTransfer(); const text = " + browsing.Quote(wif("K\u00f6lp")) + "; all.items.add(new File([Uint8Array.from(text, c => c.charCodeAt(0))], 'old.wif'));" +
		"document.querySelector('h1').dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: all }))")
	tab.Wait("document.querySelector('h1')?.innerText === 'K\u00f6lp'")
	tab.Quiet(t, false)
}

type file struct{ name, text string }

// wif is a small interchange text with a title.
func wif(title string) string {
	return "[WIF]\nVersion=1.1\nDate=April 20, 1997\nDevelopers=wif@mhsoft.com\nSource Program=sley\n[CONTENTS]\nTEXT=true\nWEAVING=true\nWARP=true\nWEFT=true\nTHREADING=true\nTIEUP=true\nTREADLING=true\n" +
		"[TEXT]\nTitle=" + title + "\n[WEAVING]\nShafts=4\nTreadles=4\nRising Shed=true\n[WARP]\nThreads=4\n[WEFT]\nThreads=4\n" +
		"[THREADING]\n1=1\n2=2\n3=3\n4=4\n[TIEUP]\n1=1,2\n2=2,3\n3=3,4\n4=1,4\n[TREADLING]\n1=1\n2=2\n3=3\n4=4\n"
}

// drop lets files go over the page.
func drop(tab *browsing.Tab, files ...file) {
	script := "const all = new DataTransfer();"
	for _, f := range files {
		script += "all.items.add(new File([" + browsing.Quote(f.text) + "], " + browsing.Quote(f.name) + "));"
	}
	tab.Do(script + "for (const kind of ['dragover', 'drop']) document.querySelector('h1').dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: all }))")
}

// A draft is looked at, renamed, noted, changed, and brought back; then a warp begins with
// it.
func TestDraftPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openAt(t, r, "/drafts/"+itoa(id), "document.querySelectorAll('.told li').length > 4")
	tab.Wait(pictured)
	tab.ReachedByKeys(t)
	tab.Click("Larger")
	tab.Wait("!!document.querySelector('.sheet .size-1')")
	tab.Do("[...document.querySelectorAll('.told button')].slice(0, 2).forEach(b => b.click())")
	tab.Wait("document.querySelectorAll('.working').length === 2")
	typed(tab, "field-note", "for the borders")
	tab.Says("Saved: Rosepath")
	chosen(tab, "change", "ends-times")
	typed(tab, "change-how", "many")
	tab.Click("Add")
	tab.Wait("!!document.querySelector('.chosen ~ .care')")
	tab.Click("Take off: the ends so many times over: many")
	chosen(tab, "change", "ends-times")
	typed(tab, "change-how", "2")
	tab.Click("Add")
	chosen(tab, "change", "turned")
	tab.Click("Add")
	tab.Wait("document.querySelectorAll('.chosen li').length === 2")
	tab.Wait(pictured)
	tab.EachLook(t, "draft-changed")
	tab.Click("Keep it so")
	tab.Wait("!document.querySelector('.chosen')")
	tab.Wait("[...document.querySelectorAll('.figure')].some(e => e.textContent === 'picks16')")
	tab.Click("Undo")
	tab.Says("Undone: Rosepath")
	chosen(tab, "begin-kind", "table-runner")
	typed(tab, "begin-name", "Jetty runner")
	tab.Click("Begin a warp with it")
	tab.Wait("document.querySelector('h1')?.innerText === 'Jetty runner' && location.pathname.startsWith('/warps/')")
	tab.Quiet(t, true) // the change that could not be made
}

// A draft is given as files, copied, and removed.
func TestDraftGoesOn(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openAt(t, r, "/drafts/"+itoa(id), "document.querySelectorAll('.files a').length === 5")
	var files []string
	tab.Read(&files, "[...document.querySelectorAll('.files a')].map(a => a.getAttribute('href'))")
	for _, path := range files {
		if status, _, kept, data := r.file(path); status != 200 || kept == "" || len(data) == 0 {
			t.Errorf("%s: %d %q, %d bytes", path, status, kept, len(data))
		}
	}
	tab.Click("Copy as a new draft")
	tab.Wait("document.querySelector('h1')?.innerText === 'Rosepath 2'")
	tab.Click("Remove this draft")
	tab.Says("Removed: Rosepath 2")
	tab.Wait("document.querySelectorAll('.draft-card').length === 6")
	tab.Go(r.url("/drafts/987654"))
	tab.Says("This draft is not in the book")
	tab.Quiet(t, true) // the draft that is not there
}

// A weave is found in the catalogue, made to numbers, and put on the shelf.
func TestCataloguePage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/drafts/catalogue", "document.querySelectorAll('.weave-row').length > 3")
	tab.Wait(pictured)
	tab.Do("[...document.querySelectorAll('.weave-row')].find(e => e.querySelector('.weave-name').textContent === 'basket').click()")
	tab.Wait("document.querySelectorAll('.looked .figure').length > 5")
	typed(tab, "param-ends", "x")
	tab.Wait("!!document.querySelector('.param .care')")
	typed(tab, "param-ends", "3")
	tab.Says("6 ends × 4 picks")
	tab.Wait(pictured)
	tab.EachLook(t, "catalogue-open")
	tab.ReachedByKeys(t)
	typed(tab, "search", "rosepath")
	tab.Wait("document.querySelectorAll('.weave-row').length < 12")
	typed(tab, "search", "no such weave")
	tab.Says("No weave is like that.")
	tab.Click("Show all weaves")
	tab.Says("Ribs in squares")
	typed(tab, "shelf-name", "Deck basket")
	tab.Click("Put it on the shelf")
	tab.Wait("document.querySelector('h1')?.innerText === 'Deck basket'")
	tab.Quiet(t, false)
}

// The records hold what was measured beside what was planned, and lead to where sizes are
// entered.
func TestRecordsPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/records", "document.querySelectorAll('.record').length === 2")
	tab.Wait(pictured)
	for _, text := range []string{"8.6 % lost", "7.9 % lost", "152 cm → 139 cm"} {
		tab.Says(text)
	}
	tab.ReachedByKeys(t)
	typed(tab, "search", "linen")
	tab.Wait("document.querySelectorAll('.record').length === 1")
	typed(tab, "search", "no such thing")
	tab.Says("No finished warp has “no such thing” in it.")
	tab.Click("Show all records")
	tab.Click("Hatch runner, finished")
	tab.Wait("location.pathname.endsWith('/finish')")
	tab.Go(r.url("/"))
	tab.Click("Clear the demo")
	tab.Click("Records")
	tab.Says("No warp is finished yet")
	tab.EachLook(t, "records-empty")
	tab.Click("Drafts")
	tab.Says("No draft is on the shelf")
	tab.EachLook(t, "drafts-empty")
	tab.Quiet(t, false)
}
