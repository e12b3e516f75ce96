package wif

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
	"sley/internal/trade/qty"
)

var sheds = []loom.Shed{loom.UnsaidShed, loom.Rising, loom.Sinking, loom.Counterbalance, loom.Countermarch, loom.Table}

// draw draws a draft that its own check finds no error in.
func draw(t *rapid.T) *draft.Draft {
	d := &draft.Draft{Shafts: rapid.IntRange(1, 64).Draw(t, "shafts"), Shed: rapid.SampledFrom(sheds).Draw(t, "shed")}
	d.Name, d.Note = words(t, "name"), strings.Join(rapid.SliceOfN(rapid.Custom(func(t *rapid.T) string { return words(t, "line") }), 0, 3).Draw(t, "note"), "\n")
	d.Origin = words(t, "origin")
	d.Threading = rapid.SliceOfN(rapid.IntRange(0, d.Shafts), 1, 40).Draw(t, "threading")
	picks := rapid.IntRange(1, 20).Draw(t, "picks")
	sets := func(most int) []draft.Set {
		return rapid.SliceOfN(rapid.Map(rapid.Uint64(), func(v uint64) draft.Set { return draft.Set(v) & draft.UpTo(most) }), picks, picks).Draw(t, "sets")
	}
	if rapid.Bool().Draw(t, "treadled") {
		treadles(t, d, sets)
	} else {
		d.Treadles = rapid.IntRange(0, 3).Draw(t, "idle treadles")
		d.Lifts = sets(d.Shafts)
	}
	d.Palette = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) draft.Colour {
		return draft.Colour{R: rapid.Byte().Draw(t, "r"), G: rapid.Byte().Draw(t, "g"), B: rapid.Byte().Draw(t, "b")}
	}), 0, 4).Draw(t, "palette")
	threads(t, &d.Warp, len(d.Palette), d.Ends())
	threads(t, &d.Weft, len(d.Palette), picks)
	return d
}

// words draws a text of one line that is neither blank nor has space at its ends.
func words(t *rapid.T, label string) string {
	return clean(rapid.StringMatching(`([A-Za-z;=\[\]#äß€“,] ?)*`).Draw(t, label))
}

func treadles(t *rapid.T, d *draft.Draft, sets func(int) []draft.Set) {
	d.Treadles = rapid.IntRange(1, 64).Draw(t, "treadles")
	for range d.Treadles {
		up := draft.Set(rapid.Uint64().Draw(t, "up")) & draft.UpTo(d.Shafts)
		d.Ties = append(d.Ties, draft.TieFor(d.Shed, up, d.Shafts))
	}
	if d.Shed == loom.Countermarch {
		d.Ties[0].Lowered &= draft.Set(rapid.Uint64().Draw(t, "lowered"))
	}
	d.Treadling = sets(d.Treadles)
	if d.Shed == loom.Countermarch { // two treadles may pull against one another
		for i := range d.Treadling {
			d.Treadling[i] = draft.Of(i%d.Treadles + 1)
		}
	}
	if rapid.Bool().Draw(t, "both plans") {
		d.Lifts = d.LiftPlan()
	}
}

// threads draws colours and sizes; a last size of 0 says nothing, so there is none.
func threads(t *rapid.T, of *draft.Threads, colours, n int) {
	if colours > 0 {
		of.Colour = rapid.IntRange(0, colours-1).Draw(t, "colour")
		of.Colours = rapid.SliceOfN(rapid.IntRange(0, colours-1), 0, n).Draw(t, "colours")
	}
	size := rapid.Map(rapid.Int64Range(0, int64(mostSize)), func(nm int64) qty.Length { return qty.Length(nm) })
	of.Thick, of.Apart = size.Draw(t, "thick"), size.Draw(t, "apart")
	for _, list := range []*[]qty.Length{&of.Thicks, &of.Aparts} {
		*list = rapid.SliceOfN(size, 0, n).Draw(t, "sizes")
		for k := len(*list); k > 0 && (*list)[k-1] == 0; k-- {
			*list = (*list)[:k-1]
		}
	}
}

// reread decodes what Encode wrote; nothing in it may be odd but what the draft's
// own check finds.
func reread(t interface{ Fatalf(string, ...any) }, text []byte) *File {
	f, list := Decode("draft.wif", text)
	for _, p := range list.All() {
		if !strings.HasPrefix(p.Code, "draft.") && p.Code != "wif.lift-plan-sinking" {
			t.Fatalf("%v: %s at %s, read %q, %v in\n%s", p.Place, p.Code, p.Path, p.Read, p.Args, text)
		}
	}
	return f
}

// A draft that is written and read is the same draft, and is written the same again.
func TestDraftsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		if list := d.Check(); list.Failed() {
			t.Fatalf("drew a draft with %v", list.All())
		}
		text := Encode(FromDraft(d))
		f := reread(t, text)
		if !f.Draft.Equal(d) {
			t.Fatalf("got\n%+v\nwant\n%+v\nin\n%s", f.Draft, d, text)
		}
		if again := Encode(f); !bytes.Equal(again, text) {
			t.Fatalf("written again:\n%s\nwas\n%s", again, text)
		}
	})
}

// A draft that takes the place of another in its file comes back as well, whatever
// the file was, and the sections that are not its own stay.
func TestEditedDraftsComeBack(t *testing.T) {
	whole := read(t, "tidy/whole.wif")
	rapid.Check(t, func(t *rapid.T) {
		text := whole
		if rapid.Bool().Draw(t, "drawn") {
			text = Encode(FromDraft(draw(t)))
		}
		f := reread(t, text)
		kept := fmt.Sprint(f.Kept())
		d := draw(t)
		f.Draft, f.Text.Author = d, words(t, "author")
		edited := Encode(f)
		back := reread(t, edited)
		if !same(back, f) {
			t.Fatalf("got\n%+v\nwant\n%+v\nin\n%s", back.Draft, f.Draft, edited)
		}
		if got := fmt.Sprint(back.Kept()); got != kept {
			t.Fatalf("kept %s, want %s", got, kept)
		}
	})
}

// same holds two files against one another. Sizes that the text says in its own unit
// are equal to the nanometre, since they are written with all decimals that takes.
func same(a, b *File) bool { return a.Draft.Equal(b.Draft) && a.Text == b.Text }

// One edit writes one line anew and leaves every other as it was read.
func TestOneEditOneLine(t *testing.T) {
	text := read(t, "tidy/whole.wif")
	for what, c := range map[string]struct {
		edit func(*File)
		want string
	}{
		"an end":     {func(f *File) { f.Draft.Threading[1] = 7 }, "2=7"},
		"a tie":      {func(f *File) { f.Draft.Ties[2].Tied = draft.Of(1, 5) }, "3=1,5"},
		"a pick":     {func(f *File) { f.Draft.Treadling[0] = draft.Of(3) }, "1=3"},
		"a colour":   {func(f *File) { f.Draft.Palette[1] = draft.Colour{R: 255} }, "2=999,0,0"},
		"the title":  {func(f *File) { f.Draft.Name = "Galley towel, blue" }, "Title=Galley towel, blue"},
		"the author": {func(f *File) { f.Text.Author = "the studio" }, "Author=the studio"},
		"a thread":   {func(f *File) { f.Draft.Warp.Colours[0] = 1 }, "1=2"},
		"a size":     {func(f *File) { f.Draft.Weft.Thicks[1] = qty.Millimetre / 4 }, "2=0.025"},
		"the shed":   {func(f *File) { f.Draft.Shed = loom.Sinking }, "Rising Shed=false"},
	} {
		f := sound(t, text)
		c.edit(f)
		if got := changed(text, Encode(f)); got != c.want {
			t.Errorf("%s: %q, want %q", what, got, c.want)
		}
	}
}

// changed gives the lines of the new text that are not those of the old.
func changed(old, text []byte) string {
	var out []string
	a, b := strings.Split(string(old), "\n"), strings.Split(string(text), "\n")
	if len(a) != len(b) {
		return fmt.Sprintf("%d lines, was %d", len(b), len(a))
	}
	for i, line := range b {
		if line != a[i] {
			out = append(out, line)
		}
	}
	return strings.Join(out, " / ")
}

// A draft whose treadles are tied to nothing, or that has none to press, is odd and
// not wrong: it comes back weaving the same.
func TestUntiedDraftsComeBack(t *testing.T) {
	for _, shed := range sheds {
		for _, d := range []*draft.Draft{
			{Shafts: 2, Treadles: 2, Shed: shed, Threading: []int{1, 2}, Treadling: []draft.Set{draft.Of(1), draft.Of(2)}},
			{Shafts: 2, Treadles: 3, Shed: shed, Threading: []int{1, 2}, Treadling: []draft.Set{draft.Of(1)}, Ties: []draft.Tie{{Tied: draft.Of(1)}}},
			{Shafts: 2, Shed: shed, Threading: []int{1, 2}, Treadling: []draft.Set{0, 0}},
		} {
			back := reread(t, Encode(FromDraft(d))).Draft
			if !back.Drawdown().Equal(d.Drawdown()) || back.Shed != shed || back.Treadles != d.Treadles {
				t.Errorf("%s: %+v comes back as %+v", shed, d, back)
			}
		}
	}
}
