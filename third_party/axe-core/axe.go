// Package axe holds axe-core, which looks for what keeps people out of a page. It
// is for tests alone. README.md says where it comes from.
package axe

import _ "embed"

// Script defines window.axe in the page that runs it.
//
//go:embed axe.min.js
var Script string
