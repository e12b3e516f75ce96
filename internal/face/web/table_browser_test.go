package web_test

import (
	"fmt"
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
	tab.Wait("!!document.querySelector('.draft-table').spotOf?.({part: 'drawdown', end: 0, pick: 0})")
	return tab
}

// The table of a draft of the shelf, at each width.
func TestTablePage(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	tab.Says("Nothing needs care")
	tab.EachLook(t, "table")
	tab.Quiet(t, false)
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
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	keyUntil(tab, "document.activeElement.classList.contains('draft-table')")
	tab.Press(browsing.Home)
	tab.Type("4321")
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
