package web

import (
	"crypto/subtle"
	"fmt"
	"net/http"
	"runtime"
	"runtime/debug"
	"strings"

	"sley/internal/face/present"
)

// policy lets the page load what comes from here and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; " +
	"require-trusted-types-for 'script'; trusted-types 'none'"

// headers go with every answer.
var headers = map[string]string{
	"Content-Security-Policy":      policy,
	"X-Content-Type-Options":       "nosniff",
	"Referrer-Policy":              "no-referrer",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), microphone=(), geolocation=()",
}

// guarded puts the guards before the routes: a request is for this machine by name, comes
// from our own page, and carries the token; whatever breaks is contained.
func (s *Server) guarded(next http.Handler) http.Handler {
	origins := http.NewCrossOriginProtection()
	origins.SetDenyHandler(http.HandlerFunc(crossOrigin))
	inner := s.contained(s.named(origins.Handler(s.known(next))))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range headers {
			w.Header().Set(name, value)
		}
		if !strings.HasPrefix(r.URL.Path, staticPath) {
			w.Header().Set("Cache-Control", "no-store")
		}
		inner.ServeHTTP(w, r)
	})
}

// named lets through what asks for this machine by its own names: a page from elsewhere
// whose name was made to lead here asks for another.
func (s *Server) named(next http.Handler) http.Handler {
	return namedAs(map[string]bool{"127.0.0.1:" + s.port: true, "localhost:" + s.port: true, "[::1]:" + s.port: true}, next)
}

// namedAs lets through what asks for one of these hosts.
func namedAs(hosts map[string]bool, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !hosts[strings.ToLower(r.Host)] {
			refuse(w, http.StatusMisdirectedRequest, "request.host")
			return
		}
		next.ServeHTTP(w, r)
	})
}

// cookieName differs by port: cookies know none, and two books may be open.
func (s *Server) cookieName() string { return "sley-" + s.port }

// known lets through what carries the token. The address with the token in it, and what
// the page is drawn with, need none.
func (s *Server) known(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, openPath) || strings.HasPrefix(r.URL.Path, staticPath) {
			next.ServeHTTP(w, r)
			return
		}
		for _, c := range r.CookiesNamed(s.cookieName()) {
			if same(c.Value, s.Token) {
				next.ServeHTTP(w, r)
				return
			}
		}
		refuse(w, http.StatusUnauthorized, "request.token")
	})
}

// same compares in a time that tells nothing.
func same(a, b string) bool { return b != "" && subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// The paths that need no token.
const (
	openPath   = "/open/"
	staticPath = "/static/"
)

// opened puts the token into a cookie and goes on to the page.
func (s *Server) opened(w http.ResponseWriter, r *http.Request) {
	if !same(r.PathValue("token"), s.Token) {
		refuse(w, http.StatusUnauthorized, "request.token")
		return
	}
	http.SetCookie(w, &http.Cookie{
		Name: s.cookieName(), Value: s.Token, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode,
	})
	http.Redirect(w, r, "/", http.StatusSeeOther)
}

// contained answers a fault of our own as one, and goes on serving.
func (s *Server) contained(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			fault := recover()
			if fault == nil {
				return
			}
			if fault == http.ErrAbortHandler {
				panic(fault)
			}
			report := s.report(r, fault, debug.Stack())
			s.Log.Error("a fault of our own", "report", report)
			reply(w, http.StatusInternalServerError, faultJSON{faultWords{present.OurFault(), report}})
		}()
		next.ServeHTTP(w, r)
	})
}

type (
	faultJSON struct {
		Fault faultWords `json:"fault"`
	}
	faultWords struct {
		Says   string `json:"says"`
		Report string `json:"report"`
	}
)

// report is what a person can send us: nothing of what she typed.
func (s *Server) report(r *http.Request, fault any, stack []byte) string {
	route := r.Pattern
	if route == "" {
		route = r.Method
	}
	return fmt.Sprintf("sley %s, %s %s/%s\n%s\n%v\n\n%s",
		s.Program, runtime.Version(), runtime.GOOS, runtime.GOARCH, route, fault, stack)
}
