package planfile

import (
	"os"
	"testing"
)

// BenchmarkDocument reads and writes the large plan in both writings, beside
// decoding its file.
func BenchmarkDocument(b *testing.B) {
	text, err := os.ReadFile(largePlan)
	if err != nil {
		b.Fatal(err)
	}
	d, _ := ReadText("large.toml", text)
	json := d.JSON()
	other := d.Clone()
	if err := other.Set("pieces[7].length", TextValue("31 in")); err != nil {
		b.Fatal(err)
	}
	for _, run := range []struct {
		name string
		do   func()
	}{
		{"decode", func() { Decode("large.toml", text) }},
		{"read text", func() { ReadText("large.toml", text) }},
		{"read JSON", func() { _, _ = ReadJSON(json) }},
		{"plan", func() { d.Plan("") }},
		{"write text", func() { d.Text() }},
		{"write JSON", func() { d.JSON() }},
		{"clone", func() { d.Clone() }},
		{"set", func() { _ = other.Set("pieces[7].length", TextValue("31 in")) }},
		{"differences", func() { Differences(d, other) }},
	} {
		b.Run(run.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				run.do()
			}
		})
	}
}
