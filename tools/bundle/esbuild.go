package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// aliases say where the libraries stand: there is no node_modules.
var aliases = []string{
	"--alias:preact/hooks=./third_party/preact/hooks/dist/hooks.mjs",
	"--alias:preact/jsx-runtime=./third_party/preact/jsx-runtime/dist/jsxRuntime.mjs",
	"--alias:preact=./third_party/preact/dist/preact.mjs",
	"--alias:@preact/signals-core=./third_party/signals/core/dist/signals-core.mjs",
	"--alias:@preact/signals=./third_party/signals/dist/signals.mjs",
}

// common are the ways of both bundles. tsconfig.json is for the type check alone: its
// paths lead to declarations.
var common = append([]string{
	"--bundle", "--format=esm", "--charset=utf8", "--log-level=warning", "--color=false",
	"--jsx=automatic", "--jsx-import-source=preact", "--tsconfig-raw={}",
}, aliases...)

// bundlePage makes every file of the page, by name.
func bundlePage(root string) (files, error) {
	dir, err := os.MkdirTemp("", "sley-bundle-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	err = esbuild(root, "./"+sources+"/main.tsx", "./"+sources+"/beside.tsx", "--outdir="+dir, "--minify",
		"--target=es2022,chrome111,firefox113,safari16.4", "--legal-comments=none",
		"--entry-names=[name]-[hash]", "--asset-names=[name]-[hash]", "--loader:.woff2=file", "--loader:.mp4=file", "--loader:.webm=file",
		"--banner:js=/* licences: see the file licences beside this one */")
	if err != nil {
		return nil, err
	}
	made, err := readFolder(dir)
	if err != nil {
		return nil, err
	}
	return withPage(root, made)
}

// bundleTests makes a file for each test of the sources, which node runs.
func bundleTests(root, dir string) error {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return err
	}
	tests, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(sources), "test", "*.test.ts"))
	if err != nil || len(tests) == 0 {
		return fmt.Errorf("no test in %s/test: %w", sources, err)
	}
	args := []string{"--outdir=" + dir, "--platform=node", "--target=node18", "--out-extension:.js=.mjs"}
	for _, test := range tests {
		args = append(args, "./"+sources+"/test/"+filepath.Base(test))
	}
	return esbuild(root, args...)
}

func esbuild(root string, args ...string) error {
	args = append([]string{"tool", "-modfile=tools/bundle.mod", "esbuild"}, append(args, common...)...)
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	err := cmd.Run()
	warned := withoutFetching(said.String())
	if err == nil && warned == "" {
		return nil
	}
	return fmt.Errorf("esbuild is not content (%v):\n%s", err, warned) // a warning is a fault, too
}

// withoutFetching leaves out what go says when it fetches the bundler: the first time on
// a machine that is no fault.
func withoutFetching(said string) string {
	var kept strings.Builder
	for line := range strings.Lines(said) {
		if !strings.HasPrefix(line, "go: downloading ") {
			kept.WriteString(line)
		}
	}
	return kept.String()
}
