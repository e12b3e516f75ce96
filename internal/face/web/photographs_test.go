package web_test

import (
	"bytes"
	"encoding/json"
	"image"
	_ "image/jpeg"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/edge/photo/taken"
	"sley/internal/face/present"
)

// send posts a body of a type, and gives the answer.
func (r *real) send(path, kind string, body io.Reader) (*http.Response, []byte) {
	r.t.Helper()
	req, err := http.NewRequest("POST", r.url(path), body)
	if err != nil {
		r.t.Fatal(err)
	}
	if kind != "" {
		req.Header.Set("Content-Type", kind)
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

func (r *real) photographsOf(id int) string { return "/api/documents/" + itoa(id) + "/photographs" }

// A photograph goes in as it was taken and comes out upright, without its place, under the
// page's own rules, to be kept; sent twice it is one.
func TestPhotographs(t *testing.T) {
	r := newReal(t)
	id, _, _ := r.firstWarp()
	file := taken.JPEG(120, 80, 6)
	for range 2 {
		answer, data := r.send(r.photographsOf(id)+"?id=w-0123456789ab&window=w-1&note=the+border&place=96", "image/jpeg", bytes.NewReader(file))
		if answer.StatusCode != http.StatusOK || !strings.Contains(string(data), `"w-0123456789ab"`) {
			t.Fatalf("%s %s", answer.Status, data)
		}
	}
	answer, err := r.client.Get(r.url("/api/photographs/w-0123456789ab"))
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	head, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || kind != "jpeg" || head.Width != 120 || head.Height != 80 || bytes.Contains(data, taken.Place) {
		t.Errorf("a %s of %d by %d, %v", kind, head.Width, head.Height, err)
	}
	for name, want := range map[string]string{
		"Content-Type": "image/jpeg", "X-Content-Type-Options": "nosniff", "Cache-Control": "immutable",
		"Content-Security-Policy": "default-src 'none'", "Cross-Origin-Resource-Policy": "same-origin",
	} {
		if got := answer.Header.Get(name); !strings.Contains(got, want) {
			t.Errorf("%s: %s", name, got)
		}
	}
	var was present.RecordJSON
	r.ask("GET", "/api/documents/"+itoa(id)+"/record", nil, &was)
	n := 0
	for _, e := range was.Log {
		if e.Picture {
			n++
			if e.Place != 96 || e.Note != "the border" || e.ID != "w-0123456789ab" {
				t.Errorf("the entry is %+v", e)
			}
		}
	}
	if n != 1 {
		t.Errorf("the record has %d photographs", n)
	}
	r.ask("POST", "/api/events/w-0123456789ab/cancel", map[string]any{"window": "w-1"}, nil)
	if status := r.ask("GET", "/api/photographs/w-0123456789ab", nil, nil); status != http.StatusNotFound {
		t.Errorf("taken back, it is %d", status)
	}
}

// What is no picture, or too much, is refused by its own reason, and nothing is kept.
func TestWhatIsNoUpload(t *testing.T) {
	r := newReal(t)
	id, _, _ := r.firstWarp()
	jpg := taken.JPEG(60, 40, 1)
	page := []byte("<html><script>alert(1)</script></html>")
	for _, test := range []struct {
		what, path, kind string
		body             []byte
		status           int
		code             string
	}{
		{"no type", r.photographsOf(id), "", jpg, 415, "request.picture-type"},
		{"JSON", r.photographsOf(id), "application/json", []byte("{}"), 415, "request.picture-type"},
		{"a form", r.photographsOf(id), "multipart/form-data; boundary=x", jpg, 415, "request.picture-type"},
		{"a type that is none", r.photographsOf(id), "image/", jpg, 415, "request.picture-type"},
		{"a page called a picture", r.photographsOf(id), "image/jpeg", page, 422, "photo.unknown"},
		{"a drawing with a script", r.photographsOf(id), "image/svg+xml", []byte("<svg onload='alert(1)'/>"), 422, "photo.format"},
		{"a page behind the head of a picture", r.photographsOf(id), "image/png", append([]byte("\x89PNG\r\n\x1a\n"), page...), 422, "photo.cut"},
		{"HEIC called JPEG", r.photographsOf(id), "image/jpeg", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00"), 422, "photo.format"},
		{"nothing", r.photographsOf(id), "image/jpeg", nil, 422, "photo.empty"},
		{"a place that is none", r.photographsOf(id) + "?place=-4", "image/jpeg", jpg, 400, "request.query"},
		{"a mark that leads elsewhere", r.photographsOf(id) + "?id=..%2f..%2fpasswd", "image/jpeg", jpg, 422, "event.id"},
		{"of no document", r.photographsOf(99999), "image/jpeg", jpg, 404, "book.not-found"},
		{"of a word", "/api/documents/towels/photographs", "image/jpeg", jpg, 404, "request.document"},
	} {
		answer, data := r.send(test.path, test.kind, bytes.NewReader(test.body))
		if answer.StatusCode != test.status || !strings.Contains(string(data), test.code) || answer.Header.Get("Content-Type") != "application/json; charset=utf-8" {
			t.Errorf("%s: %s %.200s, want %d %s", test.what, answer.Status, data, test.status, test.code)
		}
	}
	packed, _ := http.NewRequest("POST", r.url(r.photographsOf(id)), bytes.NewReader(jpg))
	packed.Header.Set("Content-Type", "image/jpeg")
	packed.Header.Set("Content-Encoding", "gzip")
	answer, err := r.client.Do(packed)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != 415 {
		t.Errorf("packed: %s", answer.Status)
	}
	if all, err := r.book.Photographs(t.Context(), 1); err == nil && len(all) > 0 {
		t.Errorf("%d are kept", len(all))
	}
}

// endless gives bytes without an end that is told.
type endless struct{ left int }

func (e *endless) Read(p []byte) (int, error) {
	if e.left <= 0 {
		return 0, io.EOF
	}
	n := min(len(p), e.left)
	e.left -= n
	return n, nil
}

// Too large a body is not read to its end, whether it says how long it is or not.
func TestOversizedUpload(t *testing.T) {
	r := newReal(t)
	id, _, _ := r.firstWarp()
	answer, data := r.send(r.photographsOf(id), "image/jpeg", &endless{app.MostPhotographBytes + 1<<20})
	if answer.StatusCode != 413 || !strings.Contains(string(data), "request.picture-large") {
		t.Errorf("without a length: %s %s", answer.Status, data)
	}
	status, body := r.raw("POST " + r.photographsOf(id) + " HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie +
		"Content-Type: image/jpeg\nContent-Length: 99999999999\n")
	if !strings.HasPrefix(status, "413") || !strings.Contains(body, "request.picture-large") {
		t.Errorf("with a length: %s %s", status, body)
	}
	if answer, _ := r.send("/api/documents/"+itoa(id)+"/log", "application/json", io.MultiReader(strings.NewReader(`{"note":"`), &endless{11 << 20})); answer.StatusCode == 200 {
		t.Error("another route takes as much")
	}
}

// A body that does not arrive holds the server up no longer than it may.
func TestSlowUpload(t *testing.T) {
	r := newReal(t)
	r.server.Upload = 200 * time.Millisecond
	id, _, _ := r.firstWarp()
	began := time.Now()
	status, body := r.raw("POST " + r.photographsOf(id) + " HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie +
		"Content-Type: image/jpeg\nContent-Length: 5000\n")
	if !strings.HasPrefix(status, "408") || !strings.Contains(body, "request.slow") {
		t.Errorf("%s %s", status, body)
	}
	if took := time.Since(began); took > 10*time.Second {
		t.Errorf("it held on for %s", took)
	}
}

// Another page sends no photograph, though its type is one that pages may send.
func TestForeignUpload(t *testing.T) {
	r := newReal(t)
	id, _, _ := r.firstWarp()
	for _, from := range []string{"Origin: http://weaver.example\n", "Sec-Fetch-Site: cross-site\n"} {
		status, body := r.raw("POST " + r.photographsOf(id) + " HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie + from +
			"Content-Type: image/jpeg\nContent-Length: 0\n")
		if !strings.HasPrefix(status, "403") || !strings.Contains(body, "request.cross-origin") {
			t.Errorf("%s %s", status, body)
		}
	}
}

// Sittings and hours, from sitting down to what is to go.
func TestHoursOfThePage(t *testing.T) {
	r := newReal(t)
	id, _, _ := r.firstWarp()
	at := "/api/documents/" + itoa(id)
	var said struct{ ID string }
	happened := func(route string, more map[string]any) int {
		body := map[string]any{"window": "w-1"}
		for name, value := range more {
			body[name] = value
		}
		said.ID = ""
		return r.ask("POST", at+"/"+route, body, &said)
	}
	if status := happened("stand-up", nil); status != 422 {
		t.Errorf("standing up before: %d", status)
	}
	if status := happened("sit-down", map[string]any{"id": "w-aaaaaaaaaaaa"}); status != 200 || said.ID != "w-aaaaaaaaaaaa" {
		t.Errorf("sitting down: %d %s", status, said.ID)
	}
	if status := happened("sit-down", map[string]any{"id": "w-bbbbbbbbbbbb"}); status != 200 || said.ID != "w-aaaaaaaaaaaa" {
		t.Errorf("sitting down again: %d %s", status, said.ID)
	}
	var h present.HoursJSON
	if status := r.ask("GET", at+"/hours", nil, &h); status != 200 || h.Sitting == nil || h.Sitting.Event != "w-aaaaaaaaaaaa" || len(h.Figures) == 0 {
		t.Errorf("%d %+v", status, h)
	}
	if status := happened("stand-up", map[string]any{"minutes": 50}); status != 200 {
		t.Errorf("standing up: %d", status)
	}
	if status := happened("log", map[string]any{"what": "advanced", "place": 30}); status != 200 {
		t.Errorf("winding on: %d", status)
	}
	h = present.HoursJSON{}
	r.ask("GET", at+"/hours", nil, &h)
	if h.Sitting != nil || h.Minutes != 50 || h.Advanced != 1 || len(h.Days) != 1 || h.Figures[0].Value != "50 min" {
		data, _ := json.Marshal(h)
		t.Errorf("%s", data)
	}
	if status := r.ask("GET", "/api/documents/99999/hours", nil, nil); status != 404 {
		t.Errorf("of nothing: %d", status)
	}
}
