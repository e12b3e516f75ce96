package web_test

import (
	"bytes"
	"encoding/base64"
	"image"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"

	"sley/internal/edge/photo/taken"
	"sley/internal/face/web/browsing"
)

// plainHTTP takes from a page what browsers keep for secure pages, as a phone has it that
// came from another machine.
const plainHTTP = `Object.defineProperty(window, 'isSecureContext', { value: false })
delete Crypto.prototype.randomUUID
delete Navigator.prototype.locks
delete Navigator.prototype.mediaDevices`

// onLoom is the number of a warp whose work began, and of which 96 picks are woven.
func (r *real) onLoom() int {
	r.t.Helper()
	var l list
	r.ask("GET", "/api/warps?words=galley+towe", nil, &l)
	one := l.Items[0]
	at := "/api/documents/" + itoa(one.ID)
	r.ask("POST", at+"/start", map[string]any{"base": one.Version, "window": "w"}, nil)
	if status := r.ask("POST", at+"/woven", map[string]any{"window": "w", "id": "w-woven-0096", "pick": 96}, nil); status != http.StatusOK {
		r.t.Fatalf("picks cannot be woven: %d", status)
	}
	return one.ID
}

// openLog is the log of a warp on a phone that came over plain http.
func openLog(t *testing.T, r *real) (*browsing.Tab, int) {
	t.Helper()
	id := r.onLoom()
	tab := browsing.Start(t).Open(t, "about:blank")
	tab.Before(plainHTTP)
	tab.Go(r.url("/open/" + token))
	tab.Wait("!!document.querySelector('.page')")
	tab.Size(390, 844)
	tab.Go(r.url("/warps/" + itoa(id) + "/weave"))
	tab.Wait("!!document.querySelector('.sittings') && !!document.querySelector('.loom-log, .loomside-log > .soft')")
	return tab, id
}

// entries waits until the log has so many entries that hold a text.
func entries(tab *browsing.Tab, n int, text string) {
	tab.Wait("[...document.querySelectorAll('.loom-log li')].filter(e => e.innerText.includes(" + browsing.Quote(text) + ")).length === " + itoa(n))
}

// takePhotograph gives a file to the camera's field, as a phone does.
func takePhotograph(tab *browsing.Tab, name, kind string, file []byte) {
	tab.Do(`const bytes = Uint8Array.from(atob(` + browsing.Quote(base64.StdEncoding.EncodeToString(file)) + `), c => c.charCodeAt(0))
const into = new DataTransfer()
into.items.add(new File([bytes], ` + browsing.Quote(name) + `, { type: ` + browsing.Quote(kind) + ` }))
const field = document.getElementById('photograph')
field.files = into.files
field.dispatchEvent(new Event('change', { bubbles: true }))`)
}

// A weaver sits down, notes, marks, photographs, takes something back, and stands up, with a
// phone that came over plain http.
func TestLogAtTheLoom(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := openLog(t, r)
	tab.Says("You are not sitting at the loom.")
	tab.Click("Sit down")
	tab.Says("You have sat for 1 min")
	typed(tab, "log-note", "tension uneven on the left")
	tab.Reload()
	tab.Wait("document.getElementById('log-note')?.value === 'tension uneven on the left'")
	tab.Says("You have sat for")
	tab.Click("Write the note down")
	entries(tab, 1, "tension uneven on the left")
	tab.Wait("document.getElementById('log-note').value === ''")
	tab.Click("Broken end")
	typed(tab, "broken-end", "212")
	tab.Click("It broke")
	entries(tab, 1, "212")
	tab.Says("Ends that broke")
	tab.Click("Warp wound on")
	tab.Says("Wound on last at pick")
	photographOnThePage(t, r, tab)
	tab.EachLook(t, "log-sitting")
	tab.Size(390, 844)
	tab.Do("document.querySelector('.loom-log .thumbnail').closest('li').querySelector('button').click()")
	tab.Wait("document.querySelectorAll('.loom-log .thumbnail').length === 0")
	tab.Click("Stand up")
	entries(tab, 1, "Sitting")
	tab.Says("You are not sitting at the loom.")
	tab.Click("Write minutes by hand")
	typed(tab, "hand-minutes", "45")
	tab.Click("It was so long")
	entries(tab, 1, "45 min")
	largeEnough(t, tab)
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
	if all, err := r.book.Photographs(t.Context(), 1); err == nil && len(all) > 0 || id == 0 {
		t.Errorf("photographs of another warp: %v", all)
	}
}

// photographOnThePage takes a photograph that lies on its side and tells where it was taken.
func photographOnThePage(t *testing.T, r *real, tab *browsing.Tab) {
	t.Helper()
	takePhotograph(tab, "fell.jpg", "image/jpeg", taken.JPEG(400, 240, 6))
	tab.Wait("document.querySelector('canvas.preview')?.width === 400") // upright here as well
	typed(tab, "caption", "the first border")
	tab.EachLook(t, "log-photograph")
	tab.Size(390, 844)
	tab.Click("Keep it")
	entries(tab, 1, "the first border")
	tab.Wait("(() => { const i = document.querySelector('.loom-log img'); i.loading = 'eager'; return i.complete && i.naturalWidth === 400 && i.naturalHeight === 240 })()")
	var at string
	tab.Read(&at, "document.querySelector('.loom-log img').getAttribute('src')")
	answer, err := r.client.Get(r.url(at))
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	from, _, err := image.Decode(bytes.NewReader(data))
	if err != nil || bytes.Contains(data, taken.Place) || bytes.Contains(data, taken.Camera) {
		t.Fatalf("what is shown tells where it was taken, or is none: %v", err)
	}
	if red, _, _, _ := from.At(20, 20).RGBA(); red>>8 < 180 {
		t.Errorf("top left is %v: it does not stand upright", from.At(20, 20))
	}
}

// largeEnough: what is pressed in the log is 48 px high, as a thumb needs.
func largeEnough(t *testing.T, tab *browsing.Tab) {
	t.Helper()
	var small []string
	tab.Read(&small, "[...document.querySelectorAll('.loomside-log button')].filter(b => b.getBoundingClientRect().height < 48).map(b => b.innerText)")
	if len(small) > 0 {
		t.Errorf("too small for a thumb: %q", small)
	}
}

// A picture that cannot be read is told with what to do, and stays until it is put away; so
// does one that sley was not there for, which then counts once.
func TestPhotographThatIsNotTaken(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, _ := openLog(t, r)
	takePhotograph(tab, "fell.heic", "", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic"))
	tab.Says("It cannot be shown here")
	tab.Click("Keep it")
	tab.Says("The file is HEIC, which cannot be read here. Set the camera to JPEG")
	tab.EachLook(t, "log-refused")
	tab.Size(390, 844)
	tab.Click("Leave it")
	tab.Wait("!document.querySelector('.loom-photograph')")
	takePhotograph(tab, "fell.jpg", "image/jpeg", taken.JPEG(300, 200, 1))
	tab.Wait("document.querySelector('canvas.preview')?.width === 300")
	r.end()
	tab.Click("Keep it")
	tab.Says("It did not get through. It is still here.")
	r.again()
	tab.Click("Send it again")
	tab.Wait("document.querySelectorAll('.loom-log .thumbnail').length === 1")
}

// A photograph on a slow way shows how far it is, and can be stopped.
func TestSlowPhotograph(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, id := openLog(t, r)
	takePhotograph(tab, "fell.jpg", "image/jpeg", taken.JPEG(300, 200, 1))
	tab.Do("window.sendNow = XMLHttpRequest.prototype.send; XMLHttpRequest.prototype.send = function () { window.held = this }") // nothing moves
	tab.Click("Keep it")
	tab.Wait("!!document.querySelector('.loom-photograph progress')")
	tab.EachLook(t, "log-sending")
	tab.Do("window.held.abort = function () { this.onabort() }")
	tab.Click("Stop")
	tab.Says("It did not get through. It is still here.")
	tab.Do("XMLHttpRequest.prototype.send = window.sendNow")
	tab.Click("Send it again")
	tab.Wait("document.querySelectorAll('.loom-log .thumbnail').length === 1")
	r.wantStatus("/api/documents/"+itoa(id)+"/hours", http.StatusOK)
}

func (r *real) wantStatus(path string, want int) {
	r.t.Helper()
	if status := r.ask("GET", path, nil, nil); status != want {
		r.t.Errorf("%s: %d", path, status)
	}
}

// A sitting that nobody ended asks how long it was.
func TestForgottenSittingOnThePage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, _ := openLog(t, r)
	tab.Click("Sit down")
	tab.Says("You have sat for 1 min")
	tab.Do(`const ask = window.fetch
window.fetch = async (path, with_) => {
  const answer = await ask(path, with_)
  if (!String(path).endsWith('/hours')) return answer
  const hours = await answer.json()
  if (hours.sitting) hours.sitting = { ...hours.sitting, minutes: 0, forgotten: true, since: '2026-03-01T19:30:00Z' }
  return new Response(JSON.stringify(hours), { status: answer.status })
}
`)
	tab.Click("Warp wound on") // the log is read anew
	tab.Says("and never stood up. How many minutes was it?")
	tab.EachLook(t, "log-forgotten")
	typed(tab, "sat-minutes", "50")
	tab.Click("It was so long")
	entries(tab, 1, "50 min")
	tab.Says("You are not sitting at the loom.")
}

// What is sent again because no answer came is written once, also when the page was loaded
// anew in between.
func TestNoteSentAgain(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	tab, _ := openLog(t, r)
	typed(tab, "log-note", "beat lighter from here")
	tab.Do(`const ask = window.fetch
window.fetch = async (path, with_) => {
  const answer = await ask(path, with_)
  if (String(path).endsWith('/log')) throw new TypeError('cut off')
  return answer
}
`)
	tab.Click("Write the note down")
	tab.Wait("sessionStorage.getItem(Object.keys(sessionStorage).find(k => k.includes('log-sent'))) !== 'null'")
	time.Sleep(200 * time.Millisecond)
	tab.Reload()
	tab.Wait("document.getElementById('log-note')?.value === 'beat lighter from here'")
	tab.Click("Write the note down")
	tab.Wait("document.getElementById('log-note').value === ''")
	entries(tab, 1, "beat lighter from here")
	var text string
	tab.Read(&text, "document.body.innerText")
	if strings.Count(text, "beat lighter from here") != 1 {
		t.Error("it is written twice")
	}
}
