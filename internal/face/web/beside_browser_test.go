package web_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"sley/internal/face/web"
	"sley/internal/face/web/browsing"
)

// atDesk is the page at the devices beside the loom, on a machine that is in a network.
func atDesk(t *testing.T, r *real) *browsing.Tab {
	t.Helper()
	n, err := web.LocalNetwork()
	if err == nil && len(n.Addresses) == 0 {
		if os.Getenv("CI") != "" {
			t.Fatal("this machine is in no network, so that no phone can be tried")
		}
		t.Skip("this machine is in no network")
	}
	if err != nil {
		t.Fatal(err)
	}
	id, version := r.warpNamed("Galley towels")
	if status := r.ask("POST", "/api/documents/"+itoa(id)+"/start", object{"base": version, "window": "w"}, nil); status != 200 {
		t.Fatalf("beginning the towels: %d", status)
	}
	desk := openReal(t, r)
	desk.Click("By the loom")
	desk.Wait("!!document.querySelector('#beside-always')")
	return desk
}

// text is what stands in the first element that a selector finds.
func textIn(tab *browsing.Tab, selector string) string {
	var text string
	tab.Read(&text, "document.querySelector("+browsing.Quote(selector)+").innerText")
	return text
}

// A phone is paired over the network, where a browser keeps its powers back: it shows the
// warps in hand, is kept awake, goes on while the computer is away, and is told when it is
// let in no more.
func TestAPhoneBesideTheLoom(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	desk := atDesk(t, r)
	desk.EachLook(t, "beside-off")
	desk.ReachedByKeys(t)
	desk.Click("Turn it on")
	desk.Says("It is on.")
	desk.EachLook(t, "beside-on")
	desk.Click("Pair a phone or a tablet")
	desk.Wait("document.querySelector('.beside-square')?.naturalWidth > 0")
	desk.EachLook(t, "beside-code")
	code := strings.ReplaceAll(strings.TrimSpace(textIn(desk, ".beside-code")), " ", "")
	address := textIn(desk, ".beside-address")

	phone := browsing.Start(t).Open(t, address+"pair#"+code)
	phone.Wait("document.querySelector('#code')?.value === " + browsing.Quote(code))
	var powers []bool
	phone.Read(&powers, "[isSecureContext, 'wakeLock' in navigator, 'locks' in navigator, !!crypto.randomUUID, !!crypto.subtle]")
	if slices.Contains(powers, true) {
		t.Errorf("the page is secure, or has its powers: %v", powers)
	}
	phone.EachLook(t, "device-pair")
	phone.Do("document.querySelector('#device-name').focus(); document.querySelector('#device-name').select()")
	phone.Type("loom room")
	phone.Press(browsing.Enter)
	phone.Says("Warps in hand")
	phone.Says("This device is called loom room.")
	desk.Says("loom room")
	desk.Says("last seen")
	desk.EachLook(t, "beside-paired")
	phone.Wait("!document.querySelector('video').paused && document.querySelector('video').currentTime > 0")
	phone.EachLook(t, "device-hand")
	phone.Click("Evening colours")
	phone.EachLook(t, "device-hand-evening")
	phone.Click("Evening colours")
	phone.ReachedByKeys(t)
	phone.Click("Kept awake")
	phone.Wait("document.querySelector('video').paused")
	var where string
	if phone.Read(&where, "location.pathname + location.hash"); where != "/" {
		t.Errorf("it is at %s", where)
	}

	phone.Click("Galley towels")
	phone.Wait("location.pathname.startsWith('/loomside/') && document.querySelector('h1')?.innerText === 'Galley towels'")
	phone.EachLook(t, "device-loom")
	phone.Reload()
	phone.Wait("document.querySelector('h1')?.innerText === 'Galley towels'")
	id, _ := r.warpNamed("Galley towels")
	openStep(phone, "Weave")
	presses(phone, " ", 3)
	sent(phone)
	if woven := r.loomside(id).Woven; woven != 3 {
		t.Errorf("%d picks are woven, not 3", woven)
	}

	// What is done while the computer is away is kept, and caught up once.
	r.server.TurnBesideOff()
	presses(phone, " ", 2)
	phone.Says("2 entries are kept here")
	phone.Says("Do not load this page anew")
	if woven := r.loomside(id).Woven; woven != 3 {
		t.Errorf("%d picks are woven while it is away", woven)
	}
	if _, err := r.server.TurnBesideOn(t.Context()); err != nil {
		t.Fatal(err)
	}
	sent(phone)
	if woven := r.loomside(id).Woven; woven != 5 {
		t.Errorf("%d picks are woven, not 5", woven)
	}
	phone.Click("Warps in hand")
	phone.Says("This device is called loom room.")
	r.server.TurnBesideOff()
	phone.Says("The computer is not answering")
	phone.EachLook(t, "device-away")
	if _, err := r.server.TurnBesideOn(t.Context()); err != nil {
		t.Fatal(err)
	}
	phone.Wait("!document.body.innerText.includes('The computer is not answering')")

	desk.Click("Let in no more: loom room")
	phone.Says("This device is let in no more")
	phone.EachLook(t, "device-out")
	desk.Says("let in no more")
	phone.Quiet(t, true)
	desk.Quiet(t, false)
	for _, asked := range append(phone.Requests(), desk.Requests()...) {
		if strings.Contains(asked, code) && !strings.Contains(asked, "#"+code) {
			t.Errorf("the code is in what was asked for: %s", asked)
		}
	}
}

// Typed wrongly the code is refused with words, and what is paired again goes on where it was.
func TestAPhoneIsPairedByTyping(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	desk := atDesk(t, r)
	desk.Click("Turn it on")
	desk.Click("Pair a phone or a tablet")
	desk.Wait("!!document.querySelector('.beside-code')")
	code := strings.ReplaceAll(strings.TrimSpace(textIn(desk, ".beside-code")), " ", "")
	id, _ := r.warpNamed("Galley towels")
	phone := browsing.Start(t).Open(t, textIn(desk, ".beside-address")+"loomside/"+itoa(id))
	phone.Says("Pair this device")
	phone.Size(390, 844)
	typed := func(digits string) {
		phone.Do("document.querySelector('#code').focus(); document.querySelector('#code').select()")
		phone.Type(digits)
		phone.Press(browsing.Enter)
	}
	typed(another(code))
	phone.Says("not the code that the computer shows")
	phone.EachLook(t, "device-pair-wrong")
	typed(code[:3] + " " + code[3:])
	phone.Wait("document.querySelector('h1')?.innerText === 'Galley towels'")
	phone.Quiet(t, true)
}
