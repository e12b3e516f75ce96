package cli

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

func newBook(w World) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "book",
		Short: "Work in the book: warps, yarns, looms and drafts with all their versions",
		Long: `Work in the book, one file that holds warps, yarns, looms and drafts with all
their versions, the stock of yarns and the log of each warp (docs/book.md). A
document is named by its name or by its number. Nothing is ever written over:
what was changed can be undone, and what was removed brought back.

Where a command reads a plan or a draft, book:NAME is the one of that name in the
book, as in: sley sheet "book:Galley towels" -o towels.pdf
` + exitHelp,
		Example: "  sley book new --demo\n  sley book list\n  sley book show warp \"Galley towels\"",
		Args:    cobra.NoArgs,
	}
	for _, tasks := range [][]task{wholeTasks(), listTasks(w), editTasks(w), tryTasks(w), unitsTasks(), pictureTasks(w), stockTasks(w), shelfTasks(w), workTasks(w), logTasks(w), loomTasks(w), kindTasks(), againTasks(w), recordTasks(w), promisedTasks(w), deviceTasks(w)} {
		for _, t := range tasks {
			cmd.AddCommand(t.command(w))
		}
	}
	cmd.AddCommand(newBookAdd(w))
	return cmd
}

// kindOf reads a kind of document, one or several.
func kindOf(text string) (record.Kind, error) {
	for _, k := range record.Kinds() {
		if text == present.KindName(k) || text == present.KindNames(k) {
			return k, nil
		}
	}
	return "", stop{code: exitUsage, err: fmt.Errorf("%q is no kind of document; write %s", text, strings.Join(kindWords(), ", "))}
}

func kindWords() []string {
	var out []string
	for _, k := range record.Kinds() {
		out = append(out, present.KindName(k))
	}
	return out
}

// named gives the one document of a name or number.
func (d desk) named(ctx context.Context, s *app.Studio, kind record.Kind, name string) (*app.Card, error) {
	card, list, err := s.Named(ctx, kind, name)
	if err != nil {
		return nil, err
	}
	if card == nil {
		return nil, d.problems(list)
	}
	return card, nil
}

// onDocument does something that changes the document that a kind and a name say.
func (d desk) onDocument(ctx context.Context, kind, name string, do func(*app.OpenBook, app.Card) error) error {
	k, err := kindOf(kind)
	if err != nil {
		return err
	}
	return d.changing(ctx, func(o *app.OpenBook) error {
		card, err := d.named(ctx, o.Studio, k, name)
		if err != nil {
			return err
		}
		return do(o, *card)
	})
}

// lookAt does something with a document that changes nothing.
func (d desk) lookAt(ctx context.Context, kind record.Kind, name string, do func(*app.OpenBook, app.Card) error) error {
	return d.reading(ctx, func(o *app.OpenBook) error {
		card, err := d.named(ctx, o.Studio, kind, name)
		if err != nil {
			return err
		}
		return do(o, *card)
	})
}

// saved says what became of a document; before is the version it had, 0 where it is new.
func (d desk) saved(ctx context.Context, s *app.Studio, kind record.Kind, before int, done app.Saved) error {
	name := ""
	if !done.Refused && done.Conflict == nil {
		card, _, err := s.Named(ctx, kind, fmt.Sprint(done.ID))
		if err != nil {
			return err
		}
		name = card.Name
	}
	return d.savedAs(present.SavedText(kind, name, before, done), done)
}

// savedAs says what became of a document in words that are given.
func (d desk) savedAs(text string, done app.Saved) error {
	switch {
	case d.asJSON:
		if err := d.say("", present.SavedJSONOf(done)); err != nil {
			return err
		}
	case done.Conflict == nil && !done.Refused:
		fmt.Fprint(d.Out, text)
	}
	switch {
	case done.Conflict != nil:
		return d.ended(exitFailed, record.Changed, strings.TrimSuffix(present.ConflictText(done.Conflict), "\n"))
	case !d.asJSON && done.Problems != nil:
		printProblems(d.Err, done.Problems, present.Imperial)
	}
	if done.Refused {
		return d.verdictOf(done.Problems)
	}
	return nil
}

// setsOf reads KEY=VALUE pairs; the error is all that cannot be read.
func setsOf(pairs []string) ([]app.Set, error) {
	var out []app.Set
	var wrong []error
	for _, pair := range pairs {
		set, ok := app.ReadSet(pair)
		if !ok {
			wrong = append(wrong, fmt.Errorf("%q is no value: write its key, = and the value, as sett=\"24 epi\"; an empty value takes the key away", pair))
			continue
		}
		out = append(out, set)
	}
	if len(wrong) > 0 {
		return nil, stop{code: exitUsage, err: errors.Join(wrong...)}
	}
	return out, nil
}

// editOf is an edit of a document as it stands.
func editOf(c app.Card, sets []app.Set) app.Edit {
	return app.Edit{ID: c.ID, Base: c.Version, Window: present.CommandLine, Sets: sets}
}

// completing gives what a completion finds in the book, without changing anything and
// without a word when there is no book.
func completing(w World, find func(ctx context.Context, s *app.Studio) []string) []string {
	path, err := w.bookPath()
	if err != nil {
		return nil
	}
	o, err := app.Peek(context.Background(), w.asked(path, false))
	if err != nil {
		return nil
	}
	defer o.Close()
	return find(context.Background(), o.Studio)
}

// namesOf lists the names of a kind of document, for completion.
func namesOf(kind record.Kind, removed bool) func(context.Context, *app.Studio) []string {
	return func(ctx context.Context, s *app.Studio) []string {
		cards, _ := allOf(ctx, s, record.Query{Kind: kind, Removed: removed})
		var out []string
		for _, c := range cards {
			out = append(out, c.Name)
		}
		return out
	}
}

// allOf gives all documents that are asked for, however many.
func allOf(ctx context.Context, s *app.Studio, q record.Query) ([]app.Card, error) {
	var out []app.Card
	q.Most = 200
	for {
		cards, total, err := s.List(ctx, q)
		out = append(out, cards...)
		if err != nil || len(cards) == 0 || len(out) >= total {
			return out, err
		}
		last := cards[len(cards)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
}

// places complete arguments by where they stand.
func places(at ...cobra.CompletionFunc) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
		if len(args) >= len(at) {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return at[len(args)](cmd, args, typed)
	}
}

// words completes with words of its own.
func words(list func(args []string) []string) cobra.CompletionFunc {
	return func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		return slices.Clone(list(args)), cobra.ShellCompDirectiveNoFileComp
	}
}
