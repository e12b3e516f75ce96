package wif

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// strangers are lines that do not fit where they come.
var strangers = []string{
	"", ";", "[", "[]", "[WARP", "[warp colors]", "[PRIVATE a b]", "[CONTENTS]", "[NOTES]", "[COLOR TABLE]", "=", "=1", "a=b=c", "0=1", "00=2", "1=", "1=0", "2=2",
	"3 = 1 , 2 ; both", "4=x", "5=64", "6=65", "7=9999999999999999999999", "9999=1", "2000=3", "1=1,2,3", "1=300,0,0", "Threads=0", "Threads=9", "Threads=10",
	"Shafts=0", "Shafts=99", "Treadles=", "Rising Shed=0", "Rising Shed=maybe", "Color=1,2,3,4", "Color=3,0,0,0", "Color=0", "Units=cm", "Units=ell",
	"Thickness=0,5", "Spacing=-1", "Spacing=1e9", "Spacing=.", "Range=0,9", "Range=5,5", "Form=CMYK", "Entries=7", "Title=\u00a0x ", "EMail=;", "Shed=countermarch",
	"Shed=table", "Lowered 1=1", "Lowered 2=0", "Origin=there", "WARP=false", "NOWHERE=true", "\ufeff", "\x1a", "\x80", "caf\xe9", "\xc3\xa9", "[\xff]", "\v1=1",
}

// Files that were spoiled line by line hold what FuzzDecode asks of any bytes.
func TestSpoiledFilesHold(t *testing.T) {
	files := corpus(t)
	names := slices.Sorted(maps.Keys(files))
	file := rapid.Map(rapid.SampledFrom(names), func(name string) []string { return strings.Split(string(files[name]), "\n") })
	rapid.Check(t, func(r *rapid.T) {
		lines, other := slices.Clone(file.Draw(r, "file")), file.Draw(r, "other")
		for range rapid.IntRange(1, 8).Draw(r, "times") {
			lines = spoil(r, lines, other)
		}
		text := []byte(strings.Join(lines, rapid.SampledFrom([]string{"\n", "\r\n", "\r"}).Draw(r, "end")))
		if rapid.IntRange(0, 9).Draw(r, "cut") == 0 {
			text = text[:rapid.IntRange(0, len(text)).Draw(r, "at")]
		}
		if rapid.IntRange(0, 9).Draw(r, "in capitals") == 0 {
			text = bytes.ToUpper(text)
		}
		holds(r, text)
	})
}

func spoil(r *rapid.T, lines, other []string) []string {
	at := rapid.IntRange(0, len(lines)).Draw(r, "line")
	to := min(at+rapid.IntRange(0, 6).Draw(r, "lines"), len(lines))
	switch rapid.IntRange(0, 4).Draw(r, "what") {
	case 0:
		return slices.Delete(lines, at, to)
	case 1:
		return append(lines, lines[at:to]...)
	case 2:
		from := rapid.IntRange(0, len(other)-1).Draw(r, "from")
		return slices.Insert(lines, at, other[from:min(from+6, len(other))]...)
	case 3:
		if at < to {
			slices.Reverse(lines[at:to])
		}
		return lines
	}
	return slices.Insert(lines, at, rapid.SampledFrom(strangers).Draw(r, "stranger"))
}
