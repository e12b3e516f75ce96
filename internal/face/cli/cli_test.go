package cli

import (
	"context"
	"crypto/rand"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"sley/examples"
	"sley/internal/app"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"sley": func() {
		os.Exit(Run(os.Args[1:], testWorld()))
	}})
}

// testWorld is a world whose usual book is in the working folder.
func testWorld() World {
	return World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: WriteWhole,
		UsualBook: func() (string, error) { return "book.sley", nil },
		OpenBook: func(ctx context.Context, path string, create bool) (*app.OpenBook, error) {
			return app.Open(ctx, app.BookAsked{
				Path: path, Now: time.Now, NewID: rand.Text, Program: "test", Demo: examples.Demo(), Create: create,
			})
		},
		ServePage: func(ctx context.Context, book *app.OpenBook, announce func(string)) error {
			if err := book.Serving("http://127.0.0.1:1/open/test", "test"); err != nil {
				return err
			}
			announce("http://127.0.0.1:1/open/test")
			<-ctx.Done()
			return nil
		},
	}
}

func TestTranscripts(t *testing.T) {
	examples, err := filepath.Abs("../../../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:   "testdata",
		Setup: func(env *testscript.Env) error { env.Setenv("EXAMPLES", examples); return nil },
	})
}

// A fault of our own is caught, said as ours, and ends with exit code 1.
func TestPanicIsOurFault(t *testing.T) {
	var said writer
	code := Run([]string{"yarn", "8/2 Ne"}, World{In: os.Stdin, Out: panics{}, Err: &said})
	if code != exitFailed || !said.has("this is our fault") {
		t.Errorf("got exit %d, %q", code, said.text)
	}
}

type panics struct{}

func (panics) Write([]byte) (int, error) { panic("internal error: a test") }

type writer struct{ text string }

func (w *writer) Write(b []byte) (int, error) { w.text += string(b); return len(b), nil }

func (w *writer) has(part string) bool {
	for i := 0; i+len(part) <= len(w.text); i++ {
		if w.text[i:i+len(part)] == part {
			return true
		}
	}
	return false
}
