// Command contact lays the pictures of the page that a folder holds on sheets, so that
// all are seen at a glance:
//
//	go run ./tools/contact FOLDER
//
// A picture is called PAGE-WIDTH-THEME.png, as 07-drafts-390-dark.png: what the tests of
// the page leave where SLEY_SHOTS is set. For each width there are sheets, sheet-390-1.png
// and on, with every page light and dark side by side. ./check shots does both.
package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "contact: say the folder of the pictures: go run ./tools/contact FOLDER")
		os.Exit(2)
	}
	if err := lay(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "contact:", err)
		os.Exit(1)
	}
}

// shot is a picture of a page.
type shot struct {
	page  string // with its number, by which pages are in order
	width int    // of the window, in CSS pixels
	theme string
	file  string
}

var shotName = regexp.MustCompile(`^(.+)-(\d+)-(light|dark)\.png$`)

// shotsIn are the pictures of a folder: by width, by page, the light one first.
func shotsIn(folder string) ([]shot, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, err
	}
	var shots []shot
	for _, entry := range entries {
		parts := shotName.FindStringSubmatch(entry.Name())
		if parts == nil {
			continue
		}
		width, err := strconv.Atoi(parts[2])
		if err != nil {
			return nil, err
		}
		shots = append(shots, shot{parts[1], width, parts[3], filepath.Join(folder, entry.Name())})
	}
	slices.SortFunc(shots, inOrder)
	return shots, nil
}

func inOrder(a, b shot) int {
	if a.width != b.width {
		return a.width - b.width
	}
	if a.page != b.page {
		return strings.Compare(a.page, b.page)
	}
	return strings.Compare(b.theme, a.theme) // light, then dark
}

// lay writes the sheets and says what it wrote. Sheets of another run go first.
func lay(folder string) error {
	shots, err := shotsIn(folder)
	if err != nil {
		return err
	}
	if len(shots) == 0 {
		return errors.New("there is no picture of a page in " + folder)
	}
	old, err := filepath.Glob(filepath.Join(folder, "sheet-*-[0-9]*.png"))
	for _, sheet := range old {
		err = errors.Join(err, os.Remove(sheet))
	}
	for _, all := range byWidth(shots) {
		err = errors.Join(err, laySheets(folder, all))
	}
	return err
}

// byWidth parts pictures that are in order.
func byWidth(shots []shot) [][]shot {
	var parts [][]shot
	for i, s := range shots {
		if i == 0 || s.width != shots[i-1].width {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], s)
	}
	return parts
}
