package web_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// view is a page, with what only it has; or a state of it, which is come to by then.
type view struct {
	name, path, has string
	then            func(*real, *browsing.Tab)
}

// pages are the pages of the book that the demo fills, in the order of the head.
func pages(r *real) []view {
	warp, _ := r.warpNamed("Galley towels")
	yarn, _ := r.named("yarns", "handspun, grey ewe")
	loom, _ := r.named("looms", "countermarch, 120 cm")
	draft, _ := r.named("drafts", "Rosepath")
	all := []view{
		{name: "bench", path: "/", has: ".warps h2"},
		{name: "new", path: "/new", has: "#new-name"},
		{name: "yarns", path: "/yarns", has: "tbody tr"},
		{name: "yarn", path: "/yarns/" + itoa(yarn), has: "#stock-amount"},
		{name: "looms", path: "/looms", has: "main li h2"},
		{name: "loom", path: "/looms/" + itoa(loom), has: "#board"},
		{name: "drafts", path: "/drafts", has: ".draft-card"},
		{name: "catalogue", path: "/drafts/catalogue", has: ".weave-row"},
		{name: "draft", path: "/drafts/" + itoa(draft), has: ".told li"},
		{name: "records", path: "/records", has: ".record"},
		{name: "units", path: "/units", has: "#unit-length"},
		{name: "beside", path: "/beside", has: "#beside-always"},
		{name: "guide", path: "/guide", has: "main h1"},
	}
	for _, part := range guideParts {
		all = append(all, view{name: "guide-" + part.id, path: "/guide/" + part.id, has: "article h1"})
	}
	all = append(all, view{name: "glossary", path: "/glossary", has: "#crimp"}, view{name: "nowhere", path: "/warps/1/nowhere", has: "main h1"})
	for _, stage := range []string{"piece", "cloth", "numbers", "dress", "weave", "finish"} {
		all = append(all, view{name: "warp-" + stage, path: fmt.Sprintf("/warps/%d/%s", warp, stage), has: ".group, .reckoning, .sheets"})
	}
	all = append(all, view{name: "loomside", path: fmt.Sprintf("/loomside/%d", warp), has: ".loom"})
	return append(all, view{"warp-working", fmt.Sprintf("/warps/%d/numbers", warp), "[data-id=\"warp.wound\"]", func(_ *real, tab *browsing.Tab) {
		tab.Do("document.querySelector('[data-id=\"warp.wound\"]').click()")
		tab.Wait("!!document.querySelector('.working .formula')")
	}})
}

// states are what else may become of the bench and of a warp; each on a book of its own.
var states = []view{
	{"warp-conflict", "/", ".warps h2", func(r *real, tab *browsing.Tab) {
		at(tab, "Galley towels", "Cloth")
		id, version := r.warpNamed("Galley towels")
		r.end() // what is typed waits
		fill(tab, "warp.sett", "21 epi")
		r.here("POST", "/api/documents/"+itoa(id)+"/changes", edit(version, "w-other", "warp.sett", "22 epi"))
		r.again()
		tab.Says("Galley towels was changed elsewhere")
		tab.Says("22 epi")
	}},
	{"warp-offline", "/", ".warps h2", func(r *real, tab *browsing.Tab) {
		at(tab, "Galley towels", "Piece")
		r.end()
		fill(tab, "pieces[0].length", "30 in")
		tab.Says("sley is not answering")
	}},
	{"bench-empty", "/", ".warps h2", func(_ *real, tab *browsing.Tab) {
		tab.Click("Clear the demo")
		tab.Says("This book is empty")
	}},
}

// here asks the server without a network between, so also when it does not listen.
func (r *real) here(method, path string, body any) {
	r.t.Helper()
	data, err := json.Marshal(body)
	if err != nil {
		r.t.Fatal(err)
	}
	req := httptest.NewRequest(method, r.url(path), bytes.NewReader(data))
	req.Header.Set("Content-Type", "application/json")
	req.AddCookie(&http.Cookie{Name: "sley-" + r.port, Value: token})
	answer := httptest.NewRecorder()
	r.server.ServeHTTP(answer, req)
	if answer.Code != http.StatusOK {
		r.t.Fatalf("%s %s: %d %s", method, path, answer.Code, answer.Body)
	}
}

// come opens a view once it is whole: with its pictures, and nothing still being read.
func (v view) come(t *testing.T, b *browsing.Browser, r *real) *browsing.Tab {
	t.Helper()
	tab := b.Open(t, r.url(v.path))
	tab.Wait("!!document.querySelector(" + browsing.Quote(v.has) + ")")
	if v.then != nil {
		v.then(r, tab)
	}
	tab.Wait("!document.body.innerText.includes('Reading the book')")
	tab.Wait("[...document.images].every(i => { i.loading = 'eager'; return i.complete && i.naturalWidth > 0 })")
	return tab
}

// TestEveryPage looks at each page and state once in every width. With SLEY_SHOTS=FOLDER it
// is light and dark in each, and pictures are left there: ./check shots.
func TestEveryPage(t *testing.T) {
	t.Parallel()
	b := browsing.Start(t)
	r := newReal(t)
	b.Open(t, web.Address(r.port, token)).Wait(shown) // takes the cookie
	n := 0
	for _, v := range pages(r) {
		n++
		name := fmt.Sprintf("%02d-%s", n, v.name)
		t.Run(v.name, func(t *testing.T) {
			t.Parallel()
			tab := v.come(t, b, r)
			tab.EachLook(t, name)
			tab.Quiet(t, false)
		})
	}
	for _, v := range states {
		n++
		t.Run(v.name, func(t *testing.T) {
			r := newReal(t)
			b.Open(t, web.Address(r.port, token)).Wait(shown)
			tab := v.come(t, b, r)
			tab.EachLook(t, fmt.Sprintf("%02d-%s", n, v.name))
			tab.Quiet(t, true)
		})
	}
}
