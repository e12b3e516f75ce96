package reckon

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// circle is how much the girth grows for each unit that the radius does, 2π.
var circle = qty.Frac(62832, 10_000)

// beam is the turns that the warp makes on its beam. Each turn lays a layer one
// diameter of the thickest yarn thick, and the girth grows by 2π of that; a turn is as
// long as the girth in the middle of its layer, so that n turns take
// n × girth + n² × growth ÷ 2. Solved for n by the girth of the full beam,
// girth × √(1 + 2 × growth ÷ girth × wound ÷ girth): geometry, without packing between
// the layers.
func (r *run) beam(list []dress.Stretch) {
	w := r.plan.Winding.BeamGirth
	diameters, ok := r.fewestDiameters(list)
	if !ok {
		r.tell("winding.beam-yarn", "winding.beam-girth", w.Typed, nil)
		return
	}
	girth := r.givenLength("beam.girth", "winding.beam-girth", w)
	layer := r.put("beam.layer", r.div(Length, r.plain(number(1)), diameters), warp.Unsaid, About{})
	grows := r.put("beam.grows", r.mul(Length, r.plain(figure(circle, Number)), layer), warp.Unsaid, About{})
	twice := r.mul(Length, r.plain(number(2)), grows)
	added := r.mul(Number, r.div(Number, twice, girth), r.div(Number, r.warpIs.wound, girth))
	full := r.put("beam.full", r.mul(Length, girth, r.root(r.add(r.plain(number(1)), added))), warp.Unsaid, About{})
	r.put("beam.turns", r.whole(r.div(Number, r.sub(full, girth), grows), qty.Up), warp.Unsaid, About{})
}

// fewestDiameters is the diameters over a length of the thickest yarn on the beam: by
// its grist, or by its wraps just touching, of which a ruler shows fewer.
func (r *run) fewestDiameters(list []dress.Stretch) (term, bool) {
	var all []term
	for _, name := range yarnsWound(list) {
		y, ok := r.plan.YarnNamed(name)
		if !ok {
			return term{}, false
		}
		d, ok := r.diameters(y)
		if !ok {
			wraps, wrapped := r.touchingWraps(y)
			if !wrapped {
				return term{}, false
			}
			d = r.div(Density, wraps, r.plain(share(yarn.RulerShare())))
		}
		all = append(all, d)
	}
	switch len(all) {
	case 0:
		return term{}, false
	case 1:
		return all[0], true
	}
	return r.do(Smaller, Density, all[0], all[1:]...), true
}
