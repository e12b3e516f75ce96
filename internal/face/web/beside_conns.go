package web

import (
	"net"
	"net/netip"
	"sync"
	"time"
)

// The limits of connections from beside the loom. A browser opens six to one machine, and
// a phone and a tablet of one person may be behind one address.
const (
	mostConns     = 96
	mostConnsFrom = 16
)

// counting lets in so many connections at once, in all and from one address; others are
// closed as they come, so that they cannot keep the devices of the weaver waiting.
type counting struct {
	net.Listener
	of *conns
}

// conns counts the connections of all listeners.
type conns struct {
	mu   sync.Mutex
	all  int
	from map[netip.Addr]int
}

// Accept gives the next connection that is let in.
func (c counting) Accept() (net.Conn, error) {
	for {
		conn, err := c.Listener.Accept()
		if err != nil {
			return nil, err
		}
		from := addressOf(conn.RemoteAddr().String())
		if c.of.enter(from) {
			return &counted{Conn: conn, left: sync.OnceFunc(func() { c.of.leave(from) })}, nil
		}
		_ = conn.Close() // it was not let in
	}
}

func (c *conns) enter(from netip.Addr) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.from == nil {
		c.from = map[netip.Addr]int{}
	}
	if c.all >= mostConns || c.from[from] >= mostConnsFrom {
		return false
	}
	c.all++
	c.from[from]++
	return true
}

func (c *conns) leave(from netip.Addr) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.all--
	if c.from[from]--; c.from[from] == 0 {
		delete(c.from, from)
	}
}

// counted is a connection that is counted until it is closed.
type counted struct {
	net.Conn
	left func()
}

// Close closes it.
func (c *counted) Close() error {
	c.left()
	return c.Conn.Close()
}

// addressOf is whom a request comes from: of addresses of the newer kind the network,
// since a machine has as many as it likes of one.
func addressOf(remote string) netip.Addr {
	at, err := netip.ParseAddrPort(remote)
	if err != nil {
		return netip.Addr{}
	}
	a := at.Addr().Unmap().WithZone("")
	if a.Is6() {
		if net, err := a.Prefix(64); err == nil {
			return net.Addr()
		}
	}
	return a
}

// The limits of tries to pair from one address: fewer than a code has, so that no one
// machine alone can use a code up.
const (
	triesFrom    = 4
	triesLast    = 5 * time.Minute
	triesTracked = 1024 // addresses
)

// tries counts the tries to pair that were made lately from each address.
type tries struct {
	mu   sync.Mutex
	from map[netip.Addr]tried
}

type tried struct {
	n     int
	until time.Time
}

// may counts a try from an address; false where there were too many lately.
func (t *tries) may(from netip.Addr, now time.Time) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	for a, one := range t.from {
		if !now.Before(one.until) {
			delete(t.from, a)
		}
	}
	one, known := t.from[from]
	if one.n >= triesFrom || !known && len(t.from) >= triesTracked {
		return false
	}
	if t.from == nil {
		t.from = map[netip.Addr]tried{}
	}
	t.from[from] = tried{one.n + 1, now.Add(triesLast)}
	return true
}

// forget forgets the tries from an address: one was right.
func (t *tries) forget(from netip.Addr) {
	t.mu.Lock()
	defer t.mu.Unlock()
	delete(t.from, from)
}
