package planfile

import "slices"

// slips is how many letters a misspelt name may differ in to be recognised.
const slips = 2

// near gives the valid name that differs from the one written in the fewest
// letters, and in no more than two, or one of a short name; or nothing.
func near(written string, valid []string) string {
	best, least := "", slips+1
	if len(written) < 5 {
		least = slips
	}
	for _, name := range valid {
		if d := distance(written, name); d < least {
			best, least = name, d
		}
	}
	return best
}

// distance counts the letters to change, add, leave out or swap with their
// neighbour to turn a into b. It stops counting at slips+1.
func distance(a, b string) int {
	if d := len(a) - len(b); d > slips || d < -slips {
		return slips + 1
	}
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+change(a[i], b[j]))
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

func change(a, b byte) int {
	if a == b {
		return 0
	}
	return 1
}

// home gives the table where the key would be right, when just one has it and
// it is another than the one it was found in: keys written below a [header]
// belong to that table, which surprises people.
func home(found, key string) string {
	var homes []string
	for name, valid := range keys {
		if slices.Contains(valid, key) && name != found && name != pieceLinks {
			homes = append(homes, name)
		}
	}
	if len(homes) != 1 {
		return ""
	}
	if words, ok := shownBy[homes[0]]; ok {
		return words
	}
	return tableName(homes[0])
}
