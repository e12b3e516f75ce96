package web

import (
	"bytes"
	"compress/gzip"
	"embed"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
	"time"
)

//go:embed static
var static embed.FS

// indexName is the page itself: it names all other files and has no hash, so that it
// is served anew each time, and not by Assets.
const indexName = "index.html"

// besideName is the page of a device beside the loom, of which the same holds.
const besideName = "beside.html"

// types of the files, which the system's own table may not know or may call otherwise.
var types = map[string]string{
	".js":    "text/javascript; charset=utf-8",
	".css":   "text/css; charset=utf-8",
	".svg":   "image/svg+xml",
	".txt":   "text/plain; charset=utf-8",
	".woff2": "font/woff2",
	".webm":  "video/webm",
	".mp4":   "video/mp4",
}

// asset is a file that is served. packed is its gzip form, made when it is first asked
// for; it is nil where that is not smaller, as for fonts, which are packed already.
type asset struct {
	kind   string
	plain  []byte
	packed func() []byte
}

// IndexPage is the HTML of the page, in UTF-8. It has no script and no style within, so
// that a content security policy may forbid both. The bytes are the caller's own.
func IndexPage() []byte { return pageNamed(indexName) }

// BesidePage is the same for a device beside the loom. It holds nothing of a book.
func BesidePage() []byte { return pageNamed(besideName) }

func pageNamed(name string) []byte {
	page, err := static.ReadFile("static/" + name)
	if err != nil {
		panic(err) // embedded: it cannot be missing
	}
	return page
}

// Assets serves the files that the page names, at /static/NAME. Every name holds a hash
// of the content, so that browsers may keep a file for ever; a name that is not known
// is 404, a method other than GET and HEAD 405.
func Assets() http.Handler {
	served := assets()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		one, known := served[strings.TrimPrefix(r.URL.Path, "/static/")]
		switch {
		case !known:
			http.NotFound(w, r)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "method not allowed", http.StatusMethodNotAllowed)
		default:
			one.serve(w, r)
		}
	})
}

var assets = sync.OnceValue(func() map[string]asset {
	all := map[string]asset{}
	entries, err := static.ReadDir("static")
	if err != nil {
		panic(err) // embedded
	}
	for _, entry := range entries {
		if entry.Name() != indexName && entry.Name() != besideName {
			all[entry.Name()] = newAsset(static, "static/"+entry.Name())
		}
	}
	return all
})

func newAsset(tree fs.FS, name string) asset {
	plain, err := fs.ReadFile(tree, name)
	if err != nil {
		panic(err) // embedded
	}
	return asset{
		kind:   types[path.Ext(name)],
		plain:  plain,
		packed: sync.OnceValue(func() []byte { return pack(plain) }),
	}
}

// pack returns the gzip form, nil when it saves less than a tenth.
func pack(plain []byte) []byte {
	var packed bytes.Buffer
	w, _ := gzip.NewWriterLevel(&packed, gzip.BestCompression) // the level is a right one
	w.Write(plain)                                             // a buffer takes everything
	w.Close()
	if packed.Len() > len(plain)*9/10 {
		return nil
	}
	return packed.Bytes()
}

func (a asset) serve(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	head.Set("Content-Type", a.kind)
	head.Set("Cache-Control", "public, max-age=31536000, immutable")
	head.Set("X-Content-Type-Options", "nosniff")
	if strings.HasPrefix(a.kind, "video/") {
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(a.plain)) // some browsers ask for it piece by piece
		return
	}
	head.Set("Vary", "Accept-Encoding")
	body := a.plain
	if takesGzip(r.Header.Values("Accept-Encoding")) && a.packed() != nil {
		head.Set("Content-Encoding", "gzip")
		body = a.packed()
	}
	head.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method != http.MethodHead {
		w.Write(body)
	}
}

// takesGzip reads Accept-Encoding (RFC 9110, section 12.5.3): gzip, or anything, with a
// weight that is not nought. gzip by name outweighs the star.
func takesGzip(accept []string) bool {
	wanted := map[string]bool{}
	for _, one := range strings.Split(strings.Join(accept, ","), ",") {
		coding, params, _ := strings.Cut(one, ";")
		wanted[strings.ToLower(strings.TrimSpace(coding))] = weight(params) > 0
	}
	if takes, named := wanted["gzip"]; named {
		return takes
	}
	return wanted["*"]
}

// weight is the q of a parameter list, 1 without one, 0 when it cannot be read.
func weight(params string) float64 {
	if strings.TrimSpace(params) == "" {
		return 1
	}
	_, read, err := mime.ParseMediaType("any/any;" + params)
	if err != nil {
		return 0
	}
	q, given := read["q"]
	if !given {
		return 1
	}
	value, err := strconv.ParseFloat(q, 64)
	if err != nil {
		return 0
	}
	return value
}
