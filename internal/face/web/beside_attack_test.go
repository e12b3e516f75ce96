package web_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"sley/internal/edge/photo/taken"
	"sley/internal/face/web"
)

// inPattern is a place of a pattern that anything can stand in.
var inPattern = regexp.MustCompile(`\{[a-z]+\}`)

// Whatever else the page can ask for is not there for a device: every route of the page
// that is not one of the devices' own, by name, is 404.
func TestDevicesHaveTheirRoutesAlone(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	warp, _ := b.warpNamed("Galley towels")
	tried := 0
	for _, route := range web.Routes() {
		if slices.Contains(web.DeviceRoutes(), route) {
			continue
		}
		method, path, _ := strings.Cut(route, " ")
		path = strings.ReplaceAll(strings.ReplaceAll(path, "{id}", itoa(warp)), "{stage}", "piece")
		path = inPattern.ReplaceAllString(path, token)
		for _, cookie := range []string{d.cookie, "", "sley-" + b.port + "=" + token} {
			var body any
			if method == "POST" {
				body = object{}
			}
			got := device{b, cookie}.ask(method, path, body)
			if got.status != 404 || !strings.Contains(got.body, "request.route") {
				t.Errorf("%s %s: %d %.100s", method, path, got.status, got.body)
			}
			tried++
		}
	}
	if tried < 200 {
		t.Errorf("only %d were tried", tried)
	}
	if n := b.warps(); n == 0 {
		t.Error("a device cleared the demo")
	}
}

// A device sees warps in hand: no yarn, loom or draft, no warp that is finished or was
// removed, and nothing tells it which of them there are.
func TestADeviceSeesWarpsInHandAlone(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	finished, _ := b.finishedWarp()
	yarn, _ := b.named("yarns", "handspun, grey ewe")
	loom, _ := b.named("looms", "countermarch, 120 cm")
	draft, _ := b.named("drafts", "Rosepath")
	removed, version := b.warpNamed("Galley towels")
	if status := b.ask("POST", "/api/documents/"+itoa(removed)+"/remove", object{"base": version, "window": "w"}, nil); status != 200 {
		t.Fatal(status)
	}
	var of []string
	for _, route := range web.DeviceRoutes() {
		if strings.Contains(route, "/documents/{id}") {
			of = append(of, route)
		}
	}
	if len(of) == 0 {
		t.Fatal("no route is of a document")
	}
	none := device{b, d.cookie}.ask("POST", "/api/documents/4711/log", object{})
	for _, route := range of {
		method, path, _ := strings.Cut(route, " ")
		for what, id := range map[string]int{"finished": finished, "a yarn": yarn, "a loom": loom, "a draft": draft, "removed": removed} {
			got := d.ask(method, strings.Replace(path, "{id}", itoa(id), 1), object{"id": "note-of-a-thief", "window": "w", "what": "note", "note": "x"})
			if got.status != 404 || got.body != none.body {
				t.Errorf("%s of what is %s: %d %s", route, what, got.status, got.body)
			}
		}
		for _, id := range []string{"0", "-1", "1e3", "99999999999999999999", "0x1"} {
			if got := d.ask(method, strings.Replace(path, "{id}", id, 1), object{}); got.status != 404 {
				t.Errorf("%s of %q: %d", route, id, got.status)
			}
		}
	}
	for what, event := range map[string]string{"of a yarn": b.someEvent(yarn, "stock"), "of what is finished": b.someEvent(finished, "log"), "of nothing": "nothing-of-it"} {
		got := d.ask("POST", "/api/events/"+event+"/cancel", object{"window": "w"})
		if got.status != 404 || got.body != none.body {
			t.Errorf("an event %s: %d %s", what, got.status, got.body)
		}
	}
	hand := d.ask("GET", "/api/hand?stage=finished&removed=true", nil)
	if strings.Contains(hand.body, "Galley towels") || strings.Contains(hand.body, fmt.Sprintf(`"id":%d,`, finished)) {
		t.Errorf("in hand: %s", hand.body)
	}
}

// someEvent is the first event of a document in a topic.
func (r *real) someEvent(id int, topic string) string {
	r.t.Helper()
	var all []struct{ ID string }
	if status := r.ask("GET", "/api/documents/"+itoa(id)+"/events?topic="+topic, nil, &all); status != 200 || len(all) == 0 {
		r.t.Fatalf("no event: %d", status)
	}
	return all[0].ID
}

// What a device is told of a warp as a document is what it has to say when it amends it:
// nothing of the plan.
func TestADeviceIsToldNothingOfThePlan(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	id, version := b.warpNamed("Galley towels")
	at := "/api/documents/" + itoa(id)
	if got, want := d.ask("GET", at, nil), fmt.Sprintf(`{"id":%d,"name":"Galley towels","version":%d,"started":false}`, id, version); got.body != want {
		t.Errorf("told %s, want %s", got.body, want)
	}
	if got := d.ask("POST", at+"/start", object{"base": version, "window": "w"}); got.status != 200 {
		t.Fatalf("work begins: %d %s", got.status, got.body)
	}
	if got := d.ask("POST", at+"/amend", object{"base": version, "window": "w", "set": []object{{"path": "ends", "value": 480}}}); got.status != 200 {
		t.Errorf("amended: %d %s", got.status, got.body)
	}
	for _, path := range []string{"name", "../name", "warp.sett", "loom.shafts"} {
		got := d.ask("POST", at+"/amend", object{"base": version + 1, "window": "w", "set": []object{{"path": path, "value": "1"}}})
		if got.status != 422 {
			t.Errorf("amended %s: %d %s", path, got.status, got.body)
		}
	}
}

// Codes that are guessed, or used before, let nobody in; who tries too often waits.
func TestCodesAreGuessed(t *testing.T) {
	b := newBesides(t)
	none := device{b: b}
	try := func(code string) says {
		return none.ask("POST", "/api/pair", object{"code": code, "name": "thief"})
	}
	if got := try("123456"); got.status != 422 || !strings.Contains(got.body, "pairing.none") {
		t.Errorf("without a code: %d %s", got.status, got.body)
	}
	used := b.offer()
	if got := try(used); got.status != 200 || !strings.Contains(got.head.Get("Set-Cookie"), "sley-beside-") {
		t.Fatalf("the right one: %d %s", got.status, got.body)
	}
	if got := try(used); got.status != 422 || got.head.Get("Set-Cookie") != "" || !strings.Contains(got.body, "pairing.none") {
		t.Errorf("the second time: %d %s", got.status, got.body)
	}
	code := b.offer()
	for i := range 3 {
		if got := try(another(code)); got.status != 422 || !strings.Contains(got.body, "pairing.code") {
			t.Errorf("guess %d: %d %s", i, got.status, got.body)
		}
	}
	for range 10 {
		got := try(code)
		if got.status != 429 || got.head.Get("Retry-After") == "" || !strings.Contains(got.body, "request.often") {
			t.Fatalf("after so many: %d %s", got.status, got.body)
		}
	}
	var now struct {
		Code    struct{ Digits string }
		Devices []object
	}
	b.ask("GET", "/api/beside", nil, &now)
	if len(now.Devices) != 1 || now.Code.Digits != code {
		t.Errorf("it stands so: %+v", now)
	}
	// From elsewhere in the network the code is good still: one machine cannot use it up.
	if got := b.from("127.0.0.2", "POST", "/api/pair", fmt.Sprintf(`{"code":%q,"name":"phone"}`, code)); got != 200 {
		t.Errorf("from elsewhere: %d", got)
	}
}

func another(code string) string {
	if code == "000000" {
		return "000001"
	}
	return "000000"
}

// from asks from another address of this machine.
func (b *besides) from(address, method, path, body string) int {
	b.t.Helper()
	dialer := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(address)}}
	transport := &http.Transport{DialContext: dialer.DialContext}
	defer transport.CloseIdleConnections()
	req, err := http.NewRequest(method, "http://"+b.at+path, strings.NewReader(body))
	if err != nil {
		b.t.Fatal(err)
	}
	req.Header.Set("Origin", "http://"+b.at)
	req.Header.Set("Content-Type", "application/json")
	answer, err := transport.RoundTrip(req)
	if err != nil {
		b.t.Skip("this machine has one address of its own only: ", err)
	}
	answer.Body.Close()
	return answer.StatusCode
}

// Tokens that are none, were revoked, are of another book, or of the page, let nobody in;
// nor does that of a device let anybody into the page.
func TestTokensAreReplayed(t *testing.T) {
	b, other := newBesides(t), newBesides(t)
	d, id := b.pair("phone")
	name, value, _ := strings.Cut(d.cookie, "=")
	_, port, _ := net.SplitHostPort(other.at)
	for what, cookie := range map[string]string{
		"none": "", "empty": name + "=", "the page's": "sley-" + b.port + "=" + token, "the page's, under our name": name + "=" + token,
		"cut off": name + "=" + value[1:], "longer": name + "=" + value + "A", "in capitals": name + "=" + strings.ToUpper(value),
		"under the name of the page": "sley-" + b.port + "=" + value, "quoted": name + `="` + value, "the id": name + "=" + id,
		"many before it": strings.Repeat(name+"=x; ", 50) + d.cookie,
	} {
		if got := (device{b, cookie}).ask("GET", "/api/hand", nil); got.status != 401 {
			t.Errorf("%s: %d", what, got.status)
		}
	}
	if got := (device{other, "sley-beside-" + port + "=" + value}).ask("GET", "/api/hand", nil); got.status != 401 {
		t.Errorf("in another book: %d", got.status)
	}
	for _, cookie := range []string{d.cookie, "sley-" + b.port + "=" + value} {
		req, _ := http.NewRequest("GET", b.url("/api/book"), nil)
		req.Header.Set("Cookie", cookie)
		if got := (device{b: b}).send(req); got.status != 401 {
			t.Errorf("into the page: %d", got.status)
		}
	}
	if got := d.ask("GET", "/api/hand", nil); got.status != 200 {
		t.Fatalf("its own: %d", got.status)
	}
	b.ask("POST", "/api/devices/"+id+"/revoke", object{}, nil)
	b.server.TurnBesideOff()
	addresses, err := b.server.TurnBesideOn(t.Context())
	if err != nil || mustURL(t, addresses[0]).Host != b.at {
		t.Fatal(addresses, err)
	}
	for range 3 {
		if got := d.ask("GET", "/api/hand", nil); got.status != 401 {
			t.Errorf("revoked: %d", got.status)
		}
	}
}

// raw sends a request as it is written to where devices are heard.
func (b *besides) raw(text string) (status, body string) {
	b.t.Helper()
	conn, err := net.Dial("tcp", b.at)
	if err != nil {
		b.t.Fatal(err)
	}
	defer conn.Close()
	conn.SetDeadline(time.Now().Add(20 * time.Second))
	text = strings.ReplaceAll(strings.ReplaceAll(text, "HERE", b.at), "\n", "\r\n")
	if _, err := io.WriteString(conn, text); err != nil {
		b.t.Fatal(err)
	}
	data, _ := io.ReadAll(conn)
	head, body, _ := strings.Cut(string(data), "\r\n\r\n")
	status, _, _ = strings.Cut(head, "\r\n")
	return strings.TrimPrefix(status, "HTTP/1.1 "), body
}

// What comes from elsewhere, by other names, methods or ways, is not let through.
func TestBesideGuards(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	warp, _ := b.warpNamed("Galley towels")
	own := "Host: HERE\nConnection: close\nCookie: " + d.cookie + "\n"
	note := fmt.Sprintf("POST /api/documents/%d/log HTTP/1.1\n", warp)
	const body = `{"id":"note-by-a-thief","window":"w","what":"note","note":"stolen"}`
	sent := "Content-Type: application/json\nContent-Length: " + itoa(len(body)) + "\n"
	for _, test := range []struct{ what, request, status, code string }{
		{"our own page", "GET /api/hand HTTP/1.1\n" + own + "\n", "200", "warps"},
		{"another name that leads here", "GET /api/hand HTTP/1.1\n" + strings.Replace(own, "HERE", "weaver.example", 1) + "\n", "421", "request.host"},
		{"a name with our port", "GET /api/hand HTTP/1.1\n" + strings.Replace(own, "HERE", "localhost:"+mustURL(t, "http://"+b.at).Port(), 1) + "\n", "421", "request.host"},
		{"our address without the port", "GET /api/hand HTTP/1.1\n" + strings.Replace(own, "HERE", "127.0.0.1", 1) + "\n", "421", "request.host"},
		{"our address with a name behind", "GET /api/hand HTTP/1.1\n" + strings.Replace(own, "HERE", "HERE.weaver.example", 1) + "\n", "421", "request.host"},
		{"the page's host", "GET /api/hand HTTP/1.1\n" + strings.Replace(own, "HERE", "127.0.0.1:"+b.port, 1) + "\n", "421", "request.host"},
		{"no host", "GET /api/hand HTTP/1.1\nConnection: close\n\n", "400", ""},
		{"two hosts", "GET /api/hand HTTP/1.1\nHost: weaver.example\n" + own + "\n", "400", ""},
		{"through us to elsewhere", "GET http://weaver.example/api/hand HTTP/1.1\n" + own + "\n", "421", "request.host"},
		{"a tunnel", "CONNECT weaver.example:80 HTTP/1.1\n" + strings.Replace(own, "HERE", "weaver.example:80", 1) + "\n", "421", "request.host"},

		{"a form of another page's", note + own + "Origin: http://weaver.example\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"without saying where from", note + own + sent + "\n" + body, "403", "request.cross-origin"},
		{"from nowhere", note + own + "Origin: null\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"from another port", note + own + "Origin: http://127.0.0.1:1\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"from the page", note + own + "Origin: http://127.0.0.1:" + b.port + "\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"ours, by another way", note + own + "Origin: https://HERE\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"ours, and a browser says no", note + own + "Origin: http://HERE\nSec-Fetch-Site: cross-site\n" + sent + "\n" + body, "403", "request.cross-origin"},
		{"pairing from another page", "POST /api/pair HTTP/1.1\n" + own + "Origin: http://weaver.example\n" + sent + "\n" + body, "403", "request.cross-origin"},

		{"two slashes", "GET //api/hand HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"two slashes further on", "GET /api//hand HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"dots", "GET /static/../api/book HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"hidden dots", "GET /static/%2e%2e/api/book HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"hidden slashes", "GET /static/..%2fapi%2fbook HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"slashes the other way", "GET /static/..%5c..%5capi HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"a hidden letter", "GET /api/%68and HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"a nought", "GET /static/x%00 HTTP/1.1\n" + own + "\n", "404", ""},
		{"a slash behind", "GET /api/hand/ HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"in capitals", "GET /API/hand HTTP/1.1\n" + own + "\n", "404", "request.route"},
		{"a folder", "GET /static/ HTTP/1.1\n" + own + "\n", "404", ""},
		{"the page of the book", "GET /static/index.html HTTP/1.1\n" + own + "\n", "404", ""},

		{"another method", "DELETE /api/hand HTTP/1.1\n" + own + "Origin: http://HERE\n\n", "404", "request.route"},
		{"reading by writing", "POST /api/hand HTTP/1.1\n" + own + "Origin: http://HERE\nContent-Length: 0\n\n", "404", "request.route"},
		{"writing by reading", strings.Replace(note, "POST", "GET", 1) + own + "\n", "404", "request.route"},
		{"a method of one's own", "STEAL /api/hand HTTP/1.1\n" + own + "Origin: http://HERE\n\n", "404", "request.route"},
		{"asking what is allowed", "OPTIONS /api/hand HTTP/1.1\n" + own + "Origin: http://HERE\n\n", "404", "request.route"},

		{"a large head", "GET /api/hand HTTP/1.1\n" + own + "X: " + strings.Repeat("x", 20<<10) + "\n\n", "431", ""},
		{"many heads", "GET /api/hand HTTP/1.1\n" + own + strings.Repeat("X: xxxxxxxxxxxxxxxx\n", 2000) + "\n", "431", ""},
		{"a long address", "GET /" + strings.Repeat("x", 20<<10) + " HTTP/1.1\n" + own + "\n", "431", ""},
		{"said twice how long", note + own + "Origin: http://HERE\nContent-Length: 1\nContent-Length: 2\n\n{}", "400", ""},
	} {
		status, got := b.raw(test.request)
		if !strings.HasPrefix(status, test.status) || !strings.Contains(got, test.code) {
			t.Errorf("%s: %s %.200s, want %s %s", test.what, status, got, test.status, test.code)
		}
	}
	events, err := b.client.Get(b.url("/api/documents/" + itoa(warp) + "/events?topic=log"))
	if err != nil {
		t.Fatal(err)
	}
	defer events.Body.Close()
	if data, _ := io.ReadAll(events.Body); bytes.Contains(data, []byte("stolen")) {
		t.Error("a request that was refused wrote into the log")
	}
}

// The cookie of a device cannot be read by a script, goes with no request of another page,
// and lasts. The headers that keep a page to itself are on every answer.
func TestBesideHeaders(t *testing.T) {
	b := newBesides(t)
	got := device{b: b}.ask("POST", "/api/pair", object{"code": b.offer(), "name": "phone"})
	cookie := got.head.Get("Set-Cookie")
	for _, want := range []string{"sley-beside-", "HttpOnly", "SameSite=Strict", "Path=/", "Max-Age=34560000"} {
		if !strings.Contains(cookie, want) {
			t.Errorf("the cookie %q lacks %s", cookie, want)
		}
	}
	value, _, _ := strings.Cut(cookie, ";")
	if again := (device{b, value}).ask("GET", "/api/hand", nil).head.Get("Set-Cookie"); again != cookie {
		t.Errorf("used again the cookie is %q, and was %q", again, cookie)
	}
	if strings.Contains(cookie, "Secure") {
		t.Errorf("over plain http %q is never sent back", cookie)
	}
	for _, path := range []string{"/", "/pair", "/loomside/1", "/api/hand", "/api/book", "/nothing"} {
		got := device{b: b}.ask("GET", path, nil)
		for name, want := range map[string]string{
			"Content-Security-Policy": policy + "; media-src 'self'", "X-Content-Type-Options": "nosniff",
			"Referrer-Policy": "no-referrer", "Cache-Control": "no-store",
		} {
			if got.head.Get(name) != want {
				t.Errorf("%s: %s is %q, want %q", path, name, got.head.Get(name), want)
			}
		}
		if got.head.Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s may be read by other pages", path)
		}
	}
}

// Bodies from beside the loom are small.
func TestBesideBodies(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	warp, _ := b.warpNamed("Galley towels")
	long := strings.Repeat("x", 1<<20+1)
	for _, path := range []string{"/api/pair", "/api/documents/" + itoa(warp) + "/log"} {
		if got := d.ask("POST", path, object{"note": long, "name": long}); got.status != 413 && got.status != 400 {
			t.Errorf("%s: %d %.200s", path, got.status, got.body)
		}
		if got := d.ask("POST", path, long); got.status != 413 {
			t.Errorf("%s, one long text: %d %.200s", path, got.status, got.body)
		}
	}
	for kind, want := range map[string]int{"text/plain": 415, "application/x-www-form-urlencoded": 415, "": 415} {
		req, _ := http.NewRequest("POST", "http://"+b.at+"/api/pair", strings.NewReader("{}"))
		req.Header.Set("Origin", "http://"+b.at)
		if kind != "" {
			req.Header.Set("Content-Type", kind)
		}
		if got := d.send(req); got.status != want {
			t.Errorf("a body of type %q: %d", kind, got.status)
		}
	}
}

// A photograph may be larger than other bodies, as it may on the page and no larger, and
// is shown to a device as long as its warp is in hand.
func TestPhotographsOfADevice(t *testing.T) {
	b := newBesides(t)
	d, _ := b.pair("phone")
	warp, version := b.warpNamed("Galley towels")
	send := func(body io.Reader) says {
		req, _ := http.NewRequest("POST", "http://"+b.at+b.photographsOf(warp)+"?id=photograph-1&window=w", body)
		req.Header.Set("Content-Type", "image/jpeg")
		req.Header.Set("Expect", "100-continue") // so that it is answered before it was sent
		req.Header.Set("Origin", "http://"+b.at)
		req.Header.Set("Cookie", d.cookie)
		return d.send(req)
	}
	large := io.MultiReader(bytes.NewReader(taken.JPEG(40, 30, 6)), bytes.NewReader(make([]byte, 2<<20)))
	if got := send(large); got.status != 200 {
		t.Fatalf("of 2 MB: %d %s", got.status, got.body)
	}
	if got := send(bytes.NewReader(make([]byte, 25<<20+1))); got.status != 413 {
		t.Errorf("of more than 25 MB: %d %.100s", got.status, got.body)
	}
	if got := d.ask("GET", "/api/photographs/photograph-1", nil); got.status != 200 || !strings.HasPrefix(got.head.Get("Content-Type"), "image/") {
		t.Errorf("shown: %d %s", got.status, got.head.Get("Content-Type"))
	}
	if status := b.ask("POST", "/api/documents/"+itoa(warp)+"/remove", object{"base": version, "window": "w"}, nil); status != 200 {
		t.Fatal(status)
	}
	if got := d.ask("GET", "/api/photographs/photograph-1", nil); got.status != 404 {
		t.Errorf("of a warp that was removed: %d", got.status)
	}
}

// Whoever opens connections without end, or says what is wanted a letter at a time, does
// not keep the devices of the weaver waiting.
func TestConnectionsAreCounted(t *testing.T) {
	if testing.Short() {
		t.Skip("it waits for a time limit")
	}
	t.Parallel()
	b := newBesides(t)
	var open []net.Conn
	for range 40 {
		conn, err := net.Dial("tcp", b.at)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		io.WriteString(conn, "GET /api/hand HT") // and no more
		open = append(open, conn)
	}
	begun := time.Now()
	closedAtOnce, closedLate := 0, 0
	for _, conn := range open {
		conn.SetReadDeadline(begun.Add(20 * time.Second))
		_, err := io.ReadAll(conn)
		if e, is := err.(net.Error); is && e.Timeout() {
			t.Fatal("a connection is open still")
		}
		if time.Since(begun) < 2*time.Second {
			closedAtOnce++
		} else {
			closedLate++
		}
	}
	if closedLate == 0 || time.Since(begun) > 15*time.Second {
		t.Errorf("%d were closed at once, %d later, after %s", closedAtOnce, closedLate, time.Since(begun))
	}
	if d, _ := b.pair("phone"); d.ask("GET", "/api/hand", nil).status != 200 {
		t.Error("the device is not heard")
	}
}

// The network is found, and nobody but this machine's neighbours is let in by mistake.
func TestLocalNetwork(t *testing.T) {
	n, err := web.LocalNetwork()
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range n.Addresses {
		if a.IsLoopback() || a.IsUnspecified() || !n.Public && a.IsGlobalUnicast() && !a.IsPrivate() && !a.IsLinkLocalUnicast() {
			t.Errorf("it would listen at %s", a)
		}
	}
	ctx, stop := context.WithTimeout(t.Context(), 10*time.Second)
	defer stop()
	if len(n.Addresses) == 0 {
		t.Skip("this machine is in no network")
	}
	r := newReal(t)
	addresses, err := r.server.TurnBesideOn(ctx)
	if err != nil || len(addresses) != len(n.Addresses) {
		t.Fatal(addresses, err)
	}
	for _, address := range addresses {
		answer, err := http.Get(address)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != 200 {
			t.Errorf("%s: %s", address, answer.Status)
		}
	}
}
