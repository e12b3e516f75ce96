package web

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"sley/internal/app"
)

// The limits of a request from beside the loom, where they are not those of the page.
const (
	mostDeviceBody   = 1 << 20
	mostPhotoBody    = app.MostPhotographBytes
	mostDeviceHeader = 8 << 10
	deviceStopTime   = time.Second
)

// beside is what listens for devices beside the loom, while it is on.
type beside struct {
	mu    sync.Mutex
	on    *listening // nil while it is off
	tries tries
}

// listening is a second server, on other addresses and with other routes.
type listening struct {
	network Network
	port    string
	hosts   map[string]bool
	stop    func()
}

// TurnBesideOn listens for paired devices on the local network, at the port where it did
// before, until TurnBesideOff or the end of Serve. It gives the addresses to open there. The
// error is that there is no network, or what the system says.
func (s *Server) TurnBesideOn(ctx context.Context) ([]string, error) {
	s.beside.mu.Lock()
	defer s.beside.mu.Unlock()
	if s.beside.on != nil {
		return s.beside.on.addresses(), nil
	}
	network, err := s.network()
	if err != nil {
		return nil, err
	}
	remembered, err := s.Book.RememberedBesidePort(ctx)
	if err != nil {
		return nil, err
	}
	on, err := listenOn(ctx, network.Addresses, remembered)
	if err != nil {
		return nil, err
	}
	s.beside.on = s.listen(network, on)
	if s.beside.on.port == remembered {
		return s.beside.on.addresses(), nil
	}
	return s.beside.on.addresses(), s.Book.RememberBesidePort(ctx, s.beside.on.port)
}

func (s *Server) network() (Network, error) {
	if s.Network != nil {
		return s.Network()
	}
	return LocalNetwork()
}

// TurnBesideOff ends what TurnBesideOn began: streams at once, other requests within a
// second. The code for pairing ends with it.
func (s *Server) TurnBesideOff() {
	s.beside.mu.Lock()
	defer s.beside.mu.Unlock()
	s.Book.EndPairing()
	if s.beside.on != nil {
		s.beside.on.stop()
		s.beside.on = nil
	}
}

// besideNow is what listens now, nil where nothing does.
func (s *Server) besideNow() *listening {
	s.beside.mu.Lock()
	defer s.beside.mu.Unlock()
	return s.beside.on
}

// listen serves devices on listeners that are open.
func (s *Server) listen(network Network, on []net.Listener) *listening {
	running, end := context.WithCancel(context.Background())
	l := &listening{network: network, port: PortOf(on[0]), hosts: map[string]bool{}}
	for _, listener := range on {
		l.hosts[listener.Addr().String()] = true
	}
	server := &http.Server{
		Handler: s.besideGuarded(l), ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime,
		IdleTimeout: idleTime, MaxHeaderBytes: mostDeviceHeader,
		BaseContext: func(net.Listener) context.Context { return running },
		ErrorLog:    slog.NewLogLogger(s.Log.Handler(), slog.LevelDebug),
	}
	var ended sync.WaitGroup
	count := &conns{}
	for _, listener := range on {
		ended.Go(func() {
			if err := server.Serve(counting{listener, count}); !errors.Is(err, http.ErrServerClosed) {
				s.Log.Warn("beside the loom nobody is heard any more", "at", listener.Addr(), "error", err)
			}
		})
	}
	l.stop = func() {
		end() // Shutdown alone would wait for the streams
		last, cancel := context.WithTimeout(context.Background(), deviceStopTime)
		defer cancel()
		if server.Shutdown(last) != nil {
			_ = server.Close() // what is not answered by now is sent again
		}
		ended.Wait()
	}
	return l
}

// addresses are what a browser opens, the likeliest first.
func (l *listening) addresses() []string {
	var out []string
	for _, a := range l.network.Addresses {
		out = append(out, "http://"+net.JoinHostPort(a.String(), l.port)+"/")
	}
	return out
}

// moved says whether this machine has come into another network since.
func (l *listening) moved(now Network) bool { return !slices.Equal(l.network.Addresses, now.Addresses) }

// own says whether an address is one that devices open.
func (l *listening) own(address string) bool {
	return slices.Contains(l.addresses(), strings.TrimSuffix(address, "/")+"/")
}
