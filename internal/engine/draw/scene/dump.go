package scene

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Dump is the document in a form for people and for goldens: one line for each
// item, what lies in a group indented, lengths in mm to the micrometre.
func Dump(doc Document) string {
	d := &dump{}
	d.line(0, "document %q author %q subject %q date %q", doc.Title, doc.Author, doc.Subject, doc.Date)
	for _, p := range doc.Pages {
		d.line(0, "page %s x %s", Number(p.Width), Number(p.Height))
		d.items(1, p.Items)
	}
	return d.text.String()
}

// Number is a length in mm to the micrometre, without needless zeros.
func Number(mm float64) string {
	text := strconv.FormatFloat(math.Round(mm*1000)/1000, 'f', -1, 64)
	if text == "-0" {
		return "0"
	}
	return text
}

type dump struct{ text strings.Builder }

func (d *dump) line(depth int, format string, args ...any) {
	line := strings.Repeat("  ", depth) + fmt.Sprintf(format, args...)
	d.text.WriteString(strings.TrimRight(line, " ") + "\n")
}

func (d *dump) items(depth int, items []Item) {
	for _, it := range items {
		d.item(depth, it)
	}
}

func (d *dump) item(depth int, it Item) {
	switch it := it.(type) {
	case Line:
		d.line(depth, "line %s %s %s", at(it.X1, it.Y1), at(it.X2, it.Y2), it.Pen)
	case Polyline:
		d.line(depth, "%s %s %s%s", it.noun(), places(it.Points), it.Pen, it.Fill.asFill())
	case Rect:
		d.line(depth, "rect %s size %s %s%s", at(it.X, it.Y), at(it.Width, it.Height), it.Pen, it.Fill.asFill())
	case Circle:
		d.line(depth, "circle %s radius %s %s%s", at(it.X, it.Y), Number(it.Radius), it.Pen, it.Fill.asFill())
	case Path:
		d.line(depth, "path %s%s%s", it.steps(), it.Pen, it.Fill.asFill())
	case Text:
		d.line(depth, "text %s %s %q%s", at(it.X, it.Y), it.manner(), it.Text, it.Box.named(" in"))
	case Picture:
		d.line(depth, "picture %s size %s cells %d x %d of %d inks, mark %08x", at(it.X, it.Y), at(it.Width, it.Height),
			it.Cells.Rect.Dx(), it.Cells.Rect.Dy(), len(it.Cells.Palette), it.Mark())
	case Group:
		d.line(depth, "group %s%s", at(it.X, it.Y), it.Clip.named(" clip"))
		d.items(depth+1, it.Items)
	}
}

func at(x, y float64) string { return Number(x) + "," + Number(y) }

func places(points []Point) string {
	var words []string
	for _, p := range points {
		words = append(words, at(p.X, p.Y))
	}
	return strings.Join(words, " ")
}

func (l Polyline) noun() string {
	if l.Closed {
		return "polygon"
	}
	return "polyline"
}

func (b Box) named(noun string) string {
	if b.IsZero() {
		return ""
	}
	return fmt.Sprintf("%s %s size %s", noun, at(b.X, b.Y), at(b.Width, b.Height))
}

func (p Path) steps() string {
	var text strings.Builder
	for _, s := range p.Segments {
		text.WriteString(s.String() + " ")
	}
	return text.String()
}

// String is the step as SVG writes it: M, L and C with places, Z.
func (s Segment) String() string {
	switch s.Step {
	case MoveTo:
		return "M" + at(s.To.X, s.To.Y)
	case LineTo:
		return "L" + at(s.To.X, s.To.Y)
	case CubicTo:
		return "C" + places([]Point{s.C1, s.C2, s.To})
	}
	return "Z"
}

// String is the pen as the dump has it, empty for one that draws nothing.
func (p Pen) String() string {
	if !p.Draws() {
		return ""
	}
	text := "pen " + Number(p.Width) + " " + p.Ink.OrBlack().Hex()
	for i, d := range p.Dash {
		text += [2]string{" dash ", ","}[min(i, 1)] + Number(d)
	}
	if p.Round {
		text += " round"
	}
	return text
}

// Hex is the ink as the web writes it, #rrggbb.
func (k Ink) Hex() string { return fmt.Sprintf("#%02x%02x%02x", k.R, k.G, k.B) }

func (k Ink) asFill() string {
	if k.IsNone() {
		return ""
	}
	return " fill " + k.Hex()
}

func (t Text) manner() string {
	text := t.Font.String() + " " + Number(t.Size) + " " + t.Anchor.String()
	if t.Angle != 0 {
		text += " turned " + Number(t.Angle)
	}
	if !t.Ink.IsNone() {
		text += " " + t.Ink.Hex()
	}
	return text
}

// String names the anchor as SVG does.
func (a Anchor) String() string {
	switch a {
	case Middle:
		return "middle"
	case End:
		return "end"
	}
	return "start"
}

// String names the font: "serif bold".
func (f Font) String() string {
	text := "sans"
	if f.Family == Serif {
		text = "serif"
	}
	if f.Bold {
		text += " bold"
	}
	if f.Italic {
		text += " italic"
	}
	return text
}
