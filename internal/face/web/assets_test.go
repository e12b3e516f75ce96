package web

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"sley/third_party/fonts"
)

// named are the addresses in the page and in its style, which are all that a browser
// may ask for.
var named = regexp.MustCompile(`(?:href|src)="/static/([^"]+)"|url\("?\./([^")]+)"?\)|"\./([^"]+\.(?:mp4|webm))"`)

func ask(method, target, accept string) *http.Response {
	r := httptest.NewRequest(method, target, nil)
	if accept != "" {
		r.Header.Set("Accept-Encoding", accept)
	}
	w := httptest.NewRecorder()
	Assets().ServeHTTP(w, r)
	return w.Result()
}

func bodyOf(t *testing.T, r *http.Response) []byte {
	t.Helper()
	body, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

// TestEveryNameThePageSaysIsServed, and nothing else is carried about for nothing.
func TestEveryNameThePageSaysIsServed(t *testing.T) {
	text := string(IndexPage()) + string(BesidePage())
	for name, a := range assets() {
		if strings.HasSuffix(name, ".css") || strings.HasPrefix(name, "beside-") { // whose script names its film
			text += string(a.plain)
		}
	}
	said := map[string]bool{}
	for _, m := range named.FindAllStringSubmatch(text, -1) {
		name := m[1] + m[2] + m[3]
		said[name] = true
		if r := ask("GET", "/static/"+name, ""); r.StatusCode != http.StatusOK {
			t.Errorf("%s: %s", name, r.Status)
		}
	}
	for name := range assets() {
		if !said[name] {
			t.Errorf("%s is named nowhere", name)
		}
	}
	if len(said) < 13 { // two scripts and styles, an icon, the licences, five fonts, a film twice
		t.Errorf("only %d names found: %v", len(said), said)
	}
}

// Some browsers play a film only where it comes piece by piece, as they ask for it.
func TestAFilmComesInPieces(t *testing.T) {
	films := 0
	for name, a := range assets() {
		if !strings.HasPrefix(a.kind, "video/") {
			continue
		}
		films++
		r := httptest.NewRequest("GET", "/static/"+name, nil)
		r.Header.Set("Range", "bytes=0-1")
		w := httptest.NewRecorder()
		Assets().ServeHTTP(w, r)
		if got := w.Result(); got.StatusCode != http.StatusPartialContent || w.Body.Len() != 2 || got.Header.Get("Content-Type") != a.kind {
			t.Errorf("%s: %s, %d bytes of %s", name, got.Status, w.Body.Len(), got.Header.Get("Content-Type"))
		}
	}
	if films != 2 {
		t.Errorf("%d films", films)
	}
}

func TestAssetsMayBeKeptForEver(t *testing.T) {
	hash := regexp.MustCompile(`-[A-Z0-9]{8}\.[a-z0-9]+$`)
	for name, a := range assets() {
		r := ask("GET", "/static/"+name, "")
		if !hash.MatchString(name) {
			t.Errorf("%s has no hash in its name", name)
		}
		if got := r.Header.Get("Cache-Control"); got != "public, max-age=31536000, immutable" {
			t.Errorf("%s: Cache-Control %q", name, got)
		}
		if got := r.Header.Get("Content-Type"); got == "" || got != a.kind {
			t.Errorf("%s: Content-Type %q", name, got)
		}
		if body := bodyOf(t, r); !bytes.Equal(body, a.plain) || r.Header.Get("Content-Length") != strconv.Itoa(len(body)) {
			t.Errorf("%s: %d bytes, Content-Length %s", name, len(body), r.Header.Get("Content-Length"))
		}
	}
}

func TestPackedIsTheSameUnpacked(t *testing.T) {
	packed := 0
	for name, a := range assets() {
		r := ask("GET", "/static/"+name, "br;q=1, gzip;q=0.5")
		if r.Header.Get("Content-Encoding") == "" {
			continue
		}
		packed++
		unpack, err := gzip.NewReader(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(unpack); err != nil || !bytes.Equal(got, a.plain) {
			t.Errorf("%s: %d bytes, %v", name, len(got), err)
		}
	}
	if packed < 3 || packed > len(assets())-5 { // script, style, licences; the fonts not
		t.Errorf("%d of %d files are packed", packed, len(assets()))
	}
}

func TestTakesGzip(t *testing.T) {
	for _, c := range []struct {
		accept string
		want   bool
	}{
		{"", false},
		{"gzip", true},
		{"deflate, GZIP ;q=0.1", true},
		{"gzip;q=0", false},
		{"gzip;q=0.000, *", false},
		{"*", true},
		{"*;q=0", false},
		{"identity, br", false},
		{"gzip;q=nonsense", false},
		{"gzip;level=9", true},
	} {
		if got := takesGzip([]string{c.accept}); got != c.want {
			t.Errorf("%q: %v", c.accept, got)
		}
	}
	if !takesGzip([]string{"br", "gzip"}) {
		t.Error("two headers count as one list")
	}
}

func TestWhatIsNotServed(t *testing.T) {
	for _, target := range []string{"/static/", "/static/index.html", "/static/none.js", "/static/..%2fassets.go"} {
		if r := ask("GET", target, ""); r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %s", target, r.Status)
		}
	}
	name := anyAsset(t)
	if r := ask("POST", name, ""); r.StatusCode != http.StatusMethodNotAllowed || r.Header.Get("Allow") != "GET, HEAD" {
		t.Errorf("POST: %s, Allow %q", r.Status, r.Header.Get("Allow"))
	}
	r := ask("HEAD", name, "")
	if r.StatusCode != http.StatusOK || len(bodyOf(t, r)) != 0 || r.Header.Get("Content-Length") == "0" {
		t.Errorf("HEAD: %s, Content-Length %s", r.Status, r.Header.Get("Content-Length"))
	}
}

func anyAsset(t *testing.T) string {
	t.Helper()
	for name := range assets() {
		return "/static/" + name
	}
	t.Fatal("no asset")
	return ""
}

// TestPageHasNothingThatAPolicyForbids: no script or style in the page, no address
// elsewhere, and what a reader of the page must have.
func TestPageHasNothingThatAPolicyForbids(t *testing.T) {
	page := string(IndexPage())
	for _, forbidden := range []string{"<style", "style=", "javascript:", "http:", "https:", "//"} {
		if strings.Contains(page, forbidden) {
			t.Errorf("the page holds %q", forbidden)
		}
	}
	if regexp.MustCompile(`\son\w+=`).MatchString(page) {
		t.Error("the page has a handler in an attribute")
	}
	if regexp.MustCompile(`<script[^>]*>[^<]`).MatchString(page) {
		t.Error("the page has a script within")
	}
	for _, wanted := range []string{`<html lang="en">`, "<title>", `name="viewport"`, "<noscript>"} {
		if !strings.Contains(page, wanted) {
			t.Errorf("the page lacks %s", wanted)
		}
	}
	IndexPage()[0] = 'x'
	if IndexPage()[0] == 'x' {
		t.Error("one caller's change reaches the next")
	}
}

// TestFontsAreNamedAsOnPaper: page and paper are set in the same families.
func TestFontsAreNamedAsOnPaper(t *testing.T) {
	for name, a := range assets() {
		if !strings.HasSuffix(name, ".css") {
			continue
		}
		for _, family := range []string{fonts.Serif, fonts.Sans} {
			if !regexp.MustCompile(`@font-face\{font-family:"?` + family + `"?;`).Match(a.plain) {
				t.Errorf("no font face %q in %s", family, name)
			}
		}
	}
}
