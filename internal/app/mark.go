package app

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
)

// marked is how many digits a mark has: enough that two versions of a plan do not
// share one by chance, and few enough to compare by eye.
const marked = 8

// Mark tells versions of a plan file apart: the first digits of the SHA-256
// (FIPS 180-4) of its text, whichever way its lines end. Sheets bear it, so that
// paper and plan can be held against one another.
func Mark(text []byte) string {
	sum := sha256.Sum256(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n")))
	return hex.EncodeToString(sum[:])[:marked]
}
