package app_test

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/edge/book/memory"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// hands is a studio whose clock a test moves.
func hands() (*app.Studio, *time.Time) {
	now := noon
	return app.NewStudio(memory.New(), func() time.Time { return now }, numbered(), "test"), &now
}

func offered(t *testing.T, s *app.Studio) app.Offer {
	t.Helper()
	o, err := s.OfferPairing()
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// pair tries a code, and gives what came of it.
func pair(t *testing.T, s *app.Studio, code, name string) (app.Paired, string) {
	t.Helper()
	p, list, err := s.Pair(t.Context(), code, name)
	if err != nil {
		t.Fatal(err)
	}
	return p, strings.Join(codesOf(list), ", ")
}

// wrong is a code that is another.
func wrong(o app.Offer) string {
	if o.Code == "000000" {
		return "000001"
	}
	return "000000"
}

// wants that a token is, or is not, that of a device.
func knows(t *testing.T, s *app.Studio, token string, want bool) record.Device {
	t.Helper()
	d, is, err := s.DeviceOf(t.Context(), token)
	if err != nil || is != want {
		t.Errorf("the token %.8s is known: %v, want %v; %v", token, is, want, err)
	}
	return d
}

func TestPairing(t *testing.T) {
	s, now := hands()
	o := offered(t, s)
	if len(o.Code) != 6 || !o.Until.Equal(now.Add(5*time.Minute)) {
		t.Errorf("offered %+v", o)
	}
	p, list := pair(t, s, o.Code[:3]+" "+o.Code[3:], "  kitchen tablet ")
	if list != "" || p.Device.Name != "kitchen tablet" {
		t.Fatalf("paired %+v, %s", p, list)
	}
	if raw, err := base64.RawURLEncoding.DecodeString(p.Token); err != nil || len(raw) != 32 {
		t.Errorf("the token has %d bytes, %v", len(raw), err)
	}
	devices, err := s.Devices(t.Context())
	if err != nil || len(devices) != 1 || devices[0].Sum != sha256.Sum256([]byte(p.Token)) {
		t.Errorf("kept %+v, %v", devices, err)
	}
	if d := knows(t, s, p.Token, true); d.ID != p.Device.ID {
		t.Errorf("it is %q", d.ID)
	}
	for _, other := range []string{"", "x", p.Token + "x", p.Token[1:], string(devices[0].Sum[:])} {
		knows(t, s, other, false)
	}
}

// A code is good once, for five minutes, and until the next one is asked for.
func TestACodeIsGoodOnce(t *testing.T) {
	s, now := hands()
	if _, list := pair(t, s, "123456", "phone"); list != "code pairing.none" {
		t.Error("without a code:", list)
	}
	first := offered(t, s)
	pair(t, s, first.Code, "phone")
	if _, list := pair(t, s, first.Code, "another"); list != "code pairing.none" {
		t.Error("the second time:", list)
	}
	late := offered(t, s)
	*now = now.Add(5 * time.Minute)
	if _, is := s.OfferedPairing(); is {
		t.Error("after five minutes it is good still")
	}
	if _, list := pair(t, s, late.Code, "phone"); list != "code pairing.none" {
		t.Error("after five minutes:", list)
	}
	old := offered(t, s)
	young := offered(t, s)
	if old.Code != young.Code { // by chance they are the same
		if _, list := pair(t, s, old.Code, "phone"); list != "code pairing.code" {
			t.Error("the one before:", list)
		}
	}
	s.EndPairing()
	if _, list := pair(t, s, young.Code, "phone"); list != "code pairing.none" {
		t.Error("taken back:", list)
	}
	if devices, _ := s.Devices(t.Context()); len(devices) != 1 {
		t.Errorf("%d devices", len(devices))
	}
}

// Whoever guesses has five tries, and then not even the right code counts.
func TestGuessedCodes(t *testing.T) {
	s, _ := hands()
	o := offered(t, s)
	for i := range 4 {
		if _, list := pair(t, s, wrong(o), "phone"); list != "code pairing.code" {
			t.Errorf("try %d: %s", i+1, list)
		}
	}
	if _, list := pair(t, s, wrong(o), "phone"); list != "code pairing.ended" {
		t.Error("try 5:", list)
	}
	if _, list := pair(t, s, o.Code, "phone"); list != "code pairing.none" {
		t.Error("the right one after that:", list)
	}
	if again := offered(t, s); again.Code != "" {
		if _, list := pair(t, s, again.Code, "phone"); list != "" {
			t.Error("a new one:", list)
		}
	}
}

// Many at once have no more tries than one, and one code lets in one device.
func TestGuessedAtOnce(t *testing.T) {
	s := openStudio(t)
	o := offered(t, s)
	var all sync.WaitGroup
	counted := make(chan string, 40)
	for i := range 40 {
		all.Go(func() {
			code := o.Code
			if i%2 == 0 {
				code = wrong(o)
			}
			_, list, err := s.Pair(context.Background(), code, "phone")
			if err != nil {
				t.Error(err)
			}
			counted <- strings.Join(codesOf(list), ", ")
		})
	}
	all.Wait()
	close(counted)
	got := map[string]int{}
	for list := range counted {
		got[list]++
	}
	if got[""] > 1 || got["code pairing.code"]+got["code pairing.ended"] > 5 {
		t.Errorf("of forty at once: %v", got)
	}
}

// What has no name is told so, and costs no try.
func TestDevicesHaveNames(t *testing.T) {
	s, _ := hands()
	o := offered(t, s)
	for name, want := range map[string]string{
		"": "name name.missing", " \t ": "name name.missing", strings.Repeat("é", 61): "name name.long",
		strings.Repeat("x", 5000): "name name.long", "a\x00b": "name name.control",
	} {
		for range 2 {
			if _, list := pair(t, s, wrong(o), name); list != want {
				t.Errorf("%.10q: %s", name, list)
			}
		}
	}
	p, list := pair(t, s, o.Code, strings.Repeat("é", 60))
	if list != "" {
		t.Fatal(list)
	}
	for name, want := range map[string]string{"": "name name.missing", "loom room": ""} {
		list, err := s.NameDevice(t.Context(), p.Device.ID, name)
		if got := strings.Join(codesOf(list), ", "); err != nil || got != want {
			t.Errorf("called %q: %s, %v", name, got, err)
		}
	}
	if d := knows(t, s, p.Token, true); d.Name != "loom room" {
		t.Errorf("it is called %q", d.Name)
	}
}

// What is revoked is in no more, whoever still has its token; the others are.
func TestRevoke(t *testing.T) {
	s, _ := hands()
	one, _ := pair(t, s, offered(t, s).Code, "one")
	two, _ := pair(t, s, offered(t, s).Code, "two")
	changes, stop := s.Watch()
	defer stop()
	if err := s.Revoke(t.Context(), one.Device.ID); err != nil {
		t.Fatal(err)
	}
	knows(t, s, one.Token, false)
	knows(t, s, two.Token, true)
	if c := <-changes; c.Act != "devices" {
		t.Errorf("told of %+v", c)
	}
	for _, err := range []error{s.Revoke(t.Context(), "nobody"), errOf(s.NameDevice(t.Context(), "nobody", "x"))} {
		if !record.Is(err, record.NotFound) {
			t.Errorf("a device that is none: %v", err)
		}
	}
	devices, err := s.Devices(t.Context())
	if err != nil || len(devices) != 2 || !devices[0].Revoked || devices[1].Revoked {
		t.Errorf("%+v, %v", devices, err)
	}
}

func errOf(_ *problem.List, err error) error { return err }

// A token of one book is nothing in another.
func TestTokenOfAnotherBook(t *testing.T) {
	s, other := openStudio(t), openStudio(t)
	p, _ := pair(t, s, offered(t, s).Code, "phone")
	knows(t, s, p.Token, true)
	knows(t, other, p.Token, false)
}

// When a device was last seen is written once a minute, not each time.
func TestSeen(t *testing.T) {
	s, now := hands()
	p, _ := pair(t, s, offered(t, s).Code, "phone")
	for _, test := range []struct{ after, seen time.Duration }{
		{30 * time.Second, 0}, {59 * time.Second, 0}, {time.Minute, time.Minute}, {90 * time.Second, time.Minute},
	} {
		*now = noon.Add(test.after)
		if d := knows(t, s, p.Token, true); !d.Seen.Equal(noon.Add(test.seen)) || !d.Made.Equal(noon) {
			t.Errorf("after %s it was seen at %s", test.after, d.Seen)
		}
	}
}

// Codes are drawn from what is handed in, all of them as likely: what would favour some is
// drawn again. A source that fails gives no code.
func TestCodesAreDrawn(t *testing.T) {
	drawn := func(bytes_ ...byte) (app.Offer, error) {
		o, err := app.Open(t.Context(), app.BookAsked{
			Path: filepath.Join(t.TempDir(), "book.sley"), Now: clock(), NewID: numbered(), Program: "test", Create: true,
			Random: bytes.NewReader(bytes_),
		})
		if err != nil {
			t.Fatal(err)
		}
		defer o.Close()
		return o.OfferPairing()
	}
	for want, from := range map[string][]byte{
		"000007": {0, 0, 0, 7},
		"000001": {0, 0x0f, 0x42, 0x41},                 // 1 000 001
		"999999": {0xff, 0xf1, 0x3d, 0x7f},              // 4 293 999 999, the last that is fair
		"000042": {0xff, 0xf1, 0x3d, 0x80, 0, 0, 0, 42}, // the next is drawn again
	} {
		if o, err := drawn(from...); err != nil || o.Code != want {
			t.Errorf("from %v %q, want %q: %v", from, o.Code, want, err)
		}
	}
	if o, err := drawn(); err == nil {
		t.Errorf("from nothing %+v", o)
	}
}

// Only warps in hand are shown beside the loom.
func TestInHand(t *testing.T) {
	s := openStudio(t)
	planned, begun, done, gone := addWarp(t, s, towels).ID, addWarp(t, s, towels).ID, addWarp(t, s, towels).ID, addWarp(t, s, towels).ID
	yarn := addYarn(t, s, "white").ID
	start(t, s, begun)
	start(t, s, done)
	note := map[record.ID]string{}
	for _, id := range []record.ID{begun, done} {
		e, list, err := s.Logged(t.Context(), app.Happened{Document: id, Window: left, What: record.Noted, Note: "x"}, 0)
		if err != nil || list.Failed() {
			t.Fatal(err, codesOf(list))
		}
		note[id] = e.ID
	}
	if _, list, err := s.Logged(t.Context(), app.Happened{Document: done, Window: left, What: record.Finished}, 0); err != nil || list.Failed() {
		t.Fatal(err, codesOf(list))
	}
	step{left, "remove", "", ""}.do(t, s, gone)
	for id, want := range map[record.ID]bool{planned: true, begun: true, done: false, gone: false, yarn: false, 4711: false} {
		if is, err := s.InHand(t.Context(), id); err != nil || is != want {
			t.Errorf("document %d is in hand: %v, want %v, %v", id, is, want, err)
		}
	}
	for event, want := range map[string]bool{note[begun]: true, note[done]: false, "nothing-of-it": false} {
		if is, err := s.HappenedInHand(t.Context(), event); err != nil || is != want {
			t.Errorf("event %s is of a warp in hand: %v, want %v, %v", event, is, want, err)
		}
	}
}

// Listening for devices comes back with the next start only where the weaver said so.
func TestBesideAlways(t *testing.T) {
	s := openStudio(t)
	for _, want := range []bool{false, true, false} {
		if want {
			must(t, s.SetBesideAlways(t.Context(), true))
		} else {
			must(t, s.SetBesideAlways(t.Context(), false))
		}
		if is, err := s.BesideAlways(t.Context()); err != nil || is != want {
			t.Errorf("always %v, want %v, %v", is, want, err)
		}
	}
	must(t, s.RememberBesidePort(t.Context(), "7071"))
	if port, err := s.RememberedBesidePort(t.Context()); err != nil || port != "7071" {
		t.Errorf("port %q, %v", port, err)
	}
	if out := exported(t, s); strings.Contains(fmt.Sprint(string(out["book.json"].Data)), "7071") {
		t.Error("the port was exported")
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
