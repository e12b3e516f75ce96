package browsing

import (
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// faulty has one of every fault that this package looks for.
const faulty = `<!doctype html><html lang="en"><head><title>faulty</title><style>
	* { outline: none } .small { font-size: 13px } .wide { width: 3000px } .cut { position: absolute; left: -40px } .pale { color: #aaa }
</style></head><body><main><h1>faulty</h1>
<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw="> <p class="small">too small</p> <p class="wide">too wide</p>
<p class="cut">beside the page</p> <p class="pale">too pale</p> <a href="#x">no ring</a> <button tabindex="-1">out of reach</button>
<script>
	console.error("a complaint"); setTimeout(() => { throw new Error("nobody caught this") });
	fetch("/missing"); fetch("http://elsewhere.example/asked").catch(() => 0);
</script></main></body></html>`

const sound = `<!doctype html><html lang="en"><head><title>sound</title><style>* { font-size: 16px }</style></head><body><main><h1>sound</h1>
<a href="#x">a link</a> <button>a button</button></main></body></html>`

func serve(t *testing.T, page string) string {
	t.Helper()
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/":
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			io.WriteString(w, page)
		case "/favicon.ico":
			w.WriteHeader(http.StatusNoContent)
		default:
			http.NotFound(w, r)
		}
	}))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// TestFaultsAreFound: a check that finds nothing on a page full of faults checks
// nothing on ours.
func TestFaultsAreFound(t *testing.T) {
	tab := Start(t).Open(t, serve(t, faulty))
	mustHold(t, "barriers", tab.Barriers(), "image-alt", "color-contrast")
	mustHold(t, "cramped", tab.Cramped(), "13 px: too small", "wide in a window of", "cut off: beside the page")
	stops := tab.Walk()
	if len(stops) != 1 || stops[0] != (Stop{Name: "a no ring"}) {
		t.Errorf("stops: %+v", stops)
	}
	mustHold(t, "reachable", tab.Reachable(), "a no ring", "button out of reach")
	mustHold(t, "off loopback", tab.OffLoopback(), "http://elsewhere.example/asked")
	tab.waitForComplaints(t, 4)
	var said []string
	for _, complaint := range tab.Complaints() {
		said = append(said, complaint.Text)
		if complaint.Network != strings.Contains(complaint.Text, "Failed to load") {
			t.Errorf("of the network: %v: %s", complaint.Network, complaint.Text)
		}
	}
	mustHold(t, "console", said, "a complaint", "nobody caught this", "404")
}

func TestASoundPageHasNoFaults(t *testing.T) {
	tab := Start(t).Open(t, serve(t, sound))
	tab.EachLook(t, "sound")
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
}

// waitForComplaints waits for the console, which the browser tells of when it likes; the
// time limit of the tests ends it.
func (b *Tab) waitForComplaints(t *testing.T, n int) {
	t.Helper()
	for len(b.Complaints()) < n {
		b.Do("await new Promise(r => setTimeout(r, 20))")
	}
}

func mustHold(t *testing.T, what string, found []string, wanted ...string) {
	t.Helper()
	all := strings.Join(found, "\n")
	for _, one := range wanted {
		if !strings.Contains(all, one) {
			t.Errorf("%s: %q is missing in\n%s", what, one, all)
		}
	}
}
