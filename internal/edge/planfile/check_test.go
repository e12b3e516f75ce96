package planfile

import (
	"fmt"
	"strings"
	"testing"

	"sley/internal/trade/problem"
)

// errorsOf gives the errors of a text as code@path.
func errorsOf(text string) string {
	_, _, list := Decode("plan.toml", []byte(text))
	var codes []string
	for _, p := range list.All() {
		if p.Severity == problem.Error {
			codes = append(codes, p.Code+"@"+p.Path)
		}
	}
	return strings.Join(codes, " ")
}

// TestBeginner: five lines are a plan.
func TestBeginner(t *testing.T) {
	clean(t, "sley = 1\nwarp.sett = \"12 epi\"\n[[pieces]]\nlength = \"70 in\"\nwidth = \"8 in\"\n")
}

// TestSizes: when a length or a width may be left out.
func TestSizes(t *testing.T) {
	const length, width, sett = "length = \"28 in\"\n", "width = \"18 in\"\n", "sley = 1\nwarp.sett = \"24 epi\"\n"
	const yarn = "[yarns.white]\ncount = \"8/2 Ne\"\n"
	for text, want := range map[string]string{
		sett + "[[pieces]]\n" + width:                                            "length.missing@pieces[0].length",
		sett + "[[pieces]]\n" + length:                                           "width.missing@pieces[0].width",
		sett + "[[pieces]]\n" + length + width + "[[pieces]]\n" + length:         "",
		sett + "[[pieces]]\n" + length + width + "[[pieces]]\n" + width:          "length.missing@pieces[1].length",
		sett + "[[pieces]]\n" + width + "[find]\nwhat = \"pieces[0].length\"\n":  "",
		sett + "[[pieces]]\n" + length + "[find]\nwhat = \"pieces[0].width\"\n":  "",
		sett + "[[pieces]]\n" + length + "[find]\nwhat = \"pieces[0].count\"\n":  "width.missing@pieces[0].width",
		sett + "warp.ends = 400\n[[pieces]]\n" + length:                          "",
		sett + "warp.stripes = \"white 400\"\n[[pieces]]\n" + length + yarn:      "",
		sett + "warp.stripes = \"white 4 x fill\"\n[[pieces]]\n" + length + yarn: "width.missing@pieces[0].width",
		sett + "warp.stripes = \"white\"\n[[pieces]]\n" + length + yarn:          "order.count-missing@warp.stripes",
		sett + "[[pieces]]\nlength = \"28\"\n" + width:                           "length.no-unit@pieces[0].length",
		sett + "pieces = [3]\n":                                                  "value.kind@pieces[0]",
		sett + "pieces = 3\n":                                                    "value.kind@pieces",
	} {
		if got := errorsOf(text); got != want {
			t.Errorf("%q has %q, want %q", text, got, want)
		}
	}
}

// TestSetts: where a sett can come from.
func TestSetts(t *testing.T) {
	const piece = "sley = 1\n[[pieces]]\nlength = \"28 in\"\nwidth = \"18 in\"\n"
	const white, blue = "[yarns.white]\ncount = \"8/2 Ne\"\n", "[yarns.blue]\nfibre = \"wool\"\n"
	for text, want := range map[string]string{
		piece:                "sett.none@warp.sett",
		piece + white:        "",
		piece + blue:         "sett.none@warp.sett",
		piece + white + blue: "",
		piece + white + blue + "[warp]\nyarn = \"white\"\n":     "",
		piece + white + blue + "[warp]\nyarn = \"blue\"\n":      "sett.none@warp.sett",
		piece + white + blue + "[warp]\nstripes = \"blue 4\"\n": "sett.none@warp.sett",
		piece + blue + white: "sett.none@warp.sett",
		piece + white + blue + "[warp]\nstripes = \"white 4, blue 4\"\n": "",
		piece + "[yarns.white]\nwraps = \"28 wpi touching\"\n":           "",
		piece + "[yarns.white]\nwraps = \"28 wpi loose\"\n":              "sett.none@warp.sett",
		piece + "[yarns.white]\nwraps = \"28 wpi\"\n":                    "wraps.kind@yarns.white.wraps",
		piece + white + blue + "[warp]\nyarn = \"red\"\n":                "yarn.unknown@warp.yarn",
		piece + "[warp]\nreed = \"12 dpi\"\n":                            "sett.none@warp.sett",
		piece + "[warp]\nreed = \"12 dpi\"\nsleying = \"3\"\n":           "",
		piece + "[warp]\nsett = \"24\"\n":                                "density.no-unit@warp.sett",
		piece + "[built]\nsett = \"24 epi\"\n":                           "",
		piece + "[find]\nwhat = \"warp.sett\"\n":                         "",
		piece + "[yarns.white]\ncount = \"8/2\"\n":                       "count.no-system@yarns.white.count",
		piece + "[yarns.white]\nwraps = \"28 wpi packed\"\n":             "sett.none@warp.sett",
		piece + "[yarns.white]\nskein = { length = \"10 yd\" }\n":        "skein.mass@yarns.white.skein.weight",
	} {
		if got := errorsOf(text); got != want {
			t.Errorf("%q has %q, want %q", text, got, want)
		}
	}
}

// TestCircles: which allowances say one loss twice. The states of lengths and
// of widths are joined by the links of warp.LinkNames.
func TestCircles(t *testing.T) {
	for given, want := range map[string]string{
		"take-up loom-take-up":                            "",
		"take-up relaxation":                              "",
		"shrinkage relaxation loom-take-up":               "",
		"shrinkage take-up":                               "",
		"tape-to-washed loom-take-up":                     "",
		"warp-to-washed tape-to-washed":                   "",
		"take-up loom-take-up relaxation":                 "relaxation take-up loom-take-up",
		"shrinkage relaxation tape-to-washed":             "relaxation shrinkage tape-to-washed",
		"tape-to-washed loom-take-up warp-to-washed":      "loom-take-up tape-to-washed warp-to-washed",
		"shrinkage take-up warp-to-washed":                "shrinkage take-up warp-to-washed",
		"shrinkage take-up tape-to-washed warp-to-washed": "shrinkage take-up warp-to-washed",
		"width-shrinkage width-relaxation draw-in":        "",
		"width-shrinkage reed-to-relaxed":                 "",
		"width-relaxation draw-in reed-to-relaxed":        "width-relaxation draw-in reed-to-relaxed",
		"reed-to-washed fell-to-washed":                   "",
		"reed-to-washed fell-to-washed draw-in":           "draw-in reed-to-washed fell-to-washed",
		"take-up width-shrinkage draw-in reed-to-relaxed": "",
		"shrinkage width-shrinkage":                       "",
	} {
		text := towel + "[allowances]\n"
		for _, key := range strings.Fields(given) {
			text += key + " = \"2 %\"\n"
		}
		got := circleOf(text)
		if !sameKeys(got, want) {
			t.Errorf("%s: the circle %q, want %q", given, got, want)
		}
	}
}

func circleOf(text string) string {
	_, _, list := Decode("plan.toml", []byte(text))
	for _, p := range list.All() {
		if p.Code == "allowance.twice" {
			return strings.Trim(fmt.Sprint(p.Args["keys"]), "[]")
		}
	}
	return ""
}

func sameKeys(a, b string) bool {
	for _, key := range strings.Fields(a + " " + b) {
		if !strings.Contains(" "+a+" ", " "+key+" ") || !strings.Contains(" "+b+" ", " "+key+" ") {
			return false
		}
	}
	return true
}

// TestCirclesOfPieces: an allowance of a piece stands in for the warp's of the
// same key, and joins the others.
func TestCirclesOfPieces(t *testing.T) {
	const warpHas = "[allowances]\ntake-up = \"10 %\"\nrelaxation = \"2 %\"\n"
	for own, want := range map[string]string{
		`take-up = "12 %"`:                      "",
		`shrinkage = "5 %"`:                     "",
		`loom-take-up = "5 %"`:                  "allowance.twice@pieces[0].allowances.loom-take-up",
		`take-up = "9 %", loom-take-up = "5 %"`: "allowance.twice@pieces[0].allowances.loom-take-up",
		`draw-in = "5 %"`:                       "key.elsewhere@pieces[0].allowances.draw-in",
	} {
		if got := errorsOf(towel + "allowances = { " + own + " }\n" + warpHas); got != want {
			t.Errorf("%s has %q, want %q", own, got, want)
		}
	}
}

// TestSlackened: on a slackened warp nothing relaxes any more.
func TestSlackened(t *testing.T) {
	for given, want := range map[string]string{
		`relaxation = "none"`:                           "",
		`relaxation = "0 %"`:                            "relaxation.slackened@allowances.relaxation",
		`relaxation = "default"`:                        "relaxation.slackened@allowances.relaxation",
		`take-up = "8 %"`:                               "",
		"take-up = \"8 %\"\nloom-take-up = \"8 %\"":     "allowance.twice@allowances.loom-take-up",
		"shrinkage = \"8 %\"\ntape-to-washed = \"8 %\"": "allowance.twice@allowances.tape-to-washed",
		"shrinkage = \"8 %\"\nrelaxation = \"none\"":    "",
	} {
		text := strings.Replace(towel, "sley = 1\n", "sley = 1\ntape = \"slackened\"\n", 1)
		if got := errorsOf(text + "[allowances]\n" + given + "\n"); got != want {
			t.Errorf("%s has %q, want %q", given, got, want)
		}
	}
	piece := strings.Replace(towel, "sley = 1\n", "sley = 1\ntape = \"slackened\"\n", 1) + "allowances = { relaxation = \"2 %\" }\n"
	if got := errorsOf(piece); got != "relaxation.slackened@pieces[0].allowances.relaxation" {
		t.Errorf("of a piece: %q", got)
	}
}

// TestRest holds a few keys whose values have rules of their own.
func TestRest(t *testing.T) {
	const yarns = "[yarns.white]\ncount = \"8/2 Ne\"\n[yarns.blue]\ncount = \"8/2 Ne\"\n"
	for tail, want := range map[string]string{
		"[warp]\nfloating-selvedges = 0":                               "table.twice@warp",
		"[work]\nwage = \"18 EUR/h\"":                                  "",
		"[work]\nwage = \"18 EUR an hour\"":                            "",
		"[work]\nwage = \"€18 per hour\"":                              "",
		"[loom]\nheddles = 100\nshafts = 99":                           "whole.range@loom.shafts",
		"[loom]\nshafts = 2\nheddles = [1, 2]":                         "",
		"[loom]\nshafts = 2\nheddles = [1, \"2\"]":                     "value.kind@loom.heddles[1]",
		"[loom]\nreeds = []":                                           "",
		"[loom]\nwaste = { tie-on = \"10 in\", front = \"1 in\" }":     "key.unknown@loom.waste.front",
		"[sampling]\nlength = \"10 in\"\nweft = \"red\"":               "yarn.none@sampling.weft",
		"[built]\nwoven = [{ piece = 1, on-loom = \"1 in\" }]":         "whole.range@built.woven[0].piece",
		"[built]\nwoven = [3]":                                         "value.kind@built.woven[0]",
		yarns + "[weft]\nshares = { white = \"50 %\" }":                "shares.sum@weft.shares",
		yarns + "[weft]\nshares = { white = \"50 %\", blue = \"50\" }": "share.no-percent@weft.shares.blue",
		yarns + "[weft]\nhemstitch = \"4 1/2\"":                        "",
		yarns + "[weft]\nhemstitch = -1":                               "whole.range@weft.hemstitch",
		yarns + "[weft]\nhemstitch = 21":                               "whole.range@weft.hemstitch",
		yarns + "[find]\nwhat = \"yarns.white\"":                       "",
		yarns + "[find]\nwhat = \"yarns.red\"":                         "yarn.unknown@find.what",
		yarns + "[find]\nwhat = \"pieces[00].length\"":                 "find.path@find.what",
		yarns + "[find]\nwhat = 3":                                     "value.kind@find.what",
		"[extras]\nknots = \"1 in\"\nloops = \"-1 in\"":                "length.negative@extras.loops",
		"[groups]\nedge = 3":                                           "value.kind@groups.edge",
		"[yarns.none]\ncount = \"8/2 Ne\"":                             "name.form@yarns.none",
		"border = 0":                                                   "whole.range@pieces[0].border",
		"motif = 0":                                                    "motif.form@pieces[0].motif",
		"motif = \"6 +\"":                                              "motif.form@pieces[0].motif",
		"motif = \"6 + 0\"":                                            "",
		"count = 0x10":                                                 "", "count = 1_0": "", "count = +3": "", "count = 3.0": "value.kind@pieces[0].count",
		"count = 0": "whole.range@pieces[0].count",
	} {
		if got := errorsOf(towel + tail + "\n"); got != want {
			t.Errorf("%q has %q, want %q", tail, got, want)
		}
	}
}
