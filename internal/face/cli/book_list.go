package cli

import (
	"context"
	"fmt"
	"strconv"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// listTasks look at what the book has.
func listTasks(w World) []task {
	var q record.Query
	var textOnly bool
	var version int
	return []task{
		{
			use: "list [warps|yarns|looms|drafts]", most: 1, short: "List what the book has, with its figures",
			long:    " --words finds by the\nbeginnings of words in names, notes, yarns, pieces; the other flags find drafts.",
			example: "  sley book list\n  sley book list drafts --shafts 4 --weave twill\n  sley book list warps --words towel --json",
			flags:   func(c *cobra.Command) { listFlags(c, &q) }, complete: places(words(func([]string) []string { return kindsWords() })),
			run: func(ctx context.Context, d desk, args []string) error { return d.list(ctx, args, q) },
		},
		{
			use: "show KIND NAME", least: 2, most: 2, short: "Show a document: its text, its problems, its stock, what of it came from the shelf",
			example: "  sley book show warp \"Galley towels\"\n  sley book show warp \"Galley towels\" --text > towels.toml",
			flags: func(c *cobra.Command) {
				c.Flags().BoolVar(&textOnly, "text", false, "the text alone, as a file has it")
				c.Flags().IntVar(&version, "version", 0, "the text of an earlier version")
			}, complete: w.kindAndName(false),
			run: func(ctx context.Context, d desk, args []string) error {
				return d.show(ctx, args, textOnly, version)
			},
		},
		{
			use: "history KIND NAME", least: 2, most: 2, short: "List the versions of a document, the newest first",
			example: "  sley book history warp \"Galley towels\"", complete: w.kindAndName(false),
			run: runHistory,
		},
	}
}

func listFlags(c *cobra.Command, q *record.Query) {
	f := c.Flags()
	f.StringVar(&q.Words, "words", "", "words, or their beginnings, that all must be found")
	f.BoolVar(&q.Removed, "removed", false, "those that were removed")
	f.IntVar(&q.MostShafts, "shafts", 0, "drafts on at most so many shafts")
	f.IntVar(&q.MostTreadles, "treadles", 0, "drafts of at most so many treadles")
	f.IntVar(&q.MostFloat, "float", 0, "drafts whose longest float is at most so many threads")
	f.StringVar(&q.Weave, "weave", "", "drafts of a weave, such as twill")
	f.StringVar(&q.Stage, "stage", "", "warps in hand, or finished: "+record.InHand+", "+record.Done)
	must(c.RegisterFlagCompletionFunc("weave", fixed(app.DraftWeaves())))
	must(c.RegisterFlagCompletionFunc("stage", fixed([]string{record.InHand, record.Done})))
}

func kindsWords() []string {
	var out []string
	for _, k := range record.Kinds() {
		out = append(out, present.KindNames(k))
	}
	return out
}

// kindAndName completes a kind, then a name of that kind.
func (w World) kindAndName(removed bool) cobra.CompletionFunc {
	return places(fixed(kindWords()), words(func(args []string) []string {
		kind, err := kindOf(args[0])
		if err != nil {
			return nil
		}
		return completing(w, namesOf(kind, removed))
	}))
}

// name completes a name of a kind.
func (w World) name(kind record.Kind) cobra.CompletionFunc {
	return words(func([]string) []string { return completing(w, namesOf(kind, false)) })
}

func (d desk) list(ctx context.Context, args []string, q record.Query) error {
	kinds, err := kindsAsked(args, q)
	if err != nil {
		return err
	}
	var text string
	var all []app.Card
	err = d.reading(ctx, func(o *app.OpenBook) error {
		for _, kind := range kinds {
			q.Kind = kind
			cards, err := allOf(ctx, o.Studio, q)
			if err != nil {
				return err
			}
			all = append(all, cards...)
			text += present.ListText(kind, cards)
		}
		return nil
	})
	if err != nil {
		return err
	}
	return d.say(text, present.BookListJSONOf(all))
}

// kindsAsked are the kinds to list: the one named, drafts where only those can be found
// so, or all.
func kindsAsked(args []string, q record.Query) ([]record.Kind, error) {
	drafts := q.MostShafts != 0 || q.MostTreadles != 0 || q.MostFloat != 0 || q.Weave != ""
	if q.Stage != "" && (drafts || q.Stage != record.InHand && q.Stage != record.Done || len(args) > 0 && args[0] != present.KindNames(record.Warp) && args[0] != present.KindName(record.Warp)) {
		return nil, stop{code: exitUsage, err: fmt.Errorf("--stage lists warps: %s or %s", record.InHand, record.Done)}
	}
	if q.Stage != "" {
		return []record.Kind{record.Warp}, nil
	}
	if min(q.MostShafts, q.MostTreadles, q.MostFloat) < 0 {
		return nil, stop{code: exitUsage, err: fmt.Errorf("--shafts, --treadles and --float take a number from 1")}
	}
	if len(args) == 0 && drafts {
		return []record.Kind{record.Draft}, nil
	}
	if len(args) == 0 {
		return record.Kinds(), nil
	}
	kind, err := kindOf(args[0])
	if err == nil && drafts && kind != record.Draft {
		err = stop{code: exitUsage, err: fmt.Errorf("--shafts, --treadles, --float and --weave find drafts; leave them out, or list drafts")}
	}
	return []record.Kind{kind}, err
}

func (d desk) show(ctx context.Context, args []string, textOnly bool, version int) error {
	kind, err := kindOf(args[0])
	if err != nil {
		return err
	}
	return d.lookAt(ctx, kind, args[1], func(o *app.OpenBook, card app.Card) error {
		if version != 0 {
			text, err := o.VersionText(ctx, card.ID, version)
			if err != nil {
				return err
			}
			return d.say(string(text), textJSON{1, card.ID, version, string(text)})
		}
		shown, err := o.Show(ctx, card.ID)
		if err != nil {
			return err
		}
		if textOnly && !d.asJSON {
			_, err := d.Out.Write(shown.Text)
			return err
		}
		if err := d.say(present.ShownText(shown), present.ShownJSONOf(shown)); err != nil || d.asJSON {
			return err
		}
		printProblems(d.Err, shown.Problems, present.Imperial)
		return nil
	})
}

// textJSON is the shape of the text of a version.
type textJSON struct {
	Format  int       `json:"format"`
	ID      record.ID `json:"id"`
	Version int       `json:"version"`
	Text    string    `json:"text"`
}

func runHistory(ctx context.Context, d desk, args []string) error {
	kind, err := kindOf(args[0])
	if err != nil {
		return err
	}
	return d.lookAt(ctx, kind, args[1], func(o *app.OpenBook, card app.Card) error {
		versions, err := historyOf(ctx, o.Studio, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.HistoryText(versions), present.HistoryJSONOf(card.ID, versions))
	})
}

// historyOf gives every version of a document.
func historyOf(ctx context.Context, s *app.Studio, id record.ID) ([]record.Version, error) {
	var out []record.Version
	for before := 0; before != 1; {
		page, err := s.History(ctx, id, before, 200)
		if err != nil || len(page) == 0 {
			return out, err
		}
		out = append(out, page...)
		before = page[len(page)-1].Number
	}
	return out, nil
}

// numberOf reads a number of a version.
func numberOf(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return 0, stop{code: exitUsage, err: fmt.Errorf("%q is no number of a version; sley book history lists them", text)}
	}
	return n, nil
}
