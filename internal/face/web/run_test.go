package web_test

import (
	"context"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/face/web"
)

// run serves a book as sley does, and gives the address it announces and how to stop it.
func run(t *testing.T, path string) (book *app.OpenBook, address string, stop func()) {
	t.Helper()
	return runWith(t, path, web.Running{})
}

// runWith serves it as is said.
func runWith(t *testing.T, path string, how web.Running) (book *app.OpenBook, address string, stop func()) {
	t.Helper()
	book, err := app.Open(t.Context(), app.BookAsked{Path: path, Now: clock(), NewID: numbered(), Program: "test", Create: true})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	announced, ended := make(chan string, 1), make(chan error, 1)
	go func() {
		how.Program, how.Token, how.Announce = "test", "new-token", func(a string) { announced <- a }
		ended <- web.Run(ctx, book, how)
	}()
	stop = func() {
		cancel()
		if err := <-ended; err != nil {
			t.Error(err)
		}
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	}
	select {
	case address = <-announced:
	case err := <-ended:
		t.Fatal("it ended at once:", err)
	case <-time.After(30 * time.Second):
		t.Fatal("it announced nothing")
	}
	return book, address, stop
}

func portOf(t *testing.T, address string) string {
	t.Helper()
	return mustURL(t, address).Port()
}

// The book comes at the same address again; only while that is busy at another.
func TestPortIsRemembered(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	_, first, stop := run(t, path)
	stop()
	_, second, stop := run(t, path)
	stop()
	if portOf(t, first) != portOf(t, second) {
		t.Errorf("first %s, then %s", first, second)
	}
	busy, err := net.Listen("tcp4", "127.0.0.1:"+portOf(t, first))
	if err != nil {
		t.Fatal(err)
	}
	_, third, stop := run(t, path)
	stop()
	busy.Close()
	if portOf(t, third) == portOf(t, first) {
		t.Error("it took a port that another has")
	}
	_, fourth, stop := run(t, path)
	stop()
	if portOf(t, fourth) != portOf(t, first) {
		t.Errorf("after the port was free again %s, not %s", fourth, first)
	}
}

// Only this machine can reach the page.
func TestOnlyThisMachine(t *testing.T) {
	on, err := web.Listen(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer on.Close()
	if ip := on.Addr().(*net.TCPAddr).IP; !ip.IsLoopback() {
		t.Errorf("it listens at %s", ip)
	}
}

// While it serves, others find out where; once it stopped nobody holds the book.
func TestServingIsSaid(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	_, address, stop := run(t, path)
	holder, held := app.HolderOf(path)
	if !held || holder.Address != address || holder.PID != os.Getpid() || !strings.HasSuffix(address, "/open/new-token") {
		t.Errorf("%v %+v, and it announced %s", held, holder, address)
	}
	stop()
	if _, held := app.HolderOf(path); held {
		t.Error("the book is held by nobody")
	}
	if answer, err := http.Get(address); err == nil {
		answer.Body.Close()
		t.Error("it answers after it stopped")
	}
}

// Windows of a sley that was killed go on with the next: it takes up their token.
func TestTokenOutlastsAKill(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	_, _, stop := run(t, path)
	stop()
	left := `{"pid":1,"address":"http://127.0.0.1:1/open/left-token","token":"left-token","since":"2026-03-01T12:00:00Z"}`
	if err := os.WriteFile(path+".lock", []byte(left), 0o600); err != nil {
		t.Fatal(err)
	}
	_, address, stop := run(t, path)
	defer stop()
	if !strings.HasSuffix(address, "/open/left-token") {
		t.Errorf("it announced %s", address)
	}
}

// In the background the copy of the day is made, and lists are brought up to date.
func TestTending(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	book, _, stop := run(t, path)
	defer stop()
	deadline := time.Now().Add(30 * time.Second)
	for len(app.Copies(path, time.Now())) == 0 && time.Now().Before(deadline) {
		time.Sleep(20 * time.Millisecond)
	}
	copies := app.Copies(path, time.Now())
	if len(copies) != 1 {
		t.Fatalf("copies: %q", copies)
	}
	if err := app.CheckFile(t.Context(), copies[0]); err != nil {
		t.Error(err)
	}
	if n, err := book.Refresh(t.Context()); n != 0 || err != nil {
		t.Errorf("%d facts were old, %v", n, err)
	}
}
