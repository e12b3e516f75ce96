package planfile

import (
	"sley/internal/trade/problem"
)

// Places knows where the values of one plan file stand.
type Places struct {
	src *source
	top *node
}

// Find gives the place of the value at a path such as pieces[0].width, or of
// the nearest table around it that the file holds. Of what is nowhere in the
// file it gives the file alone, without a line. It reports false only when
// there is no file.
func (p Places) Find(path string) (problem.Place, bool) {
	if p.src == nil {
		return problem.Place{}, false
	}
	n, _ := p.top.reach(path)
	if n == p.top {
		return problem.Place{File: p.src.file}, true
	}
	return p.src.place(n.shown()), true
}

// reach follows a path below n as far as it leads, and tells whether that is to
// its end.
func (n *node) reach(path string) (*node, bool) {
	steps, err := problem.ParsePath(path)
	for _, step := range steps {
		next := n.step(step)
		if next == nil {
			return n, false
		}
		n = next
	}
	return n, err == nil
}

// step gives the value one step below n, or nil.
func (n *node) step(s problem.Step) *node {
	switch {
	case !s.Item:
		return n.child(s.Key)
	case n.kind == listKind && s.Index < len(n.items):
		return n.items[s.Index]
	}
	return nil
}

// follow gives the value at a path below n, or nil.
func (n *node) follow(path string) *node {
	if at, whole := n.reach(path); whole {
		return at
	}
	return nil
}

// shown gives the characters of the file that stand for n: those between the
// quotes of a text, the name in the heading of a table, else the value as
// written.
func (n *node) shown() span {
	switch {
	case n.kind == textKind && n.inside >= 0 && n.text != "":
		return span{n.inside, n.inside + len(n.text)}
	case (n.kind == tableKind || n.kind == listKind) && n.made != closed:
		return n.keyAt
	}
	return n.at
}

// within gives the characters of the file that stand for width characters of
// n's text from character at. Where escapes hide them it gives all of n.
func (n *node) within(at, width int) span {
	if n.inside < 0 || at < 0 {
		return n.at
	}
	from := bytesOf(n.text, at)
	to := from + bytesOf(n.text[from:], width)
	return span{n.inside + from, n.inside + to}
}

// bytesOf gives how many bytes the first characters of text take.
func bytesOf(text string, characters int) int {
	for at := range text {
		if characters == 0 {
			return at
		}
		characters--
	}
	return len(text)
}
