package web_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"

	"sley/internal/face/web"
)

// raw sends a request as it is written, and gives the status and the answer.
func (r *real) raw(text string) (string, string) {
	r.t.Helper()
	conn, err := net.Dial("tcp", net.JoinHostPort("127.0.0.1", r.port))
	if err != nil {
		r.t.Fatal(err)
	}
	defer conn.Close()
	text = strings.ReplaceAll(strings.ReplaceAll(text, "PORT", r.port), "\n", "\r\n")
	if _, err := io.WriteString(conn, text+"Connection: close\r\n\r\n"); err != nil {
		r.t.Fatal(err)
	}
	data, _ := io.ReadAll(conn)
	head, body, _ := strings.Cut(string(data), "\r\n\r\n")
	status, _, _ := strings.Cut(head, "\r\n")
	return strings.TrimPrefix(status, "HTTP/1.1 "), body
}

const cookie = "Cookie: sley-PORT=" + token + "\n"

// What comes from elsewhere is not let through, each with its reason.
func TestGuards(t *testing.T) {
	r := newReal(t)
	for _, test := range []struct{ what, request, status, code string }{
		{"our own page", "GET /api/book HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "200 OK", `"place"`},
		{"by this machine's other name", "GET /api/book HTTP/1.1\nHost: localhost:PORT\n" + cookie, "200 OK", `"place"`},
		{"another name that leads here", "GET /api/book HTTP/1.1\nHost: weaver.example:PORT\n" + cookie, "421", "request.host"},
		{"our name without the port", "GET /api/book HTTP/1.1\nHost: 127.0.0.1\n" + cookie, "421", "request.host"},
		{"our name with a name behind", "GET /api/book HTTP/1.1\nHost: 127.0.0.1.weaver.example:PORT\n" + cookie, "421", "request.host"},
		{"no token", "GET /api/book HTTP/1.1\nHost: 127.0.0.1:PORT\n", "401", "request.token"},
		{"no token for the page", "GET / HTTP/1.1\nHost: 127.0.0.1:PORT\n", "401", "request.token"},
		{"another token", "GET /api/book HTTP/1.1\nHost: 127.0.0.1:PORT\nCookie: sley-PORT=guess\n", "401", "request.token"},
		{"an empty token", "GET /api/book HTTP/1.1\nHost: 127.0.0.1:PORT\nCookie: sley-PORT=\n", "401", "request.token"},
		{"opened with another token", "GET /open/guess HTTP/1.1\nHost: 127.0.0.1:PORT\n", "401", "request.token"},
		{
			"a form of another page's", "POST /api/demo/clear HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie +
				"Origin: http://weaver.example\nContent-Type: application/json\nContent-Length: 0\n", "403", "request.cross-origin",
		},
		{
			"a script of another page's", "POST /api/demo/clear HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie +
				"Sec-Fetch-Site: cross-site\nContent-Type: application/json\nContent-Length: 0\n", "403", "request.cross-origin",
		},
		{"another port of this machine", "POST /api/demo/clear HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie +
			"Origin: http://127.0.0.1:1\nContent-Length: 0\n", "403", "request.cross-origin"},
		{"out of the folder", "GET /static/../server.go HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "307", ""},
		{"out of the folder, hidden", "GET /static/..%2f..%2fserver.go HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "404", ""},
		{"out of the folder, twice hidden", "GET /static/%2e%2e/%2e%2e/etc/passwd HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "404", ""},
		{"nothing there", "GET /api/secrets HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "404", "request.route"},
		{"another method", "DELETE /api/warps HTTP/1.1\nHost: 127.0.0.1:PORT\n" + cookie, "404", "request.route"},
		{"no Host", "GET /api/book HTTP/1.1\n" + cookie, "400", ""},
		{"a large head", "GET /api/book HTTP/1.1\nHost: 127.0.0.1:PORT\nX: " + strings.Repeat("x", 1<<20) + "\n", "431", ""},
	} {
		status, body := r.raw(test.request)
		if !strings.HasPrefix(status, test.status) || !strings.Contains(body, test.code) {
			t.Errorf("%s: %s %.200s, want %s %s", test.what, status, body, test.status, test.code)
		}
	}
	if n := r.warps(); n == 0 {
		t.Error("a request from elsewhere cleared the demo")
	}
}

func (r *real) warps() int {
	var l list
	r.ask("GET", "/api/warps", nil, &l)
	return l.Total
}

// The headers that keep a page to itself are on every answer, refusals too.
func TestHeaders(t *testing.T) {
	r := newReal(t)
	for _, path := range []string{"/", "/api/book", "/api/nothing", "/static/nothing"} {
		answer, err := r.client.Get(r.url(path))
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		for name, want := range map[string]string{
			"Content-Security-Policy": policy, "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
		} {
			if got := answer.Header.Get(name); got != want {
				t.Errorf("%s: %s is %q, want %q", path, name, got, want)
			}
		}
		if path != "/static/nothing" && answer.Header.Get("Cache-Control") != "no-store" {
			t.Errorf("%s may be kept: %q", path, answer.Header.Get("Cache-Control"))
		}
	}
	jar := r.client.Jar.Cookies(mustURL(t, r.url("/")))
	if len(jar) != 1 {
		t.Errorf("%d cookies", len(jar))
	}
}

// The cookie cannot be read by a script, nor is it sent with what other pages ask.
func TestCookie(t *testing.T) {
	r := newReal(t)
	once := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	answer, err := once.Get(web.Address(r.port, token))
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	got := answer.Header.Get("Set-Cookie")
	for _, want := range []string{"HttpOnly", "SameSite=Strict", "Path=/"} {
		if !strings.Contains(got, want) {
			t.Errorf("the cookie %q lacks %s", got, want)
		}
	}
}

func gzipped(text string) []byte {
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	io.WriteString(w, text)
	w.Close()
	return out.Bytes()
}

// Bodies that are no JSON, too much of it or not all of it are told so, and change nothing.
func TestBodies(t *testing.T) {
	r := newReal(t)
	id, version, name := r.firstWarp()
	path := r.url("/api/documents/" + itoa(id) + "/changes")
	good := `{"base":` + itoa(version) + `,"window":"w","set":[{"path":"note","value":"x"}]}`
	for _, test := range []struct {
		what, kind, encoding string
		body                 io.Reader
		status               int
	}{
		{"a form", "application/x-www-form-urlencoded", "", strings.NewReader("base=1"), 415},
		{"plain text that is JSON", "text/plain", "", strings.NewReader(good), 415},
		{"no type", "", "", strings.NewReader(good), 415},
		{"compressed", "application/json", "gzip", bytes.NewReader(gzipped(good)), 415},
		{"a bomb", "application/json", "gzip", bytes.NewReader(gzipped(strings.Repeat(" ", 50<<20))), 415},
		{"nothing", "application/json", "", strings.NewReader(""), 400},
		{"half of it", "application/json", "", strings.NewReader(good[:len(good)/2]), 400},
		{"more than one", "application/json", "", strings.NewReader(good + good), 400},
		{"a list", "application/json", "", strings.NewReader("[]"), 400},
		{"a key that is not known", "application/json", "", strings.NewReader(`{"bass":1}`), 400},
		{"a text for a number", "application/json", "", strings.NewReader(`{"base":"1"}`), 400},
		{"deep", "application/json", "", strings.NewReader(strings.Repeat("[", 1<<20)), 400},
		{"too large", "application/json", "", strings.NewReader(`{"window":"` + strings.Repeat("x", 11<<20) + `"}`), 413},
	} {
		req, _ := http.NewRequest("POST", path, test.body)
		if test.kind != "" {
			req.Header.Set("Content-Type", test.kind)
		}
		if test.encoding != "" {
			req.Header.Set("Content-Encoding", test.encoding)
		}
		answer, err := r.client.Do(req)
		if err != nil {
			t.Fatal(test.what, err)
		}
		data, _ := io.ReadAll(answer.Body)
		answer.Body.Close()
		if answer.StatusCode != test.status || !bytes.Contains(data, []byte(`"says"`)) {
			t.Errorf("%s: %d %s, want %d", test.what, answer.StatusCode, data, test.status)
		}
	}
	if _, now, same := r.firstWarp(); now != version || same != name {
		t.Errorf("a body that was refused made version %d", now)
	}
}
