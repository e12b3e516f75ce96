package web_test

import (
	"bytes"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"sley/internal/face/web/browsing"
)

// repeated has the threading of a draft come again, so that one end of it can be alone.
func repeated(ends int) map[string]any {
	return map[string]any{"do": "repeat", "part": "threading", "from": 0, "to": ends, "times": 2}
}

// A stroke that takes more shafts than there were says so, and a loom that is named what it
// lacks: also after the page was left and opened again.
func TestTableOnALoom(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id := r.made("wind", "twill", nil, repeated(4))
	path := fmt.Sprintf("/drafts/%d/table", id)
	tab := openTable(t, r, path)
	tab.Wait("document.querySelectorAll('#table-loom option').length > 2")
	loom, _ := r.named("looms", "table loom, 60 cm")
	choose(tab, "table-loom", itoa(loom))
	tab.Says("this is a table loom")
	tab.Drag(spot(tab, "{part: 'drawdown', end: 0, pick: 2}"))
	tab.Says("This takes 5 shafts, and the draft had 4")
	tab.EachLook(t, "table-told")
	tab.Says("and the loom has 4") // a finding
	tab.Go(r.url("/drafts"))
	tab.Says("Rosepath")
	tab.Go(r.url(path))
	tab.Says("and the loom has 4")
	tab.Quiet(t, false)
}

// Numbers of two figures are typed; a figure that may go on waits for a space.
func TestTableTypesLargeNumbers(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id := r.made("wind", "twill", nil, repeated(4), map[string]any{"do": "shafts", "number": 16})
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	keyUntil(tab, "document.activeElement.classList.contains('draft-table')")
	tab.Press(browsing.Home)
	tab.Press("12 1")
	tab.Says("1 and another figure, or a space to put 1")
	tab.Shot("table-figures")
	tab.Press(" 5 16")
	r.shaftsAre(id, 12, 1, 5, 16)
	tab.Press("1")
	tab.Press(browsing.Escape)
	tab.Press("3 4")
	r.shaftsAre(id, 12, 1, 5, 16, 3, 4)
	tab.Press("1")
	tab.Do("document.activeElement.blur()")
	r.shaftsAre(id, 12, 1, 5, 16, 3, 4, 1)
	tab.Quiet(t, false)
}

// Files are drawn as the draft is drawn here; what is in sight is kept and printed.
func TestTableIsTakenAlong(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	tab.Do("for (const d of document.querySelectorAll('details')) d.open = true")
	choose(tab, "look-cells", "both")
	choose(tab, "look-seeing", "grey")
	choose(tab, "look-picks", "up")
	var link string
	tab.Read(&link, "document.querySelector('a[href*=\"draft.svg\"]').getAttribute('href')")
	if want := fmt.Sprintf("/api/documents/%d/draft.svg?as=written&cells=both&upwards&grey", id); link != want {
		t.Errorf("%s, want %s", link, want)
	}
	if status, kind, _, data := r.file(link); status != http.StatusOK || !strings.Contains(kind, "svg") || len(data) == 0 {
		t.Errorf("%d %s, %d bytes", status, kind, len(data))
	}
	tab.Do("window.print = () => { window.printed = document.querySelector('.seen-sheet').innerText + getComputedStyle(document.querySelector('.seen-sheet')).display }")
	tab.Click("Print it")
	tab.Wait("window.printed?.includes('Rosepath') && window.printed.includes('8 ends')")
	var sizes []float64
	tab.Read(&sizes, "[document.querySelector('.seen-sheet canvas').width, document.querySelector('.draft-table canvas').width]")
	if sizes[0] != 2*sizes[1] {
		t.Errorf("the picture and the screen are %v dots wide", sizes)
	}
	if pages := bytes.Count(tab.Paper(), []byte("<</Type /Page\n")); pages != 1 {
		t.Errorf("what is in sight is printed on %d pages", pages)
	}
	tab.Do("dispatchEvent(new Event('afterprint'))")
	tab.Wait("!document.querySelector('.seen-sheet')")
	tab.Do("HTMLAnchorElement.prototype.click = function() { window.kept = [this.download, this.href] }")
	tab.Click("Keep it as a picture")
	tab.Wait("window.kept?.[0] === 'Rosepath.png' && window.kept[1].startsWith('blob:')")
	tab.Quiet(t, false)
}

// The draft of a warp is put on the shelf from its table, and a newer one taken from there.
func TestTableOfAWarpAndTheShelf(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	warp, _ := r.named("warps", "Berth blanket")
	tab := openTable(t, r, fmt.Sprintf("/warps/%d/table", warp))
	tab.Click("Put on the shelf: Draft")
	tab.Says("from the shelf:")
	var drafts struct {
		Items []struct {
			ID, Version int
			Name        string
		}
	}
	r.ask("GET", "/api/drafts?most=50", nil, &drafts)
	at := slices.IndexFunc(drafts.Items, func(d struct {
		ID, Version int
		Name        string
	},
	) bool {
		return strings.Contains(d.Name, "Berth blanket")
	})
	if at < 0 {
		t.Fatalf("%+v", drafts)
	}
	newer := map[string]any{"base": drafts.Items[at].Version, "window": "w-other", "acts": []any{map[string]any{"do": "reverse", "part": "threading", "from": 0, "to": 4}}}
	if status := r.ask("POST", tableURL(drafts.Items[at].ID, ""), newer, nil); status != http.StatusOK {
		t.Fatal(status)
	}
	tab.Go(r.url(fmt.Sprintf("/warps/%d/table", warp)))
	tab.Wait(drawnTable)
	tab.Click("Take the newer")
	r.shaftsAre(warp, 4, 3, 2, 1)
	tab.Wait("document.querySelector('.draft-table').innerText.length >= 0 && !document.body.innerText.includes('Take the newer')")
	tab.Quiet(t, false)
}

// What is done to a stretch: repeated so often, one put before it, threaded by a rule on some
// shafts, coloured in shorthand, and a weave of the catalogue with its numbers in its place.
func TestTableStretches(t *testing.T) {
	r := newReal(t)
	id := r.made("wind", "twill", nil, map[string]any{"do": "shafts", "number": 8})
	tab := openTable(t, r, fmt.Sprintf("/drafts/%d/table", id))
	keyUntil(tab, "document.activeElement.classList.contains('draft-table')")
	tab.Press(browsing.Home)
	tab.Press(browsing.End, browsing.Shift)
	tab.Says("Ends 1 to 4")
	write(tab, "table-times", "3")
	tab.Click("Repeat it")
	r.shaftsAre(id, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4)
	tab.Click("One more before")
	r.shaftsAre(id, 1, 1, 2, 3, 4, 1)
	tab.Do("for (const d of document.querySelectorAll('.stretch details, .whole')) d.open = true")
	write(tab, "rule-first", "5")
	write(tab, "rule-last", "8")
	write(tab, "rule-run", "2")
	tab.Click("Advancing")
	r.shaftsAre(id, 5, 6, 6, 7, 4, 1)
	tab.EachLook(t, "table-stretch")
	tab.Click("Choose")
	tab.Do(tableSettled)
	tab.Drag(spot(tab, "{part: 'warp-colours', end: 0}"), spot(tab, "{part: 'warp-colours', end: 12}"))
	tab.Says("Ends 1 to 13")
	colours := func() (now struct{ WarpColours []int }) { r.ask("GET", tableURL(id, ""), nil, &now); return now }
	write(tab, "table-type", "(B 1, A 1) x fill, B 1")
	tab.Click("Put it there")
	for i := 0; i < 100 && colours().WarpColours[0] != 1; i++ {
		tab.Do("await new Promise(done => setTimeout(done, 20))")
	}
	if got := colours().WarpColours; !slices.Equal(got, []int{1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1}) {
		t.Errorf("coloured by letters: %v", got)
	}
	choose(tab, "table-weave", "twill")
	tab.Wait("!!document.getElementById('param-over')")
	write(tab, "param-over", "3/1")
	tab.Do("[...document.querySelectorAll('.whole button')].filter(b => b.innerText === 'Make it so')[1].click()")
	r.shaftsAre(id, 1, 2, 3, 4)
	tab.Quiet(t, false)
}
