package present

import (
	"slices"
	"strconv"
	"strings"

	"sley/internal/engine/reckon"
)

// ownerOf says which piece or yarn a node is about, from 1; 0 where it is about
// none of its own.
func (c *courser) ownerOf(n reckon.Node) (Each, int) {
	first, _, _ := strings.Cut(n.ID, "[")
	switch first {
	case "pieces":
		at, _, _ := strings.Cut(strings.TrimPrefix(n.ID, "pieces["), "]")
		i, err := strconv.Atoi(at)
		if err != nil {
			return Once, 0
		}
		return EachPiece, i + 1
	case "built.woven":
		for i := range c.r.Plan.Pieces {
			if c.r.Plan.Pieces[i].Name == n.About.Piece {
				return EachPiece, i + 1
			}
		}
	case "yarns", "packages":
		return EachYarn, slices.Index(c.yarns, n.About.Yarn) + 1
	}
	return Once, 0
}

// owners is how many pieces or yarns there are of the kind.
func (c *courser) owners(kind Each) int {
	switch kind {
	case EachPiece:
		return len(c.r.Plan.Pieces)
	case EachYarn:
		return len(c.yarns)
	}
	return 0
}

func (c *courser) nameOf(kind Each, owner int) string {
	if kind == EachPiece {
		return c.r.Plan.Pieces[owner-1].Name
	}
	return c.yarns[owner-1]
}

// letter is that of a piece or yarn where there are several.
func (c *courser) letter(s *spot) string {
	if s.owner == 0 || c.owners(s.kind) < 2 {
		return ""
	}
	return Letter(s.owner)
}

// Letter is the letter of the n-th, from 1: A to Z, then AA.
func Letter(n int) string {
	const letters = 26
	if n > letters {
		return Letter((n-1)/letters) + Letter((n-1)%letters+1)
	}
	return string(rune('A' + n - 1))
}

// numberOf writes the number of a step.
func (c *courser) numberOf(s *spot) string {
	text := number(s.line) + c.letter(s)
	if s.place > 0 {
		text += "." + number(s.place)
	}
	return text
}

// labelIn is the label of a figure as it stands beside another, without the name of
// its piece or yarn where that is plain.
func (c *courser) labelIn(s, beside *spot) string {
	label := Label(s.node)
	if !c.plain(s, beside) {
		return label
	}
	usual := map[Each]string{EachPiece: "piece", EachYarn: "yarn"}[s.kind]
	return strings.TrimPrefix(label, named(c.nameOf(s.kind, s.owner), usual)+", ")
}

// plain reports whether it need not be said whose a figure is: there is one piece
// only, or the other's stage is told for the same piece or yarn.
func (c *courser) plain(s, beside *spot) bool {
	switch {
	case s.owner == 0 || s.node.Says() == "pieces[].width-reed": // which has a twin of the whole warp
		return false
	case s.kind == EachPiece && c.owners(EachPiece) == 1:
		return true
	}
	return s.owner == beside.owner && s.kind == beside.kind && stages[beside.stage].each == s.kind
}
