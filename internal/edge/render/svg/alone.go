package svg

import (
	"bufio"
	"encoding/base64"
	"fmt"
	"io"
	"strings"

	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/third_party/fonts"
)

// EncodeAlone writes one page as a file that stands by itself: as Encode does, but
// with the letters it draws inside it, so that it looks the same where our fonts
// are not installed. A program that passes over letters inside a file still has the
// families to try and the widths to keep. The title names the file and its text
// can be read by screen readers. Errors are those of Encode.
func EncodeAlone(w io.Writer, page scene.Page, title string) error {
	if err := page.Validate(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	out := bufio.NewWriter(w)
	e := &encoder{out: out, clips: map[string]bool{}}
	e.begin(page)
	e.print(">\n")
	if title != "" {
		e.print("<title>", escape(title), "</title>\n")
	}
	e.letters(page)
	e.items(page.Items, 1)
	e.print("</svg>\n")
	return out.Flush()
}

// letters writes the fonts of the page, each with the characters drawn in it.
func (e *encoder) letters(page scene.Page) {
	drawn := map[scene.Font]*strings.Builder{}
	gather(page.Items, drawn)
	if len(drawn) == 0 {
		return
	}
	e.print("<style>\n")
	for _, f := range cuts {
		if text := drawn[f]; text != nil {
			e.print("@font-face{", described(f), "src:url(data:font/ttf;base64,",
				base64.StdEncoding.EncodeToString(letter.Subset(f, text.String())), ")}\n")
		}
	}
	e.print("</style>\n")
}

// cuts are the fonts of the house in the order in which they are written.
var cuts = []scene.Font{
	{Family: scene.Sans},
	{Family: scene.Sans, Bold: true},
	{Family: scene.Serif},
	{Family: scene.Serif, Bold: true},
	{Family: scene.Serif, Italic: true},
}

// gather puts the texts of items to the fonts they are drawn in.
func gather(items []scene.Item, drawn map[scene.Font]*strings.Builder) {
	for _, it := range items {
		switch it := it.(type) {
		case scene.Group:
			gather(it.Items, drawn)
		case scene.Text:
			if blank(it) {
				continue
			}
			f := letter.Resolve(it.Font)
			if drawn[f] == nil {
				drawn[f] = &strings.Builder{}
			}
			drawn[f].WriteString(letter.Clean(it.Text, f))
		}
	}
}

// described is how a rule for a font says which it is (CSS Fonts Module Level 3,
// section 4).
func described(f scene.Font) string {
	text := `font-family:"` + fonts.Sans + `";`
	if f.Family == scene.Serif {
		text = `font-family:"` + fonts.Serif + `";`
	}
	if f.Bold {
		text += "font-weight:bold;"
	}
	if f.Italic {
		text += "font-style:italic;"
	}
	return text
}
