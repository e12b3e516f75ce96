package present_test

import (
	"regexp"
	"strings"
	"testing"

	"sley/internal/engine/structure"
	"sley/internal/face/present"
	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

// braces are names in braces that nothing was put in for.
var braces = regexp.MustCompile(`\{[^}]*\}`)

// full is a finding that has every figure.
func full(topic structure.Topic, kind structure.Kind) structure.Finding {
	return structure.Finding{
		Topic: topic, Ends: 4, Picks: 6, Count: 2, Of: 3, Least: 1, Most: 5, Front: 3, Back: 2, Threads: []int{0, 1, 4},
		Places: []structure.Place{{Thread: 1, From: 2, Long: 3}, {Thread: 0, From: 0, Long: 2}},
		Name: structure.Name{
			Kind: kind, Face: structure.WarpFaced, Hand: structure.RightHand, Over: []int{3, 1},
			EndGroups: []int{2}, PickGroups: []int{3}, Size: 5, Move: 2,
		},
		Fix: structure.Fix{Swap: []int{1}, Ends: [2]int{1, -1}, Floating: [2]bool{true, false}},
	}
}

// TestEveryTopicHasWords, and every name in braces something to stand for it.
func TestEveryTopicHasWords(t *testing.T) {
	for _, topic := range structure.Topics() {
		for _, kind := range structure.Kinds() {
			told := present.Tell(full(topic, kind))
			for _, text := range []string{told.Title, told.Figures, told.Explanation} {
				if text == "" || braces.MatchString(text) || text != strings.TrimSpace(text) {
					t.Errorf("%s, kind %d: %+v", topic, kind, told)
				}
			}
			if !strings.HasSuffix(told.Explanation, ".") || strings.Contains(told.Explanation, "!") {
				t.Errorf("%s is no plain sentence: %q", topic, told.Explanation)
			}
		}
	}
}

// TestUnknownTopicIsEmpty, so that the test above can fail.
func TestUnknownTopicIsEmpty(t *testing.T) {
	if told := present.Tell(full("no such topic", structure.Plain)); told != (present.Told{}) {
		t.Errorf("%+v", told)
	}
}

func TestWeaveNames(t *testing.T) {
	for _, c := range []struct{ weave, want string }{
		{"#./.#", "plain weave"},
		{"##../##../..##/..##", "2/2 basket"},
		{"###.../###.../...###/...###", "irregular basket, ends 3/3 and picks 2/2"},
		{"##../..##", "2/2 weft rib"},
		{"###./...#", "3/1 weft rib"},
		{"#./#./.#/.#", "2/2 warp rib"},
		{"##../.##./..##/#..#", "2/2 twill, right hand (Z)"},
		{"...#/..#./.#../#...", "1/3 twill, left hand (S), weft-faced"},
		{"##../.##./..##/#..#/..##/.##.", "2/2 point twill, turned in the treadling"},
		{"##../.#.#/..##/#.#.", "broken 2/2 twill, broken in the threading"},
		{"#..../..#../....#/.#.../...#.", "sateen on 5 ends, move 2 to the right"},
		{".####/###.#/#.###/####./##.##", "satin on 5 ends, move 2 to the left"},
		{"#.../.#../...#/..#.", "irregular sateen on 4 ends, which is a broken 1/3 twill"},
		{"#.../###./..#./#.##", "double cloth, two layers of plain weave"},
		{"#.#/##./#..", "no name of its own"},
	} {
		if got := present.WeaveName(structure.Of(weave.Must(c.weave)).Name); got != c.want {
			t.Errorf("%s: %q, want %q", c.weave, got, c.want)
		}
	}
}

// TestStructureReads keeps what a student reads of some weaves, as a page to review.
func TestStructureReads(t *testing.T) {
	point := &draft.Draft{Shafts: 4, Threading: []int{1, 2, 3, 4, 3, 2}, Lifts: []draft.Set{
		draft.Of(1, 2), draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 4), draft.Of(3, 4), draft.Of(2, 3),
	}}
	twill := &draft.Draft{Shafts: 4, Threading: []int{1, 2, 3, 4}, Lifts: []draft.Set{draft.Of(1, 2), draft.Of(2, 3), draft.Of(3, 4), draft.Of(1, 4)}}
	var b strings.Builder
	for _, c := range []struct {
		what  string
		lines []present.Told
	}{
		{"plain weave", present.Structure(structure.Of(weave.Must("#./.#")))},
		{"a point twill both ways", present.Structure(structure.OfDraft(point))},
		{"a basket with one pick in a shed", present.Structure(structure.Of(weave.Must("##../..##")))},
		{"double cloth", present.Structure(structure.Of(weave.Must("#.../###./..#./#.##")))},
		{"a weave with loose threads", present.Structure(structure.Of(weave.Must("##./#.#/#..")))},
		{"nothing held", present.Structure(structure.Of(weave.Must("##/##")))},
		{"a cloth that does not repeat", present.Structure(structure.Of(weave.Must("#../.#./..#").Cloth(3, 3)))},
		{"edges of the point twill on 13 ends", present.Edges(structure.EdgesOfDraft(point, 13, structure.Weaving{}))},
		{"edges of a 2/2 twill begun from the left", present.Edges(structure.EdgesOfDraft(twill, 40, structure.Weaving{}))},
		{"edges of a 2/2 twill on 41 ends", present.Edges(structure.EdgesOfDraft(twill, 41, structure.Weaving{Start: []structure.Side{structure.Right}}))},
		{"edges of a warp rib", present.Edges(structure.EdgesOf(weave.Must("#./#./.#/.#"), structure.Weaving{}))},
		{"edges of a twill with two shuttles", present.Edges(structure.EdgesOfDraft(twill, 40, structure.Weaving{Shuttles: []int{0, 1, 0, 1}}))},
	} {
		b.WriteString("== " + c.what + "\n")
		for _, l := range c.lines {
			b.WriteString(l.Title + ": " + l.Figures + "\n    " + l.Explanation + "\n")
		}
	}
	golden(t, "testdata/structure.txt", b.String())
}
