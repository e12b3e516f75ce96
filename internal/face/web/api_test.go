package web_test

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/url"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"sley/internal/face/present"
	"sley/internal/face/web"
	"sley/internal/trade/record"
)

func itoa(n int) string { return strconv.Itoa(n) }

func mustURL(t *testing.T, text string) *url.URL {
	t.Helper()
	u, err := url.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

type answered struct {
	ID, Version int
	Problems    []struct{ Code, Severity, Path, Says, Fix string }
	Conflict    struct {
		Base, Head  int
		Differences []struct{ Path, Base, Theirs, Yours string }
	}
	Error struct{ Code, Says, Fix string }
}

func edit(base int, window, path, value string) map[string]any {
	return map[string]any{"base": base, "window": window, "set": []map[string]any{{"path": path, "value": value}}}
}

func TestWarpsAreListed(t *testing.T) {
	r := newReal(t)
	var l list
	if status := r.ask("GET", "/api/warps?most=4", nil, &l); status != 200 || len(l.Items) != 4 || l.Total != 6 || l.Next == "" {
		t.Fatalf("%d, %d of %d, next %q", status, len(l.Items), l.Total, l.Next)
	}
	if l.Items[0].Name != "Berth blanket" || len(l.Items[0].Figures) < 4 || l.Items[0].Figures[0].Says == "" {
		t.Errorf("the first is %+v", l.Items[0])
	}
	var rest list
	r.ask("GET", "/api/warps?most=4&after="+l.Next, nil, &rest)
	if len(rest.Items) != 2 || rest.Next != "" || rest.Items[0].ID == l.Items[3].ID {
		t.Errorf("the rest: %+v", rest)
	}
	var found list
	r.ask("GET", "/api/warps?words=galley+towe", nil, &found)
	if found.Total != 1 || found.Items[0].Name != "Galley towels" {
		t.Errorf("words: %+v", found)
	}
	for _, bad := range []string{"?most=x", "?most=-1", "?after=!", "?after=AA"} {
		if status := r.ask("GET", "/api/warps"+bad, nil, nil); status != 400 {
			t.Errorf("%s: %d", bad, status)
		}
	}
}

// Two windows change one warp: the second is shown what both did, and nothing is lost.
func TestTwoWindows(t *testing.T) {
	r := newReal(t)
	id, version, name := r.firstWarp()
	at := "/api/documents/" + itoa(id)
	var first, second, undone answered
	if status := r.ask("POST", at+"/changes", edit(version, "w-one", "name", "Blanket I"), &first); status != 200 || first.Version != version+1 {
		t.Fatalf("%d %+v", status, first)
	}
	if status := r.ask("POST", at+"/changes", edit(version, "w-two", "name", "Blanket II"), &second); status != 409 {
		t.Fatalf("%d %+v", status, second)
	}
	d := second.Conflict.Differences
	if len(d) != 1 || d[0].Path != "name" || d[0].Base != name || d[0].Theirs != "Blanket I" || d[0].Yours != "Blanket II" {
		t.Errorf("side by side: %+v", d)
	}
	if status := r.ask("POST", at+"/undo", map[string]any{"base": first.Version, "window": "w-two"}, &undone); status != 422 {
		t.Errorf("the other window's change was undone: %d", status)
	}
	if status := r.ask("POST", at+"/undo", map[string]any{"base": first.Version, "window": "w-one"}, &undone); status != 200 {
		t.Errorf("undo: %d", status)
	}
	if _, now, same := r.firstWarp(); same != name || now != version+2 {
		t.Errorf("after undo %q, version %d", same, now)
	}
	if status := r.ask("POST", at+"/redo", map[string]any{"base": undone.Version, "window": "w-one"}, &undone); status != 200 {
		t.Errorf("redo: %d", status)
	}
}

// A half-typed figure is kept, and told; a name that is none is refused.
func TestProblemsStandBesideTheirFields(t *testing.T) {
	r := newReal(t)
	id, version, _ := r.firstWarp()
	at := "/api/documents/" + itoa(id) + "/changes"
	var kept, bad answered
	r.ask("POST", at, edit(version, "w", "pieces[0].length", "60 i"), &kept)
	if kept.Version != version+1 || len(kept.Problems) == 0 || kept.Problems[0].Path != "pieces[0].length" || kept.Problems[0].Says == "" {
		t.Errorf("half-typed: %+v", kept)
	}
	if status := r.ask("POST", at, edit(version+1, "w", "name", "  "), &bad); status != 422 || bad.Problems[0].Path != "name" || bad.Problems[0].Fix == "" {
		t.Errorf("no name: %d %+v", status, bad)
	}
	var gone answered
	if status := r.ask("GET", "/api/documents/99999", nil, &gone); status != 404 || gone.Error.Says == "" {
		t.Errorf("no document: %d %+v", status, gone)
	}
}

// Every window hears what any window does, at once; when the server stops, streams end
// and it does not wait for them.
func TestStream(t *testing.T) {
	r := newReal(t)
	lines, stop := r.stream()
	defer stop()
	next := func() string {
		select {
		case line := <-lines:
			return line
		case <-time.After(10 * time.Second):
			t.Fatal("the stream says nothing")
			return ""
		}
	}
	if got := next() + next(); got != `event: hello`+`data: {"program":"test"}` {
		t.Errorf("begins with %q", got)
	}
	id, version, _ := r.firstWarp()
	r.ask("POST", "/api/documents/"+itoa(id)+"/changes", edit(version, "w-one", "note", "x"), nil)
	want := `event: changeddata: {"kind":"warp","id":` + itoa(id) + `,"version":` + itoa(version+1) + `,"act":"edit","window":"w-one"}`
	if got := next() + next(); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	r.stop()
	select {
	case <-r.stopped:
		if r.served != nil {
			t.Error(r.served)
		}
	case <-time.After(4 * time.Second):
		t.Error("the server waits for a stream")
	}
	for range lines { // ends
	}
}

// Names and notes of whatever letters come back as they were, and as nothing but text.
func TestScriptInEveryField(t *testing.T) {
	r := newReal(t)
	const script = `</script><script>alert(1)</script><img src=x onerror=alert(1)>"'&`
	id, version, _ := r.firstWarp()
	at := "/api/documents/" + itoa(id)
	base := version
	for _, path := range []string{"name", "note", "loom.name", "pieces[0].name", "built.note"} {
		var done answered
		if status := r.ask("POST", at+"/changes", edit(base, "w", path, script), &done); status != 200 {
			t.Errorf("%s: %d %+v", path, status, done)
			continue
		}
		base = done.Version
	}
	for what, ask := range map[string]struct {
		path string
		body map[string]any
	}{
		"a yarn's name":     {"/api/yarns", map[string]any{"window": script, "name": script}},
		"a loom's name":     {"/api/looms", map[string]any{"window": "w", "name": script}},
		"a file's name":     {"/api/warps", map[string]any{"window": "w", "name": script + ".toml", "text": "sley = 1\nwarp.sett = \"20 epi\"\n[[pieces]]\nlength = \"60 in\"\nwidth = \"10 in\"\n"}},
		"a note of the log": {at + "/log", map[string]any{"window": "w", "what": "note", "note": script}},
		"a note of a stock": {"/api/documents/" + itoa(r.firstYarn()) + "/stock", map[string]any{"window": "w", "what": "bought", "typed": "8 oz", "note": script}},
		"a setting":         {"/api/settings/units", map[string]any{"value": script}},
	} {
		if status := r.ask("POST", ask.path, ask.body, nil); status != 200 {
			t.Errorf("%s: %d", what, status)
		}
	}
	for path, wants := range map[string]int{
		at: 1, "/api/warps": 1, "/api/yarns": 1, "/api/looms": 1, at + "/events?topic=log": 1, at + "/versions": 0,
		"/api/settings/units": 1, "/api/documents/" + itoa(r.firstYarn()) + "/events?topic=stock": 1,
	} {
		r.holdsAsText(path, script, wants)
	}
}

func (r *real) firstYarn() int {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/yarns", nil, &l)
	return l.Items[len(l.Items)-1].ID
}

// holdsAsText asks for something that holds a text so often, at least, and sees that it
// comes as JSON that a browser would not take for a page.
func (r *real) holdsAsText(path, text string, often int) {
	r.t.Helper()
	answer, err := r.client.Get(r.url(path))
	if err != nil {
		r.t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	if kind := answer.Header.Get("Content-Type"); !strings.HasPrefix(kind, "application/json") {
		r.t.Errorf("%s is served as %s", path, kind)
	}
	if strings.Contains(string(data), "<") {
		r.t.Errorf("%s holds a bare <", path)
	}
	quoted, _ := json.Marshal(text) // plain text
	if n := strings.Count(string(data), strings.Trim(string(quoted), `"`)); n < often {
		r.t.Errorf("%s holds it %d times, not %d: %s", path, n, often, data)
	}
}

// Every route is described, and the description has none that is not there.
func TestEveryRouteIsDescribed(t *testing.T) {
	text, err := os.ReadFile("../../../docs/api.md")
	if err != nil {
		t.Fatal(err)
	}
	described := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		if route, ok := strings.CutPrefix(strings.TrimSpace(line), "### "); ok {
			described[strings.Trim(route, "`")] = true
		}
	}
	all := append(web.Routes(), web.DeviceRoutes()...)
	slices.Sort(all)
	for _, route := range slices.Compact(all) {
		if !described[route] {
			t.Errorf("docs/api.md says nothing of %s", route)
		}
		delete(described, route)
	}
	for route := range described {
		t.Errorf("docs/api.md describes %s, which is not there", route)
	}
}

// Every refusal has words that say what to do.
func TestRefusalsHaveWords(t *testing.T) {
	for _, code := range present.RefusalCodes() {
		if says, fix := present.Refusal(code); says == "" || fix == "" {
			t.Errorf("%s: %q, %q", code, says, fix)
		}
	}
}

// A fault of ours is told as ours, with a report that holds nothing of the weaver's, and
// the server goes on.
func TestOurFault(t *testing.T) {
	r := newReal(t)
	r.server.Check = func(context.Context) error { panic("a mistake of the test") }
	var fault struct{ Fault struct{ Says, Report string } }
	status := r.ask("POST", "/api/book/check", struct{}{}, &fault)
	if status != http.StatusInternalServerError || !strings.Contains(fault.Fault.Says, "our fault") {
		t.Errorf("%d %+v", status, fault)
	}
	for _, want := range []string{"POST /api/book/check", "a mistake of the test", "sley test"} {
		if !strings.Contains(fault.Fault.Report, want) {
			t.Errorf("the report lacks %q: %s", want, fault.Fault.Report)
		}
	}
	if status := r.ask("GET", "/api/warps", nil, nil); status != 200 {
		t.Errorf("after a fault: %d", status)
	}
}

// A book that cannot be read is told as that, and is no fault of ours.
func TestBookThatIsGone(t *testing.T) {
	r := newReal(t)
	r.book.Close()
	var gone answered
	if status := r.ask("GET", "/api/warps", nil, &gone); status != http.StatusServiceUnavailable || gone.Error.Code != record.Closed {
		t.Errorf("%d %+v", status, gone)
	}
}
