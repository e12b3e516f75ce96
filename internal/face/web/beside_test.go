package web_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/netip"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"sley/internal/face/web"
)

// loopback stands for a network in tests: what is sent stays within the machine.
func loopback() (web.Network, error) {
	return web.Network{Addresses: []netip.Addr{netip.MustParseAddr("127.0.0.1")}}, nil
}

// besides is a server that listens for devices, too.
type besides struct {
	*real
	at string // host and port where devices find it
}

func newBesides(t *testing.T) *besides {
	t.Helper()
	r := newReal(t)
	r.server.Network = loopback
	addresses, err := r.server.TurnBesideOn(t.Context())
	if err != nil || len(addresses) != 1 {
		t.Fatal(addresses, err)
	}
	return &besides{r, mustURL(t, addresses[0]).Host}
}

// device is a phone or a tablet.
type device struct {
	b      *besides
	cookie string // name=value, empty before it is paired
}

// says is what a device is answered.
type says struct {
	status int
	body   string
	head   http.Header
}

// ask sends a request as the device's page would.
func (d device) ask(method, path string, body any) says {
	d.b.t.Helper()
	var from io.Reader
	if body != nil {
		data, err := json.Marshal(body)
		if err != nil {
			d.b.t.Fatal(err)
		}
		from = bytes.NewReader(data)
	}
	req, err := http.NewRequest(method, "http://"+d.b.at+path, from)
	if err != nil {
		d.b.t.Fatal(err)
	}
	req.Header.Set("Origin", "http://"+d.b.at)
	if body != nil {
		req.Header.Set("Content-Type", "application/json")
	}
	if d.cookie != "" {
		req.Header.Set("Cookie", d.cookie)
	}
	return d.send(req)
}

func (d device) send(req *http.Request) says {
	d.b.t.Helper()
	answer, err := http.DefaultTransport.RoundTrip(req) // no redirect is followed
	if err != nil {
		d.b.t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		d.b.t.Fatal(err)
	}
	return says{answer.StatusCode, string(data), answer.Header}
}

// offer asks for a code as the page does.
func (b *besides) offer() string {
	b.t.Helper()
	var now struct{ Code struct{ Digits string } }
	if status := b.ask("POST", "/api/beside/code", object{}, &now); status != 200 || len(now.Code.Digits) != 6 {
		b.t.Fatalf("a code: %d %+v", status, now)
	}
	return now.Code.Digits
}

// pair pairs a device, and gives it with its id.
func (b *besides) pair(name string) (device, string) {
	b.t.Helper()
	d := device{b: b}
	got := d.ask("POST", "/api/pair", object{"code": b.offer(), "name": name})
	if got.status != 200 {
		b.t.Fatalf("pairing: %d %s", got.status, got.body)
	}
	var in struct{ ID string }
	if err := json.Unmarshal([]byte(got.body), &in); err != nil {
		b.t.Fatal(err)
	}
	d.cookie, _, _ = strings.Cut(got.head.Get("Set-Cookie"), ";")
	return d, in.ID
}

// It is off until it is turned on, and then listens for paired devices alone.
func TestBesideIsOffUntilTurnedOn(t *testing.T) {
	r := newReal(t)
	r.server.Network = loopback
	var now struct {
		On, Always, Moved bool
		Network           string
		Addresses         []string
		Devices           []object
	}
	r.ask("GET", "/api/beside", nil, &now)
	if now.On || now.Always || len(now.Addresses) != 0 || now.Devices == nil {
		t.Errorf("at first: %+v", now)
	}
	var no answered
	if status := r.ask("POST", "/api/beside/code", object{}, &no); status != 409 || no.Error.Code != "beside.off" {
		t.Errorf("a code while it is off: %d %+v", status, no)
	}
	r.ask("POST", "/api/beside", object{"on": true}, &now)
	if !now.On || now.Always || now.Moved || now.Network != "private" || len(now.Addresses) != 1 {
		t.Fatalf("turned on: %+v", now)
	}
	first := now.Addresses[0]
	answer, err := http.Get(first)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	r.ask("POST", "/api/beside", object{"on": false}, &now)
	if answer, err := http.Get(first); err == nil {
		answer.Body.Close()
		t.Error("it answers after it was turned off")
	}
	r.ask("POST", "/api/beside", object{"on": true}, &now)
	if now.Addresses[0] != first {
		t.Errorf("it was at %s, and is at %s", first, now.Addresses[0])
	}
	r.server.Network = func() (web.Network, error) {
		return web.Network{Addresses: []netip.Addr{netip.MustParseAddr("192.0.2.77")}, Public: true}, nil
	}
	r.ask("GET", "/api/beside", nil, &now)
	if !now.Moved || now.Network != "public" {
		t.Errorf("in another network: %+v", now)
	}
	r.ask("POST", "/api/beside", object{"on": false}, &now)
	r.server.Network = func() (web.Network, error) { return web.Network{}, nil }
	if status := r.ask("POST", "/api/beside", object{"on": true}, &no); status != 409 || no.Error.Code != "beside.network" {
		t.Errorf("without a network: %d %+v", status, no)
	}
}

// With the next start it is off again, but where the weaver said otherwise; and what
// devices open is where it was.
func TestBesideAtTheNextStart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	start := func(beside bool, then object) []string {
		var told []string
		book, address, stop := runWith(t, path, web.Running{Beside: beside, Network: loopback, AnnounceBeside: func(a []string, _ bool) { told = a }})
		r := &real{t: t, book: book, port: portOf(t, address)}
		r.client = r.windowAt(address)
		if status := r.ask("POST", "/api/beside", then, nil); status != 200 {
			t.Errorf("%v: %d", then, status)
		}
		stop()
		return told
	}
	first := start(true, object{})
	if len(first) != 1 {
		t.Fatalf("asked for on the command line: %q", first)
	}
	for _, test := range []struct {
		then object
		told []string
	}{
		{object{"on": true}, nil},
		{object{"on": true, "always": true}, nil},
		{object{"on": false}, first},
		{object{"on": false, "always": false}, first},
		{object{}, nil},
	} {
		if told := start(false, test.then); !slices.Equal(told, test.told) {
			t.Errorf("it listened at %q, want %q; then %v", told, test.told, test.then)
		}
	}
}

// A device is paired by the code that the page shows, sees the warps in hand, and is told
// when it is let in no more.
func TestADeviceIsPaired(t *testing.T) {
	b := newBesides(t)
	d, id := b.pair("kitchen tablet")
	got := d.ask("GET", "/api/hand", nil)
	var hand struct {
		Device string
		Warps  []struct {
			ID          int
			Name, Stage string
		}
	}
	if err := json.Unmarshal([]byte(got.body), &hand); err != nil || got.status != 200 {
		t.Fatal(got, err)
	}
	if hand.Device != "kitchen tablet" || len(hand.Warps) != 4 || hand.Warps[0].Name == "" || hand.Warps[0].Stage == "" {
		t.Errorf("in hand: %+v", hand)
	}
	at := "/api/documents/" + itoa(hand.Warps[0].ID) + "/log"
	if got := d.ask("POST", at, object{"id": "note-of-a-device", "window": "w", "what": "note", "note": "from the loom"}); got.status != 200 {
		t.Errorf("a note: %d %s", got.status, got.body)
	}
	b.holdsAsText("/api/documents/"+itoa(hand.Warps[0].ID)+"/events?topic=log", "from the loom", 1)
	var now struct {
		Devices []struct {
			ID, Name string
			Revoked  bool
		}
	}
	b.ask("POST", "/api/devices/"+id, object{"name": "loom room"}, &now)
	if len(now.Devices) != 1 || now.Devices[0].Name != "loom room" || now.Devices[0].Revoked {
		t.Errorf("called otherwise: %+v", now)
	}
	var no answered
	if status := b.ask("POST", "/api/devices/"+id, object{"name": ""}, &no); status != 422 || no.Problems[0].Code != "name.missing" {
		t.Errorf("called nothing: %d %+v", status, no)
	}
	b.ask("POST", "/api/devices/"+id+"/revoke", object{}, &now)
	if !now.Devices[0].Revoked {
		t.Errorf("revoked: %+v", now)
	}
	if status := b.ask("POST", "/api/devices/nobody/revoke", object{}, &no); status != 404 {
		t.Errorf("nobody was revoked: %d", status)
	}
	if got := d.ask("GET", "/api/hand", nil); got.status != 401 || !strings.Contains(got.body, "request.device") {
		t.Errorf("after that: %d %s", got.status, got.body)
	}
}

// follow is what a device hears.
func (d device) follow() (<-chan string, *http.Response) {
	d.b.t.Helper()
	req, err := http.NewRequestWithContext(d.b.t.Context(), "GET", "http://"+d.b.at+"/api/events", nil)
	if err != nil {
		d.b.t.Fatal(err)
	}
	req.Header.Set("Cookie", d.cookie)
	answer, err := http.DefaultTransport.RoundTrip(req)
	if err != nil || answer.StatusCode != 200 {
		d.b.t.Fatal(answer, err)
	}
	lines := make(chan string, 100)
	go func() {
		defer close(lines)
		defer answer.Body.Close()
		for in := bufio.NewScanner(answer.Body); in.Scan(); {
			if line, ok := strings.CutPrefix(in.Text(), "data: "); ok {
				lines <- line
			}
		}
	}()
	return lines, answer
}

// A device hears of warps in hand; of others only that the list is another; of nothing
// else. What it hears ends at once when it is revoked, and the others hear on.
func TestADeviceHears(t *testing.T) {
	b := newBesides(t)
	one, id := b.pair("one")
	two, _ := b.pair("two")
	first, _ := one.follow()
	second, _ := two.follow()
	next := func(lines <-chan string) string {
		select {
		case line, open := <-lines:
			if !open {
				return "the end"
			}
			return line
		case <-time.After(10 * time.Second):
			return "silence"
		}
	}
	for _, lines := range []<-chan string{first, second} {
		if got := next(lines); got != `{"program":"test"}` {
			t.Fatal("begins with", got)
		}
	}
	warp, version := b.warpNamed("Galley towels")
	other, otherVersion := b.finishedWarp()
	b.ask("POST", "/api/yarns", object{"window": "w", "name": "white"}, nil)
	b.ask("POST", "/api/documents/"+itoa(warp)+"/changes", edit(version, "w", "note", "x"), nil)
	b.ask("POST", "/api/documents/"+itoa(other)+"/changes", edit(otherVersion, "w", "note", "x"), nil)
	if got, want := next(first), `{"kind":"warp","id":`+itoa(warp)+`,"version":`+itoa(version+1)+`,"act":"edit","window":"w"}`; got != want {
		t.Errorf("of a warp in hand it hears %s, want %s", got, want)
	}
	if got, want := next(first), `{"kind":"warp","id":0,"version":0,"act":"amend","window":""}`; got != want {
		t.Errorf("of another it hears %s, want %s", got, want)
	}
	b.ask("POST", "/api/devices/"+id+"/revoke", object{}, nil)
	if got := next(first); got != "the end" {
		t.Errorf("revoked, it hears %s", got)
	}
	next(second)
	next(second)
	b.ask("POST", "/api/documents/"+itoa(warp)+"/changes", edit(version+1, "w", "note", "y"), nil)
	if got := next(second); !strings.Contains(got, `"version":`+itoa(version+2)) {
		t.Errorf("the other one hears %s", got)
	}
	b.server.TurnBesideOff()
	if got := next(second); got != "the end" {
		t.Errorf("turned off, it hears %s", got)
	}
}

// finishedWarp is a warp of the demo that is not in hand.
func (r *real) finishedWarp() (id, version int) {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/warps?stage=finished", nil, &l)
	if len(l.Items) == 0 {
		r.t.Fatal("no warp is finished")
	}
	return l.Items[0].ID, l.Items[0].Version
}

// The square leads to the address with the code behind #; it is there while the code is.
func TestTheCodeIsDrawn(t *testing.T) {
	b := newBesides(t)
	at := "/api/beside/code.svg?address=http://" + b.at + "/"
	if status := b.ask("GET", at, nil, nil); status != 404 {
		t.Errorf("without a code: %d", status)
	}
	b.offer()
	answer, err := b.client.Get(b.url(at))
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	data, _ := io.ReadAll(answer.Body)
	if answer.StatusCode != 200 || answer.Header.Get("Content-Type") != "image/svg+xml" || !bytes.HasPrefix(data, []byte("<svg ")) {
		t.Errorf("%s: %.100s", answer.Status, data)
	}
	if kept := answer.Header.Get("Cache-Control"); kept != "no-store" {
		t.Errorf("it may be kept: %q", kept)
	}
	for _, other := range []string{"", "http://weaver.example/", "http://127.0.0.1:1/"} {
		if status := b.ask("GET", "/api/beside/code.svg?address="+other, nil, nil); status != 404 {
			t.Errorf("drawn for %q: %d", other, status)
		}
	}
}
