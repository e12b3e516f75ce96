package app

import (
	"bytes"
	"context"
	"encoding/json"
	"path"
	"strings"
	"unicode"
	"unicode/utf8"

	"sley/internal/edge/planfile"
	"sley/internal/edge/wif"
	"sley/internal/trade/draft"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Saved is a document that has a new version, or why it has none.
type Saved struct {
	ID      record.ID
	Version int
	// Problems of the document as it stands now; with Refused, those for which nothing
	// was written.
	Problems *problem.List
	Refused  bool
	Conflict *Conflict // somebody else wrote since; nothing was written
}

func refused(list *problem.List) Saved { return Saved{Problems: list, Refused: true} }

// fresh is a document that is to be added.
type fresh struct {
	kind   record.Kind
	body   *body
	window string
	demo   bool
	mark   string // empty: a new one
}

// add writes the first version of a document.
func (s *Studio) add(w record.Writer, f fresh) (record.ID, []Changed, error) {
	card := f.body.card(f.kind, 1, record.StagePlanned(f.kind))
	d := record.Document{Kind: f.kind, Mark: f.mark, Demo: f.demo, Card: card}
	if d.Mark == "" {
		d.Mark = s.newID()
	}
	v := record.Version{At: s.moment(), Window: f.window, Act: record.Add, Body: f.body.bytes()}
	id, err := w.Add(d, v)
	return id, []Changed{{f.kind, id, 1, string(record.Add), f.window}}, err
}

// keep adds a document in a change of its own.
func (s *Studio) keep(ctx context.Context, f fresh) (Saved, error) {
	var id record.ID
	err := s.write(ctx, func(w record.Writer) (changed []Changed, err error) {
		id, changed, err = s.add(w, f)
		return changed, err
	})
	return Saved{ID: id, Version: 1, Problems: f.body.problems(f.kind)}, err
}

// AddWarp takes a plan file into the book, with the draft it points to. It is refused
// when the plan has errors. A plan without a name is called as its file is.
func (s *Studio) AddWarp(ctx context.Context, window string, from Source) (Saved, error) {
	b, list := warpBody(from)
	if list.Failed() {
		return refused(list), nil
	}
	saved, err := s.keep(ctx, fresh{kind: record.Warp, body: b, window: window})
	if err == nil {
		saved.Problems = list
	}
	return saved, err
}

// warpBody makes the body of a plan file.
func warpBody(from Source) (*body, *problem.List) {
	tree, list := planfile.ReadText(from.Name, from.Text)
	if tree == nil {
		return nil, list
	}
	_, list = ReckonPlan(from, "", false)
	if list.Failed() {
		return nil, list
	}
	b := &body{Source: &text{from.Name, string(from.Text)}}
	name, _ := tree.Get("name")
	if said, _ := name.Text(); strings.TrimSpace(said) == "" {
		mustSet(tree, "name", planfile.TextValue(calledAs(from.Name, "warp")))
	}
	checkName(textAt(tree, "name"), "name", list)
	if file := textAt(tree, "draft.wif"); file != "" && from.Beside != nil {
		content, err := from.Beside(file)
		if err != nil {
			list.Fail("draft.unreadable", "draft.wif", file, nil)
			return nil, list
		}
		b.WIF = &text{path.Base(strings.ReplaceAll(file, `\`, "/")), string(content)}
	}
	b.Plan = tree.JSON()
	return b, list
}

// textAt is the text at a path, or nothing.
func textAt(tree *planfile.Document, at string) string {
	v, _ := tree.Get(at)
	said, _ := v.Text()
	return said
}

// mustSet writes a value where nothing can be in the way.
func mustSet(tree *planfile.Document, at string, v planfile.Value) {
	if err := tree.Set(at, v); err != nil {
		panic("internal error: " + err.Error())
	}
}

// calledAs is a name for what a file holds that says none.
func calledAs(file, otherwise string) string {
	name := path.Base(strings.ReplaceAll(file, `\`, "/"))
	name = strings.TrimSuffix(name, path.Ext(name))
	name = strings.TrimSpace(strings.Map(printable, strings.NewReplacer("-", " ", "_", " ").Replace(name)))
	if name == "" || name == "." {
		return otherwise
	}
	return clipped(name)
}

func printable(c rune) rune {
	if unicode.IsControl(c) {
		return -1
	}
	return c
}

func clipped(name string) string {
	if letters := []rune(name); len(letters) > record.MostName {
		return string(letters[:record.MostName])
	}
	return name
}

// checkName says what is wrong with what a document is called.
func checkName(name, at string, list *problem.List) {
	switch {
	case strings.TrimSpace(name) == "":
		list.Fail("name.missing", at, name, nil)
	case utf8.RuneCountInString(name) > record.MostName:
		list.Fail("name.long", at, clipped(name), problem.Args{"most": record.MostName})
	case strings.Map(printable, name) != name:
		list.Fail("name.control", at, strings.Map(printable, name), nil)
	}
}

// Set is a value to be written at a path of a document: JSON, or nothing to take away
// what stands there.
type Set struct {
	Path  string          `json:"path"`
	Value json.RawMessage `json:"value,omitempty"`
}

// ReadSet reads path=value as a command line has it: the value as a plan file writes
// it, or any text as it stands; an empty value takes away what stands at the path.
func ReadSet(said string) (Set, bool) {
	at, value, ok := planfile.CutSetting(said)
	if !ok || at == "" {
		return Set{}, false
	}
	if value == "" {
		return Set{Path: at}, true
	}
	return Set{at, planfile.ParseValue(value).JSON()}, true
}

// AddYarn puts a yarn on the shelf: its name and what is known of it, by the keys that
// [yarns.NAME] has in a plan file.
func (s *Studio) AddYarn(ctx context.Context, window, name string, sets []Set) (Saved, error) {
	return s.addOf(ctx, window, record.Yarn, &body{Name: strings.TrimSpace(name)}, sets)
}

// AddLoom puts a loom into the book, by the keys of [loom]; winding.pegs, winding.mill
// and so on are those of its board.
func (s *Studio) AddLoom(ctx context.Context, window, name string, sets []Set) (Saved, error) {
	said, err := json.Marshal(strings.TrimSpace(name))
	if err != nil {
		return Saved{}, err
	}
	return s.addOf(ctx, window, record.Loom, &body{}, append([]Set{{"name", said}}, sets...))
}

func (s *Studio) addOf(ctx context.Context, window string, kind record.Kind, b *body, sets []Set) (Saved, error) {
	list := b.apply(kind, sets)
	checkName(b.name(kind), "name", list)
	list.Append(b.check(kind))
	if list.Failed() {
		return refused(list), nil
	}
	return s.keep(ctx, fresh{kind: kind, body: b, window: window})
}

// AddDraft puts a draft on the shelf: an interchange text, or the draft of a plan file.
func (s *Studio) AddDraft(ctx context.Context, window string, from Source) (Saved, error) {
	d, list := ReadDraft(from)
	if d == nil {
		return refused(list), nil
	}
	b := &body{WIF: &text{interchangeName(from.Name), string(d.asText(from))}}
	b.Name = clipped(strings.TrimSpace(strings.Map(printable, d.Draft.Name)))
	if b.Name == "" {
		b.Name = calledAs(from.Name, "draft")
	}
	saved, err := s.keep(ctx, fresh{kind: record.Draft, body: b, window: window})
	if err == nil {
		saved.Problems = list
	}
	return saved, err
}

// asText is the text a draft came from, or one that says it.
func (d *Drafted) asText(from Source) []byte {
	if d.file != nil && utf8.Valid(from.Text) {
		return bytes.TrimPrefix(from.Text, []byte("\ufeff"))
	}
	if d.file == nil && d.unit != nil {
		return interchange(d.unit)
	}
	return WriteDraft(d)
}

// interchange writes a draft made here.
func interchange(d *draft.Draft) []byte { return wif.Encode(wif.FromDraft(d)) }

func interchangeName(file string) string {
	name := path.Base(strings.ReplaceAll(file, `\`, "/"))
	return strings.TrimSuffix(name, path.Ext(name)) + ".wif"
}
