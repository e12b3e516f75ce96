package reckon

import (
	"sley/internal/engine/dress"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// raddle gives the ends in the spaces of the raddle, and the spaces on each side of
// its centre, so that the warp lies as it will in the reed.
func (r *run) raddle(list []dress.Stretch) {
	w := r.plan.Winding.Raddle
	spaces := r.given("raddle", density(w.Is.PerNM()), given{path: "winding.raddle", typed: w.Typed})
	r.put("raddle.per-space", r.div(Ends, r.cloth.density, spaces), warp.Unsaid, About{})
	if r.tooWide("winding.raddle", dress.Width(list).Mul(spaces.Is)) {
		return
	}
	n, ok := r.runs("raddle", "winding.raddle", dress.Raddle(list, spaces.Is))
	if !ok {
		return
	}
	left := r.put("raddle.left", r.whole(r.div(Number, n, r.plain(number(2))), qty.Down), warp.Unsaid, About{})
	r.put("raddle.right", r.sub(n, left), warp.Unsaid, About{})
}

// tooWide notes a warp over more spaces or sections than any has.
func (r *run) tooWide(path string, spaces qty.Rat) bool {
	if spaces.Cmp(qty.Int(mostSpaces)) <= 0 {
		return false
	}
	r.tell("winding.many", path, "", problem.Args{"lines": figure(spaces.Ceil(), Number), "most": mostSpaces})
	return true
}

// sections lays the warp on the sectional beam and counts the packages it is
// wound from.
func (r *run) sections(list []dress.Stretch) {
	w := r.plan.Winding.Section
	section := r.givenLength("sections.width", "winding.section", w)
	r.put("sections.each", r.mul(Ends, r.cloth.density, section), warp.Unsaid, About{})
	if r.tooWide("winding.section", dress.Width(list).Div(section.Is)) {
		return
	}
	wide := r.cloth.inReed
	if is := dress.Width(list); !is.Equal(wide.Is) { // stripes that were cut to the ends that stand
		wide = r.plain(figure(is, Length))
	}
	r.put("sections.whole", r.whole(r.div(Number, wide, section), qty.Down), warp.Unsaid, About{})
	all := dress.Sections(list, w.Is)
	sizes := make([]int, len(all))
	for i, s := range all {
		sizes[i] = s.Ends
	}
	r.runs("sections", "winding.section", sizes)
	r.packages(dress.Packages(all))
}

// packages gives, yarn by yarn, how many packages stand behind the loom and what
// is wound on each: the wound length once for each section that it serves.
func (r *run) packages(list []dress.Package) {
	if r.many("winding.section", len(list)) {
		return
	}
	var all []term
	for len(list) > 0 {
		n := 0
		for n < len(list) && list[n].Yarn == list[0].Yarn {
			n++
		}
		all = append(all, r.packagesOf(list[:n])...)
		list = list[n:]
	}
	r.put("packages.wound", r.sum(Length, all), warp.Straight, About{})
}

// packagesOf makes the nodes of one yarn and gives what its packages hold in
// all, run by run.
func (r *run) packagesOf(list []dress.Package) []term {
	var counts, all []term
	id := "packages[" + list[0].Yarn + "]"
	for i, p := range list {
		about := About{Yarn: p.Yarn, Mark: numbers(p.From, p.To)}
		run := id + ".runs[" + itoa(i) + "]"
		each := r.put(run+".wound", r.mul(Length, r.plain(number(int64(p.Sections))), r.warpIs.wound), warp.Straight, about)
		n := r.put(run+".count", r.plain(number(int64(p.To-p.From+1))), warp.Unsaid, about)
		counts = append(counts, n)
		all = append(all, r.mul(Length, n, each))
	}
	r.put(id+".count", r.sum(Number, counts), warp.Unsaid, About{Yarn: list[0].Yarn})
	r.put(id+".wound", r.sum(Length, all), warp.Straight, About{Yarn: list[0].Yarn})
	return all
}

// numbers says the numbers of packages: 13, or 14–48.
func numbers(from, to int) string {
	if from == to {
		return itoa(from)
	}
	return itoa(from) + "–" + itoa(to)
}
