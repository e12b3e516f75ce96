package browsing

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Tab is one window of a browser. Its methods fail the test when the browser does not
// do as told.
type Tab struct {
	t     testing.TB
	ctx   context.Context
	close context.CancelFunc

	mu       sync.Mutex
	console  []Complaint
	requests []string
	trace    trace
}

// Open opens a window of 1440 by 900 and goes to an address. It is closed with the test.
func (b *Browser) Open(t testing.TB, address string) *Tab {
	t.Helper()
	ctx, done := b.window()
	t.Cleanup(done)
	tab := &Tab{t: t, ctx: ctx, close: done}
	tab.must(chromedp.Listen(ctx, tab.hear))
	tab.listen()
	tab.call("network", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
		return err
	})
	tab.call("focus", func(ctx context.Context) error { // else keys are lost that come before the window is in front
		_, err := chromedp.Call(ctx, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return err
	})
	tab.Size(1440, 900)
	tab.Go(address)
	return tab
}

// Close closes the window before the test ends.
func (b *Tab) Close() {
	b.t.Helper()
	b.must(chromedp.Cancel(b.ctx))
}

// Front brings the window before the others of its browser.
func (b *Tab) Front() {
	b.t.Helper()
	b.call("to the front", func(ctx context.Context) error {
		id := chromedp.FromContext(ctx).Target.TargetID
		_, err := chromedp.CallBrowser(ctx, target.ActivateTarget, target.ActivateTargetParams{TargetID: id})
		return err
	})
}

// Before runs JavaScript in every page that is loaded from now on, before its own.
func (b *Tab) Before(script string) {
	b.t.Helper()
	b.call("before", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	})
}

// Go goes to an address and waits until it is loaded.
func (b *Tab) Go(address string) {
	b.t.Helper()
	b.call("go to "+address, func(ctx context.Context) error { return chromedp.Do(ctx, chromedp.Navigate(address)) })
}

// Reload loads the page anew.
func (b *Tab) Reload() {
	b.t.Helper()
	b.call("reload", func(ctx context.Context) error { return chromedp.Do(ctx, chromedp.Reload()) })
}

// KeepsFiles says whether the browser may use files of the page that it had before.
func (b *Tab) KeepsFiles(keeps bool) {
	b.t.Helper()
	b.call("files", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: !keeps})
		return err
	})
}

// Unheard stops noting what the page asks the network for: the browser copies every request
// and answer for it, which is no part of what a time should hold.
func (b *Tab) Unheard() {
	b.t.Helper()
	b.call("unheard", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, network.Disable, cdp.Empty{})
		return err
	})
}

// Size makes the window so many CSS pixels wide and high, narrow ones as a phone.
func (b *Tab) Size(width, height int64) {
	b.t.Helper()
	b.call("size", func(ctx context.Context) error { return chromedp.Do(ctx, chromedp.EmulateViewport(width, height)) })
}

// Dark says whether the person prefers dark pages. She always prefers less motion, so
// that nothing moves while it is looked at.
func (b *Tab) Dark(dark bool) {
	b.t.Helper()
	scheme := map[bool]string{true: "dark", false: "light"}[dark]
	b.call(scheme, func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"}},
		})
		return err
	})
}

// Do runs JavaScript and waits for what it promises.
func (b *Tab) Do(script string) {
	b.t.Helper()
	var nothing any
	b.Read(&nothing, "(async () => {"+script+"; return null})()")
}

// Read works out an expression of JavaScript and puts it into the value pointed to.
func (b *Tab) Read(into any, expression string) {
	b.t.Helper()
	b.call(expression, func(ctx context.Context) error {
		got, err := chromedp.Run(ctx, chromedp.Evaluate[json.RawMessage](expression, chromedp.EvalAwaitPromise))
		if err != nil {
			return err
		}
		return json.Unmarshal(got, into)
	})
}

// Wait waits until an expression of JavaScript holds.
func (b *Tab) Wait(expression string) {
	b.t.Helper()
	b.call("wait until "+expression, func(ctx context.Context) error {
		for {
			holds, err := chromedp.Run(ctx, chromedp.Evaluate[bool](expression))
			if holds || err != nil && ctx.Err() == nil {
				return err
			}
			select {
			case <-ctx.Done():
				return fmt.Errorf("it never did; the page says:\n%s", b.said())
			case <-time.After(20 * time.Millisecond):
			}
		}
	})
}

// said is the text of the page, for the message of a test that failed.
func (b *Tab) said() string {
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string]("document.body.innerText"))
	if err != nil {
		return err.Error()
	}
	return text
}

// Plain is the expression of a text without its setting: fixed and thin spaces are spaces,
// raised and lowered figures are figures.
func Plain(expression string) string {
	return "(" + expression + ").replace(/[\\u00a0\\u2009]/g, ' ').replace(/⁄/g, '/')" +
		".replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, c => '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(c)).replace(/[₀-₉]/g, c => '₀₁₂₃₄₅₆₇₈₉'.indexOf(c))"
}

// Says waits until the page shows a text, however it is set.
func (b *Tab) Says(text string) {
	b.t.Helper()
	b.Wait(Plain("document.body.innerText") + ".includes(" + Quote(text) + ")")
}

// Keys that are held while another is pressed.
const (
	Ctrl  = chromedp.ModifierCtrl
	Shift = chromedp.ModifierShift
)

// Keys that write nothing.
const (
	Tabulator = kb.Tab
	Home      = kb.Home
	End       = kb.End
	Delete    = kb.Delete
	Enter     = kb.Enter
	Escape    = kb.Escape
	Up        = kb.ArrowUp
	Down      = kb.ArrowDown
)

// Press presses keys one after another, with others held: letters, or those above. The
// window is brought to the front: browsers give no keys to one behind.
func (b *Tab) Press(keys string, held ...chromedp.Modifier) {
	b.t.Helper()
	b.Front()
	b.call("press "+keys, func(ctx context.Context) error {
		return chromedp.Do(ctx, chromedp.KeyEvent(keys, chromedp.KeyModifiers(held...)))
	})
}

// Type puts a text where the keyboard is, in one go.
func (b *Tab) Type(text string) {
	b.t.Helper()
	b.call("type "+text, func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, input.InsertText, input.InsertTextParams{Text: text})
		return err
	})
}

// Click clicks the button or link that is called name, by its label or its text.
func (b *Tab) Click(name string) {
	b.t.Helper()
	find := "[...document.querySelectorAll('button, a')].find(e => (e.ariaLabel || e.innerText) === " + Quote(name) + ")"
	b.Wait("!!" + find)
	b.Do(find + ".focus(); " + find + ".click()")
}

// picturing reports whether pictures are wanted.
func picturing() bool { return os.Getenv("SLEY_SHOTS") != "" }

// Shot writes a picture of the whole page to NAME.png in the folder that the variable
// SLEY_SHOTS names; without one it does nothing.
func (b *Tab) Shot(name string) {
	b.t.Helper()
	if !picturing() {
		return
	}
	dir := os.Getenv("SLEY_SHOTS")
	b.call("picture "+name, func(ctx context.Context) error {
		picture, err := chromedp.Run(ctx, chromedp.FullScreenshot(100))
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(dir, name+".png"), picture, 0o644)
	})
}

// Paper is the page as it is printed, a PDF.
func (b *Tab) Paper() []byte {
	b.t.Helper()
	var pdf []byte
	b.call("paper", func(ctx context.Context) error {
		done, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{})
		pdf = done.Data
		return err
	})
	return pdf
}

// call runs one act with patience.
func (b *Tab) call(what string, act func(context.Context) error) {
	b.t.Helper()
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	if err := act(ctx); err != nil {
		b.t.Fatalf("%s: %v", what, err)
	}
}

func (b *Tab) must(err error) {
	b.t.Helper()
	if err != nil {
		b.t.Fatal(err)
	}
}

// Quote is a text as JavaScript writes it.
func Quote(text string) string {
	quoted, _ := json.Marshal(text) // a string always can be
	return strings.ReplaceAll(string(quoted), "\u2028", `\u2028`)
}
