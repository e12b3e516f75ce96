package present

import (
	"strings"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// ClothOf says the cloth of a warp or a draft in a few words: cottolin, point twill, 4
// shafts. Nothing of yarns and looms.
func ClothOf(c app.Card) string {
	if c.Kind != record.Warp && c.Kind != record.Draft {
		return ""
	}
	var parts []string
	for _, part := range []string{c.Fibre, Weave(c.Facts.Weave)} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	if n := c.Facts.Shafts; n > 0 {
		parts = append(parts, strings.ReplaceAll(shaftsWords, "{n}", number(n)))
	}
	return strings.Join(parts, ", ")
}

// NextOf says what there is to do next with a warp, and at which of its six stages;
// nothing where it is finished, and of other documents.
func NextOf(c app.Card) (says, stage string) {
	f := c.Facts
	switch {
	case c.Kind != record.Warp || f.Stage == record.Done:
		return "", ""
	case f.Stage == record.Begun:
		return nextBegin, "weave"
	case f.Stage == record.OnTheWay && c.Woven > 0 && f.Picks > 0 && c.Woven >= f.Picks:
		return nextFinish, "finish"
	case f.Stage == record.OnTheWay:
		return strings.ReplaceAll(nextPick, "{pick}", number(c.Woven+1)), "weave"
	case f.Errors+f.Warnings > 0:
		return CareWords(f.Errors, f.Warnings), "numbers"
	}
	return nextDress, "dress"
}
