package web

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var (
	boxOf = regexp.MustCompile(`viewBox="0 0 (\d+) (\d+)"`)
	dotOf = regexp.MustCompile(`M(\d+) (\d+)h1v1h-1z`)
)

// dots are the dark places of a square, as it is drawn, so many dots of a picture each.
func dots(t *testing.T, drawn []byte, each int) *image.Gray {
	t.Helper()
	box := boxOf.FindSubmatch(drawn)
	if box == nil || !bytes.Equal(box[1], box[2]) {
		t.Fatalf("it is no square: %.100s", drawn)
	}
	side, _ := strconv.Atoi(string(box[1]))
	out := image.NewGray(image.Rect(0, 0, side*each, side*each))
	for i := range out.Pix {
		out.Pix[i] = 255
	}
	for _, m := range dotOf.FindAllSubmatch(drawn, -1) {
		x, _ := strconv.Atoi(string(m[1]))
		y, _ := strconv.Atoi(string(m[2]))
		for i := range each * each {
			out.SetGray(x*each+i%each, y*each+i/each, color.Gray{})
		}
	}
	return out
}

// Around a square four dots are light, and in three corners stands what it is found by
// (ISO/IEC 18004: a dark frame of seven dots, a light one, a dark square of three).
func TestSquaresCanBeFound(t *testing.T) {
	drawn, err := square("http://192.168.1.20:7071/pair#012345")
	if err != nil {
		t.Fatal(err)
	}
	picture := dots(t, drawn, 1)
	side := picture.Bounds().Dx()
	for i := range side * side {
		x, y := i%side, i/side
		if min(x, y, side-1-x, side-1-y) < 4 && picture.GrayAt(x, y).Y == 0 {
			t.Fatalf("the dot at %d, %d is dark", x, y)
		}
	}
	for _, corner := range []image.Point{{4, 4}, {side - 11, 4}, {4, side - 11}} {
		for i := range 49 {
			x, y := i%7, i/7
			ring := min(x, y, 6-x, 6-y)
			if dark := picture.GrayAt(corner.X+x, corner.Y+y).Y == 0; dark != (ring != 1) {
				t.Errorf("the dot %d, %d of the corner at %v is dark: %v", x, y, corner, dark)
			}
		}
	}
}

// A reader by others reads what was written, for addresses of every kind.
func TestSquaresAreRead(t *testing.T) {
	if _, err := exec.LookPath("zbarimg"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("no zbarimg: apt-get install -y zbar-tools")
		}
		t.Skip("no zbarimg: apt-get install -y zbar-tools")
	}
	for i, text := range []string{"http://192.168.1.20:7071/pair#012345", "http://10.0.0.5:65535/pair#999999", "http://[fd00:1234:5678:9abc:def0:1234:5678:9abc]:40953/pair#000000"} {
		drawn, err := square(text)
		if err != nil {
			t.Fatal(err)
		}
		var picture bytes.Buffer
		if err := png.Encode(&picture, dots(t, drawn, 6)); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), fmt.Sprintf("%d.png", i))
		if err := os.WriteFile(file, picture.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		read, err := exec.Command("zbarimg", "-q", "--raw", file).Output()
		if err != nil || strings.TrimSpace(string(read)) != text {
			t.Errorf("%q reads as %q, %v", text, read, err)
		}
	}
}
