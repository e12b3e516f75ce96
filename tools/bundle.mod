// The bundler of the page, pinned apart from what sley is built of.
// tools/bundle runs it: go run ./tools/bundle
module sley

go 1.26.0

tool github.com/evanw/esbuild/cmd/esbuild

require (
	github.com/evanw/esbuild v0.28.2 // indirect
	golang.org/x/sys v0.49.0 // indirect
)
