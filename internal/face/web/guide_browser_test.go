package web_test

import (
	"fmt"
	"net/http"
	"testing"

	"sley/internal/face/web/browsing"
)

// settled waits until the pictures of a page are there.
func settled(tab *browsing.Tab, pictures int) {
	tab.Wait(fmt.Sprintf("document.querySelectorAll('figure.picture img').length === %d", pictures))
	tab.Wait("[...document.images].every(i => i.complete && i.naturalWidth > 0)")
}

// guideParts are the parts of the guide with how many pictures of the demo each has.
var guideParts = []struct {
	id       string
	pictures int
}{
	{"begin", 1},
	{"piece", 0},
	{"cloth", 2},
	{"numbers", 0},
	{"dress", 1},
	{"weave", 0},
	{"finish", 0},
	{"yarns", 0},
	{"book", 0},
	{"teaching", 0},
	{"care", 0},
}

// Every part of the guide is there, can be read by everybody, and leads on to the next.
func TestGuide(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/guide", hasHeading)
	tab.Says("From the piece you want to the piece you measure")
	tab.Click("Where to begin")
	for i, part := range guideParts {
		tab.Wait("location.pathname === '/guide/" + part.id + "'")
		settled(tab, part.pictures)
		if i+1 < len(guideParts) {
			tab.Do("[...document.querySelectorAll('.ways a')].find(a => a.innerText.startsWith('Next')).click()")
		}
	}
	tab.Go(r.url("/guide/nothing"))
	tab.Says("The guide has no such part")
	tab.Quiet(t, false)
}

// The guide's figures of the towels are those of their reckoning, worded as it words them.
func TestGuideFigures(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/guide", hasHeading)
	worded := r.towels()
	seen := 0
	for _, part := range guideParts {
		tab.Go(r.url("/guide/" + part.id))
		tab.Wait("!!document.querySelector('article h1')")
		var figures []struct{ ID, Value string }
		tab.Read(&figures, `[...document.querySelectorAll('[data-figure]')].map(e => ({ID: e.dataset.figure, Value: `+
			browsing.Plain("[...e.childNodes].map(n => n.ariaLabel ?? n.textContent).join(' ')")+`.replace(/ +/g, ' ').trim()}))`)
		for _, figure := range figures {
			seen++
			if got := worded[figure.ID]; got != figure.Value {
				t.Errorf("%s: the guide says %s %q, the reckoning %q", part.id, figure.ID, figure.Value, got)
			}
		}
	}
	if seen < 30 {
		t.Errorf("%d figures were seen", seen)
	}
}

// towels are the figures of the demo's towels, worded, by their ids.
func (r *real) towels() map[string]string {
	r.t.Helper()
	id := r.towelsID()
	var found struct {
		Sections []struct {
			Lines []struct{ ID, Says, Value string }
		}
	}
	if status := r.ask("POST", fmt.Sprintf("/api/documents/%d/reckoning", id), map[string]any{}, &found); status != http.StatusOK {
		r.t.Fatalf("the reckoning of the towels: %d", status)
	}
	worded := map[string]string{}
	for _, section := range found.Sections {
		for _, line := range section.Lines {
			worded[line.ID] = line.Value
		}
	}
	for _, node := range r.nodes(id) { // some of the working is on no page
		if _, has := worded[node.ID]; !has {
			worded[node.ID] = node.Bench
		}
	}
	return worded
}

// node is a figure of a reckoning as it is read at the bench.
type node struct{ ID, Bench string }

func (r *real) nodes(id int) []node {
	r.t.Helper()
	var whole struct{ Nodes []node }
	r.ask("GET", fmt.Sprintf("/api/documents/%d/reckoning", id), nil, &whole)
	return whole.Nodes
}

// towelsID is the number of the demo's towels.
func (r *real) towelsID() int {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/warps?words=galley+towels", nil, &l)
	if len(l.Items) == 0 {
		r.t.Fatal("the demo has no towels")
	}
	return l.Items[0].ID
}

// A word of the trade opens what it means, by mouse and by keys, and leads to its place
// in the glossary.
func TestGuideTerms(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/guide/numbers", hasHeading)
	tab.Click("Take-up")
	tab.Says("Length lost to bending")
	tab.EachLook(t, "guide-term")
	tab.Wait("document.activeElement.ariaExpanded === 'true'")
	tab.Press(browsing.Tabulator) // into the note
	tab.Wait("!!document.activeElement.closest('.meaning')")
	tab.Press(browsing.Escape)
	tab.Wait("!document.querySelector('.meaning') && document.activeElement.innerText === 'Take-up'")
	tab.Press(browsing.Enter)
	tab.Says("Length lost to bending")
	tab.Do("[...document.querySelectorAll('.meaning a')].at(-1).click()")
	tab.Wait("location.pathname + location.hash === '/glossary#take-up' && document.activeElement.id === 'take-up'")
	tab.Quiet(t, false)
}

// The labels of a warp say what their words mean, beside the label and its field.
func TestTermsOfLabels(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	id := r.towelsID()
	tab.Go(r.url(fmt.Sprintf("/warps/%d/numbers", id)))
	tab.Wait("document.querySelectorAll('.allowance').length > 3")
	tab.Click("Allowances")
	tab.Says("What is added for a loss")
	tab.Do("document.querySelector('.allowance .asks').click()")
	tab.Says("Length or width lost in washing")
	tab.EachLook(t, "terms-numbers")
	tab.ReachedByKeys(t)
	tab.Go(r.url(fmt.Sprintf("/warps/%d/cloth", id)))
	tab.Click("What is sett?")
	tab.Says("How close the ends stand")
	tab.EachLook(t, "terms-cloth")
	tab.Do("document.activeElement.click(); document.activeElement.closest('.field').querySelector('label').click()")
	tab.Wait("!document.querySelector('.meaning') && document.activeElement.name === 'warp.sett'")
	tab.Quiet(t, false)
}

func TestGlossary(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openAt(t, r, "/glossary#take-up", hasHeading)
	tab.Wait("document.activeElement.id === 'take-up' && document.activeElement.getBoundingClientRect().top < innerHeight")
	tab.ReachedByKeys(t)
	tab.Do("document.querySelector('#search').focus()")
	tab.Type("felt")
	tab.Says("1 word")
	tab.Says("fulling")
	tab.Type("ed hats")
	tab.Says("No word has “felted hats” in it or in what it means.")
	tab.EachLook(t, "glossary-none")
	tab.Click("Show all words")
	tab.Click("crimp") // of take-up
	tab.Wait("location.hash === '#crimp' && document.activeElement.id === 'crimp'")
	tab.Quiet(t, false)
}

// The first thing a new weaver sees leads to the guide; an empty book says what goes where.
func TestFirstRun(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab := openReal(t, r)
	tab.Says("Saltmarsh")
	tab.Click("What to look at first")
	tab.Wait("location.pathname === '/guide/begin' && document.activeElement.id === 'main'")
	settled(tab, 1)
	tab.ReachedByKeys(t)
	tab.Click("Bench")
	tab.Click("Clear the demo")
	tab.Says("This book is empty")
	tab.ReachedByKeys(t)
	tab.Go(r.url("/guide/begin")) // without the demo the guide still reads
	tab.Says("Where to begin")
	tab.Wait("document.querySelectorAll('figure.picture').length === 0")
	tab.EachLook(t, "guide-no-demo")
	tab.Quiet(t, false)
}
