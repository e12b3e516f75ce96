package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// lintMod pins the tools that judge our code, apart from what sley is built of.
const lintMod = "-modfile=tools/lint.mod"

func checkVet(j *job) error {
	_, err := j.run(nil, "go", "vet", "./...")
	return err
}

func checkStatic(j *job) error {
	_, err := j.run(nil, "go", "tool", lintMod, "staticcheck", "./...")
	return err
}

func checkDead(j *job) error {
	return j.mustPrintNothing("the functions listed are reached by nothing: use them or take them out",
		"go", "tool", lintMod, "deadcode", "-test", "./...")
}

// checkTidy also proves that the modules fetched are the ones go.sum was
// written for.
func checkTidy(j *job) error {
	tidy := j.mustPrintNothing("go.mod or go.sum is out of date: run go mod tidy",
		"go", "mod", "tidy", "-diff")
	_, verify := j.run(nil, "go", "mod", "verify")
	return errors.Join(tidy, verify, checkLibc(j))
}

// The book's library and what it is translated upon, which fit one another only in the
// versions they were made for.
const (
	sqliteModule = "modernc.org/sqlite"
	libcModule   = "modernc.org/libc"
)

// checkLibc asks whether the one is in use in the version that the other was made for.
func checkLibc(j *job) error {
	used, err := j.run(nil, "go", "list", "-m", "-f", "{{.Version}}", libcModule)
	if err != nil {
		return err
	}
	file, err := j.run(nil, "go", "list", "-m", "-f", "{{.GoMod}}", sqliteModule)
	if err != nil {
		return err
	}
	text, err := os.ReadFile(strings.TrimSpace(file.out))
	if err != nil {
		return err
	}
	return libcFits(string(text), strings.TrimSpace(used.out))
}

// libcFits compares the version in use with the one in a go.mod.
func libcFits(mod, used string) error {
	for line := range strings.Lines(mod) {
		words := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "require "))
		if len(words) < 2 || words[0] != libcModule {
			continue
		}
		if words[1] != used {
			return fmt.Errorf("%s is in use in %s, and %s was made for %s: run go get %[1]s@%[4]s", libcModule, used, sqliteModule, words[1])
		}
		return nil
	}
	return fmt.Errorf("%s no longer says which %s it was made for", sqliteModule, libcModule)
}

// checkFormat asks gofmt and then gofumpt, which is stricter, for the files
// they would change.
func checkFormat(j *job) error {
	files, err := goFiles(os.DirFS(j.root))
	if err != nil {
		return err
	}
	const remedy = "not formatted: run go tool -modfile=tools/lint.mod gofumpt -w on the files listed"
	plain := j.mustPrintNothing(remedy, j.gofmt(), append([]string{"-l"}, files...)...)
	if plain != nil {
		return plain // gofumpt would list the same files again
	}
	return j.mustPrintNothing(remedy, "go", append([]string{"tool", lintMod, "gofumpt", "-l"}, files...)...)
}

// gofmt is the one that belongs to the go command in use, else the one on the
// PATH.
func (j *job) gofmt() string {
	out, err := j.command(nil, "go", "env", "GOROOT").Output()
	own := filepath.Join(strings.TrimSpace(string(out)), "bin", "gofmt")
	if _, missing := os.Stat(own); err == nil && missing == nil {
		return own
	}
	return "gofmt"
}

// goFiles lists the Go files of the tree, without test data, hidden folders and
// the folders that .gitignore names.
func goFiles(tree fs.FS) ([]string, error) {
	var files []string
	err := fs.WalkDir(tree, ".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && path != "." && notOurs(entry.Name()) {
			return fs.SkipDir
		}
		if !entry.IsDir() && strings.HasSuffix(path, ".go") {
			files = append(files, filepath.FromSlash(path))
		}
		return nil
	})
	return files, err
}

func notOurs(folder string) bool {
	switch folder {
	case "testdata", "dist", "cover", "node_modules":
		return true
	}
	return strings.HasPrefix(folder, ".") || strings.HasPrefix(folder, "_")
}
