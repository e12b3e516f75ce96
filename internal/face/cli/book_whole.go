package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// wholeTasks are those of the book as a whole.
func wholeTasks() []task {
	var demo, yes bool
	return []task{
		{
			use: "new", short: "Make a book where there is none",
			long:    " It is empty, or begins with the\ndemo of an invented studio, to have something to look at.",
			example: "  sley book new\n  sley book new --demo --book try.sley",
			flags: func(c *cobra.Command) {
				c.Flags().BoolVar(&demo, "demo", false, "begin with the demo; sley book clear-demo takes it out again")
			},
			run: func(ctx context.Context, d desk, _ []string) error { return d.newBook(ctx, demo) },
		},
		{
			use: "where", short: "Tell where the book is, who has it, and which copies there are",
			example: "  sley book where\n  sley book where --json",
			run:     func(_ context.Context, d desk, _ []string) error { return d.where() },
		},
		{
			use: "check [FILE]", most: 1, short: "Read all of the book, or of a copy, and tell whether it is whole",
			long: " A book that\nanother sley has is checked as it stands.", example: "  sley book check",
			complete: places(bookFiles),
			run:      runBookCheck,
		},
		{
			use: "copy FILE", least: 1, most: 1, short: "Write a whole copy of the book to a new file",
			long:    " A copy is a book itself, and\nis made safely while another sley has the book. Copying the file by other means is\nnot.",
			example: "  sley book copy saltmarsh.sley", complete: places(bookFiles),
			run: runBookCopy,
		},
		{
			use: "export FOLDER", least: 1, most: 1, short: "Write everything the book holds as files that people can read",
			long:    " Plan files,\ninterchange texts, and JSON for the rest, in a folder that is not there yet.",
			example: "  sley book export saltmarsh", complete: places(folders),
			run: runBookExport,
		},
		{
			use: "import FOLDER", least: 1, most: 1, short: "Take in a folder that was exported, with all that happened",
			long:    " What the book has is left\nas it is; files edited since become newer versions. When anything is wrong with the\nfolder nothing is written.",
			example: "  sley book import saltmarsh", complete: places(folders),
			run: runBookImport,
		},
		{
			use: "restore [COPY]", most: 1, short: "Put a copy in the place of the book; without one named, the newest that is whole",
			long:    "\nWhat stood there is moved aside. Without --yes it only tells what it would do.",
			example: "  sley book restore\n  sley book restore --yes", complete: places(bookFiles),
			flags: func(c *cobra.Command) { c.Flags().BoolVar(&yes, "yes", false, "do it") },
			run:   func(ctx context.Context, d desk, args []string) error { return d.restore(ctx, args, yes) },
		},
		{
			use: "clear-demo", short: "Remove what came with the demo",
			long: " Each document can be brought back.", example: "  sley book clear-demo",
			run: runClearDemo,
		},
	}
}

func bookFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"sley"}, cobra.ShellCompDirectiveFilterFileExt
}

func folders(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveFilterDirs
}

func (d desk) newBook(ctx context.Context, demo bool) error {
	path, err := d.bookPath()
	if err != nil {
		return err
	}
	asked := d.asked(path, true)
	if demo {
		asked.Demo = d.Books.Demo
	}
	if _, err := os.Lstat(path); err == nil {
		return &record.Trouble{Code: record.Exists, Path: path}
	}
	o, err := app.Open(ctx, asked)
	if err != nil {
		return err
	}
	if err := o.Close(); err != nil {
		return err
	}
	return d.say(present.MadeText(path), doneJSON{Format: 1, Path: path})
}

// whereJSON is the shape of where a book is.
type whereJSON struct {
	Format int      `json:"format"`
	Path   string   `json:"path"`
	There  bool     `json:"there"`
	Held   *heldBy  `json:"held,omitempty"`
	Copies []string `json:"copies"`
}

type heldBy struct {
	PID     int    `json:"pid"`
	Address string `json:"address,omitempty"`
}

func (d desk) where() error {
	path, err := d.bookPath()
	if err != nil {
		return err
	}
	_, err = os.Stat(path)
	shape := whereJSON{Format: 1, Path: path, There: err == nil, Copies: append([]string{}, app.Copies(path, d.Books.Now())...)}
	var held *app.Holder
	if holder, on := app.HolderOf(path); on {
		held, shape.Held = &holder, &heldBy{holder.PID, holder.Address}
	}
	return d.say(present.WhereText(path, shape.There, held, shape.Copies), shape)
}

func runBookCheck(ctx context.Context, d desk, args []string) error {
	if len(args) == 1 {
		if err := app.CheckFile(ctx, args[0]); err != nil {
			return err
		}
		return d.say(present.WholeText(args[0]), doneJSON{Format: 1, Path: args[0]})
	}
	return d.reading(ctx, func(o *app.OpenBook) error {
		if err := o.Check(ctx); err != nil {
			return err
		}
		return d.say(present.WholeText(o.Path()), doneJSON{Format: 1, Path: o.Path()})
	})
}

func runBookCopy(ctx context.Context, d desk, args []string) error {
	return d.reading(ctx, func(o *app.OpenBook) error {
		if err := o.Copy(ctx, args[0]); err != nil {
			return err
		}
		return d.say(present.CopiedText(args[0]), doneJSON{Format: 1, Path: args[0]})
	})
}

func runBookExport(ctx context.Context, d desk, args []string) error {
	n := 0
	err := d.reading(ctx, func(o *app.OpenBook) error {
		return d.WriteFolder(args[0], func(put Put) error {
			return o.Export(ctx, func(name string, data []byte) error {
				n++
				return put(name, data)
			})
		})
	})
	if err != nil {
		return err
	}
	return d.say(present.ExportedText(args[0], n), doneJSON{Format: 1, Path: args[0], Count: &n})
}

func runBookImport(ctx context.Context, d desk, args []string) error {
	files, closed, err := d.ReadFolder(args[0])
	if errors.Is(err, fs.ErrNotExist) {
		return stop{exitNotFound, "not-found", fmt.Errorf("there is no folder %s", args[0])}
	}
	if err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: args[0], Err: err}
	}
	err = d.changing(ctx, func(o *app.OpenBook) error {
		done, list, err := o.Import(ctx, present.CommandLine, files)
		if err != nil {
			return err
		}
		if err := d.problems(list); err != nil {
			return err
		}
		return d.say(present.ImportedText(done), importedJSON{
			1, done.Added, done.Updated, done.Same, done.Events, append([]string{}, done.Edited...),
		})
	})
	return errors.Join(err, closed())
}

// importedJSON is the shape of what an import did.
type importedJSON struct {
	Format  int      `json:"format"`
	Added   int      `json:"added"`
	Updated int      `json:"updated"`
	Same    int      `json:"same"`
	Events  int      `json:"events"`
	Edited  []string `json:"edited"`
}

// restore puts a copy back, or tells which it would be.
func (d desk) restore(ctx context.Context, args []string, yes bool) error {
	path, err := d.bookPath()
	if err != nil {
		return err
	}
	from := ""
	if len(args) == 1 {
		from = args[0]
	}
	if !yes {
		if from, err = toRestore(ctx, path, from, d.Books.Now()); err != nil {
			return err
		}
		return d.say(present.RestoreText(path, from), doneJSON{Format: 1, Path: path, From: from})
	}
	aside, from, err := app.Restore(ctx, path, from, d.Books.Now())
	if err != nil {
		return err
	}
	return d.say(present.RestoredText(path, from, aside), doneJSON{Format: 1, Path: path, From: from, Aside: aside})
}

// toRestore is the copy that would be put back: the one named, if it is whole, or the
// newest that is.
func toRestore(ctx context.Context, path, from string, now time.Time) (string, error) {
	if from != "" {
		return from, app.CheckFile(ctx, from)
	}
	for _, c := range app.Copies(path, now) {
		if app.CheckFile(ctx, c) == nil {
			return c, nil
		}
	}
	return "", stop{exitNotFound, "no-copy", errors.New(present.NoWholeCopy(path))}
}

func runClearDemo(ctx context.Context, d desk, _ []string) error {
	return d.changing(ctx, func(o *app.OpenBook) error {
		n, err := o.ClearDemo(ctx, present.CommandLine)
		if err != nil {
			return err
		}
		return d.say(present.ClearedText(n), doneJSON{Format: 1, Path: o.Path(), Count: &n})
	})
}
