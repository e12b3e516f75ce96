package planfile

import (
	"strings"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// wantEnd is what may stand for one end of a piece.
const wantEnd = `how an end is finished, as "hem 1 in", "fringe 5 in" or "none"`

// ends reads how the two ends of a piece are finished: both alike, or each for
// itself.
func (t table) ends() (first, last warp.End) {
	if !t.has("both") {
		return t.end("first"), t.end("last")
	}
	for _, key := range []string{"first", "last"} {
		if t.has(key) {
			t.failKey("ends.both", key, nil)
		}
	}
	both := t.end("both")
	return both, both
}

// end reads one end, as a text or as a table.
func (t table) end(key string) warp.End {
	n := t.at(key)
	switch {
	case n == nil:
		return warp.End{}
	case n.kind == textKind:
		return t.d.endText(n)
	case n.kind == tableKind:
		return t.d.endTable(n)
	}
	t.d.wrongKind(n, wantEnd)
	return warp.End{}
}

func (d *decoder) endTable(n *node) warp.End {
	hem, fringe := n.child("hem"), n.child("fringe")
	switch {
	case hem != nil && fringe != nil:
		d.fail("end.both-kinds", n, nil)
		return warp.End{}
	case hem != nil:
		return d.hem(d.open(hemTable, n))
	case fringe != nil:
		return d.fringe(d.open(fringeTable, n))
	}
	d.fail("end.no-kind", n, nil)
	return warp.End{}
}

func (d *decoder) hem(t table) warp.End {
	turned := t.choice("turned", []string{"before washing", "after washing"})
	return warp.End{
		Finish:       warp.Hem,
		Depth:        t.length("hem", detail),
		TurnIn:       t.length("turn-in", detail),
		TurnedBefore: turned == "before washing",
		Outside:      t.truth("outside"),
	}
}

func (d *decoder) fringe(t table) warp.End {
	return warp.End{
		Finish:        warp.Fringe,
		Depth:         t.length("fringe", detail),
		Twist:         t.lostShare("twist"),
		YarnShrinkage: t.lostShare("yarn-shrinkage"),
		Knot:          t.length("knot", detail),
		Inside:        t.truth("inside"),
	}
}

// endText reads "hem 1 in + 1/4 in outside turned before washing", "fringe 5
// in inside" or "none".
func (d *decoder) endText(n *node) warp.End {
	c := clip{text: n.text}
	word, rest := firstWord(c)
	switch strings.ToLower(word) {
	case "none":
		if rest.text != "" {
			d.part("end.trailing", n, rest.at, rest.text, nil)
		}
		return warp.End{}
	case "hem":
		return d.hemText(n, rest)
	case "fringe":
		return d.fringeText(n, rest)
	}
	d.part("end.form", n, c.trim().at, word, nil)
	return warp.End{}
}

func (d *decoder) hemText(n *node, c clip) warp.End {
	depth, rest, ok := d.endLength(n, c)
	end := warp.End{Finish: warp.Hem, Depth: depth}
	if ok && strings.HasPrefix(rest.text, "+") {
		end.TurnIn, rest, ok = d.endLength(n, rest.from(1).trim())
	}
	rest, end.Outside = cutWords(rest, "outside")
	rest, end.TurnedBefore = cutWords(rest, "turned before washing")
	if !end.TurnedBefore {
		rest, _ = cutWords(rest, "turned after washing")
	}
	if !end.Outside {
		rest, end.Outside = cutWords(rest, "outside")
	}
	return d.noMore(n, rest, end, ok)
}

func (d *decoder) fringeText(n *node, c clip) warp.End {
	depth, rest, ok := d.endLength(n, c)
	end := warp.End{Finish: warp.Fringe, Depth: depth}
	rest, end.Inside = cutWords(rest, "inside")
	return d.noMore(n, rest, end, ok)
}

// noMore gives the end when nothing but what was read stands in its text.
func (d *decoder) noMore(n *node, rest clip, end warp.End, ok bool) warp.End {
	if ok && rest.text != "" {
		d.part("end.trailing", n, rest.at, rest.text, nil)
	}
	return end
}

// endLength reads a length in the text of an end.
func (d *decoder) endLength(n *node, c clip) (l qty.Typed[qty.Length], rest clip, ok bool) {
	is, after, err := qty.ScanLength(c.text)
	if err != nil {
		d.faultAt(n, len([]rune(n.text[:c.at])), err)
		return l, c, false
	}
	rest = c.from(len(c.text) - len(strings.TrimPrefix(after, ","))).trim()
	if !d.fits(n, is, detail) {
		return l, rest, false
	}
	typed := strings.TrimSpace(c.text[:len(c.text)-len(after)])
	return qty.Typed[qty.Length]{Is: is, Typed: typed}, rest, true
}

// cutWords cuts words from the front of a text, in any case.
func cutWords(c clip, words string) (rest clip, found bool) {
	rest = c
	for _, want := range strings.Fields(words) {
		word, after := firstWord(rest)
		if !strings.EqualFold(strings.TrimSuffix(word, ","), want) {
			return c, false
		}
		rest = after
	}
	return rest, true
}
