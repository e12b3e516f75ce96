// Package cli is the command line: it reads flags into plain options, calls
// app, and prints what present makes of the answer. Figures go to the standard
// output, problems to the standard error.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"github.com/spf13/cobra"

	"sley/internal/app"
)

// World is what the command line touches; tests hand in their own.
type World struct {
	In       io.Reader
	Out, Err io.Writer
	ReadFile func(name string) ([]byte, error)
	// WriteFiles writes files whole, or leaves what was there.
	WriteFiles func(files []File) error
	// WriteFolder makes a folder of files whole or not at all; ReadFolder opens one.
	WriteFolder func(folder string, fill func(Put) error) error
	ReadFolder  func(folder string) (files fs.FS, closed func() error, err error)
	Books       Books
	// ServePage serves the page of a book until ctx ends.
	ServePage func(ctx context.Context, book *app.OpenBook, how Serving) error
	// Browse opens an address in the browser; nil where nobody is to be bothered.
	Browse func(address string)

	book *string // the file said with --book
}

// Serving is how a page is to be served, and who is told of it.
type Serving struct {
	Beside         bool                                  // phones and tablets beside the loom are let in, too
	Announce       func(address string)                  // of the page
	AnnounceBeside func(addresses []string, public bool) // what such devices open; public: others may reach it, too
}

// The exit codes, fixed and documented in the help of every command.
const (
	exitDone     = 0
	exitFailed   = 1 // could not be done
	exitUsage    = 2
	exitProblems = 3 // the input has problems
	exitNotFound = 4
	exitMissing  = 10 // there is no book
	exitInUse    = 11
	exitNewer    = 12
	// exitCancelled is what a shell has of a program that was broken off.
	exitCancelled = 130
)

const exitHelp = `
Exit codes: 0 done, 1 could not be done, 2 wrong usage, 3 the input has
problems, 4 not found, 10 there is no book, 11 the book is in use, 12 the book is
of a newer sley, 130 broken off.`

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
	w.book = new(string)
	var opts ServeOptions
	root := &cobra.Command{
		Use:   "sley",
		Short: "Keep a weaver's book, and reckon a handwoven warp to every number at the loom",
		Long: `sley alone opens the weaver's book in the browser: everything she plans, weaves
and learns, in one file. It serves the page to this machine only, until Ctrl+C. The
first time it makes the book, with a demo in it. With --beside, phones and tablets
that were paired may be used at the loom as well.

Its commands reckon a warp from the piece wanted to the ends, the warp length, the
reed, the picks, the yarn and the tape, each number with its working, and work in the
book.
` + exitHelp,
		Example:       "  sley\n  sley --book class.sley --no-browser\n  sley reckon examples/galley-towels.toml",
		Args:          cobra.NoArgs,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE:          func(*cobra.Command, []string) error { return runServe(w, opts) },
	}
	root.PersistentFlags().StringVar(w.book, "book", "", "the file of the book; without it the usual place, which sley book where tells")
	must(root.RegisterFlagCompletionFunc("book", bookFiles))
	root.Flags().BoolVar(&opts.Beside, "beside", false, "listen on the local network for paired phones and tablets, until sley stops (docs/beside.md)")
	root.Flags().BoolVar(&opts.NoBrowser, "no-browser", false, "only print the address of the page")
	root.AddCommand(newReckon(w), newSheet(w), newLabel(w), newFinish(w), newDraft(w), newYarn(w), newSett(w), newReed(w), newBook(w))
	return root
}
