package web_test

import (
	"bytes"
	"image/png"
	"io"
	"net/http"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/face/sheet"
	"sley/internal/trade/record"
)

type figure struct{ ID, Says, Value, Note string }

// file asks for a file and gives its kind, the name it is kept under, and its bytes.
func (r *real) file(path string) (status int, kind, kept string, data []byte) {
	r.t.Helper()
	answer, err := r.client.Get(r.url(path))
	if err != nil {
		r.t.Fatal(err)
	}
	defer answer.Body.Close()
	if data, err = io.ReadAll(answer.Body); err != nil {
		r.t.Fatal(err)
	}
	return answer.StatusCode, answer.Header.Get("Content-Type"), answer.Header.Get("Content-Disposition"), data
}

// Every weave of the list can be looked at and is drawn.
func TestWeaves(t *testing.T) {
	r := newReal(t)
	var all []struct {
		ID, Family, Name, Says string
		FamilySays             string `json:"family_says"`
		Shafts, Treadles       int
		Params                 []struct {
			Name, Says, Kind, Default string
			Options                   []struct{ Value, Says string }
		}
	}
	if status := r.ask("GET", "/api/weaves", nil, &all); status != 200 || len(all) != len(app.Weaves()) {
		t.Fatalf("%d, %d weaves", status, len(all))
	}
	for _, w := range all {
		if w.Name == "" || w.Says == "" || w.FamilySays == "" || w.Shafts < 2 || w.Params == nil {
			t.Errorf("%+v", w)
		}
		for _, p := range w.Params {
			if p.Says == "" || p.Kind != "units" && p.Default == "" || p.Kind == "choice" && len(p.Options) < 2 {
				t.Errorf("%s: %+v", w.ID, p)
			}
		}
		status, kind, _, data := r.file("/api/weaves/" + w.ID + "/picture")
		if status != 200 || kind != "image/svg+xml" || !bytes.Contains(data, []byte("<svg")) || !bytes.Contains(data, []byte("<title>"+strings.ReplaceAll(w.Name, "&", "&amp;")+"</title>")) || len(data) > 1<<20 {
			t.Errorf("%s is drawn: %d %s, %d bytes", w.ID, status, kind, len(data))
		}
		status, kind, _, data = r.file("/api/weaves/" + w.ID + "/cloth")
		if picture, err := png.DecodeConfig(bytes.NewReader(data)); status != 200 || kind != "image/png" || err != nil || max(picture.Width, picture.Height) > 480 {
			t.Errorf("the cloth of %s: %d %s, %v %v", w.ID, status, kind, picture, err)
		}
	}
}

func TestOneWeave(t *testing.T) {
	r := newReal(t)
	var got struct {
		Facts    []figure
		Problems []struct{ Code, Path, Says, Fix string }
	}
	r.ask("GET", "/api/weaves/twill?over=3/1", nil, &got)
	facts := map[string]string{}
	for _, f := range got.Facts {
		facts[f.ID] = f.Value
	}
	if facts["shafts"] != "4" || facts["repeat"] != "4 ends × 4 picks" || facts["floats.warp"] != "3 on the face, none on the back" && facts["floats.warp"] != "3 on the face, 1 on the back" || len(got.Problems) != 0 {
		t.Errorf("%+v", got)
	}
	r.ask("GET", "/api/weaves/twill?over=3&under=2", nil, &got)
	if len(got.Problems) != 2 || got.Problems[0].Path != "over" || got.Problems[1].Path != "under" || got.Problems[1].Fix == "" || len(got.Facts) != 0 {
		t.Errorf("all that is wrong: %+v", got)
	}
	for path, want := range map[string]int{
		"/api/weaves/dyed": 404, "/api/weaves/dyed/picture": 404, "/api/weaves/twill/picture?over=3": 422, "/api/weaves/twill/picture?over=9/9": 200,
		"/api/weaves/dyed/cloth": 404, "/api/weaves/twill/cloth?over=3": 422,
	} {
		if status, _, _, _ := r.file(path); status != want {
			t.Errorf("%s: %d, want %d", path, status, want)
		}
	}
}

func TestADraftIsMadeAndChanged(t *testing.T) {
	r := newReal(t)
	var made, bad answered
	if status := r.ask("POST", "/api/drafts/made", map[string]any{"window": "w", "name": "Tide twill", "weave": "twill", "values": map[string]string{"over": "3/1"}}, &made); status != 200 || made.Version != 1 {
		t.Fatalf("%d %+v", status, made)
	}
	if status := r.ask("POST", "/api/drafts/made", map[string]any{"window": "w", "weave": "twil"}, &bad); status != 422 || len(bad.Problems) != 2 {
		t.Errorf("%d %+v", status, bad)
	}
	var changes []struct{ Name, Says, Takes string }
	r.ask("GET", "/api/changes", nil, &changes)
	for _, c := range changes {
		if c.Name == "" || c.Says == "" {
			t.Errorf("%+v", c)
		}
	}
	if len(changes) != len(app.Changes()) {
		t.Errorf("%d changes", len(changes))
	}
	at := "/api/documents/" + itoa(made.ID)
	if status := r.ask("POST", at+"/change", map[string]any{"base": 1, "window": "w", "changes": []string{"turned", "ends-times=2"}}, &made); status != 200 || made.Version != 2 {
		t.Errorf("%d %+v", status, made)
	}
	if status := r.ask("POST", at+"/change", map[string]any{"base": 2, "window": "w", "changes": []string{"dyed", "ends-times=x"}}, &bad); status != 422 || len(bad.Problems) != 2 || bad.Problems[0].Path != "changes[0]" || bad.Problems[1].Code != "change.value" {
		t.Errorf("%d %+v", status, bad)
	}
	if status := r.ask("POST", at+"/change", map[string]any{"base": 1, "window": "w", "changes": []string{"turned"}}, &bad); status != 409 {
		t.Errorf("on an older version: %d", status)
	}
	if status := r.ask("POST", at+"/undo", map[string]any{"base": 2, "window": "w"}, &made); status != 200 || made.Version != 3 {
		t.Errorf("undo: %d %+v", status, made)
	}
}

func TestDraftIsJudged(t *testing.T) {
	r := newReal(t)
	type judged struct {
		Figures  []figure
		Told     []struct{ Topic, Title, Figures, Explanation string }
		Problems []struct{ Code string }
	}
	for of, name := range map[string]string{"drafts": "Galley towels, point twill", "warps": "Galley towels"} {
		id, _ := r.named(of, name)
		var got judged
		if status := r.ask("GET", "/api/documents/"+itoa(id)+"/draft", nil, &got); status != 200 || len(got.Figures) < 7 || len(got.Told) < 5 || got.Told[0].Title == "" {
			t.Errorf("%s: %d %+v", name, status, got)
		}
	}
	var none judged
	id, _ := r.named("warps", "Berth blanket")
	r.ask("POST", "/api/documents/"+itoa(id)+"/changes", edit(1, "w", "draft", ""), nil)
	yarn, _ := r.named("yarns", "linen 8/1, flax")
	if status := r.ask("GET", "/api/documents/"+itoa(yarn)+"/draft", nil, &none); status != 404 {
		t.Errorf("a yarn: %d", status)
	}
}

// What is given is what the command writes of the same draft, under a name that every
// system can keep.
func TestDraftIsGivenAsAFile(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("drafts", "Galley towels, point twill")
	d, _, err := r.book.Drafted(t.Context(), record.ID(id), false)
	if err != nil {
		t.Fatal(err)
	}
	for ending, kind := range map[string]string{"wif": "text/plain; charset=utf-8", "svg": "image/svg+xml", "png": "image/png", "pdf": "application/pdf"} {
		status, got, kept, data := r.file("/api/documents/" + itoa(id) + "/draft." + ending)
		want := [][]byte{app.WriteDraft(d)}
		if ending != "wif" {
			if want, err = sheet.DraftFiles(d, sheet.DraftLook{}, app.Form(ending), sheet.UsualDPI); err != nil {
				t.Fatal(err)
			}
		}
		if status != 200 || got != kind || !bytes.Equal(data, want[0]) || !strings.HasPrefix(kept, `attachment; filename="Galley towels, point twill.`+ending+`"`) {
			t.Errorf("%s: %d %s %s, %d bytes of %d", ending, status, got, kept, len(data), len(want[0]))
		}
	}
	var made answered
	r.ask("POST", "/api/drafts/made", map[string]any{"window": "w", "name": "Köper/2 \"x\" 50%", "weave": "twill"}, &made)
	_, _, kept, _ := r.file("/api/documents/" + itoa(made.ID) + "/draft.wif")
	if want := `attachment; filename="K-per-2 -x- 50-.wif"; filename*=UTF-8''K%C3%B6per-2%20-x-%2050%25.wif`; kept != want {
		t.Errorf("kept as %s, want %s", kept, want)
	}
	for path, want := range map[string]int{
		"/draft.pdf?paper=letter": http.StatusOK, "/draft.pdf?paper=a9": 400, "/draft.svg?paper=a4": 400,
		"/draft.svg?cells=dots": 400, "/draft.svg?back": 400, "/draft.svg?floats=1": 400, "/draft.svg?as=half": 400,
	} {
		if status, _, _, _ := r.file("/api/documents/" + itoa(id) + path); status != want {
			t.Errorf("%s: %d, want %d", path, status, want)
		}
	}
	look := sheet.DraftLook{Cells: "both", Below: true, Upwards: true, FromRight: true, Floats: app.LongFloats(d.Draft, 3)}
	want, err := sheet.DraftFiles(d, look, app.SVG, sheet.UsualDPI)
	if _, _, _, data := r.file("/api/documents/" + itoa(id) + "/draft.svg?cells=both&below&upwards&from-right&floats=3"); err != nil || !bytes.Equal(data, want[0]) {
		t.Errorf("drawn another way: %v, %d bytes of %d", err, len(data), len(want[0]))
	}
	warp, _ := r.named("warps", "Berth blanket")
	_, _, _, part := r.file("/api/documents/" + itoa(warp) + "/draft.wif")
	if _, _, _, whole := r.file("/api/documents/" + itoa(warp) + "/draft.wif?as=whole"); len(whole) <= len(part) {
		t.Errorf("the whole warp has %d bytes, as it is written %d", len(whole), len(part))
	}
	var bad answered
	r.ask("POST", "/api/documents/"+itoa(warp)+"/changes", edit(1, "w", "warp.threading", "(1 2"), nil)
	if status := r.ask("GET", "/api/documents/"+itoa(warp)+"/draft.svg", nil, &bad); status != 422 || len(bad.Problems) == 0 {
		t.Errorf("a draft that cannot be read: %d %+v", status, bad)
	}
}

// A draft says its name and its note as the other documents say their plans, so that both
// can be changed at their paths.
func TestDraftSaysItsNote(t *testing.T) {
	r := newReal(t)
	id, _ := r.named("drafts", "Rosepath")
	at := "/api/documents/" + itoa(id)
	var made answered
	if status := r.ask("POST", at+"/changes", edit(1, "w", "note", "for the borders of the mats"), &made); status != 200 || made.Version != 2 {
		t.Fatalf("%d %+v", status, made)
	}
	var got struct{ Plan map[string]string }
	r.ask("GET", at, nil, &got)
	if len(got.Plan) != 2 || got.Plan["name"] != "Rosepath" || got.Plan["note"] != "for the borders of the mats" {
		t.Errorf("%q", got.Plan)
	}
}
