package order

import (
	"fmt"
	"strings"
	"testing"
)

// fortyStripes is an order of forty stripes of six yarns, some crammed, with a
// fill group.
func fortyStripes() string {
	var parts []string
	for i := range 40 {
		part := fmt.Sprintf("yarn%d %d", i%6, 4+i)
		if i%10 == 3 {
			part += " at 36 epi"
		}
		parts = append(parts, part)
	}
	return strings.Join(parts[:10], ", ") + ", (" + strings.Join(parts[10:], ", ") + ") mirrored open x fill"
}

func BenchmarkParse(b *testing.B) {
	text := fortyStripes()
	ctx := Context{Names: []string{"yarn0", "yarn1", "yarn2", "yarn3", "yarn4", "yarn5"}}
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := Parse(text, ctx); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

func BenchmarkTotals(b *testing.B) {
	o := inStripes(b, fortyStripes())
	b.ReportAllocs()
	for b.Loop() {
		if len(o.Totals(20)) == 0 {
			b.Fatal("no totals")
		}
	}
}

func BenchmarkRuns(b *testing.B) {
	o := inStripes(b, fortyStripes())
	b.ReportAllocs()
	for b.Loop() {
		if len(o.Runs(20)) == 0 {
			b.Fatal("no runs")
		}
	}
}
