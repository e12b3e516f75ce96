package loomside

import "sley/internal/trade/qty"

// Leaves is what is left of each yarn of the shelf after each part of the winding, in
// nanometres: what there was, less the ends wound so far. stock has only yarns of which
// that is known; below 0 more is wound than there was.
func Leaves(winding Step, wound qty.Rat, stock map[string]qty.Rat) []map[string]qty.Rat {
	now := map[string]qty.Rat{}
	for yarn, is := range stock {
		now[yarn] = is
	}
	var out []map[string]qty.Rat
	for _, p := range winding.Parts {
		after := map[string]qty.Rat{}
		for _, y := range p.Yarns {
			if is, known := now[y.Yarn]; known {
				now[y.Yarn] = is.Sub(wound.Mul(qty.Int(int64(y.Count))))
				after[y.Yarn] = now[y.Yarn]
			}
		}
		out = append(out, after)
	}
	return out
}
