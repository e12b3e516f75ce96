package warp

import (
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Each link joins a later state to an earlier one of the same chain, its key
// stands once, and the words of the states tell them apart.
func TestLinks(t *testing.T) {
	keys := map[string]bool{}
	for _, name := range LinkNames() {
		if keys[name.Key] {
			t.Errorf("key %s stands twice", name.Key)
		}
		keys[name.Key] = true
		if name.Link.Later >= name.Link.Earlier {
			t.Errorf("%s: %s is not later than %s", name.Key, name.Link.Later, name.Link.Earlier)
		}
		for _, s := range []State{name.Link.Later, name.Link.Earlier} {
			if name.Width && !s.IsWidth() || !name.Width && !s.IsLength() {
				t.Errorf("%s: %s is no state of its chain", name.Key, s)
			}
		}
	}
}

func TestStateWords(t *testing.T) {
	seen := map[string]State{}
	for s := Finished; s <= InReed; s++ {
		if s.String() == "" {
			t.Errorf("state %d has no word", s)
		}
		for _, word := range StateWords(s) {
			if other, twice := seen[word]; twice {
				t.Errorf("%q means %s and %s", word, s, other)
			}
			seen[word] = s
		}
	}
	if Unsaid.String() != "" {
		t.Error("the unsaid state has a word")
	}
}

// Ends and interlacings as Ashenhurst counts them: plain 2 and 2, 2/2 twill 4
// and 2 (Complex Weavers Medieval Textiles study group, 1999), 5-end satin 5 and
// 2 (Taylor, Cotton Weaving and Designing, p. 427: 2 in 5 picks).
func TestWeaveFactors(t *testing.T) {
	for name, want := range map[string]qty.Rat{
		"plain": qty.Frac(1, 2), "2/2 twill": qty.Frac(2, 3), "satin": qty.Frac(5, 7), "2/1 twill": qty.Frac(3, 5),
	} {
		w, ok := WeaveNamed(name)
		if !ok || !w.Factor().Equal(want) {
			t.Errorf("%s: got %s, want %s", name, w.Factor(), want)
		}
	}
	if _, ok := WeaveNamed("knit"); ok {
		t.Error("knit is a weave")
	}
}

func TestYarnNamed(t *testing.T) {
	p := Plan{Yarns: []yarn.Yarn{{Name: "white"}, {Name: "blue"}}}
	if y, ok := p.YarnNamed("blue"); !ok || y.Name != "blue" {
		t.Errorf("got %v, %v", y, ok)
	}
	if _, ok := p.YarnNamed("red"); ok {
		t.Error("found a yarn that is not there")
	}
}
