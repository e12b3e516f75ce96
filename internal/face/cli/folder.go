package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"sley/internal/trade/record"
)

// Put writes one file of a folder by its name in there, with slashes.
type Put func(name string, data []byte) error

// usualFolderMode is for a folder that was not there: everyone may look into it.
const usualFolderMode fs.FileMode = 0o755

// WriteFolder makes a folder whole or not at all: fill puts its files into a folder
// beside it, which is renamed at the end. Trouble: Exists where something is there
// already, other than an empty folder; FolderFailed.
func WriteFolder(folder string, fill func(Put) error) error {
	entries, err := os.ReadDir(folder)
	switch {
	case err == nil && len(entries) > 0:
		return &record.Trouble{Code: record.Exists, Path: folder}
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return &record.Trouble{Code: record.FolderFailed, Path: folder, Err: err}
	}
	folder = filepath.Clean(folder)
	part, err := os.MkdirTemp(filepath.Dir(folder), "."+filepath.Base(folder)+"-*")
	if err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: folder, Err: err}
	}
	defer os.RemoveAll(part)
	if err := fill(func(name string, data []byte) error { return putInto(part, name, data) }); err != nil {
		return err
	}
	return placed(part, folder)
}

func placed(part, folder string) error {
	err := os.Chmod(part, usualFolderMode)
	if err == nil {
		err = os.Remove(folder) // an empty one
	}
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		err = os.Rename(part, folder)
	}
	if err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: folder, Err: err}
	}
	return nil
}

// putInto writes a file into a folder, and nowhere outside it.
func putInto(folder, name string, data []byte) error {
	local := filepath.FromSlash(name)
	if !filepath.IsLocal(local) {
		return fmt.Errorf("internal error: a file named %q would not lie in its folder", name)
	}
	path := filepath.Join(folder, local)
	err := os.MkdirAll(filepath.Dir(path), usualFolderMode)
	if err == nil {
		err = os.WriteFile(path, data, usualMode)
	}
	if err != nil {
		return &record.Trouble{Code: record.FolderFailed, Path: path, Err: err}
	}
	return nil
}

// ReadFolder opens a folder to read what lies in it and nothing else, whatever links
// point out of it. Close it in the end.
func ReadFolder(folder string) (files fs.FS, closed func() error, err error) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, nil, err
	}
	return root.FS(), root.Close, nil
}
