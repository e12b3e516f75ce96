package app_test

import (
	"context"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// hemmed is a plan whose pieces have hems and whose loom has a reed.
const hemmed = `sley = 1
name = "Hemmed"
warp.sett = "20 epi"

[[pieces]]
name = "towel"
count = 2
length = "28 in"
width = "10 in"
both = "hem 1 in + 1/4 in"

[yarns.white]
count = "8/2 Ne"

[loom]
reeds = ["10 dpi"]
`

func ctxOf() context.Context { return context.Background() }

func measure(t tb, s *app.Studio, id record.ID, path, state, size string) {
	t.Helper()
	_, list, err := s.Measured(ctxOf(), app.Happened{Document: id, Window: left, Typed: size}, path, state)
	if err != nil || list.Failed() {
		t.Fatal(path, state, size, err, list.All())
	}
}

func recordOf(t tb, s *app.Studio, id record.ID) *app.Record {
	t.Helper()
	r, err := s.Record(ctxOf(), id)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// learnt is what a record teaches, as KEY = TYPED.
func learnt(r *app.Record) string {
	var out []string
	for _, l := range r.Learnt {
		out = append(out, l.Key+" = "+l.Typed())
	}
	return strings.Join(out, "; ")
}

func TestRecord(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, hemmed)
	if r := recordOf(t, s, warp.ID); learnt(r) != "" || len(r.Sizes) != 2 || r.Sett == nil {
		t.Errorf("planned: %q, %d sizes", learnt(r), len(r.Sizes))
	}
	measure(t, s, warp.ID, "pieces[0].length", "on the loom", "34 in")
	measure(t, s, warp.ID, "pieces[0].width", "finished", "9 1/2 in")
	if r := recordOf(t, s, warp.ID); learnt(r) != "" {
		t.Errorf("one state each: %q", learnt(r))
	}
	measure(t, s, warp.ID, "pieces[0].length", "finished", "26 in")
	measure(t, s, warp.ID, "pieces[0].length", "finished", "27 in")
	if r := recordOf(t, s, warp.ID); learnt(r) != "tape-to-washed = 34 in -> 29 1/2 in" || r.Learnt[0].Planned == nil {
		t.Errorf("two states, the last counts, with the hems: %q", learnt(r))
	}
	start(t, s, warp.ID)
	r := recordOf(t, s, warp.ID)
	if !strings.Contains(learnt(r), "reed-to-washed = 11 ") || !r.Learnt[len(r.Learnt)-1].Counted {
		t.Errorf("the dents count once work began: %q", learnt(r))
	}
	if len(r.Log) != 1 || len(r.Yarns) != 1 || r.Yarns[0].Need == nil || r.Yarns[0].Used != nil {
		t.Errorf("log %v, yarns %+v", r.Log, r.Yarns)
	}
}

// What is set as learnt is read, and gives the sizes that were measured.
func TestWhatIsLearntIsRead(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, hemmed)
	measure(t, s, warp.ID, "pieces[0].length", "on the loom", `2' 10"`)
	measure(t, s, warp.ID, "pieces[0].length", "finished", "71 cm")
	r := recordOf(t, s, warp.ID)
	if len(r.Learnt) != 1 {
		t.Fatalf("%q", learnt(r))
	}
	saved := save(t, s, warp.ID, left, "allowances.tape-to-washed="+r.Learnt[0].Typed())
	if saved.Problems.Failed() {
		t.Errorf("%q: %v", r.Learnt[0].Typed(), saved.Problems.All())
	}
}

// [built] says what came off the loom where nothing was measured; cancelled measurements
// count for nothing.
func TestRecordGoesByWhatStands(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, hemmed)
	start(t, s, warp.ID)
	saved, err := s.Amend(t.Context(), edit(t, s, warp.ID, left, `woven=[{ piece = 0, on-loom = "33 in" }]`))
	if err != nil || saved.Refused {
		t.Fatal(err, saved.Problems)
	}
	e, _, err := s.Measured(t.Context(), app.Happened{Document: warp.ID, Typed: "20 in"}, "pieces[0].length", "finished")
	if err != nil {
		t.Fatal(err)
	}
	measure(t, s, warp.ID, "pieces[0].length", "finished", "27 in")
	if r := recordOf(t, s, warp.ID); !strings.HasPrefix(learnt(r), "tape-to-washed = 33 in -> 29 1/2 in") {
		t.Errorf("%q", learnt(r))
	}
	if _, err := s.Cancel(t.Context(), left, e.ID, ""); err != nil {
		t.Fatal(err)
	}
	if r := recordOf(t, s, warp.ID); !strings.HasPrefix(learnt(r), "tape-to-washed = 33 in -> 29 1/2 in") {
		t.Errorf("after another was cancelled: %q", learnt(r))
	}
}

func TestRecordsAreOfFinishedWarps(t *testing.T) {
	s := openStudio(t)
	warp, other := addWarp(t, s, hemmed), addWarp(t, s, towels)
	start(t, s, warp.ID)
	start(t, s, other.ID)
	if _, list, err := s.Logged(t.Context(), app.Happened{Document: warp.ID, What: record.Finished}, 0); err != nil || list.Failed() {
		t.Fatal(err, list.All())
	}
	found, total, err := s.Records(t.Context(), record.Query{Most: 10})
	if err != nil || total != 1 || len(found) != 1 || found[0].ID != warp.ID {
		t.Errorf("%d of %d records, %v", len(found), total, err)
	}
	yarn := addYarn(t, s, "white")
	if _, err := s.Record(t.Context(), yarn.ID); !record.Is(err, record.NotFound) {
		t.Errorf("the record of a yarn: %v", err)
	}
}

// What a warp used of the shelf's yarn is in its record.
func TestRecordOfYarnUsed(t *testing.T) {
	s := openStudio(t)
	warp, yarn := addWarp(t, s, hemmed), addYarn(t, s, "cotton, white")
	e := edit(t, s, warp.ID, left)
	if saved, err := s.Use(t.Context(), e, "yarns.white", yarn.ID); err != nil || saved.Refused {
		t.Fatal(err, saved.Problems)
	}
	for _, h := range []app.Happened{{What: record.Bought, Typed: "1 kg"}, {What: record.Used, Typed: "200 g", Warp: warp.ID}, {What: record.Used, Typed: "50 g"}} {
		h.Document = yarn.ID
		if _, list, err := s.Stocked(t.Context(), h); err != nil || list.Failed() {
			t.Fatal(err, list.All())
		}
	}
	r := recordOf(t, s, warp.ID)
	if y := r.Yarns[0]; y.Used == nil || y.Used.Mass.String() != "200000000000" || y.Shelf != "cotton, white" || y.ID != yarn.ID {
		t.Errorf("%+v", y)
	}
}
