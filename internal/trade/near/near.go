// Package near guesses which name a misspelt one was meant for.
package near

import "strings"

// longest is the longest name, in characters, that is worth a guess.
const longest = 40

// To gives the name least far from text, the first of several, "" when all are
// too far: beyond one slip in three characters, or two slips. Capitals do not
// count.
func To(text string, names []string) string {
	a := []rune(strings.ToLower(text))
	best, least := "", min(2, (len(a)+1)/3)+1
	for _, name := range names {
		b := []rune(strings.ToLower(name))
		if len(a) > longest || max(len(a)-len(b), len(b)-len(a)) >= least {
			continue
		}
		if d := slips(a, b); d < least {
			best, least = name, d
		}
	}
	return best
}

// slips counts the letters to add, drop, change or swap with their neighbour to
// make b of a (the restricted distance of Damerau, "A technique for computer
// detection and correction of spelling errors", 1964, and Levenshtein, 1965).
func slips(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			row[j+1] = min(row[j], last[j+1]) + 1
			row[j+1] = min(row[j+1], last[j]+change(a[i], b[j]))
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

func change(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}
