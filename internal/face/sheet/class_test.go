package sheet

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/face/present"
)

// wrote is what the pages of one sheet say between head and foot, text by text.
func wrote(t testing.TB, name string, text []byte, sheet string) []scene.Text {
	t.Helper()
	r := reckoned(t, name, text)
	var out []scene.Text
	for _, p := range mustMake(t, r, Options{Sheets: []string{sheet}}).Pages {
		for _, at := range texts(p.Items) {
			if at.Y > margin+headHigh && at.Y < p.Height-margin-footHigh {
				out = append(out, at)
			}
		}
	}
	return out
}

// lineNumber is the number of a line at the left edge of a page.
var lineNumber = regexp.MustCompile(`^(\d+)[A-Z]*(?:\.\d+)?$`)

// numbered is the numbers of the lines in the order printed, each once.
func numbered(all []scene.Text) []string {
	var out []string
	for _, t := range all {
		if m := lineNumber.FindStringSubmatch(t.Text); m != nil && t.Size == small.pt && leftOf(t) && !slices.Contains(out, m[1]) {
			out = append(out, m[1])
		}
	}
	return out
}

// leftOf says whether a text ends in the column of numbers.
func leftOf(t scene.Text) bool {
	x, _ := letter.Origin(t)
	return x < margin+0.1
}

// Line 17 of the one is line 17 of the other: the same numbers, and on each line
// the words of the same figures.
func TestHandoutAndWorksheetAreNumberedAlike(t *testing.T) {
	for name, text := range plans(t) {
		handout, worksheet := numbered(wrote(t, name, text, "class")), numbered(wrote(t, name, text, "worksheet"))
		if len(handout) < 20 || !slices.Equal(slices.Sorted(slices.Values(handout)), slices.Sorted(slices.Values(worksheet))) {
			t.Errorf("%s: the handout has the lines %v, the worksheet %v", name, handout, worksheet)
		}
		for i, n := range worksheet {
			if n != count(i+1) {
				t.Errorf("%s: line %s of the worksheet is the %dth", name, n, i+1)
				break
			}
		}
	}
}

// The headings of the worksheet are those of the handout, in its order.
func TestHandoutAndWorksheetHaveTheSameHeadings(t *testing.T) {
	for name, text := range plans(t) {
		var lists [2][]string
		for i, sheet := range []string{"class", "worksheet"} {
			for _, at := range wrote(t, name, text, sheet) {
				title, _, _ := strings.Cut(at.Text, ": ")
				if at.Font == heading.font && at.Size == heading.pt && !strings.Contains(at.Text, wordContinued) && title != wordSources && !slices.Contains(lists[i], title) {
					lists[i] = append(lists[i], title)
				}
			}
		}
		if !slices.Equal(lists[0], lists[1]) {
			t.Errorf("%s: the handout has %q, the worksheet %q", name, lists[0], lists[1])
		}
	}
}

// Every figure that is worked out has a line beside it to do it by hand; no other
// has.
func TestWhatIsWorkedOutHasALineBesideIt(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		derived := 0
		for _, n := range r.Nodes {
			if n.Formula != nil {
				derived++
			}
		}
		hand := margin + scene.A4.Width - 2*margin - byHandWide
		lines := 0
		for _, p := range mustMake(t, r, Options{Sheets: []string{"class"}}).Pages {
			for _, it := range p.Items {
				if l, ok := it.(scene.Line); ok && l.X1 > hand-0.1 && l.X1 < hand+0.1 {
					lines++
				}
			}
		}
		if lines != derived {
			t.Errorf("%s: %d lines for %d figures that are worked out", name, lines, derived)
		}
	}
}

// No working is cut short, however many terms it has.
func TestEveryWorkingIsWhole(t *testing.T) {
	for name, text := range plans(t) {
		for _, sheet := range []string{"class", "worksheet"} {
			for _, at := range wrote(t, name, text, sheet) {
				if strings.HasSuffix(at.Text, letter.Ellipsis) && at.Font != heading.font {
					t.Errorf("%s, %s: %q is cut", name, sheet, at.Text)
				}
			}
		}
	}
}

// withoutOwn takes from a text of the worksheet what is no value: the references,
// the usual ranges, the numbers that formulas have of themselves.
var withoutOwn = regexp.MustCompile(`\[\d+[A-Z]*\x{a0}[^\]]*|usually .*|^\d+$|^line \d+[A-Z]*(\.\d+)?$|\b(1|2) [−+)]|[−+÷×(] ?\(?(0|1|2)\b|2/2|÷ 60 min|16 oz ÷ 1 yd|÷ 1 in|\b2 ×|\b0 yd|/10 cm|÷ 100`)

// No value of the plan stands on the empty worksheet, neither one that is worked
// out nor one that is given; nor do the names of its pieces, yarns and reeds.
func TestWorksheetGivesNothingAway(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		for _, at := range wrote(t, name, text, "worksheet") {
			left := withoutOwn.ReplaceAllString(at.Text, "")
			if n := number.FindString(left); n != "" {
				t.Errorf("%s: the worksheet says %s in %q", name, n, at.Text)
			}
			for i := range r.Plan.Yarns {
				if own := r.Plan.Yarns[i].Name; len(own) > 1 && slices.Contains(strings.Fields(at.Text), own) {
					t.Errorf("%s: the worksheet names the yarn %s in %q", name, own, at.Text)
				}
			}
		}
	}
}

// The formulas of the worksheet are in words, by name and number.
func TestWorksheetSaysHow(t *testing.T) {
	all := ""
	for _, at := range wrote(t, "galley-towels.toml", plans(t)["galley-towels.toml"], "worksheet") {
		all += strings.ReplaceAll(at.Text, "\u00a0", " ") + "\n"
	}
	for _, want := range []string{"up([74 warp needed] to [75 winding step])", "ends outside the repeat", "middle = [58 weave on the loom] ÷ 2"} {
		if !strings.Contains(all, want) {
			t.Errorf("the worksheet does not say %q", want)
		}
	}
}

// classes are plans of classes of every size, with yarns of many sorts.
func classes(t testing.TB) map[string]string {
	text := string(plans(t)["bookmark-class.toml"])
	long := "a-long-name-for-a-natural-linen-singles-from-the-last-bale"
	cut := func(text, from, to string) string {
		before, rest, _ := strings.Cut(text, from)
		_, after, _ := strings.Cut(rest, to)
		return before + to + after
	}
	none := strings.NewReplacer(`yarn = "sea"`, "").Replace(cut(cut(text, "[yarns.sea]", "[warp]"), "stripes =", "threading ="))
	return map[string]string{
		"one":     strings.Replace(text, "looms = 8", "looms = 1", 1),
		"eight":   text,
		"many":    strings.Replace(text, "looms = 8", "looms = 77", 1),
		"crowd":   strings.Replace(text, "looms = 8", "looms = 300", 1),
		"no name": none,
		"five": strings.NewReplacer(
			"(sand 2, sea 2) x fill, sand 2, sea 8", "(sand 2, sea 2) x fill, "+long+" 2, rust 2, moss 4, sea 4",
			"[warp]", "[yarns.rust]\ncount = \"10/2 Ne\"\n[yarns.moss]\ncount = \"8/2 Ne\"\n[yarns."+long+"]\ncount = \"10/2 Ne\"\n[warp]",
		).Replace(text),
		"in turn": strings.NewReplacer("looms = 8", "in-turn = 40",
			"[yarns.sea]", "[[pieces]]\nname = \"a mat with a name of some length\"\ncount = 3\nlength = \"10 in\"\nwidth = \"1 3/4 in\"\n[yarns.sea]").Replace(text),
	}
}

func TestKitsOfClassesOfEverySize(t *testing.T) {
	for name, text := range classes(t) {
		r := reckoned(t, name, []byte(text))
		for _, paper := range PaperNames() {
			sheets := []string{"kits", "class", "worksheet"}
			if r.Plan.Class.Looms > 8 {
				sheets = sheets[:1] // the others are those of eight
			}
			doc := mustMake(t, r, Options{Sheets: sheets, Paper: paper})
			for _, f := range check.Read(doc, check.Rules{MinPt: 10, Margin: margin}) {
				t.Errorf("%s on %s: %s", name, paper, f)
			}
		}
		all := wrote(t, name, []byte(text), "kits")
		kits := 0
		for _, at := range all {
			if strings.HasPrefix(at.Text, "Kit ") {
				kits++
			}
		}
		if want := min(r.Plan.Class.Looms, mostKits); kits != want {
			t.Errorf("%s: %d kits of %d", name, kits, want)
		}
	}
}

// Each kit says how much of each yarn by length and by weight, in a class of one
// too.
func TestAKitSaysLengthAndWeight(t *testing.T) {
	for name, nodes := range map[string][2]string{"one": {"need", "weight"}, "eight": {"each-loom", "each-loom-weight"}} {
		text := []byte(classes(t)[name])
		r := reckoned(t, name, text)
		long, _ := r.Node("yarns[sea]." + nodes[0])
		weight, _ := r.Node("yarns[sea]." + nodes[1])
		u := present.UnitsOf(r.Plan)
		want := u.Bench(long) + ", " + u.Bench(weight)
		found := slices.ContainsFunc(wrote(t, name, text, "kits"), func(at scene.Text) bool { return at.Text == want })
		if !found {
			t.Errorf("%s: no kit says %q", name, want)
		}
	}
}

// In turn every weaver has a row for each kind of piece, with its picks and what the
// tape reads where it begins and ends.
func TestTurnsSayPicksAndTape(t *testing.T) {
	text := []byte(classes(t)["in turn"])
	r := reckoned(t, "in turn", text)
	u := present.UnitsOf(r.Plan)
	all := wrote(t, "in turn", text, "kits")
	for _, id := range []string{"pieces[0].picks", "pieces[0].on-loom", "pieces[1].picks", "pieces[1].on-loom"} {
		n, _ := r.Node(id)
		want, found := firm.Replace(letter.FractionText(u.Bench(n))), 0
		for _, at := range all {
			if at.Text == want {
				found++
			}
		}
		if found != r.Plan.Class.InTurn {
			t.Errorf("%s, %q, stands %d times for %d weavers", id, want, found, r.Plan.Class.InTurn)
		}
	}
}

// Others read the sheets of a class line by line: number, words and figure of a
// node stand beside each other.
func TestOthersReadTheHandout(t *testing.T) {
	text := plans(t)["bookmark-class.toml"]
	file, figure := printed(t, "bookmark-class.toml", text)
	read := judge(t, "pdftotext", "-layout", file, "-")
	r := reckoned(t, "bookmark-class.toml", text)
	for _, s := range present.CourseOf(r, present.UnitsOf(r.Plan)).Stages {
		for _, step := range s.Steps {
			if !lineWith(read, step.Number, step.Label, figure(step.ID)) {
				t.Errorf("no line has %q, %q and %q", step.Number, step.Label, figure(step.ID))
			}
		}
	}
}

func lineWith(read, number, label, figure string) bool {
	for line := range strings.Lines(read) {
		words := strings.Join(strings.Fields(line), "")
		if strings.HasPrefix(words, bareText(number+label)) && strings.Contains(words, bareText(figure)) {
			return true
		}
	}
	return false
}

// bareText is a text without its spaces, of which a reader keeps not all.
func bareText(text string) string { return strings.Join(strings.Fields(text), "") }
