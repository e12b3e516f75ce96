package check_test

import (
	"strings"
	"testing"

	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

var sans = scene.Font{}

func pages(items ...scene.Item) scene.Document {
	return scene.Document{Pages: []scene.Page{
		{Width: 100, Height: 100},
		{Width: 100, Height: 100, Items: items},
	}}
}

func say(x, y float64, words string) scene.Text {
	return scene.Text{X: x, Y: y, Size: 10, Text: words}
}

func TestTheSpecimenIsClean(t *testing.T) {
	for _, f := range check.Read(specimen.Document(), check.Rules{MinPt: 10, Margin: 11}) {
		t.Error(f)
	}
}

// Each kind is found where it is, and not where it is just not.
func TestFindings(t *testing.T) {
	wide := letter.Width("Halyard", sans, 10)
	boxed := say(10, 50, "Halyard")
	boxed.Box = scene.Box{X: 10, Y: 40, Width: wide, Height: 15}
	tight := boxed
	tight.Box.Width = wide - 1
	upwards := say(98.8, 20, "Halyard") // its head looks left, its end is at the top
	upwards.Angle = 90
	clip := scene.Box{Width: 30, Height: 10}
	for _, c := range []struct {
		name  string
		items []scene.Item
		rules check.Rules
		want  string
	}{
		{"in the middle", []scene.Item{say(10, 50, "Halyard")}, check.Rules{MinPt: 10, Margin: 9}, ""},
		{"over the right edge", []scene.Item{say(99, 50, "Halyard")}, check.Rules{}, "off the page"},
		{"over the top", []scene.Item{say(10, 1, "Halyard")}, check.Rules{}, "off the page"},
		{"below the bottom by a tail", []scene.Item{say(10, 99.5, "y")}, check.Rules{}, "off the page"},
		{"no tail, no fault", []scene.Item{say(10, 99.5, "x")}, check.Rules{}, ""},
		{"in the margin", []scene.Item{say(10, 50, "Halyard")}, check.Rules{Margin: 11}, "off the page"},
		{"turned, inside", []scene.Item{upwards}, check.Rules{}, ""},
		{"turned, over the top", []scene.Item{scene.Group{Y: -10, Items: []scene.Item{upwards}}}, check.Rules{}, "off the page"},
		{"moved off by its group", []scene.Item{scene.Group{X: 95, Items: []scene.Item{say(1, 50, "Halyard")}}}, check.Rules{}, "off the page"},
		{"in its box", []scene.Item{boxed}, check.Rules{}, ""},
		{"beyond its box", []scene.Item{tight}, check.Rules{}, "outside its box"},
		{"in its box, both moved", []scene.Item{scene.Group{X: 20, Items: []scene.Item{boxed}}}, check.Rules{}, ""},
		{"in a clip", []scene.Item{scene.Group{X: 20, Y: 20, Clip: clip, Items: []scene.Item{say(1, 7, "Halyard")}}}, check.Rules{}, ""},
		{"cut by a clip", []scene.Item{scene.Group{X: 20, Y: 20, Clip: clip, Items: []scene.Item{say(25, 7, "Halyard")}}}, check.Rules{}, "cut by its group"},
		{"cut by the outer clip", []scene.Item{scene.Group{Clip: clip, Items: []scene.Item{
			scene.Group{X: 28, Clip: clip, Items: []scene.Item{say(1, 7, "Halyard")}},
		}}}, check.Rules{}, "cut by its group"},
		{"over one another", []scene.Item{say(10, 50, "Halyard"), say(12, 51, "Sheet")}, check.Rules{}, `over other text "Halyard"`},
		{"side by side", []scene.Item{say(10, 50, "Halyard"), say(10+wide, 50, "Sheet")}, check.Rules{}, ""},
		{"twice", []scene.Item{say(10, 50, "Halyard"), say(10, 50, "Halyard")}, check.Rules{}, "over other text"},
		{"over one another in groups", []scene.Item{say(30, 30, "Halyard"), scene.Group{X: 20, Y: 20, Items: []scene.Item{say(11, 10, "Sheet")}}}, check.Rules{}, "over other text"},
		{"nothing over something", []scene.Item{say(10, 50, "Halyard"), say(10, 50, "   ")}, check.Rules{}, ""},
		{"too small", []scene.Item{say(10, 50, "Halyard")}, check.Rules{MinPt: 10.5}, "too small"},
		{"large slack", []scene.Item{say(99, 50, "l")}, check.Rules{Slack: 2}, ""},
	} {
		found := check.Read(pages(c.items...), c.rules)
		if c.want == "" && len(found) > 0 || c.want != "" && (len(found) != 1 || !strings.Contains(found[0].String(), c.want)) {
			t.Errorf("%s: found %v, want %q", c.name, found, c.want)
		}
		for _, f := range found {
			if f.Page != 2 {
				t.Errorf("%s: on page %d", c.name, f.Page)
			}
		}
	}
}

// Two lines at 45 degrees whose upright boxes overlap and whose letters do not.
func TestTurnedTextIsMeasuredAsItLies(t *testing.T) {
	a, b := say(20, 60, "Main halyard"), say(24, 64, "Jib halyard")
	a.Angle, b.Angle = 45, 45
	if found := check.Read(pages(a, b), check.Rules{}); len(found) > 0 {
		t.Errorf("found %v", found)
	}
	b.X, b.Y = 21, 61
	if found := check.Read(pages(a, b), check.Rules{}); len(found) != 1 || found[0].Kind != check.Overlap {
		t.Errorf("found %v", found)
	}
}

func TestAFindingSaysWhere(t *testing.T) {
	found := check.Read(pages(scene.Text{X: 99, Y: 50, Size: 10, Text: "Halyard"}), check.Rules{})
	if len(found) != 1 || !strings.HasPrefix(found[0].String(), `page 2: "Halyard" off the page, at 99.`) {
		t.Errorf("%v", found)
	}
}
