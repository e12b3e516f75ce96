package wif

import "sley/internal/trade/qty"

// The limits of a text. They lie far beyond the drafts of any hand loom and keep a
// hostile file from taking time or memory.
const (
	largest      = 8 << 20 // bytes
	mostLines    = 200_000 // in one file, blank ones too
	mostSections = 10_000
	// Numbers of keys may run ahead of how many there are, since ends in no heddle
	// need not be listed: by so many, and by so many times what is there.
	aheadBy    = 1000
	aheadTimes = 4
	// floating is how many ends at the far edge may be left out of a threading that
	// is not cut short: floating selvedges are one or two (common practice, no
	// source).
	floating = 4
	// longestDigits is how many digits a size may have.
	longestDigits = 15
)

// mostSize is the most that a thread may be thick or apart.
const mostSize = qty.Metre
