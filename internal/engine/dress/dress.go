// Package dress works out the steps between the yarn and the reed: the path of
// the warp on a warping board or the turns on a mill, the bouts it is wound in,
// the ends in each space of a raddle, and the sections of a sectional beam with
// the packages they are wound from. Pure functions over whole ends.
package dress

import "sley/internal/trade/qty"

// Stretch is a stretch of neighbouring places across the warp that are alike in
// yarn and density. A place holds one end; two where an edge is doubled; none
// that is wound here where the end goes to another beam.
type Stretch struct {
	Yarn    string
	Places  int
	Each    int     // ends in each place: 0, 1 or 2
	Density qty.Rat // places per nanometre in the reed, more than 0
}

// Ends gives the ends of the stretch.
func (s Stretch) Ends() int { return s.Places * s.Each }

// Width gives the nanometres the stretch takes in the reed.
func (s Stretch) Width() qty.Rat { return qty.Int(int64(s.Places)).Div(s.Density) }

// Ends gives the ends of all stretches.
func Ends(list []Stretch) int {
	sum := 0
	for _, s := range list {
		sum += s.Ends()
	}
	return sum
}

// Width gives the nanometres that all stretches take in the reed.
func Width(list []Stretch) qty.Rat {
	sum := qty.Rat{}
	for _, s := range list {
		sum = sum.Add(s.Width())
	}
	return sum
}

// Turns gives the whole turns that a warp of wound nanometres makes on a mill of
// that girth, and the nanometres that are over.
func Turns(wound qty.Rat, girth qty.Length) (turns int, over qty.Rat) {
	whole := wound.Div(girth.Rat()).Floor()
	return whole.Count(qty.Down), wound.Sub(whole.Mul(girth.Rat()))
}

// cutter cuts the warp into parts from left to right.
type cutter struct {
	list []Stretch
	used int     // places of list[0] that are cut off already
	at   qty.Rat // where list[0] begins
}

// ofYarn is how many ends of a yarn a part holds.
type ofYarn struct {
	yarn string
	ends int
}

// upTo cuts off what lies left of x: with qty.Up every place that begins there,
// with qty.Down only places that end there too.
func (c *cutter) upTo(x qty.Rat, way qty.Rounding) []ofYarn {
	var out []ofYarn
	for len(c.list) > 0 {
		s := c.list[0]
		n := max(x.Sub(c.at).Mul(s.Density).Count(way), c.used)
		n = min(n, s.Places)
		out = with(out, s.Yarn, (n-c.used)*s.Each)
		if c.used = n; n < s.Places {
			break
		}
		c.list, c.used, c.at = c.list[1:], 0, c.at.Add(s.Width())
	}
	return out
}

// edge is where the part cut last ends.
func (c *cutter) edge() qty.Rat {
	if len(c.list) == 0 {
		return c.at
	}
	return c.at.Add(qty.Int(int64(c.used)).Div(c.list[0].Density))
}

// with adds ends of a yarn to a part.
func with(part []ofYarn, yarn string, ends int) []ofYarn {
	if ends == 0 {
		return part
	}
	for i := range part {
		if part[i].yarn == yarn {
			part[i].ends += ends
			return part
		}
	}
	return append(part, ofYarn{yarn, ends})
}

func endsOf(part []ofYarn) int {
	sum := 0
	for _, y := range part {
		sum += y.ends
	}
	return sum
}
