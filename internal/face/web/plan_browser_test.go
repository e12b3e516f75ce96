package web_test

import (
	"strconv"
	"testing"
	"time"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// field is the field of a path of the open document.
func field(path string) string {
	return "document.querySelector('[name=" + browsing.Quote(path) + "]')"
}

// fill types a text into the field of a path, over what stands there.
func fill(tab *browsing.Tab, path, text string) {
	tab.Wait("!!" + field(path))
	tab.Do(field(path) + ".focus(); " + field(path) + ".select()")
	if text == "" {
		tab.Press("\b")
	}
	tab.Type(text)
}

// figureIs waits until a figure of the reckoning reads so.
func figureIs(tab *browsing.Tab, id, value string) {
	tab.Wait(browsing.Plain("document.querySelector('[data-id="+browsing.Quote(id)+"] .value')?.innerText ?? ''") + " === " + browsing.Quote(value))
}

// Numbers follow the keys, before anything is saved; then it is saved by itself.
func TestNumbersFollowTheKeys(t *testing.T) {
	t.Parallel()
	tab := openReal(t, newReal(t))
	at(tab, "Galley towels", "Piece")
	figureIs(tab, "warp.wound", "7 1/2 yd (270 in)")
	fill(tab, "pieces[0].count", "5")
	figureIs(tab, "warp.wound", "6 1/2 yd (234 in)")
	tab.Says("saved")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	fill(tab, "pieces[0].length", "28 i")
	tab.Says("28 i")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'") // half typed is kept as well
	tab.Wait(field("pieces[0].length") + ".getAttribute('aria-invalid') === 'true'")
	tab.Reload()
	tab.Wait(field("pieces[0].length") + "?.value === '28 i'")
	tab.Click("Undo")
	tab.Says("Undone: Galley towels")
	tab.Wait(field("pieces[0].length") + ".value === '28 in'")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'") // until the step is answered the next waits for it
	tab.Click("Undo")
	tab.Wait(field("pieces[0].count") + ".value === '6'")
	figureIs(tab, "warp.wound", "7 1/2 yd (270 in)")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Click("Redo")
	tab.Wait(field("pieces[0].count") + ".value === '5'")
	tab.Quiet(t, false)
}

// What was typed and not sent yet outlives a reload.
func TestReloadInMidTyping(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	at(tab, "Galley towels", "Cloth")
	fill(tab, "warp.sett", "20 epi")
	tab.Reload()
	tab.Wait(field("warp.sett") + "?.value === '20 epi'")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Says("20/in")
	tab.Quiet(t, false)
}

// pressEach presses each figure once; a figure may stand in two sections.
const pressEach = "const seen = new Set(); document.querySelectorAll('button.figure').forEach(b => seen.has(b.dataset.id) || (seen.add(b.dataset.id), b.click()))"

// Every figure opens its working under it, and closes it.
func TestEveryFigureOpensItsWorking(t *testing.T) {
	t.Parallel()
	tab := openReal(t, newReal(t))
	at(tab, "Galley towels", "Numbers")
	tab.Do("document.querySelectorAll('details').forEach(d => d.open = true)")
	var many int
	tab.Read(&many, "document.querySelectorAll('.figure').length")
	if many < 120 {
		t.Errorf("only %d figures", many)
	}
	tab.Do(pressEach)
	tab.Wait("document.querySelectorAll('.working .formula').length === document.querySelectorAll('.figure').length")
	tab.Wait("[...document.querySelectorAll('.formula')].every(f => f.innerText.trim() !== '')")
	tab.Do(pressEach)
	tab.Wait("!document.querySelector('.working')")
	tab.Do("document.querySelector('[data-id=\"warp.wound\"]').click()")
	tab.Wait("!!document.querySelector('.working .formula')")
	tab.Quiet(t, false)
}

// Two windows at the same field: neither writes over the other.
func TestTwoWindowsAtOneField(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	b := browsing.Start(t)
	var tabs [2]*browsing.Tab
	for i := range tabs {
		tabs[i] = b.Open(t, web.Address(r.port, token))
		tabs[i].Wait("document.querySelectorAll('.warps h2').length > 0")
		at(tabs[i], "Galley towels", "Cloth")
	}
	fill(tabs[0], "warp.sett", "2")
	fill(tabs[1], "warp.sett", "22 epi")
	tabs[1].Press(browsing.Enter)
	tabs[1].Wait("document.querySelector('.standing').innerText === 'saved'")
	tabs[0].Says("Galley towels was changed elsewhere")
	tabs[0].Says("22 epi")
	tabs[0].Click("Keep yours")
	tabs[0].Wait("document.querySelector('.standing').innerText === 'saved'")
	tabs[1].Wait(field("warp.sett") + ".value === '2'")
	tabs[0].Quiet(t, true)
}

// A number is locked and another sought; what is found is taken into the plan.
func TestSeekAnother(t *testing.T) {
	t.Parallel()
	tab := openReal(t, newReal(t))
	at(tab, "Galley towels", "Numbers")
	fill(tab, "warp.wound", "6 yd")
	tab.Press(browsing.Enter)
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Do("const s = document.querySelector('#seek'); s.value = 'pieces[0].count'; s.dispatchEvent(new Event('change', {bubbles: true}))")
	tab.Says("Take it into the plan")
	tab.EachLook(t, "warp-seek")
	var found string
	tab.Read(&found, "document.querySelector('.found strong').innerText")
	if n, err := strconv.Atoi(found); err != nil || n < 1 || n > 5 {
		t.Errorf("6 yd are enough for %q towels", found)
	}
	tab.Click("Take it into the plan")
	tab.Wait("!document.querySelector('.found')")
	figureIs(tab, "pieces[0].count", found)
	tab.Quiet(t, false)
}

// A server that ends under an open page and comes again: what was typed meanwhile is
// there, and is saved.
func TestServerEndsUnderAWarp(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	at(tab, "Galley towels", "Piece")
	r.end()
	fill(tab, "pieces[0].length", "30 in")
	tab.Says("sley is not answering")
	tab.Wait("document.querySelector('.standing').innerText === 'not answering'")
	r.again()
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Wait("!document.querySelector('.notice')")
	tab.Reload()
	tab.Wait(field("pieces[0].length") + "?.value === '30 in'")
	tab.Quiet(t, true)
}

// As it is built takes the place of what was planned, from any stage, in seconds.
func TestAmendFromAnyStage(t *testing.T) {
	t.Parallel()
	tab := openReal(t, newReal(t))
	at(tab, "Galley towels", "Dress")
	tab.Click("Begin work")
	tab.Says("Work has begun.")
	for _, stage := range []string{"Piece", "Numbers"} {
		tab.Do("[...document.querySelectorAll('.stages a')].find(a => a.innerText.startsWith(" + browsing.Quote(stage) + ")).click()")
		tab.Wait("!!document.querySelector('.amend')")
	}
	tab.Do("document.querySelector('.amend').open = true")
	fill(tab, "built.ends", "475")
	figureIs(tab, "ends", "475")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.EachLook(t, "warp-amended")
	fill(tab, "warp.wound", "9 yd") // the plan itself stands
	tab.Press(browsing.Enter)
	tab.Wait("!!document.querySelector('.care')")
	time.Sleep(100 * time.Millisecond)
	tab.Quiet(t, true)
}
