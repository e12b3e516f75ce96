package cli

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"sley/internal/app"
)

// serving runs sley on a book until the test ends it, and gives what it printed and with
// which error it ended.
func serving(t *testing.T, w World, path string, opts ServeOptions) (printed func() string, end func() error) {
	t.Helper()
	var out safeBuffer
	w.Out, w.book = &out, &path
	ctx, cancel := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- w.serve(ctx, opts) }()
	return out.String, func() error { cancel(); return <-ended }
}

// served is a world whose page is at an address where nothing is.
func served(t *testing.T) World {
	t.Setenv("TICKS", filepath.Join(t.TempDir(), "ticks"))
	w := testWorld()
	w.ServePage = func(ctx context.Context, book *app.OpenBook, how Serving) error {
		if err := book.Serving("http://127.0.0.1:1/open/test", "test"); err != nil {
			return err
		}
		how.Announce("http://127.0.0.1:1/open/test")
		if how.Beside {
			how.AnnounceBeside([]string{"http://192.168.1.20:7071/"}, true)
		}
		<-ctx.Done()
		return nil
	}
	return w
}

type safeBuffer struct {
	mu sync.Mutex
	bytes.Buffer
}

func (b *safeBuffer) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.Buffer.Write(p)
}

func (b *safeBuffer) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.Buffer.String()
}

func wait(t *testing.T, what string, is func() bool) {
	t.Helper()
	for range 500 {
		if is() {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatal("never: " + what)
}

// The book is made, its place and its page's address are printed, the browser is opened,
// and it stops cleanly; a second sley meanwhile opens the page of the first.
func TestServe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "book.sley")
	w := served(t)
	var opened []string
	var mu sync.Mutex
	w.Browse = func(address string) { mu.Lock(); opened = append(opened, address); mu.Unlock() }
	printed, end := serving(t, w, path, ServeOptions{})
	wait(t, "the page's address", func() bool { return strings.Contains(printed(), "Ctrl+C") })
	for _, want := range []string{"The book is " + path, "The page is http://127.0.0.1:1/open/test", "holds a demo"} {
		if !strings.Contains(printed(), want) {
			t.Errorf("it printed %q, without %q", printed(), want)
		}
	}
	second, endSecond := serving(t, w, path, ServeOptions{Beside: true})
	wait(t, "the second sley", func() bool { return strings.Contains(second(), "open already") })
	if err := endSecond(); err != nil {
		t.Error("the second sley:", err)
	}
	if !strings.Contains(second(), "The page is http://127.0.0.1:1/open/test") || !strings.Contains(second(), "is turned on there") {
		t.Errorf("the second sley printed %q", second())
	}
	if err := end(); err != nil || !strings.Contains(printed(), "sley has stopped.") {
		t.Errorf("it ended with %v after %q", err, printed())
	}
	if len(opened) != 2 || opened[0] != "http://127.0.0.1:1/open/test" {
		t.Errorf("opened in the browser: %q", opened)
	}
	if _, held := app.HolderOf(path); held {
		t.Error("the book is held after sley stopped")
	}
}

// With --beside it says what to open on a phone, and what that means; without it says
// nothing of the kind.
func TestServeBeside(t *testing.T) {
	for _, beside := range []bool{false, true} {
		w := served(t)
		printed, end := serving(t, w, filepath.Join(t.TempDir(), "book.sley"), ServeOptions{Beside: beside})
		wait(t, "the page's address", func() bool { return strings.Contains(printed(), "Ctrl+C") })
		if beside {
			wait(t, "the other address", func() bool { return strings.Contains(printed(), "same network") })
		}
		if err := end(); err != nil {
			t.Error(err)
		}
		for _, want := range []string{"http://192.168.1.20:7071/", "others on the internet"} {
			if got := strings.Contains(printed(), want); got != beside {
				t.Errorf("beside %v: it printed %q", beside, printed())
			}
		}
	}
}

// A book that cannot be opened ends sley with what to do, and nothing is overwritten.
func TestServeSomethingElse(t *testing.T) {
	path := filepath.Join(t.TempDir(), "notes.txt")
	if err := os.WriteFile(path, []byte(strings.Repeat("these are notes, and no book\n", 100)), 0o600); err != nil {
		t.Fatal(err)
	}
	w := served(t)
	w.book, w.Err = &path, io.Discard
	err := runServe(w, ServeOptions{NoBrowser: true})
	if err == nil || err.(stop).code != exitFailed {
		t.Errorf("ended with %v", err)
	}
	if data, _ := os.ReadFile(path); !strings.HasPrefix(string(data), "these are notes") {
		t.Error("the notes were overwritten")
	}
}
