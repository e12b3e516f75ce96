package web_test

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/face/web"
)

// real is a server on a book that holds the demo, and a window of a browser's.
type real struct {
	t       testing.TB
	book    *app.OpenBook
	server  *web.Server
	port    string
	client  *http.Client
	stopped chan struct{} // closed once it no longer serves
	served  error         // how it stopped
	stop    context.CancelFunc
}

const token = "a-token-of-the-test"

func clock() func() time.Time {
	var n atomic.Int64
	return func() time.Time {
		return time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC).Add(time.Duration(n.Add(1)) * time.Second)
	}
}

func numbered() func() string {
	var n atomic.Int64
	return func() string { return fmt.Sprintf("id-%08d", n.Add(1)) }
}

// openBook makes a book with the demo in it.
func openBook(t testing.TB) *app.OpenBook {
	t.Helper()
	b, err := app.Open(context.Background(), app.BookAsked{
		Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), NewID: numbered(), Program: "test",
		Demo: examples.Demo(), Create: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return b
}

// newReal serves a new book.
func newReal(t testing.TB) *real {
	t.Helper()
	return serveReal(t, openBook(t))
}

// serveReal serves a book that is open.
func serveReal(t testing.TB, book *app.OpenBook) *real {
	t.Helper()
	on, err := web.Listen(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	r := &real{t: t, book: book, port: web.PortOf(on)}
	r.server = web.New(web.Asked{
		Book: r.book.Studio, Place: r.book.Path(), Token: token, Program: "test",
		Check: r.book.Check, Copy: r.book.KeepToday,
	}, r.port)
	r.serve(on)
	t.Cleanup(r.end)
	r.client = r.window()
	return r
}

func (r *real) serve(on net.Listener) {
	ctx, stop := context.WithCancel(context.Background())
	stopped := make(chan struct{})
	r.stop, r.stopped = stop, stopped
	go func() {
		defer close(stopped)
		r.served = r.server.Serve(ctx, on)
	}()
}

// end ends the server, as if sley was closed; one that is ended stays so.
func (r *real) end() {
	r.stop()
	<-r.stopped
}

// again serves once more, where it did before.
func (r *real) again() {
	r.t.Helper()
	on, err := web.Listen(r.t.Context(), r.port)
	if err != nil || web.PortOf(on) != r.port {
		r.t.Fatalf("the port is taken: %v", err)
	}
	r.serve(on)
}

// window is a browser that opened the page.
func (r *real) window() *http.Client {
	r.t.Helper()
	return r.windowAt(web.Address(r.port, token))
}

// windowAt is a browser that opened an address with a token in it.
func (r *real) windowAt(address string) *http.Client {
	r.t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		r.t.Fatal(err)
	}
	client := &http.Client{Jar: jar, Timeout: 20 * time.Second}
	answer, err := client.Get(address)
	if err != nil {
		r.t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusOK || answer.Request.URL.Path != "/" {
		r.t.Fatalf("opening the page: %s at %s", answer.Status, answer.Request.URL)
	}
	return client
}

func (r *real) url(path string) string { return strings.TrimSuffix(web.Home(r.port), "/") + path }

// ask sends a request and reads its answer as JSON into to, where that is not nil.
func (r *real) ask(method, path string, body, to any) int {
	r.t.Helper()
	var from io.Reader
	if body != nil {
		data, err := json.Marshal(body)
		if err != nil {
			r.t.Fatal(err)
		}
		from = bytes.NewReader(data)
	}
	req, err := http.NewRequest(method, r.url(path), from)
	if err != nil {
		r.t.Fatal(err)
	}
	if body != nil {
		req.Header.Set("Content-Type", "application/json")
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
	if to != nil {
		if err := json.Unmarshal(data, to); err != nil {
			r.t.Fatalf("%s %s: %s: %v in %s", method, path, answer.Status, err, data)
		}
	}
	return answer.StatusCode
}

// list is what a list answers.
type list struct {
	Items []struct {
		ID      int
		Name    string
		Version int
		Stage   string
		Demo    bool
		Figures []struct{ ID, Says, Value string }
	}
	Total int
	Next  string
}

// firstWarp is the warp that a list begins with.
func (r *real) firstWarp() (id, version int, name string) {
	r.t.Helper()
	var l list
	if status := r.ask("GET", "/api/warps", nil, &l); status != http.StatusOK || len(l.Items) == 0 {
		r.t.Fatalf("the list of warps: %d with %d items", status, len(l.Items))
	}
	return l.Items[0].ID, l.Items[0].Version, l.Items[0].Name
}

// stream follows the book; lines come until the server or the test ends it.
func (r *real) stream() (<-chan string, func()) {
	r.t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	req, err := http.NewRequestWithContext(ctx, "GET", r.url("/api/events"), nil)
	if err != nil {
		r.t.Fatal(err)
	}
	follower := *r.client
	follower.Timeout = 0
	answer, err := follower.Do(req)
	if err != nil {
		r.t.Fatal(err)
	}
	lines := make(chan string, 100)
	go func() {
		defer close(lines)
		defer answer.Body.Close()
		for in := bufio.NewScanner(answer.Body); in.Scan(); {
			if in.Text() != "" {
				lines <- in.Text()
			}
		}
	}()
	return lines, stop
}
