package structure

import (
	"slices"
	"testing"

	"sley/internal/trade/draft"
	"sley/internal/trade/weave"
)

func topics(findings []Finding) (out []Topic) {
	for _, f := range findings {
		out = append(out, f.Topic)
	}
	return out
}

// TestEveryTopicIsTold by some weave, and nothing else is.
func TestEveryTopicIsTold(t *testing.T) {
	straight := &draft.Draft{Shafts: 4, Threading: s1to4, Lifts: twoTwo}
	var got []Topic
	for _, text := range []string{"#./.#", "##../.##./..##/#..#", "##../..##", "#.../###./..#./#.##", "##./#.#/#..", "##/##"} {
		got = append(got, topics(Of(weave.Must(text)).Findings())...)
	}
	for _, e := range []*Edges{
		EdgesOfDraft(straight, 40, Weaving{}), EdgesOfDraft(straight, 41, Weaving{Start: []Side{Right}}),
		EdgesOfDraft(&draft.Draft{Shafts: 4, Threading: point4, Lifts: treadled(twoTwo, 1, 2, 3, 4, 3, 2)}, 13, Weaving{}),
		EdgesOf(weave.Must("#./#./.#/.#"), Weaving{}),
	} {
		got = append(got, topics(e.Findings())...)
	}
	got = append(got, topics(Of(weave.Must("#../.#./..#").Cloth(3, 3)).Findings())...)
	got = append(got, topics(OfDraft(&draft.Draft{Shafts: 4, Threading: point4, Lifts: twoTwo}).Findings())...)
	slices.Sort(got)
	want := Topics()
	slices.Sort(want)
	if got = slices.Compact(got); !slices.Equal(got, want) {
		t.Errorf("told %v, want %v", got, want)
	}
}

// TestBasketWovenAsRib: a basket's threading with one pick in each shed is a rib, and
// the weaver is told; the basket itself, and a rib with a single end in a group, are
// told nothing of the kind.
func TestBasketWovenAsRib(t *testing.T) {
	for text, want := range map[string]bool{
		"##../..##": true, "##..##/..##..": true, "###../...##": true,
		"##../##../..##/..##": false, "##./..#": false, "#./#./.#/.#": false, "#./.#": false,
	} {
		if got := slices.Contains(topics(Of(weave.Must(text)).Findings()), OneShed); got != want {
			t.Errorf("%s: told %v, want %v", text, got, want)
		}
	}
}

// TestQuietOnGoodCloth: of plain weave and twill nothing is told that asks for
// anything.
func TestQuietOnGoodCloth(t *testing.T) {
	for _, w := range []*weave.Weave{weave.Must("#./.#"), woven(s1to4, twoTwo...), woven(s1to4, twoTwo...).Cloth(201, 403)} {
		for _, f := range Of(w).Findings() {
			if slices.Contains([]Topic{NoName, OneShed, Layered, Nothing, Loose, Never, Unevenly}, f.Topic) {
				t.Errorf("told %s of\n%s", f.Topic, w.Repeat())
			}
		}
	}
	if got := EdgesOf(weave.Must("#./.#"), Weaving{}).Findings(); !slices.Equal(topics(got), []Topic{AllCaught, AllCaught}) {
		t.Errorf("edges of plain weave: %v", topics(got))
	}
}
