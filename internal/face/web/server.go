// Package web is the local server of sley's page: loopback only, one JSON API thin over
// app (docs/api.md), used by the page alone.
package web

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"

	"sley/internal/app"
)

// Asked is what a server serves.
type Asked struct {
	Book    *app.Studio
	Place   string // the book's file, as the page says it
	Token   string // what every request must carry
	Program string
	Log     *slog.Logger
	Check   func(context.Context) error // reads all of the book
	Copy    func(context.Context) (string, error)
	Network func() (Network, error) // where devices can reach this machine; nil: LocalNetwork
	Upload  time.Duration           // how long a photograph may take to arrive; 0: two minutes
}

// Server answers the requests of the page.
type Server struct {
	Asked
	port   string
	pages  http.Handler
	beat   time.Duration // between two signs of life of a stream
	routes []route       // those of the page, some of which devices have as well
	beside beside
}

// heartbeat is how often a stream says that it lives.
const heartbeat = 15 * time.Second

// The limits of a request. Bodies may hold the largest interchange text that is read.
const (
	mostBody   = 10 << 20
	mostHeader = 16 << 10
	headerTime = 5 * time.Second
	readTime   = 30 * time.Second
	writeTime  = 30 * time.Second
	idleTime   = 2 * time.Minute
	stopTime   = 5 * time.Second
)

// New makes a server for the port that it will be reached at.
func New(asked Asked, port string) *Server {
	s := &Server{Asked: asked, port: port, beat: heartbeat, routes: routes}
	if s.Log == nil {
		s.Log = slog.New(slog.DiscardHandler)
	}
	s.pages = s.guarded(s.routed())
	return s
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.pages.ServeHTTP(w, r) }

// routed sends each request to its route.
func (s *Server) routed() http.Handler {
	mux := http.NewServeMux()
	for _, r := range s.routes {
		mux.Handle(r.pattern, r.handler(s))
	}
	return mux
}

// Serve answers requests on a listener until the context ends, then stops: streams at
// once, other requests when they are answered or after five seconds. Whatever listens for
// devices beside the loom ends with it.
func (s *Server) Serve(ctx context.Context, on net.Listener) error {
	running, stop := context.WithCancel(context.WithoutCancel(ctx))
	defer stop()
	defer s.TurnBesideOff()
	server := &http.Server{
		Handler: s, ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime,
		IdleTimeout: idleTime, MaxHeaderBytes: mostHeader,
		BaseContext: func(net.Listener) context.Context { return running },
		ErrorLog:    slog.NewLogLogger(s.Log.Handler(), slog.LevelDebug),
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(on) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	stop() // Shutdown alone would wait for the streams
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
	defer cancel()
	if err := server.Shutdown(last); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}

// Listen takes a port of this machine's own address: the one that is asked for, else any.
func Listen(ctx context.Context, port string) (net.Listener, error) {
	var with net.ListenConfig
	if port != "" {
		if on, err := with.Listen(ctx, "tcp4", net.JoinHostPort("127.0.0.1", port)); err == nil {
			return on, nil
		}
	}
	return with.Listen(ctx, "tcp4", "127.0.0.1:0")
}

// PortOf is the port of a listener.
func PortOf(on net.Listener) string {
	_, port, _ := net.SplitHostPort(on.Addr().String())
	return port
}

// Address is where a page is to be opened: its token goes into a cookie there.
func Address(port, token string) string {
	return Home(port) + "open/" + token
}

// Home is where a page is.
func Home(port string) string { return "http://" + net.JoinHostPort("127.0.0.1", port) + "/" }
