package web

import (
	"net/http"
	"slices"
	"strings"
)

// lets is whom a route of devices lets in.
type lets int

const (
	anyone  lets = iota // what a device is shown before it is paired
	paired              // a device that was let in
	ofWarp              // such a device, and {id} is a warp in hand
	ofEvent             // such a device, and {event} is of a warp in hand
)

// deviceRoute is one thing that a device beside the loom can ask for.
type deviceRoute struct {
	pattern string
	says    string
	lets    lets
	most    int64 // bytes that a body may have; 0: mostDeviceBody
	// do is nil where it is the route of the page with the same pattern.
	do func(*Server, http.ResponseWriter, *http.Request)
}

// deviceRoutes are all that devices have: what loomside needs, and nothing else of the
// book. A route of the page comes to them by one line here, and by that alone.
var deviceRoutes = []deviceRoute{
	{pattern: "GET /{$}", says: "the page of a device", do: (*Server).devicePage},
	{pattern: "GET /pair", says: "the page of a device, to be paired", do: (*Server).devicePage},
	{pattern: "GET /loomside/{id}", says: "the page of a device, at a warp", do: (*Server).devicePage},
	{pattern: "GET /static/", says: "what the page is drawn with"},
	{pattern: "POST /api/pair", says: "lets a device in by the code that the computer shows", do: (*Server).pairedNow},
	{pattern: "GET /api/hand", says: "the warps in hand", lets: paired, do: (*Server).hand},
	{pattern: "GET /api/events", says: "what changes, as it changes", lets: paired, do: (*Server).deviceStream},
	{pattern: "GET /api/documents/{id}", says: "which version a warp in hand has", lets: ofWarp, do: (*Server).held},
	{pattern: "POST /api/documents/{id}/start", says: "freezes the plan: work begins", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/amend", says: "says what stands on the loom", lets: ofWarp},
	{pattern: "POST /api/events/{event}/cancel", says: "takes an event of a warp in hand back", lets: ofEvent},
	{pattern: "GET /api/documents/{id}/loomside", says: "what is to be done at the loom, and how far it is", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/reached", says: "says how far a step at the loom is", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/chosen", says: "says how something is done at the loom", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/tape", says: "says what the tape reads", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/weighed", says: "says what is left of a weft yarn", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/log", says: "writes into the log of a warp", lets: ofWarp},
	{pattern: "GET /api/documents/{id}/events", says: "what happened to a warp", lets: ofWarp},
	{pattern: "GET /api/documents/{id}/hours", says: "the hours at the loom so far and to go", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/sit-down", says: "begins a sitting at the loom", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/stand-up", says: "ends it", lets: ofWarp},
	{pattern: "POST /api/documents/{id}/photographs", says: "takes a photograph into its log", lets: ofWarp, most: mostPhotoBody},
	{pattern: "GET /api/photographs/{event}", says: "a photograph of a log", lets: ofEvent},
}

// handler is what a route does: its own, or that of the page's route.
func (d deviceRoute) handler(s *Server) http.Handler {
	if d.do != nil {
		return route{do: d.do}.handler(s)
	}
	at := slices.IndexFunc(s.routes, func(r route) bool { return r.pattern == d.pattern })
	if at < 0 {
		panic("internal error: the page has no route " + d.pattern)
	}
	return s.routes[at].handler(s)
}

// DeviceRoutes lists the routes of devices as METHOD PATH.
func DeviceRoutes() []string {
	var out []string
	for _, r := range deviceRoutes {
		out = append(out, strings.TrimSuffix(r.pattern, "{$}"))
	}
	slices.Sort(out)
	return out
}

// devicePage is served to anyone: it holds nothing of the book.
func (s *Server) devicePage(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(BesidePage()) // who asked may have gone
}
