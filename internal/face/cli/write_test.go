package cli

import (
	"os"
	"path/filepath"
	"testing"
)

func TestWriteWholeReplaces(t *testing.T) {
	name := filepath.Join(t.TempDir(), "a.pdf")
	for _, text := range []string{"first", "second"} {
		if err := WriteWhole(name, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(name); err != nil || string(got) != text {
			t.Errorf("got %q, %v, want %q", got, err, text)
		}
	}
	alone(t, filepath.Dir(name), "a.pdf")
}

// What cannot be replaced stays as it was, and nothing is left beside it.
func TestWriteWholeLeavesNothingBehind(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "folder")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := WriteWhole(folder, []byte("text")); err == nil {
		t.Error("a folder was replaced")
	}
	if err := WriteWhole(filepath.Join(dir, "nowhere", "a.pdf"), nil); err == nil {
		t.Error("a file was written into a folder that is not there")
	}
	alone(t, dir, "folder")
}

// alone holds a folder to one entry.
func alone(t *testing.T, dir, name string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 || entries[0].Name() != name {
		t.Errorf("got %v, %v, want %s alone", entries, err, name)
	}
}
