package reckon

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/problem"
	"sley/internal/trade/warp"
)

// Uneven is a stripe that does not make whole passes, as dress gives it.
type Uneven = dress.Uneven

// splitPasses counts the passes that carry two yarns because stripes are no
// multiple of the ends wound together, and names those stripes. The field alone,
// whose ends come from the width, is not worth a word.
func (r *run) splitPasses(list []dress.Stretch) {
	w := r.winder()
	n := w.Split(list)
	if n == 0 {
		return
	}
	r.put("winding.split", r.plain(number(int64(n))), warp.Unsaid, About{})
	uneven := w.Uneven(list)
	if field := r.field(list); len(uneven) == 1 && uneven[0].Ends == field {
		return
	}
	together := r.plan.Winding.Together
	r.tell("winding.uneven", "winding.together", together.Typed, problem.Args{"together": together.Is, "stripes": uneven})
}

// field is the ends of the widest stripe of the yarn that alone fills the width;
// none where several yarns fill it.
func (r *run) field(list []dress.Stretch) int {
	fill := r.cloth.repeat.fill
	if len(fill) != 1 {
		return 0
	}
	widest, ends, before := 0, 0, ""
	for _, s := range list {
		if s.Yarn != before {
			ends, before = 0, s.Yarn
		}
		if ends += s.Ends(); s.Yarn == fill[0].Yarn {
			widest = max(widest, ends)
		}
	}
	return widest
}
