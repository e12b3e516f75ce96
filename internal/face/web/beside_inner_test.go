package web

import (
	"net/netip"
	"reflect"
	"slices"
	"testing"
	"time"
)

func addressesOf(all ...string) []netip.Addr {
	var out []netip.Addr
	for _, one := range all {
		out = append(out, netip.MustParseAddr(one))
	}
	return out
}

// Of all addresses those of the home's network are chosen, the likeliest first, others only
// where there is none of these, and never this machine's own.
func TestNetworkOf(t *testing.T) {
	for _, test := range []struct {
		what      string
		all, want []netip.Addr
		public    bool
	}{
		{"nothing", nil, nil, false},
		{"loopback alone", addressesOf("127.0.0.1", "::1", "127.1.2.3"), nil, false},
		{"a home", addressesOf("127.0.0.1", "192.168.1.20", "fe80::1%eth0", "::1"), addressesOf("192.168.1.20"), false},
		{
			"several", addressesOf("172.17.0.1", "10.0.0.5", "fd00::5", "169.254.3.4", "192.168.1.20"),
			addressesOf("192.168.1.20", "10.0.0.5", "172.17.0.1", "169.254.3.4", "fd00::5"), false,
		},
		{"at home and elsewhere", addressesOf("203.0.113.7", "192.168.1.20", "2001:db8::1"), addressesOf("192.168.1.20"), false},
		{"elsewhere alone", addressesOf("2001:db8::1", "203.0.113.7", "127.0.0.1"), addressesOf("203.0.113.7", "2001:db8::1"), true},
		{"nobody's", addressesOf("0.0.0.0", "::", "224.0.0.1", "ff02::1"), nil, false},
		{"twice the same", addressesOf("10.0.0.5", "10.0.0.5"), addressesOf("10.0.0.5"), false},
		{
			"more than are of use", addressesOf("10.0.0.1", "10.0.0.2", "10.0.0.3", "10.0.0.4", "10.0.0.5", "10.0.0.6", "10.0.0.7"),
			addressesOf("10.0.0.1", "10.0.0.2", "10.0.0.3", "10.0.0.4", "10.0.0.5", "10.0.0.6"), false,
		},
	} {
		if got := networkOf(test.all); !slices.Equal(got.Addresses, test.want) || got.Public != test.public {
			t.Errorf("%s: %v, want %v, public %v", test.what, got, test.want, test.public)
		}
	}
}

// Tries are counted by address for five minutes, those of a machine with many addresses as
// one, and no more addresses are kept than have room.
func TestTries(t *testing.T) {
	now := time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)
	var all tries
	for i := range 5 {
		if got := all.may(addressOf("192.168.1.9:1"), now); got != (i < 4) {
			t.Errorf("try %d: %v", i+1, got)
		}
	}
	if !all.may(addressOf("192.168.1.10:1"), now) {
		t.Error("another address waits, too")
	}
	if all.may(addressOf("192.168.1.9:2"), now.Add(triesLast-time.Second)) || !all.may(addressOf("192.168.1.9:2"), now.Add(triesLast)) {
		t.Error("it does not wait five minutes")
	}
	all.forget(addressOf("192.168.1.9:2"))
	if !all.may(addressOf("192.168.1.9:2"), now) {
		t.Error("after a right one it waits")
	}
	if a, b := addressOf("[fd00::1]:1"), addressOf("[fd00::2:3]:4"); a != b || !a.IsValid() {
		t.Errorf("one network has the addresses %s and %s", a, b)
	}
	var many tries
	for i := range triesTracked + 10 {
		many.may(netip.AddrFrom4([4]byte{10, 0, byte(i >> 8), byte(i)}), now)
	}
	if len(many.from) != triesTracked {
		t.Errorf("%d addresses are kept", len(many.from))
	}
}

// Connections are counted as they come and go, in all and from one address.
func TestConns(t *testing.T) {
	var c conns
	entered := 0
	for i := range 300 {
		if c.enter(netip.AddrFrom4([4]byte{10, 0, 0, byte(i % 3)})) {
			entered++
		}
	}
	if entered != 3*mostConnsFrom {
		t.Errorf("%d came in from three addresses", entered)
	}
	for i := range 300 {
		if c.enter(netip.AddrFrom4([4]byte{10, 1, 0, byte(i % 250)})) {
			entered++
		}
	}
	if entered != mostConns {
		t.Errorf("%d came in from everywhere", entered)
	}
	for range mostConnsFrom {
		c.leave(netip.AddrFrom4([4]byte{10, 0, 0, 1}))
	}
	if !c.enter(netip.AddrFrom4([4]byte{10, 0, 0, 1})) || c.from[netip.AddrFrom4([4]byte{10, 9, 9, 9})] != 0 {
		t.Error("who left is counted still")
	}
}

// Every route of devices is one of theirs or of the page, and one that writes is open to
// none but pairing.
func TestDeviceRoutesAreKnown(t *testing.T) {
	s := New(Asked{}, "1")
	for _, r := range deviceRoutes {
		r.handler(s)
		if r.lets == anyone && r.pattern[0] == 'P' && r.pattern != "POST /api/pair" {
			t.Errorf("%s is open to anyone", r.pattern)
		}
		if r.says == "" {
			t.Errorf("%s is not said", r.pattern)
		}
		if is := reflect.ValueOf(r.do); r.do != nil && is.IsNil() {
			t.Errorf("%s does nothing", r.pattern)
		}
	}
}
