package sley_test

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"io/fs"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// copied are the folders whose files are by others and are noted in SHA256SUMS.
var copied = []string{"third_party/preact", "third_party/signals", "third_party/axe-core", "third_party/fonts"}

// ours are files in those folders that we wrote; they may change.
var ours = regexp.MustCompile(`^(README\.md|SHA256SUMS|.*\.go|.*\.sh|.*\.py|Sley(Sans|Serif)-OFL\.txt)$`)

// registryHost is what a note of where a package was fetched from looks like.
var registryHost = regexp.MustCompile(`"(resolved|_resolved|tarball)"|//registry\.`)

// TestCopiedFilesAreAsTheyCame: nobody has changed a file by others, and the WOFF2
// fonts were made of the TTF fonts that stand beside them.
func TestCopiedFilesAreAsTheyCame(t *testing.T) {
	for _, folder := range copied {
		for _, fault := range copyFaults(os.DirFS(folder)) {
			t.Errorf("%s: %s", folder, fault)
		}
	}
}

func copyFaults(tree fs.FS) []string {
	sums, err := readSums(tree)
	if err != nil {
		return []string{err.Error()}
	}
	var faults []string
	err = fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || ours.MatchString(path.Base(name)) {
			return err
		}
		text, err := fs.ReadFile(tree, name)
		switch sum := sha256.Sum256(text); {
		case err != nil:
			return err
		case sums[name] == "":
			faults = append(faults, name+" is not in SHA256SUMS")
		case sums[name] != hex.EncodeToString(sum[:]):
			faults = append(faults, name+" is not the file that SHA256SUMS notes: the README beside it says how to renew")
		}
		if registryHost.Match(text) {
			faults = append(faults, name+" names the host of a package registry")
		}
		delete(sums, name)
		return nil
	})
	for name := range sums {
		faults = append(faults, name+" is in SHA256SUMS and not in the folder")
	}
	if err != nil {
		faults = append(faults, err.Error())
	}
	return faults
}

// readSums reads SHA256SUMS, as sha256sum writes it: a sum, two spaces, a file.
func readSums(tree fs.FS) (map[string]string, error) {
	text, err := fs.ReadFile(tree, "SHA256SUMS")
	if err != nil {
		return nil, err
	}
	sums := map[string]string{}
	for line := range strings.Lines(string(text)) {
		sum, name, _ := strings.Cut(strings.TrimSpace(line), "  ")
		sums[name] = sum
	}
	return sums, nil
}

func TestCopyFaultsAreFound(t *testing.T) {
	sum := sha256.Sum256([]byte("as it came"))
	tree := fstest.MapFS{
		"SHA256SUMS": {Data: []byte(hex.EncodeToString(sum[:]) + "  good.js\n" + hex.EncodeToString(sum[:]) + "  bad.js\nab  gone.js\n")},
		"good.js":    {Data: []byte("as it came")},
		"bad.js":     {Data: []byte(`{"resolved": "somewhere"}`)},
		"new.js":     {},
		"README.md":  {},
	}
	got := strings.Join(copyFaults(tree), "\n")
	for _, want := range []string{"bad.js is not the file", "bad.js names the host", "new.js is not in", "gone.js is in SHA256SUMS and not"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
	if strings.Contains(got, "good.js") || strings.Contains(got, "README.md is") {
		t.Errorf("a good file is faulted:\n%s", got)
	}
}

// TestPackedFontsHaveTheTablesOfTheirs reads the heads of both forms: WOFF2 keeps
// the kind of font at byte 4 and the number of tables at byte 12, TrueType at 0 and 4
// (WOFF File Format 2.0, section 3.1; OpenType, "Organization of an OpenType font").
func TestPackedFontsHaveTheTablesOfTheirs(t *testing.T) {
	fonts, err := fs.Glob(os.DirFS("third_party/fonts"), "*.ttf")
	if err != nil || len(fonts) != 5 {
		t.Fatalf("fonts: %v, %v", fonts, err)
	}
	for _, name := range fonts {
		plain := mustRead(t, "third_party/fonts/"+name)
		packed := mustRead(t, "third_party/fonts/"+strings.TrimSuffix(name, ".ttf")+".woff2")
		if string(packed[:4]) != "wOF2" || string(packed[4:8]) != string(plain[:4]) ||
			binary.BigEndian.Uint16(packed[12:]) != binary.BigEndian.Uint16(plain[4:]) {
			t.Errorf("%s and its WOFF2 differ in kind or tables", name)
		}
	}
}

func mustRead(t *testing.T, file string) []byte {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if len(text) < 16 {
		t.Fatalf("%s has %d bytes", file, len(text))
	}
	return text
}
