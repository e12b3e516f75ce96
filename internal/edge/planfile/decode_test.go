package planfile

import (
	"bytes"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// whole decodes the file that has every key.
func whole(t *testing.T) *warp.Plan {
	t.Helper()
	return clean(t, wholeText(t))
}

func wholeText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("testdata/whole.toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// clean decodes a text that must be without errors.
func clean(t *testing.T, text string) *warp.Plan {
	t.Helper()
	plan, _, list := Decode("plan.toml", []byte(text))
	for _, p := range list.All() {
		if p.Severity == problem.Error {
			t.Fatalf("%v: %s at %s, read %q, %v", p.Place, p.Code, p.Path, p.Read, p.Args)
		}
	}
	return plan
}

// TestEveryFieldIsFilled: what stands in the file reaches the plan.
func TestEveryFieldIsFilled(t *testing.T) {
	p := whole(t)
	for what, c := range map[string][2]any{
		"format": {p.Format, 1}, "name": {p.Name, "Galley towels"},
		"note": {p.Note, "Two lines,\nwith \"quotes\".\n"}, "date": {p.Date, "2026-03-01"},
		"weave": {p.Weave, "point twill"}, "wash": {p.Wash, "washed"}, "gap": {p.Gap.Typed, "1 in"},
		"tape": {p.Tape, warp.UnderTension}, "header": {p.Header.Is, p.Gap.Is * 2},
		"units": {p.Units, warp.Units{Length: "in", Yarn: "yd", Weight: "oz", Density: "in", Count: "Ne"}},
		"kinds": {len(p.Pieces), 2}, "groups": {p.Groups["edge"], "blue 12, white 4"},
		"extra": {p.Extras[0].Name + " " + p.Extras[0].Length.Typed, "take-up in all 13 in"},
		"yarns": {p.Yarns[0].Name + p.Yarns[1].Name, "whiteblue"},
		"links": {len(p.Allowances), 4}, "rounding off": {p.Rounding.Off, false},
		"step": {p.Rounding.Step.Typed, "1/4 yd"}, "warp up": {p.Rounding.Warp.Is.String(), "up"},
		"picks": {p.Rounding.Picks.Typed, "nearest"}, "bench": {p.Rounding.Bench.Typed, "1/8 in"},
		"class": {p.Class, warp.Class{Looms: 8}}, "find": {p.Find.What, "pieces[0].length"},
		"within": {fmt.Sprint(p.Find.Within), "[yarns.white warp.wound]"},
	} {
		same(t, what, c)
	}
}

func same(t *testing.T, what string, c [2]any) {
	t.Helper()
	if !reflect.DeepEqual(c[0], c[1]) {
		t.Errorf("%s is %v, want %v", what, c[0], c[1])
	}
}

func TestPieces(t *testing.T) {
	p := whole(t).Pieces
	towel, mat := p[0], p[1]
	for what, c := range map[string][2]any{
		"name": {towel.Name, "towel"}, "count": {towel.Count, 4}, "count typed": {towel.CountTyped, "4"},
		"length": {towel.Length.Typed, "28 in"}, "state": {towel.Length.State, warp.Finished},
		"width state": {towel.Width.State, warp.Finished},
		"hem":         {towel.First.Finish, warp.Hem}, "depth": {towel.First.Depth.Typed, "1 1/4 in"},
		"turn-in": {towel.First.TurnIn.Typed, "1/4 in"}, "turned": {towel.First.TurnedBefore, true},
		"outside": {towel.First.Outside, true}, "fringe": {towel.Last.Finish, warp.Fringe},
		"twist": {towel.Last.Twist.Is.String(), "10 %"}, "yarn": {towel.Last.YarnShrinkage.Typed, "5 %"},
		"knot": {towel.Last.Knot.Typed, "1/2 in"}, "inside": {towel.Last.Inside, true},
		"motif": {[2]int{towel.Motif, towel.Balance}, [2]int{6, 1}}, "far": {towel.Far, warp.Repeated},
		"border": {towel.Border.Fixed(), 10}, "order": {towel.Order.Filler(), 6},
		"trim": {towel.Trim.Typed, "1/2 in"}, "cut-off": {towel.CutOff, true},
		"panels": {towel.Panels, 2}, "seam": {towel.Seam.Typed, "1/2 in"},
		"own":     {towel.Allowances["shrinkage"].Typed, "10 %"},
		"count 1": {mat.Count, 1}, "not typed": {mat.CountTyped, ""},
		"relaxed": {mat.Length.State, warp.Relaxed}, "fell": {mat.Width.State, warp.AtFell},
		"both": {mat.First, mat.Last}, "hem text": {mat.Last.TurnIn.Typed, "1/4 in"},
		"picks": {mat.BorderPicks, 12}, "mirrored": {mat.Far, warp.Mirrored},
	} {
		same(t, what, c)
	}
}

func TestYarns(t *testing.T) {
	y := whole(t).Yarns
	white, blue := y[0], y[1]
	for what, c := range map[string][2]any{
		"count": {white.Count.Typed, "8/2 Ne"}, "fibre": {white.Composition.Typed, "cotton 60 %, linen 40 %"},
		"skein": {white.Skein.Mass.String(), "1.35 g"}, "skeins": {white.Skein.Skeins, 1},
		"relaxed": {white.Skein.Relaxed && white.Skein.Scoured, true}, "wraps": {white.Wraps.Typed, "28 wpi touching"},
		"k": {white.DiameterK.String(), "23/25"}, "put-up": {white.PutUp.Typed, "8 oz cone"},
		"price": {white.Price.Is.String(), "12.50 EUR"}, "per": {white.PriceMass.String(), "100 g"},
		"colour": {white.Colour.Hex, "#a03020"}, "stock": {white.Stock.Typed, "1450 m"},
		"handspun": {white.Handspun, true}, "grist": {blue.Count.Typed, "3360 yd/lb"},
		"each": {blue.Price.Is.String(), "8.20 EUR"}, "no weight": {int64(blue.PriceMass), int64(0)},
	} {
		same(t, what, c)
	}
}

func TestWarpAndWeft(t *testing.T) {
	p := whole(t)
	w, f := p.Warp, p.Weft
	for what, c := range map[string][2]any{
		"yarn": {w.Yarn, "white"}, "sett": {w.Sett.Typed, "24 epi"}, "in the reed": {w.Sett.State, warp.InReed},
		"stripes": {w.Stripes.Fixed(), 108}, "threading": {w.Threading.Filler(), 6}, "ends": {w.Ends.Is, 499},
		"choose": {w.Choose.String(), "down"}, "wound": {w.Wound.Typed, "5 1/2 yd"}, "floats": {w.Floats, 2},
		"float yarn": {w.FloatYarn, "blue"}, "doubled": {w.DoubledEnds, 3}, "own heddle": {w.SharedHeddle, false},
		"layers": {w.Layers, 2}, "unit": {w.Unit, 4}, "bundle": {w.Bundle, 8}, "reed": {w.Reed.Typed, "12 dpi"},
		"sleying": {fmt.Sprint(w.Sleying), "[2 3 0 3 2]"}, "second": {w.SecondTakeUp.Typed, "12 %"},
		"extra": {w.SecondExtra.Typed, "10 in"}, "picks": {f.Picks.Typed, "22 ppi finished"},
		"finished": {f.Picks.State, warp.Finished}, "weft": {f.Yarn, "white"}, "shares": {len(f.Shares), 2},
		"blue": {f.Shares[1].Yarn + f.Shares[1].Share.Typed, "blue20 %"}, "of warp": {f.OfWarp.Typed, "80 %"},
		"slack": {f.Slack.Typed, "3 %"}, "turn": {f.Turn.Typed, "1/2 in"}, "reserve": {f.Reserve.Typed, "5 %"},
		"tail": {f.Tail.Typed, "6 in"}, "hemstitch": {f.Hemstitch.Is.String(), "4"}, "repairs": {f.Repairs.Typed, "10 yd"},
		"bobbin": {f.Bobbin.Typed, "60 yd"}, "end": {f.BobbinEnd.Typed, "1 yd"},
		"sampling": {p.Sampling.Length.State, warp.Straight}, "no weft": {p.Sampling.NoWeft && p.Sampling.CutOff, true},
	} {
		same(t, what, c)
	}
}

func TestLoomAndWork(t *testing.T) {
	p := whole(t)
	l, b := p.Loom, p.Built
	for what, c := range map[string][2]any{
		"name": {l.Name, "the eight-shaft loom"}, "shafts": {l.Shafts, 8}, "treadles": {l.Treadles, 10},
		"shed": {l.Shed.String(), "countermarch"}, "width": {l.Width.Typed, "120 cm"}, "reeds": {len(l.Reeds), 3},
		"stockport": {l.Reeds[2].Dents.Typed, "60 Stockport"}, "heddles": {fmt.Sprint(l.Heddles), "[150 150 150 150 150 150 150 150]"},
		"tie-on": {l.Waste.TieOn.Typed + l.Waste.Unreachable.Typed + l.Waste.Back.Typed, "10 in12 in6 in"},
		"gives":  {l.Waste.GivesFringe, true}, "holds": {l.BeamHolds.Typed, "12 m"}, "beams": {l.Beams, 2}, "winding": {p.Work.Winding.Typed, "30 ends/min"},
		"threading": {p.Work.Threading.Typed, "3 ends/min"}, "sleying": {p.Work.Sleying.Typed, "12 ends/min"},
		"weaving": {p.Work.Weaving.Typed, "20 picks/min"}, "wage": {p.Work.Wage.Is.String(), "18 EUR"},
		"built ends": {b.Ends.Is, 498}, "built wound": {b.Wound.Typed, "5 1/4 yd"}, "built sett": {b.Sett.State, warp.InReed},
		"built picks": {b.Picks.State, warp.OnLoom}, "built note": {b.Note, "one stripe short"},
		"built waste": {b.Waste.Typed, "26 in"}, "built sampling": {b.Sampling.Typed, "9 in"},
		"woven": {len(b.Woven), 2}, "second": {b.Woven[1].OnLoom.Typed, "34 in"},
	} {
		same(t, what, c)
	}
}

// TestShorthands holds the short forms of a few keys against the long ones.
func TestShorthands(t *testing.T) {
	p := clean(t, `sley = 1
units = "metric"
tape = "slackened"
warp.sett = "6 ends/cm"
warp.floating-selvedges = 2
warp.doubled-edges = 4
loom.heddles = [10, 20]
loom.waste = "30 in"
class.in-turn = 3
sampling.weft = "blue"
yarns.blue.count = "Nm 8/2"
weft.order = "blue 2"

[[pieces]]
length = "70 cm on the loom"
width = "46 cm"
motif = 6
`)
	for what, c := range map[string][2]any{
		"units": {p.Units, warp.Units{Length: "cm", Yarn: "m", Weight: "g", Density: "cm", Count: "Nm"}},
		"tape":  {p.Tape, warp.Slackened}, "floats": {p.Warp.Floats, 2},
		"doubled": {p.Warp.DoubledEnds, 4}, "shared": {p.Warp.SharedHeddle, true},
		"heddles": {fmt.Sprint(p.Loom.Heddles), "[10 20]"}, "waste": {p.Loom.Waste.Lump.Typed, "30 in"},
		"class": {p.Class, warp.Class{InTurn: 3}}, "sampling": {p.Sampling.Yarn, "blue"},
		"motif": {[2]int{p.Pieces[0].Motif, p.Pieces[0].Balance}, [2]int{6, 0}},
		"state": {p.Pieces[0].Length.State, warp.OnLoom}, "order": {p.Weft.Order.Fixed(), 2},
	} {
		same(t, what, c)
	}
}

// TestLineEnds: a file saved elsewhere, with a byte order mark and with both
// characters at each line's end, is the same plan, and its faults stand at the
// same places.
func TestLineEnds(t *testing.T) {
	text := wholeText(t)
	other := "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n")
	one, _, _ := Decode("plan.toml", []byte(text))
	two, _, list := Decode("plan.toml", []byte(other))
	if list.Failed() {
		t.Fatalf("%+v", list.All())
	}
	if !reflect.DeepEqual(one, two) {
		t.Error("the plans differ")
	}
	bad := strings.Replace(text, `gap = "1 in"`, `gap = "1"`, 1)
	_, _, first := Decode("plan.toml", []byte(bad))
	_, _, second := Decode("plan.toml", []byte("\ufeff"+strings.ReplaceAll(bad, "\n", "\r\n")))
	if !reflect.DeepEqual(first.All(), second.All()) {
		t.Errorf("the faults differ: %+v, %+v", first.All(), second.All())
	}
}

func TestLargeFile(t *testing.T) {
	text := append([]byte("sley = 1\n#"), bytes.Repeat([]byte("x"), largest)...)
	_, _, list := Decode("plan.toml", text)
	if all := list.All(); len(all) != 1 || all[0].Code != "file.large" {
		t.Errorf("%v", list.All())
	}
}

func TestManyYarns(t *testing.T) {
	text := towel + numbered("[yarns.y%d]\n", mostYarns+1)
	_, _, list := Decode("plan.toml", []byte(text))
	if all := list.All(); len(all) != 1 || all[0].Code != "yarns.many" {
		t.Errorf("%d problems: %+v", len(all), all[0])
	}
}

func TestManyKinds(t *testing.T) {
	text := "sley = 1\nwarp.sett = \"24 epi\"\n" + strings.Repeat("[[pieces]]\n", mostKinds+1)
	_, _, list := Decode("plan.toml", []byte(text))
	if all := list.All(); len(all) != 1 || all[0].Code != "pieces.many" {
		t.Errorf("%d problems: %+v", len(all), all[0])
	}
}
