package present_test

import (
	"regexp"
	"strings"
	"testing"

	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/qty"
)

var numberText = regexp.MustCompile(`\d+(?:[./]\d+)?`)

// Every number in the text comes from a node: the figure of a line is its own
// node's, within the step it is read to at the bench; a number in a label or a
// note is one that a node carries (a shaft, a reed, an order, what was typed) or
// the figure of another node.
func TestEveryNumberInTheTextComesFromANode(t *testing.T) {
	lines := 0
	for name, r := range plans(t) {
		for _, u := range []present.Units{present.Imperial, present.Metric} {
			known := carried(r, u)
			for _, s := range present.PageOf(r, u, false).Sections {
				for _, l := range s.Lines {
					lines++
					checkLine(t, name, u, r, l, known)
				}
				checkCarried(t, name, "heading", s.Title, known)
			}
		}
	}
	if lines < 2000 {
		t.Errorf("only %d lines were read", lines)
	}
}

// carried gives every number that the nodes carry in words, and every figure as
// it is shown.
func carried(r *reckon.Result, u present.Units) map[string]bool {
	known := map[string]bool{}
	add := func(texts ...string) {
		for _, text := range texts {
			for _, n := range numberText.FindAllString(text, -1) {
				known[n] = true
			}
		}
	}
	for _, n := range r.Nodes {
		low, high := n.Figure, n.Figure
		low.Is, high.Is = n.Low, n.High
		add(u.Bench(n), u.Exact(n.Figure), u.Exact(low), u.Exact(high), n.Typed, n.Source)
		add(n.About.Piece, n.About.Yarn, n.About.Reed, n.About.Order, n.About.Mark, qty.Int(int64(n.About.Index)).String())
	}
	return known
}

func checkCarried(t *testing.T, plan, what, text string, known map[string]bool) {
	t.Helper()
	for _, n := range numberText.FindAllString(text, -1) {
		if !known[n] {
			t.Errorf("%s: %s %q: no node carries %s", plan, what, text, n)
		}
	}
}

func checkLine(t *testing.T, plan string, u present.Units, r *reckon.Result, l present.Line, known map[string]bool) {
	t.Helper()
	n, ok := r.Node(l.ID)
	if !ok {
		t.Errorf("%s: %q has no node", plan, l.Label)
		return
	}
	checkCarried(t, plan, "label", l.Label, known)
	checkCarried(t, plan, "note", l.Note, known)
	if n.Kind == reckon.Length {
		checkLength(t, plan, u, n, l.Value)
		return
	}
	if n.Kind.IsCount() && n.Is.IsInt() && l.Value != strings.Replace(n.Is.String(), "-", "−", 1) {
		t.Errorf("%s: %s: %q printed, the node is %s", plan, l.ID, l.Value, n.Is)
	}
}

// checkLength reads a printed length back: it is the node's, to the bench step;
// where two are printed, both are.
func checkLength(t *testing.T, plan string, u present.Units, n reckon.Node, text string) {
	t.Helper()
	for _, part := range strings.Split(strings.TrimSuffix(text, ")"), " (") {
		sign := int64(1)
		if rest, ok := strings.CutPrefix(part, "−"); ok {
			sign, part = -1, rest
		}
		got, err := qty.ParseLength(part)
		if err != nil {
			t.Errorf("%s: %s: %q cannot be read: %v", plan, n.ID, text, err)
			return
		}
		off := got.Rat().Mul(qty.Int(sign)).Sub(n.Is).Abs()
		if u.Step.Rat().Less(off) {
			t.Errorf("%s: %s: %q printed, the node is %s", plan, n.ID, text, u.Exact(n.Figure))
		}
	}
}

// Every node that any plan makes has its words, and every word its node.
func TestEveryNodeHasItsWords(t *testing.T) {
	for name, r := range plans(t) {
		for _, n := range r.Nodes {
			if label := present.Label(n); label == n.ID && n.ID != "ends" || strings.ContainsAny(label, "{}") {
				t.Errorf("%s: %s says %q", name, n.ID, label)
			}
		}
	}
}
