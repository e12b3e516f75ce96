package defaults

import (
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

func pct(n int64) qty.Rat { return qty.Frac(n, 100) }

// lost is a share lost between two states, with its range in per cent.
func lost(key string, from, to warp.State, p, low, high int64, source string) Value {
	return Value{
		Key: key, From: from, To: to,
		Share: pct(p), Low: pct(low), High: pct(high), Source: source,
	}
}

func (v Value) fibre(name string) Value { v.Fibre = name; return v }
func (v Value) weave(name string) Value { v.Weave = name; return v }
func (v Value) wash(name string) Value  { v.Wash = name; return v }
func (v Value) loom(name string) Value  { v.Loom = name; return v }

// lengthOf is a plain length with its range.
func lengthOf(key string, l, low, high qty.Length, source string) Value {
	return Value{Key: key, Length: l, Low: low.Rat(), High: high.Rat(), Source: source}
}

// Table lists every starting value. The states are those of the figure itself:
// a source that measured from the reed to washed cloth is not listed as
// shrinkage.
func Table() []Value {
	return table
}

var table = concat(takeUps(), lengthLosses(), widthLosses(), wefts(), lengths())

func concat(lists ...[]Value) []Value {
	var all []Value
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}

func takeUps() []Value {
	takeUp := func(p, low, high int64, source string) Value {
		return lost("take-up", warp.Straight, warp.Relaxed, p, low, high, source)
	}
	return []Value{
		takeUp(10, 3, 15, "mill-estimate"),
		takeUp(10, 5, 15, "mill-estimate").weave("plain"),
		takeUp(8, 4, 12, "practice").weave("twill"),
		takeUp(8, 4, 12, "practice").weave("basket"),
		takeUp(5, 3, 8, "taylor-satin").weave("satin"),
		takeUp(9, 5, 13, "practice").weave("lace"),
		takeUp(10, 6, 15, "practice").weave("waffle"),
		takeUp(5, 2, 8, "practice").weave("weft-faced"),
		takeUp(15, 10, 25, "practice").weave("warp-faced"),
	}
}

func lengthLosses() []Value {
	shrink := func(p, low, high int64, source string) Value {
		return lost("shrinkage", warp.Relaxed, warp.Finished, p, low, high, source)
	}
	return []Value{
		lost("relaxation", warp.OnLoom, warp.Relaxed, 3, 0, 8, "practice"),
		shrink(7, 3, 12, "practice"),
		shrink(7, 4, 12, "cotton-swelling").fibre("cotton"),
		shrink(5, 2, 8, "linen-wash").fibre("linen"),
		shrink(3, 1, 6, "practice").fibre("silk"),
		shrink(8, 5, 20, "practice").fibre("wool"),
		shrink(20, 10, 35, "fulling").fibre("wool").wash("fulled"),
		shrink(0, 0, 1, "practice").wash("unwashed"),
	}
}

func widthLosses() []Value {
	shrink := func(p, low, high int64, source string) Value {
		return lost("width-shrinkage", warp.Relaxed, warp.Finished, p, low, high, source)
	}
	drawIn := func(p, low, high int64, source string) Value {
		return lost("reed-to-relaxed", warp.InReed, warp.Relaxed, p, low, high, source)
	}
	return []Value{
		shrink(4, 1, 10, "practice"),
		shrink(4, 1, 10, "practice").fibre("cotton"),
		shrink(4, 1, 8, "practice").fibre("linen"),
		shrink(3, 1, 6, "practice").fibre("silk"),
		shrink(8, 4, 15, "practice").fibre("wool"),
		shrink(22, 10, 37, "fulling").fibre("wool").wash("fulled"),
		shrink(0, 0, 1, "practice").wash("unwashed"),
		drawIn(7, 3, 12, "practice"),
		drawIn(8, 4, 12, "practice").weave("plain"),
		drawIn(6, 3, 10, "practice").weave("twill"),
		drawIn(8, 4, 14, "practice").weave("lace"),
		drawIn(10, 5, 20, "practice").weave("waffle"),
		drawIn(2, 0, 4, "practice").weave("weft-faced"),
		drawIn(2, 0, 4, "practice").weave("warp-faced"),
		lost("draw-in", warp.InReed, warp.AtFell, 5, 2, 10, "practice"),
		lost("width-relaxation", warp.AtFell, warp.Relaxed, 2, 0, 5, "practice"),
	}
}

func wefts() []Value {
	return []Value{
		{Key: "slack", Share: pct(3), Low: pct(2), High: pct(5), Source: "practice"},
		{Key: "weft-reserve", Share: pct(5), Low: pct(5), High: pct(10), Source: "practice"},
		{Key: "working-sett", Share: pct(75), Low: pct(50), High: pct(90), Source: "ashenhurst-working"},
	}
}

func lengths() []Value {
	return []Value{
		lengthOf("loom-waste", 36*qty.Inch, 18*qty.Inch, 36*qty.Inch, "tygart-waste"),
		lengthOf("loom-waste", 36*qty.Inch, 24*qty.Inch, 36*qty.Inch, "tygart-waste").loom("floor"),
		lengthOf("loom-waste", 18*qty.Inch, 13*qty.Inch, 24*qty.Inch, "tygart-waste").loom("table"),
		lengthOf("tie-on", 10*qty.Inch, 4*qty.Inch, 12*qty.Inch, "practice"),
		lengthOf("step", 9*qty.Inch, 9*qty.Inch, 36*qty.Inch, "practice"),
		lengthOf("step-metric", 10*qty.Centimetre, 10*qty.Centimetre, qty.Metre, "practice"),
		lengthOf("bench", qty.Inch/8, qty.Inch/8, qty.Inch/4, "practice"),
		lengthOf("bench-metric", 5*qty.Millimetre, 5*qty.Millimetre, qty.Centimetre, "practice"),
	}
}
