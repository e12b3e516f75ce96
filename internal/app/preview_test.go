package app_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/reckon"
	"sley/internal/trade/record"
)

// preview asks for a preview of a warp, which there is always.
func preview(t tb, s *app.Studio, id record.ID, find string, pairs ...string) *app.Preview {
	t.Helper()
	p, err := s.Preview(context.Background(), app.PreviewAsked{ID: id, Sets: sets(t, pairs...), Find: find})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A preview is what the warp comes to once the same is saved, and writes nothing.
func TestPreviewIsWhatSavingGives(t *testing.T) {
	s := withDemo(t)
	c := find(t, s, record.Warp, "Galley towels")
	for _, change := range [][]string{
		{}, {"pieces[0].length=31 in"}, {"warp.sett=20 epi", "pieces[0].count=3"}, {"allowances.take-up=3 in per yd"}, {"name=Other"},
	} {
		before := textOf(t, s, c.ID)
		p := preview(t, s, c.ID, "", change...)
		if textOf(t, s, c.ID) != before || card(t, s, c.ID).Version != c.Version {
			t.Fatalf("%q: a preview was written", change)
		}
		saved, err := s.AddWarp(context.Background(), "w", app.Source{Name: "copy.toml", Text: []byte(before)})
		if err != nil || saved.Refused {
			t.Fatal(err, codesOf(saved.Problems))
		}
		id := saved.ID
		save(t, s, id, "w", change...)
		from, _, err := s.WarpSource(context.Background(), id)
		if err != nil {
			t.Fatal(err)
		}
		result, list := app.ReckonPlan(from, "", false)
		if p.Result == nil || result == nil {
			t.Fatalf("%q: %v %v", change, codesOf(p.Problems), codesOf(list))
		}
		if !slices.EqualFunc(p.Result.Nodes, result.Nodes, func(a, b reckon.Node) bool { return a.ID == b.ID && a.Is.Equal(b.Is) }) {
			t.Errorf("%q: other numbers than when saved", change)
		}
		if !slices.Equal(codesOf(p.Problems), codesOf(list)) || p.Mark != app.Mark(from.Text) && change == nil {
			t.Errorf("%q: problems %v, want %v", change, codesOf(p.Problems), codesOf(list))
		}
	}
}

// What is sought stands in for what the plan seeks, and is found within what is given.
func TestPreviewBackwards(t *testing.T) {
	s := withDemo(t)
	c := find(t, s, record.Warp, "Galley towels")
	p := preview(t, s, c.ID, "pieces[0].count", "warp.wound=10 yd")
	if p.Result == nil || p.Result.Backward == nil || p.Result.Backward.Binding != "warp.wound" {
		t.Fatalf("%v", codesOf(p.Problems))
	}
	what, within := p.Findable()
	if !slices.Contains(what, "pieces[0].count") || !slices.Contains(within, "warp.wound") {
		t.Errorf("%q within %q", what, within)
	}
	if p := preview(t, s, c.ID, "pieces[9].count"); p.Result != nil || !slices.Contains(codesOf(p.Problems), "find.what find.piece") {
		t.Errorf("what is not there is sought: %v", codesOf(p.Problems))
	}
}

// After work began only amendments are laid over the plan.
func TestPreviewAfterWorkBegan(t *testing.T) {
	s := withDemo(t)
	c := find(t, s, record.Warp, "Galley towels")
	start(t, s, c.ID)
	p := preview(t, s, c.ID, "", "pieces[0].length=99 in", "built.wound=7 yd")
	if !slices.Contains(codesOf(p.Problems), "pieces[0].length warp.frozen") {
		t.Errorf("a frozen length: %q", codesOf(p.Problems))
	}
	if n, _ := p.Result.Node("pieces[0].length"); n.Typed == "99 in" {
		t.Error("the frozen plan was changed")
	}
	if n, ok := p.Result.Node("warp.wound"); !ok || n.Typed != "7 yd" || !p.Work.Wound {
		t.Errorf("the amendment was not reckoned: %+v", n)
	}
}

// Whatever is typed into any value of any plan, character by character, there is a
// preview of it, and one with errors says them.
func TestPreviewOfWhatIsHalfTyped(t *testing.T) {
	s := withDemo(t)
	cards, _, err := s.List(context.Background(), record.Query{Kind: record.Warp, Most: 50})
	if err != nil {
		t.Fatal(err)
	}
	asked, none := 0, 0
	for _, c := range cards {
		shown := shown(t, s, c.ID)
		if shown.Started {
			continue
		}
		for path, text := range texts(t, shown.Plan) {
			for i := range len(text) {
				if i > 6 && i < len(text)-6 && i%5 != 0 {
					continue // the middle of long orders
				}
				said, _ := json.Marshal(strings.ToValidUTF8(text[:i], ""))
				p, err := s.Preview(context.Background(), app.PreviewAsked{ID: c.ID, Sets: []app.Set{{Path: path, Value: said}}})
				if err != nil {
					t.Fatal(err)
				}
				asked++
				if p.Result == nil {
					none++
				}
				if (p.Result == nil) != p.Problems.Failed() && (p.Result == nil || p.Result.Backward != nil) {
					t.Fatalf("%s of %s at %q: result %v, problems %v", path, c.Name, text[:i], p.Result != nil, codesOf(p.Problems))
				}
			}
		}
	}
	if asked < 500 || none < 100 {
		t.Errorf("only %d were asked for, %d of them with errors", asked, none)
	}
}

// texts lists the texts of a tree by their paths.
func texts(t *testing.T, tree []byte) map[string]string {
	t.Helper()
	var top any
	if err := json.Unmarshal(tree, &top); err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	var walk func(at string, v any)
	walk = func(at string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, below := range v {
				walk(strings.TrimPrefix(at+"."+key, "."), below)
			}
		case []any:
			for i, below := range v {
				walk(at+"["+string(rune('0'+i))+"]", below)
			}
		case string:
			out[at] = v
		}
	}
	walk("", top)
	return out
}

// The orders of a plan come out as many threads as are reckoned.
func TestPreviewLaysOrdersOut(t *testing.T) {
	s := withDemo(t)
	cards, _, _ := s.List(context.Background(), record.Query{Kind: record.Warp, Most: 50})
	met := map[string]bool{}
	for _, c := range cards {
		p := preview(t, s, c.ID, "")
		for _, o := range p.Orders {
			met[o.Path] = true
			sum := 0
			for _, run := range o.Whole {
				sum += run.Count
			}
			if sum != o.Total || o.Cut || len(o.Leaves) == 0 {
				t.Errorf("%s of %s: %d threads laid out, %d wanted, from %d parts", o.Path, c.Name, sum, o.Total, len(o.Leaves))
			}
		}
		if ends, ok := p.Result.Node("ends"); ok && len(p.Orders) > 0 && p.Orders[0].Path == "warp.stripes" {
			if p.Orders[0].Total != int(ends.Is.Float()) {
				t.Errorf("%s: %d ends in the stripes, not %v", c.Name, p.Orders[0].Total, ends.Is)
			}
		}
	}
	for _, path := range []string{"warp.stripes", "warp.threading", "draft.treadling", "pieces[0].border"} {
		if !met[path] {
			t.Errorf("no plan of the demo has %s", path)
		}
	}
}

// BenchmarkPreview is one key pressed in the plan of the towels.
func BenchmarkPreview(b *testing.B) {
	s := withDemo(b)
	var id record.ID
	cards, _, err := s.List(context.Background(), record.Query{Kind: record.Warp, Most: 50})
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range cards {
		if c.Name == "Galley towels" {
			id = c.ID
		}
	}
	asked := app.PreviewAsked{ID: id, Sets: sets(b, "pieces[0].length=29 in")}
	b.ReportAllocs()
	for b.Loop() {
		if p, err := s.Preview(context.Background(), asked); err != nil || p.Result == nil {
			b.Fatal(err)
		}
	}
}
