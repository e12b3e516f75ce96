package web_test

import (
	"fmt"
	"testing"

	"sley/internal/face/web/browsing"
)

// hasHeading holds when a page has come up.
const hasHeading = "!!document.querySelector('main h1')"

// write types a text over what stands in the field with an id.
func write(tab *browsing.Tab, id, text string) {
	tab.Wait("!!document.getElementById(" + browsing.Quote(id) + ")")
	tab.Do("const e = document.getElementById(" + browsing.Quote(id) + "); e.focus(); e.select()")
	tab.Type(text)
}

// choose takes a value of a list, as the keyboard does.
func choose(tab *browsing.Tab, id, value string) {
	tab.Do("const e = document.getElementById(" + browsing.Quote(id) + "); e.value = " + browsing.Quote(value) + "; e.dispatchEvent(new Event('change', {bubbles: true}))")
}

// press checks a box or a round button by its label.
func press(tab *browsing.Tab, label string) {
	tab.Wait("!![...document.querySelectorAll('label')].find(e => e.innerText.trim().toLowerCase().startsWith(" + browsing.Quote(label) + "))")
	tab.Do("const l = [...document.querySelectorAll('label')].find(e => e.innerText.trim().toLowerCase().startsWith(" + browsing.Quote(label) + ")); const i = l.control; i.focus(); i.click()")
}

// The shelf says what of each yarn is there, promised and left; a yarn is added by its
// label, by a skein, by its wraps.
func TestYarnsPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/yarns", hasHeading)
	for _, text := range []string{"handspun, grey ewe", "1600 yd/lb", "Berth blanket", "5 yd left", "9 yarns"} {
		tab.Says(text)
	}
	write(tab, "search", "handspun")
	tab.Says("1 yarn with “handspun”")
	tab.ReachedByKeys(t)
	write(tab, "search", "mohair")
	tab.Says("No yarn has “mohair” in it.")
	tab.Click("Show all yarns")
	tab.Says("9 yarns")
	tab.Click("Add a yarn")
	write(tab, "label", "8/2 cotton, harbour blue #25407c")
	tab.Says("3360 yd/lb")
	tab.Says("No system is written")
	tab.EachLook(t, "yarns-label")
	press(tab, "its wraps")
	write(tab, "yarn-name", "grey fleece")
	write(tab, "yarn-fibre", "wool")
	write(tab, "wraps", "44")
	write(tab, "wraps-over", "2")
	tab.Says("write epi, ppi or dpi, or a length after a slash")
	write(tab, "wraps-over", "2 in")
	choose(tab, "wraps-kind", "packed")
	tab.Says("586 yd/lb")
	tab.EachLook(t, "yarns-wraps")
	press(tab, "a measured skein")
	write(tab, "skein-length", "10 yd")
	write(tab, "skein-weight", "5 g")
	tab.Says("907 yd/lb")
	press(tab, "weighed after washing")
	tab.EachLook(t, "yarns-skein")
	tab.ReachedByKeys(t)
	tab.Click("Put it on the shelf")
	tab.Wait("document.querySelector('h1')?.innerText === 'grey fleece'")
	tab.Says("907 yd/lb")
	tab.Quiet(t, false)
}

// A yarn is changed by its fields; its stock is what was written down, and can be taken
// back; samples teach.
func TestYarnPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("yarns", "handspun, grey ewe")
	tab := openAt(t, r, fmt.Sprint("/yarns/", id), hasHeading)
	for _, text := range []string{"1585 yd", "Berth blanket", "fourteen skeins", "0.75 mm"} {
		tab.Says(text)
	}
	choose(tab, "stock-what", "lost")
	write(tab, "stock-amount", "12")
	tab.Click("Write it down")
	tab.Says("is not an amount of yarn")
	write(tab, "stock-amount", "100 m")
	write(tab, "stock-note", "moths")
	tab.Click("Write it down")
	tab.Says("short")
	write(tab, "sample-name", "2/2 twill, washed")
	tab.Click("Add the sample")
	tab.Says("Remove sample 2/2 twill, washed")
	for _, said := range [][2]string{{"on-loom", "30 cm"}, {"washed", "24 cm"}} {
		name := "samples.2/2 twill, washed." + said[0]
		tab.Wait("document.getElementsByName(" + browsing.Quote(name) + ").length === 1")
		tab.Do("document.getElementsByName(" + browsing.Quote(name) + ")[0].focus()")
		tab.Type(said[1])
		tab.Press(browsing.Tabulator)
	}
	tab.Says("20 % lost")
	tab.Click("Rename 2/2 twill, washed")
	name := "name-field-samples_462_472_32twill_44_32washed"
	write(tab, name, "2/2 twill, fulled")
	tab.Says("There is one of that name")
	write(tab, name, "twill, washed by hand")
	tab.Click("Save the name")
	tab.Says("Remove sample twill, washed by hand")
	tab.Wait("!document.body.innerText.includes('2/2 twill, washed')")
	tab.Says("20 % lost")
	write(tab, "field-skein_46weight", "31")
	tab.Says("has no unit")
	tab.EachLook(t, "yarn")
	write(tab, "field-skein_46weight", "31 g")
	tab.Wait("!document.body.innerText.includes('has no unit')")
	tab.ReachedByKeys(t)
	tab.Click("Take back: Lost 100 m")
	tab.Says("5 yd left")
	tab.Click("Copy as a new yarn")
	tab.Wait("document.querySelector('h1')?.innerText === 'handspun, grey ewe 2'")
	tab.Click("Remove this yarn")
	tab.Says("Removed: handspun, grey ewe 2")
	tab.Quiet(t, true)
}

// Looms are added, changed and drawn; a board of one's own is a list of pegs.
func TestLoomsPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/looms", hasHeading)
	tab.Says("countermarch, 120 cm")
	tab.Says("2 looms")
	tab.Click("Add a loom")
	write(tab, "loom-name", "net loft loom")
	write(tab, "loom-width", "90")
	write(tab, "loom-shafts", "4")
	tab.Click("Add this loom")
	tab.Says("has no unit")
	tab.EachLook(t, "looms-add")
	tab.ReachedByKeys(t)
	write(tab, "loom-width", "90 cm")
	tab.Click("Add this loom")
	tab.Wait("document.querySelector('h1')?.innerText === 'net loft loom'")
	choose(tab, "board", "pegs")
	tab.Says("Pegs of the board")
	tab.Click("Add a peg")
	tab.Wait("document.querySelectorAll('.pegs li').length === 6")
	tab.Do("const e = document.querySelector('[aria-label=\"Peg 5: Down\"]'); e.focus(); e.select()")
	tab.Type("50")
	tab.Press(browsing.Tabulator)
	tab.Says("has no unit")
	tab.EachLook(t, "loom")
	tab.ReachedByKeys(t)
	tab.Click("Remove peg 5")
	tab.Wait("document.querySelectorAll('.pegs li').length === 5")
	tab.Quiet(t, true)
}

// A warp is begun from a kind of piece, with yarn and loom of the shelf.
func TestNewWarpPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/new", hasHeading)
	press(tab, "in centimetres")
	tab.Says("75 cm × 45 cm")
	press(tab, "hand towel")
	tab.Says("or drying hands")
	write(tab, "new-name", "Locker towels")
	write(tab, "new-count", "6")
	yarn, _ := r.named("yarns", "cottolin, white")
	choose(tab, "new-yarn", itoa(yarn))
	tab.EachLook(t, "new-kind")
	tab.ReachedByKeys(t)
	tab.Click("Begin this warp")
	tab.Wait("document.querySelector('h1')?.innerText === 'Locker towels' && location.pathname.endsWith('/piece')")
	tab.Says("75 cm")
	tab.Go(r.url("/new"))
	tab.Click("Copy Galley towels")
	tab.Wait("document.querySelector('h1')?.innerText === 'Galley towels 2'")
	tab.Quiet(t, false)
}

const droppedPlan = "sley = 1\nname = \"Slipway mats\"\n\n[[pieces]]\nlength = \"40 cm\"\nwidth = \"30 cm\"\n\n[warp]\nsett = \"6 ends/cm\"\n"

// Files are dropped: what is wrong with one is all told with its place, and nothing of it
// is added; a good one is opened.
func TestFilesAreDropped(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	before := r.warps()
	drop(tab, file{"bad.toml", "sley = 1\n\n[[pieces]]\nlength = \"30\"\nwidht = \"3 in\"\n"})
	for _, text := range []string{"bad.toml was not added", "line 4", "length = \"30\"", "write the unit", "line 5", "did you mean"} {
		tab.Says(text)
	}
	tab.EachLook(t, "dropped-bad")
	if n := r.warps(); n != before {
		t.Errorf("%d warps before, %d after", before, n)
	}
	drop(tab, file{"mats.toml", droppedPlan})
	tab.Wait("document.querySelector('h1')?.innerText === 'Slipway mats'")
	tab.Quiet(t, true)
}

// Units are chosen, each for itself or all at once.
func TestUnitsPage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/units", hasHeading)
	tab.Click("All metric")
	tab.Wait("document.getElementById('unit-length').value === 'cm'")
	choose(tab, "unit-count", "Ne")
	tab.ReachedByKeys(t)
	tab.Reload()
	tab.Wait("document.getElementById('unit-count')?.value === 'Ne'")
	warp := openAt(t, r, fmt.Sprintf("/warps/%d/piece", r.towelsID()), hasHeading)
	figure := "document.querySelector('[data-id=\"warp.wound\"] .value')?.innerText"
	warp.Wait("!!" + figure + "?.includes('m')")
	choose(tab, "unit-length", "in")
	warp.Wait("/(yd|in)/.test(" + figure + ")") // without being touched
	warp.Quiet(t, false)
	tab.Quiet(t, false)
}

// An empty book says what goes where, on every shelf.
func TestEmptyShelves(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	r.ask("POST", "/api/demo/clear", map[string]any{"window": "w"}, nil)
	tab := openAt(t, r, "/yarns", hasHeading)
	tab.Says("The shelf is empty")
	tab.EachLook(t, "yarns-empty")
	tab.ReachedByKeys(t)
	tab.Go(r.url("/looms"))
	tab.Says("There is no loom yet")
	tab.EachLook(t, "looms-empty")
	tab.Go(r.url("/yarns/4"))
	tab.Says("This yarn is not on the shelf")
	tab.EachLook(t, "yarn-gone")
	tab.Quiet(t, true)
}
