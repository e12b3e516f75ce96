package web_test

import (
	"fmt"
	"net/http"
	"slices"
	"testing"
	"time"

	"sley/internal/face/present"
	"sley/internal/face/web/browsing"
)

// tableOf opens the table of a draft, once it is drawn.
func openTable(t *testing.T, r *real, path string) *browsing.Tab {
	t.Helper()
	tab := openAt(t, r, path, "!!document.querySelector('.draft-table')")
	tab.Wait(drawnTable)
	tab.Do(tableSettled)
	return tab
}

// tableSettled waits until nothing of the page moves any more: type that comes late moves all that
// stands below it, and a pointer would then fall on something else.
const tableSettled = `await document.fonts.ready;
	const box = () => JSON.stringify(document.querySelector(".draft-table").getBoundingClientRect());
	for (let was = "", still = 0; still < 6; was = box()) {
		await new Promise(done => setTimeout(done, 50));
		still = was === box() ? still + 1 : 0;
	}`

// made puts a weave of the catalogue on the shelf and draws on it, and gives its number.
func (r *real) made(name, weave string, values map[string]string, acts ...map[string]any) int {
	r.t.Helper()
	var added struct{ ID int }
	if status := r.ask("POST", "/api/drafts/made", map[string]any{"window": "w", "name": name, "weave": weave, "values": values}, &added); status != http.StatusOK {
		r.t.Fatal(name, status)
	}
	if len(acts) == 0 {
		return added.ID
	}
	var drew drewIn
	if status := r.ask("POST", tableURL(added.ID, ""), map[string]any{"base": 1, "window": "w", "acts": acts}, &drew); status != http.StatusOK {
		r.t.Fatal(name, status, drew)
	}
	return added.ID
}

// spot is where a place of the table lies in the window.
func spot(tab *browsing.Tab, place string) browsing.Spot {
	var at struct{ X, Y float64 }
	tab.Read(&at, "document.querySelector('.draft-table').spotOf("+place+")")
	return browsing.Spot{X: at.X, Y: at.Y}
}

// shaftsAre waits until the book has that threading.
func (r *real) shaftsAre(id int, want ...int) {
	r.t.Helper()
	var now present.TableJSON
	for range 200 {
		r.ask("GET", tableURL(id, ""), nil, &now)
		if len(now.Threading) >= len(want) && slices.Equal(now.Threading[:len(want)], want) {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	r.t.Fatalf("the threading is %v, want %v", now.Threading, want)
}

// Lines, single cells, choices and colours by mouse, each one version that undo takes back.
func TestTableByMouse(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	var was, now present.TableJSON
	r.ask("GET", tableURL(id, ""), nil, &was)
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	tab.Drag(spot(tab, "{part: 'threading', end: 0, shaft: 4}"), spot(tab, "{part: 'threading', end: 3, shaft: 1}"))
	r.shaftsAre(id, 4, 3, 2, 1)
	tab.Drag(spot(tab, "{part: 'ties', treadle: 1, shaft: 3}"))
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Drag(spot(tab, "{part: 'treadling', pick: 0, treadle: 2}"))
	tab.Click("Choose")
	tab.Drag(spot(tab, "{part: 'threading', end: 0, shaft: 2}"), spot(tab, "{part: 'threading', end: 3, shaft: 2}"))
	tab.Says("Ends 1 to 4")
	tab.Click("Reverse")
	r.shaftsAre(id, 1, 2, 3, 4)
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Click("Undo")
	r.shaftsAre(id, 4, 3, 2, 1)
	for range 3 {
		tab.Wait("!document.querySelector('.steps button').ariaDisabled || document.querySelector('.steps button').ariaDisabled === 'false'")
		tab.Click("Undo")
	}
	r.shaftsAre(id, was.Threading...)
	r.ask("GET", tableURL(id, ""), nil, &now)
	if !slices.Equal(now.Ties, was.Ties) || !slices.Equal(now.Treadling, was.Treadling) || now.Version <= version {
		t.Errorf("undone: %+v", now)
	}
	tab.Quiet(t, false)
}

// Figures, marks, choices and parts by keys alone.
func TestTableByKeys(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	keyUntil(tab, "document.activeElement.classList.contains('draft-table')")
	tab.Press(browsing.Home)
	tab.Press("4321")
	r.shaftsAre(id, 4, 3, 2, 1)
	tab.Says("end 5, shaft 1")
	tab.Press("p")
	tab.Says("treadle 1, shaft 1")
	tab.Press(" ")
	tab.Wait("document.querySelector('.draft-table').innerText.includes('not tied')")
	tab.Press("P", browsing.Shift)
	tab.Press(browsing.Home)
	tab.Press(browsing.End, browsing.Shift)
	tab.Says("Ends 1 to 8")
	tab.Press(browsing.Delete)
	tab.Says("no end")
	tab.Quiet(t, true)
}

// A finger draws, two zoom, and one that rests chooses.
func TestTableByTouch(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	tab.Size(820, 1100)
	tab.Wait("!!document.querySelector('.draft-table').spotOf({part: 'threading', end: 0, shaft: 4})")
	tab.Fingers([]browsing.Spot{spot(tab, "{part: 'threading', end: 0, shaft: 4}")}, []browsing.Spot{spot(tab, "{part: 'threading', end: 1, shaft: 3}")}, []browsing.Spot{spot(tab, "{part: 'threading', end: 3, shaft: 1}")})
	r.shaftsAre(id, 4, 3, 2, 1)
	a, b := spot(tab, "{part: 'drawdown', end: 1, pick: 1}"), spot(tab, "{part: 'drawdown', end: 4, pick: 4}")
	tab.Fingers([]browsing.Spot{a, b}, []browsing.Spot{a, {X: b.X + 30, Y: b.Y + 30}}, []browsing.Spot{a, {X: b.X + 60, Y: b.Y + 60}})
	c, d := spot(tab, "{part: 'drawdown', end: 1, pick: 1}"), spot(tab, "{part: 'drawdown', end: 4, pick: 4}")
	if d.X-c.X < (b.X-a.X)*1.2 {
		t.Errorf("two fingers apart: cells from %v to %v wide", (b.X-a.X)/3, (d.X-c.X)/3)
	}
	tab.Finger(spot(tab, "{part: 'threading', end: 2, shaft: 1}"))
	tab.Says("End 3")
	tab.LiftFingers()
	r.shaftsAre(id, 4, 3, 2, 1)
	tab.Quiet(t, false)
}

// A change is looked at before it is made, a weave begun from, a number gone to, and another
// window's stroke is met as such.
func TestTableOfWholeDrafts(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	tab.Do("document.querySelector('.whole').open = true")
	tab.Wait("document.querySelectorAll('#table-change option').length > 5 && document.querySelectorAll('#table-weave option').length > 5")
	choose(tab, "table-change", "ends-times")
	write(tab, "table-change-how", "many")
	tab.Click("See how it would be")
	tab.Says("cannot be made of this draft")
	write(tab, "table-change-how", "2")
	tab.Click("See how it would be")
	tab.Wait("!!document.querySelector('.draft-table').spotOf({part: 'threading', end: 9, shaft: 1})")
	var now present.TableJSON
	if r.ask("GET", tableURL(id, ""), nil, &now); now.Version != version {
		t.Errorf("looked at, and version %d became %d", version, now.Version)
	}
	tab.Click("Make it so")
	tab.Says("16 ends")
	write(tab, "go-number", "12")
	tab.Click("End")
	tab.Says("end 12, pick 1")
	choose(tab, "table-weave", "waffle")
	tab.Do("[...document.querySelectorAll('.whole button')].filter(b => b.innerText === 'Make it so')[1].click()")
	tab.Wait("!document.querySelector('.title-row').innerText.includes('16 ends')")
	write(tab, "table-blocks", "A (B")
	tab.Do("[...document.querySelectorAll('.whole button')].filter(b => b.innerText === 'See how it would be')[2].click()")
	tab.Wait("!!document.querySelector('.whole .problem-list')")
	tab.EachLook(t, "table-whole")
	write(tab, "table-blocks", "A B A")
	choose(tab, "table-feet", "none")
	tab.Do("[...document.querySelectorAll('.whole button')].filter(b => b.innerText === 'Make it so')[2].click()")
	tab.Says("a lift plan")
	tab.ReachedByKeys(t)
	r.ask("GET", tableURL(id, ""), nil, &now)
	r.end() // so that the page does not hear of it
	r.here("POST", tableURL(id, ""), map[string]any{"base": now.Version, "window": "w-other", "acts": []any{map[string]any{"do": "reverse", "part": "threading", "from": 0, "to": 3}}})
	r.again()
	tab.Drag(spot(tab, "{part: 'threading', end: 0, shaft: 3}"))
	tab.Wait("!document.body.innerText.includes('sley is not answering')")
	tab.Quiet(t, true)
}

// What is drawn while the server is gone is seen, kept through a reload, and written down
// when it is back.
func TestTableOutlastsTheServer(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	r.end()
	tab.Drag(spot(tab, "{part: 'threading', end: 0, shaft: 4}"))
	tab.Says("sley is not answering") // which moves what stands below it
	tab.Do(tableSettled)
	tab.Drag(spot(tab, "{part: 'threading', end: 1, shaft: 4}"))
	tab.Says("2 strokes")
	r.again()
	r.shaftsAre(id, 4, 4)
	tab.Wait("!document.body.innerText.includes('sley is not answering')")
	tab.Quiet(t, true)
}

// coming is whether something is drawn on the canvas above, in the middle of a crossing.
func coming(end, pick int) string {
	return fmt.Sprintf(`(() => {
		const box = document.querySelector(".draft-table"), at = box.spotOf({ part: "drawdown", end: %d, pick: %d });
		const { left, top } = box.getBoundingClientRect(), above = box.querySelectorAll("canvas")[1], ratio = above.width / box.clientWidth;
		return above.getContext("2d").getImageData((at.x - left - box.clientLeft) * ratio, (at.y - top - box.clientTop) * ratio, 1, 1).data[3] > 0;
	})()`, end, pick)
}

// A stroke in the drawdown, of which only the server knows how it comes about, is seen as soon
// as it is drawn and until that is answered.
func TestTableShowsWhatIsComing(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	r.end()
	tab.Says("sley is not answering") // which moves what stands below it
	tab.Do(tableSettled)
	at := spot(tab, "{part: 'drawdown', end: 1, pick: 2}")
	tab.Wait("!" + coming(1, 2))
	tab.MouseDown(at)
	tab.Wait(coming(1, 2))
	tab.MouseUp(at)
	tab.Wait(coming(1, 2) + " && !" + coming(2, 2))
	r.again()
	tab.Wait("!" + coming(1, 2))
	var now present.TableJSON
	if r.ask("GET", tableURL(id, ""), nil, &now); now.Version != version+1 {
		t.Errorf("version %d became %d", version, now.Version)
	}
	tab.Quiet(t, true)
}

// Two windows at one draft: each sees what the other draws, and a stroke upon what is no
// longer there is not made, and said.
func TestTwoTablesOfOneDraft(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	path := fmt.Sprintf("/drafts/%d/table", id)
	one, two := openTable(t, r, path), openTable(t, r, path)
	one.Drag(spot(one, "{part: 'threading', end: 0, shaft: 4}"))
	r.shaftsAre(id, 4)
	two.Click("Choose")
	two.Drag(spot(two, "{part: 'threading', end: 0, shaft: 1}"))
	two.Wait("document.querySelector('.draft-table').innerText.includes('the end is on shaft 4')")
	late := map[string]any{"base": version, "window": "w-late", "acts": []any{map[string]any{"do": "put", "part": "threading", "at": 0, "remove": 1, "put": []int{2}}}}
	if status := r.ask("POST", tableURL(id, ""), late, nil); status != http.StatusConflict {
		t.Errorf("a stroke upon what was there before: %d", status)
	}
	one.Quiet(t, false)
	two.Quiet(t, false)
}
