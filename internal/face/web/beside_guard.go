package web

import (
	"context"
	"net/http"
	"path"
	"strings"

	"sley/internal/trade/record"
)

// devicePolicy is that of the page, and lets a device play the silent film that keeps it
// awake.
const devicePolicy = policy + "; media-src 'self'"

// besideGuarded puts the guards before the routes of devices: a request is for one of the
// addresses that are listened on, its path is plain, what writes comes from our own page,
// and each route lets in whom it is for.
func (s *Server) besideGuarded(l *listening) http.Handler {
	mux := http.NewServeMux()
	for _, r := range deviceRoutes {
		mux.Handle(r.pattern, s.deviceHandler(l, r))
	}
	mux.HandleFunc("/", s.nothing)
	inner := s.contained(namedAs(l.hosts, plainly(fromOwnPage(mux))))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range headers {
			w.Header().Set(name, value)
		}
		w.Header().Set("Content-Security-Policy", devicePolicy)
		w.Header().Del("Cross-Origin-Opener-Policy") // over plain http browsers only complain of it
		if !strings.HasPrefix(r.URL.Path, staticPath) {
			w.Header().Set("Cache-Control", "no-store")
		}
		inner.ServeHTTP(w, r)
	})
}

// plainly lets through paths that are written as they are meant: no two slashes, no dots,
// nothing hidden by percent signs. No path of ours needs any.
func plainly(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.RawPath != "" || r.URL.Path != path.Clean("/"+r.URL.Path) && r.URL.Path != staticPath {
			refuse(w, http.StatusNotFound, "request.route")
			return
		}
		next.ServeHTTP(w, r)
	})
}

// fromOwnPage lets through what only reads, and what writes from our own page. Over plain
// http a browser says where a request comes from only by its Origin, so that must be there
// and be ours.
func fromOwnPage(next http.Handler) http.Handler {
	origins := http.NewCrossOriginProtection()
	origins.SetDenyHandler(http.HandlerFunc(crossOrigin))
	next = origins.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		reads := r.Method == http.MethodGet || r.Method == http.MethodHead
		if !reads && !strings.EqualFold(r.Header.Get("Origin"), "http://"+r.Host) {
			crossOrigin(w, r)
			return
		}
		next.ServeHTTP(w, r)
	})
}

func crossOrigin(w http.ResponseWriter, _ *http.Request) {
	refuse(w, http.StatusForbidden, "request.cross-origin")
}

// deviceHandler is a route of devices behind its guard.
func (s *Server) deviceHandler(l *listening, d deviceRoute) http.Handler {
	do := d.handler(s)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		most := d.most
		if most == 0 {
			most = mostDeviceBody
		}
		r.Body = http.MaxBytesReader(w, r.Body, most)
		r = r.WithContext(context.WithValue(r.Context(), listeningKey{}, l))
		if d.lets == anyone {
			do.ServeHTTP(w, r)
			return
		}
		device, known := s.deviceOf(w, r)
		if known && s.inHand(w, r, d.lets) {
			do.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), deviceKey{}, device)))
		}
	})
}

type (
	listeningKey struct{}
	deviceKey    struct{}
	// asking is the device that a request comes from, with what it proves itself by.
	asking struct {
		record.Device
		token string
	}
)

// deviceCookie differs by port, as that of the page.
func deviceCookie(l *listening) string { return "sley-beside-" + l.port }

// mostCookies is how many cookies of our name are looked at: a browser sends one.
const mostCookies = 3

// deviceOf is the device that a request comes from; it answers itself where that is none.
func (s *Server) deviceOf(w http.ResponseWriter, r *http.Request) (asking, bool) {
	all := r.CookiesNamed(deviceCookie(r.Context().Value(listeningKey{}).(*listening)))
	for _, c := range all[:min(len(all), mostCookies)] {
		d, known, err := s.Book.DeviceOf(r.Context(), c.Value)
		if err != nil {
			s.fail(w, r, err)
			return asking{}, false
		}
		if known {
			return asking{d, c.Value}, true
		}
	}
	refuse(w, http.StatusUnauthorized, "request.device")
	return asking{}, false
}

// inHand says whether what a request is of may be seen beside the loom; it answers itself
// where not: as what is not there, so that nothing can be learnt of it.
func (s *Server) inHand(w http.ResponseWriter, r *http.Request, lets lets) bool {
	is, err := true, error(nil)
	switch lets {
	case ofWarp:
		id, ok := idOf(w, r)
		if !ok {
			return false
		}
		is, err = s.Book.InHand(r.Context(), id)
	case ofEvent:
		is, err = s.Book.HappenedInHand(r.Context(), r.PathValue("event"))
	}
	if err != nil {
		s.fail(w, r, err)
		return false
	}
	if !is {
		refuse(w, http.StatusNotFound, "request.document")
	}
	return is
}
