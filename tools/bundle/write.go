package main

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// files are contents by name.
type files map[string][]byte

func readFolder(dir string) (files, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	read := files{}
	for _, entry := range entries {
		if read[entry.Name()], err = os.ReadFile(filepath.Join(dir, entry.Name())); err != nil {
			return nil, err
		}
	}
	return read, nil
}

// compare returns an error that names every file in which a folder differs from what
// was made.
func compare(dir string, made files) error {
	committed, err := readFolder(dir)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	var differ []string
	for _, name := range slices.Sorted(maps.Keys(made)) {
		if content, there := committed[name]; !there {
			differ = append(differ, name+" is missing")
		} else if !bytes.Equal(content, made[name]) {
			differ = append(differ, name+" differs")
		}
	}
	for _, name := range slices.Sorted(maps.Keys(committed)) {
		if _, wanted := made[name]; !wanted {
			differ = append(differ, name+" is left over")
		}
	}
	if differ == nil {
		return nil
	}
	return fmt.Errorf("%s is not what %s gives: %s; run go run ./tools/bundle", static, sources, strings.Join(differ, ", "))
}

// replace makes the folder hold what was made and nothing else. What is the same is
// not touched.
func replace(dir string, made files) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	committed, err := readFolder(dir)
	if err != nil {
		return err
	}
	for name := range committed {
		if _, wanted := made[name]; !wanted {
			err = errors.Join(err, os.Remove(filepath.Join(dir, name)))
		}
	}
	for name, content := range made {
		if old, there := committed[name]; !there || !bytes.Equal(old, content) {
			err = errors.Join(err, os.WriteFile(filepath.Join(dir, name), content, 0o644))
		}
	}
	return err
}
