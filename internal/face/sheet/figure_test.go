package sheet

import (
	"strings"
	"testing"

	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// A figure with a long label and a long note keeps both above what comes next: the note
// begins on the last line of the label.
func TestALongFigureKeepsItsRoom(t *testing.T) {
	p := &press{size: scene.A4}
	long := strings.Repeat("a label that takes more ", 6)
	for _, note := range []string{"", "36.6 oz", strings.Repeat("36.6 oz, 4 to buy ", 5)} {
		for _, label := range []string{"ends", long} {
			b := p.figure(body, figured, small, present.Line{Label: label, Value: "1140 yd", Note: note})
			for _, item := range b.draw(0, 0) {
				if text, ok := item.(scene.Text); ok && text.Y > b.high {
					t.Errorf("%q beside %.20q stands at %.1f of %.1f mm", text.Text, label, text.Y, b.high)
				}
			}
		}
	}
}
