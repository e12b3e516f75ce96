package sley_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// breach is a small house in which a rule is broken.
type breach struct {
	name   string
	files  map[string]string
	reason string // the rule's own, or its beginning
}

// breaks has one breach or more for each rule of the policy.
var breaks = []breach{
	{"up within the nouns", one("internal/trade/yarn/a.go", `import _ "sley/internal/trade/warp"`), upward},
	{"up a floor", one("internal/trade/record/a.go", `import _ "sley/internal/engine/reckon"`), upward},
	{"an edge that needs app", one("internal/edge/wif/a.go", `import _ "sley/internal/app"`), upward},
	{"a face's neighbour above", one("internal/face/present/a.go", `import _ "sley/internal/face/cli"`), upward},
	{"qty beside problem", one("internal/trade/qty/a.go", `import _ "sley/internal/trade/problem"`), besideOf("internal/trade/qty")},
	{"loom beside yarn", one("internal/trade/loom/a.go", `import _ "sley/internal/trade/yarn"`), besideOf("internal/trade/loom")},
	{"one format needs the book", one("internal/edge/wif/a.go", `import _ "sley/internal/edge/book"`), besideOf("internal/edge/wif")},
	{"one drawing needs another", one("internal/edge/render/svg/a.go", `import _ "sley/internal/edge/render/pdf"`), besideOf("internal/edge/wif")},
	{"cli imports web", one("internal/face/cli/a.go", `import _ "sley/internal/face/web"`), besideOf("internal/face/cli")},
	{"web imports cli, beneath it", one("internal/face/web/page/a.go", `import _ "sley/internal/face/cli"`), besideOf("internal/face/cli")},
	{"a tool imports the command", one("tools/words/a.go", `import _ "sley/cmd/sley"`), besideOf("tools")},
	{"a package nobody placed", one("internal/engine/guess/a.go", ``), unlisted},
	{"a noun reads files", one("internal/trade/warp/a.go", `import _ "os"`), bars[0].reason},
	{"a noun runs programs", one("internal/trade/warp/a.go", `import _ "os/exec"`), bars[0].reason},
	{"an engine walks a tree", one("internal/engine/sett/a.go", `import _ "io/fs"`), bars[0].reason},
	{"an engine asks the network", one("internal/engine/sett/a.go", `import _ "net/http"`), bars[0].reason},
	{"an engine logs", one("internal/engine/sett/a.go", `import _ "log/slog"`), bars[0].reason},
	{"an engine asks a database", one("internal/engine/sett/a.go", `import _ "database/sql"`), bars[0].reason},
	{"an engine writes pages", one("internal/engine/sett/a.go", `import _ "html/template"`), bars[0].reason},
	{"an engine reads a plan file", one("internal/engine/reckon/a.go", `import _ "sley/internal/edge/planfile"`), bars[1].reason},
	{"a face reckons", one("internal/face/cli/a.go", `import _ "sley/internal/engine/reckon"`), bars[2].reason},
	{"a face opens a file format", one("internal/face/web/a.go", `import _ "sley/internal/edge/planfile"`), bars[2].reason},
	{"present seeks a sett", one("internal/face/present/a.go", `import _ "sley/internal/engine/sett"`), bars[3].reason},
	{"present reads the book", one("internal/face/present/a.go", `import _ "sley/internal/edge/book"`), bars[3].reason},
	{"a sheet writes a PDF", one("internal/face/sheet/a.go", `import _ "sley/internal/edge/render/pdf"`), bars[7].reason},
	{"a sheet seeks a sett", one("internal/face/sheet/a.go", `import _ "sley/internal/engine/sett"`), bars[7].reason},
	{"cmd reckons", one("cmd/sley/a.go", `import _ "sley/internal/engine/reckon"`), bars[4].reason},
	{"cmd handles nouns", one("cmd/sley/a.go", `import _ "sley/internal/trade/qty"`), bars[4].reason},
	{"the check needs the house", one("tools/check/a.go", `import _ "sley/internal/trade/qty"`), bars[5].reason},
	{"C", one("internal/edge/book/a.go", `import "C"`), bars[6].reason},
	{"sley drives a browser", one("internal/face/web/a.go", `import _ "sley/internal/face/web/browsing"`), bars[8].reason},
	{"sley carries what tests ask of a page", one("internal/face/cli/a.go", `import _ "sley/third_party/axe-core"`), bars[8].reason},
	{"the bundler needs the house", one("tools/bundle/a.go", `import _ "sley/internal/face/web"`), bars[9].reason},
	{"a browser driven in other words", one("internal/face/web/a_test.go", `import _ "github.com/chromedp/chromedp"`), "only in internal/face/web/browsing"},
	{"cmd joins book and engines", map[string]string{
		"cmd/sley/a.go": `package p; import _ "sley/internal/edge/book"`,
		"cmd/sley/b.go": `package p; import _ "sley/internal/engine/reckon"`,
	}, joins[0].reason},
	{"the book reckons with another's engine", map[string]string{
		"internal/edge/planfile/a.go": `package p; import _ "sley/internal/edge/book"`,
		"internal/edge/planfile/b.go": `package p; import _ "sley/internal/engine/learn"`,
	}, joins[0].reason},
	{"a vague name", one("internal/trade/qty/util/a.go", ``), vague.reason},
	{"a vague name above", one("internal/common/yarn/a.go", ``), vague.reason},
	{"an unknown module", one("internal/app/a.go", `import _ "example.org/loom"`), foreign},
	{"an unknown module in a test", one("internal/app/a_test.go", `import _ "example.org/loom"`), foreign},
	{"commands outside cli", one("internal/app/a.go", `import _ "github.com/spf13/cobra"`), "only in internal/face/cli"},
	{"TOML outside planfile", one("internal/edge/wif/a.go", `import _ "github.com/pelletier/go-toml/v2/unstable"`), "only in internal/edge/planfile"},
	{"TOML in another's test", one("internal/app/a_test.go", `import _ "github.com/pelletier/go-toml/v2"`), "only in internal/edge/planfile"},
	{"a test's module in the program", one("internal/app/a.go", `import _ "github.com/google/go-cmp/cmp"`), "for tests alone"},
	{"properties in the program", one("internal/app/a.go", `import _ "pgregory.net/rapid"`), "for tests alone"},
	{"transcripts in the program", one("internal/app/a.go", `import _ "github.com/rogpeppe/go-internal/testscript"`), "for tests alone"},
	{"a part of a module nobody reviewed", one("internal/app/a_test.go", `import _ "github.com/rogpeppe/go-internal/lockedfile"`), foreign},
	{"the clock, called", one("internal/trade/record/a.go", "import \"time\"\nvar now = time.Now()"), uses[0].reason},
	{"the clock, handed on", one("internal/engine/learn/a.go", "import \"time\"\nvar clock = time.Now"), uses[0].reason},
	{"the clock under another name", one("internal/engine/learn/a.go", "import watch \"time\"\nvar age = watch.Since(watch.Time{})"), uses[0].reason},
	{"the global source", one("internal/engine/explore/a.go", "import \"math/rand\"\nvar n = rand.Intn(6)"), uses[1].reason},
	{"the newer global source", one("internal/engine/explore/a.go", "import \"math/rand/v2\"\nvar n = rand.N(6)"), uses[1].reason},
	{"a bare length", one("internal/app/a.go", "import \"sley/internal/trade/qty\"\nvar l = qty.Length(5)"), raw.reason},
	{"a bare weight, reckoned", one("internal/engine/cloth/a.go", "import \"sley/internal/trade/qty\"\nvar m = (qty.Mass)(-(2 * 3))"), raw.reason},
	{"a bare length in a test", one("internal/app/a_test.go", "import \"sley/internal/trade/qty\"\nvar l = qty.Length(1e6)"), raw.reason},
	{"a bare length by name", map[string]string{
		"internal/app/a.go": "package p\nconst inch = 254 * tenth\nconst tenth = 100_000",
		"internal/app/b.go": "package p\nimport \"sley/internal/trade/qty\"\nvar l = qty.Length(inch)",
	}, raw.reason},
	{"names without their package", one("internal/engine/learn/a.go", `import . "time"`), dotted},
}

// sound is a house that keeps every rule, close to where each would break.
var sound = map[string]string{
	"doc.go":                           `package p`,
	"internal/trade/qty/a.go":          "package p\ntype Length int64\nconst Inch = Length(25_400_000)",
	"internal/trade/warp/a.go":         "package p\nimport (\n_ \"sley/internal/trade/yarn\"\n_ \"time\"\n)",
	"internal/trade/warp/a_test.go":    "package p\nimport (\n_ \"os\"\n_ \"sley/internal/edge/planfile\"\n_ \"pgregory.net/rapid\"\n)",
	"internal/engine/reckon/a.go":      "package p\nimport (\n_ \"sley/internal/engine/sett\"\n_ \"embed\"\n)",
	"internal/engine/explore/a.go":     "package p\nimport \"math/rand/v2\"\nvar r = rand.New(rand.NewPCG(1, 2))\nvar n = r.IntN(6)",
	"internal/engine/explore/b.go":     "package p\nimport \"time\"\nfunc f(d time.Duration) { time := clock{}; time.Now() }\ntype clock struct{}\nfunc (clock) Now() {}",
	"internal/edge/book/a.go":          "package p\nimport (\n_ \"sley/internal/edge/book/tables\"\n_ \"database/sql\"\n)",
	"internal/edge/planfile/a.go":      "package p\nimport _ \"github.com/pelletier/go-toml/v2\"",
	"internal/edge/render/svg/a.go":    "package p\nimport _ \"sley/internal/engine/draw/scene\"",
	"internal/app/a.go":                "package p\nimport (\n_ \"sley/internal/edge/book\"\n_ \"sley/internal/engine/reckon\"\n)",
	"internal/app/b.go":                "package p\nimport \"sley/internal/trade/qty\"\nvar n int64\nvar l = qty.Length(n) + qty.Length(inches*qty.Inch)\nconst inches = 3",
	"internal/face/present/a.go":       "package p\nimport _ \"sley/internal/engine/reckon\"",
	"internal/face/sheet/a.go":         "package p\nimport (\n_ \"sley/internal/engine/draw/scene\"\n_ \"sley/internal/engine/reckon\"\n_ \"sley/internal/face/present\"\n)",
	"internal/face/cli/a.go":           "package p\nimport (\n_ \"sley/internal/face/sheet\"\n_ \"sley/internal/trade/qty\"\n_ \"github.com/spf13/cobra\"\n_ \"os\"\n)",
	"internal/face/cli/script_test.go": "package p\nimport _ \"github.com/rogpeppe/go-internal/testscript\"",
	"cmd/sley/main.go":                 "package main\nimport (\n_ \"sley/internal/face/cli\"\n_ \"sley/internal/edge/planfile\"\n)",
	"tools/check/main.go":              "package main\nimport _ \"os/exec\"",
	"tools/check/testdata/a.go":        "package main\nimport _ \"sley/internal/trade/qty\"",
}

// one is a house of one file; body follows its package clause.
func one(path, body string) map[string]string {
	return map[string]string{path: "package p\n" + body}
}

func besideOf(pkg string) string { return house[height(pkg)].beside }

func judgeFixture(t *testing.T, files map[string]string) []broken {
	t.Helper()
	tree := fstest.MapFS{}
	for path, text := range files {
		tree[path] = &fstest.MapFile{Data: []byte(text)}
	}
	read, err := readTree(tree)
	if err != nil {
		t.Fatal(err)
	}
	return judge(read)
}

func TestBrokenRulesAreCaught(t *testing.T) {
	for _, b := range breaks {
		t.Run(b.name, func(t *testing.T) {
			mustBreak(t, b.files, b.reason)
		})
	}
}

// TestEveryBarHolds tries each pair of each bar, so that no entry is a slip of
// the pen.
func TestEveryBarHolds(t *testing.T) {
	for _, b := range bars {
		for _, from := range b.from {
			for _, to := range b.to {
				if isOurs(to) {
					to = "sley/" + to
				}
				mustBreak(t, one(from+"/a.go", `import _ "`+to+`"`), b.reason)
			}
		}
	}
}

func mustBreak(t *testing.T, files map[string]string, reason string) {
	t.Helper()
	found := judgeFixture(t, files)
	if !slices.ContainsFunc(found, func(v broken) bool { return strings.HasPrefix(v.reason, reason) }) {
		t.Errorf("in %v\nfound %v\nwant the reason %q", files, found, reason)
	}
}

func TestSoundHousePasses(t *testing.T) {
	for _, v := range judgeFixture(t, sound) {
		t.Error(v)
	}
}

// TestEveryRuleIsTried fails for a rule that no fixture above breaks.
func TestEveryRuleIsTried(t *testing.T) {
	for _, reason := range everyReason() {
		tried := slices.ContainsFunc(breaks, func(b breach) bool { return b.reason == reason })
		if !tried {
			t.Errorf("no fixture breaks the rule %q", reason)
		}
	}
}

func everyReason() []string {
	reasons := []string{upward, unlisted, foreign, dotted, vague.reason, raw.reason}
	for _, r := range house {
		if r.beside != allowed {
			reasons = append(reasons, r.beside)
		}
	}
	for _, b := range bars {
		reasons = append(reasons, b.reason)
	}
	for _, j := range joins {
		reasons = append(reasons, j.reason)
	}
	for _, u := range uses {
		reasons = append(reasons, u.reason)
	}
	return reasons
}

// TestRulesNameTheHouse fails for a rule about a package that the house does
// not have: it would guard nothing.
func TestRulesNameTheHouse(t *testing.T) {
	for _, name := range everyPackageNamed() {
		known := place(name) != "" || slices.ContainsFunc(house, func(r row) bool { return anyCovered(name, r.packages) })
		if !known {
			t.Errorf("a rule names %s, which is no package of the house", name)
		}
	}
}

func everyPackageNamed() []string {
	named := []string{raw.pkg}
	for _, b := range bars {
		named = append(named, slices.Concat(b.from, b.except, b.but, ofTheHouse(b.to))...)
	}
	for _, j := range joins {
		named = append(named, j.only, j.one, j.other)
	}
	for _, m := range modules {
		named = append(named, m.in...)
	}
	for _, u := range uses {
		named = append(named, u.in...)
	}
	return named
}

func ofTheHouse(paths []string) []string {
	return slices.DeleteFunc(slices.Clone(paths), func(p string) bool { return !isOurs(p) })
}

// isOurs tells folders of the house from the standard library.
func isOurs(imported string) bool { return coversAny([]string{"internal", "cmd", "tools"}, imported) }
