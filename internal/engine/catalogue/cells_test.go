package catalogue

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// made gives the draft of an entry; values are name=value.
func made(t *testing.T, id string, values ...string) *draft.Draft {
	t.Helper()
	e, list := Find(id)
	if e == nil {
		t.Fatal(id, list.All())
	}
	d, list := e.Make(valuesOf(values))
	if d == nil {
		t.Fatalf("%s %v: %v", id, values, list.All())
	}
	return d
}

func valuesOf(list []string) Values {
	out := Values{}
	for _, pair := range list {
		name, value, _ := strings.Cut(pair, "=")
		out[name] = value
	}
	return out
}

// figure is a weave of testdata/figures.txt.
type figure struct{ source, id, values, rows string }

// figures reads the file: a head "# source", then "entry name=value ...", then the
// rows of the weave, an empty line after each.
func figures(t *testing.T) []figure {
	t.Helper()
	text, err := os.ReadFile("testdata/figures.txt")
	if err != nil {
		t.Fatal(err)
	}
	var out []figure
	for _, part := range strings.Split(strings.TrimSpace(string(text)), "\n\n") {
		lines := strings.SplitN(part, "\n", 3)
		id, values, _ := strings.Cut(lines[1], " ")
		out = append(out, figure{strings.TrimPrefix(lines[0], "# "), id, values, lines[2]})
	}
	return out
}

// TestFigures holds the rules against figures, cell by cell, from the first pick and
// the first end on.
func TestFigures(t *testing.T) {
	families := map[Family]bool{}
	for _, f := range figures(t) {
		t.Run(f.id+" "+f.values, func(t *testing.T) {
			want := weave.Must(f.rows)
			got := made(t, f.id, fieldsOf(f.values)...).Drawdown().Tile(want.Picks(), want.Ends())
			if !got.Equal(want) {
				t.Errorf("%s\n%s\nwant\n%s", f.source, got, want)
			}
		})
		e, _ := Find(f.id)
		families[e.Family] = true
	}
	for _, family := range Families() {
		if !families[family] {
			t.Errorf("no entry of the family %s is held against a figure", family)
		}
	}
}

// fieldsOf splits "a=1; b=2 x 3".
func fieldsOf(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "; ")
}

// TestThreadings holds threadings that books give by their numbers.
func TestThreadings(t *testing.T) {
	for _, c := range []struct{ source, id, values, want string }{
		{"Brooks, Cotton Manufacturing, fig. 36; Taylor 1909", "plain", "shafts=4; draw=skip", "1 3 2 4"},
		{"Wolfensberger 1921, fig. 3", "plain", "shafts=8; draw=odd-then-even", "1 3 5 7 2 4 6 8"},
		{"Handwoven, rosepath border: 17 ends, the last of which begins again", "rosepath", "over=2/2/2/2", "1 2 3 4 5 6 7 8 1 8 7 6 5 4 3 2"},
		{"the Swedish 4-1-4-1-4-3, shaft s for 5 - s, with the pattern on 4", "bronson-lace", "units=B", "1 4 1 4 1 2"},
		{"the Swedish 4-2-4-2-4-3, shaft s for 5 - s", "bronson-lace", "units=A B", "1 3 1 3 1 2 1 4 1 4 1 2"},
	} {
		d := made(t, c.id, fieldsOf(c.values)...)
		if got := strings.Trim(fmt.Sprint(d.Threading), "[]"); got != c.want {
			t.Errorf("%s: %s %s threads %s, want %s", c.source, c.id, c.values, got, c.want)
		}
	}
	// Wolfensberger 1921, p. 11: a point draw on 12 shafts repeats on 22 ends.
	if d := made(t, "point-twill", "over=6/6"); d.Ends() != 22 || d.Shafts != 12 {
		t.Errorf("a point on %d shafts repeats on %d ends", d.Shafts, d.Ends())
	}
}

// TestBrooksSatin: lifts 1, 6, 11, 4, 9, 2, 7, 12, 5, 10, 3, 8 (Brooks, Cotton
// Manufacturing, "Cloths woven by tappets").
func TestBrooksSatin(t *testing.T) {
	var got []string
	for _, up := range made(t, "satin", "ends=12", "move=5").LiftPlan() {
		got = append(got, up.String())
	}
	if s := strings.Join(got, " "); s != "1 6 11 4 9 2 7 12 5 10 3 8" {
		t.Error(s)
	}
}

// shown gives the colours of a draft's face, # where the palette's second colour is, o where its third.
func shown(d *draft.Draft) string {
	var out strings.Builder
	for i := range d.Picks() {
		for j := range d.Ends() {
			colour := d.Weft.ColourOf(i)
			if d.UpAt(i, j) {
				colour = d.Warp.ColourOf(j)
			}
			out.WriteByte(".#o"[colour])
		}
		out.WriteByte('\n')
	}
	return out.String()
}

// TestHoundstooth: the figure of a 2/2 twill in fours each way, 32 of 64 crossings
// dark; worked out by hand from the rule, which is usual in the trade.
func TestHoundstooth(t *testing.T) {
	want := "####..##\n#####..#\n######..\n####.##.\n##......\n.##.....\n..##....\n#..#....\n"
	if got := shown(made(t, "houndstooth")); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// TestLines: plain weave in two colours in turn has lines across where dark picks come
// with dark ends up, and lines along where they come with light ones.
func TestLines(t *testing.T) {
	if got := shown(made(t, "hairline", "lines=along")); got != "#.\n#.\n" {
		t.Errorf("along:\n%s", got)
	}
	if got := shown(made(t, "hairline", "lines=across")); got != "##\n..\n" {
		t.Errorf("across:\n%s", got)
	}
	cabin := shown(made(t, "log-cabin", "ends=4"))
	if want := strings.Repeat("####.#.#\n.....#.#\n", 2) + strings.Repeat("#.#.....\n#.#.####\n", 2); cabin != want {
		t.Errorf("log cabin:\n%s\nwant\n%s", cabin, want)
	}
}
