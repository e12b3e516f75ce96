package browsing

import (
	"encoding/json"
	"fmt"

	axe "sley/third_party/axe-core"
)

// smallest is the smallest size of text on a page, in CSS pixels.
const smallest = 14

// axeRules are the rules to look for: those of WCAG 2.2 at AA, and axe's own of good
// practice. colourRules are those of them that ask for colours, placeRules those that ask
// how things lie and what is shown at this width.
const (
	axeRules    = `["wcag2a","wcag2aa","wcag21a","wcag21aa","wcag22aa","best-practice"]`
	colourRules = `["color-contrast","link-in-text-block"]`
	placeRules  = `["target-size","heading-order","region","landmark-one-main","duplicate-id-aria","aria-hidden-focus"]`
)

// Barriers are what axe-core finds that keeps people out of the page as it is now, one
// line for each element.
func (b *Tab) Barriers() []string {
	b.t.Helper()
	return b.barriers(axeRules)
}

func (b *Tab) barriers(rules string) []string {
	b.t.Helper()
	b.giveAxe()
	var found []struct {
		ID, Help string
		Nodes    []struct {
			HTML           string
			FailureSummary string
		}
	}
	var text string
	b.Read(&text, `axe.run(document, {runOnly: `+rules+`, resultTypes: ["violations"]}).then(r => JSON.stringify(r.violations))`)
	if err := json.Unmarshal([]byte(text), &found); err != nil {
		b.t.Fatal(err)
	}
	var barriers []string
	for _, rule := range found {
		for _, node := range rule.Nodes {
			barriers = append(barriers, fmt.Sprintf("%s (%s): %s: %s", rule.ID, rule.Help, node.HTML, node.FailureSummary))
		}
	}
	return barriers
}

// giveAxe gives the page axe-core, once: it is long.
func (b *Tab) giveAxe() {
	b.t.Helper()
	var has bool
	if b.Read(&has, "!!window.axe"); !has {
		b.Do(axe.Script)
	}
}

// Cramped is what does not fit or cannot be read: a page wider than its window, text
// cut off at the side, text that is too small, texts and fields over each other.
func (b *Tab) Cramped() []string {
	b.t.Helper()
	var found []string
	b.Read(&found, fmt.Sprintf(cramped, smallest))
	return found
}

const cramped = `(() => {
	const found = [];
	const root = document.documentElement;
	if (root.scrollWidth > root.clientWidth) found.push("the page is " + root.scrollWidth + " wide in a window of " + root.clientWidth);
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let node; node = walk.nextNode();) {
		const text = node.textContent.trim(), of = node.parentElement;
		if (!text || !of.checkVisibility() || of.closest("noscript, script, style, .hidden, .skip")) continue;
		const size = parseFloat(getComputedStyle(of).fontSize);
		if (size < %d) found.push(size + " px: " + text);
		const range = document.createRange();
		range.selectNodeContents(node);
		const box = range.getBoundingClientRect();
		if (box.right > root.clientWidth + 1 || box.left < -1) found.push("cut off: " + text);
	}
	const drawn = [];
	const seen = (of, {left, right, top, bottom}) => { // of what is scrolled, the part in sight
		for (let e = of.parentElement; e; e = e.parentElement) {
			if (getComputedStyle(e).overflowX === "visible") continue;
			const r = e.getBoundingClientRect();
			left = Math.max(left, r.left), right = Math.min(right, r.right), top = Math.max(top, r.top), bottom = Math.min(bottom, r.bottom);
		}
		return {left, right, top, bottom, width: right - left, height: bottom - top};
	};
	const stays = of => { // in sight, over what is scrolled under it
		for (let e = of; e; e = e.parentElement) if (getComputedStyle(e).position === "sticky") return true;
		return false;
	};
	const boxes = (of, rects) => { if (!stays(of)) for (const r of [...rects].map(r => seen(of, r))) if (r.width > 1 && r.height > 1) drawn.push({of, l: r.left + 1, r: r.right - 1, t: r.top + r.height / 4, b: r.bottom - r.height / 4}); };
	const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let node; node = words.nextNode();) {
		const of = node.parentElement;
		if (!node.textContent.trim() || !of.checkVisibility() || of.closest("noscript, script, style, .hidden, .skip, option")) continue;
		const range = document.createRange();
		range.selectNodeContents(node);
		boxes(of, range.getClientRects());
	}
	for (const of of document.querySelectorAll("input, select, textarea, img")) if (of.checkVisibility()) boxes(of, of.getClientRects());
	const called = e => (e.innerText || e.name || e.id || e.tagName).trim().slice(0, 40);
	drawn.sort((a, b) => a.t - b.t);
	for (let i = 0; i < drawn.length; i++) {
		for (let j = i + 1; j < drawn.length && drawn[j].t < drawn[i].b; j++) {
			const a = drawn[i], b = drawn[j];
			if (a.of === b.of || a.of.contains(b.of) || b.of.contains(a.of)) continue;
			if (a.l < b.r && b.l < a.r) found.push("over each other: " + called(a.of) + " | " + called(b.of));
		}
	}
	return [...new Set(found)].slice(0, 20);
})()`

// Stop is one place where the keyboard comes to.
type Stop struct {
	Name string // tag and label
	Ring string // what shows that it is there, "" for nothing
}

// Walk presses the tabulator through the page once and returns where it came to.
func (b *Tab) Walk() []Stop {
	b.t.Helper()
	// A browser goes on from where the keyboard was last, also after that place lost it.
	b.Do("document.body.tabIndex = -1; document.body.focus(); document.body.removeAttribute('tabindex'); window.walked = new Set()")
	var stops []Stop
	for range 400 {
		b.Press(Tabulator)
		var stop struct {
			Stop
			End bool
		}
		b.Read(&stop, walked)
		if stop.End {
			return stops
		}
		stops = append(stops, stop.Stop)
	}
	b.t.Fatalf("the keyboard does not come round: %d stops", len(stops))
	return nil
}

// naming is how Walk and Reachable call an element.
const naming = `const called = e => (e.tagName.toLowerCase() + " " + (e.ariaLabel || e.labels?.[0]?.innerText || e.innerText || "")).trim();`

const walked = `(() => {
	` + naming + `
	const e = document.activeElement, s = getComputedStyle(e);
	if (e === document.body || window.walked.has(e)) return {End: true};
	window.walked.add(e);
	const box = e.getBoundingClientRect();
	const seen = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
	const drawn = s.outlineStyle === "auto" || s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2; // auto is the browser's own
	const ring = drawn && seen ? s.outlineStyle + " " + s.outlineWidth : "";
	return {Name: called(e), Ring: ring};
})()`

// Reachable are the elements that a keyboard must come to, called as in Walk, in the
// order of the page. Of round buttons that belong together the tabulator comes to one, and
// the arrows to the others.
func (b *Tab) Reachable() []string {
	b.t.Helper()
	var found []string
	b.Read(&found, `(() => {
		`+naming+`
		const group = e => [...document.querySelectorAll("input[type=radio]")].filter(o => o.name === e.name && o.form === e.form);
		const stop = e => e.type !== "radio" || e === (group(e).find(o => o.checked) ?? group(e)[0]);
		return [...document.querySelectorAll("a[href], button, input, textarea, select, summary, [tabindex='0']")]
			.filter(e => e.checkVisibility() && !e.disabled && stop(e)).map(called);
	})()`)
	return found
}

// names are the stops by name, for a comparison with Reachable.
func names(stops []Stop) []string {
	var all []string
	for _, stop := range stops {
		all = append(all, stop.Name)
	}
	return all
}
