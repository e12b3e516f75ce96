package sley_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sley/internal/face/cli"
	"sley/internal/face/sheet"
	"sley/internal/face/web"
)

// action is one thing that a person can do.
type action struct {
	does    string // Function, or Type.Method, of internal/app
	command string // as typed behind sley
	route   string // METHOD /path
	sheet   string
	manual  string // file, or file#heading
	because string // why it has no command, or no entry of the manual
}

// TestEveryActionIsDoneSomewhere: whatever app can do, a person can do by a command that
// exists, and read of in the manual; what has none of both says why.
func TestEveryActionIsDoneSomewhere(t *testing.T) {
	listed := map[string]bool{}
	for _, a := range actions {
		if listed[a.does] {
			t.Errorf("%s is listed twice", a.does)
		}
		listed[a.does] = true
		for _, wrong := range a.faults() {
			t.Errorf("%s: %s", a.does, wrong)
		}
	}
	all := actionsOf(t)
	for _, does := range all {
		if !listed[does] {
			t.Errorf("%s is not in actions: say by which command it is done, or why by none", does)
		}
		delete(listed, does)
	}
	for does := range listed {
		t.Errorf("%s is in actions, and app has no such thing", does)
	}
	if len(all) < 60 {
		t.Errorf("only %d actions were found", len(all))
	}
}

// faults says what is wrong with an action's entry.
func (a action) faults() []string {
	var out []string
	for _, said := range []struct {
		is   bool
		text string
	}{
		{a.command != "" && !slices.Contains(cli.Commands(), a.command), "there is no command sley " + a.command},
		{a.command == "" && a.route == "" && a.because == "", "it has neither command nor route, and does not say why"},
		{a.command == "" && a.manual == "" && a.because == "", "it has no command, and does not say why"},
		{a.command != "" && a.manual == "", "the manual does not tell of it"},
		{a.command != "" && a.because != "", "it has a command, and says why it has none"},
		{a.route != "" && !slices.Contains(web.Routes(), a.route), "there is no route " + a.route},
		{a.sheet != "" && !slices.Contains(sheet.Names(), a.sheet), "there is no sheet " + a.sheet},
		{a.manual != "" && !inManual(a.manual), "there is no " + a.manual},
	} {
		if said.is {
			out = append(out, said.text)
		}
	}
	return out
}

// inManual reports whether a page has a heading, or is there where none is named.
func inManual(entry string) bool {
	file, heading, named := strings.Cut(entry, "#")
	text, err := os.ReadFile(filepath.FromSlash(file))
	return err == nil && (!named || hasAnchor(string(text), heading))
}

// actionsOf lists the exported functions of app, and the exported methods of its exported
// types.
func actionsOf(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("internal/app/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("internal/app cannot be read", err)
	}
	var out []string
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Name.IsExported() {
				out = appendAction(out, f)
			}
		}
	}
	return out
}

// appendAction adds a function by its name, a method with its type before it.
func appendAction(out []string, f *ast.FuncDecl) []string {
	if f.Recv == nil {
		return append(out, f.Name.Name)
	}
	on := f.Recv.List[0].Type
	if star, ok := on.(*ast.StarExpr); ok {
		on = star.X
	}
	if id, ok := on.(*ast.Ident); ok && id.IsExported() {
		return append(out, id.Name+"."+f.Name.Name)
	}
	return out
}

// TestFaultsOfActionsAreFound proves that each fault of an entry is seen.
func TestFaultsOfActionsAreFound(t *testing.T) {
	for want, a := range map[string]action{
		"there is no command sley book dye":                      {command: "book dye", manual: "README.md"},
		"it has neither command nor route, and does not say why": {},
		"the manual does not tell of it":                         {command: "book list"},
		"it has a command, and says why it has none":             {command: "book list", manual: "README.md", because: "none"},
		"there is no route PATCH /api/warps":                     {route: "PATCH /api/warps", because: "none"},
		"there is no sheet dyeing":                               {sheet: "dyeing", because: "none"},
		"there is no docs/book.md#no-such-heading":               {command: "book list", manual: "docs/book.md#no-such-heading"},
		"there is no docs/no-such-page.md":                       {command: "book list", manual: "docs/no-such-page.md"},
		"it has no command, and does not say why":                {route: "GET /api/warps"},
	} {
		if !slices.Contains(a.faults(), want) {
			t.Errorf("%+v: %q, want %q", a, a.faults(), want)
		}
	}
	if a := (action{command: "book list", route: "GET /api/warps", sheet: "glance", manual: "docs/book.md#looking"}); len(a.faults()) > 0 {
		t.Errorf("nothing is wrong with %+v: %q", a, a.faults())
	}
}
