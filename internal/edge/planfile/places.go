package planfile

import (
	"strconv"
	"strings"

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
	n := p.top
	for path != "" {
		next, rest := follow(n, path)
		if next == nil {
			break
		}
		n, path = next, rest
	}
	if n == p.top {
		return problem.Place{File: p.src.file}, true
	}
	return p.src.place(n.shown()), true
}

// follow goes the first step of a path below n. A key that holds a full stop
// itself is followed when it is there.
func follow(n *node, path string) (next *node, rest string) {
	if n.kind == listKind {
		inner, rest, _ := strings.Cut(strings.TrimPrefix(path, "["), "]")
		i, err := strconv.Atoi(inner)
		if err != nil || i < 0 || i >= len(n.items) {
			return nil, ""
		}
		return n.items[i], strings.TrimPrefix(rest, ".")
	}
	for _, c := range n.items {
		rest, ok := strings.CutPrefix(path, c.key)
		if ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return c, strings.TrimPrefix(rest, ".")
		}
	}
	return nil, ""
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
