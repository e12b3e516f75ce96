package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestShotsFolder(t *testing.T) {
	t.Setenv(shotsVariable, "")
	for _, c := range []struct {
		words  string
		names  string
		folder string
	}{
		{"shots", "shots", shotsHere},
		{"shots /tmp/seen", "shots", "/tmp/seen"},
		{"vet shots seen tests", "vet shots tests", "seen"},
		{"shots vet", "shots vet", shotsHere},
		{"vet", "vet", shotsHere},
	} {
		names, folder := shotsFolder(strings.Fields(c.words))
		if !slices.Equal(names, strings.Fields(c.names)) || folder != c.folder {
			t.Errorf("%s: %q in %q", c.words, names, folder)
		}
	}
	t.Setenv(shotsVariable, "said")
	if _, folder := shotsFolder([]string{"shots"}); folder != "said" {
		t.Errorf("the variable says so, and it is %q", folder)
	}
}

// What was taken before goes, so that no sheet shows a page that is no more.
func TestOldShotsGo(t *testing.T) {
	j, _ := testJob(t)
	j.shots = "seen"
	folder := filepath.Join(j.root, "seen")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"07-drafts-390-dark.png", "boat.png"} {
		if err := os.WriteFile(filepath.Join(folder, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := j.clearedFolder(); err != nil || got != folder {
		t.Fatalf("%q, %v", got, err)
	}
	left, err := filepath.Glob(filepath.Join(folder, "*"))
	if err != nil || len(left) != 1 || filepath.Base(left[0]) != "boat.png" {
		t.Errorf("left: %q, %v", left, err)
	}
}

// A step that is asked for and can do nothing has not passed.
func TestShotsWithoutABrowser(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	j, out := testJob(t)
	if err := checkShots(j); err == nil || !strings.Contains(out.String(), "apt-get install -y chromium") {
		t.Errorf("%v, said %q", err, out)
	}
}
