package app_test

import (
	"context"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
)

// promised is a book with a yarn of the shelf and a warp that has its yarn from there.
func promised(t *testing.T, s *app.Studio) (yarn, warp record.ID) {
	t.Helper()
	yarn = addYarn(t, s, "cotton, white", "count=8/2 Ne", "fibre=cotton", "colour=white #f3ecdc").ID
	warp = addWarp(t, s, towels).ID
	saved, err := s.Use(t.Context(), edit(t, s, warp, left), "yarns.white", yarn)
	mustSaved(t, saved, err)
	return yarn, warp
}

func shelved(t *testing.T, s *app.Studio, id record.ID) app.Shelved {
	t.Helper()
	y, err := s.Promised(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// needed is what the reckoning of a warp says that it needs of its yarn: the figure that
// the shelf has to agree with.
func needed(t *testing.T, s *app.Studio, id record.ID, node string) qty.Rat {
	t.Helper()
	from, _, err := s.WarpSource(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	result, list := app.ReckonPlan(from, "", false)
	n, ok := result.Node(node)
	if !ok {
		t.Fatal(node, codesOf(list))
	}
	return n.Is
}

func entered(t *testing.T, s *app.Studio, yarn record.ID, what, amount string, warp record.ID) record.Event {
	t.Helper()
	e, list, err := s.Stocked(context.Background(), app.Happened{Document: yarn, Window: left, What: what, Typed: amount, Warp: warp})
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	return e
}

// What a warp needs is promised to it, and left is the stock without that; where nothing
// was entered, what is left is unknown.
func TestYarnIsPromised(t *testing.T) {
	s := openStudio(t)
	yarn, warp := promised(t, s)
	need := needed(t, s, warp, "yarns[white].need")
	y := shelved(t, s, yarn)
	if len(y.Promised) != 1 || y.Promised[0].Warp != warp || y.Promised[0].Name != "Towels" || !y.Promised[0].Length.Equal(need) {
		t.Fatalf("promised %+v, want %s", y.Promised, need)
	}
	if !y.Promised[0].Mass.Equal(needed(t, s, warp, "yarns[white].weight")) {
		t.Errorf("its weight is %s", y.Promised[0].Mass)
	}
	if y.Left != nil {
		t.Errorf("nothing was entered, and %+v is left", y.Left)
	}
	if y.Colour.Hex != "#f3ecdc" || y.Colour.Name != "white" {
		t.Errorf("colour %+v", y.Colour)
	}
	entered(t, s, yarn, record.Bought, "5000 yd", 0)
	stock := (5000 * qty.Yard).Rat()
	if y = shelved(t, s, yarn); y.Left == nil || !y.Left.ByLength || y.Left.AtMost || !y.Left.Is.Equal(stock.Sub(need)) {
		t.Errorf("left %+v, want %s", y.Left, stock.Sub(need))
	}
	// A change of the warp changes what it is promised.
	save(t, s, warp, left, "pieces[0].count=3")
	if more := shelved(t, s, yarn).Promised[0].Length; !need.Less(more) {
		t.Errorf("three towels take %s, one %s", more, need)
	}
}

// What was used for a warp is no longer promised to it; a finished warp takes nothing
// more, until the end is cancelled.
func TestPromiseIsKept(t *testing.T) {
	s := openStudio(t)
	yarn, warp := promised(t, s)
	need := needed(t, s, warp, "yarns[white].need")
	entered(t, s, yarn, record.Bought, "5000 yd", 0)
	used := entered(t, s, yarn, record.Used, "100 yd", warp)
	entered(t, s, yarn, record.Used, "7 yd", 0) // for something else
	hundred := (100 * qty.Yard).Rat()
	y := shelved(t, s, yarn)
	if !y.Promised[0].Length.Equal(need.Sub(hundred)) {
		t.Errorf("after 100 yd were used %s is promised, want %s", y.Promised[0].Length, need.Sub(hundred))
	}
	if want := (4993 * qty.Yard).Rat().Sub(need); !y.Left.Is.Equal(want) {
		t.Errorf("left %s, want %s", y.Left.Is, want)
	}
	entered(t, s, yarn, record.Used, "4000 yd", warp)
	if y = shelved(t, s, yarn); !y.Promised[0].Done || !y.Promised[0].Length.IsZero() || y.Left.AtMost {
		t.Errorf("it has more than it needs: %+v, %+v", y.Promised[0], y.Left)
	}
	if _, err := s.Cancel(t.Context(), left, used.ID, ""); err != nil {
		t.Fatal(err)
	}
	start(t, s, warp)
	if n := len(shelved(t, s, yarn).Promised); n != 1 {
		t.Errorf("on the loom, %d warps take of it", n)
	}
	end, list, err := s.Logged(t.Context(), app.Happened{Document: warp, Window: left, What: record.Finished}, 0)
	if err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	if y = shelved(t, s, yarn); len(y.Promised) != 0 {
		t.Errorf("a finished warp takes %+v", y.Promised)
	}
	if _, err := s.Cancel(t.Context(), left, end.ID, ""); err != nil {
		t.Fatal(err)
	}
	if y = shelved(t, s, yarn); len(y.Promised) != 1 {
		t.Errorf("in hand again, it takes %+v", y.Promised)
	}
}

// A plan with errors takes nobody knows how much; what is removed takes nothing.
func TestPromiseOfAnUnknownAmount(t *testing.T) {
	s := openStudio(t)
	yarn, warp := promised(t, s)
	entered(t, s, yarn, record.Bought, "500 g", 0)
	save(t, s, warp, left, "pieces[0].length=60")
	y := shelved(t, s, yarn)
	if len(y.Promised) != 1 || !y.Promised[0].Length.IsZero() || y.Promised[0].Done || y.Left == nil || !y.Left.AtMost {
		t.Errorf("promised %+v, left %+v", y.Promised, y.Left)
	}
	if _, err := s.Remove(t.Context(), warp, card(t, s, warp).Version, left); err != nil {
		t.Fatal(err)
	}
	if y = shelved(t, s, yarn); len(y.Promised) != 0 || y.Left.AtMost {
		t.Errorf("a warp that was removed: %+v, %+v", y.Promised, y.Left)
	}
}

// A stock that was entered both ways, of a yarn without a count, is not summed up.
func TestLeftOfAYarnWithoutACount(t *testing.T) {
	s := openStudio(t)
	yarn := addYarn(t, s, "found wool", "fibre=wool").ID
	entered(t, s, yarn, record.Bought, "200 g", 0)
	if y := shelved(t, s, yarn); y.Left == nil || y.Left.ByLength || !y.Left.Is.Equal((200 * qty.Gram).Rat()) {
		t.Errorf("by weight alone: %+v", y.Left)
	}
	entered(t, s, yarn, record.Bought, "100 m", 0)
	if y := shelved(t, s, yarn); y.Left != nil {
		t.Errorf("both ways: %+v", y.Left)
	}
	entered(t, s, yarn, record.Measured, "150 m", 0)
	if y := shelved(t, s, yarn); y.Left == nil || !y.Left.ByLength || !y.Left.Is.Equal((150 * qty.Metre).Rat()) {
		t.Errorf("measured: %+v", y.Left)
	}
}

// The shelf lists what List lists, and agrees yarn by yarn with a sum over all warps.
func TestShelfAgreesWithASumOverAllWarps(t *testing.T) {
	s := withDemo(t)
	yarns, total, err := s.Shelf(t.Context(), record.Query{Most: 200})
	if err != nil || total != len(yarns) || total < 9 {
		t.Fatal(total, len(yarns), err)
	}
	warps, _, err := s.List(t.Context(), record.Query{Kind: record.Warp, Most: 200})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]qty.Rat{}
	for _, w := range warps {
		if w.Facts.Stage == record.Done {
			continue
		}
		for _, o := range shown(t, s, w.ID).Origins {
			if o.Kind == record.Yarn {
				need := needed(t, s, w.ID, "yarns["+o.Part[len("yarns."):]+"].need")
				want[o.Mark] = want[o.Mark].Add(need)
			}
		}
	}
	if len(want) < 6 {
		t.Fatalf("only %d yarns are promised", len(want))
	}
	for _, y := range yarns {
		var sum qty.Rat
		for _, p := range y.Promised {
			sum = sum.Add(p.Length)
		}
		// In the demo nothing was used yet for warps in hand.
		if !sum.Equal(want[y.Mark]) {
			t.Errorf("%s: %s is promised, want %s", y.Name, sum, want[y.Mark])
		}
	}
}

// Only yarns are on this shelf.
func TestPromisedOfAWarp(t *testing.T) {
	s := inMemory()
	id := addWarp(t, s, towels).ID
	if _, err := s.Promised(t.Context(), id); !record.Is(err, record.NotFound) {
		t.Errorf("of a warp: %v", err)
	}
}
