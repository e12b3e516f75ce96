package cli

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"sley": func() {
			os.Exit(Run(os.Args[1:], testWorld()))
		},
		"holder": holder,
		"pairer": pairer,
	})
}

func testWorld() World {
	return World{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, ReadFile: os.ReadFile, WriteFiles: WriteWhole,
		WriteFolder: WriteFolder, ReadFolder: ReadFolder, Books: testBooks(),
	}
}

func TestTranscripts(t *testing.T) {
	examples, err := filepath.Abs("../../../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata",
		Setup: func(env *testscript.Env) error {
			env.Setenv("EXAMPLES", examples)
			env.Setenv("TZ", "UTC")
			env.Setenv("XDG_DATA_HOME", filepath.Join(env.WorkDir, "data"))
			env.Setenv("TICKS", filepath.Join(env.WorkDir, ".ticks"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"held": held, "newer": newer, "spoil": spoil, "exits": exits},
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
