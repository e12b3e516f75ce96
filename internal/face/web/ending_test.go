package web_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"testing"
)

// A request whose context ended gets no answer at all, rather than an empty one that says
// all is well: the page then knows that the server is gone, and keeps what was typed.
func TestAnEndedRequestIsNotAnswered(t *testing.T) {
	r := newReal(t)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	req := httptest.NewRequestWithContext(ctx, "GET", r.url("/api/warps"), nil)
	req.AddCookie(&http.Cookie{Name: "sley-" + r.port, Value: token})
	answer := httptest.NewRecorder()
	defer func() {
		if fault := recover(); fault != http.ErrAbortHandler {
			t.Errorf("the connection is not broken off: %v, answered %d %q", fault, answer.Code, answer.Body)
		}
	}()
	r.server.ServeHTTP(answer, req)
}
