package tape

import "math"

// block is a label with the y of its middle.
type block struct {
	index  int
	lines  []string
	strong bool
	y      float64
}

// between is more room for labels of several lines, in mm, so that lines that belong
// together stand together.
const between = 1.0

func (b block) high() float64 {
	if len(b.lines) == 1 {
		return line
	}
	return line*float64(len(b.lines)) + between
}

func total(blocks []block) float64 {
	sum := 0.0
	for _, b := range blocks {
		sum += b.high()
	}
	return sum
}

// without leaves out a label that is not strong, or any where all are: the one whose
// neighbours are nearest to one another.
func without(blocks []block) []block {
	least := 0
	for i := range blocks {
		if lesser(blocks, i, least) {
			least = i
		}
	}
	return append(blocks[:least:least], blocks[least+1:]...)
}

func lesser(blocks []block, i, j int) bool {
	if blocks[i].strong != blocks[j].strong {
		return blocks[j].strong
	}
	return crowd(blocks, i) < crowd(blocks, j)
}

// crowd is how far apart the neighbours of a label are; those at the ends have all
// the room there is.
func crowd(blocks []block, i int) float64 {
	if i == 0 || i == len(blocks)-1 {
		return math.MaxFloat64
	}
	return blocks[i+1].y - blocks[i-1].y
}

// run is neighbouring labels that touch one another, with where the middle of the
// first would like to be if all were of no height: the mean of their wishes.
type run struct {
	wish  float64
	count int
}

// apart moves the labels as little as it can (the least sum of squares) until none
// lies over another and all lie between from and to. It is isotonic regression by
// pooling neighbours that are in the wrong order (M. Ayer and others, "An empirical
// distribution function for sampling with incomplete information", Annals of
// Mathematical Statistics 26, 1955): taking off the heights above each label leaves
// wishes that need only be in order.
func apart(blocks []block, from, to float64) {
	above := 0.0
	var runs []run
	for _, b := range blocks {
		runs = pool(append(runs, run{b.y - b.high()/2 - above, 1}))
		above += b.high()
	}
	i, before := 0, 0.0
	for _, r := range runs {
		top := max(min(r.wish, to-above), from)
		for range r.count {
			blocks[i].y = top + before + blocks[i].high()/2
			before += blocks[i].high()
			i++
		}
	}
}

// pool joins the last runs until they are in order.
func pool(runs []run) []run {
	for n := len(runs); n > 1 && runs[n-2].wish > runs[n-1].wish; n = len(runs) {
		a, b := runs[n-2], runs[n-1]
		count := a.count + b.count
		wish := (a.wish*float64(a.count) + b.wish*float64(b.count)) / float64(count)
		runs = append(runs[:n-2], run{wish, count})
	}
	return runs
}
