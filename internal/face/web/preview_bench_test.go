package web_test

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"testing"
)

// BenchmarkPreview is one key pressed in the plan of the towels, as the server answers it.
func BenchmarkPreview(b *testing.B) {
	r := newReal(b)
	id, _ := r.warpNamed("Galley towels")
	body, err := json.Marshal(map[string]any{"set": []any{set("pieces[0].length", "29 in")}})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		req := httptest.NewRequest(http.MethodPost, r.url("/api/documents/"+itoa(id)+"/reckoning"), bytes.NewReader(body))
		req.Header.Set("Content-Type", "application/json")
		req.AddCookie(&http.Cookie{Name: "sley-" + r.port, Value: token})
		answer := httptest.NewRecorder()
		r.server.ServeHTTP(answer, req)
		if answer.Code != http.StatusOK || answer.Body.Len() < 1000 {
			b.Fatal(answer.Code, answer.Body)
		}
	}
}
