package scene_test

import (
	"math"
	"strings"
	"testing"

	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

func deep(n int) scene.Item {
	if n == 0 {
		return scene.Line{}
	}
	return scene.Group{Items: []scene.Item{deep(n - 1)}}
}

func TestValidate(t *testing.T) {
	text := scene.Text{Size: 12, Text: "warp"}
	for _, c := range []struct {
		name string
		page scene.Page
		want string
	}{
		{"no width", scene.Page{Height: 1}, "page of 0 by 1 mm"},
		{"no number", scene.Page{Width: math.NaN(), Height: 1}, "page of NaN"},
		{"too large", scene.Page{Width: 5081, Height: 1}, "at most 5080"},
		{"nothing", with(nil), "nothing that can be drawn"},
		{"a place that is no number", with(scene.Line{X1: math.NaN()}), "NaN is out of reach"},
		{"a place far off", with(scene.Circle{X: 2e5}), "out of reach"},
		{"a group far off", with(scene.Group{X: math.Inf(1)}), "out of reach"},
		{"in a group", with(scene.Group{Items: []scene.Item{scene.Line{}, scene.Line{Y2: math.Inf(-1)}}}), "item 0: item 1: -Inf"},
		{"a negative rectangle", with(scene.Rect{Width: -1}), "rectangle of -1"},
		{"a negative circle", with(scene.Circle{Radius: -1}), "circle of -1"},
		{"a negative pen", with(scene.Line{Pen: scene.Solid(-1)}), "pen of -1"},
		{"a negative dash", with(scene.Line{Pen: scene.Pen{Width: 1, Dash: []float64{3, -1}}}), "dash of -1"},
		{"dashes of nothing", with(scene.Line{Pen: scene.Pen{Width: 1, Dash: []float64{0, 0}}}), "at least 0.05"},
		{"letters of no size", with(scene.Text{Text: "warp"}), "letters of 0 points"},
		{"a text far off", with(scene.Text{Size: 1, Y: 1e9}), "out of reach"},
		{"an unknown anchor", with(func() scene.Text { text.Anchor = 3; return text }()), "anchor or a family"},
		{"a path that begins in the air", with(scene.Path{}.Line(1, 1)), "begins with a move"},
		{"a step that is none", with(scene.Path{Segments: []scene.Segment{{}, {Step: 9}}}), "begins with a move"},
		{"groups too deep", with(deep(scene.MaxDepth)), "more than 24 deep"},
	} {
		if err := c.page.Validate(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

func with(it scene.Item) scene.Page {
	return scene.Page{Width: 10, Height: 10, Items: []scene.Item{it}}
}

func TestValidateLetsGoodPagesPass(t *testing.T) {
	pages := append(specimen.Document().Pages, with(deep(scene.MaxDepth-1)), scene.Page{Width: 5080, Height: 0.1})
	for i, page := range pages {
		if err := page.Validate(); err != nil {
			t.Errorf("page %d: %v", i, err)
		}
	}
}

func TestValidateLeavesTheDashAlone(t *testing.T) {
	dash := make([]float64, 2, 3)
	dash[0], dash[1] = 2, 1
	if err := with(scene.Line{Pen: scene.Pen{Width: 7, Dash: dash}}).Validate(); err != nil {
		t.Fatal(err)
	}
	if got := dash[:3][2]; got != 0 {
		t.Errorf("wrote %v behind the caller's pattern", got)
	}
}
