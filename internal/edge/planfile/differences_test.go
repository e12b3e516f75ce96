package planfile

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestDifferences: what differs, value by value, in the order of the documents.
func TestDifferences(t *testing.T) {
	a := readJSONOf(t, `{"sley":1,"name":"a","warp":{"sett":"24 epi","reed":"12 dpi"},"loom":{"waste":"30 in","reeds":["8 dpi","10 dpi"]},`+
		`"pieces":[{"count":2}],"yarns":{"white":{"count":"8"},"blue":{},"red":{}},"winding":{},"hemstitch":4}`)
	b := readJSONOf(t, `{"sley":1,"warp":{"reed":"12 dpi","sett":"20 epi","yarn":"x"},"loom":{"waste":{"back":"6 in","tie-on":"9 in"},"reeds":["8 dpi"]},`+
		`"pieces":[{"count":"2"},{"a.b":true}],"yarns":{"blue":{},"white":{"count":"8"}},"hemstitch":4,"name":"b"}`)
	want := []Difference{
		{Path: "name", A: "a", B: "b", InA: true, InB: true},
		{Path: "warp.sett", A: "24 epi", B: "20 epi", InA: true, InB: true},
		{Path: "warp.yarn", B: "x", InB: true},
		{Path: "loom.waste", A: "30 in", InA: true},
		{Path: "loom.waste.back", B: "6 in", InB: true},
		{Path: "loom.waste.tie-on", B: "9 in", InB: true},
		{Path: "loom.reeds[1]", A: "10 dpi", InA: true},
		{Path: "pieces[0].count", A: "2", B: `"2"`, InA: true, InB: true},
		{Path: `pieces[1]."a.b"`, B: "true", InB: true},
		{Path: "yarns", A: "white, blue", B: "blue, white", InA: true, InB: true, Order: true},
		{Path: "yarns.red", A: "{}", InA: true},
		{Path: "winding", A: "{}", InA: true},
	}
	if diff := cmp.Diff(want, Differences(a, b)); diff != "" {
		t.Error(diff)
	}
	if a.Equal(b) || !a.Equal(a.Clone()) {
		t.Error("not what Differences say")
	}
}

// TestDifferencesAreWhatDiffers: none of a document to itself; those of two turn
// the first into the second; and backwards they are the same with both sides
// turned.
func TestDifferencesAreWhatDiffers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawDocument(t)
		b := drawChanged(t, a)
		if rapid.IntRange(0, 4).Draw(t, "another") == 0 {
			b = drawDocument(t)
		}
		if !a.Equal(a.Clone()) || a.Equal(b) != sameTrees(a.top, b.top, "") {
			t.Fatalf("%s\n%s: %+v", a.JSON(), b.JSON(), Differences(a, b))
		}
		found := Differences(a, b)
		if got, want := sortedPaths(Differences(b, a)), sortedPaths(found); !slices.Equal(got, want) {
			t.Fatalf("forwards %q, backwards %q", want, got)
		}
		for _, d := range found {
			differs(t, a, b, d)
		}
		c := apply(t, a, b, found)
		for _, d := range Differences(c, b) {
			if !d.Order && !emptied(c, b, d) {
				t.Fatalf("after all changes %+v is left\n%s\n%s", d, c.JSON(), b.JSON())
			}
		}
	})
}

func sortedPaths(found []Difference) []string {
	var out []string
	for _, d := range found {
		out = append(out, d.Path)
	}
	slices.Sort(out)
	return out
}

// differs proves that both documents have at the path what the difference says.
func differs(t *rapid.T, a, b *Document, d Difference) {
	if d.Order {
		return
	}
	is, inA := a.Get(d.Path)
	was, inB := b.Get(d.Path)
	if d.InA && (!inA || is.String() != d.A && is.n.spelled() != d.A) || d.InB && (!inB || was.String() != d.B && was.n.spelled() != d.B) {
		t.Fatalf("%+v, and the documents have %s and %s", d, is.JSON(), was.JSON())
	}
	if d.InA == d.InB && d.A == d.B {
		t.Fatalf("%+v says nothing", d)
	}
}

// apply makes the first document the second by the differences alone.
func apply(t *rapid.T, a, b *Document, found []Difference) *Document {
	c := a.Clone()
	for _, d := range slices.Backward(found) { // the last items of lists first
		if !d.InA || d.InB {
			continue
		}
		if is, ok := b.Get(d.Path); ok && c.Set(d.Path, is) == nil {
			continue // values of its own stand there now
		}
		c.Remove(d.Path)
	}
	for _, d := range found {
		if !d.InB || d.Order {
			continue
		}
		clear(c, d.Path)
		is, _ := b.Get(d.Path)
		if err := c.Set(d.Path, is); err != nil {
			t.Fatalf("%+v: %v in %s", d, err, c.JSON())
		}
	}
	return c
}

// clear makes what stands on the way of a path the tables and lists that it
// goes through; nothing of what they hold otherwise is in the second document.
func clear(c *Document, path string) {
	for i := range path {
		if i == 0 || path[i] != '.' && path[i] != '[' {
			continue
		}
		want := tableKind
		if path[i] == '[' {
			want = listKind
		}
		if n := c.top.follow(path[:i]); n != nil && n.kind != want {
			n.kind, n.items, n.byKey = want, nil, nil
		}
	}
}

// emptied reports whether a difference is only that a table or list has become
// empty where the other document has none or another.
func emptied(c, b *Document, d Difference) bool {
	n := c.top.follow(d.Path)
	return n != nil && len(n.items) == 0 && (n.kind == tableKind || n.kind == listKind) && strings.ContainsAny(d.A, "{[")
}

// TestCloneIsApart: no change of either reaches the other.
func TestCloneIsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawDocument(t)
		text := string(a.JSON())
		b := drawChanged(t, a)
		other := string(b.JSON())
		if string(a.JSON()) != text {
			t.Fatalf("%s became %s", text, a.JSON())
		}
		drawChanged(t, b)
		for range 3 {
			a.Remove(drawPath(t, a))
			_ = a.Set(drawPath(t, a), TextValue("changed"))
		}
		if string(b.JSON()) != other {
			t.Fatalf("%s became %s", other, b.JSON())
		}
	})
}
