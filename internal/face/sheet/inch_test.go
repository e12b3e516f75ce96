package sheet

import (
	"slices"
	"strings"
	"testing"

	"sley/internal/engine/dress"
	"sley/internal/engine/tieup"
	"sley/internal/face/present"
)

// sheetOf is all that the pages of a sheet say.
func sheetOf(t *testing.T, text, name string) string {
	t.Helper()
	all := ""
	for _, page := range mustMake(t, reckoned(t, name, []byte(text)), Options{Sheets: []string{name}}).Pages {
		all += says(page) + "\n"
	}
	return all
}

func wants(t *testing.T, page string, all ...string) {
	t.Helper()
	for _, want := range all {
		if !strings.Contains(page, want) {
			t.Errorf("it does not say %q:\n%s", want, page)
		}
	}
}

// of is the drafted plan with other words in it.
func of(old, now string) string { return strings.Replace(drafted, old, now, 1) }

// The lifts are opened by the treadles that open them, three for eight shafts, and what is
// read ends with the last end.
func TestFirstInchOfEightShafts(t *testing.T) {
	page := sheetOf(t, drafted, "first-inch")
	wants(t, page, "Lift 1: shafts 1 2 3 4 up, treadle 1", "Lift 2: shafts 3 4 5 6 up, treadle 3", "Lift 3: shafts 1 3 5 7 up, treadle 9",
		"(1 up, 1 down) 203 times", "407 ends", "Weave all 9 picks", "Press in turn 1 2 3 4 5 6 7 8 1+2")
}

// Without a treadling there are lifts by hand, and nothing of a repeat.
func TestFirstInchOfAThreading(t *testing.T) {
	page := sheetOf(t, strings.Replace(awkward, "[winding]", "[winding]\ntie = 20", 1), "first-inch")
	wants(t, page, "Lift 1: shafts 1 2 up, raised by hand", "Lift 2: shafts 1 3 up, raised by hand", "(2 up, 2 down) 119 times")
	if strings.Contains(page, wordOnce) {
		t.Error("a repeat of no treadling is woven")
	}
	r := reckoned(t, "plain", []byte(strings.Replace(awkward, `threading = "(1 2 3 4) x fill"`, "", 1)))
	if _, err := Make(r, present.UnitsOf(r.Plan), Options{Sheets: []string{"first-inch"}}); err == nil {
		t.Error("a plan without a threading has a first inch")
	}
}

// What is read, run by run with its boxes, is what stands across the warp.
func TestReadingsComeToTheEnds(t *testing.T) {
	for name, text := range plans(t) {
		r := reckoned(t, name, text)
		d := &desk{r: r}
		whole, lifts := d.inch()
		for _, lift := range lifts {
			across := tieup.Across(whole.Threading, lift.Up)
			var read []int
			for _, run := range dress.RunsOf(across, longestRead) {
				read = append(read, slices.Repeat(run.Cycle, run.Times)...)
			}
			ends := 0
			for _, n := range across {
				ends += max(n, -n)
			}
			if n, _ := r.Node("ends"); !slices.Equal(read, across) || n.Is.Count(0) != ends {
				t.Errorf("%s: %s reads %v over %d ends, reckoned %s", name, lift.Up, read, ends, n.Is)
			}
		}
	}
}

// Which foot has which treadles, how they lie best, and that two at once are for both.
func TestFeetOnTheTieup(t *testing.T) {
	page := sheetOf(t, drafted, "tie-up")
	wants(t, page, "right foot, treadles\n2 4 6 8 10", "from the left, 9 1 3 5 7 8 6 4 2 10", "keeps both feet busy", "not: 1 5 are drawn both ways")
	ring := sheetOf(t, of("9 10, (1-8 1+2) x fill, 1", "1 2 3"), "tie-up")
	wants(t, ring, "the treadles 1 2 3 follow one another in a ring of 3")
	twice := sheetOf(t, of("9 10, (1-8 1+2) x fill, 1", "1 2 2 3"), "tie-up")
	wants(t, twice, "treadle 2 is pressed twice running", wordAllEven)
	many := sheetOf(t, of("9 10, (1-8 1+2) x fill, 1", "1 3+4+5"), "tie-up")
	wants(t, many, "one pick presses the treadles 3 4 5")
	well := sheetOf(t, of("9 10, (1-8 1+2) x fill, 1", "1 2"), "tie-up")
	wants(t, well, "The treadles lie well as they are numbered")
}

// On a counterbalance loom a shed that does not balance is told beside its treadle.
func TestPoorShedsOnTheTieup(t *testing.T) {
	text := strings.Replace(of(`"1 3 5 7"`, `"1 3 5"`), "countermarch", "counterbalance", 1)
	wants(t, sheetOf(t, text, "tie-up"), "unevenly, 3 against 5", "9\n1 3 5\n2 4 6 7 8\nunevenly", "8\n1 2 3 8\n4 5 6 7\nevenly")
}

// The blanket's beam: its girth, its turns, and a line for those that were counted. The
// raddle is drawn with as many pins as its spaces have sides, and its centre.
func TestBeamAndRaddle(t *testing.T) {
	text := strings.Replace(string(plans(t)["berth-blanket.toml"]), "[winding]", "[winding]\nbeam-girth = \"75 cm\"\nraddle = \"1/cm\"", 1)
	page := sheetOf(t, text, "raddle")
	wants(t, page, "girth of the bare beam\n75 cm", "turns of the beam\n6", wordFirstTurns, "53 on the left", "54 on the right", wordCentre, "5 to a space", "left out")
	alone := sheetOf(t, strings.Replace(text, "section = \"5 cm\"", "", 1), "raddle")
	if strings.Contains(alone, wordFirstTurns) || !strings.Contains(alone, "turns of the beam") {
		t.Errorf("a beam without sections:\n%s", alone)
	}
}

// The first and the last dent are those of the floating selvedges, as many dents on each
// side of the reed's middle as is said: 566 dents, 243 of them used, 121 left of the 283rd.
func TestDentsOfTheReed(t *testing.T) {
	page := sheetOf(t, string(plans(t)["galley-towels.toml"]), "sleying")
	wants(t, page, "dents left of the reed's centre\n121", "first dent, from the left\n163", "last dent, from the left\n405",
		"floating selvedge, left, dent 163 of the reed", "floating selvedge, right, dent 405 of the reed")
}
