package sheet

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// awkward is a plan with what pages have trouble with: long names, hundreds of
// stripes, many boxes, crammed stripes, a class in turn, a sectional beam.
const awkward = `sley = 1
name = "A name that is a good deal longer than any head of a page has room for, even at ten points and on the wider paper"
note = """A note of its own.
With lines, and a_word_that_has_no_end_and_no_place_to_break_it_so_that_it_must_be_broken_anywhere_at_all_or_else_run_off."""
[class]
in-turn = 30
[[pieces]]
name = "a runner for the long table in the hall, with a border at both ends and a fringe"
count = 30
length = "140 cm"
width = "38 cm"
both = "fringe 10 cm"
[yarns.a-long-name-for-a-natural-linen-singles-from-the-last-bale]
count = "8/1 Nm"
fibre = "linen"
put-up = "250 g tube"
[yarns.b]
count = "8/2 Ne"
fibre = "cotton"
handspun = true
[warp]
sett = "8 ends/cm"
stripes = "(a-long-name-for-a-natural-linen-singles-from-the-last-bale 3, b 4 at 16 ends/cm) x fill"
threading = "(1 2 3 4) x fill"
[weft]
yarn = "b"
picks = "7.5 picks/cm"
[winding]
section = "5 cm"
raddle = "1/cm"
[loom]
shafts = 8
width = "60 cm"
reeds = ["40/10 cm"]
heddles = 10
`

// drafted is a plan with a draft: ten treadles of which a pick presses two, on a
// countermarch, with a fault that its sheet tells.
const drafted = `sley = 1
name = "Drafted"
[[pieces]]
name = "towel"
count = 3
length = "28 in"
width = "18 in"
[[pieces]]
name = "runner"
length = "50 in"
[warp]
sett = "20 epi"
threading = "(1-8 mirrored open) x fill, 1"
[draft]
tie-up = ["1-4", "2-5", "3-6", "4-7", "5-8", "6 7 8 1", "7 8 1 2", "8 1 2 3", "1 3 5 7", "2 4 6 8"]
treadling = "9 10, (1-8 1+2) x fill, 1"
[loom]
shafts = 8
treadles = 10
shed = "countermarch"
reeds = ["10 dpi"]
`

// plans are what the tests print: the demo, a long warp, a published one, and the
// awkward one.
func plans(t testing.TB) map[string][]byte {
	t.Helper()
	out := map[string][]byte{"awkward": []byte(awkward), "drafted": []byte(drafted)}
	files, err := filepath.Glob("../../../examples/*.toml")
	if err != nil || len(files) < 7 {
		t.Fatal("the demo's plans are missing:", files, err)
	}
	files = append(files, "../../../testdata/bench/large.toml", "../../../testdata/vectors/plans/P1.toml")
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(name)] = text
	}
	return out
}

func reckoned(t testing.TB, name string, text []byte) *reckon.Result {
	t.Helper()
	r, list := app.ReckonPlan(app.Source{Name: name, Text: text}, "", true)
	if r == nil {
		t.Fatalf("%s: %v", name, list.All())
	}
	return r
}

// everything names every sheet that the plan has something for.
func everything(r *reckon.Result) []string {
	d := &desk{r: r, u: present.UnitsOf(r.Plan), press: press{size: scene.A4}}
	var out []string
	for _, k := range kinds {
		if k.has(d) {
			out = append(out, k.name)
		}
	}
	return out
}

func mustMake(t testing.TB, r *reckon.Result, opt Options) scene.Document {
	t.Helper()
	doc, err := Make(r, present.UnitsOf(r.Plan), opt)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestAPrinterFindsNothing(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		ours := slices.DeleteFunc(everything(r), func(s string) bool { return s == "tape" })
		for _, paper := range PaperNames() {
			doc := mustMake(t, r, Options{Sheets: ours, Paper: paper})
			for _, f := range check.Read(doc, check.Rules{MinPt: 10, Margin: margin}) {
				t.Errorf("%s on %s: %s", name, paper, f)
			}
			if !slices.Contains(everything(r), "tape") {
				continue
			}
			tape := mustMake(t, r, Options{Sheets: []string{"tape"}, Paper: paper})
			for _, f := range check.Read(tape, check.Rules{MinPt: 10, Margin: 8}) {
				t.Errorf("%s, tape on %s: %s", name, paper, f)
			}
		}
	}
}

// texts are what a page says, groups opened.
func texts(items []scene.Item) []scene.Text {
	var out []scene.Text
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			out = append(out, it)
		case scene.Group:
			out = append(out, texts(it.Items)...)
		}
	}
	return out
}

func says(p scene.Page) string {
	var out []string
	for _, t := range texts(p.Items) {
		out = append(out, t.Text)
	}
	return strings.Join(out, "\n")
}

func TestEveryPageIsDatedAndNumbered(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	doc := mustMake(t, r, Options{Sheets: everything(r)})
	for i, p := range doc.Pages {
		of := filled(wordPage, "{n}", count(i+1), "{of}", count(len(doc.Pages)))
		for _, want := range []string{"Galley towels", "2026-03-02", r.Defaults, of} {
			if !strings.Contains(says(p), want) {
				t.Errorf("page %d does not say %q:\n%s", i+1, want, says(p))
			}
		}
	}
}

// No heading stands alone at the foot of a page, and no page is empty.
func TestHeadingsStayWithTheirText(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		for _, paper := range PaperNames() {
			doc := mustMake(t, r, Options{Sheets: everything(r), Paper: paper})
			for i, p := range doc.Pages {
				last := lowest(p)
				if last.Font == heading.font && last.Size == heading.pt && !ruledBelow(p, last.Y) {
					t.Errorf("%s on %s, page %d ends with the heading %q", name, paper, i+1, last.Text)
				}
			}
		}
	}
}

// A caution never stands on a page alone.
func TestCautionsStandWithTheirWork(t *testing.T) {
	seen := 0
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		for _, paper := range PaperNames() {
			doc := mustMake(t, r, Options{Sheets: everything(r), Paper: paper})
			for i, p := range doc.Pages {
				lines := strings.Split(says(p), "\n")
				at := slices.Index(lines, wordCare)
				if at < 0 {
					continue
				}
				seen++
				others := slices.DeleteFunc(texts(p.Items), func(t scene.Text) bool {
					return t.X != margin || t.Y < margin+headHigh+further.lead+4 || t.Y > p.Height-margin-footHigh
				})
				if len(others) == 0 {
					t.Errorf("%s on %s, page %d is a caution alone", name, paper, i+1)
				}
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d cautions seen", seen)
	}
}

// lowest is the text that stands lowest above the foot of a page.
func lowest(p scene.Page) scene.Text {
	var out scene.Text
	for _, t := range texts(p.Items) {
		if t.Y < p.Height-margin-footHigh && t.Y > out.Y {
			out = t
		}
	}
	return out
}

// ruledBelow says whether there is a line to write on between y and the foot.
func ruledBelow(p scene.Page, y float64) bool {
	return slices.ContainsFunc(p.Items, func(it scene.Item) bool {
		l, ok := it.(scene.Line)
		return ok && l.Y1 > y+heading.lead && l.Y1 < p.Height-margin-footHigh
	})
}

// Each kind of sheet begins a page of its own, in the order asked for.
func TestSheetsBeginPages(t *testing.T) {
	r := reckoned(t, "galley-towels.toml", plans(t)["galley-towels.toml"])
	doc := mustMake(t, r, Options{Sheets: []string{"finishing", "glance"}})
	last := len(doc.Pages) - 1
	if last < 1 || !strings.Contains(says(doc.Pages[0]), titleFinishing) || !strings.Contains(says(doc.Pages[last]), titleGlance) || strings.Contains(says(doc.Pages[last]), titleFinishing) {
		t.Errorf("got %d pages, first\n%s", len(doc.Pages), says(doc.Pages[0]))
	}
}

// The groups of the sleying end where the reckoning says: its count of dents and of
// ends is the sum that the ticks come to.
func TestGroupsEndWithTheCloth(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		dents, ok := r.Node("dents.cloth")
		if !ok {
			continue
		}
		ends, _ := r.Node("ends")
		d := &desk{r: r}
		list := stretchesOf(d.stripes())
		last := list[len(list)-1]
		groups := last.groups(last.inGroup())
		got := groups[len(groups)-1]
		if count(got.dents) != dents.Is.Short(0) || count(got.ends) != ends.Is.Short(0) {
			t.Errorf("%s: ticks come to %d dents and %d ends, reckoned %s and %s", name, got.dents, got.ends, dents.Is.Short(0), ends.Is.Short(0))
		}
	}
}

var wrongOptions = []struct {
	opt  Options
	says string
}{
	{Options{Paper: "a3"}, "the papers are a4, letter"},
	{Options{Sheets: []string{"glance", "knitting"}}, "the sheets are glance, yarn, winding"},
	{Options{Sheets: []string{"glance", "glance"}}, "named twice"},
	{Options{Sheets: []string{"kits"}}, "it has no [class]"},
	{Options{Sheets: []string{"label"}}, "the fibres, shares and counts"},
	{Options{Sheets: []string{"threading"}}, "no threading"},
}

func TestWrongOptions(t *testing.T) {
	r := reckoned(t, "five-lines.toml", plans(t)["five-lines.toml"])
	for _, w := range wrongOptions {
		_, err := Make(r, present.Imperial, w.opt)
		if err == nil || !strings.Contains(err.Error(), w.says) {
			t.Errorf("%+v: got %v, want %q", w.opt, err, w.says)
		}
	}
}

func TestEverySheetIsDocumented(t *testing.T) {
	page, err := os.ReadFile("../../../docs/sheets.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range kinds {
		if !strings.Contains(string(page), "| `"+k.name+"` | "+k.about) {
			t.Errorf("docs/sheets.md does not list %s: %s", k.name, k.about)
		}
	}
}
