package strokes

import (
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/draft"
	"sley/internal/trade/loom"
)

// wild draws an act that may have anything in any field.
func wild(t *rapid.T) Act {
	number := rapid.OneOf(rapid.IntRange(-3, 70), rapid.Int())
	a := Act{
		Do:   rapid.SampledFrom(append(Deeds(), "weave")).Draw(t, "do"),
		Part: rapid.SampledFrom(append(Parts(), "selvedge")).Draw(t, "part"),
		Rule: rapid.SampledFrom(append(Rules(), "broken")).Draw(t, "rule"),
		Text: rapid.OneOf(rapid.String(), rapid.StringMatching(`[1-9 x(),+-]{0,12}( fill)?`)).Draw(t, "text"),
		Shed: loom.Shed(rapid.IntRange(-1, 7).Draw(t, "shed")),
		Up:   rapid.Bool().Draw(t, "up"),
	}
	for _, field := range []*int{&a.At, &a.Remove, &a.From, &a.To, &a.Times, &a.By, &a.Start, &a.First, &a.Last, &a.Run, &a.Length, &a.Number} {
		*field = number.Draw(t, "number")
	}
	a.Put = rapid.SliceOfN(rapid.Map(rapid.Uint64(), func(n uint64) Value { return Value(n) }), 0, 5).Draw(t, "put")
	for range rapid.IntRange(0, 5).Draw(t, "cells") {
		a.Cells = append(a.Cells, Cell{number.Draw(t, "pick"), number.Draw(t, "end")})
	}
	return a
}

// unsound draws a draft that may have anything wrong with it.
func unsound(t *rapid.T) *draft.Draft {
	d := drawn(t)
	if rapid.Bool().Draw(t, "sound") {
		return d
	}
	d.Shafts, d.Treadles = rapid.IntRange(-2, 66).Draw(t, "shafts"), rapid.IntRange(-2, 66).Draw(t, "treadles")
	d.Threading = rapid.SliceOfN(rapid.IntRange(-2, 80), 0, 9).Draw(t, "threading")
	d.Lifts = append(d.Lifts, draft.Set(rapid.Uint64().Draw(t, "lift")))
	d.Weft.Colours = rapid.SliceOfN(rapid.IntRange(-2, 5), 0, 99).Draw(t, "colours")
	d.Palette = d.Palette[:rapid.IntRange(0, 2).Draw(t, "palette")]
	if rapid.Bool().Draw(t, "no picks") {
		d.Treadling, d.Lifts = nil, nil
	}
	return d
}

// FuzzDo: whatever acts hold, they are made or told to be wrong.
func FuzzDo(f *testing.F) { f.Fuzz(rapid.MakeFuzz(wildly)) }

func TestWildActs(t *testing.T) { rapid.Check(t, wildly) }

func wildly(t *rapid.T) {
	d := unsound(t)
	before := d.Clone()
	var acts []Act
	for range rapid.IntRange(1, 4).Draw(t, "acts") {
		acts = append(acts, wild(t))
	}
	is, list := Do(d, acts)
	if !d.Equal(before) {
		t.Fatal("the draft that acts were made of is another one")
	}
	if (is == nil) != list.Failed() {
		t.Fatalf("%v, %v", is, list.All())
	}
	if is != nil {
		Apply(d, Between(d, is))
	}
}
