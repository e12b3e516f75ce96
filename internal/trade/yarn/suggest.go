package yarn

// nearest gives the candidate that word was probably meant for, or "" when
// none is near: slips in fewer than half its letters, and two at most. The
// first of equals wins.
func nearest(word string, candidates []string) string {
	best, slips := "", 3
	for _, c := range candidates {
		n := distance(plain(word), plain(c))
		if n < slips && 2*n < len([]rune(c)) {
			best, slips = c, n
		}
	}
	return best
}

// distance counts the letters to put in, leave out or change to make b of a
// (Levenshtein's distance).
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, c := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j, d := range to {
			change := diagonal
			if c != d {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
