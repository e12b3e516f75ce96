package defaults

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// pieces are the kinds of pieces. All sizes are common practice, no source: they are to
// begin with, and each is the weaver's to change.
var pieces = []Piece{
	piece("hand-towel", 4, size("75 cm", "60 cm", "90 cm").by("45 cm", "40 cm", "50 cm").hem("2.5 cm", "0.5 cm"),
		size("28 in", "24 in", "36 in").by("18 in", "16 in", "20 in").hem("1 in", "1/4 in")),
	piece("tea-towel", 4, size("70 cm", "60 cm", "80 cm").by("50 cm", "45 cm", "55 cm").hem("2 cm", "0.5 cm"),
		size("28 in", "24 in", "32 in").by("20 in", "18 in", "22 in").hem("3/4 in", "1/4 in")),
	piece("scarf", 1, size("180 cm", "150 cm", "200 cm").by("20 cm", "15 cm", "30 cm").fringe("12 cm"),
		size("72 in", "60 in", "80 in").by("8 in", "6 in", "12 in").fringe("5 in")),
	piece("shawl", 1, size("190 cm", "170 cm", "220 cm").by("55 cm", "50 cm", "75 cm").fringe("15 cm"),
		size("76 in", "68 in", "88 in").by("22 in", "20 in", "30 in").fringe("6 in")),
	piece("blanket", 1, size("200 cm", "180 cm", "240 cm").by("140 cm", "120 cm", "160 cm").fringe("10 cm"),
		size("80 in", "72 in", "96 in").by("54 in", "48 in", "64 in").fringe("4 in")),
	piece("baby-blanket", 1, size("100 cm", "80 cm", "120 cm").by("80 cm", "70 cm", "100 cm").hem("2.5 cm", "0.5 cm"),
		size("40 in", "32 in", "48 in").by("32 in", "28 in", "40 in").hem("1 in", "1/4 in")),
	piece("table-runner", 1, size("150 cm", "100 cm", "200 cm").by("35 cm", "30 cm", "45 cm").hem("2.5 cm", "0.5 cm"),
		size("60 in", "40 in", "80 in").by("14 in", "12 in", "18 in").hem("1 in", "1/4 in")),
	piece("place-mats", 4, size("45 cm", "40 cm", "50 cm").by("33 cm", "30 cm", "36 cm").hem("1.5 cm", "0.5 cm"),
		size("18 in", "16 in", "20 in").by("13 in", "12 in", "14 in").hem("1/2 in", "1/4 in")),
	piece("napkins", 6, size("45 cm", "40 cm", "50 cm").by("45 cm", "40 cm", "50 cm").hem("1 cm", "0.5 cm"),
		size("18 in", "16 in", "20 in").by("18 in", "16 in", "20 in").hem("3/8 in", "1/4 in")),
	// The two sides of one cushion, with what the seams take.
	piece("cushion", 2, size("48 cm", "43 cm", "63 cm").by("48 cm", "43 cm", "63 cm"),
		size("19 in", "17 in", "25 in").by("19 in", "17 in", "25 in")),
	piece("bookmark", 4, size("18 cm", "15 cm", "22 cm").by("4.5 cm", "3 cm", "6 cm").fringe("2.5 cm"),
		size("7 in", "6 in", "9 in").by("1 3/4 in", "1 1/4 in", "2 1/2 in").fringe("1 in")),
	piece("curtain", 2, size("150 cm", "100 cm", "220 cm").by("90 cm", "60 cm", "130 cm").hem("5 cm", "1 cm"),
		size("60 in", "40 in", "88 in").by("36 in", "24 in", "50 in").hem("2 in", "1/2 in")),
	piece("yardage", 1, size("3 m", "2 m", "7 m").by("80 cm", "60 cm", "120 cm"),
		size("3 yd", "2 yd", "8 yd").by("30 in", "24 in", "48 in")),
	piece("sampler", 1, size("100 cm", "50 cm", "150 cm").by("30 cm", "20 cm", "40 cm"),
		size("40 in", "20 in", "60 in").by("12 in", "8 in", "16 in")),
	piece("rug", 1, size("150 cm", "90 cm", "200 cm").by("90 cm", "60 cm", "120 cm").fringe("8 cm"),
		size("60 in", "36 in", "80 in").by("36 in", "24 in", "48 in").fringe("3 in")).of("weft-faced"),
	piece("bag-strap", 1, size("130 cm", "60 cm", "160 cm").by("4 cm", "2 cm", "6 cm"),
		size("52 in", "24 in", "64 in").by("1 1/2 in", "3/4 in", "2 1/2 in")).of("warp-faced"),
}

func piece(id string, count int, metric, imperial PieceSize) Piece {
	return Piece{ID: id, Count: count, Metric: metric, Imperial: imperial, Source: "practice"}
}

func (p Piece) of(weave string) Piece { p.Weave = weave; return p }

func size(usual, low, high string) PieceSize {
	return PieceSize{Length: SizeRange{long(usual), long(low), long(high)}}
}

func (s PieceSize) by(usual, low, high string) PieceSize {
	s.Width = SizeRange{long(usual), long(low), long(high)}
	return s
}

func (s PieceSize) hem(depth, turnIn string) PieceSize {
	s.End, s.Depth, s.TurnIn = warp.Hem, long(depth), long(turnIn)
	return s
}

func (s PieceSize) fringe(length string) PieceSize {
	s.End, s.Depth = warp.Fringe, long(length)
	return s
}

// long reads a length of the table.
func long(text string) qty.Typed[qty.Length] {
	l, err := qty.ParseLength(text)
	if err != nil {
		panic("internal error: a kind of piece has the length " + text)
	}
	return qty.Typed[qty.Length]{Is: l, Typed: text}
}
