package specimen_test

import (
	"testing"

	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

// A back end that is tried on the specimen has met every kind of item.
func TestEveryKindOfItemIsThere(t *testing.T) {
	seen := map[string]bool{}
	for _, page := range specimen.Document().Pages {
		note(seen, page.Items)
	}
	for _, kind := range []string{"line", "polyline", "polygon", "rect", "circle", "path", "text", "group", "clip", "turned", "dashed", "round"} {
		if !seen[kind] {
			t.Errorf("the specimen has no %s", kind)
		}
	}
}

func note(seen map[string]bool, items []scene.Item) {
	for _, it := range items {
		if path, ok := scene.Outline(it); ok {
			seen["dashed"] = seen["dashed"] || len(path.Pen.Dash) > 0
			seen["round"] = seen["round"] || path.Pen.Round
		}
		switch it := it.(type) {
		case scene.Line:
			seen["line"] = true
		case scene.Polyline:
			seen["polygon"], seen["polyline"] = seen["polygon"] || it.Closed, seen["polyline"] || !it.Closed
		case scene.Rect:
			seen["rect"] = true
		case scene.Circle:
			seen["circle"] = true
		case scene.Path:
			seen["path"] = true
		case scene.Text:
			seen["text"], seen["turned"] = true, seen["turned"] || it.Angle != 0
		case scene.Group:
			seen["group"], seen["clip"] = true, seen["clip"] || !it.Clip.IsZero()
			note(seen, it.Items)
		}
	}
}
