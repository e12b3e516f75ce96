package app_test

import (
	"context"
	"encoding/json"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sley/examples"
	"sley/internal/app"
	"sley/internal/trade/record"
)

// names gives the names of a list.
func names(t *testing.T, s *app.Studio, q record.Query) []string {
	t.Helper()
	if q.Most == 0 {
		q.Most = 100
	}
	cards, _, err := s.List(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, c := range cards {
		out = append(out, c.Name)
	}
	return out
}

var listTests = []struct {
	what string
	q    record.Query
	want []string
}{
	{"looms", record.Query{Kind: record.Loom}, []string{"countermarch, 120 cm", "table loom, 60 cm"}},
	{"words, by their beginnings", record.Query{Kind: record.Yarn, Words: "cott blu"}, []string{"cottolin, harbour blue"}},
	{"words of a plan", record.Query{Kind: record.Warp, Words: "ketch"}, []string{"Galley towels"}},
	{"on two shafts", record.Query{Kind: record.Draft, MostShafts: 2}, []string{"Plain weave"}},
	{"of a weave", record.Query{Kind: record.Draft, Weave: "twill"}, []string{"Twill, two and two"}},
	{"of short floats", record.Query{Kind: record.Draft, MostFloat: 1}, []string{"Plain weave"}},
	{"on four treadles, floats of two", record.Query{Kind: record.Draft, MostTreadles: 4, MostFloat: 2}, []string{"Broken twill", "Plain weave", "Twill, two and two"}},
	{"removed", record.Query{Kind: record.Draft, Removed: true}, nil},
	{"nothing of the kind", record.Query{Kind: record.Warp, Words: "curtain towels"}, nil},
}

func TestList(t *testing.T) {
	s := withDemo(t)
	for _, test := range listTests {
		if got := names(t, s, test.q); !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.what, got, test.want)
		}
	}
}

// A list is read on from where it ended, in the order people expect.
func TestListInPages(t *testing.T) {
	s := openStudio(t)
	want := []string{"Äpfel", "apple", "warp 2", "warp 9", "warp 10", "Zwirn"}
	for _, i := range []int{4, 0, 5, 2, 1, 3} {
		addYarn(t, s, want[i])
	}
	var got []string
	q := record.Query{Kind: record.Yarn, Most: 2}
	for {
		cards, total, err := s.List(t.Context(), q)
		if err != nil || total != len(want) {
			t.Fatal(total, err)
		}
		if len(cards) == 0 {
			break
		}
		for _, c := range cards {
			got = append(got, c.Name)
		}
		last := cards[len(cards)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
	if !slices.Equal(got, want) {
		t.Errorf("the order is %q", got)
	}
}

// What a list shows follows every change.
func TestCardsFollowTheDocument(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	ends := func() string {
		for _, n := range card(t, s, warp.ID).Figures {
			if n.ID == "ends.wound" {
				return n.Is.String()
			}
		}
		return ""
	}
	first := ends()
	save(t, s, warp.ID, left, "warp.sett=30 epi")
	if first == "" || ends() == first {
		t.Errorf("ends were %q and are %q", first, ends())
	}
	save(t, s, warp.ID, left, "warp.sett=30")
	if c := card(t, s, warp.ID); c.Facts.Errors != 1 || len(c.Figures) != 0 {
		t.Errorf("with an error it has %+v and %d figures", c.Facts, len(c.Figures))
	}
	step{left, "undo", "", ""}.do(t, s, warp.ID)
	if c := card(t, s, warp.ID); c.Facts.Errors != 0 || c.Facts.Of != c.Version || ends() == "" {
		t.Errorf("undone it has %+v", c.Facts)
	}
}

// The figures of a yarn are in the units that its count was typed in.
func TestUnitsOfYarns(t *testing.T) {
	s := openStudio(t)
	for count, metric := range map[string]bool{"8/2 Ne": false, "Nm 8/2": true, "60 tex": true, "2400 m/kg": true, "3360 yd/lb": false, "": false} {
		if c := addYarn(t, s, "white", "count="+count); c.Units.Metric != metric {
			t.Errorf("of a yarn of %q they are metric: %v", count, c.Units.Metric)
		}
	}
}

// Facts of a large draft are left for later, and found then.
func TestRefresh(t *testing.T) {
	s := openStudio(t)
	id := addLargeDraft(t, s)
	if c := card(t, s, id); c.Facts.Of == c.Version {
		t.Error("the facts of a large draft were found while the weaver waited")
	}
	watched, stop := s.Watch()
	defer stop()
	if n, err := s.Refresh(t.Context()); n != 1 || err != nil {
		t.Errorf("refreshed %d, %v", n, err)
	}
	if got := told(watched); !slices.Equal(got, []string{"draft 1 2 facts "}) {
		t.Errorf("told %q", got)
	}
	if c := card(t, s, id); c.Facts.Of != 2 || c.Facts.Ends != 8*160 || c.Facts.Weave == "" {
		t.Errorf("found %+v", c.Facts)
	}
	if n, err := s.Refresh(t.Context()); n != 0 || err != nil {
		t.Errorf("again %d, %v", n, err)
	}
}

// addLargeDraft is a draft that is edited to be large: its facts are not of its version.
func addLargeDraft(t *testing.T, s *app.Studio) record.ID {
	t.Helper()
	id := addRosepath(t, s)
	d, list := app.ReadDraft(app.Source{Name: "rosepath.wif", Text: shown(t, s, id).Text})
	if d == nil {
		t.Fatal(codesOf(list))
	}
	large, err := app.ChangeDraft(d, []string{"ends-times=160", "picks-times=160"})
	if err != nil {
		t.Fatal(err)
	}
	said, _ := json.Marshal(string(app.WriteDraft(large)))
	saved, err := s.Save(t.Context(), app.Edit{ID: id, Base: 1, Window: left, Sets: []app.Set{{Path: "wif", Value: said}}})
	mustSaved(t, saved, err)
	return id
}

func TestDraftsWithoutAName(t *testing.T) {
	s := openStudio(t)
	text := textOf(t, s, addRosepath(t, s))
	for title, want := range map[string]string{"": "my rose path", "\x01\x02": "my rose path", "  Rose  ": "Rose"} {
		named := strings.NewReplacer(
			"[CONTENTS]\r\n", "[CONTENTS]\r\nTEXT=true\r\n", "[WEAVING]\r\n", "[TEXT]\r\nTitle="+title+"\r\n\r\n[WEAVING]\r\n",
		).Replace(text)
		saved, err := s.AddDraft(t.Context(), left, app.Source{Name: "my-rose_path.wif", Text: []byte(named)})
		if err != nil || saved.Refused {
			t.Fatal(title, err, codesOf(saved.Problems))
		}
		if got := card(t, s, saved.ID).Name; got != want {
			t.Errorf("titled %q it is called %q, want %q", title, got, want)
		}
	}
}

// A plan without a name is called as its file; a plan with errors is refused whole.
func TestAddWarp(t *testing.T) {
	s := openStudio(t)
	nameless := strings.Replace(towels, "name = \"Towels\"\n", "", 1)
	for file, want := range map[string]string{"tea-towels_2.toml": "tea towels 2", `C:\plans\linen.toml`: "linen", "": "warp", ".toml": "warp"} {
		saved, err := s.AddWarp(t.Context(), left, app.Source{Name: file, Text: []byte(nameless)})
		mustSaved(t, saved, err)
		if got := card(t, s, saved.ID).Name; got != want {
			t.Errorf("of the file %q it is called %q, want %q", file, got, want)
		}
	}
	bad := strings.NewReplacer("20 epi", "20", "60 in", "60").Replace(towels)
	saved, err := s.AddWarp(t.Context(), left, app.Source{Name: "bad.toml", Text: []byte(bad)})
	if err != nil || !saved.Refused {
		t.Fatal(saved, err)
	}
	wantCodes(t, "bad", saved.Problems, "warp.sett density.no-unit", "pieces[0].length length.no-unit")
	pointing := towels + "[draft]\nwif = \"none.wif\"\n"
	saved, err = s.AddWarp(t.Context(), left, app.Source{Name: "p.toml", Text: []byte(pointing)})
	if err != nil || !saved.Refused {
		t.Fatal(saved, err)
	}
	wantCodes(t, "a draft that is not there", saved.Problems, "draft.wif draft.no-folder")
}

var addTests = []struct {
	what, name string
	pairs      []string
	loom       bool
	holds      string
	codes      []string
}{
	{"a yarn", "white", []string{"count=8/2 Ne", "fibre=cotton"}, false, `count = "8/2 Ne"`, nil},
	{"a yarn of which nothing is known", " handspun ", nil, false, "", nil},
	{"a yarn with all wrong", "", []string{"count=eight", "girth=3", "count.x=1"}, false, "", []string{"count count.number", "count.x path.through", "girth key.unknown", "name name.missing"}},
	{"a loom", "jack", []string{"shafts=4", "width=90 cm", "winding.peg=5 cm", "note=by the window"}, true, "shafts = 4", nil},
	{"a loom with all wrong", "jack\tloom", []string{"shafts=many", "winding.peg=5", "winding.girth=3"}, true, "", []string{
		"name name.control", "shafts value.kind", "winding.girth key.unknown", "winding.peg length.no-unit",
	}},
}

func TestAddToTheShelf(t *testing.T) {
	for _, test := range addTests {
		s := openStudio(t)
		add, kind := s.AddYarn, record.Yarn
		if test.loom {
			add, kind = s.AddLoom, record.Loom
		}
		saved, err := add(t.Context(), left, test.name, sets(t, test.pairs...))
		if err != nil || saved.Refused != (test.codes != nil) {
			t.Fatalf("%s: %q, %v", test.what, codesOf(saved.Problems), err)
		}
		wantCodes(t, test.what, saved.Problems, test.codes...)
		if test.codes != nil {
			if got := names(t, s, record.Query{Kind: kind}); got != nil {
				t.Errorf("%s: added were %q", test.what, got)
			}
			continue
		}
		mustHold(t, textOf(t, s, saved.ID), test.holds)
		if got := card(t, s, saved.ID).Name; got != strings.TrimSpace(test.name) {
			t.Errorf("%s is called %q", test.what, got)
		}
	}
}

func TestClearDemo(t *testing.T) {
	s := withDemo(t)
	mine := addYarn(t, s, "mine")
	counts, err := s.Counts(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	n, err := s.ClearDemo(t.Context(), left)
	if err != nil || n != counts.Demo || n == 0 {
		t.Errorf("removed %d of %d, %v", n, counts.Demo, err)
	}
	if counts, err = s.Counts(t.Context()); err != nil || counts.Demo != 0 || counts.Of[record.Yarn] != 1 || counts.Of[record.Warp] != 0 {
		t.Errorf("left are %+v, %v", counts, err)
	}
	if got := names(t, s, record.Query{Kind: record.Yarn}); !slices.Equal(got, []string{mine.Name}) {
		t.Errorf("left are %q", got)
	}
	if n, err = s.ClearDemo(t.Context(), left); n != 0 || err != nil {
		t.Errorf("again %d, %v", n, err)
	}
	step{left, "bring back", "", ""}.do(t, s, find(t, s, record.Warp, "Galley towels").ID)
}

func TestSettings(t *testing.T) {
	s := openStudio(t)
	if got, err := s.Setting(t.Context(), "units"); got != "" || err != nil {
		t.Errorf("unset it is %q, %v", got, err)
	}
	if err := s.Set(t.Context(), "units", "metric"); err != nil {
		t.Fatal(err)
	}
	if err := s.RememberPort(t.Context(), "7070"); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Setting(t.Context(), "units"); got != "metric" || err != nil {
		t.Errorf("set it is %q, %v", got, err)
	}
	if got, err := s.RememberedPort(t.Context()); got != "7070" || err != nil {
		t.Errorf("the port is %q, %v", got, err)
	}
	if err := s.Set(t.Context(), "units", ""); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Setting(t.Context(), "units"); got != "" || err != nil {
		t.Errorf("unset again it is %q, %v", got, err)
	}
}

// A book is made with the demo, held by one, peeked at by others, copied, checked and
// put back.
func TestOpening(t *testing.T) {
	dir := t.TempDir()
	asked := app.BookAsked{Path: filepath.Join(dir, "book.sley"), Now: clock(), NewID: numbered(), Program: "test", Demo: examples.Demo()}
	if _, err := app.Open(t.Context(), asked); !record.Is(err, record.Missing) {
		t.Fatalf("there is none yet: %v", err)
	}
	asked.Create = true
	o, err := app.Open(t.Context(), asked)
	if err != nil || !o.Fresh() || o.Path() != asked.Path || o.Program() != "test" {
		t.Fatal(o, err)
	}
	if counts, err := o.Counts(t.Context()); err != nil || counts.Demo == 0 {
		t.Errorf("the demo has %+v, %v", counts, err)
	}
	if err := o.Serving("http://localhost:7070", "token"); err != nil {
		t.Error(err)
	}
	_, err = app.Open(t.Context(), asked)
	if holder, held := app.InUse(err); !held || holder.Address != "http://localhost:7070" || holder.PID == 0 {
		t.Errorf("opened twice: %+v, %v", holder, err)
	}
	if holder, held := app.HolderOf(asked.Path); !held || holder.Token != "token" {
		t.Errorf("held by %+v", holder)
	}
	peeked(t, asked)
	kept(t, o, asked)
}

func peeked(t *testing.T, asked app.BookAsked) {
	t.Helper()
	p, err := app.Peek(t.Context(), asked)
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	if _, list, err := p.Named(t.Context(), record.Warp, "Galley towels"); err != nil || list.Len() > 0 {
		t.Errorf("peeked: %v, %v", codesOf(list), err)
	}
	if _, err := p.AddYarn(t.Context(), left, "white", nil); !record.Is(err, record.ReadOnly) {
		t.Errorf("changed by who peeks: %v", err)
	}
	if token := p.LeftToken(); token != "" {
		t.Errorf("who peeks has the token %q", token)
	}
}

func kept(t *testing.T, o *app.OpenBook, asked app.BookAsked) {
	t.Helper()
	copied := filepath.Join(filepath.Dir(asked.Path), "copy.sley")
	today, err := o.KeepToday(t.Context())
	if err != nil || !slices.Contains(app.Copies(asked.Path, noon), today) {
		t.Errorf("today's copy is %q, %v", today, err)
	}
	yarn := addYarn(t, o.Studio, "white")
	for _, err := range []error{o.Copy(t.Context(), copied), o.Check(t.Context()), app.CheckFile(t.Context(), copied)} {
		if err != nil {
			t.Error(err)
		}
	}
	if _, _, err := app.Restore(t.Context(), asked.Path, copied, noon); !record.Is(err, record.InUse) {
		t.Errorf("put back under who has it: %v", err)
	}
	if err := o.Close(); err != nil {
		t.Fatal(err)
	}
	aside, used, err := app.Restore(t.Context(), asked.Path, "", noon)
	if err != nil || used != today || aside == "" {
		t.Errorf("put back %q, aside %q: %v", used, aside, err)
	}
	o, err = app.Open(context.Background(), asked)
	if err != nil {
		t.Fatal(err)
	}
	defer o.Close()
	if _, err := o.Show(t.Context(), yarn.ID); !record.Is(err, record.NotFound) || o.Fresh() {
		t.Errorf("the copy of the morning has the yarn of the evening: %v", err)
	}
}

func TestUsualPlace(t *testing.T) {
	env := func(name string) string {
		return map[string]string{"HOME": "/home/anna", "LOCALAPPDATA": `C:\Users\Anna\AppData\Local`}[name]
	}
	for _, system := range []string{"linux", "darwin", "windows"} {
		if place, err := app.UsualPlace(system, env); err != nil || filepath.Ext(place) != ".sley" {
			t.Errorf("on %s it is %q, %v", system, place, err)
		}
	}
	if place, err := app.UsualPlace("linux", func(string) string { return "" }); err == nil {
		t.Errorf("without a home it is %q", place)
	}
}
