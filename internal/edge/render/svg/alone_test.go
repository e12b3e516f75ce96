package svg_test

import (
	"bytes"
	"encoding/base64"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"

	"sley/internal/edge/render/svg"
	"sley/internal/engine/draw/letter"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/draw/specimen"
)

func alone(t testing.TB, page scene.Page, title string) string {
	t.Helper()
	var out bytes.Buffer
	if err := svg.EncodeAlone(&out, page, title); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

var rule = regexp.MustCompile(`(?m)^@font-face\{(.*)src:url\(data:font/ttf;base64,([^)]*)\)\}$`)

// A page carries the fonts it draws in, each with the characters of its texts.
func TestAPageCarriesItsLetters(t *testing.T) {
	serif := scene.Font{Family: scene.Serif, Italic: true}
	got := alone(t, page(
		scene.Text{X: 5, Y: 9, Size: 10, Text: "Warp ½"},
		scene.Group{Items: []scene.Item{scene.Text{X: 5, Y: 20, Size: 10, Font: serif, Text: "ǘ🧶"}}},
		scene.Text{X: 5, Y: 30, Size: 10, Font: scene.Font{Bold: true}, Text: " "},
	), "")
	rules := rule.FindAllStringSubmatch(got, -1)
	if len(rules) != 2 || rules[0][1] != `font-family:"Sley Sans";` || rules[1][1] != `font-family:"Sley Serif";font-style:italic;` {
		t.Fatalf("got %d fonts in\n%s", len(rules), got)
	}
	for i, want := range [][]byte{letter.Subset(scene.Font{}, "Warp ½"), letter.Subset(serif, "ǘ🧶")} {
		if file, err := base64.StdEncoding.DecodeString(rules[i][2]); err != nil || !bytes.Equal(file, want) {
			t.Errorf("font %d is not the subset for its text: %v", i, err)
		}
	}
}

var reference = regexp.MustCompile(`(?:url\(|href="|@import )(.{5})`)

// But for the letters and how the title is read, the page is the same as inside
// another page.
func TestAloneIsThePageWithItsLetters(t *testing.T) {
	for _, p := range specimen.Document().Pages {
		got := alone(t, p, "a < b")
		before, rest, _ := strings.Cut(got, "<style>\n")
		_, after, ok := strings.Cut(rest, "</style>\n")
		inside := strings.Replace(encode(t, p, "a < b"), ` role="img"`, "", 1)
		if !ok || before+after != inside {
			t.Error("it differs")
		}
		if err := wellFormed(got); err != nil {
			t.Error(err)
		}
		for _, from := range reference.FindAllStringSubmatch(got, -1) {
			if from[1] != "data:" && from[1] != "#clip" {
				t.Errorf("%s is fetched from elsewhere", from[0])
			}
		}
	}
}

func TestAloneWithoutLetters(t *testing.T) {
	if got := alone(t, page(scene.Rect{Width: 9, Height: 9}), ""); strings.Contains(got, "style") || strings.Contains(got, "title") {
		t.Error(got)
	}
}

func TestErrorsAlone(t *testing.T) {
	if err := svg.EncodeAlone(fullDisk{}, specimen.Sheet(), ""); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Error(err)
	}
	if err := svg.EncodeAlone(io.Discard, scene.Page{}, ""); err == nil || errors.Is(err, io.EOF) {
		t.Error(err)
	}
}
