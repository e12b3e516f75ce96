package present_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"

	"sley/internal/engine/catalogue"
	"sley/internal/engine/catalogue/block"
	"sley/internal/engine/structure"
	"sley/internal/face/present"
)

// TestCatalogueHasWords: every entry, parameter, choice, family and sett of the
// catalogue has words, in the voice of the trade.
func TestCatalogueHasWords(t *testing.T) {
	used := map[string]bool{}
	for _, e := range catalogue.All() {
		w := present.Catalogue(e.ID)
		if used[w.Name] || !sentence(w.Is) || !phrase(w.Use) {
			t.Errorf("%s: %+v", e.ID, w)
		}
		used[w.Name] = true
		for _, p := range e.Params {
			name, says := present.CatalogueParam(e.ID, p.Name)
			if !phrase(says) || name == "" {
				t.Errorf("%s, %s: %q %q", e.ID, p.Name, name, says)
			}
			for _, option := range p.Options {
				if p.Kind == catalogue.Choice && present.CatalogueOption(option) == option {
					t.Errorf("%s, %s: %s has no words", e.ID, p.Name, option)
				}
			}
		}
		if present.CatalogueSett(e.Sett.String()) == "" {
			t.Errorf("%s: no words for the sett %s", e.ID, e.Sett)
		}
	}
	for _, family := range catalogue.Families() {
		if w := present.CatalogueFamily(string(family)); w.Name == "" || !sentence(w.Is) {
			t.Errorf("%s: %+v", family, w)
		}
	}
}

// sentence reports whether a text is whole sentences, quietly said.
func sentence(text string) bool {
	return text != "" && unicode.IsUpper([]rune(text)[0]) && strings.HasSuffix(text, ".") && !strings.Contains(text, "!")
}

// phrase reports whether a text can stand after a colon.
func phrase(text string) bool {
	return text != "" && !unicode.IsUpper([]rune(text)[0]) && !strings.HasSuffix(text, ".") && !strings.Contains(text, "!")
}

// TestNoCatalogueWordsAreLeftOver finds words whose entry or parameter is gone.
func TestNoCatalogueWordsAreLeftOver(t *testing.T) {
	have := map[string]bool{}
	for _, e := range catalogue.All() {
		have[e.ID] = true
		for _, p := range e.Params {
			have[p.Name], have[e.ID+" "+p.Name] = true, true
			for _, option := range p.Options {
				have[option] = true
			}
		}
	}
	for _, key := range present.CatalogueKeys() {
		if !have[key] {
			t.Errorf("%q has words, and the catalogue nothing of that name", key)
		}
	}
}

// catalogueDoc is made of the words and of the facts of the catalogue.
const catalogueDoc = "../../../docs/catalogue.md"

const catalogueHead = `# The catalogue of weaves

Every weave here is made by a rule with parameters; the figures are those of the
defaults, and are computed from the draft. Floats are the longest, on the front and
on the back, in threads. The repeat counts the order of colours where there is one.
The sett is the closest, as a share of the closest sett of plain weave in the same
yarn: by ends and interlacings (Ashenhurst, as in J. T. Taylor, *Cotton Weaving and
Designing*, 6th ed., 1909) where nothing else is said, else by common practice,
without a source.

This page is made by ` + "`go test ./internal/face/present -update`" + ` and never
written by hand.
`

func TestCatalogueDocIsFresh(t *testing.T) {
	got := cataloguePage()
	if *update {
		if err := os.WriteFile(catalogueDoc, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(catalogueDoc)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Error("docs/catalogue.md is not what the catalogue makes: run go test ./internal/face/present -update")
	}
}

func cataloguePage() string {
	var b strings.Builder
	b.WriteString(catalogueHead)
	for _, family := range catalogue.Families() {
		w := present.CatalogueFamily(string(family))
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n", w.Name, w.Is)
		b.WriteString("| weave | shafts | treadles | ends × picks | warp floats | weft floats | face | one cloth | sett |\n|---|---|---|---|---|---|---|---|---|\n")
		for _, e := range catalogue.Of(family) {
			b.WriteString(factsRow(e))
		}
		for _, e := range catalogue.Of(family) {
			b.WriteString(entryWords(e))
		}
	}
	b.WriteString(blocksPage())
	return b.String()
}

const blocksHead = `
## Blocks and looms

A profile is written in the shorthand of threadings, with letters for blocks:
` + "`(A B) x 3, C mirrored`" + `. Along the weft ` + "`1+3`" + ` asks blocks 1 and 3, A and C, to
weave pattern together; left empty, the profile is treadled as it is threaded. The
table says how many blocks four and eight shafts can weave, what four blocks need,
the treadles being for each block alone in turn.

| weave | ends of a unit | picks of a unit | on 4 shafts | on 8 shafts | shafts for 4 blocks | treadles, one foot | treadles, two feet | tabby | blocks together |
|---|---|---|---|---|---|---|---|---|---|
`

func blocksPage() string {
	var b strings.Builder
	b.WriteString(blocksHead)
	yes := map[bool]string{true: "yes", false: "no"}
	for _, s := range block.Systems() {
		p := (&block.Profile{Blocks: 4, Threading: []int{1, 2, 3, 4}}).AsDrawnIn()
		needs := s.Needs(p)
		fmt.Fprintf(&b, "| %s | %d | %d | %d | %d | %d | %d | %d | %s | %s |\n", present.Catalogue(s.ID).Name,
			len(s.Unit(1, 4)), len(s.Picks(1, 4)), s.Fit(4), s.Fit(8), needs.Shafts, needs.OneFoot, needs.TwoFeet, yes[s.Tabby], yes[s.Together])
	}
	return b.String()
}

func factsRow(e *catalogue.Entry) string {
	f := catalogue.FactsOf(e.Default())
	one := "yes"
	if !f.Hangs {
		one = fmt.Sprintf("%d layers", f.Woven)
	}
	balance := map[structure.Balance]string{structure.Even: "even", structure.WarpFaced: "warp", structure.WeftFaced: "weft"}[f.Balance]
	sett := e.SettFactor(f).Short(2)
	if e.Sett != catalogue.ByInterlacings {
		sett += ", " + present.CatalogueSett(e.Sett.String())
	}
	return fmt.Sprintf("| %s | %d | %d | %d × %d | %d, %d | %d, %d | %s | %s | %s |\n", present.Catalogue(e.ID).Name,
		f.Shafts, f.Treadles, f.Ends, f.Picks, f.WarpFront, f.WarpBack, f.WeftFront, f.WeftBack, balance, one, sett)
}

func entryWords(e *catalogue.Entry) string {
	w := present.Catalogue(e.ID)
	var b strings.Builder
	fmt.Fprintf(&b, "\n**%s** (`%s`). %s For %s. Checked: %s.\n", w.Name, e.ID, w.Is, w.Use, e.Source)
	for i, p := range e.Params {
		name, says := present.CatalogueParam(e.ID, p.Name)
		if i == 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, "- `%s`, %s: %s; %s\n", p.Name, name, says, rangeOf(p))
	}
	return b.String()
}

// rangeOf says what a parameter may be, and its default.
func rangeOf(p catalogue.Param) string {
	says := ""
	switch p.Kind {
	case catalogue.Count:
		says = fmt.Sprintf("%d to %d", p.Least, p.Most)
		if p.Even {
			says = "even, " + says
		}
	case catalogue.Ratio:
		says = fmt.Sprintf("as 2/2, adding up to %d to %d", p.Least, p.Most)
	case catalogue.Choice:
		var said []string
		for _, option := range p.Options {
			said = append(said, fmt.Sprintf("`%s` (%s)", option, present.CatalogueOption(option)))
		}
		says = strings.Join(said, ", ")
	case catalogue.Threads:
		says = "an order of " + strings.Join(slices.Sorted(slices.Values(p.Options)), " and ")
	case catalogue.Units:
		says = "an order of blocks"
	}
	if p.Default == "" {
		return says
	}
	return says + "; `" + p.Default + "` where nothing is said"
}
