package tape_test

import (
	"math"
	"strings"
	"testing"

	"sley/internal/engine/draw/check"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/tape"
)

// texts are the words on the pages in the order drawn.
func texts(items []scene.Item) []string {
	var found []string
	for _, it := range items {
		switch it := it.(type) {
		case scene.Text:
			found = append(found, it.Text)
		case scene.Group:
			found = append(found, texts(it.Items)...)
		}
	}
	return found
}

// Every join is named on both of its sides, and no two joins have the same name.
func TestJoinsAreNamedTwice(t *testing.T) {
	pages, _ := tape.Pages([]tape.Strip{blanket(), towel()}, scene.A4, words)
	count := map[string]int{}
	for _, p := range pages {
		for _, text := range texts(p.Items) {
			if len(text) == 1 && text >= "A" && text <= "Z" {
				count[text]++
			}
		}
	}
	if len(count) != 11+3 { // 2.7 m in twelve parts, 34.2 in in four
		t.Errorf("%d joins, want 14: %v", len(count), count)
	}
	for name, n := range count {
		if n != 2 {
			t.Errorf("%s stands %d times", name, n)
		}
	}
}

// Parts follow one another without gap or overlap in what they measure, and no part
// is so short that it cannot be joined.
func TestPartsFollowOneAnother(t *testing.T) {
	for _, length := range []float64{1, 49.9, 240, 240.01, 241, 2411, 2700, 23_456.7, tape.MaxLength} {
		parts := [][2]float64{}
		w := words
		w.Running = func(from, to float64) string { parts = append(parts, [2]float64{from, to}); return "" }
		tape.Pages([]tape.Strip{{Length: length}}, scene.A4, w)
		at := 0.0
		for _, p := range parts[1:] { // the first is asked for its width alone
			if p[0] != at || p[1]-p[0] < 50 && p[1] != length || p[1]-p[0] < 30 && length > 240 || p[1]-p[0] > 240 {
				t.Errorf("%v mm: a part from %v to %v after %v", length, p[0], p[1], at)
			}
			at = p[1]
		}
		if at != length {
			t.Errorf("%v mm: the last part ends at %v", length, at)
		}
	}
}

// Where there is no room for every label the page stays clean, every mark is drawn,
// and those that are strong keep their labels.
func TestTooManyMarks(t *testing.T) {
	s := tape.Strip{Title: "Sampler", Length: 200}
	for i := range 201 {
		s.Marks = append(s.Marks, tape.Mark{At: float64(i), Label: "a change of colour", Strong: i%20 == 0})
	}
	pages, places := tape.Pages([]tape.Strip{s}, scene.A4, words)
	for _, f := range check.Read(scene.Document{Pages: pages}, check.Rules{MinPt: 10, Margin: 7.9}) {
		t.Error(f)
	}
	labelled := 0
	for _, p := range places {
		if p.Labelled {
			labelled++
		} else if s.Marks[p.Mark].Strong {
			t.Errorf("the strong mark at %v lost its label", s.Marks[p.Mark].At)
		}
	}
	if len(places) != 201 || labelled < 40 || labelled > 50 {
		t.Errorf("%d places, %d labelled: 198 mm hold 47 lines", len(places), labelled)
	}
}

func TestLongWordsStayOnTheStrip(t *testing.T) {
	long := strings.Repeat("Handwebereigarnverzeichnis ", 9)
	s := tape.Strip{Title: long, Length: 300, Marks: []tape.Mark{{At: 10, Label: long}, {At: 12, Label: long, Strong: true}, {At: 300, Label: long}}}
	w := words
	w.Heading, w.Note = long, long
	w.Page = func(int, int) string { return long }
	w.Running = func(float64, float64) string { return long }
	for _, paper := range papers {
		pages, _ := tape.Pages([]tape.Strip{s}, paper, w)
		for _, f := range check.Read(scene.Document{Pages: pages}, check.Rules{MinPt: 10, Margin: 7.9}) {
			t.Error(f)
		}
	}
}

func TestNothingToDraw(t *testing.T) {
	for _, length := range []float64{0, -1, math.NaN(), math.Inf(1), tape.MaxLength + 1} {
		if pages, places := tape.Pages([]tape.Strip{{Length: length}}, scene.A4, words); pages != nil || places != nil {
			t.Errorf("a strip of %v mm gives %d pages", length, len(pages))
		}
	}
	if pages, _ := tape.Pages([]tape.Strip{towel()}, scene.Size{Width: 105, Height: 74}, words); pages != nil {
		t.Errorf("a postcard gives %d pages", len(pages))
	}
	pages, places := tape.Pages([]tape.Strip{{Length: 40, Marks: []tape.Mark{{At: -1}, {At: 41}, {At: math.NaN()}, {At: 20}}}}, scene.A4, tape.Words{})
	if len(pages) != 1 || len(places) != 1 || places[0].Mark != 3 {
		t.Errorf("marks beyond the strip: %+v", places)
	}
	if err := pages[0].Validate(); err != nil {
		t.Error(err)
	}
}
