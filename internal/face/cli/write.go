package cli

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// File is a file to write.
type File struct {
	Name string
	Data []byte
}

// usualMode is for a file that was not there: everyone may read it.
const usualMode fs.FileMode = 0o644

// WriteWhole writes files that are whole or not there at all: all of them beside
// their places under other names first, then each renamed into its own. A file that
// was there keeps its mode. When any of them cannot be written, those that were
// there stay as they were; what is not a plain file is not replaced.
func WriteWhole(files []File) error {
	var made []string
	for _, f := range files {
		name, err := writeBeside(f)
		if err != nil {
			return errors.Join(err, removed(made))
		}
		made = append(made, name)
	}
	for i, f := range files {
		if err := os.Rename(made[i], f.Name); err != nil {
			return errors.Join(err, removed(made[i:]))
		}
	}
	return nil
}

// writeBeside writes a file under another name in the same folder, and gives that
// name; nothing is left where it fails.
func writeBeside(file File) (string, error) {
	mode, err := modeOf(file.Name)
	if err != nil {
		return "", err
	}
	f, err := os.CreateTemp(filepath.Dir(file.Name), ".sley-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(file.Data)
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	if err != nil {
		return "", errors.Join(err, os.Remove(f.Name()))
	}
	return f.Name(), nil
}

func removed(names []string) error {
	var errs []error
	for _, name := range names {
		errs = append(errs, os.Remove(name))
	}
	return errors.Join(errs...)
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
