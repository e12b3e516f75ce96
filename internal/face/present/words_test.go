package present

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// codeShape is what every code looks like.
var codeShape = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*\.[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// documented finds the codes that a doc comment lists, one to an indented line:
// some are put together from two parts, so that no literal holds them.
var documented = regexp.MustCompile(`(?m)^//\t([a-z-]+\.[a-z-]+)\s{1,}\S`)

// notCodes are the literals of the shape of a code that are none: paths of a
// plan, and the names of rules.
var notCodes = []string{
	"warp.sett", "warp.wound", "built.wound", "book.sley",
	"wraps.loose", "wraps.touching", "wraps.packed", "wraps.diameter", "wraps.plain", "wraps.twill", "wraps.closest",
}

// codesOfSources collects the codes in the sources of the floors trade and
// edge, and those the engine hands to a list of problems.
func codesOfSources(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, floor := range []string{"trade", "edge", "engine", "app"} {
		err := filepath.WalkDir("../../"+floor, func(path string, entry fs.DirEntry, err error) error {
			if err == nil && isSource(entry) {
				codesOfFile(t, found, path, floor)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, none := range notCodes {
		if _, ok := found[none]; !ok {
			t.Errorf("%q stands nowhere any more: take it from the list", none)
		}
		delete(found, none)
	}
	return found
}

func isSource(entry fs.DirEntry) bool {
	name := entry.Name()
	return strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") &&
		!strings.HasSuffix(name, "_table.go") && name != "schema.go"
}

func codesOfFile(t *testing.T, found map[string]string, path, floor string) {
	callsOnly := floor == "engine" || floor == "app"
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
	if err != nil {
		t.Skipf("%s cannot be read just now: %v", path, err)
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.CallExpr:
			if callsOnly && reports(n) {
				note(found, n.Args[0], path)
			}
		case *ast.ReturnStmt: // of what app tells its caller to report
			for _, result := range n.Results {
				if floor == "app" {
					note(found, result, path)
				}
			}
		case *ast.BasicLit:
			if !callsOnly {
				note(found, n, path)
			}
		}
		return true
	})
	for _, group := range file.Comments {
		for _, m := range documented.FindAllStringSubmatch(raw(group), -1) {
			if !callsOnly {
				found[m[1]] = path
			}
		}
	}
}

// reports tells the calls that add a problem to a list.
func reports(call *ast.CallExpr) bool {
	sel, ok := call.Fun.(*ast.SelectorExpr)
	names := []string{"fail", "warn", "tell"}
	return ok && len(call.Args) > 1 && slices.Contains(names, strings.ToLower(sel.Sel.Name))
}

func note(found map[string]string, n ast.Node, path string) {
	lit, ok := n.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return
	}
	if text, err := strconv.Unquote(lit.Value); err == nil && codeShape.MatchString(text) {
		found[text] = path
	}
}

func raw(group *ast.CommentGroup) string {
	var lines []string
	for _, c := range group.List {
		lines = append(lines, c.Text)
	}
	return strings.Join(lines, "\n")
}

// TestEveryCodeHasWords: nobody ever reads a bare code.
func TestEveryCodeHasWords(t *testing.T) {
	codes := codesOfSources(t)
	if len(codes) < 150 {
		t.Fatalf("only %d codes were found in the sources", len(codes))
	}
	for _, code := range slices.Sorted(maps.Keys(codes)) {
		if _, trouble := troubleWords[code]; wordsFor(code).wrong == code && !trouble {
			t.Errorf("%s, in %s, has no words", code, codes[code])
		}
	}
}

// TestNoWordsAreLeftOver finds words whose code no source has any more.
func TestNoWordsAreLeftOver(t *testing.T) {
	codes := codesOfSources(t)
	for _, code := range slices.Concat(InputCodes(), ActionCodes()) {
		if _, ok := codes[code]; !ok {
			t.Errorf("%s has words, but nothing reports it", code)
		}
	}
}

// TestWordsOnce: two tables must not differ about one code.
func TestWordsOnce(t *testing.T) {
	if codes := Codes(); len(slices.Compact(slices.Clone(codes))) != len(codes) {
		t.Error("a code has words in two tables")
	}
}

// TestWordsAreWell holds the words to the grammar of messages: lower case, no
// full stop, no shouting, something to do.
func TestWordsAreWell(t *testing.T) {
	for _, code := range Codes() {
		w := wordsFor(code)
		for _, text := range []string{w.wrong, w.why, w.fix} {
			if strings.HasSuffix(text, ".") || strings.Contains(text, "!") || text != strings.TrimSpace(text) {
				t.Errorf("%s: %q", code, text)
			}
			if text != "" && strings.ToLower(text[:1]) != text[:1] {
				t.Errorf("%s begins with a capital: %q", code, text)
			}
		}
		if w.wrong == "" || w.fix == "" {
			t.Errorf("%s does not say what is wrong, or not what to do", code)
		}
	}
}
