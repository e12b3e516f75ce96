package wif

import (
	"strconv"
	"strings"

	"sley/internal/trade/draft"
)

// spec is what the text may say in one section.
type spec struct {
	name     string
	numbered bool     // its keys are numbers from 1
	raw      bool     // kept line by line as written, and not read
	keys     []string // of a section whose keys are names
	free     []string // those of the keys whose value is any text
}

// The names of the sections, as they are written.
const (
	wifName       = "WIF"
	contentsName  = "CONTENTS"
	paletteName   = "COLOR PALETTE"
	tableName     = "COLOR TABLE"
	textName      = "TEXT"
	notesName     = "NOTES"
	weavingName   = "WEAVING"
	warpName      = "WARP"
	weftName      = "WEFT"
	threadingName = "THREADING"
	tieUpName     = "TIEUP"
	treadlingName = "TREADLING"
	liftPlanName  = "LIFTPLAN"
	// privateName is the section of ours: what a draft says and the text cannot.
	privateName = "PRIVATE SLEY DRAFT"
)

// What follows WARP or WEFT in the names of the lists of threads.
const (
	coloursOf   = " COLORS"
	thicknessOf = " THICKNESS"
	spacingOf   = " SPACING"
)

// specs are the sections that are known, in the order in which new ones are
// written.
var specs = []*spec{
	{name: wifName, keys: []string{"Version", "Date", "Developers", "Source Program", "Source Version"}, free: []string{"Date", "Developers", "Source Program", "Source Version"}},
	{name: contentsName},
	{name: paletteName, keys: []string{"Entries", "Form", "Range"}},
	{name: textName, keys: textKeys, free: textKeys},
	{name: weavingName, keys: []string{"Shafts", "Treadles", "Rising Shed"}},
	{name: warpName, keys: threadKeys, free: symbolKeys},
	{name: weftName, keys: threadKeys, free: symbolKeys},
	{name: notesName, numbered: true},
	{name: tableName, numbered: true},
	{name: threadingName, numbered: true},
	{name: tieUpName, numbered: true},
	{name: treadlingName, numbered: true},
	{name: liftPlanName, numbered: true},
	{name: warpName + coloursOf, numbered: true},
	{name: warpName + thicknessOf, numbered: true},
	{name: warpName + spacingOf, numbered: true},
	{name: weftName + coloursOf, numbered: true},
	{name: weftName + thicknessOf, numbered: true},
	{name: weftName + spacingOf, numbered: true},
	{name: privateName, keys: []string{"Shed", "Origin"}, free: []string{"Origin"}},
	{name: "WARP THICKNESS ZOOM", raw: true},
	{name: "WARP SPACING ZOOM", raw: true},
	{name: "WARP SYMBOLS", raw: true},
	{name: "WARP SYMBOL TABLE", raw: true},
	{name: "WARP SYMBOL PALETTE", raw: true},
	{name: "WEFT THICKNESS ZOOM", raw: true},
	{name: "WEFT SPACING ZOOM", raw: true},
	{name: "WEFT SYMBOLS", raw: true},
	{name: "WEFT SYMBOL TABLE", raw: true},
	{name: "WEFT SYMBOL PALETTE", raw: true},
}

var (
	textKeys   = []string{"Title", "Author", "Address", "EMail", "Telephone", "FAX"}
	threadKeys = []string{"Threads", "Color", "Symbol", "Symbol Number", "Units", "Spacing", "Thickness", "Spacing Zoom", "Thickness Zoom"}
	symbolKeys = []string{"Symbol"}
)

// specOf finds a section by its name as folded.
var specOf = func() map[string]*spec {
	out := map[string]*spec{}
	for _, s := range specs {
		out[fold(s.name)] = s
	}
	return out
}()

// sectionNames are the names of all known sections.
func sectionNames() []string {
	var out []string
	for _, s := range specs {
		out = append(out, s.name)
	}
	return out
}

// fold makes names alike that differ in case, spaces and hyphens only.
func fold(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == ' ' || r == '\t' || r == '-' || r == '_':
			return -1
		case 'A' <= r && r <= 'Z':
			return r - 'A' + 'a'
		}
		return r
	}, name)
}

// key gives a key as it is written, and whether the section has such a key.
func (s *spec) key(name string) (string, bool) {
	folded := fold(name)
	for _, k := range s.keys {
		if fold(k) == folded {
			return k, true
		}
	}
	if s.name != privateName {
		return name, false
	}
	n, ok := whole(strings.TrimPrefix(folded, "lowered"))
	if !strings.HasPrefix(folded, "lowered") || !ok || n < 1 || n > draft.MostTreadles {
		return name, false
	}
	return loweredKey(n), true
}

// loweredKey is the key of the shafts that treadle n lowers.
func loweredKey(n int) string { return "Lowered " + strconv.Itoa(n) }

// private reports whether a section is a program's own.
func private(name string) bool { return strings.HasPrefix(fold(name), "private") }

// pathOf names a section in the paths of problems, as the checks of a draft name
// its parts.
func pathOf(section string) string {
	switch section {
	case tieUpName:
		return "tie-up"
	case liftPlanName:
		return "lift-plan"
	}
	return strings.ToLower(strings.ReplaceAll(section, " ", "-"))
}
