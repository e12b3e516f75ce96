package order

import "testing"

func TestString(t *testing.T) {
	groups := map[string]string{"edge": "1 2"}
	for _, test := range []struct {
		kind       Kind
		text, want string
	}{
		{Shafts, "1,2, 3  4", "1 2 3 4"},
		{Shafts, "1–4 4-1", "1-4 4-1"},
		{Shafts, "(1-4)", "1-4"},
		{Shafts, "((1 2)) 3 (4)X2", "1 2 3, 4 x 2"},
		{Shafts, "(1 2 3) MIRRORED OPEN×3", "(1 2 3) mirrored open x 3"},
		{Shafts, "((1 2 3) x 2) mirrored doubled", "(1 2 3) x 2 mirrored doubled"},
		{Shafts, "(1 2) x 1 3 mirrored open, 4 mirrored doubled", "1 2 3, 4 x 2"},
		{Shafts, "edge edge x2 (edge 3) x fill", "edge, edge x 2, (edge, 3) x fill"},
		{Stripes, "12blue 4 white", "blue 12, white 4"},
		{Stripes, "blue 012 On Beam 2 at 36  epi", "blue 12 at 36  epi on beam 2"},
		{Stripes, "(a 1,b 2)mirrored(c 1)x fill", "(a 1, b 2) mirrored, c 1 x fill"},
		{Stripes, "edge", "edge"},
	} {
		ctx := Context{Kind: test.kind, Groups: groups}
		if test.kind == Stripes {
			ctx.Groups = map[string]string{"edge": "a 1"}
		}
		o := read(t, test.text, ctx)
		if got := o.String(); got != test.want {
			t.Errorf("%q: got %q, want %q", test.text, got, test.want)
		}
		checkRoundTrip(t, o, ctx)
	}
}
