package app

import (
	"sley/internal/engine/reckon"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// Yarn reads a count and gives its grist in every count system. The error is a
// *qty.Fault.
func Yarn(text string) (yarn.Count, []yarn.Conversion, error) {
	count, err := yarn.ParseCount(text)
	if err != nil {
		return yarn.Count{}, nil, err
	}
	return count, yarn.Conversions(count), nil
}

// SettAsked is what a sett is asked for.
type SettAsked struct {
	Count yarn.Count
	Fibre string // empty: unknown
	Weave string // one of warp.WeaveNames; empty: plain
	K     qty.Rat
	Wraps qty.Typed[yarn.Wraps]
}

// Sett reckons the setts advised for a yarn in a weave, each a node with its
// working. The list holds what is wrong with the yarn, and then the result is
// nil; errors are *qty.Fault of the fibre.
func Sett(asked SettAsked) (*reckon.Result, *problem.List, error) {
	list := &problem.List{}
	y := yarn.Yarn{Name: "yarn", DiameterK: asked.K, Wraps: asked.Wraps}
	y.Count = qty.Typed[yarn.Count]{Is: asked.Count, Typed: asked.Count.String()}
	if asked.Fibre != "" {
		c, err := yarn.ParseComposition(asked.Fibre)
		if err != nil {
			return nil, list, err
		}
		y.Composition = qty.Typed[yarn.Composition]{Is: c, Typed: asked.Fibre}
	}
	if y.Validate("yarn", list); list.Failed() {
		return nil, list, nil
	}
	plan := &warp.Plan{Format: warp.Format, Weave: asked.Weave, Yarns: []yarn.Yarn{y}}
	return reckon.Advise(plan), list, nil
}

// Reeds ranks the sleying orders of the reeds for a sett, best first, each a
// node with its working. reeds are read by loom.ParseReed; errors are
// *qty.Fault.
func Reeds(wanted warp.Sett, reeds []string, unit int) (*reckon.Result, error) {
	plan := &warp.Plan{Format: warp.Format, Warp: warp.Warp{Sett: wanted, Unit: unit}}
	for _, text := range reeds {
		reed, err := loom.ParseReed(text)
		if err != nil {
			return nil, err
		}
		plan.Loom.Reeds = append(plan.Loom.Reeds, reed)
	}
	return reckon.RankReeds(plan), nil
}

// WeaveNames lists the weaves that a plan may name.
func WeaveNames() []string {
	var out []string
	for _, w := range warp.Weaves() {
		out = append(out, w.Name)
	}
	return out
}

// FibreNames lists the generic names of fibres.
func FibreNames() []string {
	var out []string
	for _, f := range yarn.Fibres() {
		out = append(out, f.Name)
	}
	return out
}
