package app_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// Before work began nothing is amended, woven, or frozen.
func TestBeforeTheStart(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	saved, err := s.Amend(t.Context(), edit(t, s, warp.ID, left, "ends=200"))
	wantRefused(t, "amend", s, warp.ID, 1, saved, err, " warp.not-started")
	list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID}, 20)
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "woven", list, " warp.not-started")
	if f, err := s.Frozen(t.Context(), warp.ID); f != nil || err != nil {
		t.Errorf("frozen: %v, %v", f, err)
	}
	if stage := card(t, s, warp.ID).Facts.Stage; stage != record.Planned {
		t.Errorf("the stage is %q", stage)
	}
}

func TestStart(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	save(t, s, warp.ID, left, "note=six")
	start(t, s, warp.ID)
	f, err := s.Frozen(t.Context(), warp.ID)
	if err != nil || f == nil || f.Version != 2 || f.Program != "test" || f.Defaults == "" || !strings.Contains(string(f.Body), `"note":"six"`) {
		t.Fatalf("frozen: %+v, %v", f, err)
	}
	var nodes []struct{ ID, Is string }
	if err := json.Unmarshal(f.Nodes, &nodes); err != nil || len(nodes) < 20 {
		t.Errorf("%d numbers are frozen, %v", len(nodes), err)
	}
	if now := shown(t, s, warp.ID); !now.Started || now.Facts.Stage != record.Begun || now.Version != 2 {
		t.Errorf("started %v, stage %q, version %d", now.Started, now.Facts.Stage, now.Version)
	}
	saved, err := s.Start(t.Context(), warp.ID, 2, right)
	wantRefused(t, "started twice", s, warp.ID, 2, saved, err, " warp.started")
}

// A plan with errors is not begun, nor what is no warp, nor what was removed.
func TestWhatIsNotStarted(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	save(t, s, warp.ID, left, "pieces[0].length=60", "warp.sett=2")
	saved, err := s.Start(t.Context(), warp.ID, 2, left)
	wantRefused(t, "a plan with errors", s, warp.ID, 2, saved, err, "pieces[0].length length.no-unit", "warp.sett density.no-unit")
	yarn := addYarn(t, s, "white")
	if _, err := s.Start(t.Context(), yarn.ID, 1, left); !record.Is(err, record.NotFound) {
		t.Errorf("a yarn: %v", err)
	}
	step{left, "remove", "", ""}.do(t, s, warp.ID)
	if saved, err := s.Start(t.Context(), warp.ID, 3, left); err != nil || saved.Conflict == nil || !saved.Conflict.Removed {
		t.Errorf("what was removed: %+v, %v", saved, err)
	}
}

// frozenEdits are what may not change once work began, by whatever way.
var frozenEdits = [][]string{
	{"warp.sett=22 epi"},
	{"pieces[0].length=50 in"},
	{"pieces[1].length=10 in"},
	{"yarns.white.count="},
	{"yarns.blue.count=8/2 Ne"},
	{"loom.shafts=4"},
	{"weave=plain"},
	{"sley="},
	{"girth=red"},
	{"find.what=warp.sett"},
	{"pieces[0].count=1"},
	{"note=six", "warp.sett=22 epi"},
	{"yarns.blue={}"},
	{"loom.reeds=[]"},
}

func TestNothingElseChangesAfterTheStart(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	save(t, s, warp.ID, left, "pieces[0].count=2")
	start(t, s, warp.ID)
	before := textOf(t, s, warp.ID)
	for _, pairs := range frozenEdits {
		e := edit(t, s, warp.ID, left, pairs...)
		if strings.HasSuffix(pairs[0], "={}") || strings.HasSuffix(pairs[0], "=[]") {
			e.Sets[0].Value = []byte(pairs[0][len(pairs[0])-2:])
		}
		saved, err := s.Save(t.Context(), e)
		if err != nil || !saved.Refused || saved.Problems.All()[0].Code != "warp.frozen" {
			t.Errorf("%q: refused %v %q, %v", pairs, saved.Refused, codesOf(saved.Problems), err)
		}
	}
	for what, do := range map[string]func() (app.Saved, error){
		"undo":   func() (app.Saved, error) { return s.Undo(t.Context(), warp.ID, 2, left) },
		"return": func() (app.Saved, error) { return s.Return(t.Context(), warp.ID, 2, left, 1) },
	} {
		saved, err := do()
		wantRefused(t, what, s, warp.ID, 2, saved, err, "pieces[0].count warp.frozen")
	}
	yarn := addYarn(t, s, "grey", "count=16/2 Ne")
	saved, err := s.Use(t.Context(), edit(t, s, warp.ID, left), "yarns.white", yarn.ID)
	wantRefused(t, "use", s, warp.ID, 2, saved, err, "yarns.white.count warp.frozen")
	if now := textOf(t, s, warp.ID); now != before {
		t.Errorf("the plan was\n%s\nand is\n%s", before, now)
	}
}

// Name, note and what was built may change; what sheets are made of is the plan that was
// frozen with the amendments.
func TestAmend(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	save(t, s, warp.ID, left, "note=six", "name=Galley towels")
	saved, err := s.Amend(t.Context(), edit(t, s, warp.ID, left, "ends=220"))
	mustSaved(t, saved, err)
	versions, err := s.History(t.Context(), warp.ID, 0, 2)
	if err != nil || versions[0].Act != record.Amend || versions[1].Act != record.Amend {
		t.Errorf("the history has %+v, %v", versions, err)
	}
	from, list, err := s.WarpSource(t.Context(), warp.ID)
	if err != nil || list.Len() > 0 {
		t.Fatal(err, codesOf(list))
	}
	result, list := app.ReckonPlan(from, "", false)
	if list.Failed() {
		t.Fatal(codesOf(list))
	}
	if n, _ := result.Node("ends.wound"); n.Is.String() != "220" {
		t.Errorf("the ends are %s", n.Is)
	}
	f, err := s.Frozen(t.Context(), warp.ID)
	if err != nil || strings.Contains(string(f.Body), "220") || strings.Contains(string(f.Body), "Galley") {
		t.Errorf("the frozen plan was changed: %s, %v", f.Body, err)
	}
	saved, err = s.Amend(t.Context(), edit(t, s, warp.ID, left, "ends=many", "girth=3"))
	wantRefused(t, "what cannot be", s, warp.ID, 3, saved, err, "built.ends value.kind", "built.girth key.unknown")
	step{left, "undo", "", ""}.do(t, s, warp.ID)
	if strings.Contains(textOf(t, s, warp.ID), "220") {
		t.Error("an amendment is not undone")
	}
}

// altered is a book whose frozen plans read otherwise.
type altered struct {
	record.Book
	frozen func([]record.Frozen) []record.Frozen
}

func (b altered) Read(ctx context.Context, do func(record.Reader) error) error {
	return b.Book.Read(ctx, func(r record.Reader) error { return do(alteredReader{r, b.frozen}) })
}

type alteredReader struct {
	record.Reader
	frozen func([]record.Frozen) []record.Frozen
}

func (r alteredReader) Frozen(id record.ID) ([]record.Frozen, error) {
	all, err := r.Reader.Frozen(id)
	return r.frozen(all), err
}

// A plan that is reckoned otherwise now than when work began warns of every number that
// differs, and of those that are gone.
func TestFrozenPlanThatReckonsOtherwise(t *testing.T) {
	file := openFile(t)
	s := app.NewStudio(file, clock(), numbered(), "test")
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	for _, test := range []struct {
		what   string
		nodes  string
		want   []string
		damage bool
	}{
		{"another number", `[{"id":"ends.wound","is":"199","kind":3}]`, []string{"ends.wound frozen.differs"}, false},
		{"a number there is no more", `[{"id":"ends.dyed","is":"1","kind":3}]`, []string{"ends.dyed frozen.differs"}, false},
		{"numbers that cannot be read", `{"ends":`, nil, true},
	} {
		other := app.NewStudio(altered{file, func(all []record.Frozen) []record.Frozen {
			all[0].Nodes = []byte(test.nodes)
			return all
		}}, clock(), numbered(), "test")
		_, list, err := other.WarpSource(t.Context(), warp.ID)
		if record.Is(err, record.Damaged) != test.damage || !test.damage && err != nil {
			t.Fatal(test.what, err)
		}
		wantCodes(t, test.what, list, test.want...)
		if list.Failed() {
			t.Errorf("%s: it is an error, and the sheets are not made", test.what)
		}
	}
	lost := app.NewStudio(altered{file, func([]record.Frozen) []record.Frozen { return nil }}, clock(), numbered(), "test")
	if _, _, err := lost.WarpSource(t.Context(), warp.ID); !record.Is(err, record.Damaged) {
		t.Errorf("a start without its plan: %v", err)
	}
	if _, list, err := s.WarpSource(t.Context(), warp.ID); err != nil || list.Len() > 0 {
		t.Errorf("as it is: %v, %v", codesOf(list), err)
	}
	if _, _, err := s.WarpSource(t.Context(), addYarn(t, s, "white").ID); !record.Is(err, record.NotFound) {
		t.Errorf("of a yarn: %v", err)
	}
}

// events gives what happened to a warp in a topic.
func events(t testing.TB, s *app.Studio, id record.ID, topic record.Topic) []record.Event {
	t.Helper()
	out, err := s.Events(context.Background(), id, topic)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A start is cancelled while nothing was woven, and can be done anew; what was woven
// holds it until that is cancelled.
func TestCancelOfAStart(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	first := events(t, s, warp.ID, record.Log)[0].ID
	if list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID, Window: left}, 340); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	if stage := card(t, s, warp.ID).Facts.Stage; stage != record.OnTheWay {
		t.Errorf("woven, the stage is %q", stage)
	}
	list, err := s.Cancel(t.Context(), left, first, "")
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "a start that was woven after", list, " start.woven")
	cancel(t, s, events(t, s, warp.ID, record.Progress)[0].ID)
	if stage := card(t, s, warp.ID).Facts.Stage; stage != record.Begun {
		t.Errorf("not woven after all, the stage is %q", stage)
	}
	cancel(t, s, first)
	if now := shown(t, s, warp.ID); now.Started || now.Facts.Stage != record.Planned {
		t.Errorf("cancelled: started %v, stage %q", now.Started, now.Facts.Stage)
	}
	save(t, s, warp.ID, left, "warp.sett=22 epi")
	start(t, s, warp.ID)
	f, err := s.Frozen(t.Context(), warp.ID)
	if err != nil || f.Version != 2 || !strings.Contains(string(f.Body), "22 epi") {
		t.Errorf("begun anew: %+v, %v", f, err)
	}
}

func cancel(t testing.TB, s *app.Studio, event string) {
	t.Helper()
	list, err := s.Cancel(context.Background(), left, event, "wrong")
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
}

// A warp on the loom is not removed; one that is done is.
func TestRemoveFromTheLoom(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	step{left, "remove", "", "warp.on-the-loom"}.do(t, s, warp.ID)
	if _, list, err := s.Logged(t.Context(), app.Happened{Document: warp.ID, What: record.Finished}, 0); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	if stage := card(t, s, warp.ID).Facts.Stage; stage != record.Done {
		t.Errorf("the stage is %q", stage)
	}
	step{left, "remove", "", ""}.do(t, s, warp.ID)
}

var logTests = []struct {
	what    string
	h       app.Happened
	minutes int
	codes   []string
}{
	{"a note", app.Happened{What: record.Noted, Note: "end 212 crossed"}, 0, nil},
	{"an empty note", app.Happened{What: record.Noted, Note: " \n"}, 0, []string{"note note.empty"}},
	{"a sitting", app.Happened{What: record.Sat}, 45, nil},
	{"a sitting of no time", app.Happened{What: record.Sat}, 0, []string{"minutes sitting.minutes"}},
	{"a sitting of days", app.Happened{What: record.Sat}, 24*60 + 1, []string{"minutes sitting.minutes"}},
	{"a broken end", app.Happened{What: record.Broken}, 0, nil},
	{"work began", app.Happened{What: record.Started}, 0, []string{"what event.what"}},
	{"something else", app.Happened{What: "dyed"}, 0, []string{"what event.what"}},
	{"of another topic", app.Happened{What: record.Bought}, 0, []string{"what event.what"}},
	{"a mark too short", app.Happened{ID: "short", What: "dyed"}, 0, []string{"id event.id", "what event.what"}},
}

func TestLogged(t *testing.T) {
	for _, test := range logTests {
		s := openStudio(t)
		warp := addWarp(t, s, towels)
		test.h.Document = warp.ID
		_, list, err := s.Logged(t.Context(), test.h, test.minutes)
		if err != nil {
			t.Fatal(test.what, err)
		}
		wantCodes(t, test.what, list, test.codes...)
		if n := len(events(t, s, warp.ID, record.Log)); (n == 1) != (test.codes == nil) {
			t.Errorf("%s: %d entries", test.what, n)
		}
	}
	s := openStudio(t)
	yarn := addYarn(t, s, "white")
	if _, _, err := s.Logged(t.Context(), app.Happened{Document: yarn.ID, What: record.Broken}, 0); !record.Is(err, record.NotFound) {
		t.Errorf("the log of a yarn: %v", err)
	}
}

// The same entry said twice counts once.
func TestTheSameEntryTwice(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	for range 2 {
		h := app.Happened{Document: warp.ID, ID: "the-same-entry", What: record.Noted, Note: "once"}
		if _, list, err := s.Logged(t.Context(), h, 0); err != nil || list.Failed() {
			t.Fatal(err, codesOf(list))
		}
		if list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID, ID: "the-same-picks"}, 20); err != nil || list.Failed() {
			t.Fatal(err, codesOf(list))
		}
	}
	if n, woven := len(events(t, s, warp.ID, record.Log)), len(events(t, s, warp.ID, record.Progress)); n != 2 || woven != 1 {
		t.Errorf("%d entries in the log, %d of what is woven", n, woven)
	}
}

func TestWove(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	start(t, s, warp.ID)
	for pick, want := range map[int][]string{0: {"pick progress.pick"}, -3: {"pick progress.pick"}, 10_000_001: {"pick progress.pick"}, 1: nil} {
		list, err := s.Wove(t.Context(), app.Happened{Document: warp.ID}, pick)
		if err != nil {
			t.Fatal(err)
		}
		wantCodes(t, "woven", list, want...)
	}
}

var measureTests = []struct {
	what, path, state, size string
	codes                   []string
}{
	{"a length", "pieces[0].length", "on the loom", "58 1/2 in", nil},
	{"a width", "pieces[0].width", "at the fell", "24 cm", nil},
	{"a width in a state of lengths", "pieces[0].width", "on the loom", "24 cm", []string{"state measurement.state"}},
	{"nothing of the plan", "pieces[3].length", "finished", "24 cm", []string{"path measurement.path"}},
	{"a sett", "warp.sett", "finished", "24 cm", []string{"path measurement.path"}},
	{"no unit", "pieces[0].length", "finished", "24", []string{"size length.no-unit"}},
	{"nothing", "pieces[0].length", "finished", "0 cm", []string{"size measurement.nothing"}},
	{"all wrong", "girth", "wet", "long", []string{"path measurement.path", "size number.missing", "state measurement.state"}},
}

func TestMeasured(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, towels)
	n := 0
	for _, test := range measureTests {
		_, list, err := s.Measured(t.Context(), app.Happened{Document: warp.ID, Typed: test.size}, test.path, test.state)
		if err != nil {
			t.Fatal(test.what, err)
		}
		wantCodes(t, test.what, list, test.codes...)
		if test.codes == nil {
			n++
		}
	}
	found := events(t, s, warp.ID, record.Measurement)
	if len(found) != n || found[0].Typed != "58 1/2 in" || found[0].Path != "pieces[0].length" || found[0].State != "on the loom" {
		t.Errorf("entered were %+v", found)
	}
	can, err := s.Measurable(t.Context(), warp.ID)
	if want := []string{"pieces[0].length", "pieces[0].width"}; err != nil || !slices.Equal(can, want) {
		t.Errorf("what can be measured is %v, %v", can, err)
	}
}
