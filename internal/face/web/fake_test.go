package web_test

import (
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"sley/internal/face/web"
)

// policy is what the server of sley forbids the page.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; " +
	"require-trusted-types-for 'script'; trusted-types 'none'"

type (
	// fake is a book in memory behind the same answers as the real one gives.
	fake struct {
		addr   string
		server *http.Server

		mu      sync.Mutex
		docs    []*document
		demo    bool
		refuses func(r *http.Request) (status int, body any) // an answer in place of the right one
		streams map[chan string]bool
		most    int // streams open at once, at the most
		opened  int // streams opened in all
		posts   int
	}
	document struct {
		id    int
		names []string // by version, from 1
		steps map[string][]int
		redos map[string][]int
		demo  bool
	}
)

var demoNames = []string{
	"Six galley towels", "Berth blanket", "Lace curtain for the galley", "Class of eight: bookmarks",
	"Deck towels", "Tide tables: a runner", "Sampler of twills",
}

func newFake(t *testing.T, names ...string) *fake {
	t.Helper()
	f := &fake{streams: map[chan string]bool{}, demo: true}
	for i, name := range names {
		f.docs = append(f.docs, &document{id: i + 1, names: []string{name}, steps: map[string][]int{}, redos: map[string][]int{}, demo: i%3 == 0})
	}
	f.addr = "127.0.0.1:0"
	f.start(t)
	t.Cleanup(f.stop)
	return f
}

// start listens, the second time where it did the first time.
func (f *fake) start(t *testing.T) {
	t.Helper()
	listener, err := net.Listen("tcp", f.addr)
	if err != nil {
		t.Fatal(err)
	}
	f.addr = listener.Addr().String()
	f.server = &http.Server{Handler: f.routes()}
	go f.server.Serve(listener)
}

// stop cuts every connection, as the end of a program does.
func (f *fake) stop() { f.server.Close() }

func (f *fake) url() string { return "http://" + f.addr + "/" }

func (f *fake) routes() http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /static/", web.Assets())
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Header().Set("Content-Security-Policy", policy)
		w.Write(web.IndexPage())
	})
	mux.HandleFunc("GET /api/book", f.book)
	mux.HandleFunc("GET /api/warps", f.warps)
	mux.HandleFunc("GET /api/events", f.events)
	mux.HandleFunc("GET /api/documents/{id}/picture", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "image/svg+xml")
		w.Write([]byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 3 3"><path fill="#c9b896" d="M0 0h3v3H0z"/></svg>`))
	})
	mux.HandleFunc("POST /api/documents/{id}/{act}", f.change)
	mux.HandleFunc("POST /api/demo/clear", f.clear)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		f.mu.Lock()
		refuses := f.refuses
		f.mu.Unlock()
		if refuses != nil {
			if status, body := refuses(r); status != 0 {
				answer(w, status, body)
				return
			}
		}
		mux.ServeHTTP(w, r)
	})
}

// refuse gives another answer to requests whose path holds part; part "" ends that.
func (f *fake) refuse(part string, status int, body any) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.refuses = func(r *http.Request) (int, any) {
		if part != "" && strings.Contains(r.URL.Path, part) {
			return status, body
		}
		return 0, nil
	}
}

// slow makes every answer wait, so that what happens meanwhile does.
func (f *fake) slow(wait time.Duration) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.refuses = func(*http.Request) (int, any) {
		time.Sleep(wait)
		return 0, nil
	}
}

func answer(w http.ResponseWriter, status int, body any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	json.NewEncoder(w).Encode(body)
}

type object = map[string]any

func (f *fake) book(w http.ResponseWriter, _ *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	shelves := 12
	if len(f.docs) == 0 {
		shelves = 0
	}
	answer(w, 200, object{
		"place": "/home/weaver/.local/share/sley/book.sley", "program": "0.5.0", "demo": f.demo,
		"warps": len(f.docs), "yarns": shelves, "looms": shelves / 6, "drafts": shelves * 3 / 4,
	})
}

func (f *fake) warps(w http.ResponseWriter, r *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	most, _ := strconv.Atoi(r.FormValue("most"))
	after, _ := strconv.Atoi(r.FormValue("after"))
	items, total, next := []object{}, 0, ""
	for _, d := range f.docs {
		if !strings.Contains(strings.ToLower(d.name()), strings.ToLower(r.FormValue("words"))) {
			continue
		}
		total++
		if total > after && len(items) < most {
			items = append(items, d.item())
			next = strconv.Itoa(total)
		}
	}
	if next == strconv.Itoa(total) {
		next = ""
	}
	answer(w, 200, object{"items": items, "total": total, "next": next})
}

func (d *document) name() string { return d.names[len(d.names)-1] }

func (d *document) item() object {
	stages := []string{"planned", "dressing the loom: 144 of 433 ends threaded", "weaving: towel 3 of 6"}
	figures := []object{}
	for _, one := range [][3]string{
		{"ends", "ends to wind", "433"},
		{"warp", "warp to wind", "5 1/2 yd"},
		{"width", "width in the reed", "20 7/8 in"},
		{"picks", "picks per towel", "757"},
		{"yarn", "yarn to buy", "1 933.03 yd"},
		{"cost", "cost of the yarn", "41.20"},
	} {
		figures = append(figures, object{"id": one[0], "says": one[1], "value": one[2]})
	}
	return object{
		"id": d.id, "name": d.name(), "version": len(d.names), "stage": stages[d.id%3], "demo": d.demo,
		"changed": "2026-11-26T08:00:00Z", "figures": figures, "problems": d.id % 4 / 3 * 2,
	}
}

// events is the stream of changes; the fake counts how many are open.
func (f *fake) events(w http.ResponseWriter, r *http.Request) {
	news := make(chan string, 100)
	f.mu.Lock()
	f.streams[news] = true
	f.opened++
	f.most = max(f.most, len(f.streams))
	f.mu.Unlock()
	defer func() {
		f.mu.Lock()
		defer f.mu.Unlock()
		delete(f.streams, news)
	}()
	w.Header().Set("Content-Type", "text/event-stream")
	fmt.Fprint(w, "event: hello\ndata: {\"program\":\"0.5.0\"}\n\n")
	flush := http.NewResponseController(w)
	flush.Flush()
	for {
		select {
		case <-r.Context().Done():
			return
		case <-time.After(time.Second):
			fmt.Fprint(w, ": still here\n\n")
		case line := <-news:
			fmt.Fprintf(w, "event: changed\ndata: %s\n\n", line)
		}
		flush.Flush()
	}
}

// count is how many streams are open now, were at the most, and were opened in all.
func (f *fake) count() (now, most, opened int) {
	f.mu.Lock()
	defer f.mu.Unlock()
	return len(f.streams), f.most, f.opened
}

func (f *fake) nameOf(id int) string {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.docs[id-1].name()
}

func (f *fake) posted() int {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.posts
}
