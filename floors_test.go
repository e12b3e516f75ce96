package sley_test

import (
	"os"
	"testing"
)

// This file is the policy of the house, as data: who may import whom, and why
// not. It is a statement of intent. When a change breaks a rule, the change is
// wrong or the rule is, and changing the rule is a decision to write down in
// docs/decisions.md, never a way to get a build through.

// house is every package, from the ground up. A package imports rows below its
// own and itself; what lies beneath a package (draw/scene beneath draw) belongs
// to it. Tests may look where they like.
var house = []row{
	{packages: []string{"third_party/fonts"}},    // letters as bytes: beneath all that draws
	{packages: []string{"third_party/axe-core"}}, // what tests ask about a page
	{packages: []string{"internal/trade/near"}},
	{
		packages: []string{"internal/trade/qty", "internal/trade/problem"},
		beside:   "quantities and problems are the ground: neither needs the other to be understood",
	},
	{
		packages: []string{"internal/trade/order", "internal/trade/yarn", "internal/trade/loom"},
		beside:   "orders, yarns and looms are facts of their own; a noun that needs two of them stands above both",
	},
	{packages: []string{"internal/trade/weave"}},
	{packages: []string{"internal/trade/draft"}},
	{packages: []string{"internal/trade/warp"}},
	{packages: []string{"internal/trade/record"}},
	{
		packages: []string{
			"internal/engine/defaults", "internal/engine/sett", "internal/engine/reckon",
			"internal/engine/structure", "internal/engine/catalogue", "internal/engine/dress",
			"internal/engine/cloth", "internal/engine/explore", "internal/engine/tieup",
			"internal/engine/fault", "internal/engine/learn", "internal/engine/draw",
			"internal/engine/strokes", "internal/engine/review", "internal/engine/loomside",
			"internal/engine/content", "internal/engine/finishing",
		},
		beside: allowed,
	},
	{
		packages: []string{
			"internal/edge/planfile", "internal/edge/wif", "internal/edge/book", "internal/edge/photo",
			"internal/edge/render/svg", "internal/edge/render/pdf", "internal/edge/render/png",
		},
		beside: "a file format must not depend on the book, nor on another format",
	},
	{packages: []string{"internal/app"}},
	{packages: []string{"internal/face/present"}},
	{packages: []string{"internal/face/sheet"}},
	{
		packages: []string{"internal/face/cli", "internal/face/web"},
		beside:   "the command line and the page stand side by side: what they share is in app, present or sheet",
	},
	{packages: []string{"examples"}},
	{
		packages: []string{"cmd/sley", "tools"},
		beside:   "programs do not import one another",
	},
}

// upward is why no row imports one above it.
const upward = "imports go down only, so that a floor can be read and tested without those above it"

// unlisted is why a package that is not in the house is an error.
const unlisted = "every package has its place: add it to house in floors_test.go, on the floor it stands on"

// bars are imports that the floors alone would let through.
var bars = []bar{
	{
		from: []string{"internal/trade", "internal/engine"},
		to: []string{
			"os", "io/fs", "io/ioutil", "net", "database/sql", "log", "html",
			"syscall", "crypto/rand", "plugin",
		},
		reason: "same input must give the same answer on every machine",
	},
	{
		from:   []string{"internal/engine"},
		to:     []string{"internal/edge"},
		reason: "an engine is a function of what it is given: one that reads a file or the book cannot be repeated",
	},
	{
		from:   []string{"internal/face"},
		except: []string{"internal/face/present", "internal/face/sheet"},
		to:     []string{"internal/engine", "internal/edge"},
		reason: "a face asks app, which hands it the results: so the command line, the page and the paper cannot disagree",
	},
	{
		from: []string{"internal/face/present"},
		to:   []string{"internal/engine", "internal/edge"},
		but: []string{
			"internal/engine/reckon", "internal/engine/structure", "internal/engine/review",
			"internal/engine/loomside", "internal/engine/tieup", "internal/engine/content", "internal/engine/finishing",
		},
		reason: "present words what app hands it; of the engines it knows the reckoning, the structure, the review, the steps at the loom, the tie-up, the content and the finishing, because it words their nodes, findings and steps",
	},
	{
		from:   []string{"cmd/sley"},
		to:     []string{"internal/trade", "internal/engine"},
		reason: "cmd/sley wires app, faces and edges together and holds no logic",
	},
	{
		from:   []string{"tools/check"},
		to:     []string{"internal", "cmd"},
		reason: "a check that needs the house to compile cannot say why it does not",
	},
	{
		from:   []string{"internal", "cmd", "tools"},
		to:     []string{"C"},
		reason: "one static file for every system: no C, which would need a compiler for each",
	},
	{
		from:   []string{"internal/face/sheet"},
		to:     []string{"internal/engine", "internal/edge"},
		but:    []string{"internal/engine/reckon", "internal/engine/draw", "internal/engine/dress", "internal/engine/tieup"},
		reason: "a sheet lays out what app reckoned: it reads the nodes, draws scenes, boards as dress says them, and feet as tieup does; app alone makes files of them",
	},
	{
		from:   []string{"internal", "cmd", "tools", "examples"},
		except: []string{"internal/face/web/browsing"},
		to:     []string{"internal/face/web/browsing", "third_party/axe-core"},
		reason: "what drives a browser is for tests alone: sley carries none of it",
	},
	{
		from:   []string{"tools/bundle"},
		to:     []string{"internal", "cmd"},
		reason: "the page is made before the house is built, which has the page in it",
	},
}

// joins are pairs that only one package may bring together.
var joins = []join{{
	only:   "internal/app",
	one:    "internal/engine",
	other:  "internal/edge/book",
	reason: "only app joins the book and the engines, so that every action is defined in one place",
}}

// vague are names that say nothing of what a package holds.
var vague = names{
	of:     []string{"util", "utils", "common", "helper", "helpers", "types", "misc"},
	reason: "a package is named by what it holds",
}

// modules are the third-party modules and who may import them; everything else
// is the standard library. A module with no package is for tests alone.
var modules = []module{
	{"github.com/spf13/cobra", []string{"internal/face/cli"}, "commands, their help and completion"},
	{"github.com/pelletier/go-toml/v2", []string{"internal/edge/planfile"}, "the plan file is TOML, read strictly"},
	{"codeberg.org/go-pdf/fpdf", []string{"internal/edge/render/pdf"}, "it panics on letters it does not know: behind our own scene it meets none"},
	{"golang.org/x/image", []string{"internal/engine/draw/letter", "internal/edge/render/png", "internal/edge/photo", "tools/contact"}, "letters are read and filled there; all others ask package letter, but what reads photographs, and a tool that lays screen pictures on sheets"},
	{"golang.org/x/text", []string{"internal/engine/draw/letter", "internal/edge/book/words", "internal/app"}, "accents are joined and taken apart where letters are chosen and where words are searched for; lists are in the order of names"},
	{"modernc.org/sqlite", []string{"internal/edge/book"}, "the book is one SQLite file, without C"},
	{"github.com/klauspost/compress", []string{"internal/edge/book"}, "versions are pressed against one another"},
	{"golang.org/x/sys", []string{"internal/edge/book"}, "the lock of a book is the system's own, which ends with its process"},
	{"rsc.io/qr", []string{"internal/face/web"}, "it knows which dots of the square that phones read are dark; the drawing is ours"},
	{"github.com/chromedp/chromedp", []string{"internal/face/web/browsing"}, "tests drive Chromium through it, in that package's words"},
	{"github.com/chromedp/cdproto", []string{"internal/face/web/browsing"}, "the words chromedp speaks to Chromium with"},
	{"github.com/google/go-cmp", nil, "differences of values in tests"},
	{"pgregory.net/rapid", nil, "properties in tests"},
	{"github.com/rogpeppe/go-internal/testscript", nil, "commands as transcripts in tests"},
	{"gonum.org/v1/gonum", nil, "a second opinion in tests: strong components of which thread lies on which"},
}

// foreign is why a module that is not in the table is an error.
const foreign = "a new dependency is a reviewed line: add it to modules in floors_test.go, with who may import it and why"

// uses are names of the standard library that may not be mentioned.
var uses = []use{
	{
		in:  []string{"internal/trade", "internal/engine"},
		pkg: "time",
		names: []string{
			"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker",
		},
		reason: "the clock is handed to app by cmd/sley: below it, the same input gives the same answer tomorrow",
	},
	{
		in:  []string{"internal/trade", "internal/engine"},
		pkg: "math/rand",
		but: []string{
			"New", "NewSource", "NewZipf", "NewPCG", "NewChaCha8",
			"Rand", "Source", "Source64", "Zipf", "PCG", "ChaCha8",
		},
		reason: "a search is seeded by who asks for it: the global source gives another answer each time",
	},
}

// raw is a conversion that gives a bare number a unit nobody sees.
var raw = conversion{
	pkg:    "internal/trade/qty",
	types:  []string{"Length", "Mass"},
	reason: "a bare 5 would be 5 nm or 5 ng: write 5*qty.Millimetre, or parse what the weaver wrote",
}

// dotted is why nothing is imported into a file's own names.
const dotted = "a reader must see where a name comes from"

func TestFloors(t *testing.T) {
	files, err := readTree(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 10 {
		t.Fatalf("only %d Go files found: the check does not see the house", len(files))
	}
	for _, v := range judge(files) {
		t.Error(v)
	}
}
