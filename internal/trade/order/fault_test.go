package order

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"sley/internal/trade/qty"
)

var faultContext = Context{
	Names: []string{"blue", "white", "both"},
	Groups: map[string]string{
		"edge": "blue 4 white 2", "both": "blue 1", "hollow": " ", "loop": "blue 1, ring", "ring": "(loop)",
		"bad": "white, bleu 4", "filler": "blue 1 x fill", "big": "blue 100000",
	},
}

// The faults of each text as code@place, the code without "order.".
var stripeFaultTests = []struct{ text, want string }{
	{"", "empty@0"},
	{" \n", "empty@2"},
	{"()", "empty@0"},
	{"blue 4 ()", "empty@7"},
	{"blue 4,", "unexpected@6"},
	{",blue 4", "unexpected@0"},
	{"blue 4,, white 4", "unexpected@7"},
	{"blue 4 ; white 4", "unexpected@7"},
	{"blue 4)", "unexpected@6"},
	{"(blue 4", "unclosed@0"},
	{"((blue 4) white 2", "unclosed@0"},
	{"blue", "count-missing@0"},
	{"blue, white 4", "count-missing@0"},
	{"blue x 3", "count-missing@0"},
	{"blue 4 x", "count-missing@7"},
	{"blue 4 ×, white", "count-missing@7 count-missing@10"},
	{"blue 4 x ?", "unexpected@9"},
	{"12", "name-missing@0"},
	{"12, blue 4", "name-missing@0"},
	{"12 edge", "name-missing@0"},
	{"12 at 36 epi", "name-missing@0"},
	{"blue 2.5", "unexpected@6 name-missing@7"},
	{"1-8", "unexpected@1"},
	{"bleu 4, whit 2", "name-unknown@0 name-unknown@8"},
	{"4 bleu", "name-unknown@2"},
	{"egde x 2", "name-unknown@0"},
	{"both 4, both 2", "name-twice@0"},
	{"blue 0", "count-zero@5"},
	{"blue 4 x 0", "count-zero@9"},
	{"blue 4 x0", "count-zero@8"},
	{"blue 100001", "count-large@5"},
	{"blue 99999999999999999999", "count-large@5"},
	{"blue 1 x 100001", "count-large@9"},
	{"blue 1,200 white 4", "digits-grouped@5"},
	{"blue 4 x 1,200", "digits-grouped@9"},
	{"(blue 4) x 3 x fill x 2", "fill-nested@20"},
	{"(blue 4) x fill mirrored", "fill-nested@16"},
	{"(blue 4 x fill)", "fill-nested@8"},
	{"filler", "fill-nested@0"},
	{"blue 4 x fill, white 4 x fill, blue 4 x fill", "fill-twice@23 fill-twice@38"},
	{"blue 4 at 36, white 4", "density@10"},
	{"blue 4 at, white 4", "density@9"},
	{"blue 4 at 0 epi", "density@10"},
	{"blue 4 at -3 epi x 2", "density@10"},
	{"blue 4 at 36 epi at 24 epi", "unexpected@17"},
	{"blue 4 on beam 3", "beam@15"},
	{"blue 4 on beam 0", "beam@15"},
	{"blue 4 on beam", "beam@7"},
	{"blue 4 on 2", "beam@7 name-missing@10"},
	{"x 3 blue 4", "unexpected@0"},
	{"mirrored (blue 4)", "unexpected@0"},
	{"blue 4, x 3", "unexpected@8"},
	{"(blue 4) * 3 white 2", "unexpected@9"},
	{"hollow", "group-empty@0"},
	{"blue 1, loop", "group-circle@8"},
	{"ring x 2", "group-circle@0"},
	{"blue 1, bad, bad", "count-missing@8 name-unknown@8"},
	{"blue 100000 x 3", "too-long@12"},
	{"blue 100000, white 100000, blue 1", "too-long@27"},
	{"(big, white 100000) x fill, blue 1", "too-long@28"},
	{"(big, big, big) x 100000 x 100000", "too-long@11"},
	{"(blue 50000, white 100000) mirrored", ""},
	{"(blue 50000, white 100000) mirrored doubled", "too-long@27"},
	{"(blue 100000 x 3) mirrored x 2", "too-long@13"},
	{"é ?, white 4", "name-unknown@0 unexpected@2"},
}

func TestStripeFaults(t *testing.T) {
	for _, test := range stripeFaultTests {
		checkFaults(t, test.text, test.want, faultContext)
	}
}

var shaftFaultTests = []struct{ text, want string }{
	{"0 1 65", "shaft-range@0 shaft-range@4"},
	{"1-65", "shaft-range@2"},
	{"0-70", "shaft-range@0 shaft-range@2"},
	{"1-", "unexpected@1"},
	{"1-a 2", "unexpected@1 name-unknown@2"},
	{"1-2-3", "unexpected@3"},
	{"1 2 point", "name-unknown@4"},
	{"1 at 36 epi", "unexpected@2"},
	{"1 2, (3 4 mirored", "unclosed@5 name-unknown@10"},
	{"(1 x fill) x fill, 2 x fill", "fill-nested@3 fill-twice@21"},
}

func TestShaftFaults(t *testing.T) {
	for _, test := range shaftFaultTests {
		checkFaults(t, test.text, test.want, Context{Kind: Shafts})
	}
}

func checkFaults(t *testing.T, text, want string, ctx Context) {
	t.Helper()
	_, faults := Parse(text, ctx)
	var got []string
	for _, f := range faults {
		got = append(got, fmt.Sprintf("%s@%d", strings.TrimPrefix(f.Code, "order."), f.At))
	}
	if joined := strings.Join(got, " "); joined != want {
		t.Errorf("%q: got %s, want %s", text, joined, want)
	}
}

func TestFaultArgs(t *testing.T) {
	for _, test := range []struct {
		text, key string
		want      any
	}{
		{"bleu 4", "near", "blue"},
		{"bleu 4", "valid", []string{"blue", "white", "both", "bad", "big", "both", "edge", "filler", "hollow", "loop", "ring"}},
		{"BLUE 4", "near", "blue"},
		{"magenta 4", "near", nil},
		{"egde", "near", "edge"},
		{"(blue 4) mirorred", "near", "mirrored"},
		{"(blue 4) * 3", "near", "x"},
		{"blue 4 on beam 3", "most", 2},
		{"blue 4 at 36 ep", "why", "density.unknown-unit"},
		{"12 edge", "before", "edge"},
		{"blue 1, loop", "circle", []string{"loop", "ring", "loop"}},
		{"blue 1, ring", "circle", []string{"ring", "loop", "ring"}},
		{"blue 1, bad", "group", "bad"},
		{"blue 1, bad", "inside", 0},
		{"blue 1 x fill, blue 2 x fill", "first", 7},
		{"blue 100000 x 3", "most", 200_000},
	} {
		_, faults := Parse(test.text, faultContext)
		if len(faults) == 0 {
			t.Errorf("%q: no fault", test.text)
			continue
		}
		if got := faults[0].Args[test.key]; fmt.Sprint(got) != fmt.Sprint(test.want) {
			t.Errorf("%q: %s is %v, want %v", test.text, test.key, got, test.want)
		}
	}
}

func TestFaultRead(t *testing.T) {
	for text, want := range map[string]string{
		"blue 4 at 36 apples, white 2": "36 apples",
		"blue 1,200":                   "1,200",
		"(blue 4) x3 x fill x 2 ":      "x",
		"blå 4":                        "blå",
	} {
		_, faults := Parse(text, faultContext)
		if len(faults) != 1 || faults[0].Read != want {
			t.Errorf("%q: got %v, want one fault that read %q", text, faults, want)
		}
	}
}

// Groups nest in brackets, by name, and both together, 32 deep.
func TestTooDeep(t *testing.T) {
	brackets := func(n int) string { return strings.Repeat("(", n) + "1" + strings.Repeat(")", n) }
	groups := map[string]string{"half": brackets(15)}
	for i := range 40 {
		groups[fmt.Sprintf("g%d", i)] = fmt.Sprintf("g%d 1", i+1)
	}
	groups["g40"] = "1"
	ctx := Context{Kind: Shafts, Groups: groups}
	for _, test := range []struct{ text, want string }{
		{brackets(32), ""},
		{brackets(33), "too-deep@32"},
		{brackets(100), "too-deep@32"},
		{strings.Repeat("(", 16) + "half" + strings.Repeat(")", 16), ""},
		{"half " + strings.Repeat("(", 17) + "half" + strings.Repeat(")", 17), "too-deep@22"},
		{strings.Repeat("(", 17) + "half" + strings.Repeat(")", 17), "too-deep@17"},
		{"g9", ""},
		{"g8", "too-deep@0"},
		{"g9 (g9)", "too-deep@4"},
		{"1" + strings.Repeat(" x 1", 32), ""},
		{"1" + strings.Repeat(" x 1", 34), "too-deep@130"},
	} {
		checkFaults(t, test.text, test.want, ctx)
	}
}

// Groups that double one another are counted, not laid out: 2 to the 30 ends
// are refused at once.
func TestNoBlowUp(t *testing.T) {
	groups := map[string]string{"g0": "1"}
	for i := range 30 {
		groups[fmt.Sprintf("g%d", i+1)] = fmt.Sprintf("g%d g%d", i, i)
	}
	start := time.Now()
	checkFaults(t, "g17", "", Context{Kind: Shafts, Groups: groups})
	checkFaults(t, "g30", "too-long@0", Context{Kind: Shafts, Groups: groups})
	checkFaults(t, strings.Repeat("g16 mirrored ", 1000), "too-long@13", Context{Kind: Shafts, Groups: groups})
	if took := time.Since(start); took > 5*time.Second {
		t.Errorf("counting took %v", took)
	}
}

// Every fault is in a stable order and stands within its text.
func TestFaultsSorted(t *testing.T) {
	_, faults := Parse("bad, bleu 4, (blue 0, ?, white 4 x fill", faultContext)
	if !slices.IsSortedFunc(faults, func(a, b *qty.Fault) int { return a.At - b.At }) || len(faults) != 7 {
		t.Errorf("got %v, want seven faults by their place", faults)
	}
}
