package web_test

import (
	"bytes"
	"image"
	"image/png"
	"io"
	"net/http"
	"strings"
	"testing"

	"sley/internal/trade/draft"
)

// fetched asks for something that is no JSON.
func (r *real) fetched(path string, heads ...string) (*http.Response, []byte) {
	r.t.Helper()
	req, err := http.NewRequest(http.MethodGet, r.url(path), nil)
	if err != nil {
		r.t.Fatal(err)
	}
	for i := 0; i+1 < len(heads); i += 2 {
		req.Header.Set(heads[i], heads[i+1])
	}
	answer, err := r.client.Do(req)
	if err != nil {
		r.t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return answer, data
}

// cloth asks for the picture of a cloth.
func (r *real) cloth(id int) image.Image {
	r.t.Helper()
	answer, data := r.fetched("/api/documents/" + itoa(id) + "/picture?of=cloth")
	if answer.StatusCode != 200 || answer.Header.Get("Content-Type") != "image/png" {
		r.t.Fatalf("%s: %s", answer.Status, data)
	}
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		r.t.Fatal(err)
	}
	if b := picture.Bounds(); max(b.Dx(), b.Dy()) > 480 || max(b.Dx(), b.Dy()) < 300 {
		r.t.Errorf("%v dots", b)
	}
	return picture
}

// The cloth has the stripes of the warp from its left edge on, and its border at the
// bottom: white 36 ends, then blue 12; white 24 picks, then blue 12.
func TestPictureOfACloth(t *testing.T) {
	r := newReal(t)
	id, _ := r.warpNamed("Galley towels")
	picture := r.cloth(id)
	dots := 480 / 120
	blue := func(end, pick int) bool { // of the middle of a crossing
		red, _, b, _ := picture.At(end*dots+dots/2, picture.Bounds().Dy()-1-(pick*dots+dots/2)).RGBA()
		return b > red+red/4
	}
	for end := range 36 {
		for pick := range 24 {
			if blue(end, pick) {
				t.Fatalf("end %d is blue at pick %d", end, pick)
			}
		}
	}
	all := true
	for end := 36; end < 48; end++ {
		for pick := 24; pick < 36; pick++ {
			all = all && blue(end, pick)
		}
	}
	some := 0
	for end := 36; end < 48; end++ {
		for pick := range 24 {
			if blue(end, pick) {
				some++
			}
		}
	}
	if !all || some == 0 || some == 12*24 {
		t.Errorf("where blue crosses blue all is blue: %v; of blue ends under white picks %d show", all, some)
	}
}

// Every kind of picture of the demo can be drawn or says that there is nothing to draw.
func TestPicturesOfTheDemo(t *testing.T) {
	r := newReal(t)
	towels, version := r.warpNamed("Galley towels")
	for _, of := range []string{"draft", "board", "ribbon", "tape"} {
		answer, data := r.fetched("/api/documents/" + itoa(towels) + "/picture?of=" + of)
		if answer.StatusCode != 200 || answer.Header.Get("Content-Type") != "image/svg+xml" || !bytes.HasPrefix(data, []byte("<svg")) {
			t.Errorf("%s: %s %.80s", of, answer.Status, data)
		}
	}
	var l list
	r.ask("GET", "/api/warps", nil, &l)
	for _, c := range l.Items {
		r.cloth(c.ID)
	}
	r.ask("GET", "/api/drafts", nil, &l)
	for _, c := range l.Items {
		r.cloth(c.ID)
	}
	r.ask("GET", "/api/looms", nil, &l)
	boards := 0
	for _, c := range l.Items {
		if answer, _ := r.fetched("/api/documents/" + itoa(c.ID) + "/picture?of=board"); answer.StatusCode == 200 {
			boards++
		}
	}
	var saved answered
	r.ask("POST", "/api/looms", map[string]any{"window": "w", "name": "Board", "set": []any{set("winding.board", "usual")}}, &saved)
	if answer, _ := r.fetched("/api/documents/" + itoa(saved.ID) + "/picture?of=board"); answer.StatusCode != 200 {
		t.Errorf("a usual board: %s", answer.Status)
	}
	for _, none := range []string{itoa(towels) + "/picture?of=smell", itoa(r.firstYarn()) + "/picture?of=cloth", itoa(l.Items[0].ID) + "/picture?of=draft"} {
		if answer, data := r.fetched("/api/documents/" + none); answer.StatusCode != 404 || !strings.Contains(string(data), "request.picture") {
			t.Errorf("%s: %s", none, answer.Status)
		}
	}
	kept, _ := r.fetched("/api/documents/" + itoa(towels) + "/picture?of=cloth&v=" + itoa(version))
	if !strings.Contains(kept.Header.Get("Cache-Control"), "immutable") {
		t.Errorf("kept as %q", kept.Header.Get("Cache-Control"))
	}
	if again, data := r.fetched("/api/documents/"+itoa(towels)+"/picture?of=cloth", "If-None-Match", kept.Header.Get("ETag")); again.StatusCode != 304 || len(data) > 0 {
		t.Errorf("the same again: %s", again.Status)
	}
}

// A draft is drawn as it would be after changes, and a large one is cut.
func TestPictureOfAChangedDraft(t *testing.T) {
	r := newReal(t)
	var l list
	r.ask("GET", "/api/drafts", nil, &l)
	at := "/api/documents/" + itoa(l.Items[0].ID) + "/picture?of=draft"
	_, plain := r.fetched(at)
	_, turned := r.fetched(at + "&change=turned")
	_, back := r.fetched(at + "&change=turned,turned,turned,turned")
	_, large := r.fetched(at + "&change=ends-times=50")
	if bytes.Equal(plain, turned) || len(back) == 0 || !bytes.Contains(large, []byte("the first 60 of")) {
		t.Errorf("%d, turned %d, large %d bytes", len(plain), len(turned), len(large))
	}
	for _, bad := range []string{"&change=dyed", "&change=ends-times"} {
		if answer, data := r.fetched(at + bad); answer.StatusCode != 400 || !strings.Contains(string(data), "request.change") {
			t.Errorf("%s: %s", bad, answer.Status)
		}
	}
	d := (&draft.Draft{Shafts: 1, Threading: []int{1, 1, 1}, Lifts: []draft.Set{1, 0}}).First(2, 5)
	if d.Ends() != 2 || d.Picks() != 2 {
		t.Errorf("the first of a draft: %d ends, %d picks", d.Ends(), d.Picks())
	}
}

// A warp of which nothing is known yet has a picture as well, so that no page is broken.
func TestUnknownCloth(t *testing.T) {
	r := newReal(t)
	var made struct{ ID int }
	if status := r.ask("POST", "/api/warps/new", map[string]string{"window": "w", "kind": "scarf"}, &made); status != http.StatusOK {
		t.Fatalf("a scarf is not begun: %d", status)
	}
	answer, data := r.fetched("/api/documents/" + itoa(made.ID) + "/picture?of=cloth")
	if answer.StatusCode != http.StatusOK || answer.Header.Get("Content-Type") != "image/svg+xml" || !strings.HasPrefix(string(data), "<svg") {
		t.Errorf("%d %s %.60s", answer.StatusCode, answer.Header.Get("Content-Type"), data)
	}
}
