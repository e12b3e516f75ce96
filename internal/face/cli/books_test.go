package cli

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/trade/record"
)

// testBooks has a clock and marks that count on from one command of a transcript to the
// next, so that a transcript is the same each time.
func testBooks() Books {
	return Books{
		Place: func() (string, error) { return app.UsualPlace("linux", os.Getenv) },
		Now: func() time.Time {
			return time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC).Add(time.Duration(tick()) * time.Second)
		},
		NewID:   func() string { return fmt.Sprintf("mark%04d", count(os.Getenv("TICKS")+".ids")) },
		Program: "test", Demo: examples.Demo(),
		Interrupt: func() (context.Context, context.CancelFunc) {
			ctx, free := context.WithCancel(context.Background())
			if os.Getenv("BREAK_OFF") != "" {
				free()
			}
			return ctx, free
		},
	}
}

// tick is the next second.
func tick() int { return count(os.Getenv("TICKS")) }

// count counts in a file: marks on their own, so that they do not hang on how often the
// clock is looked at.
func count(path string) int {
	text, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		panic(err)
	}
	n, _ := strconv.Atoi(string(text))
	if err := os.WriteFile(path, []byte(strconv.Itoa(n+1)), 0o600); err != nil {
		panic(err)
	}
	return n + 1
}

// holder has the book that it is given until its input ends, as another sley would.
func holder() {
	o, err := app.Open(context.Background(), app.BookAsked{Path: os.Args[1], Now: time.Now, NewID: testBooks().NewID})
	if err == nil {
		err = o.Serving("http://localhost:7070", "token")
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println("held")
	io.Copy(io.Discard, os.Stdin)
	o.Close()
}

// pairer pairs a device of each name that it is given with the book in the usual place.
func pairer() {
	for _, name := range os.Args[1:] {
		if err := pairIn(World{Books: testBooks(), book: new(string)}, name); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

// held starts holding a book, and waits until it is held.
func held(ts *testscript.TestScript, neg bool, args []string) {
	cmd := exec.Command("holder", ts.MkAbs(args[0]))
	cmd.Env = append(os.Environ(), "TICKS="+ts.Getenv("TICKS"))
	cmd.Dir = ts.Getenv("WORK")
	in, err := cmd.StdinPipe()
	ts.Check(err)
	out, err := cmd.StdoutPipe()
	ts.Check(err)
	ts.Check(cmd.Start())
	ts.Defer(func() { in.Close(); cmd.Wait() })
	if _, err := io.ReadFull(out, make([]byte, 4)); err != nil {
		ts.Fatalf("the book is not held: %v", err)
	}
}

// newer makes a book that a later sley wrote.
func newer(ts *testscript.TestScript, neg bool, args []string) {
	db, err := sql.Open("sqlite", ts.MkAbs(args[0]))
	ts.Check(err)
	_, err = db.Exec("PRAGMA user_version = 999")
	ts.Check(errors.Join(err, db.Close()))
}

// spoil writes over the middle of a file.
func spoil(ts *testscript.TestScript, neg bool, args []string) {
	file, err := os.OpenFile(ts.MkAbs(args[0]), os.O_WRONLY, 0)
	ts.Check(err)
	info, err := file.Stat()
	ts.Check(err)
	junk := make([]byte, info.Size()-4096)
	for i := range junk {
		junk[i] = 0x5a
	}
	_, err = file.WriteAt(junk, 4096)
	ts.Check(errors.Join(err, file.Close()))
}

// exits runs sley and wants an exit code: exits 11 book list.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec("sley", args[1:]...)
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit) && exit.ExitCode() == want:
	case err == nil && want == 0:
	default:
		ts.Fatalf("sley ended with %v, and %d was wanted", err, want)
	}
}

// The exit codes of the troubles that have their own.
func TestTroubleExits(t *testing.T) {
	for code, want := range map[string]int{
		record.Missing: 10, record.InUse: 11, record.Newer: 12, record.NotFound: 4, record.Damaged: 1, record.Full: 1,
	} {
		d := desk{World: World{Err: io.Discard}}
		var s stop
		if err := d.troubled(&record.Trouble{Code: code}); !errors.As(err, &s) || s.code != want {
			t.Errorf("%s ends with %v, want %d", code, err, want)
		}
	}
	var s stop
	if err := (desk{World: World{Err: io.Discard}}).troubled(context.Canceled); !errors.As(err, &s) || s.code != 130 {
		t.Errorf("broken off ends with %v", err)
	}
}
