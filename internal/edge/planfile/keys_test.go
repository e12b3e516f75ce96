package planfile

import (
	"fmt"
	"strings"
	"testing"

	"sley/internal/trade/near"
)

// places of the tables: a file in which %s stands for one more key of the
// table, and the path of the table.
var tablesInFiles = map[string][2]string{
	topTable:      {"sley = 1\n%s\n", ""},
	unitsTable:    {"sley = 1\n[units]\n%s\n", "units."},
	piecesTable:   {"sley = 1\n[[pieces]]\n%s\n", "pieces[0]."},
	hemTable:      {"sley = 1\n[[pieces]]\nfirst = { hem = \"1 in\", %s }\n", "pieces[0].first."},
	fringeTable:   {"sley = 1\n[[pieces]]\nlast = { fringe = \"1 in\", %s }\n", "pieces[0].last."},
	yarnTable:     {"sley = 1\n[yarns.white]\n%s\n", "yarns.white."},
	skeinTable:    {"sley = 1\n[yarns.white]\nskein = { %s }\n", "yarns.white.skein."},
	sampleTable:   {"sley = 1\n[yarns.white.samples.\"2/2 twill\"]\n%s\n", "yarns.white.samples.2/2 twill."},
	warpTable:     {"sley = 1\n[warp]\n%s\n", "warp."},
	floatsTable:   {"sley = 1\n[warp]\nfloating-selvedges = { %s }\n", "warp.floating-selvedges."},
	doubledTable:  {"sley = 1\n[warp]\ndoubled-edges = { %s }\n", "warp.doubled-edges."},
	secondTable:   {"sley = 1\n[warp]\nsecond-beam = { %s }\n", "warp.second-beam."},
	draftTable:    {"sley = 1\n[draft]\n%s\n", "draft."},
	weftTable:     {"sley = 1\n[weft]\n%s\n", "weft."},
	samplingTable: {"sley = 1\n[sampling]\n%s\n", "sampling."},
	windingTable:  {"sley = 1\n[winding]\n%s\n", "winding."},
	loomTable:     {"sley = 1\n[loom]\n%s\n", "loom."},
	wasteTable:    {"sley = 1\n[loom]\nwaste = { %s }\n", "loom.waste."},
	roundingTable: {"sley = 1\n[rounding]\n%s\n", "rounding."},
	workTable:     {"sley = 1\n[work]\n%s\n", "work."},
	classTable:    {"sley = 1\n[class]\n%s\n", "class."},
	builtTable:    {"sley = 1\n[built]\n%s\n", "built."},
	wovenTable:    {"sley = 1\npieces = [{ length = \"1 in\" }]\n[[built.woven]]\n%s\n", "built.woven[0]."},
	findTable:     {"sley = 1\n[find]\n%s\n", "find."},
	linksTable:    {"sley = 1\n[allowances]\n%s\n", "allowances."},
	pieceLinks:    {"sley = 1\n[[pieces]]\nallowances = { %s }\n", "pieces[0].allowances."},
}

// TestEveryKeyIsRead: a value that no key wants is a problem at every key, so
// no key of the format is passed over.
func TestEveryKeyIsRead(t *testing.T) {
	for name, valid := range keys {
		c, ok := tablesInFiles[name]
		if !ok {
			t.Errorf("no file for table %q", name)
		}
		for _, key := range valid {
			readsKey(t, fmt.Sprintf(c[0], strange(name, key)), c[1]+key)
		}
	}
}

// strange writes the key with a value that is never right.
func strange(name, key string) string {
	line := key + " = 1979-05-27T07:32:00Z"
	switch {
	case name == wovenTable && key == "piece":
		return line + "\non-loom = \"1 in\""
	case name == wovenTable:
		return line + "\npiece = 0"
	}
	return line
}

func readsKey(t *testing.T, text, path string) {
	if strings.HasSuffix(path, ".hem") || strings.HasSuffix(path, ".fringe") || path == "sley" {
		text = strings.NewReplacer(`hem = "1 in", `, "", `fringe = "1 in", `, "", "sley = 1\n", "").Replace(text)
		if path != "sley" {
			text = "sley = 1\n" + text
		}
	}
	_, _, list := Decode("plan.toml", []byte(text))
	for _, p := range list.All() {
		if p.Path == path && p.Code == "value.kind" {
			return
		}
	}
	t.Errorf("nothing is said about %s in\n%s%+v", path, text, list.All())
}

// TestEveryKeyIsInTheWholeFile keeps the file that has every key whole.
func TestEveryKeyIsInTheWholeFile(t *testing.T) {
	_, places, _ := Decode("plan.toml", []byte(wholeText(t)))
	seen := map[string]bool{}
	walk(places.top, func(n *node) { seen[n.key] = true })
	instead := map[string]bool{"both": true, "in-turn": true, "crimp": true, "per-piece": true, "pegs": true, "mill": true, "wif": true, "colours": true, "lift-plan": true}
	for name, valid := range keys {
		for _, key := range valid {
			if !seen[key] && !instead[key] && name != linksTable && name != pieceLinks {
				t.Errorf("%s of %q is not in the file", key, name)
			}
		}
	}
}

func walk(n *node, see func(*node)) {
	see(n)
	for _, c := range n.items {
		walk(c, see)
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		written, want string
	}{
		{"lenght", "length"},
		{"widht", "width"},
		{"width", "width"},
		{"lengthh", "length"},
		{"with", "width"},
		{"wi", ""},
		{"colour", ""},
		{"", ""},
		{"cuont", "count"},
		{"seem", "seam"},
		{"hem", ""},
		{strings.Repeat("length", 9), ""},
	} {
		if got := near.To(c.written, keys[piecesTable]); got != c.want {
			t.Errorf("%q is near %q, want %q", c.written, got, c.want)
		}
	}
}

func TestHome(t *testing.T) {
	for _, c := range []struct{ table, key, want string }{
		{warpTable, "wash", "the top of the file"},
		{topTable, "sett", ""},
		{topTable, "bobbin", "[weft]"},
		{topTable, "crimp", "[weft]"},
		{piecesTable, "nothing", ""},
		{topTable, "put-up", "[yarns.NAME]"},
		{piecesTable, "knot", `both, first and last, as both = { fringe = "5 in" }`},
	} {
		if got := home(c.table, c.key); got != c.want {
			t.Errorf("%s of %q belongs to %q, want %q", c.key, c.table, got, c.want)
		}
	}
}
