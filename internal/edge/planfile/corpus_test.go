package planfile

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// plansOfTheHouse gives every plan file there is, by its name.
func plansOfTheHouse(tb testing.TB) map[string][]byte {
	tb.Helper()
	out := map[string][]byte{}
	for _, of := range []string{
		"../../../examples/*.toml", "../../../testdata/vectors/plans/*.toml", "../../../testdata/bench/*.toml",
		"testdata/*.toml", "testdata/faults/*.toml",
	} {
		names, err := filepath.Glob(of)
		if err != nil || len(names) == 0 {
			tb.Fatalf("%s has no file: %v", of, err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				tb.Fatal(err)
			}
			out[name] = text
		}
	}
	return out
}

// told gives problems as code, path and what was read, in their order.
func told(lists ...*problem.List) []string {
	var out []string
	for _, list := range lists {
		for _, p := range list.All() {
			out = append(out, fmt.Sprintf("%v %s at %s, read %q", p.Severity, p.Code, p.Path, p.Read))
		}
	}
	slices.Sort(out)
	return out
}

// samePlans tells how two plans differ; nothing when they do not.
func samePlans(a, b *warp.Plan) string {
	if reflect.DeepEqual(a, b) {
		return ""
	}
	return fmt.Sprintf("the plans differ:\n%+v\n%+v\n", *a, *b)
}

// onlyOfFiles are the files whose faults the tree of values cannot have, with
// what is said in their place: a document is laid out with the version first, it
// has no key twice, and a number that JSON cannot hold is a text.
var onlyOfFiles = map[string][]string{
	"format.first--late": nil, "key.twice": nil, "key.twice--dotted": nil, "table.twice": nil,
	"whole.range--huge": {`error value.kind at pieces[0].count, read "99999999999999999999"`},
}

// TestEveryPlanInBothWritings: from a file through JSON and a file again, every
// plan of the house is the same plan with the same problems.
func TestEveryPlanInBothWritings(t *testing.T) {
	read := 0
	for name, text := range plansOfTheHouse(t) {
		plan, _, list := Decode("plan.toml", text)
		doc, first := ReadText("plan.toml", text)
		if doc == nil {
			if !first.Failed() || !cmp.Equal(told(first), told(list)) {
				t.Errorf("%s is not read: %v, by Decode %v", name, told(first), told(list))
			}
			continue
		}
		read++
		itself, second := doc.Plan("")
		if diff := samePlans(plan, itself) + cmp.Diff(told(list), told(first, second)); diff != "" {
			t.Errorf("%s as a document: %s", name, diff)
		}
		throughBoth(t, name, doc, plan, list)
	}
	if read < 190 {
		t.Errorf("only %d plans were read", read)
	}
}

func throughBoth(t *testing.T, name string, doc *Document, plan *warp.Plan, list *problem.List) {
	json, err := ReadJSON(doc.JSON())
	if err != nil {
		t.Fatalf("%s as JSON: %v", name, err)
	}
	if string(json.JSON()) != string(doc.JSON()) || !json.Equal(doc) {
		t.Errorf("%s: JSON is not stable", name)
	}
	fromJSON, problems := json.Plan("")
	want, only := onlyOfFiles[strings.TrimSuffix(filepath.Base(name), ".toml")]
	if !only {
		want = told(list)
	}
	if diff := samePlans(plan, fromJSON) + cmp.Diff(want, told(problems)); diff != "" {
		t.Errorf("%s through JSON: %s", name, diff)
	}
	for _, p := range problems.All() {
		if p.Place != (problem.Place{}) {
			t.Errorf("%s: a document from no file has the place %v", name, p.Place)
		}
	}
	text := json.Text()
	fromText, _, problems := Decode("plan.toml", text)
	if diff := samePlans(plan, fromText) + cmp.Diff(want, told(problems)); diff != "" {
		t.Errorf("%s through JSON and text: %s\n%s", name, diff, text)
	}
	again, _ := ReadText("plan.toml", text)
	if again == nil || !again.Equal(doc) || string(again.Text()) != string(text) {
		t.Errorf("%s: the text of the document is another document, or another text:\n%s", name, text)
	}
}
