package cli

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

func TestWriteWholeReplaces(t *testing.T) {
	dir := t.TempDir()
	for _, text := range []string{"first", "second"} {
		files := []File{{filepath.Join(dir, "a.png"), []byte(text)}, {filepath.Join(dir, "b.png"), []byte(text + " b")}}
		if err := WriteWhole(files); err != nil {
			t.Fatal(err)
		}
		holds(t, dir, map[string]string{"a.png": text, "b.png": text + " b"})
	}
}

// What cannot be replaced stays as it was, and nothing is left beside it.
func TestWriteWholeLeavesNothingBehind(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "folder")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole([]File{{folder, []byte("text")}}); err == nil {
		t.Error("a folder was replaced")
	}
	if err := WriteWhole([]File{{filepath.Join(dir, "nowhere", "a.pdf"), nil}}); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
	holds(t, dir, map[string]string{"folder": ""})
}

// When one of several cannot be written, none is.
func TestWriteWholeWritesAllOrNone(t *testing.T) {
	dir := t.TempDir()
	kept := filepath.Join(dir, "a.png")
	if err := os.WriteFile(kept, []byte("kept"), 0o600); err != nil {
		t.Fatal(err)
	}
	files := []File{{kept, []byte("new")}, {filepath.Join(dir, "b.png"), []byte("new")}, {filepath.Join(dir, "nowhere", "c.png"), nil}}
	if err := WriteWhole(files); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
	holds(t, dir, map[string]string{"a.png": "kept"})
}

// holds compares a folder with what it is to hold; the text of a folder is empty.
func holds(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
		text, err := os.ReadFile(filepath.Join(dir, entry.Name()))
		if !entry.IsDir() && (err != nil || string(text) != want[entry.Name()]) {
			t.Errorf("%s holds %q, %v, want %q", entry.Name(), text, err, want[entry.Name()])
		}
	}
	if len(names) != len(want) || slices.ContainsFunc(names, func(n string) bool { _, ok := want[n]; return !ok }) {
		t.Errorf("the folder has %v, want %v", names, want)
	}
}
