package app

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"
	"unicode"

	"sley/internal/trade/record"
)

// ExportFormat is the version of the folders that this program writes and the newest it
// reads. Folders of version 1 have no photographs.
const ExportFormat = 2

// The files of an exported folder.
const (
	indexFile  = "book.json"
	eventsFile = "events.json"
	frozenFile = "frozen.json"
)

// index is book.json: what is in the folder.
type index struct {
	Format    int               `json:"format"`
	Program   string            `json:"program"`
	Documents []indexed         `json:"documents"`
	Settings  map[string]string `json:"settings"`

	Photographs []exportedPhoto `json:"photographs,omitempty"`
}

// indexed is a document of the folder.
type indexed struct {
	Mark    string      `json:"mark"`
	Kind    record.Kind `json:"kind"`
	Name    string      `json:"name"`
	Demo    bool        `json:"demo,omitempty"`
	Removed bool        `json:"removed,omitempty"`
	Made    time.Time   `json:"made"`
	File    string      `json:"file"`            // as it stands, to be read and edited
	Draft   string      `json:"draft,omitempty"` // of a warp: the draft it points to
	History string      `json:"history"`         // every version
}

// told is a version in a history: its body whole, or what of it differs from the version
// before, between what both begin and end with.
type told struct {
	Number  int        `json:"number"`
	At      time.Time  `json:"at"`
	Window  string     `json:"window"`
	Act     record.Act `json:"act"`
	State   int        `json:"state"`
	Removed bool       `json:"removed,omitempty"`
	Whole   *string    `json:"whole,omitempty"`
	Begins  int        `json:"begins,omitempty"` // bytes that both begin with
	Ends    int        `json:"ends,omitempty"`   // bytes that both end with
	Between *string    `json:"between,omitempty"`
}

// leftOut are the settings that belong to a place, not to a book.
var leftOut = []string{settingPort, settingBeside, settingBesidePort}

// Export gives everything the book holds as a folder of files that people can read: plan
// files, interchange texts, and JSON for the rest; write is called for each, by its name
// in the folder. Import makes the same book of it. The same book gives the same bytes.
func (s *Studio) Export(ctx context.Context, write func(name string, data []byte) error) error {
	return s.read(ctx, func(r record.Reader) error {
		all, err := r.All()
		if err != nil {
			return err
		}
		x := &exporting{r: r, write: write, marks: map[record.ID]string{}, used: map[string]bool{}}
		x.index = index{Format: ExportFormat, Program: s.program, Documents: []indexed{}}
		for _, d := range all {
			if err := x.document(d); err != nil {
				return err
			}
		}
		return x.rest()
	})
}

type exporting struct {
	r     record.Reader
	write func(name string, data []byte) error
	index index
	marks map[record.ID]string
	used  map[string]bool // names of files
}

func (x *exporting) document(d record.Document) error {
	x.marks[d.ID] = d.Mark
	data, err := x.r.Body(d.ID, d.Version)
	if err != nil {
		return err
	}
	b, err := openBody(data)
	if err != nil {
		return err
	}
	entry := indexed{
		Mark: d.Mark, Kind: d.Kind, Name: d.Name, Demo: d.Demo, Removed: d.Removed, Made: d.Made,
		History: "history/" + d.Mark + ".json",
	}
	name := x.name(d)
	for file, data := range b.files(d.Kind, name) {
		if err := x.write(file, data); err != nil {
			return err
		}
	}
	entry.File = name + ending(d.Kind)
	if d.Kind == record.Warp && b.WIF != nil {
		entry.Draft = name + ".wif"
	}
	x.index.Documents = append(x.index.Documents, entry)
	return x.history(d, entry.History)
}

// ending is how the readable file of a document ends.
func ending(kind record.Kind) string {
	return map[record.Kind]string{record.Warp: ".toml", record.Draft: ".wif"}[kind] + map[record.Kind]string{
		record.Yarn: ".json", record.Loom: ".json",
	}[kind]
}

// files are the readable files of a document, by name.
func (b *body) files(kind record.Kind, name string) map[string][]byte {
	switch kind {
	case record.Warp:
		out := map[string][]byte{}
		if tree, err := b.plan(); err == nil {
			out[name+".toml"] = tree.Text()
		}
		if b.WIF != nil {
			out[name+".wif"] = []byte(b.WIF.Text)
		}
		return out
	case record.Draft:
		if b.WIF == nil {
			return nil
		}
		return map[string][]byte{name + ".wif": []byte(b.WIF.Text)}
	}
	data, _ := json.MarshalIndent(b, "", "  ") // it was read from JSON
	return map[string][]byte{name + ".json": append(data, '\n')}
}

// name is the name of a document's file without its ending: readable, and used once.
func (x *exporting) name(d record.Document) string {
	base := string(d.Kind) + "s/" + slug(d.Name)
	name := base
	for i := 2; x.used[name]; i++ {
		name = fmt.Sprintf("%s-%d", base, i)
	}
	x.used[name] = true
	return name
}

// longestSlug is how many letters of a name its file has.
const longestSlug = 60

// slug is a name as every system lets a file be called.
func slug(name string) string {
	var out strings.Builder
	for _, c := range strings.ToLower(name) {
		switch {
		case c < unicode.MaxASCII && (unicode.IsLetter(c) || unicode.IsDigit(c)):
			out.WriteRune(c)
		case !strings.HasSuffix(out.String(), "-"):
			out.WriteByte('-')
		}
		if out.Len() >= longestSlug {
			break
		}
	}
	text := strings.Trim(out.String(), "-")
	switch {
	case text == "":
		return "unnamed"
	case slices.Contains(devices, text):
		return text + "-"
	}
	return text
}

// devices are names that some systems keep for themselves, whatever the ending.
var devices = []string{
	"con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9",
}

// exportedEvent is an event with marks in the place of numbers, which are the book's own.
type exportedEvent struct {
	record.Event
	Document string `json:"document"`
	Warp     string `json:"warp,omitempty"`
}

type exportedFrozen struct {
	Warp     string          `json:"warp"`
	Version  int             `json:"version"`
	At       time.Time       `json:"at"`
	Event    string          `json:"event"`
	Program  string          `json:"program"`
	Defaults string          `json:"defaults"`
	Body     json.RawMessage `json:"body"`
	Nodes    json.RawMessage `json:"nodes"`
}

// exportedPhoto is a photograph of the folder.
type exportedPhoto struct {
	Event string `json:"event"`
	Kind  string `json:"kind"`
	Wide  int    `json:"wide"`
	High  int    `json:"high"`
	File  string `json:"file"`
}

// rest writes what belongs to no single document.
func (x *exporting) rest() error {
	events, err := x.r.AllEvents()
	if err != nil {
		return err
	}
	if err := x.photographs(events); err != nil {
		return err
	}
	told := []exportedEvent{}
	for _, e := range events {
		e.Seq = 0
		told = append(told, exportedEvent{e, x.marks[e.Document], x.marks[e.Warp]})
	}
	frozen, err := x.r.AllFrozen()
	if err != nil {
		return err
	}
	kept := []exportedFrozen{}
	for _, f := range frozen {
		kept = append(kept, exportedFrozen{x.marks[f.Warp], f.Version, f.At, f.Event, f.Program, f.Defaults, f.Body, f.Nodes})
	}
	if x.index.Settings, err = x.r.Settings(); err != nil {
		return err
	}
	maps.DeleteFunc(x.index.Settings, func(name, _ string) bool { return slices.Contains(leftOut, name) })
	for _, file := range []struct {
		name string
		data any
	}{{eventsFile, told}, {frozenFile, kept}, {indexFile, x.index}} {
		if err := x.json(file.name, file.data); err != nil {
			return err
		}
	}
	return nil
}

// photographs writes those that were not taken back.
func (x *exporting) photographs(events []record.Event) error {
	for _, e := range record.Standing(events) {
		if e.What != record.Pictured {
			continue
		}
		p, err := x.r.Photograph(e.ID)
		if err != nil {
			return err
		}
		told := exportedPhoto{e.ID, p.Kind, p.Wide, p.High, "photographs/" + e.ID + pictureEndings[p.Kind]}
		if err := x.write(told.File, p.Body); err != nil {
			return err
		}
		x.index.Photographs = append(x.index.Photographs, told)
	}
	return nil
}

// pictureEndings are how the files of photographs end.
var pictureEndings = map[string]string{"image/jpeg": ".jpg", "image/png": ".png"}

func (x *exporting) json(name string, value any) error {
	data, err := json.MarshalIndent(value, "", " ")
	if err != nil {
		return err
	}
	return x.write(name, append(data, '\n'))
}
