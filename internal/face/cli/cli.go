// Package cli is the command line: it reads flags into plain options, calls
// app, and prints what present makes of the answer. Figures go to the standard
// output, problems to the standard error.
package cli

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

// World is what the command line touches; tests hand in their own.
type World struct {
	In       io.Reader
	Out, Err io.Writer
	ReadFile func(name string) ([]byte, error)
	// WriteFiles writes files whole, or leaves what was there.
	WriteFiles func(files []File) error
	Demo       []byte
	DemoName   string
}

// The exit codes, fixed and documented in the help of every command.
const (
	exitDone     = 0
	exitFailed   = 1 // could not be done
	exitUsage    = 2
	exitProblems = 3 // the input has problems
	exitNotFound = 4
)

const exitHelp = `
Exit codes: 0 done, 1 could not be done, 2 wrong usage, 3 the input has
problems, 4 not found.`

// stop ends a command with an exit code; what there was to say was said, or is
// in err.
type stop struct {
	code int
	slug string
	err  error
}

func (s stop) Error() string {
	if s.err == nil {
		return ""
	}
	return s.err.Error()
}

// Run runs one command line and gives its exit code. A fault of our own is
// caught and asks for a report.
func Run(args []string, w World) (code int) {
	defer func() {
		if fault := recover(); fault != nil {
			fmt.Fprintf(w.Err, "sley: this is our fault, not yours. Please report what you did and this line:\n%v\n", fault)
			code = exitFailed
		}
	}()
	root := newRoot(w)
	root.SetArgs(args)
	root.SetIn(w.In)
	root.SetOut(w.Out)
	root.SetErr(w.Err)
	return exitCode(root.Execute(), w)
}

func exitCode(err error, w World) int {
	if err == nil {
		return exitDone
	}
	var s stop
	if !errors.As(err, &s) {
		s = stop{code: exitUsage, err: err}
	}
	if text := s.Error(); text != "" {
		fmt.Fprintf(w.Err, "sley: %s\n", text)
	}
	return s.code
}

func newRoot(w World) *cobra.Command {
	root := &cobra.Command{
		Use:   "sley",
		Short: "Reckon a handwoven warp, from the piece wanted to every number at the loom",
		Long: `sley reckons a handwoven warp: from the piece wanted to the ends, the warp
length, the reed, the picks, the yarn and the tape, each number with its
working. Alone it reckons the demo towels.
` + exitHelp,
		Example:       "  sley\n  sley reckon examples/galley-towels.toml",
		Args:          cobra.NoArgs,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE:          func(*cobra.Command, []string) error { return runDemo(w) },
	}
	root.AddCommand(newReckon(w), newSheet(w), newDraft(w), newYarn(w), newSett(w), newReed(w))
	return root
}

// runDemo reckons the demo and says how to go on.
func runDemo(w World) error {
	if err := reckonText(w, w.DemoName, w.Demo, ReckonOptions{}); err != nil {
		return err
	}
	fmt.Fprintf(w.Out, `
These are the demo towels of %s. To go on:
  sley reckon %s --explain   every number with its working
  sley reckon my-warp.toml   your own plan; five lines are enough, see docs/planfile.md
  sley --help                the other commands
`, w.DemoName, w.DemoName)
	return nil
}
