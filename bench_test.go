package sley_test

import (
	"os"
	"testing"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/warp"
)

// The plan of the benchmarks: twenty kinds of pieces, forty stripes.
const largePlan = "testdata/bench/large.toml"

func readLarge(tb testing.TB) []byte {
	tb.Helper()
	text, err := os.ReadFile(largePlan)
	if err != nil {
		tb.Fatal(err)
	}
	return text
}

func decodeLarge(tb testing.TB) *warp.Plan {
	tb.Helper()
	plan, _, list := planfile.Decode(largePlan, readLarge(tb))
	if list.Failed() {
		tb.Fatal(list.All())
	}
	return plan
}

func TestLargePlanIsLarge(t *testing.T) {
	plan := decodeLarge(t)
	if n := len(plan.Pieces); n != 20 {
		t.Errorf("%d kinds of pieces, want 20", n)
	}
	if n := len(plan.Warp.Stripes.Runs(1)); n < 40 {
		t.Errorf("%d stripes, want 40", n)
	}
}

// BenchmarkReckon reckons the large plan. The bar is 1 ms without workings.
func BenchmarkReckon(b *testing.B) {
	plan := decodeLarge(b)
	for _, run := range []struct {
		name string
		opt  reckon.Options
	}{{"values", reckon.Options{}}, {"tapes", reckon.Options{Tape: true}}, {"workings", reckon.Options{Workings: true, Tape: true}}} {
		b.Run(run.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				reckon.Reckon(plan, run.opt)
			}
		})
	}
}

// BenchmarkDecode reads the large plan file.
func BenchmarkDecode(b *testing.B) {
	text := readLarge(b)
	b.ReportAllocs()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		planfile.Decode(largePlan, text)
	}
}
