package web

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
	"time"

	"rsc.io/qr"

	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

type (
	besideJSON struct {
		On        bool                 `json:"on"`
		Always    bool                 `json:"always"`  // with each start
		Network   string               `json:"network"` // private, public or none
		Moved     bool                 `json:"moved"`   // it listens in another network than this machine is in
		Addresses []string             `json:"addresses"`
		Code      *codeJSON            `json:"code,omitempty"`
		Devices   []present.DeviceJSON `json:"devices"`
	}
	// codeJSON is the code that is good now, and for how many seconds.
	codeJSON struct {
		Digits  string `json:"digits"`
		Seconds int    `json:"seconds"`
	}
)

// besideIs tells the page how it stands with devices beside the loom.
func (s *Server) besideIs(w http.ResponseWriter, r *http.Request) {
	out, err := s.besideNowJSON(r.Context())
	s.listed(w, r, out, nil, err)
}

func (s *Server) besideNowJSON(ctx context.Context) (besideJSON, error) {
	out := besideJSON{Network: "none", Addresses: []string{}}
	network, err := s.network()
	if err != nil {
		s.Log.Warn("the networks of this machine cannot be found out", "error", err)
	}
	if len(network.Addresses) > 0 {
		out.Network = map[bool]string{true: "public", false: "private"}[network.Public]
	}
	if l := s.besideNow(); l != nil {
		out.On, out.Addresses, out.Moved = true, l.addresses(), l.moved(network)
		if o, good := s.Book.OfferedPairing(); good {
			out.Code = &codeJSON{o.Code, int(o.Left / time.Second)}
		}
	}
	if out.Always, err = s.Book.BesideAlways(ctx); err != nil {
		return out, err
	}
	all, err := s.Book.Devices(ctx)
	out.Devices = present.DevicesJSONOf(all)
	return out, err
}

// besideSet turns it on or off, or says whether it comes on with each start.
func (s *Server) besideSet(w http.ResponseWriter, r *http.Request) {
	var in struct{ On, Always *bool }
	if !asked(w, r, &in) {
		return
	}
	if in.Always != nil {
		if err := s.Book.SetBesideAlways(r.Context(), *in.Always); err != nil {
			s.fail(w, r, err)
			return
		}
	}
	if in.On != nil && !*in.On {
		s.TurnBesideOff()
	}
	if in.On != nil && *in.On {
		if _, err := s.TurnBesideOn(r.Context()); err != nil {
			s.notListening(w, r, err)
			return
		}
	}
	s.besideIs(w, r)
}

// notListening says why nothing can be heard.
func (s *Server) notListening(w http.ResponseWriter, r *http.Request, err error) {
	var of *net.OpError
	if errors.Is(err, errNoNetwork) || errors.As(err, &of) {
		s.Log.Warn("nobody can be heard beside the loom", "error", err)
		refuse(w, http.StatusConflict, "beside.network")
		return
	}
	s.fail(w, r, err)
}

// codeOffered makes a code for pairing.
func (s *Server) codeOffered(w http.ResponseWriter, r *http.Request) {
	var none struct{}
	if !asked(w, r, &none) {
		return
	}
	if s.besideNow() == nil {
		refuse(w, http.StatusConflict, "beside.off")
		return
	}
	if _, err := s.Book.OfferPairing(); err != nil {
		s.fail(w, r, err)
		return
	}
	s.besideIs(w, r)
}

// codeDrawn draws the code that is good now, with an address that devices open, as a
// square to be read by a phone. The code stands behind #, which no browser sends on.
func (s *Server) codeDrawn(w http.ResponseWriter, r *http.Request) {
	l := s.besideNow()
	offer, good := s.Book.OfferedPairing()
	address := r.URL.Query().Get("address")
	if l == nil || !good || !l.own(address) {
		refuse(w, http.StatusNotFound, "beside.off")
		return
	}
	drawn, err := square(strings.TrimSuffix(address, "/") + "/pair#" + offer.Code)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "image/svg+xml")
	_, _ = w.Write(drawn) // who asked may have gone
}

// quiet is how many light dots stand around a square (ISO/IEC 18004: four).
const quiet = 4

// square is a QR code of a text as SVG, dark on white also where the page is dark.
func square(text string) ([]byte, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	side := code.Size + 2*quiet
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h%[1]dv%[2]dH0z"/><path fill="#000" d="`, side, side)
	for y := range code.Size {
		for x := range code.Size {
			if code.Black(x, y) {
				fmt.Fprintf(&b, "M%d %dh1v1h-1z", x+quiet, y+quiet)
			}
		}
	}
	b.WriteString(`"/></svg>`)
	return b.Bytes(), nil
}

// deviceNamed calls a device otherwise.
func (s *Server) deviceNamed(w http.ResponseWriter, r *http.Request) {
	var in struct{ Name string }
	if asked(w, r, &in) {
		list, err := s.Book.NameDevice(r.Context(), r.PathValue("device"), in.Name)
		s.besideAfter(w, r, list, err)
	}
}

// deviceRevoked lets a device in no more.
func (s *Server) deviceRevoked(w http.ResponseWriter, r *http.Request) {
	var none struct{}
	if asked(w, r, &none) {
		s.besideAfter(w, r, nil, s.Book.Revoke(r.Context(), r.PathValue("device")))
	}
}

// besideAfter answers what was done to a device with how it stands then.
func (s *Server) besideAfter(w http.ResponseWriter, r *http.Request, list *problem.List, err error) {
	if err != nil || list != nil && list.Failed() {
		s.listed(w, r, nil, list, err)
		return
	}
	s.besideIs(w, r)
}
