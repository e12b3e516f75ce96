package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"sley/internal/trade/record"
)

func TestWriteFolder(t *testing.T) {
	dir := t.TempDir()
	target := filepath.Join(dir, "out")
	fill := func(put Put) error {
		return errors.Join(put("book.json", []byte("{}")), put("warps/towels.toml", []byte("sley = 1\n")))
	}
	if err := WriteFolder(target, fill); err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(filepath.Join(target, "warps", "towels.toml")); err != nil || string(text) != "sley = 1\n" {
		t.Errorf("got %q, %v", text, err)
	}
	if err := WriteFolder(target, fill); !record.Is(err, record.Exists) {
		t.Errorf("a folder that is there: %v", err)
	}
	empty := filepath.Join(dir, "empty")
	if err := errors.Join(os.Mkdir(empty, 0o755), WriteFolder(empty, fill)); err != nil {
		t.Errorf("an empty folder: %v", err)
	}
}

// A folder that cannot be made whole is not there at all, and nothing lies outside it.
func TestWriteFolderWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	broken := errors.New("broken off")
	err := WriteFolder(filepath.Join(dir, "out"), func(put Put) error {
		return errors.Join(put("book.json", nil), broken)
	})
	if !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	for _, name := range []string{"../outside", "/outside", "a/../../outside", ""} {
		if err := WriteFolder(filepath.Join(dir, "out"), func(put Put) error { return put(name, nil) }); err == nil {
			t.Errorf("%q was written", name)
		}
	}
	left, err := os.ReadDir(dir)
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
	if err := WriteFolder(filepath.Join(dir, "no", "such", "out"), func(Put) error { return nil }); !record.Is(err, record.FolderFailed) {
		t.Errorf("below a folder that is not there: %v", err)
	}
}

// A folder is read within itself, whatever its links point to.
func TestReadFolder(t *testing.T) {
	dir := t.TempDir()
	inside := filepath.Join(dir, "in")
	if err := errors.Join(os.Mkdir(inside, 0o755), os.WriteFile(filepath.Join(dir, "secret"), []byte("x"), 0o600)); err != nil {
		t.Fatal(err)
	}
	files, closed, err := ReadFolder(inside)
	if err != nil {
		t.Fatal(err)
	}
	defer closed()
	if err := os.Symlink("../secret", filepath.Join(inside, "link")); err == nil {
		if text, err := fs.ReadFile(files, "link"); err == nil {
			t.Errorf("read %q through a link that leads out", text)
		}
	}
	if _, _, err := ReadFolder(filepath.Join(dir, "none")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is not there: %v", err)
	}
}
