package present_test

import (
	"testing"

	"sley/internal/app"
	"sley/internal/face/present"
)

// Every kind of piece is said, with the range of its sizes and their source.
func TestKindsHaveWords(t *testing.T) {
	for _, k := range app.Kinds(true) {
		if name, says := present.PieceKind(k); name == "" || says == "" {
			t.Errorf("%s: %q, %q", k.ID, name, says)
		}
		figures := present.KindFigures(k)
		for _, f := range figures {
			if f.ID == "" || f.Label == "" || f.Value == "" {
				t.Errorf("%s: %+v", k.ID, f)
			}
		}
		if last := figures[len(figures)-1]; last.Value != "common practice, no source" {
			t.Errorf("%s: its source is %q", k.ID, last.Value)
		}
	}
}
