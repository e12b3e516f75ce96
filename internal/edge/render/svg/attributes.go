package svg

import (
	"math"
	"strconv"
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/third_party/fonts"
)

func attr(name string, mm float64) string { return " " + name + `="` + scene.Number(mm) + `"` }

func fill(k scene.Ink) string {
	switch {
	case k.IsNone():
		return ` fill="none"`
	case k == scene.Black: // what SVG fills with when nothing is said
		return ""
	}
	return ` fill="` + k.Hex() + `"`
}

func stroke(p scene.Pen) string {
	if !p.Draws() {
		return ""
	}
	text := ` stroke="` + p.Ink.OrBlack().Hex() + `"` + attr("stroke-width", p.Width)
	if len(p.Dash) > 0 {
		var lengths []string
		for _, d := range p.Dash {
			lengths = append(lengths, scene.Number(d))
		}
		text += ` stroke-dasharray="` + strings.Join(lengths, " ") + `"`
	}
	if p.Round {
		text += ` stroke-linecap="round" stroke-linejoin="round"`
	}
	return text
}

// clip writes a clip path and returns the attribute that refers to it. The name
// holds the box itself, so that two drawings in one page may share a name without
// harm.
func (e *encoder) clip(b scene.Box, depth int) string {
	name := "clip"
	for _, n := range []float64{b.X, b.Y, b.Width, b.Height} {
		name += "_" + strings.ReplaceAll(scene.Number(n), "-", "m")
	}
	name = strings.ReplaceAll(name, ".", "p")
	if !e.clips[name] {
		e.clips[name] = true
		e.clipPath(name, b, depth)
	}
	return ` clip-path="url(#` + name + `)"`
}

func (e *encoder) clipPath(name string, b scene.Box, depth int) {
	e.print(`<clipPath id="`, name, `"><rect`, attr("x", b.X), attr("y", b.Y), attr("width", max(b.Width, 0)),
		attr("height", max(b.Height, 0)), "/></clipPath>\n", strings.Repeat(" ", depth))
}

// stacks are the families to try in turn: our own, the ones it is made from, and
// what a system may have instead.
var stacks = map[scene.Family]string{
	scene.Serif: fonts.Serif + ", Gentium Plus, Georgia, serif",
	scene.Sans:  fonts.Sans + ", Andika, Verdana, sans-serif",
}

// blank says whether there is nothing to see of a text.
func blank(t scene.Text) bool { return strings.Trim(letter.Clean(t.Text, t.Font), " ") == "" }

// text gives the width the layout reckoned with, so that other letters than ours
// stay in their place, too.
func (e *encoder) text(t scene.Text) {
	words := letter.Clean(t.Text, t.Font)
	e.print("<text", attr("x", t.X), attr("y", t.Y), face(t), placing(t),
		attr("textLength", letter.Width(words, t.Font, t.Size)), fill(t.Ink.OrBlack()))
	if strings.Contains(" "+words+" ", "  ") {
		e.print(` xml:space="preserve"`)
	}
	e.print(">", escape(words), "</text>\n")
}

// face is the attributes of the letters; sizes are to a ten-thousandth of a
// millimetre, so that 100 letters stray by less than one hundredth.
func face(t scene.Text) string {
	font := letter.Resolve(t.Font)
	size := strconv.FormatFloat(math.Round(t.Size*scene.MMPerPoint*1e4)/1e4, 'f', -1, 64)
	text := ` font-family="` + stacks[font.Family] + `" font-size="` + size + `"`
	if font.Bold {
		text += ` font-weight="bold"`
	}
	if font.Italic {
		text += ` font-style="italic"`
	}
	return text
}

func placing(t scene.Text) string {
	text := ""
	if t.Anchor != scene.Start {
		text = ` text-anchor="` + t.Anchor.String() + `"`
	}
	if t.Angle != 0 {
		text += ` transform="rotate(` + scene.Number(-t.Angle) + " " + scene.Number(t.X) + " " + scene.Number(t.Y) + `)"`
	}
	return text
}

// escape writes text so that it may stand in XML, without the characters that XML
// forbids (XML 1.0, section 2.2).
func escape(text string) string {
	allowed := func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' || r == '\uFFFE' || r == '\uFFFF' {
			return -1
		}
		return r
	}
	return escapes.Replace(strings.Map(allowed, strings.ToValidUTF8(text, "")))
}

var escapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")
