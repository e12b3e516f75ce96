package web_test

import (
	"fmt"
	"testing"

	"sley/internal/app"
)

// rayed is what is drawn on a twill: colours, and threads out of their order, so that there
// is something to tell.
func rayed(ends int) []map[string]any {
	colours := make([]int, ends)
	for i := range colours {
		colours[i] = i / 4 % 3
	}
	return []map[string]any{
		{"do": "put", "part": "palette", "at": 0, "remove": 2, "put": []string{"#25407c", "#f3ecdc", "#9b2c24"}},
		{"do": "put", "part": "warp-colours", "at": 0, "remove": ends, "put": colours},
		{"do": "shafts", "number": 9},
		{"do": "put", "part": "threading", "at": 2, "remove": 1, "put": []int{9}},
	}
}

// wideTowels is a warp of about 800 ends in stripes, on a loom that has too few heddles on two
// shafts, and whose threading comes out uneven.
const wideTowels = `sley = 1
name = "Wide towels"
weave = "point twill"

[[pieces]]
name = "towel"
width = "30.5 in"
length = "30 in"
both = { hem = "1 in" }

[yarns.white]
count = "8/2 Ne"
fibre = "cotton"
colour = "#f4efe2"

[yarns.tide]
count = "8/2 Ne"
fibre = "cotton"
colour = "#2f5d73"

[yarns.rust]
count = "4/2 Ne"
fibre = "cotton"
colour = "#a5482e"

[warp]
yarn = "white"
sett = "24 epi"
stripes = "white 24, (tide 12, white 6, rust 2, white 16) x fill, tide 12, white 24"
threading = "(1-4 3 2) x fill"

[weft]
yarn = "white"
picks = "20 picks/in"
order = "(white 30, tide 4, rust 2, tide 4) x fill"

[draft]
tie-up = ["1 2", "2 3", "3 4", "1 4"]
treadling = "(1-4 3 2) x fill"

[loom]
name = "wide loom"
shafts = 4
treadles = 6
shed = "rising"
width = "40 in"
heddles = [200, 250, 250, 200]
`

// wide puts them into the book.
func (r *real) wide() int {
	r.t.Helper()
	saved, err := r.book.AddWarp(r.t.Context(), "w", app.Source{Name: "wide.toml", Text: []byte(wideTowels)})
	if err != nil || saved.Refused {
		r.t.Fatal(err, saved.Problems.All())
	}
	return int(saved.ID)
}

// Tables of drafts of several kinds, each with what there is to tell of it, at each width.
func TestTablePage(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	towels, _ := r.warpNamed("Galley towels")
	for _, look := range []struct{ name, path, says string }{
		{"table-twill", fmt.Sprintf("/drafts/%d/table", r.made("wind", "twill", nil, map[string]any{"do": "treadles", "number": 6}, map[string]any{"do": "put", "part": "ties", "at": 5, "remove": 1, "put": []string{"3"}})), "never pressed"},
		{"table-point", fmt.Sprintf("/drafts/%d/table", r.made("tide", "point-twill", map[string]string{"over": "1/3/3/1", "runs": "3"}, rayed(14)...)), "worth knowing"},
		{"table-double", fmt.Sprintf("/drafts/%d/table", r.made("hatches", "double-cloth-blocks", nil)), "Worth knowing"},
		{"table-towels", fmt.Sprintf("/warps/%d/table", towels), "Worth knowing"},
		{"table-wide", fmt.Sprintf("/warps/%d/table", r.wide()), "heddles"},
	} {
		tab := openTable(t, r, look.path)
		if look.name == "table-wide" {
			tab.Click("The whole warp")
			tab.Wait("/[78]\\d\\d ends/.test(document.querySelector('.title-row').innerText)")
		}
		tab.Says(look.says)
		tab.EachLook(t, look.name)
		tab.Quiet(t, false)
		tab.Close()
	}
}
