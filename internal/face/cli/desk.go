package cli

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Books is what a book needs from outside.
type Books struct {
	Place   func() (string, error) // the usual place of a book
	Now     func() time.Time
	NewID   func() string // a random text of 8 to 64 characters each time
	Program string        // the version of the program
	Demo    app.Demo      // what a new book begins with, when it is asked for
	// Interrupt gives a context that ends when the weaver breaks the command off.
	Interrupt func() (context.Context, context.CancelFunc)
}

// bookPath is the file of the book: the one said with --book, or the usual place.
func (w World) bookPath() (string, error) {
	if w.book != nil && *w.book != "" {
		return *w.book, nil
	}
	path, err := w.Books.Place()
	if err != nil {
		return "", stop{exitFailed, "no-place", err}
	}
	return path, nil
}

func (w World) asked(path string, create bool) app.BookAsked {
	return app.BookAsked{Path: path, Now: w.Books.Now, NewID: w.Books.NewID, Program: w.Books.Program, Create: create}
}

// look opens the book to read in it: as its holder, or where another has it, peeking.
func (w World) look(ctx context.Context) (*app.OpenBook, error) {
	path, err := w.bookPath()
	if err != nil {
		return nil, err
	}
	o, err := app.Open(ctx, w.asked(path, false))
	if record.Is(err, record.InUse) || record.Is(err, record.ReadOnly) {
		return app.Peek(ctx, w.asked(path, false))
	}
	return o, err
}

// desk is where one command on the book works.
type desk struct {
	World
	asJSON bool
}

// reading does something with the book that changes nothing.
func (d desk) reading(ctx context.Context, do func(*app.OpenBook) error) error {
	o, err := d.look(ctx)
	if err != nil {
		return err
	}
	return errors.Join(do(o), o.Close())
}

// changing does something that changes the book. The first change of a day is made
// after a copy of the book as it was; what a list shows is found anew at the end.
func (d desk) changing(ctx context.Context, do func(*app.OpenBook) error) error {
	path, err := d.bookPath()
	if err != nil {
		return err
	}
	o, err := app.Open(ctx, d.asked(path, false))
	if err != nil {
		return err
	}
	if _, err := o.KeepToday(ctx); err != nil {
		fmt.Fprint(d.Err, present.NoCopyOfToday(err))
	}
	err = do(o)
	if err == nil {
		err = lookedAtAnew(ctx, o.Studio)
	}
	return errors.Join(err, o.Close())
}

// lookedAtAnew finds the facts of what was left for later.
func lookedAtAnew(ctx context.Context, s *app.Studio) error {
	for {
		if n, err := s.Refresh(ctx); n == 0 || err != nil {
			return err
		}
	}
}

// say prints the shape when JSON was asked for, else the text.
func (d desk) say(text string, shape any) error {
	if !d.asJSON {
		fmt.Fprint(d.Out, text)
		return nil
	}
	if err := printJSON(d.Out, shape); err != nil {
		return stop{code: exitFailed, err: err}
	}
	return nil
}

// doneJSON is the shape of what was done with the book as a whole.
type doneJSON struct {
	Format int    `json:"format"`
	Path   string `json:"path"`
	Aside  string `json:"aside,omitempty"`
	From   string `json:"from,omitempty"`
	Count  *int   `json:"count,omitempty"`
}

// problems prints problems; the error is that they were refused.
func (d desk) problems(list *problem.List) error {
	if list == nil {
		return nil
	}
	if d.asJSON && list.Failed() {
		shape := struct {
			Format   int                   `json:"format"`
			Problems []present.ProblemJSON `json:"problems"`
		}{1, present.ProblemsJSONOf(list)}
		if err := printJSON(d.Out, shape); err != nil {
			return stop{code: exitFailed, err: err}
		}
	} else {
		printProblems(d.Err, list, present.Imperial)
	}
	return d.verdictOf(list)
}

// verdictOf turns problems into an exit code; what was not there has its own.
func (d desk) verdictOf(list *problem.List) error {
	err := verdict(d.World, list, ReckonOptions{JSON: d.asJSON && !notThere(list)})
	if err != nil && notThere(list) {
		return d.ended(exitNotFound, "not-found", "")
	}
	return err
}

func notThere(list *problem.List) bool {
	for _, p := range list.All() {
		if p.Code == "document.none" || p.Code == "device.none" {
			return true
		}
	}
	return false
}

// ended ends a command; with --json the last thing on the standard error says how.
func (d desk) ended(code int, slug, text string) error {
	if text != "" {
		fmt.Fprintf(d.Err, "sley: %s\n", text)
	}
	if d.asJSON {
		_ = json.NewEncoder(d.Err).Encode(present.TroubleJSON{Exit: code, Slug: slug})
	}
	return stop{code: code, slug: slug}
}

// troubleExits are the exit codes of trouble with a book; any other is 1.
var troubleExits = map[string]int{
	record.Missing: exitMissing, record.InUse: exitInUse, record.Newer: exitNewer, record.NotFound: exitNotFound,
}

// troubled says why something could not be done.
func (d desk) troubled(err error) error {
	var s stop
	switch {
	case err == nil:
		return nil
	case errors.As(err, &s) && s.err != nil && d.asJSON && s.code != exitUsage:
		return d.ended(s.code, s.slug, s.Error())
	case errors.As(err, &s):
		return err
	}
	if errors.Is(err, context.Canceled) {
		return d.ended(exitCancelled, "cancelled", present.BrokenOff())
	}
	says, do := present.Trouble(err)
	if do != "" {
		says += "\nfix: " + do
	}
	var t *record.Trouble
	if !errors.As(err, &t) {
		return d.ended(exitFailed, "failed", says)
	}
	code, ok := troubleExits[t.Code]
	if !ok {
		code = exitFailed
	}
	return d.ended(code, t.Code, says)
}

// task is one command on the book.
type task struct {
	use, short, long, example string
	least, most               int // how many arguments; most below 0: any
	complete                  cobra.CompletionFunc
	flags                     func(*cobra.Command)
	run                       func(ctx context.Context, d desk, args []string) error
}

// command makes the command of a task.
func (t task) command(w World) *cobra.Command {
	d := desk{World: w}
	cmd := &cobra.Command{
		Use: t.use, Short: t.short, Long: t.short + "." + t.long + "\n" + exitHelp, Example: t.example,
		Args: t.args(), ValidArgsFunction: t.complete,
		RunE: func(_ *cobra.Command, args []string) error { return t.done(d, args) },
	}
	if t.complete == nil {
		cmd.ValidArgsFunction = cobra.NoFileCompletions
	}
	cmd.Flags().BoolVar(&d.asJSON, "json", false, "print JSON (docs/json.md)")
	if t.flags != nil {
		t.flags(cmd)
	}
	return cmd
}

// done does a task until it is done or broken off.
func (t task) done(d desk, args []string) error {
	ctx, free := d.Books.Interrupt()
	defer free()
	err := t.run(ctx, d, args)
	var s stop
	if ctx.Err() != nil && err != nil && !errors.As(err, &s) {
		err = ctx.Err() // whatever the book made of it
	}
	return d.troubled(err)
}

func (t task) args() cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < t.least || t.most >= 0 && len(args) > t.most {
			return fmt.Errorf("it is written: sley book %s (%d given)", t.use, len(args))
		}
		return nil
	}
}
