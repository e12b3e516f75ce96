package wif

import (
	"bytes"
	"fmt"
	"runtime"
	"strings"
	"testing"

	"sley/internal/trade/draft"
)

// allocated gives the bytes that decoding a text takes from memory in all.
func allocated(text []byte) (uint64, string) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, list := Decode("draft.wif", text)
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc, codes(list)
}

// each is a line of a pattern for each number from 1.
func each(pattern string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, pattern, i+1)
	}
	return b.String()
}

// Files made to take time or memory are refused, or read for what is there: within a
// hundred bytes of memory for each of the file, and a megabyte.
func TestHostile(t *testing.T) {
	twill := string(read(t, "tidy/twill.wif"))
	for _, c := range []struct{ what, text, code string }{
		{"ten megabytes", twill + strings.Repeat("; and so on\n", 10<<20/12), "wif.large"},
		{"threads that are not there", strings.Replace(twill, "Threads=8", "Threads=2000000000", 1), "wif.threads-short"},
		{"more threads than an int holds", strings.Replace(twill, "Threads=8", "Threads="+strings.Repeat("9", 400), 1), "wif.threads-short"},
		{"an end far off", strings.Replace(twill, "8=4", "2000000000=4", 1), "wif.far"},
		{"a colour far off", twill + "[COLOR TABLE]\n999999999=1,2,3\n", "wif.far"},
		{"a million sections", twill + strings.Repeat("[A]\n", 1_000_000), "wif.many-lines"},
		{"many sections", twill + each("[A%d]\n", 50_000), "wif.many-sections"},
		{"one section over and over", twill + strings.Repeat("[WARP]\n", 190_000), "wif.section-twice"},
		{"a line of a megabyte", twill + strings.Repeat("x", 1<<20) + "\n", "wif.no-equals"},
		{"a key of a megabyte", twill + strings.Repeat("x", 1<<20) + "=1\n", "wif.key-unknown"},
		{"a value of a megabyte", twill + "4=" + strings.Repeat("9,", 1<<19) + "\n", "wif.key-twice"},
		{"wide letters on a long line", twill + "4=" + strings.Repeat("ø,", 1<<19) + "\n", "wif.value"},
		{"a heading of a megabyte", twill + "[" + strings.Repeat("x", 1<<20) + "]\n", "wif.section-unknown"},
		{"empty lines", twill + strings.Repeat("\n", 8<<20-1000), "wif.many-lines"},
		{"unknown keys", twill + "[WEAVING]\n" + each("key %d=1\n", 190_000), "wif.key-unknown"},
		{"keys again and again", twill + strings.Repeat("1=1\n", 190_000), "wif.key-twice"},
		{"keys backwards", strings.Replace(twill, "[THREADING]\n", "[THREADING]\n"+backwards(100_000), 1), "wif.threads-more"},
		{"semicolons", twill + "4=" + strings.Repeat(";", 1<<20) + "\n", "wif.comment-after"},
		{"brackets", strings.Repeat("[", 1<<20), "wif.not-wif"},
		{"nothing", "", "wif.not-wif"},
		{"a sketch of a list", twill + "[CONTENTS]\n" + each("%d=true\n", 190_000), "wif.contents-absent"},
	} {
		took, got := allocated([]byte(c.text))
		if !strings.Contains(" "+got+" ", " "+c.code+" ") {
			t.Errorf("%s: got %s, want %s", c.what, got, c.code)
		}
		if most := 100*uint64(len(c.text)) + 1<<20; took > most {
			t.Errorf("%s: %d bytes take %d of memory", c.what, len(c.text), took)
		}
	}
}

func backwards(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "%d=1\n", n-i)
	}
	return b.String()
}

// large is a draft of 2,000 ends and 4,000 picks with colours and sizes.
func large() *draft.Draft {
	d := &draft.Draft{Name: "Berth blanket", Shafts: 8, Treadles: 10, Palette: []draft.Colour{{R: 240, G: 236, B: 225}, {R: 37, G: 64, B: 124}}}
	for i := range 2000 {
		d.Threading = append(d.Threading, i*7%8+1)
		d.Warp.Colours = append(d.Warp.Colours, i/12%2)
	}
	for i := range 10 {
		d.Ties = append(d.Ties, draft.Tie{Tied: draft.Of(i%8+1, (i+1)%8+1, (i+3)%8+1)})
	}
	for i := range 4000 {
		d.Treadling = append(d.Treadling, draft.Of(i%10+1))
		d.Weft.Colours = append(d.Weft.Colours, i/16%2)
		d.Weft.Thicks = append(d.Weft.Thicks, mostSize/1000)
	}
	return d
}

func BenchmarkDecode(b *testing.B) {
	text := Encode(FromDraft(large()))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Decode("blanket.wif", text)
	}
}

// BenchmarkEncode writes the draft anew, and as it was read.
func BenchmarkEncode(b *testing.B) {
	made := FromDraft(large())
	was, list := Decode("blanket.wif", Encode(made))
	if list.Failed() || !bytes.Equal(Encode(was), Encode(made)) {
		b.Fatal(codes(list))
	}
	for name, f := range map[string]*File{"made": made, "read": was} {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(Encode(f))))
			b.ReportAllocs()
			for b.Loop() {
				Encode(f)
			}
		})
	}
}
