package cli

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"sley/internal/edge/photo/taken"
	"sley/internal/trade/record"
)

// before is what must be so before the examples of a command can be run: commands on a
// book that holds the demo.
var before = map[string][]string{
	"set":        {"draft convert book:Rosepath -o rosepath.wif"},
	"add draft":  {"draft convert book:Rosepath -o towels.wif"},
	"bring-back": {"book remove draft Rosepath"},
	"undo":       {`book set warp "Galley towels" note=x`},
	"redo":       {`book set warp "Galley towels" note=x`, `book undo warp "Galley towels"`},
	"amend":      {`book start "Galley towels"`},
	"woven":      {`book start "Galley towels"`},
	"choose":     {`book start "Galley towels"`},
	"reached":    {`book start "Galley towels"`},
	"tape":       {`book start "Galley towels"`},
	"weigh":      {`book start "Galley towels"`},
	"log":        {`book start "Galley towels"`},
	"import":     {"book export saltmarsh"},
	"restore":    {`book set warp "Galley towels" note=x`},
}

// TestExamplesOfBookCommandsRun: what the help shows can be typed as it stands.
func TestExamplesOfBookCommandsRun(t *testing.T) {
	for _, cmd := range leaves(find(t, "book")) {
		name := strings.TrimPrefix(cmd.CommandPath(), "sley book ")
		t.Run(name, func(t *testing.T) {
			if cmd.Example == "" || !strings.Contains(cmd.Long, "Exit codes") || cmd.Flags().Lookup("json") == nil {
				t.Fatal("it lacks an example, its exit codes or --json")
			}
			inDemo(t, name != "new")
			if name == "revoke" || name == "name-device" {
				paired(t, "kitchen tablet")
			}
			if err := os.WriteFile("fell.jpg", taken.JPEG(40, 30, 6), 0o644); err != nil {
				t.Fatal(err)
			}
			for _, line := range slices.Concat(before[name], strings.Split(cmd.Example, "\n")) {
				line, _, _ = strings.Cut(strings.TrimSpace(line), " > ")
				if name == "cancel" {
					line = strings.Replace(line, "4f2k9a7wq3m8xd5e", someEntry(t), 1)
				}
				run(t, line)
			}
		})
	}
}

// find gives a command of sley.
func find(t *testing.T, name string) *cobra.Command {
	t.Helper()
	cmd, _, err := newRoot(World{}).Find(strings.Fields(name))
	if err != nil {
		t.Fatal(err)
	}
	return cmd
}

// leaves are the commands below one that have none below them.
func leaves(cmd *cobra.Command) []*cobra.Command {
	if len(cmd.Commands()) == 0 {
		return []*cobra.Command{cmd}
	}
	var out []*cobra.Command
	for _, c := range cmd.Commands() {
		out = append(out, leaves(c)...)
	}
	return out
}

// inDemo goes to a folder of its own, with the examples beside and a book in the usual
// place, unless none is wanted.
func inDemo(t *testing.T, book bool) {
	t.Helper()
	dir := t.TempDir()
	examples, err := filepath.Abs("../../../examples")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(dir, "examples"), os.DirFS(examples)); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	t.Setenv("TICKS", filepath.Join(dir, ".ticks"))
	t.Setenv("XDG_DATA_HOME", filepath.Join(dir, "data"))
	if book {
		run(t, "book new --demo")
	}
}

// run runs one command line and gives what it printed.
func run(t *testing.T, line string) string {
	t.Helper()
	var out, errs bytes.Buffer
	args := split(strings.TrimPrefix(line, "sley "))
	w := World{
		In: strings.NewReader(""), Out: &out, Err: &errs, ReadFile: os.ReadFile, WriteFiles: WriteWhole,
		WriteFolder: WriteFolder, ReadFolder: ReadFolder, Books: testBooks(),
	}
	if code := Run(args, w); code != exitDone {
		t.Fatalf("%s\nended with %d\n%s%s", line, code, &out, &errs)
	}
	return out.String()
}

// split cuts a command line at spaces outside quotes.
func split(line string) []string {
	quoted := false
	parts := strings.FieldsFunc(line, func(c rune) bool {
		if c == '"' {
			quoted = !quoted
		}
		return c == ' ' && !quoted
	})
	for i := range parts {
		parts[i] = strings.ReplaceAll(parts[i], `"`, "")
	}
	return parts
}

// paired pairs a device with the book that is there, as the page would.
func paired(t *testing.T, name string) {
	t.Helper()
	if err := pairIn(World{Books: testBooks(), book: new(string)}, name); err != nil {
		t.Fatal(err)
	}
}

func pairIn(w World, name string) error {
	o, err := w.look(context.Background())
	if err != nil {
		return err
	}
	defer o.Close()
	offer, err := o.OfferPairing()
	if err != nil {
		return err
	}
	_, list, err := o.Pair(context.Background(), offer.Code, name)
	if err == nil && list.Failed() {
		err = fmt.Errorf("%v", list.All())
	}
	return err
}

// someEntry is the mark of an entry of the demo's stock.
func someEntry(t *testing.T) string {
	t.Helper()
	w := World{Books: testBooks(), book: new(string)}
	o, err := w.look(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	defer o.Close()
	card, _, err := o.Named(context.Background(), record.Yarn, "cottolin, white")
	if err != nil {
		t.Fatal(err)
	}
	stock, err := o.Stock(context.Background(), card.ID)
	if err != nil || len(stock.Events) == 0 {
		t.Fatal("no entries", err)
	}
	return stock.Events[0].ID
}

// manual is docs/book.md; each of its sections is typed on a desk of its own.
const manual = "../../../docs/book.md"

// beforeSection is what must be so before the commands of a section can be typed.
var beforeSection = map[string][]string{
	"What came of it":         {"book new --demo"},
	"When something is wrong": {"book new --demo", `book set warp "Galley towels" note=x`},
}

// TestTheManualRuns: what docs/book.md says can be typed as it stands, in its order.
func TestTheManualRuns(t *testing.T) {
	text, err := os.ReadFile(manual)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, section := range strings.Split(string(text), "\n## ")[1:] {
		title, body, _ := strings.Cut(section, "\n")
		lines := commandsIn(body)
		n += len(lines)
		if len(lines) == 0 {
			continue
		}
		t.Run(title, func(t *testing.T) {
			inDemo(t, false)
			for _, line := range slices.Concat(beforeSection[title], lines) {
				run(t, line)
			}
		})
	}
	if n < 20 {
		t.Errorf("only %d commands were found in %s", n, manual)
	}
}

// commandsIn gives the lines of the sh blocks of a page.
func commandsIn(text string) []string {
	var out []string
	for i, block := range strings.Split(text, "```") {
		if rest, ok := strings.CutPrefix(block, "sh\n"); ok && i%2 == 1 {
			out = append(out, strings.Split(strings.TrimSpace(rest), "\n")...)
		}
	}
	return out
}
