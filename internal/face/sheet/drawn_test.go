package sheet

import (
	"flag"
	"fmt"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"sley/internal/app"
	"sley/internal/engine/draw/check"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// fewDrawn is how many plans are drawn unless -rapid.checks says otherwise: a plan
// is laid out on hundreds of pages.
const (
	fewDrawn = "6"
	fewest   = "1" // with the race detector
)

// How far, in mm, the boxes of neighbouring lines may share ground: a capital with
// two accents above it, 1.3 of its size, comes near to a tail in the line above, 0.3
// of its own. Lines of a tape stand closest.
const (
	drawnSlack = 0.8
	tapeSlack  = 1.3
)

// Whatever a weaver writes, every sheet is made on both papers, with no letter
// beyond its margin, over another or too small, and the file can be written.
func TestDrawnPlansAreLaidOut(t *testing.T) {
	if f := flag.Lookup("rapid.checks"); f.Value.String() == f.DefValue {
		few := fewDrawn
		if testing.Short() {
			few = fewest
		}
		if err := flag.Set("rapid.checks", few); err != nil {
			t.Fatal(err)
		}
		defer flag.Set("rapid.checks", f.DefValue)
	}
	drawn, made := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text := drawText(t)
		drawn++
		r, list := app.ReckonPlan(app.Source{Name: "drawn.toml", Text: []byte(text)}, "", true)
		if r == nil {
			t.Logf("no reckoning: %v", list.All())
			return
		}
		made++
		isLaidOut(t, r, text)
	})
	t.Logf("%d plans drawn, %d laid out", drawn, made)
	if drawn > 10 && made*2 < drawn {
		t.Errorf("of %d plans drawn only %d could be reckoned", drawn, made)
	}
}

// isLaidOut makes every sheet of a plan on both papers and has them read.
func isLaidOut(t interface {
	Errorf(form string, values ...any)
}, r *reckon.Result, text string,
) {
	for _, paper := range PaperNames() {
		for _, part := range byRule(r) {
			doc, err := Make(r, present.UnitsOf(r.Plan), Options{Sheets: part.sheets, Paper: paper})
			if err != nil {
				t.Errorf("%v, of\n%s", err, text)
				return
			}
			for _, f := range check.Read(doc, check.Rules{MinPt: 10, Margin: part.margin, Slack: part.slack}) {
				t.Errorf("on %s: %s, of\n%s", paper, f, text)
			}
			if _, err := app.SheetFiles(doc, app.PDF, 0); err != nil {
				t.Errorf("on %s: %v, of\n%s", paper, err, text)
			}
		}
	}
}

// extremes are plans that a drawn one seldom reaches: each odd name in every place
// that takes one, the most of everything, and the least.
func extremes() []string {
	many, stripes, kinds := "", "", ""
	for i := range 40 {
		many += fmt.Sprintf("[yarns.yarn-number-%d]\ncount = \"8/2 Ne\"\nfibre = \"cotton\"\nput-up = \"250 g tube\"\n", i)
	}
	for i := range 500 {
		stripes += fmt.Sprintf("yarn-number-%d %d, ", i*7%40, 1+i%5)
	}
	for i := range 60 {
		kinds += fmt.Sprintf("[[pieces]]\nname = \"kind %d\"\ncount = 40\nlength = \"28 in\"\nwidth = \"40 in\"\nboth = \"hem 1 in\"\n", i)
	}
	const blanket = "[[pieces]]\nlength = \"30 m\"\nwidth = \"110 cm\"\n"
	out := []string{
		"sley = 1\nwarp.sett = \"24 epi\"\n[[pieces]]\nlength = \"0.5 in\"\nwidth = \"0.5 in\"\n",
		"sley = 1\nunits = \"metric\"\nwarp.sett = \"5 ends/cm\"\n" + blanket,
		"sley = 1\nunits = \"imperial\"\nwarp.sett = \"5 ends/cm\"\n" + blanket,
		"sley = 1\n" + kinds + many + "[warp]\nsett = \"24 epi\"\nstripes = " + quoted(strings.TrimSuffix(stripes, ", ")) +
			"\n[loom]\nreeds = [\"12 dpi\"]\n[winding]\nboard = \"usual\"\nbout = 30\nraddle = \"2/in\"\nsection = \"2 in\"\n",
	}
	for _, name := range append([]string{strings.Repeat("W", 300), strings.Repeat("i", 300), strings.Repeat("織", 300), strings.Repeat("long word ", 30)}, odd...) {
		out = append(out, everywhere(name))
	}
	return out
}

// everywhere is a plan with a name in each place that takes any text; a yarn's is
// made of its letters.
func everywhere(name string) string {
	yarn := "y" + strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return r
		}
		return -1
	}, name)
	q, y := quoted(name), quoted(yarn)
	return "sley = 1\nname = " + q + "\nnote = " + q + "\ngap = \"1 in\"\n" +
		"[extras]\n" + quoted("x"+name) + " = \"3 in\"\n" +
		"[[pieces]]\nname = " + q + "\ncount = 3\nlength = \"28 in\"\nwidth = \"18 in\"\nboth = \"hem 1 in\"\nborder = " + quoted(yarn+" 4") + "\n" +
		"[yarns." + y + "]\ncount = \"8/2 Ne\"\nfibre = \"cotton\"\nput-up = \"8 oz cone\"\nhandspun = true\n" +
		"[yarns.b]\ncount = \"8/2 Ne\"\n" +
		"[warp]\nsett = \"24 epi\"\nstripes = " + quoted("("+yarn+" 12, b 4) x fill") + "\nthreading = \"(1 2 3 4) x fill\"\n" +
		"floating-selvedges = { ends = 2, yarn = " + y + " }\ndoubled-edges = 2\n" +
		"[winding]\nboard = \"usual\"\nbout = 60\nraddle = \"2/in\"\nsection = \"2 in\"\n" +
		"[loom]\nname = " + q + "\nshafts = 4\nreeds = [\"12 dpi\"]\nheddles = 10\n" +
		"[class]\nlooms = 3\n[built]\nnote = " + q + "\n"
}

func TestExtremePlansAreLaidOut(t *testing.T) {
	all := extremes()
	if testing.Short() {
		all = all[:1]
	}
	for _, text := range all {
		r, list := app.ReckonPlan(app.Source{Name: "extreme.toml", Text: []byte(text)}, "", true)
		if r == nil {
			t.Errorf("no reckoning: %v, of\n%s", list.All(), text)
			continue
		}
		isLaidOut(t, r, text)
	}
}

// odd are names that pages have trouble with.
var odd = []string{
	"", "towel", "Łucja’s “galley” towels — ½", "🧶🪡 yarn 👩🏽‍🌾", "מגבות למטבח של הסירה", "مناشف المطبخ", "e\u0301\u0302\u0323a\u0308\u0304 combining",
	"\u202etfel ot thgir\u202c", "\x01\x07\x1b[31m\x7f", "tab\tand\nline", "亜麻布の手拭い、六枚", "\u200b\u00ad\ufeff", "<&>\"'\\", "% ( ) {name} {n}",
}

// drawSaid draws a name or a note: an odd one, a long one without a place to break
// it, or anything.
func drawSaid(t *rapid.T, what string) string {
	switch rapid.IntRange(0, 4).Draw(t, what+" kind") {
	case 0, 1:
		return rapid.SampledFrom(odd).Draw(t, what)
	case 2:
		return strings.Repeat(rapid.SampledFrom([]string{"W", "i", "織", "word ", "a-b", "🧶", "e\u0301"}).Draw(t, what), 300)
	case 3:
		return rapid.StringN(0, 60, -1).Draw(t, what)
	}
	return "plain " + what
}

// quoted is a text as TOML writes it, with everything unusual escaped.
func quoted(text string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, r := range strings.ToValidUTF8(text, "?") {
		if r < ' ' || r == '"' || r == '\\' || r == 0x7f {
			fmt.Fprintf(&out, `\u%04X`, r)
		} else {
			out.WriteRune(r)
		}
	}
	return out.String() + `"`
}

// planText is a plan file being written.
type planText struct {
	strings.Builder
	t     *rapid.T
	yarns []string
}

func (p *planText) put(form string, values ...any) { fmt.Fprintf(p, form+"\n", values...) }

// some writes a line in one plan of two.
func (p *planText) some(form string, values ...any) {
	if rapid.Bool().Draw(p.t, "with "+form) {
		p.put(form, values...)
	}
}

// one is a value of several.
func (p *planText) one(what string, values ...string) string {
	return rapid.SampledFrom(values).Draw(p.t, what)
}

func (p *planText) number(what string, low, high int) int {
	return rapid.IntRange(low, high).Draw(p.t, what)
}

func (p *planText) yarn() string { return rapid.SampledFrom(p.yarns).Draw(p.t, "yarn") }

// drawText draws a plan file: names of every script, up to 40 yarns, 500 stripes
// and 60 kinds of pieces, from half an inch to thirty metres, in both measures.
func drawText(t *rapid.T) string {
	p := &planText{t: t}
	p.put("sley = 1")
	p.some("name = %s", quoted(drawSaid(t, "name")))
	p.some("note = %s", quoted(drawSaid(t, "note")))
	p.some(`date = "2026-03-02"`)
	p.some("weave = %q", p.one("weave", "plain", "point twill", "double cloth"))
	p.some("wash = %q", p.one("wash", "washed", "fulled", "unwashed"))
	p.some(`tape = "slackened"`)
	p.some("gap = %q", p.one("gap", "1 in", "25 mm"))
	p.some(`header = "2 in"`)
	p.some("units = %q", p.one("units", "metric", "imperial"))
	p.drawYarns()
	p.drawPieces()
	p.drawWarp()
	p.drawRest()
	return p.String()
}

func (p *planText) drawYarns() {
	for i := range p.number("yarns", 1, 40) {
		begin := rapid.StringOfN(rapid.RuneFrom(nil, unicode.Latin, unicode.Han, unicode.Hebrew, unicode.Cyrillic), 1, 30, -1).Draw(p.t, "yarn name")
		name := "y" + strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) {
				return r
			}
			return '-'
		}, begin) + fmt.Sprint(i)
		p.yarns = append(p.yarns, name)
		p.put("[yarns.%s]", quoted(name))
		p.put("count = %q", p.one("count", "8/2 Ne", "16/2 Nm", "R 60 tex / 2", "3360 yd/lb"))
		p.some("fibre = %q", p.one("fibre", "cotton", "linen", "wool 60 %, silk 40 %"))
		p.some("put-up = %q", p.one("put-up", "8 oz cone", "250 g tube"))
		p.some("colour = %s", quoted(rapid.SampledFrom(odd[1:9]).Draw(p.t, "colour")+" #a03020"))
		p.some(`price = "12.50 EUR"`)
		p.some(`stock = "900 m"`)
		p.some("handspun = true")
	}
}

func (p *planText) drawPieces() {
	for i := range p.number("kinds", 1, 60) {
		p.put("[[pieces]]")
		p.some("name = %s", quoted(drawSaid(p.t, "piece")))
		p.put("count = %d", p.number("count", 1, 40))
		p.put("length = %q", p.one("length", "0.5 in", "28 in", "30 m", "1 m 20 cm"))
		if i == 0 {
			p.put("width = %q", p.one("width", "0.5 in", "18 in", "110 cm"))
		}
		p.some("both = %q", p.one("ends", "hem 1 in + 1/4 in", "fringe 5 in", "hem 2 cm turned before washing", "none"))
		p.some(`motif = "6 + 1"`)
		p.some("border = %s", quoted(fmt.Sprintf("%s 4, %s 2", p.yarn(), p.yarn())))
		p.some("cut-off = true")
		p.some("panels = %d", p.number("panels", 1, 3))
	}
}

func (p *planText) drawWarp() {
	p.put("[warp]")
	p.put("sett = %q", p.one("sett", "24 epi", "6 ends/cm", "8 epi"))
	var stripes []string
	for range p.number("stripes", 0, 500) {
		stripes = append(stripes, fmt.Sprintf("%s %d", p.yarn(), 1+len(stripes)%7))
	}
	if len(stripes) > 0 {
		p.put("stripes = %s", quoted(strings.Join(stripes, ", ")+p.one("fill", "", fmt.Sprintf(", (%s 2, %s 1 at 30 epi) x fill", p.yarn(), p.yarn()))))
	}
	p.some(`threading = "(1 2 3 4 3 2) x fill, 1"`)
	p.some("floating-selvedges = %s", p.one("floats", "2", "4", `{ ends = 2, yarn = `+quoted(p.yarns[0])+` }`))
	p.some("doubled-edges = %s", p.one("doubled", "2", `{ ends = 4, heddle = "own" }`))
	p.some(`second-beam = { take-up = "12 %%", extra = "10 in" }`)
	p.some("bundle = 8")
}

func (p *planText) drawRest() {
	p.put("[weft]\nyarn = %s", quoted(p.yarn()))
	p.put("picks = %q", p.one("picks", "22 ppi", "7.5 picks/cm", "10 ppi finished"))
	p.some(`tail = "3 in"`)
	p.some("bobbin = \"60 yd\"\nbobbin-end = \"1 yd\"")
	p.some("[sampling]\nlength = \"10 in\"")
	p.put("[winding]")
	p.some("%s", p.one("way", `board = "usual"`, `mill = "2 yd"`, `pegs = ["start 0 in, 0 in", "cross-1 1 yd, 0 in", "織🧶 1 yd, 1 yd", "`+strings.Repeat("end", 30)+` 0 in, 1 yd"]`))
	p.some("together = %d", p.number("together", 1, 4))
	p.some("bout = %d\ntie = 20", p.number("bout", 8, 200))
	p.some("raddle = %q", p.one("raddle", "2/in", "1/cm"))
	p.some("section = %q", p.one("section", "2 in", "5 cm"))
	p.put("[loom]")
	p.some("name = %s", quoted(drawSaid(p.t, "loom")))
	p.put("shafts = %d", p.number("shafts", 1, 16))
	p.some(`width = "120 cm"`)
	p.some("reeds = %s", p.one("reeds", `["12 dpi"]`, `["8 dpi", "10 dpi", "40/10 cm", "50/10 cm"]`))
	p.some("heddles = 40")
	p.some("beams = 2")
	p.some("[extras]\n%s = \"13 in\"", quoted("x"+drawSaid(p.t, "extra")))
	p.some("[work]\nwinding = \"20 ends/min\"\nweaving = \"15 picks/min\"\nwage = \"18 EUR\"")
	p.some("[class]\n%s = %d", p.one("class", "looms", "in-turn"), p.number("class", 1, 70))
}
