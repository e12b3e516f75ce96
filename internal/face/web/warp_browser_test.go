package web_test

import (
	"testing"

	"sley/internal/face/web/browsing"
)

// at goes from the bench to a stage of a warp, as a link does.
func at(tab *browsing.Tab, warp, stage string) {
	tab.Click(warp)
	tab.Wait("!!document.querySelector('.stages')")
	tab.Do("[...document.querySelectorAll('.stages a')].find(a => a.innerText.startsWith(" + browsing.Quote(stage) + ")).click()")
	tab.Wait("document.querySelector('.stages .now')?.innerText.startsWith(" + browsing.Quote(stage) + ")")
	tab.Wait("!!document.querySelector('.group, .reckoning, .sheets') && !document.body.innerText.includes('Reading the book')")
	tab.Wait("[...document.images].every(i => i.complete)")
}

// Every stage of a warp is come to by links, and all that stands there by keys.
func TestStagesOfAWarp(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	for _, stage := range []string{"Piece", "Cloth", "Numbers", "Dress", "Weave", "Finish"} {
		tab.Go(r.url("/"))
		at(tab, "Galley towels", stage)
		tab.ReachedByKeys(t)
	}
	tab.Quiet(t, false)
}
