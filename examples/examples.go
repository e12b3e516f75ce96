// Package examples holds the demo: the plan files of Saltmarsh, a studio that
// is invented.
package examples

import _ "embed"

// GalleyTowels is the plan file that sley reckons when it is given none.
//
//go:embed galley-towels.toml
var GalleyTowels []byte
