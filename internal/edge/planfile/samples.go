package planfile

import (
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// samples reads the samples of a yarn, each under a name of the weaver's own.
func (d *decoder) samples(n *node) []yarn.Sample {
	if n == nil || !d.is(n, tableKind, `a table for each sample, as [yarns.grey.samples."2/2 twill, fulled"]`) {
		return nil
	}
	if len(n.items) > mostSamples {
		d.fail("samples.many", n, problem.Args{"most": mostSamples})
		return nil
	}
	var out []yarn.Sample
	for _, c := range n.items {
		if strings.TrimSpace(c.key) == "" {
			d.fail("sample.name", c, nil)
		}
		out = append(out, d.sample(c))
	}
	return out
}

// sample reads one. Its sett is in the reed, its picks are on the loom.
func (d *decoder) sample(n *node) yarn.Sample {
	t := d.open(sampleTable, n)
	return yarn.Sample{
		Name:  n.key,
		Weave: t.choice("weave", weaveNames()), Wash: t.choice("wash", warp.WashNames()),
		Sett: t.density("sett", wantDensity), Picks: t.density("picks", wantPicks),
		Warp: t.length("warp", pieceLength), OnLoom: t.length("on-loom", pieceLength),
		Relaxed: t.length("relaxed", pieceLength), Washed: t.length("washed", pieceLength),
		Reed: t.length("reed", pieceWidth), Fell: t.length("fell", pieceWidth),
		WidthRelaxed: t.length("width-relaxed", pieceWidth), WidthWashed: t.length("width-washed", pieceWidth),
	}
}

// density gives a density without a state.
func (t table) density(key, want string) qty.Typed[qty.Density] {
	is := typed(t, key, want, qty.ParseDensity)
	if is.Given() && !t.d.fitsDensity(t.at(key), is.Is) {
		return qty.Typed[qty.Density]{}
	}
	return is
}
