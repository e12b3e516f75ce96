package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

var update = flag.Bool("update", false, "write the goldens anew")

func encode(t testing.TB, page scene.Page, title string) string {
	t.Helper()
	var out bytes.Buffer
	if err := svg.Encode(&out, page, title); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func page(items ...scene.Item) scene.Page { return scene.Page{Width: 100, Height: 50, Items: items} }

func TestSpecimen(t *testing.T) {
	for name, p := range map[string]scene.Page{"sheet": specimen.Sheet(), "letters": specimen.Letters()} {
		golden := "testdata/" + name + ".svg"
		got := encode(t, p, "A specimen & its <title>")
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
			t.Errorf("%s has changed; when it should, go test -update (-want +got):\n%s", name, diff)
		}
	}
}

func TestEveryItem(t *testing.T) {
	pen := scene.Pen{Width: 0.25, Dash: []float64{2, 1}, Round: true}
	for _, c := range []struct {
		name string
		item scene.Item
		want string
	}{
		{"line", scene.Line{X1: 1, X2: 2.5, Pen: pen}, `<line x1="1" y1="0" x2="2.5" y2="0" stroke="#000000" stroke-width="0.25" stroke-dasharray="2 1" stroke-linecap="round" stroke-linejoin="round"/>`},
		{"an open polyline has no fill", scene.Polyline{Points: []scene.Point{{X: 1}, {X: 2}}, Fill: scene.Black}, `<polyline points="1,0 2,0" fill="none"/>`},
		{"polygon", scene.Polyline{Points: []scene.Point{{X: 1}, {X: 2}}, Closed: true, Fill: scene.RGB(1, 2, 3)}, `<polygon points="1,0 2,0" fill="#010203"/>`},
		{"rect in black", scene.Rect{Width: 1, Height: 2, Fill: scene.Black}, `<rect x="0" y="0" width="1" height="2"/>`},
		{"circle", scene.Circle{X: 1, Y: 2, Radius: 3, Pen: scene.Solid(1)}, `<circle cx="1" cy="2" r="3" fill="none" stroke="#000000" stroke-width="1"/>`},
		{"path", scene.Path{Fill: scene.Black}.Move(1, 2).Line(3, 4).Cubic(1, 2, 3, 4, 5, 6).Shut(), `<path d="M1,2L3,4C1,2 3,4 5,6Z"/>`},
		{"moved group", scene.Group{X: 1, Y: -2, Items: []scene.Item{scene.Line{}}}, `<g transform="translate(1 -2)">`},
		{"clip", scene.Group{Clip: scene.Box{X: -1, Width: 2.5, Height: 3}}, `<clipPath id="clip_m1_0_2p5_3"><rect x="-1" y="0" width="2.5" height="3"/></clipPath>`},
		{"words", scene.Text{X: 1, Y: 2, Size: 72, Text: "a<b> & \"c\""}, `font-size="25.4"`},
		{"words escaped", scene.Text{X: 1, Y: 2, Size: 72, Text: "a<b> & \"c\""}, `>a&lt;b&gt; &amp; &quot;c&quot;</text>`},
		// A figure of the Sans is 1200 units of 2048 wide: see package letter.
		{"width", scene.Text{Size: 72, Text: "00"}, `textLength="29.766"`},
		{"end", scene.Text{Size: 72, Anchor: scene.End, Text: "0"}, ` text-anchor="end"`},
		{"turned the other way about", scene.Text{X: 3, Y: 4, Size: 9, Angle: 90, Text: "0"}, ` transform="rotate(-90 3 4)"`},
		{"bold", scene.Text{Size: 9, Font: scene.Font{Bold: true}, Text: "0"}, ` font-weight="bold"`},
		{"italic", scene.Text{Size: 9, Font: scene.Font{Family: scene.Serif, Italic: true}, Text: "0"}, `font-family="Sley Serif, Gentium Plus, Georgia, serif" font-size="3.175" font-style="italic"`},
		{"spaces kept", scene.Text{Size: 9, Text: "a  b"}, ` xml:space="preserve">a  b<`},
	} {
		if got := encode(t, page(c.item), ""); !strings.Contains(got, c.want) {
			t.Errorf("%s: no %s in\n%s", c.name, c.want, got)
		}
	}
}

func TestOneClipForOneBox(t *testing.T) {
	group := scene.Group{Clip: scene.Box{Width: 1, Height: 1}}
	if got := encode(t, page(group, group), ""); strings.Count(got, "<clipPath") != 1 || strings.Count(got, "clip-path=") != 2 {
		t.Error(got)
	}
}

func TestTextWithoutInkIsLeftOut(t *testing.T) {
	if got := encode(t, page(scene.Text{Size: 9, Text: " \x00"}), ""); strings.Contains(got, "text") {
		t.Error(got)
	}
}

// A strict content security policy forbids style attributes and elements.
func TestNothingAContentSecurityPolicyForbids(t *testing.T) {
	got := encode(t, specimen.Letters(), "t") + encode(t, specimen.Sheet(), "t")
	for _, bad := range []string{" style=", "<style", "<script", "href", "http://www.w3.org/1999/xlink"} {
		if strings.Contains(got, bad) {
			t.Errorf("there is %q", bad)
		}
	}
}

func TestTitleIsForReaders(t *testing.T) {
	if got := encode(t, page(), "a < b\x00\x07\xff"); !strings.Contains(got, `role="img">`+"\n<title>a &lt; b</title>") {
		t.Error(got)
	}
	if got := encode(t, page(), ""); strings.Contains(got, "title") || strings.Contains(got, "role") {
		t.Error(got)
	}
}

func wellFormed(text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

func TestWellFormed(t *testing.T) {
	for _, p := range specimen.Document().Pages {
		if err := wellFormed(encode(t, p, "\"<&>'\x01\ufffe")); err != nil {
			t.Error(err)
		}
	}
	if wellFormed("<svg>&</svg>") == nil {
		t.Error("the check finds nothing")
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestErrors(t *testing.T) {
	if err := svg.Encode(fullDisk{}, specimen.Sheet(), ""); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Error(err)
	}
	if err := svg.Encode(io.Discard, scene.Page{}, ""); err == nil || !strings.Contains(err.Error(), "page of 0") {
		t.Error(err)
	}
}

func FuzzWellFormed(f *testing.F) {
	f.Add("a<b", "cafe\u0301 & ]]>")
	f.Add("\x00\xff", "🧶\ufffe")
	f.Fuzz(func(t *testing.T, title, text string) {
		out := encode(t, page(scene.Text{Size: 10, Text: text}), title)
		if err := wellFormed(out); err != nil {
			t.Errorf("%v in\n%s", err, out)
		}
	})
}

func BenchmarkSheet(b *testing.B) {
	p := specimen.Sheet()
	for b.Loop() {
		if err := svg.Encode(io.Discard, p, "sheet"); err != nil {
			b.Fatal(err)
		}
	}
}
