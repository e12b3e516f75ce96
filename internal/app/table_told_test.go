package app_test

import (
	"context"
	"slices"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/review"
	"sley/internal/engine/strokes"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// crossing puts one crossing of the drawdown up or down.
func crossing(pick, end int, up bool) app.TableAct {
	return app.TableAct{Act: strokes.Act{Do: strokes.Cells, Cells: []strokes.Cell{{Pick: pick, End: end}}, Up: up}}
}

// twice has each end of a draft of four come again, so that one of them alone needs a shaft.
var twice = app.TableAct{Act: strokes.Act{Do: strokes.Repeat, Part: strokes.Threading, From: 0, To: 4, Times: 2}}

// What is drawn in the drawdown of a warp and takes more than its loom has is made, and
// told; what the loom has is not worth a word.
func TestDrawingTellsWhatTheLoomLacks(t *testing.T) {
	s := openStudio(t)
	small := addWarp(t, s, withThreading(threaded))
	got := drew(t, s, small.ID, false, twice, crossing(0, 2, true))
	wantCodes(t, "a loom with four shafts", got.Told, "acts table.loom-shafts")
	if p := got.Told.All()[0]; p.Args["needs"] != 5 || p.Args["has"] != 4 || p.Severity != problem.Warning {
		t.Errorf("%+v", p)
	}
	if got = drew(t, s, small.ID, false, crossing(1, 0, true)); got.Table.Draft.Shafts > 5 && len(got.Told.All()) == 0 {
		t.Errorf("another shaft, and nothing is told: %v", got.Table.Draft)
	}
	if got = drew(t, s, small.ID, false, laid(strokes.Threading, 0, 1, 2)); got.Told.Len() != 0 {
		t.Errorf("what was lacking before is told again: %v", got.Told.All())
	}
	tried, err := s.TryDrawing(context.Background(), drawing(small.ID, got.Version, false, crossing(3, 3, false), crossing(2, 1, false)))
	if err != nil || slices.Contains(codesOf(tried.Problems), "acts table.loom-shafts") || !slices.Contains(codesOf(tried.Told), "acts table.loom-shafts") {
		t.Errorf("tried: %v, %v", err, tried.Told)
	}
}

// Of a draft of the shelf no loom is known: it is told that there are more shafts now.
func TestDrawingTellsOfMoreShafts(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(context.Background(), left, "ground", "twill", nil)
	mustSaved(t, saved, err)
	got := drew(t, s, saved.ID, false, twice, crossing(0, 2, true))
	wantCodes(t, "a shaft more", got.Told, "acts[1].cells stroke.more-shafts")
}

// A draft of the shelf is looked over on a loom of the shelf.
func TestLookOverOnALoom(t *testing.T) {
	s := openStudio(t)
	saved, err := s.AddWeave(context.Background(), left, "ground", "twill", nil)
	mustSaved(t, saved, err)
	loom, err := s.AddLoom(context.Background(), left, "small loom", sets(t, "shafts=3", "treadles=2", `width="24 in"`, `shed="rising"`))
	mustSaved(t, loom, err)
	got := topics(t, s, app.Looking{ID: saved.ID, Loom: loom.ID})
	for _, want := range []review.Topic{review.LacksShafts, review.LacksTreadles} {
		if !slices.Contains(got, want) {
			t.Errorf("%v has no %v", got, want)
		}
	}
	if _, _, err := s.LookOver(context.Background(), app.Looking{ID: saved.ID, Loom: saved.ID}); !record.Is(err, record.NotFound) {
		t.Errorf("a draft for a loom: %v", err)
	}
}

// A warp is drawn whole: as many ends as it has, in the colours of its yarns; a draft by
// itself is what it is.
func TestWholeDraft(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, withThreading(threaded))
	whole, list, err := s.Drafted(t.Context(), warp.ID, true)
	if err != nil || whole == nil {
		t.Fatal(err, codesOf(list))
	}
	if want := table(t, s, warp.ID, true).Draft; whole.Draft.Ends() != want.Ends() || whole.Draft.Picks() != want.Picks() || len(whole.Draft.Palette) == 0 {
		t.Errorf("%d ends and %d picks, want %d and %d", whole.Draft.Ends(), whole.Draft.Picks(), want.Ends(), want.Picks())
	}
	// 20 ends to the inch lie 1.27 mm apart, and 8/2 cotton of 3,360 yd/lb is 1 in / (0.90 √3360)
	// thick: Ashenhurst's rule with the K of firm yarns, as no fibre is said; see yarn.KValues.
	if of := &whole.Draft.Warp; of.ApartOf(0) != 1_270_000 || of.ThickOf(0)/10_000 != 48 || whole.Draft.Weft.ApartOf(0) <= 0 {
		t.Errorf("threads %v thick, %v apart, picks %v", of.ThickOf(0), of.ApartOf(0), whole.Draft.Weft.ApartOf(0))
	}
	plain := addWarp(t, s, towels)
	if d, list, _ := s.Drafted(t.Context(), plain.ID, true); d == nil && !slices.Contains(codesOf(list), "draft draft.none") {
		t.Errorf("without a weave: %v", codesOf(list))
	}
	saved, err := s.AddWeave(context.Background(), left, "ground", "twill", nil)
	mustSaved(t, saved, err)
	one, _, _ := s.Drafted(t.Context(), saved.ID, false)
	if two, _, _ := s.Drafted(t.Context(), saved.ID, true); !one.Draft.Equal(two.Draft) {
		t.Errorf("%v whole is %v", one.Draft, two.Draft)
	}
}

// Colours are drawn on the whole warp: as it is written it has none that could be kept.
func TestColoursAreOfTheWholeWarp(t *testing.T) {
	s := openStudio(t)
	warp := addWarp(t, s, withThreading(threaded))
	was := table(t, s, warp.ID, false)
	got, err := s.DrawOn(context.Background(), drawing(warp.ID, was.Version, false, laid(strokes.WarpColours, 0, 1, 1), laid(strokes.Palette, 2, 0, 0xff0000)))
	if err != nil || !got.Refused {
		t.Fatalf("%+v, %v", got, err)
	}
	wantCodes(t, "colours", got.Problems, "acts[0].part table.whole-colours", "acts[1].part table.whole-colours")
	if !was.Uncoloured || table(t, s, warp.ID, true).Uncoloured {
		t.Error("as it is written it has colours, or whole it has none")
	}
}
