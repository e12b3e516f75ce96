package planfile

import (
	"fmt"
	"strings"
	"testing"
)

// TestFind: problems of the reckoning find their line, and what is not in the
// file the nearest table around it.
func TestFind(t *testing.T) {
	text := `sley = 1
warp.sett = "24 epi"

[[pieces]]
length = "28 in"
first = { hem = "1 in" }

[[pieces]]
  width = "18 in"
note = """
long"""
[yarns.white]
count = "8/2 Ne"
[loom]
reeds = ["12 dpi", "50/10 cm"]
heddles = [1,
 2]
`
	_, places, _ := Decode("plan.toml", []byte(text))
	for path, want := range map[string]string{
		"pieces[0].length": "5:11+5", "pieces[0].width": "4:3+6", "pieces[1].width": "9:12+5",
		"pieces[1]": "8:3+6", "pieces[7].width": "4:3+6", "pieces": "4:3+6", "pieces[0].first.hem": "6:18+4",
		"pieces[0].first": "6:9+16", "pieces[0].first.knot": "6:9+16", "warp.sett": "2:14+6",
		"warp": "2:1+4", "warp.reed": "2:1+4", "yarns.white.count": "13:10+6", "yarns.white": "12:8+5",
		"yarns.blue.count": "12:2+5", "yarns": "12:2+5", "loom.reeds[1]": "15:21+8", "loom.reeds": "15:9+22",
		"loom.heddles": "16:11+3", "sley": "1:8+1", "pieces[1].note": "11:1+4", "pieces[x]": "4:3+6",
		"pieces[-1]": "4:3+6", "weft.picks": "0:0+0", "": "0:0+0", "nothing": "0:0+0",
	} {
		p, ok := places.Find(path)
		if got := fmt.Sprintf("%d:%d+%d", p.Line, p.Col, p.Width); got != want || !ok || p.File != "plan.toml" {
			t.Errorf("%s stands at %s %v, want %s", path, got, ok, want)
		}
	}
	if _, ok := (Places{}).Find("pieces"); ok {
		t.Error("no file at all has a place")
	}
}

// TestPlaceCountsCharacters: a column counts characters, however many bytes
// each takes, and wherever the line stands in a long file.
func TestPlaceCountsCharacters(t *testing.T) {
	for _, before := range []string{"", "æ", strings.Repeat("å line of ß\r\n", 50)} {
		text := before + "blåbær → blå"
		src := newSource("f", []byte(text))
		at := strings.LastIndex(text, "blå")
		p := src.place(span{at, len(text)})
		lines := strings.Split(text, "\n")
		line := []rune(lines[len(lines)-1])
		if p.Line != len(lines) || p.Col != len(line)-2 || p.Width != 3 || p.Excerpt != string(line) {
			t.Errorf("%+v in a line of %d characters", p, len(line))
		}
	}
}

func TestPlaceAtTheEdges(t *testing.T) {
	for _, c := range []struct {
		text string
		at   span
		want string
	}{
		{"", span{0, 0}, "1:1+1 "},
		{"abc", span{3, 3}, "1:4+1 abc"},
		{"abc\n", span{3, 9}, "1:4+1 abc"},
		{"abc\n", span{4, 4}, "2:1+1 "},
		{"ab\r\ncd", span{0, 6}, "1:1+2 ab"},
		{"ab\r\ncd", span{4, 6}, "2:1+2 cd"},
		{"", span{5, 9}, "1:1+1 "},
	} {
		p := newSource("f", []byte(c.text)).place(c.at)
		if got := fmt.Sprintf("%d:%d+%d %s", p.Line, p.Col, p.Width, p.Excerpt); got != c.want {
			t.Errorf("%v of %q is %s, want %s", c.at, c.text, got, c.want)
		}
	}
}

// TestFaultInsideText: a fault deep in a text is pointed at, and one in a text
// with escapes at all of it.
func TestFaultInsideText(t *testing.T) {
	for line, want := range map[string]string{
		`stripes = "hvit 4, blå 4, grøn 4"`:           "3:27+4",
		`stripes = "hvit 4, bl\u00e5 4, grøn 4"`:      "3:11+28",
		"stripes = '''\nhvit 4,\nblå 4, grøn 4'''":    "5:8+4",
		"stripes = \"\"\"hvit 4, blå 4, grøn 4\"\"\"": "3:29+4",
		`stripes = "hvit 4, blå 4,\tgrøn 4"`:          "3:11+24",
		`stripes = 'hvit 4,	blå 4, grøn 4'`:           "3:27+4",
	} {
		text := "sley = 1\n[warp]\n" + line + "\n[yarns.hvit]\ncount = \"8/2 Ne\"\n[yarns.\"blå\"]\ncount = \"8/2 Ne\"\n"
		_, _, list := Decode("plan.toml", []byte(text))
		got := ""
		for _, p := range list.All() {
			if p.Code == "order.name-unknown" {
				got += fmt.Sprintf("%d:%d+%d", p.Place.Line, p.Place.Col, p.Place.Width)
			}
		}
		if got != want {
			t.Errorf("%s has its fault at %s, want %s", line, got, want)
		}
	}
}
