package book

import (
	"path/filepath"
	"testing"
)

func TestTheUsualPlace(t *testing.T) {
	root := string(filepath.Separator)
	home, data := filepath.Join(root, "home", "w"), filepath.Join(root, "data")
	for _, test := range []struct {
		system string
		env    map[string]string
		want   string
	}{
		{"linux", map[string]string{"HOME": home}, filepath.Join(home, ".local", "share", "sley", "book.sley")},
		{"linux", map[string]string{"HOME": home, "XDG_DATA_HOME": data}, filepath.Join(data, "sley", "book.sley")},
		{"linux", map[string]string{"HOME": home, "XDG_DATA_HOME": "relative"}, filepath.Join(home, ".local", "share", "sley", "book.sley")},
		{"freebsd", map[string]string{"HOME": home}, filepath.Join(home, ".local", "share", "sley", "book.sley")},
		{"darwin", map[string]string{"HOME": home, "XDG_DATA_HOME": data}, filepath.Join(home, "Library", "Application Support", "sley", "book.sley")},
		{"windows", map[string]string{"LOCALAPPDATA": data, "HOME": home}, filepath.Join(data, "sley", "book.sley")},
		{"windows", map[string]string{"HOME": home}, ""},
		{"linux", nil, ""},
	} {
		got, err := UsualPlace(test.system, func(name string) string { return test.env[name] })
		if got != test.want || (err == nil) != (test.want != "") {
			t.Errorf("%s, %v: %q, %v", test.system, test.env, got, err)
		}
	}
}
