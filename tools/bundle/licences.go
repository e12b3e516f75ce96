package main

import (
	"bytes"
	"os"
	"path/filepath"
)

// part is something by others that goes out with the page, and the file of its licence.
type part struct{ name, file string }

var parts = []part{
	{"Preact 11.2.0", "third_party/preact/LICENSE"},
	{"Preact Signals 2.11.4", "third_party/signals/LICENSE"},
	{"Preact Signals Core 1.14.5", "third_party/signals/core/LICENSE"},
	{"Sley Serif, made from Gentium Plus 6.101", "third_party/fonts/SleySerif-OFL.txt"},
	{"Sley Sans, made from Andika 6.101", "third_party/fonts/SleySans-OFL.txt"},
}

// licences is one text with the licence of every part: they ask to go with each copy.
func licences(root string) ([]byte, error) {
	var text bytes.Buffer
	text.WriteString("The page of sley holds these parts by others, each under the licence that follows its name.\n")
	for _, p := range parts {
		licence, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(p.file)))
		if err != nil {
			return nil, err
		}
		text.WriteString("\n\n== " + p.name + " ==\n\n")
		text.Write(bytes.TrimSpace(bytes.ReplaceAll(licence, []byte("\r\n"), []byte("\n"))))
		text.WriteString("\n")
	}
	return text.Bytes(), nil
}
