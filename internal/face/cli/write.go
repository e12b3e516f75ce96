package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// usualMode is for a file that was not there: everyone may read it.
const usualMode fs.FileMode = 0o644

// WriteWhole writes a file that is whole or not there at all: beside its place
// under another name first, then renamed into it. A file that was there keeps its
// mode, and stays as it was when anything fails; what is not a plain file is not
// replaced.
func WriteWhole(name string, data []byte) error {
	mode, err := modeOf(name)
	if err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".sley-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return nil
}

// modeOf gives the mode that a file is to have, or why it cannot be written.
func modeOf(name string) (fs.FileMode, error) {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return usualMode, nil
	case err != nil:
		return 0, err
	case !info.Mode().IsRegular():
		return 0, &fs.PathError{Op: "write", Path: name, Err: errors.New("there is something that is not a file")}
	}
	return info.Mode().Perm(), nil
}
