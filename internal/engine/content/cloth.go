package content

import (
	"strconv"

	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Yarn is what is in the cloth of one yarn.
type Yarn struct {
	Name        string
	Composition yarn.Composition
	Basis       Basis   // in which its weight is
	Warp, Weft  qty.Rat // nanograms
}

// Mass is all of it, in nanograms.
func (y Yarn) Mass() qty.Rat { return y.Warp.Add(y.Weft) }

// InCloth gives how much of each yarn is in the pieces of a warp: of the warp what they take,
// fringes with it, and of the weft what is laid. Loom waste, gaps, headers, samples, extras,
// what is trimmed off, reserves and bobbin ends are not in it. Of a warp in hand the reckoning
// has what was amended. Errors, each at the yarn: content.no-fibre, content.blend (fibres),
// content.no-grist; content.nothing where there is no cloth. Warnings: content.grease,
// content.no-allowance (fibre).
func InCloth(r *reckon.Result) ([]Yarn, *problem.List) {
	c := cloth{r: r, list: &problem.List{}}
	long, second := c.warpLong()
	var out []Yarn
	for i := range r.Plan.Yarns {
		y := &r.Plan.Yarns[i]
		id := "yarns[" + y.Name + "]."
		warp := c.is(id + "ends").Mul(long).Add(c.is(id + "ends-2").Mul(second))
		weft := c.is(id + "weft-laid")
		if warp.IsZero() && weft.IsZero() || !c.weighable(y) {
			continue
		}
		grist := y.Grist().NGPerNM()
		out = append(out, Yarn{y.Name, y.Composition.Is, basisOf(y), warp.Mul(grist), weft.Mul(grist)})
	}
	if len(out) == 0 && !c.list.Failed() {
		c.list.Fail("content.nothing", "yarns", "", nil)
	}
	return out, c.list
}

// cloth reads a reckoning.
type cloth struct {
	r    *reckon.Result
	list *problem.List
}

// is is the figure of a node, 0 where there is none.
func (c cloth) is(id string) qty.Rat {
	n, _ := c.r.Node(id)
	return n.Is
}

// warpLong is how long an end of each beam is in all pieces together. What the ends of the
// second beam are longer, piece by piece or in all, is woven into them.
func (c cloth) warpLong() (first, second qty.Rat) {
	more := c.is("second-beam.extra")
	for i := range c.r.Plan.Pieces {
		id := "pieces[" + strconv.Itoa(i) + "]."
		trimmed := c.is(id + "trim").Mul(qty.Int(2)).Mul(c.made(id))
		first = first.Add(c.is(id + "warp-all")).Sub(trimmed)
		more = more.Add(c.is(id + "second-beam-more"))
	}
	return first, first.Add(more)
}

// made is how many pieces of a kind there are, with panels and the weavers of a class.
func (c cloth) made(id string) qty.Rat {
	for _, last := range []string{"in-turn", "panels", "count"} {
		if n := c.is(id + last); !n.IsZero() {
			return n
		}
	}
	return qty.Rat{}
}

// weighable says what is missing for the yarn to be weighed and named.
func (c cloth) weighable(y *yarn.Yarn) bool {
	path := problem.JoinPath("yarns", y.Name)
	args := problem.Args{"yarn": y.Name}
	good := true
	if y.Grist().IsZero() {
		c.list.Fail("content.no-grist", path+".count", "", args)
		good = false
	}
	if y.Composition.Is.IsZero() {
		c.list.Fail("content.no-fibre", path+".fibre", "", args)
		return false
	}
	for _, p := range y.Composition.Is.Parts {
		switch {
		case len(p.Fibre.Blend) > 0:
			c.list.Fail("content.blend", path+".fibre", y.Composition.Typed, problem.Args{"yarn": y.Name, "fibres": p.Fibre.Blend})
			good = false
		case !AllowanceOf(p.Fibre).Known:
			c.list.Warn("content.no-allowance", path+".fibre", y.Composition.Typed, problem.Args{"yarn": y.Name, "fibre": p.Fibre.Name})
		}
	}
	if basisOf(y) == Grease {
		c.list.Warn("content.grease", path+".skein", "", args)
	}
	return good
}

// basisOf says in which condition the weight of a yarn is: counts and skeins are of yarn as
// it lies on the shelf, handspun is scoured when it is weighed as it should be.
func basisOf(y *yarn.Yarn) Basis {
	switch {
	case !y.Handspun || y.Basis() != yarn.FromSkein:
		return Shelf
	case y.Skein.Scoured:
		return Scoured
	case y.Class() == yarn.Wool:
		return Grease
	}
	return Shelf
}

// Parts gives the fibres of yarns.
func Parts(yarns []Yarn) []Part {
	var out []Part
	for _, y := range yarns {
		for _, p := range y.Composition.Parts {
			out = append(out, Part{Fibre: p.Fibre, Mass: y.Mass().Mul(p.Share.Of), Basis: y.Basis})
		}
	}
	return out
}
