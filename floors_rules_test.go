package sley_test

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

type (
	// row is packages that stand on one height. beside is why they may not
	// import one another; a row of one package has nothing to say.
	row struct {
		packages []string
		beside   string
	}
	// bar stops packages from importing others; except and but are let through.
	bar struct {
		from, except, to, but []string
		reason                string
	}
	// join is two packages that only one may import together.
	join struct{ only, one, other, reason string }
	// names are folder names nobody may use.
	names struct {
		of     []string
		reason string
	}
	// module is a third-party module, who may import it and what it is for.
	module struct {
		path    string
		in      []string
		purpose string
	}
)

// allowed, as a row's beside, lets its packages import one another; Go itself
// refuses circles.
const allowed = ""

// broken is a rule broken at a place.
type broken struct{ at, what, reason string }

func (b broken) String() string { return fmt.Sprintf("%s %s: %s", b.at, b.what, b.reason) }

// judge holds every file against the whole policy.
func judge(files []file) []broken {
	var found []broken
	for _, f := range files {
		found = append(found, judgeFolder(f)...)
		found = append(found, f.sourceFaults(files)...)
		for _, imp := range f.imports {
			found = append(found, judgeImport(f, imp)...)
		}
	}
	return append(found, judgeJoins(files)...)
}

func judgeFolder(f file) []broken {
	var found []broken
	for _, part := range strings.Split(f.folder, "/") {
		if slices.Contains(vague.of, part) {
			found = append(found, broken{f.path, "is in a folder named " + part, vague.reason})
		}
	}
	if f.folder != "." && height(f.folder) < 0 {
		found = append(found, broken{f.path, "is in no package of the house", unlisted})
	}
	return found
}

// judgeImport lets tests import what they need, except modules nobody reviewed.
func judgeImport(f file, imp spec) []broken {
	var reasons []string
	if isForeign(imp.path) {
		reasons = append(reasons, judgeModule(f, imp.path)...)
	}
	if !f.test {
		reasons = append(reasons, judgeHeight(f.folder, imp.path)...)
		reasons = append(reasons, judgeBars(f.folder, imp.path)...)
	}
	var found []broken
	for _, reason := range reasons {
		found = append(found, broken{f.at(imp.pos), "imports " + imp.path, reason})
	}
	return found
}

// isForeign tells third-party modules, whose path begins with a host, from the
// standard library and the house.
func isForeign(imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	return strings.Contains(first, ".")
}

func judgeModule(f file, imported string) []string {
	for _, m := range modules {
		if !covers(m.path, imported) {
			continue
		}
		if f.test && m.in == nil || coversAny(m.in, f.folder) {
			return nil
		}
		if m.in == nil {
			return []string{"for tests alone: " + m.purpose}
		}
		return []string{"only in " + strings.Join(m.in, ", ") + ": " + m.purpose}
	}
	return []string{foreign}
}

func judgeHeight(from, to string) []string {
	lower, upper := height(to), height(from)
	switch {
	case lower < 0 || upper < 0 || place(from) == place(to):
		return nil
	case lower > upper:
		return []string{upward}
	case lower == upper && house[upper].beside != allowed:
		return []string{house[upper].beside}
	}
	return nil
}

func judgeBars(from, to string) []string {
	var reasons []string
	for _, b := range bars {
		who := coversAny(b.from, from) && !coversAny(b.except, from)
		whom := coversAny(b.to, to) && !coversAny(b.but, to)
		if who && whom {
			reasons = append(reasons, b.reason)
		}
	}
	return reasons
}

// judgeJoins looks at packages whole: each file alone may be innocent.
func judgeJoins(files []file) []broken {
	imported := map[string][]string{}
	for _, f := range files {
		for _, imp := range f.imports {
			if !f.test {
				imported[f.folder] = append(imported[f.folder], imp.path)
			}
		}
	}
	var found []broken
	for folder, paths := range imported {
		for _, j := range joins {
			if folder != j.only && anyCovered(j.one, paths) && anyCovered(j.other, paths) {
				found = append(found, broken{folder, "imports both " + j.one + " and " + j.other, j.reason})
			}
		}
	}
	slices.SortFunc(found, func(a, b broken) int { return strings.Compare(a.at, b.at) })
	return found
}

// place is the package of the house that a folder belongs to, "" for none.
func place(folder string) string {
	for _, r := range house {
		for _, p := range r.packages {
			if covers(p, folder) {
				return p
			}
		}
	}
	return ""
}

// height is the row a folder stands on, -1 for none.
func height(folder string) int {
	return slices.IndexFunc(house, func(r row) bool { return coversAny(r.packages, folder) })
}

// covers says whether p is the package or lies beneath it.
func covers(pkg, p string) bool { return p == pkg || strings.HasPrefix(p, pkg+"/") }

func coversAny(pkgs []string, p string) bool {
	return slices.ContainsFunc(pkgs, func(pkg string) bool { return covers(pkg, p) })
}

func anyCovered(pkg string, paths []string) bool {
	return slices.ContainsFunc(paths, func(p string) bool { return covers(pkg, p) })
}

// folderOf is the folder of a file, with "." for the root.
func folderOf(file string) string { return path.Dir(file) }
