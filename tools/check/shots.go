package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	shotsName     = "shots"
	shotsVariable = "SLEY_SHOTS"
	shotsHere     = "dist/shots" // where the pictures go when nobody says where
)

// shotPattern is what the pictures of the pages are called: 07-drafts-390-dark.png.
const shotPattern = "[0-9][0-9]-*-*-*.png"

// shotsFolder takes the folder out of the words of the command line: it follows the name
// of the step, unless a step's name does.
func shotsFolder(words []string) (names []string, folder string) {
	folder = os.Getenv(shotsVariable)
	if folder == "" {
		folder = shotsHere
	}
	next := slices.Index(words, shotsName) + 1
	if next == 0 || next == len(words) || slices.Contains(stepNames(slices.Concat(allSteps, namedSteps)), words[next]) {
		return words, folder
	}
	return slices.Delete(slices.Clone(words), next, next+1), words[next]
}

// checkShots takes the pictures, light and dark in every width, and lays them on sheets.
// Sheets are made of what there is also where a page has a fault: one wants to see it.
func checkShots(j *job) error {
	there, err := j.provide(browsers)
	if err != nil {
		return err
	}
	if !there {
		return errors.New("without a browser there is no picture")
	}
	folder, err := j.clearedFolder()
	if err != nil {
		return err
	}
	_, faults := j.run([]string{shotsVariable + "=" + folder}, "go", "test", "-count=1", "-timeout=60m", "-run", "^TestEveryPage$", "./internal/face/web")
	sheets, err := j.run(nil, "go", "run", "./tools/contact", folder)
	for line := range strings.Lines(sheets.out) {
		j.say("%s", strings.TrimSpace(line))
	}
	return errors.Join(faults, err)
}

// clearedFolder is the folder with no picture of an earlier run in it; what else is there
// is left alone. A relative one is in the project's folder.
func (j *job) clearedFolder() (string, error) {
	folder := j.shots
	if !filepath.IsAbs(folder) {
		folder = filepath.Join(j.root, folder)
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return "", fmt.Errorf("a folder for the pictures: %w", err)
	}
	old, err := filepath.Glob(filepath.Join(folder, shotPattern))
	for _, picture := range old {
		err = errors.Join(err, os.Remove(picture))
	}
	return folder, err
}
