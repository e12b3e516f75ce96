package web_test

import (
	"testing"

	"sley/internal/face/web/browsing"
)

// into types a text into the input with the id, over what stands there.
func into(tab *browsing.Tab, id, text string) {
	spot := "document.getElementById(" + browsing.Quote(id) + ")"
	tab.Wait("!!" + spot)
	tab.Do(spot + ".focus(); " + spot + ".select()")
	tab.Type(text)
}

// The steps stand in order with their cautions; what is measured at one goes into the
// record, in the state of that step.
func TestFinishStepByStep(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	at(tab, "Berth blanket", "Finish")
	tab.Wait("document.querySelectorAll('[data-step]').length === 13")
	var steps []string
	tab.Read(&steps, "[...document.querySelectorAll('[data-step]')].map(li => li.dataset.step)")
	if steps[0] != "hemstitch" || steps[7] != "full" || steps[12] != "measure-finished" {
		t.Errorf("the steps are %q", steps)
	}
	tab.Says("Hot water scalds")
	tab.Says("hold the handle before a brake")
	into(tab, "measure-relaxed-pieces-0--length", "258 cm")
	into(tab, "measure-relaxed-pieces-0--width", "99.5 cm")
	tab.Press(browsing.Enter)
	relaxed := browsing.Plain("document.querySelector('[data-step=measure-relaxed]').innerText")
	tab.Wait(relaxed + ".includes('measured 258 cm')")
	tab.Wait(relaxed + ".includes('measured 99.5 cm')")
	tab.Wait("document.getElementById('measure-relaxed-pieces-0--width').value === ''")
	tab.Wait("[...document.querySelectorAll('.sizes tr')].some(tr => /^relaxed\\s+260.cm\\s+258.cm/.test(tr.innerText))")
	into(tab, "measure-finished-pieces-0--length", "206 cm")
	tab.Press(browsing.Enter)
	tab.Wait("document.querySelector('.answers').innerText.toLowerCase().includes('relaxed to finished')") // what follows names its two states
	into(tab, "measure-finished-pieces-0--length", "206 ells")
	tab.Press(browsing.Enter)
	tab.Says("206 ells")
	tab.Wait("document.getElementById('measure-finished-pieces-0--length').value === '206 ells'") // nothing typed is lost
	tab.Quiet(t, true)
}

// The label in both forms, with a button that copies; where a page may not, the text is
// marked.
func TestLabelIsCopied(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	tab.Before("window.kept = ''; Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText: text => { window.kept = text; return Promise.resolve() } } })")
	id, _ := r.named("warps", "Hatch runner, finished")
	tab.Go(r.url("/warps/" + itoa(id) + "/finish"))
	tab.Says("86.4 % linen, 13.6 % cotton")
	tab.Says("86% Linen, 14% Cotton")
	tab.Says("Check your local rule")
	tab.Says("Do not bleach.")
	tab.Click("Copy the European form")
	tab.Wait("window.kept === '86.4 % linen, 13.6 % cotton'")
	tab.Says("Copied")
	tab.Do("Object.defineProperty(navigator, 'clipboard', { configurable: true, value: undefined })")
	tab.Click("Copy the United States form")
	tab.Wait("getSelection().toString().trim() === '86% Linen, 14% Cotton'")
	tab.Says("Marked: copy it with Ctrl+C")
	tab.Do("document.querySelector('.label-text details').open = true")
	tab.Says("with the moisture it holds there")
	tab.EachLook(t, "finish-label")
	tab.Quiet(t, false)
}

// What is missing for a label is asked for, with the way to where it is typed.
func TestLabelAsksOnThePage(t *testing.T) {
	t.Parallel()
	tab := openReal(t, newReal(t))
	at(tab, "Galley towels", "Finish")
	tab.Wait("document.querySelectorAll('.label-text .problem-list li').length === 2")
	tab.EachLook(t, "finish-asks")
	tab.Do("document.querySelector('.label-text .problem-list a').click()")
	tab.Wait("document.querySelector('.stages .now')?.innerText.startsWith('Cloth')")
	tab.Quiet(t, false)
}

// What is left of a yarn is weighed, and the shelf has that.
func TestLeftIsWeighed(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	at(tab, "Berth blanket", "Finish")
	tab.Wait("document.querySelectorAll('.weigh').length === 2")
	id := ""
	tab.Read(&id, "document.querySelector('.weigh input').id")
	into(tab, id, "much")
	tab.Press(browsing.Enter)
	tab.Wait("!!document.querySelector('.weigh .problem-list')")
	into(tab, id, "120 g")
	tab.Press(browsing.Enter)
	tab.Says("120 g is written down for")
	tab.Wait("!document.querySelector('.weigh .problem-list') && document.getElementById(" + browsing.Quote(id) + ").value === ''")
	tab.EachLook(t, "finish")
	tab.ReachedByKeys(t)
	tab.Do("document.querySelector('.weigh a').click()")
	tab.Says("weighed after Berth blanket")
	tab.Quiet(t, true)
}
