package main

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// house is the project's root, from this folder.
const house = "../.."

// TestBundleIsTheSameAnywhere makes the page from a copy of the sources in another
// folder: no path of the machine and no order of chance may come into it.
func TestBundleIsTheSameAnywhere(t *testing.T) {
	root, err := filepath.Abs(house)
	if err != nil {
		t.Fatal(err)
	}
	first, err := bundlePage(root)
	if err != nil {
		t.Fatal(err)
	}
	second, err := bundlePage(copyOfSources(t))
	if err != nil {
		t.Fatal(err)
	}
	if !maps.EqualFunc(first, second, bytes.Equal) {
		t.Errorf("made %q, and elsewhere %q", slices.Sorted(maps.Keys(first)), slices.Sorted(maps.Keys(second)))
	}
	for name, content := range first {
		if bytes.Contains(content, []byte(root)) {
			t.Errorf("%s names a folder of this machine", name)
		}
	}
}

// copyOfSources is a folder with all that a bundle is made of.
func copyOfSources(t *testing.T) string {
	t.Helper()
	elsewhere := filepath.Join(t.TempDir(), "another", "place")
	for _, part := range []string{sources, "third_party"} {
		if err := os.CopyFS(filepath.Join(elsewhere, part), os.DirFS(filepath.Join(house, part))); err != nil {
			t.Fatal(err)
		}
	}
	for _, file := range []string{"go.mod", "go.sum", "tools/bundle.mod", "tools/bundle.sum"} {
		text, err := os.ReadFile(filepath.Join(house, file))
		if err == nil {
			err = os.MkdirAll(filepath.Join(elsewhere, filepath.Dir(file)), 0o755)
		}
		if err == nil {
			err = os.WriteFile(filepath.Join(elsewhere, file), text, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return elsewhere
}

// TestNamesFollowContent: a changed source has another address, so that no browser
// shows the old one.
func TestNamesFollowContent(t *testing.T) {
	root := copyOfSources(t)
	before, err := bundlePage(root)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(root, sources, "words", "en.ts")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, bytes.ReplaceAll(text, []byte("Warps in hand"), []byte("Warps to come")), 0o644); err != nil {
		t.Fatal(err)
	}
	after, err := bundlePage(root)
	if err != nil {
		t.Fatal(err)
	}
	changed := 0
	for name, content := range after {
		if old, same := before[name]; same && !slices.Contains(pages, name) && !bytes.Equal(old, content) {
			t.Errorf("%s has another content under the same name", name)
		} else if !same {
			changed++
		}
	}
	if changed != 2 { // the script of the page, and that of a device
		t.Errorf("%d names changed for one file of words", changed)
	}
}

func TestBundlerIsNotContentWithAFault(t *testing.T) {
	root := copyOfSources(t)
	if err := os.WriteFile(filepath.Join(root, sources, "main.tsx"), []byte("import './nowhere'\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := bundlePage(root); err == nil || !strings.Contains(err.Error(), "nowhere") {
		t.Errorf("said %v", err)
	}
}

func TestReplaceAndCompare(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "static")
	made := files{"a-1.js": []byte("new"), "b-1.css": []byte("same")}
	if err := compare(dir, made); err == nil || !strings.Contains(err.Error(), "a-1.js is missing, b-1.css is missing") {
		t.Errorf("an empty folder: %v", err)
	}
	if err := replace(dir, files{"a-1.js": []byte("old"), "b-1.css": []byte("same"), "c-1.js": nil}); err != nil {
		t.Fatal(err)
	}
	if err := compare(dir, made); err == nil || !strings.Contains(err.Error(), "a-1.js differs, c-1.js is left over; run go run ./tools/bundle") {
		t.Errorf("an old folder: %v", err)
	}
	if err := replace(dir, made); err != nil {
		t.Fatal(err)
	}
	if err := compare(dir, made); err != nil {
		t.Errorf("after writing: %v", err)
	}
}

func TestFilled(t *testing.T) {
	made := files{"main-ABCD2345.js": nil, "SleySans-Regular-ABCD2345.woff2": nil}
	got, err := filled("index.html", []byte("{{main.js}} {{SleySans-Regular.woff2}}"), made)
	if err != nil || string(got) != "main-ABCD2345.js SleySans-Regular-ABCD2345.woff2" {
		t.Errorf("%q, %v", got, err)
	}
	if _, err := filled("index.html", []byte("{{gone.js}} {{gone.css}}"), made); err == nil || !strings.Contains(err.Error(), "gone.js, gone.css") {
		t.Errorf("%v", err)
	}
}

// TestLicencesSayTheVersions that stand in the folders of the libraries.
func TestLicencesSayTheVersions(t *testing.T) {
	text, err := licences(house)
	if err != nil {
		t.Fatal(err)
	}
	for folder, says := range map[string]string{"preact": "# Preact 11.2.0\n", "signals": "# Preact Signals 2.11.4, with signals-core 1.14.5\n"} {
		readme, err := os.ReadFile(filepath.Join(house, "third_party", folder, "README.md"))
		if err != nil || !strings.HasPrefix(string(readme), says) {
			t.Errorf("%s: %v", folder, err)
		}
	}
	for _, wanted := range []string{"Preact 11.2.0", "Signals 2.11.4", "Core 1.14.5", "MIT License", "SIL OPEN FONT LICENSE"} {
		if !bytes.Contains(text, []byte(wanted)) {
			t.Errorf("%q is missing", wanted)
		}
	}
}

func TestCommandLine(t *testing.T) {
	var errs bytes.Buffer
	if code := run([]string{"-loud"}, &errs); code != 2 || !strings.Contains(errs.String(), "-loud") {
		t.Errorf("code %d, said %q", code, &errs)
	}
	if code := run([]string{"everything"}, &errs); code != 2 {
		t.Errorf("code %d for a word", code)
	}
	t.Chdir(os.TempDir())
	errs.Reset()
	if code := run([]string{"-check"}, &errs); code != 1 || !strings.Contains(errs.String(), "no go.mod here or above") {
		t.Errorf("code %d, said %q", code, &errs)
	}
}

// On a new machine go says what it fetches; what esbuild says beside that counts.
func TestFetchingIsNoFault(t *testing.T) {
	const said = "go: downloading github.com/evanw/esbuild v0.28.2\nwarning: something\ngo: downloading golang.org/x/sys v0.49.0\n"
	if got := withoutFetching(said); got != "warning: something\n" {
		t.Errorf("kept %q", got)
	}
}
