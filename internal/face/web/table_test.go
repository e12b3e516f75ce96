package web_test

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
)

// drewIn is the answer to a gesture.
type drewIn struct {
	Version  int
	Shafts   int
	Fill     *present.FillJSON
	Splices  map[string]app.PartSplice
	Problems []problemIn
	Told     []problemIn
}

type problemIn struct{ Code, Path, Says string }

// tableURL is the table of a document.
func tableURL(id int, as string) string { return fmt.Sprintf("/api/documents/%d/table?as=%s", id, as) }

// Gestures on a draft of the shelf: what was drawn is told as splices, and can be undone.
func TestTableIsDrawnOn(t *testing.T) {
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	var was, now present.TableJSON
	if status := r.ask("GET", tableURL(id, ""), nil, &was); status != http.StatusOK || was.Version != version || was.Kind != "draft" || len(was.Threading) == 0 || len(was.WarpColours) != len(was.Threading) {
		t.Fatalf("%d: %+v", status, was)
	}
	for since, want := range map[int]int{version: 0, version + 1: len(was.Threading)} {
		now = present.TableJSON{}
		if status := r.ask("GET", fmt.Sprintf("%s&since=%d", tableURL(id, "written"), since), nil, &now); status != http.StatusOK || now.Version != version || len(now.Threading) != want {
			t.Errorf("since %d: %d %+v", since, status, now)
		}
	}
	for _, since := range []string{"0", "first"} {
		if status := r.ask("GET", tableURL(id, "written")+"&since="+since, nil, nil); status != http.StatusBadRequest {
			t.Errorf("since %s: %d", since, status)
		}
	}
	acts := []map[string]any{
		{"do": "put", "part": "threading", "at": 0, "remove": 1, "put": []int{3}},
		{"do": "put", "part": "ties", "at": 0, "remove": 1, "put": []string{"5"}},
	}
	var drew drewIn
	asked := map[string]any{"base": version, "window": "w", "acts": acts, "try": true}
	if status := r.ask("POST", tableURL(id, "written"), asked, &drew); status != http.StatusOK || drew.Version != version {
		t.Fatalf("tried: %d %+v", status, drew)
	}
	asked["try"] = false
	if status := r.ask("POST", tableURL(id, "written"), asked, &drew); status != http.StatusOK || drew.Version != version+1 {
		t.Fatalf("drawn: %d %+v", status, drew)
	}
	if s := drew.Splices["threading"]; s.At != 0 || s.Remove != 1 || fmt.Sprint(s.Put) != "[3]" || fmt.Sprint(drew.Splices["ties"].Put) != "[5]" {
		t.Errorf("splices %+v", drew.Splices)
	}
	r.ask("GET", tableURL(id, ""), nil, &now)
	if now.Threading[0] != 3 || now.Ties[0] != "5" || !slices.Equal(now.Threading[1:], was.Threading[1:]) {
		t.Errorf("drawn: %+v", now)
	}
	acts[0]["put"] = []int{2}
	if status := r.ask("POST", tableURL(id, ""), asked, &drew); status != http.StatusConflict {
		t.Errorf("upon an older version: %d", status)
	}
	r.ask("POST", fmt.Sprintf("/api/documents/%d/undo", id), map[string]any{"base": version + 1, "window": "w"}, nil)
	r.ask("GET", tableURL(id, ""), nil, &now)
	if now.Threading[0] != was.Threading[0] || now.Ties[0] != was.Ties[0] {
		t.Errorf("undone: %+v", now)
	}
}

// All that is wrong with a gesture is told at once, each at its act.
func TestTableRefusesWhatCannotBe(t *testing.T) {
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	var bad struct{ Problems []problemIn }
	acts := []map[string]any{
		{"do": "put", "part": "threading", "at": 0, "remove": 1, "put": []any{"three"}},
		{"do": "put", "part": "palette", "at": 0, "remove": 0, "put": []any{"blue"}},
		{"do": "rule", "part": "threading", "from": 0, "to": 4, "shed": "sideways"},
	}
	if status := r.ask("POST", tableURL(id, ""), map[string]any{"base": version, "window": "w", "acts": acts}, &bad); status != http.StatusUnprocessableEntity || len(bad.Problems) != 3 ||
		bad.Problems[0].Path != "acts[0].put[0]" || bad.Problems[2].Code != "act.shed" {
		t.Errorf("%d %+v", status, bad.Problems)
	}
	acts = []map[string]any{{"do": "put", "part": "threading", "at": 900, "remove": 1, "put": []int{1}}, {"do": "weave", "weave": "linoleum"}}
	if status := r.ask("POST", tableURL(id, ""), map[string]any{"base": version, "window": "w", "acts": acts}, &bad); status != http.StatusUnprocessableEntity || len(bad.Problems) != 2 {
		t.Errorf("%d %+v", status, bad.Problems)
	}
	if status := r.ask("GET", tableURL(id, "dyed"), nil, nil); status != http.StatusBadRequest {
		t.Errorf("as dyed: %d", status)
	}
	if status := r.ask("GET", tableURL(r.firstYarn(), ""), nil, nil); status != http.StatusNotFound {
		t.Errorf("a yarn: %d", status)
	}
}

// The largest draft is drawn on in no time: see BenchmarkStroke for how little.
func BenchmarkStroke(b *testing.B) {
	r := serveReal(b, openBook(b))
	id := r.bigDraft(1000, 1000)
	base := 1
	for i := 0; b.Loop(); i++ {
		put := make([]int, 200)
		for j := range put {
			put[j] = 1 + (i+j)%40
		}
		var drew drewIn
		status := r.ask("POST", tableURL(id, ""), map[string]any{"base": base, "window": "w", "acts": []any{map[string]any{"do": "put", "part": "threading", "at": i * 7 % 800, "remove": 200, "put": put}}}, &drew)
		if status != http.StatusOK {
			b.Fatal(status, drew)
		}
		base = drew.Version
	}
}

// bigDraft puts a draft of so many ends and picks, on 40 shafts, on the shelf.
func (r *real) bigDraft(ends, picks int) int {
	r.t.Helper()
	const shafts = 40
	d := &draft.Draft{Name: fmt.Sprintf("%d by %d", ends, picks), Shafts: shafts, Treadles: shafts}
	for i := range ends {
		d.Threading = append(d.Threading, 1+(i*i/9+i)%shafts)
	}
	for i := range shafts {
		d.Ties = append(d.Ties, draft.Tie{Tied: draft.Of(1+i, 1+(i+1)%shafts, 1+(i+7)%shafts, 1+(i+8)%shafts)})
	}
	for i := range picks {
		d.Treadling = append(d.Treadling, draft.Of(1+(i*i/11+i)%shafts))
	}
	saved, err := r.book.AddDraft(r.t.Context(), "w", app.Source{Name: "big.wif", Text: app.WriteDraft(&app.Drafted{Draft: d})})
	if err != nil || saved.Refused {
		r.t.Fatal(err, saved.Problems.All())
	}
	return int(saved.ID)
}

// What there is to tell of a draft has its place, and its remedy can be made.
func TestTableIsLookedOver(t *testing.T) {
	r := newReal(t)
	id, version := r.named("drafts", "Rosepath")
	url := fmt.Sprintf("/api/documents/%d/table/findings", id)
	var looked struct {
		Version  int
		Uses     []string
		Findings []present.FindingJSON
	}
	if status := r.ask("GET", url, nil, &looked); status != http.StatusOK || looked.Version != version || len(looked.Uses) < 3 || len(looked.Findings) != 0 {
		t.Fatalf("a sound draft: %d %+v", status, looked)
	}
	idle := []map[string]any{{"do": "treadles", "number": 9}, {"do": "put", "part": "ties", "at": 8, "remove": 1, "put": []string{"1"}}}
	var drew drewIn
	if status := r.ask("POST", tableURL(id, ""), map[string]any{"base": version, "window": "w", "acts": idle}, &drew); status != http.StatusOK {
		t.Fatal(status, drew)
	}
	r.ask("GET", url+"?use=towel&start=left", nil, &looked)
	at := slices.IndexFunc(looked.Findings, func(f present.FindingJSON) bool { return f.Topic == "idle-treadles" })
	if at < 0 || looked.Findings[at].Place == nil || looked.Findings[at].Place.Part != "ties" || len(looked.Findings[at].Remedies) == 0 {
		t.Fatalf("an idle treadle: %+v", looked.Findings)
	}
	mend := map[string]any{"base": drew.Version, "window": "w", "acts": looked.Findings[at].Remedies[0].Acts}
	if status := r.ask("POST", tableURL(id, ""), mend, &drew); status != http.StatusOK {
		t.Fatal(status, drew)
	}
	r.ask("GET", url, nil, &looked)
	if slices.ContainsFunc(looked.Findings, func(f present.FindingJSON) bool { return f.Topic == "idle-treadles" }) {
		t.Errorf("mended: %+v", looked.Findings)
	}
	loom, _ := r.named("looms", "table loom, 60 cm")
	for asked, want := range map[string]int{itoa(loom): 200, itoa(id): 404, "x": 400, "0": 400} {
		if status := r.ask("GET", url+"?loom="+asked, nil, nil); status != want {
			t.Errorf("on the loom %s: %d, want %d", asked, status, want)
		}
	}
	var bad struct{ Problems []problemIn }
	if status := r.ask("GET", url+"?use=sails&start=up", nil, &bad); status != http.StatusUnprocessableEntity || len(bad.Problems) != 2 {
		t.Errorf("no use and no side: %d %+v", status, bad)
	}
}

// What takes more than the loom has is drawn, and told as such.
func TestTableTellsWhatTheLoomLacks(t *testing.T) {
	r := newReal(t)
	id, version := r.named("warps", "Berth blanket")
	var was present.TableJSON
	r.ask("GET", tableURL(id, ""), nil, &was)
	acts := []map[string]any{{"do": "shafts", "number": was.Loom.Shafts + 1}, {"do": "put", "part": "threading", "at": 0, "remove": 1, "put": []int{was.Loom.Shafts + 1}}}
	var drew drewIn
	if status := r.ask("POST", tableURL(id, ""), map[string]any{"base": version, "window": "w", "acts": acts, "try": true}, &drew); status != 200 || len(drew.Told) == 0 || !strings.HasPrefix(drew.Told[0].Code, "table.loom-") {
		t.Errorf("%d: %+v %+v", status, drew.Told, drew.Problems)
	}
}
