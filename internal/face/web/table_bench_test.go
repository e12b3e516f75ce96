package web_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// What a weaver waits for who draws, in Chromium, with the main thread's tasks of its trace:
//
//	go test ./internal/face/web -run xxx -bench 'DraftCell|DraftDrag|DraftOpens|DraftPan' -benchtime 40x
//
// Times are those of the longest task of the page's main thread in each gesture: by the clock
// on the wall, and as thread-ms by that of the thread, which others on the machine do not slow.

// bigTable opens a draft on 40 shafts on the table, at a size of cells.
func bigTable(b *testing.B, ends, picks int) (*browsing.Tab, *real, string) {
	b.Helper()
	r := serveReal(b, openBook(b))
	url := r.url(fmt.Sprintf("/drafts/%d/table", r.bigDraft(ends, picks)))
	tab := browsing.Start(b).Open(b, web.Address(r.port, token))
	tab.Wait(shown)
	tab.Go(url)
	tab.Wait(drawnTable)
	tab.Unheard()
	time.Sleep(time.Second)
	return tab, r, url
}

const drawnTable = "!!document.querySelector('.draft-table')?.spotOf?.({part: 'drawdown', end: 0, pick: 0})"

// purge is a task of the browser by which it gives memory back, ten seconds after it began: it
// is not the page's.
const purge = "OnBackgrounded"

// tasks are the main thread's in the trace of what is done: how long the longest lasted, and
// the most that one had to work, in milliseconds.
func tasks(tab *browsing.Tab, do func()) (lasts, works float64) {
	for _, s := range tab.Trace(do) {
		if s.Thread == browsing.MainThread && s.Name == "ThreadControllerImpl::RunTask" && s.From != purge {
			lasts = max(lasts, float64(s.Lasts.Microseconds())/1000)
			works = max(works, float64(s.Works.Microseconds())/1000)
		}
	}
	return lasts, works
}

// gesture reports the longest task of each, by the clock on the wall and by that of the
// thread.
func gesture(b *testing.B, tab *browsing.Tab, do func(i int)) {
	b.Helper()
	var lasts, works []float64
	for i := 0; b.Loop(); i++ {
		l, w := tasks(tab, func() { do(i) })
		lasts, works = append(lasts, l), append(works, w)
	}
	spread(b, lasts)
	slices.Sort(works)
	for _, of := range []int{50, 95, 99} {
		b.ReportMetric(works[(len(works)-1)*of/100], fmt.Sprintf("p%d-thread-ms", of))
	}
	b.ReportMetric(works[len(works)-1], "most-thread-ms")
}

// BenchmarkDraftCell is one cell of the tie-up and of the threading of 1,000 by 1,000.
func BenchmarkDraftCell(b *testing.B) {
	tab, _, _ := bigTable(b, 1000, 1000)
	gesture(b, tab, func(i int) {
		tab.Drag(spot(tab, fmt.Sprintf("{part: 'threading', end: %d, shaft: %d}", i%20, 1+i%40)))
		time.Sleep(150 * time.Millisecond)
	})
}

// BenchmarkDraftDrag is a line over all ends in sight, up and down.
func BenchmarkDraftDrag(b *testing.B) {
	tab, _, _ := bigTable(b, 1000, 1000)
	tab.Click("All of it")
	gesture(b, tab, func(i int) {
		var way []browsing.Spot
		for j := range 21 {
			way = append(way, spot(tab, fmt.Sprintf("{part: 'threading', end: %d, shaft: %d}", (i%4)*200+10*j, 1+(i+j)%40)))
		}
		tab.Drag(way...)
		time.Sleep(200 * time.Millisecond)
	})
}

// BenchmarkDraftPan moves over 2,000 by 4,000.
func BenchmarkDraftPan(b *testing.B) {
	tab, _, _ := bigTable(b, 2000, 4000)
	at := spot(tab, "{part: 'drawdown', end: 4, pick: 4}")
	gesture(b, tab, func(i int) {
		for range 10 {
			tab.Wheel(at, 40, float64(60*(1-i/10%2*2)), false)
		}
		time.Sleep(300 * time.Millisecond)
	})
}

// BenchmarkDraftOpens is from the address to the drawing of 2,000 by 4,000.
func BenchmarkDraftOpens(b *testing.B) {
	tab, _, url := bigTable(b, 2000, 4000)
	var took []float64
	for b.Loop() {
		began := time.Now()
		tab.Go(url)
		tab.Wait(drawnTable)
		took = append(took, float64(time.Since(began).Microseconds())/1000)
	}
	spread(b, took)
}
