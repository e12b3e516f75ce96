package browsing

import (
	"net"
	"net/url"
	"slices"
	"sync"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// Complaint is a message at the level of an error, or an exception nobody caught.
type Complaint struct {
	Text    string
	Network bool // an answer of 400 or above, or none, which a page may well expect
}

// hear notes every request, and what a trace has; it must be quick.
func (b *Tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if sent, is := event.(*network.EventRequestWillBeSent); is {
		b.requests = append(b.requests, sent.Request.URL)
	}
	b.trace.hear(event)
}

// listen notes what the page complains of, until the window is closed.
func (b *Tab) listen() {
	messages := chromedp.Console(b.ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.IsException() || m.Type == "error" {
				b.mu.Lock()
				b.console = append(b.console, Complaint{m.String(), m.Source == "network"})
				b.mu.Unlock()
			}
		}
	}()
}

// Complaints are the errors in the console so far.
func (b *Tab) Complaints() []Complaint {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]Complaint(nil), b.console...)
}

// Requests are the addresses asked for so far, in order.
func (b *Tab) Requests() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]string(nil), b.requests...)
}

// OffLoopback are the requests that would have left the machine.
func (b *Tab) OffLoopback() []string {
	var left []string
	for _, address := range b.Requests() {
		u, err := url.Parse(address)
		if err != nil || !staysHere(u) {
			left = append(left, address)
		}
	}
	return left
}

func staysHere(u *url.URL) bool {
	switch u.Scheme {
	case "data", "blob", "about":
		return true
	}
	ip := net.ParseIP(u.Hostname())
	return u.Hostname() == "localhost" || ip != nil && (ip.IsLoopback() || slices.ContainsFunc(ownAddresses(), ip.Equal))
}

// ownAddresses are the addresses of this machine: what is asked for there does not leave it.
var ownAddresses = sync.OnceValue(func() []net.IP {
	all, _ := net.InterfaceAddrs()
	var out []net.IP
	for _, one := range all {
		if in, ok := one.(*net.IPNet); ok {
			out = append(out, in.IP)
		}
	}
	return out
})
