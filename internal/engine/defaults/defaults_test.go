package defaults

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"testing"

	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

func TestEveryValueHasItsSourceAndLiesInItsRange(t *testing.T) {
	for _, v := range Table() {
		if _, ok := SourceOf(v.Source); !ok {
			t.Errorf("%+v: source %q is not in the table", v, v.Source)
		}
		is := v.Share
		if v.Length > 0 {
			is = v.Length.Rat()
		}
		if is.Less(v.Low) || v.High.Less(is) {
			t.Errorf("%s %s %s %s: %s lies outside %s to %s", v.Key, v.Fibre, v.Weave, v.Wash, is, v.Low, v.High)
		}
	}
}

func TestSourcesStandOnceAndSayWhatTheyAre(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Sources() {
		if seen[s.ID] {
			t.Errorf("source %q stands twice", s.ID)
		}
		seen[s.ID] = true
		if s.Text == "" || s.Status == "" {
			t.Errorf("source %q: no text or status", s.ID)
		}
	}
}

// Every id that the reckoning names as a source is in the table: the string
// handed to from, and Source fields.
func TestEverySourceNamedByTheReckoningIsInTheTable(t *testing.T) {
	files, err := filepath.Glob("../reckon/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no files of the reckoning found: ", err)
	}
	found := 0
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			for _, id := range sourceIDs(n) {
				found++
				if _, ok := SourceOf(id); !ok {
					t.Errorf("%s: source %q is not in the table", name, id)
				}
			}
			return true
		})
	}
	if found < 8 {
		t.Errorf("found only %d sources named: does the search still see them?", found)
	}
}

// sourceIDs gives the id in from("id") and in Source: "id".
func sourceIDs(n ast.Node) []string {
	var value ast.Expr
	switch n := n.(type) {
	case *ast.CallExpr:
		if sel, ok := n.Fun.(*ast.SelectorExpr); ok && sel.Sel.Name == "from" && len(n.Args) == 1 {
			value = n.Args[0]
		}
	case *ast.KeyValueExpr:
		if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Source" {
			value = n.Value
		}
	}
	lit, ok := value.(*ast.BasicLit)
	if !ok {
		return nil
	}
	id, err := strconv.Unquote(lit.Value)
	if err != nil {
		return nil
	}
	return []string{id}
}

func TestDiameterConstantsAreSources(t *testing.T) {
	for _, k := range yarn.KValues() {
		if s, ok := SourceOf(k.ID); !ok || s.Text == "" {
			t.Errorf("constant %s has no source", k.ID)
		}
	}
}

var forTests = []struct {
	key  string
	c    Case
	want qty.Rat
	what string
}{
	{"shrinkage", Case{Fibre: "cotton", Wash: "washed"}, pct(7), "a washed cotton"},
	{"shrinkage", Case{Fibre: "wool", Wash: "fulled"}, pct(20), "the entry that names more wins"},
	{"shrinkage", Case{Fibre: "wool", Wash: "washed"}, pct(8), "not the fulled entry"},
	{"shrinkage", Case{}, pct(7), "nothing known"},
	{"take-up", Case{Weave: "satin"}, pct(5), "by weave"},
	{"take-up", Case{Weave: "no such weave"}, pct(10), "an unknown weave falls back"},
}

func TestFor(t *testing.T) {
	for _, test := range forTests {
		v, ok := For(test.key, test.c)
		if !ok || !v.Share.Equal(test.want) {
			t.Errorf("%s: For(%q, %+v) = %s, %v, want %s", test.what, test.key, test.c, v.Share, ok, test.want)
		}
	}
	if _, ok := For("no such key", Case{}); ok {
		t.Error("For gave a value for a key that is not in the table")
	}
}

// Every weave and wash that a plan can name finds a value under every key, and
// the states of an allowance are those of the link that it stands for.
func TestEveryCaseFindsAValue(t *testing.T) {
	for _, w := range warp.Weaves() {
		for _, wash := range warp.WashNames() {
			for _, key := range []string{"take-up", "relaxation", "shrinkage", "width-shrinkage", "reed-to-relaxed", "width-relaxation", "draw-in"} {
				v, ok := For(key, Case{Fibre: "linen", Weave: w.Class, Wash: wash})
				if !ok {
					t.Errorf("%s for %s, %s: no value", key, w.Name, wash)
				}
				checkStates(t, v)
			}
		}
	}
}

func checkStates(t *testing.T, v Value) {
	for _, name := range warp.LinkNames() {
		if name.Key == v.Key && (name.Link.Later != v.To || name.Link.Earlier != v.From) {
			t.Errorf("%s runs from %s to %s, the link from %s to %s", v.Key, v.From, v.To, name.Link.Earlier, name.Link.Later)
		}
	}
}
