// Package browsing drives Chromium in tests: it opens pages, presses keys, looks for
// what keeps people out, and notes what a page complains of and asks for. Tests alone
// import it, so nothing of it is in sley.
package browsing

import (
	"context"
	"os/exec"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// patience is how long one act in the browser may take before the test fails. It is
// long: a machine may have other work to do.
const patience = time.Minute

// install is how to get the browser on Debian.
const install = "apt-get install -y chromium"

// Browser is a running Chromium with nothing remembered from before.
type Browser struct {
	ctx context.Context
}

// Start starts Chromium and ends it with the test. Without Chromium, and in the short
// form of the tests, the test is skipped.
func Start(t testing.TB) *Browser {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("no chromium: " + install)
	}
	if testing.Short() {
		t.Skip("a browser takes long")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(t.TempDir()),
		chromedp.NoSandbox, chromedp.DisableGPU, // root may not have a sandbox, and there is no screen
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		// Whatever a page asks for elsewhere is found by no one.
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost"),
	)
	allocator, end := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(end)
	ctx, closeAll := chromedp.NewContext(allocator)
	t.Cleanup(closeAll)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatalf("starting %s: %v", path, err)
	}
	return &Browser{ctx: ctx}
}
