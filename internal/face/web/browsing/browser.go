// Package browsing drives Chromium in tests: it opens pages, presses keys, looks for
// what keeps people out, and notes what a page complains of and asks for. Tests alone
// import it, so nothing of it is in sley.
package browsing

import (
	"context"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// patience is how long one act in the browser may take before the test fails. It is
// long: a machine may have other work to do.
const patience = time.Minute

// Browser is what one test has of a running Chromium: a place in it with nothing remembered
// from before. Cookies, storage and files of one place are not seen from another.
type Browser struct {
	ctx   context.Context
	place cdp.BrowserContextID
}

// Start gives a test a browser until it ends. The test has the Chromium for itself while it
// runs, and the next one has the same Chromium and another place; Main ends it. A benchmark
// has a new one that keeps its files on the disk, as a weaver's does. Without Chromium, and
// in the short form of the tests, the test is skipped.
func Start(t testing.TB) *Browser {
	t.Helper()
	path := found(t)
	if _, measures := t.(*testing.B); measures {
		p := begun(t, path)
		t.Cleanup(p.end)
		return &Browser{ctx: p.ctx}
	}
	p := taken(t, path)
	b := &Browser{ctx: p.ctx}
	t.Cleanup(func() { p.giveBack(t, b) })
	made, err := chromedp.CallBrowser(p.ctx, target.CreateBrowserContext, target.CreateBrowserContextParams{})
	if err != nil {
		t.Fatalf("a new place in %s: %v", path, err)
	}
	b.place = made.BrowserContextID
	return b
}

// leave closes all windows of the place and forgets what it remembered.
func (b *Browser) leave() error {
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	_, err := chromedp.CallBrowser(ctx, target.DisposeBrowserContext, target.DisposeBrowserContextParams{BrowserContextID: b.place})
	return err
}

// window is the context of a new window of the browser, and what closes it.
func (b *Browser) window() (context.Context, context.CancelFunc) {
	if b.place == "" {
		return chromedp.NewContext(b.ctx)
	}
	return chromedp.NewContext(b.ctx, chromedp.WithExistingBrowserContext(b.place))
}
