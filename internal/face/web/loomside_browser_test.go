package web_test

import (
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// loomsideOf is a warp beside the loom as the server tells it.
type loomsideOf struct {
	Woven int
	Way   string
	Steps []struct {
		ID          string
		Done, Total int
		Per         int
	}
	Weaving struct {
		Total  int
		Pieces []struct{ Before int }
	}
	Forecast []struct{ ID, Value, Note string }
}

func (r *real) loomside(id int) loomsideOf {
	r.t.Helper()
	var out loomsideOf
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/loomside", nil, &out); status != 200 {
		r.t.Fatalf("%d", status)
	}
	return out
}

func (l loomsideOf) done(step string) int {
	for _, s := range l.Steps {
		if s.ID == step {
			return s.Done
		}
	}
	return -1
}

// presses sends a key to the page so many times, faster than any hand.
func presses(tab *browsing.Tab, key string, times int) {
	tab.Do("for (let i = 0; i < " + itoa(times) + "; i++) document.dispatchEvent(new KeyboardEvent('keydown', {key: " + browsing.Quote(key) + ", bubbles: true, cancelable: true}))")
}

// sent waits until everything that was done is in the book.
func sent(tab *browsing.Tab) {
	tab.Wait("!/written down|kept here/.test(document.querySelector('.loom-standing')?.innerText ?? '') && Object.keys(localStorage).every(k => !k.startsWith('sley-loom-'))")
}

// beside opens a warp of the demo beside the loom.
func beside(t *testing.T, r *real, name string) (*browsing.Tab, int) {
	t.Helper()
	id, _ := r.warpNamed(name)
	return openAt(t, r, "/loomside/"+itoa(id), "!!document.querySelector('.loom')"), id
}

// openStep goes from the list of steps to one.
func openStep(tab *browsing.Tab, says string) {
	tab.Do("[...document.querySelectorAll('.loom-tools button')].find(b => b.innerText === 'All steps')?.click()")
	tab.Wait("!!document.querySelector('.loom-steps')")
	tab.Do("[...document.querySelectorAll('.loom-steps button')].find(b => b.innerText.startsWith(" + browsing.Quote(says) + ")).click()")
	tab.Wait("!document.querySelector('.loom-steps')")
}

// wholeStep does all of a step by the keys of a foot switch: its strokes, and a check
// after each part.
func wholeStep(tab *browsing.Tab, r *real, id int, says, step string) {
	openStep(tab, says)
	for range 40 {
		presses(tab, " ", 40)
		sent(tab)
		l := r.loomside(id)
		for _, s := range l.Steps {
			if s.ID == step && s.Done == s.Total {
				return
			}
		}
	}
	r.t.Errorf("%s was not finished", step)
}

// nearly sets a step to where so much of it is still to be done: hundreds of strokes more
// would show nothing new.
func (r *real) nearly(id int, step string, left int) {
	r.t.Helper()
	for _, s := range r.loomside(id).Steps {
		if s.ID != step || s.Total-left <= s.Done {
			continue
		}
		said := map[string]any{"id": "event-nearly-" + step, "window": "w-test", "step": step, "place": s.Total - left, "set": true}
		if status := r.ask("POST", "/api/documents/"+itoa(id)+"/reached", said, nil); status != 200 {
			r.t.Fatal(status)
		}
	}
}

// A whole warp of the demo's blanket from the first section to the record, with the
// server stopped, the page loaded anew and the connection lost on the way: no pick and no
// group is lost or counted twice.
func TestBlanketFromWindingToRecord(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := beside(t, r, "Berth blanket")
	tab.Click("Begin work")
	tab.Wait("!!document.querySelector('.loom-steps')")
	wholeStep(tab, r, id, "Wind the sections", "sections")
	openStep(tab, "Thread")
	presses(tab, " ", 30)
	sent(tab)
	was := r.loomside(id).done("threading")
	r.end() // the computer is away; she goes on
	presses(tab, "Enter", 7)
	tab.Says("The computer is away.")
	tab.Wait("document.querySelector('.loom-standing').innerText.includes('kept here')")
	r.again()
	sent(tab)
	if got := r.loomside(id).done("threading"); got <= was || got > was+7 {
		t.Errorf("%d threaded after 7 strokes from %d, of which one may be a check", got, was)
	}
	tab.Reload()
	tab.Wait("!!document.querySelector('.loom')")
	r.nearly(id, "threading", 30)
	wholeStep(tab, r, id, "Thread", "threading")
	r.nearly(id, "sleying", 25)
	wholeStep(tab, r, id, "Sley", "sleying")
	wholeStep(tab, r, id, "Tie on", "tying-on")
	wholeStep(tab, r, id, "Tie up", "tie-up")

	openStep(tab, "Weave")
	presses(tab, "PageDown", 100)
	sent(tab)
	if got := r.loomside(id).Woven; got != 100 {
		t.Fatalf("%d picks, want 100", got)
	}
	presses(tab, "PageUp", 3)
	sent(tab)
	r.end()
	presses(tab, "PageDown", 5)
	tab.Says("The computer is away.")
	r.again()
	sent(tab)
	if got := r.loomside(id).Woven; got != 102 {
		t.Errorf("%d picks, want 102", got)
	}
	typed(tab, "loom-tape", "24 cm")
	tab.Press(browsing.Enter)
	tab.Says("the tape read last")
	typed(tab, "loom-scale", "300 g")
	tab.Press(browsing.Enter)
	tab.Says("by the scale")
	tab.Do("[...document.querySelectorAll('.loom-more')].forEach(d => d.open = true)")
	all := r.loomside(id).Weaving.Total
	typed(tab, "loom-pick", itoa(all-1))
	tab.Press(browsing.Enter)
	tab.Wait("document.querySelector('.loom-sum').innerText.startsWith('" + itoa(all-1) + "')")
	tab.Click("Woven")
	tab.Says("All woven")
	sent(tab)
	if l := r.loomside(id); l.Woven != all {
		t.Errorf("%d picks of %d", l.Woven, all)
	}
	tab.Quiet(t, true)

	tab.Go(r.url("/warps/" + itoa(id) + "/finish"))
	tab.Wait("!!document.querySelector('.sizes')")
	for i, one := range [][2]string{{"relaxed", "140 cm"}, {"finished", "112 cm"}} {
		said := map[string]any{"id": "event-size-" + itoa(i), "window": "w-test", "path": "pieces[0].length", "state": one[0], "typed": one[1]}
		if status := r.ask("POST", "/api/documents/"+itoa(id)+"/measurements", said, nil); status != 200 {
			t.Fatal(status)
		}
	}
	tab.Says("20 %")
	tab.Wait("!!document.querySelector('[data-step=\"rest\"] input[type=checkbox]')")
	tab.Do("document.querySelector('[data-step=\"rest\"] input[type=checkbox]').click()")
	tab.Wait("!!document.querySelector('[data-step=\"rest\"].done')")
	tab.Reload()
	tab.Wait("document.querySelector('[data-step=\"rest\"] input[type=checkbox]')?.checked === true")
}

// Two windows at once, each with its own foot: what they say comes together, and each hears
// of the other.
func TestTwoWindowsBesideTheLoom(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	browser := browsing.Start(t)
	first := browser.Open(t, web.Address(r.port, token)) // takes the cookie
	first.Wait("!!document.querySelector('.page')")
	first.Go(r.url("/loomside/" + itoa(id)))
	first.Wait("!!document.querySelector('.loom')")
	first.Click("Begin work")
	first.Wait("!!document.querySelector('.loom-steps')")
	openStep(first, "Weave")
	second := browser.Open(t, r.url("/loomside/"+itoa(id)))
	second.Wait("!!document.querySelector('.loom')")
	openStep(second, "Weave")
	presses(first, " ", 10)
	presses(second, " ", 10) // for the same picks, or for those after them
	sent(first)
	sent(second)
	got := r.loomside(id).Woven
	if got < 10 || got > 20 {
		t.Errorf("%d picks, each window pressed for 10", got)
	}
	for _, tab := range []*browsing.Tab{first, second} {
		tab.Wait("document.querySelector('.loom-sum').innerText.startsWith('" + itoa(got) + " ')")
	}
	typed(second, "loom-tape", "1 in")
	second.Press(browsing.Enter)
	first.Says("the tape read last")
	first.Quiet(t, false)
}

// A warp dressed front to back, from the right, and amended: its sheets and its counts
// follow what stands on the loom.
func TestDressedFrontToBackAndAmended(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := beside(t, r, "Galley towels")
	tab.Click("Begin work")
	tab.Wait("!!document.querySelector('.loom-steps')")
	tab.Do("const s = document.getElementById('loom-way'); s.value = 'front to back'; s.dispatchEvent(new Event('change', {bubbles: true}))")
	tab.Wait("document.querySelectorAll('.loom-steps li')[1].innerText.startsWith('Sley')")
	openStep(tab, "Thread")
	tab.Do("[...document.querySelectorAll('.loom-more')].forEach(d => d.open = true)")
	tab.Do("const s = document.getElementById('loom-side'); s.value = 'right'; s.dispatchEvent(new Event('change', {bubbles: true}))")
	tab.Says("counted from the right")
	presses(tab, " ", 25) // the balancing end with the first two dozen
	sent(tab)
	tab.Says("Check: Ends 1 to 25")
	openStep(tab, "Weave")
	tab.Do("[...document.querySelectorAll('.loom-more')].forEach(d => d.open = true)")
	typed(tab, "loom-ends", "475")
	tab.Press(browsing.Enter)
	tab.Wait("document.getElementById('loom-ends').value === ''")
	openStep(tab, "Thread")
	tab.Wait("document.querySelector('.loom-sum').innerText === '25 of 475 ends threaded'")
	var sheets struct {
		Sheets []struct {
			Name string
			Has  bool
		}
	}
	if r.ask("GET", "/api/documents/"+itoa(id)+"/sheets", nil, &sheets); len(sheets.Sheets) < 8 {
		t.Errorf("sheets: %+v", sheets)
	}
	if l := r.loomside(id); l.Way != "front to back" || l.Steps[1].ID != "sleying" || l.done("threading") != 25 {
		t.Errorf("%+v", l)
	}
	tab.Quiet(t, false)
}

// What is shown at the loom, at every width, by day and by night: readable at arm's length
// and without a barrier.
func TestLoomsideLooks(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := beside(t, r, "Galley towels")
	tab.EachLook(t, "loomside-begin")
	tab.Click("Begin work")
	tab.Wait("!!document.querySelector('.loom-steps')")
	for _, step := range []struct{ says, name string }{
		{"Wind the warp", "winding"}, {"Beam", "beaming"}, {"Thread", "threading"}, {"Sley", "sleying"}, {"Tie up", "tie-up"},
	} {
		openStep(tab, step.says)
		presses(tab, " ", 2)
		sent(tab)
		seeLarge(t, tab, step.name)
		seeTurned(t, tab, step.name)
		tab.EachLook(t, "loomside-"+step.name)
	}
	r.ask("POST", "/api/documents/"+itoa(id)+"/reached", map[string]any{"id": "event-weave-1", "window": "w-test", "step": "weaving", "place": 782, "set": true}, nil)
	r.ask("POST", "/api/documents/"+itoa(id)+"/tape", map[string]any{"id": "event-tape-1", "window": "w-test", "typed": "1 3/8 in"}, nil)
	openStep(tab, "Weave")
	tab.Says("towel 2 of 6")
	seeLarge(t, tab, "weaving")
	seeTurned(t, tab, "weaving")
	tab.EachLook(t, "loomside-weaving")
	tab.Do("[...document.querySelectorAll('.loom-tools button')].find(b => b.innerText === 'Evening colours').click()")
	tab.EachLook(t, "loomside-evening")
	tab.Do("[...document.querySelectorAll('.loom-tools button')].find(b => b.innerText === 'All steps').click()")
	tab.EachLook(t, "loomside-steps")
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
}

// seeLarge holds the current step's capitals to 56 CSS px at 390 px; those of the sans are
// 0.72 of its size.
func seeLarge(t *testing.T, tab *browsing.Tab, name string) {
	t.Helper()
	tab.Size(390, 844)
	var high float64
	const capital = `(() => {
		const e = document.querySelector('.loom-now strong'), c = document.createElement('canvas').getContext('2d')
		const s = getComputedStyle(e)
		c.font = s.fontSize + ' ' + s.fontFamily
		const m = c.measureText('H')
		return m.actualBoundingBoxAscent + m.actualBoundingBoxDescent
	})()`
	tab.Read(&high, capital)
	if high < 56 {
		t.Errorf("%s: capitals are %.1f px high", name, high)
	}
}

// seeTurned looks at a step with the phone and the tablet lying on their sides: what is now
// and the way on are in sight without scrolling.
func seeTurned(t *testing.T, tab *browsing.Tab, name string) {
	t.Helper()
	for _, size := range [][2]int64{{844, 390}, {1180, 820}} {
		tab.Size(size[0], size[1])
		tab.Do("scrollTo(0, 0); await new Promise(requestAnimationFrame)")
		where := "loomside-" + name + "-turned-" + itoa(int(size[0]))
		tab.Shot(where)
		for _, fault := range tab.Cramped() {
			t.Errorf("%s: %s", where, fault)
		}
		var inSight bool
		tab.Read(&inSight, "document.querySelector('.loom-go').getBoundingClientRect().bottom <= innerHeight + 1")
		if !inSight {
			t.Errorf("%s: the way on is out of sight", where)
		}
	}
}

// What comes is said aloud by voices of the device alone, and silenced by one touch or by
// Escape.
func TestLoomsideSpeaks(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := beside(t, r, "Galley towels")
	tab.Click("Begin work")
	tab.Wait("!!document.querySelector('.loom-steps')")
	tab.Before(`
		window.spoken = []
		window.hushed = 0
		const voices = [{name: 'afar', lang: 'en-GB', localService: false}, {name: 'own', lang: 'en-GB', localService: true}]
		Object.defineProperty(window, 'speechSynthesis', {value: {
			getVoices: () => voices, addEventListener() {}, cancel() { hushed++ }, speak(u) { spoken.push(u.voice.name + ' ' + u.text) },
		}})
		window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text } }`)
	tab.Reload()
	tab.Wait("!!document.querySelector('.loom-steps')")
	openStep(tab, "Thread")
	presses(tab, " ", 1)
	said := func() (out []string) { tab.Read(&out, "spoken"); return out }
	if got := said(); len(got) > 0 {
		t.Errorf("it spoke unasked: %q", got)
	}
	tab.Click("Say it aloud")
	presses(tab, " ", 3)
	if got := said(); len(got) != 3 || got[0] != "own 3" || got[1] != "own 4" || got[2] != "own 3" {
		t.Errorf("said %q", got)
	}
	presses(tab, "Escape", 1)
	presses(tab, " ", 2)
	if got := said(); len(got) != 3 {
		t.Errorf("silenced it said %q", got)
	}
	tab.Wait("hushed > 0 && !!([...document.querySelectorAll('.loom-tools button')].find(b => b.innerText === 'Say it aloud'))")
	sent(tab)
	if got := r.loomside(id).done("threading"); got != 6 {
		t.Errorf("%d threaded", got)
	}
	tab.Quiet(t, false)
}
