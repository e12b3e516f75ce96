package sley_test

import (
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// TestDocsLinks follows every relative link of README.md and of the papers in
// docs, to a file of the tree and to the heading it names.
func TestDocsLinks(t *testing.T) {
	tree := os.DirFS(".")
	pages, err := papers(tree)
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range pages {
		for _, problem := range deadLinks(tree, page) {
			t.Error(problem)
		}
	}
}

// papers are README.md, which must be there, and every page beneath docs.
func papers(tree fs.FS) ([]string, error) {
	pages := []string{"README.md"}
	if _, err := fs.Stat(tree, "docs"); err != nil {
		return pages, nil
	}
	err := fs.WalkDir(tree, "docs", func(name string, _ fs.DirEntry, err error) error {
		if path.Ext(name) == ".md" {
			pages = append(pages, name)
		}
		return err
	})
	return pages, err
}

var (
	// A link is [text](target), [name]: target, or src="target"; a title may follow.
	linkForms = regexp.MustCompile(`\]\(\s*<?([^)\s>]+)|(?m:^ {0,3}\[[^\]]+\]:\s*<?([^\s>]+))|(?:src|href)="([^"]+)"`)
	// Code shows text; it does not link, and has no headings.
	codeFences = regexp.MustCompile("(?ms:^ {0,3}```.*?^ {0,3}```\\s*?$)")
	codeWords  = regexp.MustCompile("`[^`\n]+`")
	headings   = regexp.MustCompile(`(?m)^#{1,6}\s+(.+?)\s*#*\s*$`)
	unsaid     = regexp.MustCompile(`[^\p{L}\p{N}\- _]`)
)

// deadLinks says what is wrong with the links of a page, one line for each.
func deadLinks(tree fs.FS, page string) []string {
	text, err := fs.ReadFile(tree, page)
	if err != nil {
		return []string{err.Error()}
	}
	prose := codeWords.ReplaceAllString(codeFences.ReplaceAllString(string(text), ""), "")
	var dead []string
	for _, m := range linkForms.FindAllStringSubmatch(prose, -1) {
		target := m[1] + m[2] + m[3]
		if why := deadLink(tree, page, target); why != "" {
			dead = append(dead, fmt.Sprintf("%s links to %s: %s", page, target, why))
		}
	}
	return dead
}

// deadLink returns why a link leads nowhere, "" when it leads somewhere or out
// to the network.
func deadLink(tree fs.FS, page, target string) string {
	to, err := url.Parse(target)
	switch {
	case err != nil:
		return err.Error()
	case to.Scheme != "" || to.Host != "":
		return ""
	case strings.HasPrefix(to.Path, "/"):
		return "begins with /, which is another place on every machine"
	}
	name := page
	if to.Path != "" {
		name = path.Join(path.Dir(page), to.Path)
	}
	text, err := readPage(tree, name)
	if err != nil {
		return "there is no " + name
	}
	if to.Fragment != "" && path.Ext(name) == ".md" && !hasAnchor(text, to.Fragment) {
		return "that page has no such heading"
	}
	return ""
}

// readPage reads a file; a folder is there when it can be looked into.
func readPage(tree fs.FS, name string) (string, error) {
	info, err := fs.Stat(tree, name)
	if err != nil || info.IsDir() {
		return "", err
	}
	text, err := fs.ReadFile(tree, name)
	return string(text), err
}

// hasAnchor looks for a heading by the name that code hosts give it: small
// letters, spaces as hyphens, no other signs.
func hasAnchor(text, anchor string) bool {
	for _, m := range headings.FindAllStringSubmatch(codeFences.ReplaceAllString(text, ""), -1) {
		if strings.ReplaceAll(unsaid.ReplaceAllString(strings.ToLower(m[1]), ""), " ", "-") == anchor {
			return true
		}
	}
	return false
}

func TestDeadLinksAreFound(t *testing.T) {
	tree := fstest.MapFS{
		"README.md":       {Data: []byte(page)},
		"docs/plan.md":    {Data: []byte("# The `sley` plan file, v1\n\nback to [start](../README.md#sley)\n")},
		"docs/towel.png":  {},
		"testdata/a.toml": {},
	}
	want := []string{
		"README.md links to docs/plan.md#nowhere: that page has no such heading",
		"README.md links to docs/gone.md: there is no docs/gone.md",
		"README.md links to /docs/plan.md: begins with /, which is another place on every machine",
		"README.md links to docs/missing.png: there is no docs/missing.png",
		"README.md links to lost.md: there is no lost.md",
	}
	got := deadLinks(tree, "README.md")
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := deadLinks(tree, "docs/plan.md"); got != nil {
		t.Errorf("docs/plan.md: %v", got)
	}
}

const page = "# sley\n" + `
[a plan](docs/plan.md#the-sley-plan-file-v1), [data](testdata "a folder"), [web](https://example.org/x)
[here](#sley) [not there](docs/plan.md#nowhere) [gone](docs/gone.md) [root](/docs/plan.md)
![towel](docs/towel.png) <img src="docs/missing.png"> [named][1]

[1]: lost.md

` + "`[code](none.md)`\n```\n[fenced](none.md)\n```\n"
