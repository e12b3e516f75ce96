package app_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// saves are edits of the plan of towels: what stands then, and what is said.
var saves = []struct {
	what         string
	pairs        []string
	holds, lacks []string // parts of the text that it has then, and has not
	codes        []string // of the document as it stands, or why it is refused
	refused      bool
}{
	{"one value", []string{"warp.sett=22 epi"}, []string{`sett = "22 epi"`}, []string{"20 epi"}, nil, false},
	{"several at once", []string{"note=six", "pieces[0].count=6"}, []string{`note = "six"`, "count = 6"}, nil, nil, false},
	{"a new piece", []string{"pieces[1].length=10 in", "pieces[1].name=sample"}, []string{`name = "sample"`}, nil, nil, false},
	{"taken away", []string{"yarns.white.count="}, nil, []string{"8/2 Ne"}, nil, false},
	{"half-typed, kept and told", []string{"pieces[0].length=60"}, []string{"length = 60\n"}, nil, []string{"pieces[0].length length.no-unit"}, false},
	{"half-typed twice", []string{"pieces[0].length=60 i", "warp.sett=2"}, []string{`length = "60 i"`, "sett = 2\n"}, nil, []string{
		"pieces[0].length length.unknown-unit", "warp.sett density.no-unit",
	}, false},
	{"an unknown key is kept and told", []string{"girth=red"}, []string{`girth = "red"`}, nil, []string{"girth key.unknown"}, false},
	{"no path", []string{"pieces[=1"}, nil, nil, []string{"pieces[ path.syntax"}, true},
	{"beyond the end of a list", []string{"pieces[9].count=3"}, nil, nil, []string{"pieces[9].count path.index"}, true},
	{"through a value", []string{"name.first=Anna"}, nil, nil, []string{"name.first path.through"}, true},
	{"all that is wrong, and nothing of what is right", []string{"note=six", "pieces[9].count=3", "a..b=1", "name="}, nil, []string{"six"}, []string{
		"a..b path.syntax", "name name.missing", "pieces[9].count path.index",
	}, true},
	{"no name", []string{"name="}, nil, nil, []string{"name name.missing"}, true},
	{"a name of spaces", []string{`name="  "`}, nil, nil, []string{"name name.missing"}, true},
	{"a name that goes on", []string{"name=" + strings.Repeat("å", record.MostName+1)}, nil, nil, []string{"name name.long"}, true},
	{"the longest name", []string{"name=" + strings.Repeat("å", record.MostName)}, []string{strings.Repeat("å", record.MostName)}, nil, nil, false},
	{"a name with what cannot be seen", []string{`name="Tow\u0007els"`}, nil, nil, []string{"name name.control"}, true},
}

func TestSave(t *testing.T) {
	for _, test := range saves {
		t.Run(test.what, func(t *testing.T) {
			s := openStudio(t)
			warp := addWarp(t, s, towels)
			saved, err := s.Save(t.Context(), edit(t, s, warp.ID, left, test.pairs...))
			if test.refused {
				wantRefused(t, test.what, s, warp.ID, 1, saved, err, test.codes...)
			} else {
				mustSaved(t, saved, err)
				wantCodes(t, test.what, saved.Problems, test.codes...)
				wantCodes(t, "when it is opened", shown(t, s, warp.ID).Problems, test.codes...)
			}
			text := textOf(t, s, warp.ID)
			for _, part := range test.holds {
				if !strings.Contains(text, part) {
					t.Errorf("%q is not in\n%s", part, text)
				}
			}
			for _, part := range test.lacks {
				if strings.Contains(text, part) {
					t.Errorf("%q is in\n%s", part, text)
				}
			}
		})
	}
}

// What changes nothing makes no version.
func TestSaveOfTheSame(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	if saved := save(t, s, warp.ID, left, "warp.sett=20 epi"); saved.Version != 1 {
		t.Errorf("version %d", saved.Version)
	}
}

// Values of yarns, looms and drafts are set by their own paths; others are refused, with
// what there is.
func TestSaveOnShelves(t *testing.T) {
	s := withDemo(t)
	yarn := find(t, s, record.Yarn, "cottolin, white")
	save(t, s, yarn.ID, left, "name=cottolin, bleached", "count=3400 yd/lb", "note=six cones")
	if got := textOf(t, s, yarn.ID); !strings.Contains(got, `count = "3400 yd/lb"`) || card(t, s, yarn.ID).Name != "cottolin, bleached" {
		t.Errorf("%q is\n%s", card(t, s, yarn.ID).Name, got)
	}
	loom := find(t, s, record.Loom, "table loom, 60 cm")
	save(t, s, loom.ID, left, "name=table loom", "width=24 in", "winding.peg=5 cm")
	if got := textOf(t, s, loom.ID); !strings.Contains(got, `width = "24 in"`) || !strings.Contains(got, `peg = "5 cm"`) || card(t, s, loom.ID).Name != "table loom" {
		t.Errorf("%q is\n%s", card(t, s, loom.ID).Name, got)
	}
	draft := find(t, s, record.Draft, "Rosepath")
	before := textOf(t, s, draft.ID)
	saved, err := s.Save(t.Context(), edit(t, s, draft.ID, left, "wif=no draft", "threading=1 2"))
	wantRefused(t, "a draft that is none", s, draft.ID, 1, saved, err, "threading path.unknown", " wif.not-wif", " wif.outside")
	plain := find(t, s, record.Draft, "Plain weave")
	said, _ := json.Marshal(textOf(t, s, plain.ID))
	saved, err = s.Save(t.Context(), app.Edit{ID: draft.ID, Base: 1, Window: left, Sets: []app.Set{{Path: "wif", Value: said}}})
	mustSaved(t, saved, err)
	if now := card(t, s, draft.ID); textOf(t, s, draft.ID) == before || now.Facts.Shafts != 2 || now.Facts.Of != 2 {
		t.Errorf("the other draft is not there: %+v", now.Facts)
	}
}

// The same name twice: both are there, and by the name alone neither is meant.
func TestNamesTwice(t *testing.T) {
	s := openStudio(t)
	one, two := addYarn(t, s, "white"), addYarn(t, s, "White")
	for name, want := range map[string]record.ID{"white": one.ID, "White": two.ID, fmt.Sprint(two.ID): two.ID, " white ": one.ID} {
		if found := find(t, s, record.Yarn, name); found.ID != want {
			t.Errorf("%q is document %d, want %d", name, found.ID, want)
		}
	}
	card, list, err := s.Named(t.Context(), record.Yarn, "WHITE")
	if card != nil || err != nil {
		t.Fatal(card, err)
	}
	wantCodes(t, "WHITE", list, " document.several")
	if got := list.All()[0].Args["valid"]; !slices.Equal(got.([]string), []string{fmt.Sprint(one.ID), fmt.Sprint(two.ID)}) {
		t.Errorf("the numbers are %v", got)
	}
	step{left, "remove", "", ""}.do(t, s, one.ID)
	if found := find(t, s, record.Yarn, "white"); found.ID != two.ID {
		t.Errorf("white is document %d, and that was removed", found.ID)
	}
	step{left, "remove", "", ""}.do(t, s, two.ID)
	if found := find(t, s, record.Yarn, "White"); found.ID != two.ID {
		t.Errorf("what was removed is not found by its name: %d", found.ID)
	}
}

func TestNamedNone(t *testing.T) {
	s := withDemo(t)
	for name, near := range map[string]string{"Gally towels": "Galley towels", "Rosepath": "", "14": "", "": "", "&&&": ""} {
		card, list, err := s.Named(t.Context(), record.Warp, name)
		if card != nil || err != nil {
			t.Fatal(name, card, err)
		}
		wantCodes(t, name, list, " document.none")
		if got := list.All()[0].Args["near"]; got != near {
			t.Errorf("near %q is %q, want %q", name, got, near)
		}
	}
}

// conflictTests: what the left window and then the right one set, both on version 1.
var conflictTests = []struct {
	what        string
	left, right []string
	want        []string // path: base, theirs, mine; none: no conflict
	problems    []string
}{
	{"the same value otherwise", []string{"warp.sett=22 epi"}, []string{"warp.sett=24 epi"}, []string{"warp.sett: 20 epi, 22 epi, 24 epi"}, nil},
	{"other values", []string{"warp.sett=22 epi"}, []string{"note=six"}, []string{"note: , , six", "warp.sett: 20 epi, 22 epi, 20 epi"}, nil},
	{"one took away what the other set", []string{"yarns.white.count="}, []string{"yarns.white.count=16/2 Ne"}, []string{"yarns.white.count: 8/2 Ne, , 16/2 Ne", "yarns.white: , {}, "}, nil},
	{"half-typed", []string{"pieces[0].length=6"}, []string{"pieces[0].length=72"}, []string{"pieces[0].length: 60 in, 6, 72"}, nil},
	{"what cannot be set", []string{"note=a"}, []string{"pieces[9].count=1"}, []string{"note: , a, "}, []string{"pieces[9].count path.index"}},
	{"both did the same", []string{"warp.sett=22 epi", "note=six"}, []string{"note=six", "warp.sett=22 epi"}, nil, nil},
}

func TestConflicts(t *testing.T) {
	for _, test := range conflictTests {
		t.Run(test.what, func(t *testing.T) {
			s := openStudio(t)
			warp := addWarp(t, s, towels)
			late := edit(t, s, warp.ID, right, test.right...)
			save(t, s, warp.ID, left, test.left...)
			saved, err := s.Save(t.Context(), late)
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			if saved.Conflict != nil {
				for _, d := range saved.Conflict.Differences {
					got = append(got, fmt.Sprintf("%s: %s, %s, %s", d.Path, d.Base, d.Theirs, d.Mine))
				}
			}
			slices.Sort(got)
			if !slices.Equal(got, test.want) {
				t.Errorf("got %q, want %q", got, test.want)
			}
			wantCodes(t, "the late edit", saved.Problems, test.problems...)
			if now := card(t, s, warp.ID); now.Version != 2 {
				t.Errorf("version %d: something was written", now.Version)
			}
		})
	}
}

// Whoever edits what was removed meanwhile is told that it was.
func TestConflictWithRemove(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	late := edit(t, s, yarn.ID, right, "note=a")
	step{left, "remove", "", ""}.do(t, s, yarn.ID)
	saved, err := s.Save(t.Context(), late)
	if err != nil || saved.Conflict == nil || !saved.Conflict.Removed {
		t.Errorf("got %+v, %v", saved, err)
	}
}

func TestReadSet(t *testing.T) {
	for said, want := range map[string]string{
		"warp.sett=24 epi": `warp.sett "24 epi"`, " count = 6 ": "count 6", "note=": "note ", "note=a = b": `note "a = b"`,
		`name="24"`: `name "24"`, "loom.beams=true": "loom.beams true", "warp.sett": "", "=24": "",
	} {
		set, ok := app.ReadSet(said)
		got := ""
		if ok {
			got = set.Path + " " + string(set.Value)
		}
		if got != want {
			t.Errorf("%q is %q, want %q", said, got, want)
		}
	}
}
