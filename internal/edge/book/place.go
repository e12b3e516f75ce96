package book

import (
	"fmt"
	"path/filepath"
)

// fileName is the name of a book in its usual place.
const fileName = "book.sley"

// UsualPlace is where a weaver's book is, by the system's name and what it says of its
// folders: the data of programs on this machine, which no system carries to others.
// Without any it fails.
func UsualPlace(system string, env func(string) string) (string, error) {
	if folder := dataFolder(system, env); folder != "" {
		return filepath.Join(folder, fileName), nil
	}
	return "", fmt.Errorf("the system does not say where programs keep their data; name a file with --book FILE")
}

func dataFolder(system string, env func(string) string) string {
	home := env("HOME")
	switch system {
	case "windows":
		return under(env("LOCALAPPDATA"), "sley")
	case "darwin":
		return under(home, "Library", "Application Support", "sley")
	}
	if data := env("XDG_DATA_HOME"); filepath.IsAbs(data) {
		return filepath.Join(data, "sley")
	}
	return under(home, ".local", "share", "sley")
}

// under is a folder below another; none below none.
func under(folder string, names ...string) string {
	if folder == "" {
		return ""
	}
	return filepath.Join(append([]string{folder}, names...)...)
}
