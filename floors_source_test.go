package sley_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
)

type (
	// use is names of a package that may not be mentioned: those in names, or,
	// when there are none, all but those in but. Versions (/v2) count with it.
	use struct {
		in         []string
		pkg        string
		names, but []string
		reason     string
	}
	// conversion is types of a package that no bare number may be turned into
	// outside it.
	conversion struct {
		pkg    string
		types  []string
		reason string
	}
	// file is one Go file of the tree.
	file struct {
		path, folder string
		test         bool
		set          *token.FileSet
		tree         *ast.File
		imports      []spec
	}
	// spec is one import: without the module's name when it is of the house.
	spec struct {
		name, path string // name is what the file calls it
		pos        token.Pos
	}
)

// readTree reads every Go file but test data and hidden folders.
func readTree(tree fs.FS) ([]file, error) {
	var files []file
	err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && name != "." && (entry.Name() == "testdata" || strings.ContainsAny(entry.Name()[:1], "._")) {
			return fs.SkipDir
		}
		if entry.IsDir() || path.Ext(name) != ".go" {
			return nil
		}
		f, err := readFile(tree, name)
		files = append(files, f)
		return err
	})
	return files, err
}

func readFile(tree fs.FS, name string) (file, error) {
	text, err := fs.ReadFile(tree, name)
	if err != nil {
		return file{}, err
	}
	f := file{path: name, folder: folderOf(name), test: strings.HasSuffix(name, "_test.go"), set: token.NewFileSet()}
	f.tree, err = parser.ParseFile(f.set, name, text, 0)
	if err != nil {
		return file{}, err
	}
	for _, imp := range f.tree.Imports {
		f.imports = append(f.imports, readSpec(imp))
	}
	return f, nil
}

func readSpec(imp *ast.ImportSpec) spec {
	full, _ := strconv.Unquote(imp.Path.Value) // the parser has read it already
	s := spec{path: strings.TrimPrefix(full, "sley/"), pos: imp.Pos()}
	s.name = path.Base(unversioned(s.path))
	if imp.Name != nil {
		s.name = imp.Name.Name
	}
	return s
}

func unversioned(imported string) string {
	return strings.TrimSuffix(imported, "/v2")
}

// at says where pos is: internal/trade/qty/qty.go:12.
func (f file) at(pos token.Pos) string {
	return fmt.Sprintf("%s:%d", f.path, f.set.Position(pos).Line)
}

// sourceFaults finds what the imports alone do not show.
func (f file) sourceFaults(all []file) []broken {
	found := f.dotImports()
	if !f.test {
		found = append(found, f.barredNames()...)
	}
	if !covers(raw.pkg, f.folder) {
		found = append(found, f.rawConversions(untypedConstants(all, f.folder))...)
	}
	return found
}

func (f file) dotImports() []broken {
	var found []broken
	for _, imp := range f.imports {
		if imp.name == "." {
			found = append(found, broken{f.at(imp.pos), "imports " + imp.path + " into its own names", dotted})
		}
	}
	return found
}

func (f file) barredNames() []broken {
	var found []broken
	for _, u := range uses {
		if !coversAny(u.in, f.folder) {
			continue
		}
		f.eachMention(u.pkg, func(sel *ast.SelectorExpr) {
			name := sel.Sel.Name
			if slices.Contains(u.names, name) || u.names == nil && !slices.Contains(u.but, name) {
				found = append(found, broken{f.at(sel.Pos()), "mentions " + u.pkg + "." + name, u.reason})
			}
		})
	}
	return found
}

// eachMention visits every name taken from a package: time.Now in a call, and
// as a value.
func (f file) eachMention(pkg string, visit func(*ast.SelectorExpr)) {
	ast.Inspect(f.tree, func(n ast.Node) bool {
		if sel, ok := n.(*ast.SelectorExpr); ok && f.packageOf(sel) == pkg {
			visit(sel)
		}
		return true
	})
}

// packageOf is the package a name is taken from, "" when it is no package's.
func (f file) packageOf(sel *ast.SelectorExpr) string {
	ident, ok := sel.X.(*ast.Ident)
	if !ok || ident.Obj != nil { // a variable of that name hides the package
		return ""
	}
	for _, imp := range f.imports {
		if imp.name == ident.Name {
			return unversioned(imp.path)
		}
	}
	return ""
}

func (f file) rawConversions(constants map[string]ast.Expr) []broken {
	var found []broken
	ast.Inspect(f.tree, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) != 1 || !untyped(call.Args[0], constants) {
			return true
		}
		sel, ok := ast.Unparen(call.Fun).(*ast.SelectorExpr)
		if ok && f.packageOf(sel) == raw.pkg && slices.Contains(raw.types, sel.Sel.Name) {
			found = append(found, broken{f.at(call.Pos()), "converts a bare number to " + sel.Sel.Name, raw.reason})
		}
		return true
	})
	return found
}

// untypedConstants are the constants of a folder that were given no type, with
// their values.
func untypedConstants(all []file, folder string) map[string]ast.Expr {
	constants := map[string]ast.Expr{}
	for _, f := range all {
		if f.folder != folder {
			continue
		}
		ast.Inspect(f.tree, func(n ast.Node) bool {
			if decl, ok := n.(*ast.GenDecl); ok && decl.Tok == token.CONST {
				gather(decl, constants)
			}
			return true
		})
	}
	return constants
}

func gather(decl *ast.GenDecl, constants map[string]ast.Expr) {
	for _, s := range decl.Specs {
		value := s.(*ast.ValueSpec)
		for i, name := range value.Names {
			if value.Type == nil && i < len(value.Values) {
				constants[name.Name] = value.Values[i]
			}
		}
	}
}

// untyped says whether an expression is a number without a type.
func untyped(e ast.Expr, constants map[string]ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return true
	case *ast.ParenExpr:
		return untyped(e.X, constants)
	case *ast.UnaryExpr:
		return untyped(e.X, constants)
	case *ast.BinaryExpr:
		return untyped(e.X, constants) && untyped(e.Y, constants)
	case *ast.Ident:
		value, known := constants[e.Name]
		return known && value != e && untyped(value, constants)
	}
	return false
}
