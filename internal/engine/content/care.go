package content

import (
	"slices"

	"sley/internal/trade/yarn"
)

// Handling is how hard cloth may be handled in water.
type Handling int

// The handlings, the mildest first.
const (
	NoWater Handling = iota
	Hand
	Mild
	Normal
)

// String gives the handling's name.
func (h Handling) String() string { return [...]string{"no-water", "hand", "mild", "normal"}[h] }

// Care is how cloth is cared for: of all its fibres what the tenderest bears. Temperatures
// are the highest, in whole degrees Celsius; 0 means not at all. Each names the fibre that
// decides, or none where all of them bear the same.
type Care struct {
	Handling                             Handling
	Wash, Tumble, Iron                   int
	HandledFor, WashFor, DryFor, IronFor yarn.Fibre
	Flat                                 bool // dried lying flat
	Damp                                 bool // ironed while damp
	First                                First
}

// First says what the wash after finishing will do.
type First int

// What the cloth has behind it.
const (
	WasWashed First = iota // it was washed and has shrunk
	WasFulled              // it was fulled, and would go on
	NotWashed              // it was not washed: the first wash will shrink it
)

// The temperatures of care labels: washing at most 30, 40 or 60 °C, drying at 60 or 80 °C
// and ironing at 110, 150 or 200 °C (GINETEX and ISO 3758). Which fibre bears which is common
// practice, no source.
var tenderness = map[string]Care{
	"cotton": {Handling: Normal, Wash: 60, Tumble: 80, Iron: 200},
	"kapok":  {Handling: Hand, Wash: 30, Iron: 150},

	"linen":    {Handling: Normal, Wash: 60, Tumble: 60, Iron: 200, Damp: true},
	"jute":     {Handling: NoWater, Iron: 150, Flat: true},
	"sunn":     {Handling: Hand, Wash: 30, Iron: 150},
	"abaca":    {Handling: NoWater, Iron: 150, Flat: true},
	"sisal":    {Handling: NoWater, Iron: 150, Flat: true},
	"henequen": {Handling: NoWater, Iron: 150, Flat: true},
	"coir":     {Handling: NoWater, Flat: true},

	"wool":           {Handling: Hand, Wash: 30, Iron: 150, Flat: true},
	"superwash wool": {Handling: Mild, Wash: 40, Iron: 150, Flat: true},
	"silk":           {Handling: Hand, Wash: 30, Iron: 150},

	"viscose":       {Handling: Mild, Wash: 40, Iron: 150},
	"lyocell":       {Handling: Mild, Wash: 40, Iron: 150},
	"modal":         {Handling: Mild, Wash: 40, Iron: 150},
	"cupro":         {Handling: Mild, Wash: 30, Iron: 150},
	"acetate":       {Handling: Mild, Wash: 30, Iron: 110},
	"triacetate":    {Handling: Mild, Wash: 30, Iron: 110},
	"paper":         {Handling: Hand, Wash: 30, Iron: 150, Flat: true},
	"acrylic":       {Handling: Mild, Wash: 40, Iron: 110},
	"modacrylic":    {Handling: Mild, Wash: 40, Iron: 110},
	"polyamide":     {Handling: Mild, Wash: 40, Tumble: 60, Iron: 110},
	"polyester":     {Handling: Mild, Wash: 40, Tumble: 60, Iron: 110},
	"polypropylene": {Handling: Mild, Wash: 40},
	"polylactide":   {Handling: Mild, Wash: 30},
	"elastane":      {Handling: Mild, Wash: 40, Iron: 110},
	"metallic":      {Handling: Hand, Wash: 30, Iron: 110},
}

// tender gives what a fibre bears: its own entry, or that of its class.
func tender(f yarn.Fibre) Care {
	if c, ok := tenderness[f.Name]; ok {
		return c
	}
	return tenderness[f.Class.String()]
}

// CareFor gives the care of cloth of fibres that was finished in a wash of warp.WashNames,
// or in none that was said. Of no fibres nothing is known, and the answer is false.
func CareFor(fibres []yarn.Fibre, wash string) (Care, bool) {
	if len(fibres) == 0 {
		return Care{}, false
	}
	out := decided(fibres[0])
	for _, f := range fibres[1:] {
		out.soften(decided(f))
	}
	out.leaveOut(fibres)
	switch wash {
	case "fulled":
		out.First = WasFulled
	case "unwashed":
		out.First = NotWashed
	}
	return out, true
}

func decided(f yarn.Fibre) Care {
	c := tender(f)
	c.HandledFor, c.WashFor, c.DryFor, c.IronFor = f, f, f, f
	return c
}

// soften takes of another fibre whatever is milder.
func (c *Care) soften(other Care) {
	if other.Handling < c.Handling {
		c.Handling, c.HandledFor = other.Handling, other.HandledFor
	}
	if other.Wash < c.Wash {
		c.Wash, c.WashFor = other.Wash, other.WashFor
	}
	if other.Tumble < c.Tumble || other.Tumble == c.Tumble && other.Flat && !c.Flat {
		c.Tumble, c.DryFor = other.Tumble, other.DryFor
	}
	if other.Iron < c.Iron {
		c.Iron, c.IronFor = other.Iron, other.IronFor
	}
	c.Flat, c.Damp = c.Flat || other.Flat, c.Damp || other.Damp
}

// leaveOut takes the names away of what all fibres bear alike.
func (c *Care) leaveOut(fibres []yarn.Fibre) {
	alike := func(same func(Care) bool) bool {
		return !slices.ContainsFunc(fibres, func(f yarn.Fibre) bool { return !same(tender(f)) })
	}
	none := yarn.Fibre{}
	if alike(func(o Care) bool { return o.Handling == c.Handling && o.Wash == c.Wash }) {
		c.HandledFor, c.WashFor = none, none
	}
	if alike(func(o Care) bool { return o.Tumble == c.Tumble && o.Flat == c.Flat }) {
		c.DryFor = none
	}
	if alike(func(o Care) bool { return o.Iron == c.Iron }) {
		c.IronFor = none
	}
}

// Felts reports whether a fibre felts when it is worked in warm water: wool and hair, but
// not wool that was treated against it.
func Felts(f yarn.Fibre) bool { return f.Class == yarn.Wool && f.Name != "superwash wool" }

// Fibres lists the fibres of yarns, each once, in their order.
func Fibres(of []yarn.Composition) []yarn.Fibre {
	var out []yarn.Fibre
	add := func(f yarn.Fibre) {
		if !slices.ContainsFunc(out, func(have yarn.Fibre) bool { return have.Name == f.Name }) {
			out = append(out, f)
		}
	}
	for _, c := range of {
		for _, p := range c.Parts {
			for _, name := range p.Fibre.Blend {
				add(fibre(name))
			}
			if len(p.Fibre.Blend) == 0 {
				add(p.Fibre)
			}
		}
	}
	return out
}
