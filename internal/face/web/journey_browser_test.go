package web_test

import (
	"net/http"
	"slices"
	"strings"
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// emptyBook serves a book that holds nothing.
func emptyBook(t *testing.T) *real {
	t.Helper()
	r := newReal(t)
	if status := r.ask("POST", "/api/demo/clear", map[string]string{"window": "other"}, nil); status != http.StatusOK {
		t.Fatalf("the demo is not cleared: %d", status)
	}
	return r
}

// keyTo presses the tabulator until the keyboard is at what is called so.
func keyTo(tab *browsing.Tab, name string) {
	keyUntil(tab, "(e => (e.ariaLabel || e.labels?.[0]?.innerText || e.innerText || '').trim().split('\\n')[0])(document.activeElement) === "+browsing.Quote(name))
}

// keyUntil presses the tabulator until an expression holds.
func keyUntil(tab *browsing.Tab, holds string) {
	for range 200 {
		tab.Press(browsing.Tabulator)
		var there bool
		if tab.Read(&there, holds); there {
			return
		}
	}
	tab.Wait(holds)
}

// key types a text into the field of that name, after the tabulator came to it.
func key(tab *browsing.Tab, name, text string) {
	keyUntil(tab, "[document.activeElement.name, document.activeElement.id].includes("+browsing.Quote(name)+")")
	tab.Type(text)
}

// pdf fetches the sheets that the page offers.
func pdf(tab *browsing.Tab) string {
	const offered = "[...document.querySelectorAll('a.strong')].find(a => a.innerText === 'Open the sheets')"
	tab.Wait("!!" + offered)
	var data string
	tab.Read(&data, "fetch("+offered+".href).then(r => r.blob()).then(b => b.text())")
	return data
}

// The main job as a new user does it, by keyboard alone: from an empty book to a warp that
// is planned, its numbers and its sheets.
func TestFromAnEmptyBookByKeys(t *testing.T) {
	t.Parallel()
	r := emptyBook(t)
	tab := browsing.Start(t).Open(t, web.Address(r.port, token))
	tab.Says("This book is empty")
	keyTo(tab, "New warp")
	tab.Press(browsing.Enter)
	tab.Says("A new warp")
	tab.Wait("document.querySelectorAll('[name=kind]').length > 5")
	keyTo(tab, "in inches")
	tab.Press(browsing.Up) // to the centimetres
	tab.Says("70 cm × 50 cm")
	keyTo(tab, "Hand towel")
	tab.Press(browsing.Down) // to the tea towel
	key(tab, "new-name", "Wheelhouse towels")
	key(tab, "new-count", "3")
	keyTo(tab, "Begin this warp")
	tab.Press(browsing.Enter)
	tab.Wait("location.pathname.endsWith('/piece')")
	tab.Says("Wheelhouse towels")
	keyTo(tab, "Cloth")
	tab.Press(browsing.Enter)
	tab.Wait("location.pathname.endsWith('/cloth')")
	keyTo(tab, "Add a yarn")
	tab.Press(browsing.Enter)
	tab.Says("What the rules advise")
	tab.Wait("document.querySelectorAll('.bands li').length > 2")
	key(tab, "warp.sett", "8 ends/cm")
	key(tab, "weft.picks", "7 picks/cm")
	tab.Press(browsing.Tabulator)
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	keyTo(tab, "Numbers")
	tab.Press(browsing.Enter)
	tab.Wait("!!document.querySelector('[data-id=\"warp.wound\"]')")
	key(tab, "allowances.shrinkage", "30 cm -> 27 cm")
	tab.Press(browsing.Tabulator)
	keyTo(tab, "Wind the warp")
	tab.Press(browsing.Enter)
	tab.Wait("!!document.querySelector('.working .formula')")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	keyTo(tab, "Print the sheets")
	tab.Press(browsing.Enter)
	tab.Wait("document.querySelectorAll('.sheet-list li').length > 3")
	keyTo(tab, "Open the sheets")
	if data := pdf(tab); !strings.HasPrefix(data, "%PDF-") || !strings.Contains(data, "%%EOF") {
		t.Errorf("the sheets are no PDF: %.40q", data)
	}
	tab.EachLook(t, "journey")
	tab.Quiet(t, false)
	var l list
	r.ask("GET", "/api/warps", nil, &l)
	if len(l.Items) != 1 || l.Items[0].Name != "Wheelhouse towels" || len(l.Items[0].Figures) < 4 {
		t.Errorf("the book has %+v", l.Items)
	}
}

// The same on a phone, by touch.
func TestFromAnEmptyBookOnAPhone(t *testing.T) {
	t.Parallel()
	r := emptyBook(t)
	tab := browsing.Start(t).Open(t, web.Address(r.port, token))
	tab.Size(390, 844)
	tab.Says("This book is empty")
	tab.Click("New warp")
	tab.Wait("document.querySelectorAll('[name=kind]').length > 5")
	tab.Do("[...document.querySelectorAll('[name=kind]')].find(e => e.value === 'scarf').click()")
	tab.Click("Begin this warp")
	tab.Wait("location.pathname.endsWith('/piece')")
	tab.Click("On to Cloth")
	tab.Click("Add a yarn")
	tab.Wait("document.querySelectorAll('.bands li').length > 2")
	var advised string
	tab.Read(&advised, "[...document.querySelectorAll('.bands button')].map(b => b.innerText)[1]")
	tab.Click(advised)
	tab.Wait(field("warp.sett") + ".value !== ''")
	tab.Wait("document.querySelector('.standing').innerText === 'saved'")
	tab.Click("On to Numbers")
	tab.Wait("!!document.querySelector('[data-id=\"warp.wound\"]')")
	tab.Click("Print the sheets")
	if data := pdf(tab); !strings.HasPrefix(data, "%PDF-") {
		t.Errorf("the sheets are no PDF: %.40q", data)
	}
	tab.Quiet(t, false)
}

// What the page prints is what the command prints.
func TestSheetsAreTheSameAsTheCommands(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id, _ := r.named("warps", "Galley towels")
	tab := openAt(t, r, "/warps/"+itoa(id)+"/dress", "document.querySelectorAll('.sheet-list li').length > 3")
	var names []string
	tab.Read(&names, "[...document.querySelectorAll('.sheet-list .tick')].filter(l => l.querySelector('input').checked).map(l => l.innerText.toLowerCase())")
	if len(names) < 6 || !slices.Contains(names, "winding") {
		t.Errorf("the sheets are %q", names)
	}
	tab.Do("document.querySelectorAll('.sheet-list input').forEach((e, i) => e.checked && i > 0 && e.click())")
	tab.Wait("[...document.querySelectorAll('.sheet-list input')].filter(e => e.checked).length === 1")
	var href string
	tab.Read(&href, "[...document.querySelectorAll('a.strong')].find(a => a.innerText === 'Open the sheets').getAttribute('href')")
	if !strings.Contains(href, "pages=glance&") {
		t.Errorf("the address of the sheets is %s", href)
	}
	tab.Quiet(t, false)
}
