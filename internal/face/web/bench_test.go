package web_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/face/web"
	"sley/internal/trade/record"
)

// The book that is made to be large: go test ./internal/face/web -bench Big -run xxx.
const (
	bigWarps  = 10_000
	bigDrafts = 100_000
	bigLot    = 10 // lots it is written in
)

// bigBook opens a large book. It is made in a folder that SLEY_BIG_FOLDER names and kept there,
// or anew each time.
func bigBook(b *testing.B) *app.OpenBook {
	b.Helper()
	folder := os.Getenv("SLEY_BIG_FOLDER")
	if folder == "" {
		folder = b.TempDir()
	}
	asked := app.BookAsked{Path: filepath.Join(folder, "big.sley"), Now: time.Now, NewID: numberedFrom(time.Now()), Program: "bench", Create: true}
	book, err := app.Open(context.Background(), asked)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { book.Close() })
	c, err := book.Counts(context.Background())
	if err != nil {
		b.Fatal(err)
	}
	for lot := c.Of[record.Warp] / (bigWarps / bigLot); lot < bigLot; lot++ {
		if err := book.FillDemo(context.Background(), bigPart(lot)); err != nil {
			b.Fatal(err)
		}
	}
	return book
}

func numberedFrom(t time.Time) func() string {
	next := numbered()
	return func() string { return fmt.Sprintf("%x-%s", t.UnixNano(), next()) }
}

// bigPart is one lot of warps and drafts, each under a name of its own.
func bigPart(lot int) app.Demo {
	var d app.Demo
	for i := range bigWarps / bigLot {
		name := fmt.Sprintf("Towels %d, lot %d", i, lot)
		text := bytes.Replace(examples.GalleyTowels, []byte(`"Galley towels"`), []byte(`"`+name+`"`), 1)
		text = bytes.Replace(text, []byte(`width = "18 in"`), fmt.Appendf(nil, `width = "%d in"`, 8+i%16), 1)
		d.Warps = append(d.Warps, app.Source{Name: "towels.toml", Text: text})
	}
	weaves := []string{"twill", "plain", "broken-twill", "rosepath", "satin", "houndstooth"}
	for i := range bigDrafts / bigLot {
		weave := weaves[i%len(weaves)]
		d.Weaves = append(d.Weaves, app.DemoWeave{Weave: weave, Name: fmt.Sprintf("%s no. %d of lot %d", weave, i, lot)})
	}
	return d
}

// served is a server without a network between it and the benchmark.
type served struct {
	b      *testing.B
	server *web.Server
}

func serve(b *testing.B, book *app.OpenBook) served {
	return served{b, web.New(web.Asked{
		Book: book.Studio, Place: book.Path(), Token: token, Program: "bench", Check: book.Check, Copy: book.KeepToday,
	}, "1")}
}

// ask sends one request and reads its answer.
func (s served) ask(method, path string, body any, to any) {
	data, err := json.Marshal(body)
	if err != nil {
		s.b.Fatal(err)
	}
	r := httptest.NewRequest(method, "http://127.0.0.1:1"+path, bytes.NewReader(data))
	r.Header.Set("Content-Type", "application/json")
	r.AddCookie(&http.Cookie{Name: "sley-1", Value: token})
	w := httptest.NewRecorder()
	s.server.ServeHTTP(w, r)
	if w.Code != http.StatusOK {
		s.b.Fatalf("%s %s: %d %s", method, path, w.Code, w.Body)
	}
	if to != nil {
		if err := json.Unmarshal(w.Body.Bytes(), to); err != nil {
			s.b.Fatal(err)
		}
	}
}

// timed runs one thing again and again and reports its middle and its slowest hundredth.
func timed(b *testing.B, name string, do func()) {
	b.Run(name, func(b *testing.B) {
		var took []time.Duration
		for b.Loop() {
			began := time.Now()
			do()
			took = append(took, time.Since(began))
		}
		slices.Sort(took)
		b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "p50-ms")
		b.ReportMetric(float64(took[(len(took)-1)*99/100].Microseconds())/1000, "p99-ms")
		b.ReportMetric(0, "ns/op")
	})
}

// everything is each list and each action, on whatever book it is.
func everything(b *testing.B, book *app.OpenBook) {
	s := serve(b, book)
	var l list
	s.ask("GET", "/api/warps?most=1", nil, &l)
	id, base := l.Items[0].ID, l.Items[0].Version
	at := "/api/documents/" + itoa(id)
	n := 0
	for _, path := range []string{
		"/api/book", "/api/warps", "/api/yarns", "/api/looms", "/api/drafts", "/api/warps?words=towels", "/api/drafts?words=twill",
		"/api/drafts?words=twill+7", "/api/drafts?words=nothing+like+it", "/api/drafts?shafts=4&float=3", "/api/drafts?float=1",
		"/api/drafts?weave=satin", "/api/drafts?words=tw&weave=broken-twill&treadles=4", at, at + "/versions", at + "/reckoning",
		at + "/events?topic=log", at + "/origins",
	} {
		timed(b, "GET "+strings.ReplaceAll(path, "/"+itoa(id), "/N"), func() { s.ask("GET", path, nil, nil) })
	}
	act := func(do string, body map[string]any) func() {
		return func() {
			n++
			body["base"], body["window"] = base, "w-bench"
			var done answered
			s.ask("POST", at+"/"+do, body, &done)
			base = done.Version
		}
	}
	timed(b, "POST changes", func() { act("changes", edit(0, "", "note", fmt.Sprint("note ", n)))() })
	timed(b, "POST undo and redo", func() {
		act("undo", map[string]any{})()
		act("redo", map[string]any{})()
	})
	timed(b, "POST yarns", func() {
		n++
		s.ask("POST", "/api/yarns", map[string]any{"window": "w", "name": fmt.Sprint("yarn ", n), "set": []map[string]any{{"path": "count", "value": "8/2 Ne"}}}, nil)
	})
	timed(b, "POST warps", func() {
		n++
		s.ask("POST", "/api/warps", map[string]any{"window": "w", "name": "x.toml", "text": string(examples.GalleyTowels)}, nil)
	})
	s.ask("POST", at+"/start", map[string]any{"base": base, "window": "w"}, nil)
	timed(b, "POST woven", func() {
		n++
		s.ask("POST", at+"/woven", map[string]any{"id": fmt.Sprintf("bench-%d-%d", time.Now().UnixNano(), n), "window": "w", "pick": n}, nil)
	})
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	b.Logf("memory after all of it: %d MB on the heap, %d MB from the system", m.HeapAlloc>>20, m.Sys>>20)
}

func BenchmarkDemoBook(b *testing.B) { everything(b, openBook(b)) }

func BenchmarkBigBook(b *testing.B) { everything(b, bigBook(b)) }

// BenchmarkStart is from nothing to the first page and its list: of a book that is made
// with its demo, of one that is there, and beside them of the listening alone.
func BenchmarkStart(b *testing.B) {
	start := func(path string) {
		book, err := app.Open(context.Background(), app.BookAsked{
			Path: path, Now: time.Now, NewID: numberedFrom(time.Now()), Program: "bench", Demo: examples.Demo(), Create: true,
		})
		if err != nil {
			b.Fatal(err)
		}
		defer book.Close()
		ctx, stop := context.WithCancel(context.Background())
		ended := make(chan error, 1)
		address := make(chan string, 1)
		go func() {
			ended <- web.Run(ctx, book, web.Running{Program: "bench", Token: token, Announce: func(a string) { address <- a }})
		}()
		at := <-address
		client := (&real{t: b, port: strings.TrimPrefix(strings.Split(at, "/open/")[0], "http://127.0.0.1:")}).window()
		answer, err := client.Get(strings.Split(at, "open/")[0] + "api/warps")
		if err != nil || answer.StatusCode != http.StatusOK {
			b.Fatal(err)
		}
		answer.Body.Close()
		stop()
		<-ended
	}
	kept := filepath.Join(b.TempDir(), "kept.sley")
	start(kept)
	n := 0
	timed(b, "new book", func() {
		n++
		start(filepath.Join(b.TempDir(), fmt.Sprint(n), "book.sley"))
	})
	timed(b, "book that is there", func() { start(kept) })
}
