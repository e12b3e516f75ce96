package main

import (
	"crypto/sha256"
	"encoding/base32"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
)

// pages are the page itself and that of a device beside the loom.
var pages = []string{"index.html", "beside.html"}

// withPage adds the files that esbuild does not make: the icon, the licences, and the
// pages themselves, which name all others as they are called.
func withPage(root string, made files) (files, error) {
	icon, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(sources), "icon.svg"))
	if err != nil {
		return nil, err
	}
	texts, err := licences(root)
	if err != nil {
		return nil, err
	}
	made[hashed("icon.svg", icon)] = icon
	made[hashed("licences.txt", texts)] = texts
	for _, name := range pages {
		page, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(sources), name))
		if err != nil {
			return nil, err
		}
		if made[name], err = filled(name, page, made); err != nil {
			return nil, err
		}
	}
	return made, nil
}

// hashed puts a hash of the content into a name, as esbuild does.
func hashed(name string, content []byte) string {
	sum := sha256.Sum256(content)
	ext := path.Ext(name)
	return strings.TrimSuffix(name, ext) + "-" + base32.StdEncoding.EncodeToString(sum[:])[:8] + ext
}

var (
	blank     = regexp.MustCompile(`\{\{([^}]*)\}\}`)
	hashInEnd = regexp.MustCompile(`-[A-Z0-9]{8}(\.[a-z0-9]+)$`)
)

// filled puts the hashed names in for the plain ones of the page.
func filled(of string, page []byte, made files) ([]byte, error) {
	names := map[string]string{}
	for name := range made {
		names[hashInEnd.ReplaceAllString(name, "$1")] = name
	}
	var missing []string
	text := blank.ReplaceAllStringFunc(string(page), func(place string) string {
		plain := blank.FindStringSubmatch(place)[1]
		if names[plain] == "" {
			missing = append(missing, plain)
		}
		return names[plain]
	})
	if missing != nil {
		return nil, fmt.Errorf("%s names what was not made: %s", of, strings.Join(missing, ", "))
	}
	return []byte(text), nil
}
