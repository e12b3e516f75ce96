package planfile

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"
)

// TestInsertAndMove: items come where they are sent, and what is said of pieces
// by number means the same ones.
func TestInsertAndMove(t *testing.T) {
	const plan = `{"pieces":[{"name":"a"},{"name":"b"},{"name":"c"}],"built":{"woven":[{"piece":0},{"piece":2},{"piece":9}]},"find":{"what":"pieces[1].length"}}`
	for _, c := range []struct {
		what string
		do   func(*Document) error
		want string
	}{
		{"insert", func(d *Document) error { return d.Insert("pieces[1]", ParseValue(`{ name = "x" }`)) }, "axbc 0 3 9 pieces[2].length"},
		{"at the end", func(d *Document) error { return d.Insert("pieces[3]", ParseValue(`{ name = "x" }`)) }, "abcx 0 2 9 pieces[1].length"},
		{"forwards", func(d *Document) error { return d.Move("pieces[0]", 2) }, "bca 2 1 9 pieces[0].length"},
		{"backwards", func(d *Document) error { return d.Move("pieces[2]", 0) }, "cab 1 0 9 pieces[2].length"},
		{"nowhere", func(d *Document) error { return d.Move("pieces[1]", 1) }, "abc 0 2 9 pieces[1].length"},
		{"remove", func(d *Document) error { d.Remove("pieces[0]"); return nil }, "bc 2 1 9 pieces[0].length"},
		{"remove last", func(d *Document) error { d.Remove("pieces[2]"); return nil }, "ab 0 2 9 pieces[1].length"},
		{"other list", func(d *Document) error { return d.Move("built.woven[1]", 0) }, "abc 2 0 9 pieces[1].length"},
	} {
		d := readJSONOf(t, plan)
		if err := c.do(d); err != nil {
			t.Fatal(err)
		}
		if got := numbersOf(t, d); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

// numbersOf gives the names of pieces and what is said of them by number.
func numbersOf(t *testing.T, d *Document) string {
	t.Helper()
	var plan struct {
		Pieces []struct{ Name string }
		Built  struct{ Woven []struct{ Piece json.Number } }
		Find   struct{ What string }
	}
	if err := json.Unmarshal(d.JSON(), &plan); err != nil {
		t.Fatal(err)
	}
	out := ""
	for _, p := range plan.Pieces {
		out += p.Name
	}
	for _, w := range plan.Built.Woven {
		out += " " + w.Piece.String()
	}
	return out + " " + plan.Find.What
}

// TestMoveAndBack: a move is undone by the move back.
func TestMoveAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "pieces")
		d := NewDocument()
		for i := range n {
			if err := d.Set(itemPath("pieces", i)+".count", ParseValue(rapid.SampledFrom([]string{"1", "2", "3"}).Draw(t, "count"))); err != nil {
				t.Fatal(err)
			}
		}
		_ = d.Set("find.what", TextValue(itemPath("pieces", rapid.IntRange(0, n).Draw(t, "sought"))+".length"))
		before := string(d.JSON())
		from, to := rapid.IntRange(0, n-1).Draw(t, "from"), rapid.IntRange(0, n-1).Draw(t, "to")
		moved, _ := d.Get(itemPath("pieces", from))
		if err := d.Move(itemPath("pieces", from), to); err != nil {
			t.Fatal(err)
		}
		if at, _ := d.Get(itemPath("pieces", to)); string(at.JSON()) != string(moved.JSON()) {
			t.Fatalf("%s came to %s", moved.JSON(), at.JSON())
		}
		if err := d.Move(itemPath("pieces", to), from); err != nil || string(d.JSON()) != before {
			t.Fatalf("%v: %s, was %s", err, d.JSON(), before)
		}
	})
}
