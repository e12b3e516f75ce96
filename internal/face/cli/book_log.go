package cli

import (
	"context"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// The words by which a sitting is begun and ended; what is entered then is that she sat
// down, and a sitting.
const (
	sitDown = "sit-down"
	standUp = "stand-up"
)

// logTasks are about the log of a warp.
func logTasks(w World) []task {
	var note, to string
	var pick int
	warp := places(w.name(record.Warp))
	return []task{
		{
			use: "log WARP [note TEXT|sitting MINUTES|sit-down|stand-up [MINUTES]|broken|advanced|photograph FILE|finished]", least: 1, most: -1,
			short: "Show the log of a warp, or write into it",
			long: " --note adds a word to\nany entry, of a broken end which it was, of a photograph what it shows; --pick says where\n" +
				"it was, and is otherwise the pick that is woven. Of a sitting that is begun and ended here\nthe minutes are counted.",
			example: "  sley book log \"Galley towels\"\n  sley book log \"Galley towels\" note \"end 212 crossed behind the reed\"\n" +
				"  sley book log \"Galley towels\" sitting 45\n  sley book log \"Galley towels\" sit-down\n  sley book log \"Galley towels\" stand-up\n" +
				"  sley book log \"Galley towels\" broken --note \"end 212\" --pick 104\n  sley book log \"Galley towels\" advanced\n" +
				"  sley book log \"Galley towels\" photograph fell.jpg --note \"the first border\"",
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&note, "note", "", "what is to be remembered of it")
				c.Flags().IntVar(&pick, "pick", 0, "the pick that it was at, from the start of the warp")
			},
			complete: logged(w),
			run: func(ctx context.Context, d desk, args []string) error {
				if len(args) == 1 {
					return runLog(ctx, d, args[0])
				}
				return d.logged(ctx, args, note, pick)
			},
		},
		{
			use: "hours WARP", least: 1, most: 1, short: "Tell the hours at the loom so far, and how many are to go",
			long:    " To go is at your own\npace, where sittings that were begun and ended here tell it, else at that of [work] in the\nplan.",
			example: "  sley book hours \"Galley towels\"", complete: warp, run: runHours,
		},
		{
			use: "photographs WARP [--to FOLDER]", least: 1, most: 1, short: "List the photographs of a warp, or write them to a folder",
			long:    " The folder is not there\nyet, or empty.",
			example: "  sley book photographs \"Galley towels\"\n  sley book photographs \"Galley towels\" --to pictures", complete: warp,
			flags: func(c *cobra.Command) {
				c.Flags().StringVar(&to, "to", "", "the folder to write them to")
				must(c.MarkFlagDirname("to"))
			},
			run: func(ctx context.Context, d desk, args []string) error { return d.photographs(ctx, args[0], to) },
		},
	}
}

// logged completes what is written into a log: the warp, what happened, and of a
// photograph the file.
func logged(w World) cobra.CompletionFunc {
	usual := places(w.name(record.Warp), fixed([]string{
		record.Noted, record.Sat, sitDown, standUp, record.Broken, record.Advanced, record.Pictured, record.Finished,
	}))
	return func(c *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
		if len(args) == 2 && args[1] == record.Pictured {
			return []string{"jpg", "jpeg", "png", "gif", "webp"}, cobra.ShellCompDirectiveFilterFileExt
		}
		return usual(c, args, begun)
	}
}

// runLog shows everything that was entered of a warp.
func runLog(ctx context.Context, d desk, name string) error {
	return d.lookAt(ctx, record.Warp, name, func(o *app.OpenBook, card app.Card) error {
		var all []record.Event
		for _, topic := range []record.Topic{record.Log, record.Progress, record.Measurement} {
			events, err := o.Events(ctx, card.ID, topic)
			if err != nil {
				return err
			}
			all = append(all, events...)
		}
		return d.say(present.LogText(card, all), present.EventsJSONOf(card.ID, all, nil))
	})
}

// logged writes an entry: args are the warp, what happened, and what belongs to that.
func (d desk) logged(ctx context.Context, args []string, note string, pick int) error {
	rest := strings.Join(args[2:], " ")
	h := app.Happened{Window: present.CommandLine, What: args[1], Note: note, Place: pick, Typed: rest}
	var file []byte
	if h.What == record.Pictured {
		read, err := d.ReadFile(rest)
		if err != nil {
			return stop{exitNotFound, "not-found", err}
		}
		file = read
	}
	return d.onDocument(ctx, "warp", args[0], func(o *app.OpenBook, card app.Card) error {
		h.Document = card.ID
		e, list, err := enter(ctx, o, h, file)
		return d.entered(e, list, err)
	})
}

// enter writes an entry by what it says that happened.
func enter(ctx context.Context, o *app.OpenBook, h app.Happened, file []byte) (record.Event, *problem.List, error) {
	minutes, err := strconv.Atoi(h.Typed)
	if err != nil && h.Typed != "" {
		minutes = -1 // refused, with what was typed
	}
	switch h.What {
	case record.Pictured:
		return o.Photographed(ctx, h, file)
	case sitDown:
		h.Note = joined(h.Typed, h.Note)
		return o.SitDown(ctx, h)
	case standUp:
		return o.StandUp(ctx, h, minutes)
	case record.Sat:
		return o.Logged(ctx, h, minutes)
	}
	h.Note = joined(h.Typed, h.Note)
	return o.Logged(ctx, h, 0)
}

// joined is what was typed behind an entry and its note, one below the other.
func joined(typed, note string) string { return strings.Trim(typed+"\n"+note, "\n") }

func runHours(ctx context.Context, d desk, args []string) error {
	return d.lookAt(ctx, record.Warp, args[0], func(o *app.OpenBook, card app.Card) error {
		h, err := o.Hours(ctx, card.ID)
		if err != nil {
			return err
		}
		return d.say(present.HoursText(h), present.HoursJSONOf(h))
	})
}

// photographs lists the photographs of a warp, or writes them to a folder.
func (d desk) photographs(ctx context.Context, name, to string) error {
	return d.lookAt(ctx, record.Warp, name, func(o *app.OpenBook, card app.Card) error {
		all, err := o.Photographs(ctx, card.ID)
		if err != nil {
			return err
		}
		var files []string
		if to != "" {
			err = d.WriteFolder(to, func(put Put) error {
				files, err = writtenPhotographs(ctx, o, all, to, put)
				return err
			})
		}
		if err != nil {
			return err
		}
		return d.say(present.PhotographsText(all, files), present.PhotographsJSONOf(card.ID, all, files))
	})
}

// writtenPhotographs writes photographs in their order, and gives where they will be.
func writtenPhotographs(ctx context.Context, o *app.OpenBook, all []app.PhotographOf, to string, put Put) ([]string, error) {
	var files []string
	for i, one := range all {
		p, err := o.Photograph(ctx, one.ID)
		if err != nil {
			return nil, err
		}
		name := fmt.Sprintf("%03d", i+1)
		if one.Place > 0 {
			name += fmt.Sprintf("-pick-%d", one.Place)
		}
		name += map[string]string{"image/jpeg": ".jpg", "image/png": ".png"}[p.Kind]
		if err := put(name, p.Body); err != nil {
			return nil, err
		}
		files = append(files, filepath.Join(to, name))
	}
	return files, nil
}
