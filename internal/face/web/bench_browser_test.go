package web_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// What a weaver waits for, in Chromium, on the demo's book and on the large one (see
// bench_test.go):
//
//	go test ./internal/face/web -run xxx -bench KeyPress -benchtime 400x
//	go test ./internal/face/web -run xxx -bench FirstPage -benchtime 40x
//
// A time ends when the frame that shows it has been drawn. No test asks for a time: a
// machine has other work to do.

// drawnFrame calls what it is given once the frame that is next is drawn: what is posted
// in a frame comes after it.
const drawnFrame = `const drawn = done => requestAnimationFrame(() => {
	const after = new MessageChannel();
	after.port1.onmessage = done;
	after.port2.postMessage(0);
});`

// onBoth runs a benchmark on a small book and on a large one.
func onBoth(b *testing.B, run func(*testing.B, *app.OpenBook)) {
	b.Run("demo book", func(b *testing.B) { run(b, openBook(b)) })
	b.Run("big book", func(b *testing.B) { run(b, bigBook(b)) })
}

// spread reports what half, 95 and 99 of a hundred did not go beyond, in milliseconds.
func spread(b *testing.B, took []float64) {
	b.Helper()
	slices.Sort(took)
	for _, of := range []int{50, 95, 99} {
		b.ReportMetric(took[(len(took)-1)*of/100], fmt.Sprintf("p%d-ms", of))
	}
	b.ReportMetric(0, "ns/op")
}

// pressed gives times from a key to the frame with the new length of the warp in it.
const pressed = drawnFrame + `
	const figure = () => document.querySelector('[data-id="warp.wound"] .value').textContent;
	let at = 0, was = figure();
	addEventListener("keydown", event => { at = event.timeStamp; }, true);
	new MutationObserver(() => {
		if (figure() === was) return;
		was = figure();
		drawn(() => window.took(performance.now() - at));
	}).observe(document.body, { childList: true, characterData: true, subtree: true });`

// BenchmarkKeyPress is one key in the length of a towel, to the new length of the warp.
func BenchmarkKeyPress(b *testing.B) {
	onBoth(b, func(b *testing.B, book *app.OpenBook) {
		r := serveReal(b, book)
		var towels list
		r.ask("GET", "/api/warps?words=towels&most=1", nil, &towels)
		tab := openReal(b, r)
		tab.Go(r.url(fmt.Sprintf("/warps/%d/piece", towels.Items[0].ID)))
		fill(tab, "pieces[0].length", "28 in")
		tab.Wait("!!document.querySelector('[data-id=\"warp.wound\"] .value')")
		tab.Wait("document.querySelector('.standing').innerText === 'saved'")
		tab.Unheard()
		tab.Do(field("pieces[0].length") + ".setSelectionRange(2, 2);" + pressed)
		var took []float64
		for b.Loop() {
			key := "\b" // 28 in, 2 in, 23 in, 2 in, 24 in and on
			if len(took)%2 == 1 {
				key = string(rune('3' + len(took)/2%7))
			}
			var ms float64
			tab.Do("window.answer = new Promise(took => { window.took = took })")
			tab.Press(key)
			tab.Read(&ms, "window.answer")
			took = append(took, ms)
		}
		spread(b, took)
	})
}

// named gives the time from where a navigation begins to the frame with the first name of a
// warp in it.
const named = drawnFrame + `
	window.named = new Promise(done => {
		const seen = new MutationObserver(() => {
			if (!document.querySelector(".warps h2")) return;
			seen.disconnect();
			drawn(() => done(performance.now()));
		});
		seen.observe(document, { childList: true, subtree: true });
	});`

// rest is how long browser and server are left alone before a navigation: the pictures of the
// page before it are still being drawn.
const rest = time.Second

// BenchmarkFirstPage is from the address to the first warp's name: for a browser that
// never saw the page, and for one that has its files.
func BenchmarkFirstPage(b *testing.B) {
	onBoth(b, func(b *testing.B, book *app.OpenBook) {
		r := serveReal(b, book)
		tab := browsing.Start(b).Open(b, web.Address(r.port, token))
		tab.Wait(shown)
		tab.Before("(() => {" + named + "})()")
		for _, keeps := range []bool{false, true} {
			tab.KeepsFiles(keeps)
			b.Run(map[bool]string{false: "never seen", true: "seen before"}[keeps], func(b *testing.B) {
				var took []float64
				for b.Loop() {
					var ms float64
					time.Sleep(rest)
					tab.Go(r.url("/"))
					tab.Read(&ms, "window.named")
					took = append(took, ms)
				}
				spread(b, took)
			})
		}
	})
}
