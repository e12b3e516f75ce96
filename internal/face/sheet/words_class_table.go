package sheet

// The words of the sheets of a class: the handout, the worksheet, the kits.
const (
	wordWorking    = "The lines run in the order of the work: each figure stands after those it is worked out from. A name in [ ] is the figure on the line of that number; then the working with figures, and what it comes to. up(), down() and nearest() make a figure whole, or a multiple of the step named. A number in [ ] alone is a source, listed at the end. Work each figure out on the line beside it before you look."
	wordByHand     = "For a piece of your own. The lines have the numbers of the handout: write what you want and know, then work the others out in order. A name in [ ] is the figure on the line of that number. up(), down() and nearest() make a figure whole, or a multiple of the step named. Where there are more than three kinds of piece or yarns, use a copy for the others."
	wordLine       = "line"
	wordFigure     = "figure"
	wordByPencil   = "by hand"
	wordOnLine     = "line {n}"
	wordComesTo    = "What it comes to"
	wordUsually    = "usually {range}"
	wordEachBrings = "Each brings to the loom, or finds there"
	wordSlips      = "The kits"
	wordTurnTape   = "The tape is pinned to the cloth anew for each piece, its foot at the first pick."
	wordBegins     = "tape at the start"
	wordFinishes   = "tape at the end"
)
