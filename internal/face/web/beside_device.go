package web

import (
	"net/http"
	"time"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// cookieLasts is how long a device stays paired that is not used: browsers keep no cookie
// for longer than 400 days (RFC 6265bis).
const cookieLasts = 400 * 24 * time.Hour

// pairedNow lets a device in by a code. Whoever tries too often from one address waits.
func (s *Server) pairedNow(w http.ResponseWriter, r *http.Request) {
	l := r.Context().Value(listeningKey{}).(*listening)
	from := addressOf(r.RemoteAddr)
	var in struct{ Code, Name string }
	if !asked(w, r, &in) {
		return
	}
	if !s.beside.tries.may(from, time.Now()) {
		w.Header().Set("Retry-After", "300")
		refuse(w, http.StatusTooManyRequests, "request.often")
		return
	}
	p, list, err := s.Book.Pair(r.Context(), in.Code, in.Name)
	if err == nil && !list.Failed() {
		s.beside.tries.forget(from)
		putCookie(w, l, p.Token)
	}
	s.listed(w, r, map[string]string{"id": p.Device.ID, "name": p.Device.Name}, list, err)
}

// putCookie puts a token into a cookie that no script reads and that goes with no request
// of another page.
func putCookie(w http.ResponseWriter, l *listening, token string) {
	http.SetCookie(w, &http.Cookie{
		Name: deviceCookie(l), Value: token, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode,
		MaxAge: int(cookieLasts / time.Second),
	})
}

type (
	handJSON struct {
		Device string     `json:"device"` // as the weaver calls it
		Warps  []heldJSON `json:"warps"`
	}
	// heldJSON is a warp in hand, and nothing of it but what a list beside the loom says.
	heldJSON struct {
		ID       record.ID     `json:"id"`
		Name     string        `json:"name"`
		Stage    string        `json:"stage"`
		Next     string        `json:"next,omitempty"`
		Progress *progressJSON `json:"progress,omitempty"`
	}
)

// mostHeld is how many warps in hand are listed.
const mostHeld = 200

// hand lists the warps in hand. A device asks for it each time it is used: its cookie lasts
// from then on.
func (s *Server) hand(w http.ResponseWriter, r *http.Request) {
	from := r.Context().Value(deviceKey{}).(asking)
	putCookie(w, r.Context().Value(listeningKey{}).(*listening), from.token)
	cards, _, err := s.Book.List(r.Context(), record.Query{Kind: record.Warp, Stage: record.InHand, Most: mostHeld})
	out := handJSON{Device: from.Name, Warps: []heldJSON{}}
	for _, c := range cards {
		one := heldJSON{ID: c.ID, Name: c.Name, Stage: present.StageOf(c.Facts.Stage)}
		one.Next, _ = present.NextOf(c)
		if c.Woven > 0 {
			one.Progress = &progressJSON{c.Woven, c.Facts.Picks}
		}
		out.Warps = append(out.Warps, one)
	}
	s.listed(w, r, out, nil, err)
}

// heldDocumentJSON is what a device is told of a warp as a document: what it has to say when
// work begins or an amendment is made, and nothing of the plan.
type heldDocumentJSON struct {
	ID      record.ID `json:"id"`
	Name    string    `json:"name"`
	Version int       `json:"version"`
	Started bool      `json:"started"`
}

// held tells which version a warp in hand has.
func (s *Server) held(w http.ResponseWriter, r *http.Request) {
	id, ok := idOf(w, r)
	if !ok {
		return
	}
	shown, err := s.Book.Show(r.Context(), id)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	reply(w, http.StatusOK, heldDocumentJSON{shown.ID, shown.Name, shown.Version, shown.Started})
}

// deviceStream tells a device of changes of warps: of those in hand which it was, of others
// only that the list may be another. It ends when the device is revoked.
func (s *Server) deviceStream(w http.ResponseWriter, r *http.Request) {
	device := r.Context().Value(deviceKey{}).(asking)
	s.follow(w, r, func(c app.Changed) (_ app.Changed, tell, goOn bool) {
		switch {
		case c.Kind == record.Warp:
			in, err := s.Book.InHand(r.Context(), c.ID)
			if !in {
				c = app.Changed{Kind: record.Warp, Act: c.Act}
			}
			return c, true, err == nil
		case c.ID == 0:
			return c, false, s.letIn(r, device.ID)
		}
		return c, false, true
	})
}

// letIn says whether a device is let in still.
func (s *Server) letIn(r *http.Request, id string) bool {
	all, err := s.Book.Devices(r.Context())
	for _, d := range all {
		if d.ID == id {
			return err == nil && !d.Revoked
		}
	}
	return false
}
