package yarn

import "sley/internal/trade/qty"

// Sample is a piece of cloth that was woven of a yarn to be measured. What was not
// measured was not said.
type Sample struct {
	Name        string
	Weave, Wash string
	Sett        qty.Typed[qty.Density] // in the reed
	Picks       qty.Typed[qty.Density] // on the loom
	// One stretch along the warp: as straight ends, as the tape reads it on the loom, off
	// the loom and rested, washed and dry.
	Warp, OnLoom, Relaxed, Washed qty.Typed[qty.Length]
	// Its width: in the reed, at the fell, off the loom and rested, washed and dry.
	Reed, Fell, WidthRelaxed, WidthWashed qty.Typed[qty.Length]
}
