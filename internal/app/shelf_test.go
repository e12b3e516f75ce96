package app_test

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// use copies something of the shelf into a warp.
func use(t *testing.T, s *app.Studio, warp record.ID, part string, kind record.Kind, name string) app.Saved {
	t.Helper()
	saved, err := s.Use(t.Context(), edit(t, s, warp, left), part, find(t, s, kind, name).ID)
	return mustSaved(t, saved, err)
}

// whence says where a part of a warp came from.
func whence(t *testing.T, s *app.Studio, warp record.ID, part string) *app.Whence {
	t.Helper()
	all, err := s.WhereFrom(t.Context(), warp)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range all {
		if w.Part == part {
			return &w
		}
	}
	return nil
}

var shelfTests = []struct {
	part   string
	kind   record.Kind
	name   string
	change string // of the shelf, afterwards
	holds  string // in the warp, then
	newer  string // in the warp, when the newer is taken
	mine   string // set in the warp, then put on the shelf
	there  string // on the shelf, then
	again  string // set in the warp once more
}{
	{
		"yarns.white", record.Yarn, "cotton 10/2, sand", "count=12/2 Ne",
		`count = "10/2 Ne"`, `count = "12/2 Ne"`, "yarns.white.count=14/2 Ne", `count = "14/2 Ne"`, "yarns.white.count=16/2 Ne",
	},
	{
		"loom", record.Loom, "table loom, 60 cm", "shafts=6",
		`name = "table loom, 60 cm"`, "shafts = 6", "loom.shafts=7", "shafts = 7", "loom.shafts=8",
	},
}

// The way of a part from the shelf into a warp, anew, and back: what happens on the shelf
// never changes a warp of itself.
func TestTheWayOfAPart(t *testing.T) {
	for _, test := range shelfTests {
		t.Run(test.part, func(t *testing.T) {
			s := withDemo(t)
			warp := addWarp(t, s, towels)
			use(t, s, warp.ID, test.part, test.kind, test.name)
			mustHold(t, textOf(t, s, warp.ID), test.holds)
			on := find(t, s, test.kind, test.name)
			if w := whence(t, s, warp.ID, test.part); w == nil || w.Card.ID != on.ID || w.Newer || w.Version != on.Version {
				t.Errorf("it came from %+v", w)
			}
			before := textOf(t, s, warp.ID)
			save(t, s, on.ID, right, test.change)
			if now := textOf(t, s, warp.ID); now != before {
				t.Errorf("the shelf was edited, and the warp is\n%s\nno more\n%s", now, before)
			}
			if w := whence(t, s, warp.ID, test.part); !w.Newer {
				t.Error("that the shelf is newer is not said")
			}
			saved, err := s.TakeNewer(t.Context(), edit(t, s, warp.ID, left), test.part)
			mustSaved(t, saved, err)
			mustHold(t, textOf(t, s, warp.ID), test.newer)
			save(t, s, warp.ID, left, test.mine)
			saved, err = s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), test.part, "")
			if mustSaved(t, saved, err); saved.ID != on.ID || saved.Version != on.Version+2 {
				t.Errorf("it is document %d, version %d", saved.ID, saved.Version)
			}
			mustHold(t, textOf(t, s, on.ID), test.there)
			if w := whence(t, s, warp.ID, test.part); w.Newer || w.Version != on.Version+2 {
				t.Errorf("put there, it came from %+v", w)
			}
			save(t, s, on.ID, right, "note=the shelf's own")
			save(t, s, warp.ID, left, test.again)
			saved, err = s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), test.part, "")
			if err != nil || saved.Conflict == nil || saved.Conflict.Base != on.Version+2 {
				t.Errorf("over the shelf's own newer version: %+v, %v", saved, err)
			}
			saved, err = s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), test.part, "something new")
			if mustSaved(t, saved, err); saved.ID == on.ID || card(t, s, saved.ID).Name != "something new" {
				t.Errorf("as something new it is document %d", saved.ID)
			}
		})
	}
}

func mustHold(t *testing.T, text, part string) {
	t.Helper()
	if !strings.Contains(text, part) {
		t.Errorf("%q is not in\n%s", part, text)
	}
}

// A draft of the shelf comes in the place of what a plan said of threading and treadling.
func TestUseOfADraft(t *testing.T) {
	s := withDemo(t)
	warp := addWarp(t, s, withThreading(threaded))
	use(t, s, warp.ID, "draft", record.Draft, "Rosepath")
	text := textOf(t, s, warp.ID)
	mustHold(t, text, `wif = "rosepath.wif"`)
	if strings.Contains(text, "threading") || strings.Contains(text, "treadling") {
		t.Errorf("two drafts are in\n%s", text)
	}
	from, _, err := s.WarpSource(t.Context(), warp.ID)
	if err != nil {
		t.Fatal(err)
	}
	d, list := app.ReadDraft(from)
	if d == nil || len(d.Draft.Threading) == 0 {
		t.Fatal(codesOf(list))
	}
	saved, err := s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), "draft", "Rosepath for towels")
	if mustSaved(t, saved, err); card(t, s, saved.ID).Facts.Weave == "" {
		t.Errorf("on the shelf it is %+v", card(t, s, saved.ID).Facts)
	}
}

// The draft that a plan says in its own words is put on the shelf as an interchange text.
func TestADraftOfAPlanOnTheShelf(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, withThreading(threaded))
	saved, err := s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), "draft", "")
	mustSaved(t, saved, err)
	mustHold(t, textOf(t, s, saved.ID), "[THREADING]")
	if w := whence(t, s, warp.ID, "draft"); w == nil || w.Card.ID != saved.ID {
		t.Errorf("it came from %+v", w)
	}
}

func TestPartsThatAreNone(t *testing.T) {
	s := withDemo(t)
	warp := addWarp(t, s, towels)
	yarn := find(t, s, record.Yarn, "cotton 10/2, sand")
	for part, code := range map[string]string{
		"white": "shelf.part", "yarns": "shelf.part", "yarns.": "shelf.part", "yarns.a.b": "shelf.part", "yarns[0]": "shelf.part",
		"loom": "shelf.part", "draft": "shelf.part", "pieces[0]": "shelf.part", "": "shelf.part",
	} {
		saved, err := s.Use(t.Context(), edit(t, s, warp.ID, left), part, yarn.ID)
		wantRefused(t, "use as "+part, s, warp.ID, 1, saved, err, part+" "+code)
	}
	for _, part := range []string{"white", "yarns", "yarns.green", "yarns.a.b", "pieces[0]", "", "loom"} {
		saved, err := s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), part, "new")
		wantRefused(t, "put "+part, s, warp.ID, 1, saved, err, part+" shelf.part")
		saved, err = s.TakeNewer(t.Context(), edit(t, s, warp.ID, left), part)
		wantRefused(t, "take newer "+part, s, warp.ID, 1, saved, err, part+" shelf.no-origin")
	}
	saved, err := s.PutOnShelf(t.Context(), edit(t, s, warp.ID, left), "yarns.white", " \t")
	wantRefused(t, "without a name", s, warp.ID, 1, saved, err, "name name.missing")
	if _, err := s.Use(t.Context(), edit(t, s, yarn.ID, left), "yarns.white", yarn.ID); !record.Is(err, record.NotFound) {
		t.Errorf("into a yarn: %v", err)
	}
	if _, err := s.Use(t.Context(), edit(t, s, warp.ID, left), "yarns.white", 99); !record.Is(err, record.NotFound) {
		t.Errorf("what is not there: %v", err)
	}
	parts, err := s.Parts(t.Context(), warp.ID)
	if want := []string{"loom", "draft", "yarns.white"}; err != nil || !slices.Equal(parts, want) {
		t.Errorf("the parts are %v, %v", parts, err)
	}
}

// On an older version of the warp nothing is copied.
func TestUseOnAnOlderVersion(t *testing.T) {
	s := withDemo(t)
	warp := addWarp(t, s, towels)
	late := edit(t, s, warp.ID, right)
	save(t, s, warp.ID, left, "note=a")
	saved, err := s.Use(t.Context(), late, "yarns.white", find(t, s, record.Yarn, "cotton 10/2, sand").ID)
	if err != nil || saved.Conflict == nil || card(t, s, warp.ID).Version != 2 {
		t.Errorf("got %+v, %v", saved, err)
	}
}

// A plan's own stock of a yarn stays when the newer yarn is taken.
func TestTakeNewerKeepsTheStockOfThePlan(t *testing.T) {
	s := withDemo(t)
	warp := addWarp(t, s, towels)
	use(t, s, warp.ID, "yarns.white", record.Yarn, "cotton 10/2, sand")
	save(t, s, warp.ID, left, "yarns.white.stock=300 g")
	save(t, s, find(t, s, record.Yarn, "cotton 10/2, sand").ID, left, "count=12/2 Ne")
	saved, err := s.TakeNewer(t.Context(), edit(t, s, warp.ID, left), "yarns.white")
	mustSaved(t, saved, err)
	mustHold(t, textOf(t, s, warp.ID), `stock = "300 g"`)
	mustHold(t, textOf(t, s, warp.ID), `count = "12/2 Ne"`)
}
