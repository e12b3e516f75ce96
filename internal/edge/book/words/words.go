// Package words cuts text into the words that a search goes by: without accents, and
// small and large letters alike.
package words

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Most is how many characters of a word count, in a text and in a search alike.
const Most = 48

// Of gives the words of a text, folded, each once, in the order they come first.
func Of(text string) []string {
	var out []string
	seen := map[string]bool{}
	for _, word := range strings.FieldsFunc(folded(text), apart) {
		if word = beginning(word); !seen[word] {
			seen[word] = true
			out = append(out, word)
		}
	}
	return out
}

// folded is text with its accents taken off and one letter for the small and the large.
func folded(text string) string {
	return strings.Map(func(c rune) rune {
		if unicode.Is(unicode.Mn, c) {
			return -1
		}
		return small(c)
	}, norm.NFD.String(text))
}

// small is the same letter for all those that differ only in their size, final and long
// forms among them; a mark that counts as a form of a letter is none.
func small(c rune) rune {
	least := c
	for other := unicode.SimpleFold(c); other != c; other = unicode.SimpleFold(other) {
		if !unicode.IsMark(other) {
			least = min(least, other)
		}
	}
	return unicode.ToLower(least)
}

// apart reports whether a character stands between words. Marks that are left take
// room of their own, as vowels of some scripts do, and belong to their word.
func apart(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsNumber(c) && !unicode.IsMark(c) }

func beginning(word string) string {
	n := 0
	for i := range word {
		if n == Most {
			return word[:i]
		}
		n++
	}
	return word
}
