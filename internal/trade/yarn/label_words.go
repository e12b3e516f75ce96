package yarn

import (
	"slices"
	"strings"
)

// word reads what the words begin with, and gives how many that took.
func (r *labelReader) word(words []string) int {
	inCount := len(r.count) > 0
	fibre, system := longestFibre(words), longestSystem(words)
	beside := inCount || system < len(words) && hasDigit(words[system])
	switch {
	case strings.HasPrefix(words[0], "#"):
		r.others = append(r.others, words[0])
		return 1
	case shareLength(words) > 0:
		return r.takeShare(words)
	case system > fibre && beside:
		r.takeFibre(words[:longestFibre(words)])
		r.count = append(r.count, words[:system]...)
		return system
	case fibre > 0:
		r.takeFibre(words[:fibre])
		return fibre
	case plain(words[0]) == "handspun":
		r.out.Handspun = true
	case slices.Contains(dullWords, plain(words[0])):
		r.dropPly(words[0])
	case hasDigit(words[0]), inCount && slices.Contains(unitWords, plain(words[0])),
		plain(words[0]) == "r" && len(words) > 1 && hasDigit(words[1]):
		r.count = append(r.count, words[0])
	default:
		r.others = append(r.others, words[0])
	}
	return 1
}

func hasDigit(word string) bool { return numberStart(word) >= 0 }

// dropPly takes the number of "2 ply" out of the count again.
func (r *labelReader) dropPly(word string) {
	if last := len(r.count) - 1; plain(word) == "ply" && last >= 0 && len(r.count[last]) == 1 {
		r.count = r.count[:last]
	}
}

// mostNameWords is how many words the name of a fibre or of a system may have.
const mostNameWords = 4

// longest gives how many words of the beginning make the longest name that is known.
func longest(words []string, known func(string) bool) int {
	for n := min(mostNameWords, len(words)); n > 0; n-- {
		if known(strings.Join(words[:n], " ")) {
			return n
		}
	}
	return 0
}

func longestFibre(words []string) int {
	return longest(words, func(name string) bool { _, ok := FibreNamed(name); return ok })
}

func longestSystem(words []string) int {
	return longest(words, func(name string) bool { _, ok := SystemNamed(name); return ok })
}

// shareLength is how many words "60 %" or "60%" takes; 0 where no share begins.
func shareLength(words []string) int {
	if numberStart(words[0]) != 0 {
		return 0
	}
	if strings.HasSuffix(words[0], "%") {
		return 1
	}
	if len(words) > 1 && words[1] == "%" {
		return 2
	}
	return 0
}

// takeShare gives a share to the fibre before it, or keeps it for the next one.
func (r *labelReader) takeShare(words []string) int {
	n := shareLength(words)
	share := strings.Join(words[:n], " ")
	if last := len(r.fibres) - 1; last >= 0 && r.fibres[last].share == "" {
		r.fibres[last].share = share
	} else {
		r.share = share
	}
	return n
}

func (r *labelReader) takeFibre(words []string) {
	if fibre, ok := FibreNamed(strings.Join(words, " ")); ok {
		r.fibres = append(r.fibres, labelFibre{fibre, r.share})
		r.share = ""
	}
}
