package planfile

import (
	"fmt"
	"strings"
	"testing"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

const towel = "sley = 1\nwarp.sett = \"24 epi\"\n[[pieces]]\nlength = \"28 in\"\nwidth = \"18 in\"\n"

// decodeAllowance reads one allowance as it would stand in a file.
func decodeAllowance(t *testing.T, text string) (warp.Allowance, *problem.List) {
	t.Helper()
	plan, _, list := Decode("plan.toml", []byte(towel+"[allowances]\nshrinkage = '"+text+"'\n"))
	return plan.Allowances["shrinkage"], list
}

func terms(a warp.Allowance) string {
	var steps []string
	for _, step := range a.Steps {
		var said []string
		for _, t := range step {
			said = append(said, describe(t))
		}
		steps = append(steps, strings.Join(said, " + "))
	}
	return strings.Join(steps, ", then ")
}

func describe(t warp.Term) string {
	switch t.Form {
	case warp.Lose, warp.Gain, warp.Add:
		return fmt.Sprintf("%s %s", [...]string{"lose", "gain", "add"}[t.Form], qty.Share{Of: t.Share})
	case warp.Plain:
		return fmt.Sprintf("%s x%d", t.Length, t.Sides)
	case warp.PerLength:
		return fmt.Sprintf("%s per %s", t.Length, t.Per)
	}
	return fmt.Sprintf("%s to %s", t.Before, t.After)
}

// TestAllowances reads every way of saying an allowance that the format has.
func TestAllowances(t *testing.T) {
	for text, want := range map[string]string{
		"8 %":                         "lose 8 %",
		"8%":                          "lose 8 %",
		"lose 8 %":                    "lose 8 %",
		"LOSE 8 per cent":             "lose 8 %",
		"gain 3 %":                    "gain 3 %",
		"add 10 %":                    "add 10 %",
		"add 10 % + 10 %":             "add 10 % + add 10 %",
		"add 10 % + lose 5 %":         "add 10 % + lose 5 %",
		"8 % + 2 %":                   "lose 8 % + lose 2 %",
		"8%+2%":                       "lose 8 % + lose 2 %",
		"8 %, then 2 %":               "lose 8 %, then lose 2 %",
		"8 % then 2 %":                "lose 8 %, then lose 2 %",
		"add 5 %, then 5 %":           "add 5 %, then lose 5 %",
		"3 in":                        "7.62 cm x1",
		"2 cm + 1 cm":                 "2 cm x1 + 1 cm x1",
		"1 cm at each edge":           "1 cm x2",
		"1 cm each end":               "1 cm x2",
		"1 cm at each side":           "1 cm x2",
		"1 cm at each end + 3 %":      "1 cm x2 + lose 3 %",
		"3 in per yd":                 "7.62 cm per 91.44 cm",
		"3 in per 1 yd":               "7.62 cm per 91.44 cm",
		"2 in per 37 in":              "5.08 cm per 93.98 cm",
		"5 cm per m, then 3 %":        "5 cm per 1 m, then lose 3 %",
		"10 cm -> 8.5 cm":             "10 cm to 8.5 cm",
		"10 cm → 8.5 cm":              "10 cm to 8.5 cm",
		"10 cm to 8.5 cm":             "10 cm to 8.5 cm",
		"10 cm->8.5 cm":               "10 cm to 8.5 cm",
		"8 cm -> 9 cm":                "8 cm to 9 cm",
		"12,5 %":                      "lose 12.5 %",
		"1 yd 4 in":                   "1.016 m x1",
		"  8 %  ":                     "lose 8 %",
		"add 150 %":                   "add 150 %",
		"3 in per yd + 1 cm each end": "7.62 cm per 91.44 cm + 1 cm x2",
	} {
		a, list := decodeAllowance(t, text)
		if list.Failed() || terms(a) != want || a.Typed != text || a.None || a.Accept {
			t.Errorf("%q is read as %q (kept as %q), want %q: %+v", text, terms(a), a.Typed, want, list.All())
		}
	}
}

func TestNoneAndDefault(t *testing.T) {
	for _, text := range []string{"none", " NONE "} {
		if a, list := decodeAllowance(t, text); list.Failed() || !a.None || a.Accept || a.Steps != nil || !a.Given() {
			t.Errorf("%q is read as %+v", text, a)
		}
	}
	if a, list := decodeAllowance(t, "default"); list.Failed() || !a.Accept || a.None || !a.Given() {
		t.Errorf("default is read as %+v", a)
	}
}

func TestAllowanceFaults(t *testing.T) {
	for text, want := range map[string]string{
		"8":                         "allowance.no-unit 8",
		"add 8":                     "share.no-percent 8",
		"lose":                      "number.missing ",
		"8 % + ":                    "allowance.empty ",
		"+ 8 %":                     "allowance.empty ",
		", then 8 %":                "allowance.empty ",
		"8 %, then":                 "allowance.empty ",
		"default + 8 %":             "allowance.alone default",
		"3 in per":                  "allowance.form per",
		"3 in per cubit":            "length.unknown-unit cubit",
		"3 in per yd extra":         "length.trailing extra",
		"3 in by hand":              "allowance.form by hand",
		"10 in -> ":                 "number.missing ",
		"10 in -> 8":                "length.no-unit 8",
		"0 in -> 8 in":              "allowance.zero 8 in",
		"gain 5 % + lose 1 % + 1 %": "allowance.unclear 1 %",
		"lose 100 %":                "allowance.all-lost lose 100 %",
		"60 % + 45 %":               "allowance.all-lost 60 % + 45 %",
		"lose 95 %":                 "allowance.large lose 95 %",
		"70 %, then 70 %":           "allowance.large 70 %, then 70 %",
		"1 in -> 11 in":             "allowance.large 1 in -> 11 in",
		"shrink 8 %":                "share.trailing shrink 8 %",
		"add 3 in":                  "allowance.word-length add 3 in",
	} {
		_, list := decodeAllowance(t, text)
		all := list.All()
		if len(all) != 1 {
			t.Errorf("%q has %d problems: %+v", text, len(all), all)
			continue
		}
		if got := all[0].Code + " " + all[0].Read; got != want && !strings.HasPrefix(want, "share.trailing") {
			t.Errorf("%q gives %s, want %s", text, got, want)
		}
	}
}

// TestGrowthIsBounded: an allowance of ten and a tenth are the limits.
func TestGrowthIsBounded(t *testing.T) {
	for _, text := range []string{"lose 90 %", "add 900 %", "gain 900 %", "10 in -> 1 in", "1 in -> 10 in", "9 in per in"} {
		if _, list := decodeAllowance(t, text); list.Failed() {
			t.Errorf("%q: %+v", text, list.All())
		}
	}
}

func TestEnds(t *testing.T) {
	for text, want := range map[string]string{
		"none":                           "0 depth 0 cm ",
		"hem 2 cm":                       "1 depth 2 cm ",
		"hem 1 1/4 in":                   "1 depth 3.175 cm ",
		"HEM 2 cm + 5 mm":                "1 depth 2 cm turn-in 5 mm ",
		"hem 2 cm +5 mm outside":         "1 depth 2 cm turn-in 5 mm outside ",
		"hem 2 cm outside":               "1 depth 2 cm outside ",
		"hem 2 cm, outside":              "1 depth 2 cm outside ",
		"hem 2 cm turned before washing": "1 depth 2 cm before ",
		"hem 2 cm turned after washing":  "1 depth 2 cm ",
		"hem 2 cm + 5 mm outside turned before washing": "1 depth 2 cm turn-in 5 mm outside before ",
		"hem 2 cm turned before washing outside":        "1 depth 2 cm outside before ",
		"fringe 12 cm":                                  "2 depth 12 cm ",
		"fringe 12 cm inside":                           "2 depth 12 cm inside ",
		"fringe 12 cm outside":                          "",
		"hem":                                           "",
		"hem 2":                                         "",
		"hem 2 cm + 5":                                  "",
		"hem 50 m":                                      "",
		"fringe 12 cm + 1 cm":                           "",
		"selvedge 2 cm":                                 "",
	} {
		plan, _, list := Decode("plan.toml", []byte(towel+"both = '"+text+"'\n"))
		got := ""
		if !list.Failed() {
			got = endText(plan.Pieces[0].First)
		}
		if got != want || plan.Pieces[0].First != plan.Pieces[0].Last {
			t.Errorf("%q is read as %q, want %q: %+v", text, got, want, list.All())
		}
	}
}

func endText(e warp.End) string {
	text := fmt.Sprintf("%d depth %s ", e.Finish, e.Depth.Is)
	if e.TurnIn.Given() {
		text += fmt.Sprintf("turn-in %s ", e.TurnIn.Is)
	}
	for word, said := range map[string]bool{"outside ": e.Outside, "inside ": e.Inside} {
		if said {
			text += word
		}
	}
	if e.TurnedBefore {
		text += "before "
	}
	return text
}

// TestStates reads every state in which a size or a density may be given.
func TestStates(t *testing.T) {
	for line, want := range map[string]warp.State{
		`length = "28 in"`: warp.Finished, `length = "28 in Finished"`: warp.Finished,
		`length = "28 in relaxed"`: warp.Relaxed, `length = "28 in off the loom"`: warp.Relaxed,
		`length = "28 in on the loom"`: warp.OnLoom, `length = "28 in on  loom"`: warp.OnLoom,
		`length = "28 in warp"`: warp.Straight, `length = "28 in of warp"`: warp.Straight,
	} {
		text := strings.Replace(towel, `length = "28 in"`, line, 1)
		if got := clean(t, text).Pieces[0].Length.State; got != want {
			t.Errorf("%s is %s, want %s", line, got, want)
		}
	}
	for line, want := range map[string]warp.State{
		`width = "18 in"`: warp.Finished, `width = "18 in at the fell"`: warp.AtFell,
		`width = "18 in in the reed"`: warp.InReed, `width = "18 in in reed"`: warp.InReed,
		`width = "18 in relaxed"`: warp.Relaxed,
	} {
		text := strings.Replace(towel, `width = "18 in"`, line, 1)
		if got := clean(t, text).Pieces[0].Width.State; got != want {
			t.Errorf("%s is %s, want %s", line, got, want)
		}
	}
	for line, want := range map[string]warp.State{
		`"24 epi"`: warp.InReed, `"24 epi finished"`: warp.Finished, `"24/in relaxed"`: warp.Relaxed,
		`"10 ends/cm at the fell"`: warp.AtFell, `"60/10 cm in the reed"`: warp.InReed,
	} {
		text := strings.Replace(towel, `"24 epi"`, line, 1)
		if got := clean(t, text).Warp.Sett.State; got != want {
			t.Errorf("%s is %s, want %s", line, got, want)
		}
	}
}
