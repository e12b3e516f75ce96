package present

import (
	"fmt"
	"strconv"
	"strings"

	"sley/internal/app"
)

// PieceKind says a kind of piece: what it is called, and what it is.
func PieceKind(k app.PieceKind) (name, says string) { return k.Called(), pieceKinds[k.ID] }

// KindFigures gives the usual finished size of a kind of piece, with the range that such
// pieces are woven in, as they are written in its units.
func KindFigures(k app.PieceKind) []Line {
	out := []Line{
		{ID: "length", Label: "finished length", Value: k.Size.Length.Usual.Typed, Note: k.Size.Length.Low.Typed + " to " + k.Size.Length.High.Typed},
		{ID: "width", Label: "finished width", Value: k.Size.Width.Usual.Typed, Note: k.Size.Width.Low.Typed + " to " + k.Size.Width.High.Typed},
	}
	if k.Both != "" {
		out = append(out, Line{ID: "ends", Label: "both ends", Value: k.Both})
	}
	if k.Weave != "" {
		out = append(out, Line{ID: "weave", Label: "weave", Value: k.Weave})
	}
	return append(out,
		Line{ID: "count", Label: "usually woven together", Value: strconv.Itoa(k.Count)},
		Line{ID: "source", Label: "source", Value: k.Cites})
}

// KindsText says the kinds of pieces, each with its usual size.
func KindsText(kinds []app.PieceKind) string {
	var b strings.Builder
	for _, k := range kinds {
		_, says := PieceKind(k)
		fmt.Fprintf(&b, "%s%s: %s\n", textIndent, k.ID, says)
		for _, l := range KindFigures(k)[:2] {
			fmt.Fprintf(&b, "        %s %s (%s)\n", l.Label, l.Value, l.Note)
		}
	}
	return b.String()
}

// KindJSON is the documented shape of a kind of piece (docs/json.md).
type KindJSON struct {
	ID     string    `json:"id"`
	Says   string    `json:"says"`
	Count  int       `json:"count"`
	Length RangeJSON `json:"length"`
	Width  RangeJSON `json:"width"`
	Both   string    `json:"both,omitempty"`
	Weave  string    `json:"weave,omitempty"`
	Source string    `json:"source"`
}

// RangeJSON is a usual size and its range, as a plan file writes them.
type RangeJSON struct {
	Usual string `json:"usual"`
	Low   string `json:"low"`
	High  string `json:"high"`
}

// KindsJSONOf gives the shape of the kinds of pieces.
func KindsJSONOf(kinds []app.PieceKind) []KindJSON {
	out := []KindJSON{}
	for _, k := range kinds {
		_, says := PieceKind(k)
		l, w := k.Size.Length, k.Size.Width
		out = append(out, KindJSON{
			k.ID, says, k.Count,
			RangeJSON{l.Usual.Typed, l.Low.Typed, l.High.Typed},
			RangeJSON{w.Usual.Typed, w.Low.Typed, w.High.Typed},
			k.Both, k.Weave, k.Source,
		})
	}
	return out
}
