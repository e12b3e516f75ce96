package browsing

import (
	"context"
	"os"
	"os/exec"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
)

// install is how to get the browser on Debian.
const install = "apt-get install -y chromium"

// process is a running Chromium. One test at a time has it, for only one window of all that
// a Chromium has is in front, and is given keys.
type process struct {
	ctx context.Context
	end func()
}

// idle are the Chromiums that no test has just now: as many are started as tests run beside
// each other.
var idle struct {
	sync.Mutex
	all    []*process
	minded bool // Main will end them
}

// Main runs the tests of a package whose tests call Start, and ends every Chromium that they
// left; it is all that the package's TestMain does.
func Main(m *testing.M) {
	idle.minded = true
	code := m.Run()
	for _, p := range idle.all {
		p.end()
	}
	os.Exit(code)
}

// found is where Chromium is; without it, and in the short form of the tests, the test is
// skipped.
func found(t testing.TB) string {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("no chromium: " + install)
	}
	if testing.Short() {
		t.Skip("a browser takes long")
	}
	return path
}

// taken is a Chromium that no other test has, a running one where there is one.
func taken(t testing.TB, path string) *process {
	t.Helper()
	idle.Lock()
	defer idle.Unlock()
	if !idle.minded {
		t.Fatal("nobody would end the browser: TestMain of the package must call browsing.Main")
	}
	for len(idle.all) > 0 {
		p := idle.all[len(idle.all)-1]
		idle.all = idle.all[:len(idle.all)-1]
		if p.ctx.Err() == nil { // it has not died since
			return p
		}
		p.end()
	}
	return begun(t, path)
}

// giveBack leaves the Chromium to the next test; after a test that failed it is ended, for
// nobody knows what it was left in.
func (p *process) giveBack(t testing.TB, b *Browser) {
	if t.Failed() || b.place == "" || b.leave() != nil {
		p.end()
		return
	}
	idle.Lock()
	defer idle.Unlock()
	idle.all = append(idle.all, p)
}

// unused are parts of Chromium that no test needs. The boxes that open below its line of
// addresses are pages themselves, two made beforehand for each window: together they took more
// of the machine than the page under test.
const unused = "Translate,BlinkGenPropertyTrees,WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup"

// resolving is how names are found: whatever a page asks for elsewhere is found by no one,
// but this machine's own addresses are, which a page beside the loom is asked for at.
func resolving() string {
	rules := "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost"
	for _, ip := range ownAddresses() {
		rules += ", EXCLUDE " + ip.String()
	}
	return rules
}

// begun starts Chromium with a folder of its own, which chromedp removes at its end.
func begun(t testing.TB, path string) *process {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.NoSandbox, chromedp.DisableGPU, // root may not have a sandbox, and there is no screen
		chromedp.Flag("disable-features", unused), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("host-resolver-rules", resolving()),
	)
	allocator, end := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, closeAll := chromedp.NewContext(allocator)
	p := &process{ctx: ctx, end: func() { closeAll(); end() }}
	if err := chromedp.Do(ctx); err != nil {
		p.end()
		t.Fatalf("starting %s: %v", path, err)
	}
	return p
}
