package web_test

import (
	"slices"
	"testing"
	"time"

	"sley/internal/face/web/browsing"
)

// shown holds once the warps are on the page.
const shown = "document.querySelectorAll('.warps h2').length > 0"

// open starts a browser and a book and waits for the first warp.
func open(t *testing.T, f *fake) *browsing.Tab {
	t.Helper()
	tab := browsing.Start(t).Open(t, f.url())
	tab.Wait(shown)
	return tab
}

func TestListOfWarps(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	if got := tab.WarpNames(); !slices.Equal(got, demoNames) {
		t.Errorf("warps: %q", got)
	}
	for _, text := range []string{
		"Warps in hand", "/home/weaver/.local/share/sley/book.sley", "7 warps", "eaving: towel 3 of 6", "2 things need care",
		"26 November 2026", "12 yarns, 2 looms, 9 drafts", "sley 0.5.0",
	} {
		tab.Says(text)
	}
	var figures [][]string
	tab.Read(&figures, `[...document.querySelectorAll('.figures')].map(t => [...t.rows].map(r => `+browsing.Plain("r.innerText")+`.split(/\s*[\t\n]\s*/).join('=')))`)
	if len(figures) != len(demoNames) || len(figures[0]) != 6 || !slices.Contains(figures[0], "warp to wind=5 1/2 yd") {
		t.Errorf("figures: %q", figures)
	}
	tab.ReachedByKeys(t)
	tab.Size(390, 800)
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
}

func TestSearchAndMore(t *testing.T) {
	t.Parallel()
	var names []string
	for range 24 {
		names = append(names, demoNames...)
	}
	f := newFake(t, names[:120]...)
	tab := open(t, f)
	tab.Says("50 of 120 shown")
	tab.Click("Show more")
	tab.Says("100 of 120 shown")
	f.elsewhere(60, "Changed on the second lot")
	tab.Says("Changed on the second lot") // all that is shown is read anew, not the first lot alone
	tab.Says("100 of 120 shown")
	f.slow(300 * time.Millisecond)
	tab.Click("Show more")
	f.elsewhere(61, "Changed while more was asked for") // neither takes the other away
	tab.Says("Changed while more was asked for")
	f.slow(0)
	tab.Wait("document.querySelectorAll('.warps h2').length === 120 && !document.querySelector('.more')")
	tab.Do("document.querySelector('#search').focus()")
	tab.Type("BLANK")
	tab.Says("17 warps with “BLANK”")
	tab.Type("ETS OF SILK")
	tab.Says("No warp has “BLANKETS OF SILK” in it.")
	tab.EachLook(t, "none")
	tab.Click("Show all warps")
	tab.Says("50 of 120 shown")
	tab.Quiet(t, false)
}

func TestRenameUndoRedo(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	tab.Edit("Berth blanket", "Berth blanket, wide")
	tab.EachLook(t, "edit")
	tab.Press(browsing.Escape)
	tab.Wait("document.activeElement.ariaLabel === 'Rename Berth blanket'") // the keyboard goes on where it was
	if f.posted() != 0 {
		t.Error("what was dropped was sent")
	}
	tab.Rename(1, "Berth blanket, wide")
	tab.Rename(0, "Seven galley towels")
	if f.nameOf(2) != "Berth blanket, wide" || f.nameOf(1) != "Seven galley towels" {
		t.Errorf("saved %q and %q", f.nameOf(1), f.nameOf(2))
	}
	tab.Edit("Seven galley towels", "Half typ")
	tab.Click("Undo")
	tab.Says("Save or drop the new name of Seven galley towels first")
	tab.Wait("document.querySelector('.edit input').value === 'Half typ'")
	tab.Click("Drop")
	tab.Press("z", browsing.Ctrl)
	tab.Says("Undone: Six galley towels")
	tab.Reload() // what can be undone belongs to the window, and outlasts a reload
	tab.Wait(shown)
	tab.Click("Undo")
	tab.Says("Undone: Berth blanket")
	tab.Press("Z", browsing.Ctrl, browsing.Shift)
	tab.Says("Redone: Berth blanket, wide")
	tab.Click("Redo")
	tab.Says("Redone: Seven galley towels")
	if f.nameOf(2) != "Berth blanket, wide" || f.nameOf(1) != "Seven galley towels" {
		t.Errorf("after the steps %q and %q", f.nameOf(1), f.nameOf(2))
	}
	tab.EachLook(t, "steps")
	tab.Quiet(t, false)
}

func TestConflictIsShownAndNothingIsWrittenOver(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	tab.Edit("Berth blanket", "Mine")
	f.elsewhere(2, "Theirs")
	tab.Press(browsing.Enter)
	tab.Says("Berth blanket was changed elsewhere")
	if got := f.nameOf(2); got != "Theirs" {
		t.Fatalf("written over: %q", got)
	}
	tab.EachLook(t, "conflict")
	tab.ReachedByKeys(t)
	tab.Click("Keep what is in the book")
	tab.Wait("document.activeElement.ariaLabel === 'Rename Theirs'")
	if got := f.nameOf(2); got != "Theirs" {
		t.Fatalf("written over: %q", got)
	}
	tab.Edit("Theirs", "Mine after all")
	f.elsewhere(2, "Theirs again")
	tab.Press(browsing.Enter)
	tab.Click("Keep yours")
	tab.Says("Saved: Mine after all")
	if got := f.nameOf(2); got != "Mine after all" {
		t.Errorf("chosen and not saved: %q", got)
	}
	f.elsewhere(2, "Theirs at last")
	tab.Says("Theirs at last")
	tab.Click("Undo") // it would write over what others did since
	tab.Says("was changed elsewhere")
	if got := f.nameOf(2); got != "Theirs at last" {
		t.Errorf("undo wrote over: %q", got)
	}
	tab.Quiet(t, true)
}

func TestProblemStandsBesideTheField(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	tab.Edit("Berth blanket", "")
	tab.Press(browsing.Enter)
	tab.Says("A warp needs a name: give it one")
	tab.Wait("document.activeElement.getAttribute('aria-invalid') === 'true' && document.getElementById(document.activeElement.getAttribute('aria-describedby')).innerText.includes('give it one')")
	tab.EachLook(t, "problem")
	f.refuse("/changes", 507, trouble("book.full", "the disk is full; nothing was written", "make room, then try again"))
	tab.Type("Kept")
	tab.Press(browsing.Enter)
	tab.Says("The disk is full; nothing was written: make room, then try again")
	tab.Wait("document.activeElement.value === 'Kept'")
	tab.Quiet(t, true)
}

func TestOurFaultCanBeCopied(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	report := "sley 0.5.0, linux/amd64\nPOST /api/documents/2/changes\nwriting the book: an index out of range"
	f.refuse("/changes", 500, object{"fault": object{"says": "this is our fault, not yours", "report": report}})
	tab.Edit("Berth blanket", "Kept through a fault")
	tab.Press(browsing.Enter)
	tab.Says("This is our fault, not yours")
	tab.Wait("document.querySelector('.fault textarea').value === " + browsing.Quote(report))
	tab.EachLook(t, "fault")
	tab.ReachedByKeys(t)
	tab.Click("Copy the report")
	tab.Wait("['Copied', 'Marked: copy it with Ctrl+C'].some(s => document.body.innerText.includes(s))")
	f.refuse("", 0, nil)
	tab.Click("Save")
	tab.Says("Saved: Kept through a fault")
	f.refuse("/undo", 500, object{"fault": object{"says": "this is our fault, not yours", "report": report}})
	tab.Click("Undo")
	tab.Says("This is our fault, not yours")
	tab.EachLook(t, "fault-undo")
	tab.Click("Put away")
	tab.Wait("!document.querySelector('.fault')")
	tab.Quiet(t, true)
}

func TestServerGoneAndBack(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	f.stop()
	tab.Says("sley is not answering")
	tab.Edit("Berth blanket", "Typed while it was gone")
	tab.Press(browsing.Enter)
	tab.Says("Kept here. It is saved as soon as sley answers.")
	tab.EachLook(t, "gone")
	tab.ReachedByKeys(t)
	f.elsewhere(1, "Changed while it was gone")
	f.start(t)
	tab.Says("Saved: Typed while it was gone")
	tab.Says("Changed while it was gone")
	tab.Wait("!document.querySelector('.notice')")
	if got := f.nameOf(2); got != "Typed while it was gone" {
		t.Errorf("saved %q", got)
	}
	f.elsewhere(3, "Heard again")
	tab.Says("Heard again")
	tab.Quiet(t, true)
}

func TestWhatIsTypedOutlastsAReload(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	tab.Edit("Berth blanket", "Half typ")
	tab.Reload()
	tab.Wait("document.querySelector('.edit input')?.value === 'Half typ'")
	tab.Do("document.querySelector('#search').focus()")
	tab.Type("galley")
	tab.Says("Not in the list below, and still open here") // a search does not put it away
	tab.EachLook(t, "stray")
	tab.Click("Save")
	tab.Wait("!document.querySelector('.edit')")
	if got := f.nameOf(2); got != "Half typ" {
		t.Errorf("saved %q", got)
	}
	tab.Quiet(t, false)
}

func TestSessionRefused(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames...)
	tab := open(t, f)
	tab.Edit("Berth blanket", "Typed before")
	f.refuse("/api/", 401, trouble("session.unknown", "this window is not let in", "open sley again"))
	tab.Press(browsing.Enter)
	tab.Says("This window is no longer let in")
	tab.Says("Open sley again")
	tab.EachLook(t, "refused")
	tab.ReachedByKeys(t)
	f.refuse("", 0, nil)
	tab.Click("Try now")
	tab.Says("Saved: Typed before")
	tab.Quiet(t, true)
}

func TestClearDemoAndEmptyBook(t *testing.T) {
	t.Parallel()
	f := newFake(t, demoNames[:1]...)
	tab := open(t, f)
	tab.Click("Clear the demo")
	tab.Says("This book is empty")
	tab.Says("Looms")
	tab.Wait("![...document.querySelectorAll('button')].some(b => b.innerText === 'Clear the demo')")
	tab.ReachedByKeys(t)
	tab.Quiet(t, false)
}
