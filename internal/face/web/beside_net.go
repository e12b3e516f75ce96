package web

import (
	"cmp"
	"context"
	"errors"
	"net"
	"net/netip"
	"slices"
)

// Network is where devices beside the loom can reach this machine.
type Network struct {
	Addresses []netip.Addr // the likeliest first; none where it is in no network
	Public    bool         // they are not those of a home's network: there were no others
}

// mostAddresses is how many addresses are listened on.
const mostAddresses = 6

// LocalNetwork looks for this machine's addresses in the network that it shares with
// phones and tablets. Lines from point to point, as tunnels to elsewhere are, are not
// looked at.
func LocalNetwork() (Network, error) {
	all, err := net.Interfaces()
	if err != nil {
		return Network{}, err
	}
	var found []netip.Addr
	for _, one := range all {
		if one.Flags&net.FlagUp == 0 || one.Flags&(net.FlagLoopback|net.FlagPointToPoint) != 0 {
			continue
		}
		addresses, err := one.Addrs()
		if err != nil {
			continue // it went away meanwhile
		}
		found = append(found, addressesIn(addresses)...)
	}
	return networkOf(found), nil
}

func addressesIn(all []net.Addr) []netip.Addr {
	var out []netip.Addr
	for _, one := range all {
		if in, ok := one.(*net.IPNet); ok {
			if ip, ok := netip.AddrFromSlice(in.IP); ok {
				out = append(out, ip.Unmap())
			}
		}
	}
	return out
}

// networkOf chooses among addresses: those for private networks (RFC 1918, RFC 4193) and
// those that machines give themselves on a bare cable (RFC 3927); where there is none of
// these, any that is no loopback. An address with a zone cannot be typed into a browser.
func networkOf(all []netip.Addr) Network {
	usable := slices.DeleteFunc(slices.Clone(all), func(a netip.Addr) bool {
		return !a.IsValid() || a.IsLoopback() || a.IsUnspecified() || a.IsMulticast() || a.Is6() && a.IsLinkLocalUnicast()
	})
	own := slices.DeleteFunc(slices.Clone(usable), func(a netip.Addr) bool { return !a.IsPrivate() && !a.IsLinkLocalUnicast() })
	n := Network{Addresses: own, Public: len(own) == 0 && len(usable) > 0}
	if n.Public {
		n.Addresses = usable
	}
	slices.SortFunc(n.Addresses, func(a, b netip.Addr) int {
		return cmp.Or(cmp.Compare(likeliness(a), likeliness(b)), a.Compare(b))
	})
	n.Addresses = slices.Compact(n.Addresses)
	n.Addresses = n.Addresses[:min(len(n.Addresses), mostAddresses)]
	return n
}

// homes are the private networks in the order in which homes have them; programs that keep
// machines within this one use the last most (common practice, no source).
var homes = []netip.Prefix{
	netip.MustParsePrefix("192.168.0.0/16"), netip.MustParsePrefix("10.0.0.0/8"), netip.MustParsePrefix("172.16.0.0/12"),
	netip.MustParsePrefix("0.0.0.0/0"),
}

func likeliness(a netip.Addr) int {
	if at := slices.IndexFunc(homes, func(p netip.Prefix) bool { return p.Contains(a) }); at >= 0 {
		return at
	}
	return len(homes)
}

var errNoNetwork = errors.New("this machine is in no network")

// listenOn takes one port on all addresses: the one that is remembered, else any that is
// free on all of them.
func listenOn(ctx context.Context, addresses []netip.Addr, remembered string) ([]net.Listener, error) {
	if len(addresses) == 0 {
		return nil, errNoNetwork
	}
	var err error
	for _, port := range []string{cmp.Or(remembered, "0"), "0", "0", "0"} {
		var on []net.Listener
		if on, err = listenAt(ctx, addresses, port); err == nil {
			return on, nil
		}
	}
	return nil, err
}

func listenAt(ctx context.Context, addresses []netip.Addr, port string) ([]net.Listener, error) {
	var with net.ListenConfig
	var all []net.Listener
	for _, a := range addresses {
		on, err := with.Listen(ctx, "tcp", net.JoinHostPort(a.String(), port))
		if err != nil {
			return nil, errors.Join(append(closed(all), err)...)
		}
		all, port = append(all, on), PortOf(on)
	}
	return all, nil
}

func closed(all []net.Listener) []error {
	var out []error
	for _, on := range all {
		out = append(out, on.Close())
	}
	return out
}
