package planfile

import (
	"fmt"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

// tree builds the tree of a text and gives its problems as code@path.
func tree(t *testing.T, text string) (*node, string) {
	t.Helper()
	list := &problem.List{}
	top := build(newSource("plan.toml", []byte(text)), list)
	var codes []string
	for _, p := range list.All() {
		codes = append(codes, fmt.Sprintf("%s@%s:%d:%d", p.Code, p.Path, p.Place.Line, p.Place.Col))
	}
	return top, strings.Join(codes, " ")
}

// TestTwice holds what TOML forbids to be written twice (TOML 1.0, "Keys",
// "Table", "Inline Table", "Array of Tables").
func TestTwice(t *testing.T) {
	for text, want := range map[string]string{
		"a = 1\na = 2":                        "key.twice@a:2:1",
		"a = 1\n\"a\" = 2":                    "key.twice@a:2:1",
		"[a]\nb = 1\n[a]\nc = 1":              "table.twice@a:3:2",
		"[a]\n[a]\n[a]":                       "table.twice@a:2:2 table.twice@a:3:2",
		"[a.b]\n[a]\nc = 1":                   "",
		"[a]\n[a.b]\nc = 1":                   "",
		"a = 1\n[a]":                          "key.twice@a:2:2",
		"a = 1\n[a.b]":                        "key.twice@a:2:2",
		"[[a]]\n[[a]]\nb = 1\nb = 2":          "key.twice@a[1].b:4:1",
		"[[a]]\n[a]":                          "table.twice@a:2:2",
		"a = []\n[[a]]":                       "key.twice@a:2:3",
		"[a]\n[[a]]":                          "table.twice@a:2:3",
		"a.b = 1\na.c = 2":                    "",
		"a.b = 1\na.b = 2":                    "key.twice@a.b:2:3",
		"a.b = 1\na.b.c = 2":                  "key.twice@a.b:2:3",
		"a.b = 1\n[a]\nc = 1":                 "table.twice@a:2:2",
		"a.b = 1\n[a.c]\nd = 1":               "",
		"[a]\nb = 1\n[c]\n[a.b]":              "key.twice@a.b:4:4",
		"a = { b = 1, b = 2 }":                "key.twice@a.b:1:14",
		"a = { b.c = 1, b.d = 2 }":            "",
		"a = { b = { c = 1 }, b.d = 2 }":      "table.twice@a.b:1:22",
		"a = { b = 1 }\na.c = 2":              "table.twice@a:2:1",
		"a = { b = 1 }\n[a]":                  "table.twice@a:2:2",
		"a = { b = 1 }\n[a.c]":                "table.twice@a:2:2",
		"[[a]]\nb.c = 1\n[[a]]\nb.c = 1":      "",
		"[[a]]\n[a.b]\nc = 1\n[[a]]\n[a.b]":   "",
		"[[a]]\n[a.b]\n[a.b]":                 "table.twice@a[0].b:3:4",
		"a = 1\n[a.b.c]\nd = 1\nd = 2":        "key.twice@a:2:2",
		"[a]\nb.c = 1\n[a.b]\nd = 1":          "table.twice@a.b:3:4",
		"[a.b]\nc = 1\n[a]\nb.d = 1":          "table.twice@a.b:4:1",
		"å = 1\n\"æ\" = 1":                    "toml.syntax@:1:1",
		"\"æ\" = 1\n\"æ\" = 1":                "key.twice@æ:2:1",
		strings.Repeat("a.", 11) + "b = 1":    "",
		strings.Repeat("a.", 12) + "b = 1":    "file.deep@:1:25",
		"[" + strings.Repeat("a.", 12) + "b]": "file.deep@:1:26",
		"a = " + strings.Repeat("[", 12) + "1" + strings.Repeat("]", 12): "file.deep@:1:5",
	} {
		if _, got := tree(t, text); got != want {
			t.Errorf("%q has %q, want %q", text, got, want)
		}
	}
}

// TestFirstOfTwoStays: after a problem the reading goes on with what stood
// first.
func TestFirstOfTwoStays(t *testing.T) {
	top, _ := tree(t, "a = 1\na = 2\n[b]\nc = 3\n[b]\nd = 4\n[a]\ne = 5\n")
	if got := top.child("a").text; got != "1" {
		t.Errorf("a is %s", got)
	}
	if b := top.child("b"); b.child("c").text != "3" || b.child("d").text != "4" {
		t.Error("the two tables b were not brought together")
	}
	if len(top.items) != 2 {
		t.Errorf("%d keys at the top", len(top.items))
	}
}

// TestManyKeys: a large table is searched by name and keeps its order.
func TestManyKeys(t *testing.T) {
	var b strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&b, "k%d = %d\n", i, i)
	}
	top, codes := tree(t, b.String()+"k7 = 1\n")
	if codes != "key.twice@k7:1001:1" || len(top.items) != 1000 {
		t.Errorf("%q, %d keys", codes, len(top.items))
	}
	for i := range 1000 {
		if c := top.child(fmt.Sprintf("k%d", i)); c == nil || c.text != fmt.Sprint(i) || c.index != i {
			t.Fatalf("k%d is %+v", i, c)
		}
	}
	if top.child("k1000") != nil {
		t.Error("a key that is not there was found")
	}
}

// TestKindsOfValues: every value is of its kind and stands where it is written.
func TestKindsOfValues(t *testing.T) {
	for text, want := range map[string]string{
		`a = "x"`: "a text x 5-8", `a = 'x'`: "a text x 5-8", `a = 7`: "a whole number 7 5-6",
		`a = 1_000`: "a whole number 1_000 5-10", `a = -7.5e3`: "a decimal number -7.5e3 5-11",
		`a = inf`: "a decimal number inf 5-8", `a = true`: "true or false true 5-9",
		`a = 2026-03-01`: "a date 2026-03-01 5-15", `a = 07:32:00`: "a date with a time 07:32:00 5-13",
		`a = 2026-03-01 07:32:00`: "a date with a time 2026-03-01 07:32:00 5-24",
		`a = [1, 2]`:              "a list  5-11", `a = { b = 1 }`: "a table  5-14",
		`a   =   "x"`: "a text x 9-12", `"a" = "x" # y`: "a text x 7-10",
	} {
		top, codes := tree(t, text)
		n := top.child("a")
		got := fmt.Sprintf("%s %s %d-%d", n.kind, n.text, n.at.from+1, n.at.to+1)
		if codes != "" || got != want {
			t.Errorf("%s is %s %s, want %s", text, got, codes, want)
		}
	}
}

// TestInside: where the characters of a text stand, and that escapes hide them.
func TestInside(t *testing.T) {
	for text, want := range map[string]int{
		`a = "xyz"`: 5, `a = 'xyz'`: 5, `a = """xyz"""`: 7, "a = '''xyz'''": 7,
		"a = \"\"\"\nxyz\"\"\"": 8, "a = \"\"\"\r\nxyz\"\"\"": 9,
		`a = "x\u0079z"`: -1, `a = "x\tz"`: -1, `a = "xyz\\"`: -1, `a = ""`: 5, `a = 'x\yz'`: 5,
	} {
		top, _ := tree(t, text)
		if got := top.child("a").inside; got != want {
			t.Errorf("%q stands inside at %d, want %d", text, got, want)
		}
	}
}

// TestSyntax: the mistakes of people who never met TOML are called by name.
func TestSyntax(t *testing.T) {
	for text, want := range map[string]string{
		"a = 18 in":             "toml.quotes 18 in 1:5",
		"a = 18in # wide":       "toml.quotes 18in 1:5",
		"a = cotton":            "toml.quotes cotton 1:5",
		"a=8/2 Ne":              "toml.quotes 8/2 Ne 1:3",
		"\"a b\" = 13 in":       "toml.quotes 13 in 1:9",
		"a = 5\"":               "toml.quotes 5\" 1:5",
		"a = 1,5":               "toml.quotes 1,5 1:5",
		"a = yes":               "toml.quotes yes 1:5",
		"towels":                "toml.no-value towels 1:1",
		"a = “x”":               "toml.curly-quotes “ 1:5",
		"a = \"x":               "toml.open-quote \"x 1:5",
		"a = 'x":                "toml.open-quote 'x 1:5",
		"b = 1\n\na = \"x\" \"": "toml.syntax \" 3:9",
		"[a":                    "toml.syntax a 1:2",
		"a = ":                  "toml.syntax   1:4",
		"a = [1,":               "toml.syntax , 1:7",
		"= 3":                   "toml.syntax = 1:1",
		"a = \"\\q\"":           "toml.syntax \\q 1:6",
	} {
		list := &problem.List{}
		build(newSource("plan.toml", []byte(text)), list)
		all := list.All()
		if len(all) != 1 {
			t.Errorf("%q has %d problems", text, len(all))
			continue
		}
		p := all[0]
		if got := fmt.Sprintf("%s %s %d:%d", p.Code, p.Read, p.Place.Line, p.Place.Col); got != want {
			t.Errorf("%q gives %s, want %s", text, got, want)
		}
	}
}
