// Package order reads the one shorthand for orders of threads: the stripes of
// a warp, the colours of its picks, a threading, a treadling. It is made of
// trade habit and plain arithmetic:
//
//	order  = part { [","] part }
//	part   = unit { suffix }
//	unit   = "(" order ")" | leaf | the name of a group
//	suffix = "x" count | "x" "fill" | "mirrored" [ "open" | "doubled" ]
//
// In stripes a leaf is one stripe, a yarn and a count in either order, with
// its own density where it is crammed or spaced and its own beam where there
// are two:
//
//	blue 12, (white 4, 2 red) x 3, blue 12 at 36 epi on beam 2
//
// In shafts a leaf is one end, the number of its shaft; a run of neighbouring
// shafts is written short:
//
//	1 2 3 4, 1-8, 8-1
//
// In treadles a leaf is one pick, the number of its treadle, or those of several
// pressed at once; in a lift plan, of the shafts that are up:
//
//	1 2 3 4, 1+3 2+4, 1-4
//
// A name is a letter followed by letters, digits, - and _, and is none of the
// words at, on, mirrored, x and x followed by digits. For x stands × as well.
//
// Suffixes apply from left to right:
//
//	(1 2 3 4) x 2                1 2 3 4 1 2 3 4
//	(1 2 3 4) mirrored           1 2 3 4 3 2 1       the turning leaf once
//	(1 2 3 4) mirrored open      1 2 3 4 3 2         so that repeats join
//	(1 2 3 4) mirrored doubled   1 2 3 4 4 3 2 1     the turning leaf twice
//	(1 2 3 4) x fill             as often as the width needs
//
// In shafts the leaf at the turn is one end, in stripes the whole stripe as it
// was written. One group of the whole order may fill, it stands in no other
// group, and "x fill" is the last of its suffixes.
//
// An order is kept as written and never spread out to be counted: counting
// costs as much as the text is long, however many threads it makes.
package order
