package content

import (
	"slices"

	"sley/internal/trade/qty"
	"sley/internal/trade/yarn"
)

// Form is whose rules a label follows.
type Form string

// The forms: Regulation (EU) No 1007/2011, and 16 CFR part 303 of the United States.
const (
	EU Form = "eu"
	US Form = "us"
)

// Label is what stands on a label: fibres with their shares, the largest first and all
// others, where they are not named, last.
type Label struct {
	Form  Form
	Items []Item
	Notes []Note
}

// Item is one fibre on a label, or several that are not named.
type Item struct {
	Name   string  // as the rules name it; empty where Others are meant
	Others int     // how many fibres are not named
	Share  qty.Rat // as printed, from 0 to 1
}

// Note is something that the rules say of such a label.
type Note struct {
	Topic Topic
	Name  string  // of the fibre, where it is of one
	Limit qty.Rat // the share that the rule names
}

// Topic says what a note is about.
type Topic string

// The topics, with the article or section that says it.
const (
	Pure       Topic = "pure"        // of one fibre: so it may be called (EU, 7)
	Union      Topic = "union"       // cotton warp and linen weft have a name (EU, 9(3))
	Decoration Topic = "decoration"  // what only decorates need not count (EU, 10(1))
	Metal      Topic = "metal"       // nor what only carries off charges (EU, 10(2))
	Within     Topic = "within"      // how far an analysis may differ (EU, 20(3); US, 303.43)
	Small      Topic = "small"       // a small share that does something is named (US, 303.3)
	Virgin     Topic = "virgin"      // when new wool may be called so (EU, 8)
	OtherMoist Topic = "other-moist" // the regains usual there differ (ASTM D1909)
)

// The shares that the rules name.
var (
	tolerance   = qty.Frac(3, 100)  // EU 20(3); US 303.43, from memory
	decorative  = qty.Frac(7, 100)  // EU 10(1)
	antistatic  = qty.Frac(2, 100)  // EU 10(2)
	unavoidable = qty.Frac(2, 100)  // EU 7(2)
	unionLinen  = qty.Frac(40, 100) // EU 9(3)
	wholesome   = qty.Frac(3, 1000) // EU 8: what else virgin wool may hold
	mostUnnamed = qty.Frac(5, 100)  // US 303.3: what is below is other fibre
)

// Steps to which the shares of a label are rounded.
var (
	tenth   = qty.Frac(1, 1000)
	percent = qty.Frac(1, 100)
)

// European labels all fibres in descending order to a tenth of a per cent. A weaver knows
// what she wove with, so nothing is left to "other fibres", which Article 9(2) keeps for what
// is hard to state.
func European(shares []Share, yarns []Yarn) Label {
	out := Label{Form: EU, Items: rounded(items(shares, EU), tenth)}
	out.Notes = europeanNotes(out.Items, shares, yarns)
	return out
}

func europeanNotes(items []Item, shares []Share, yarns []Yarn) []Note {
	var out []Note
	if len(items) == 1 {
		out = append(out, Note{Pure, items[0].Name, unavoidable})
	} else {
		out = append(out, Note{Within, "", tolerance})
	}
	if isUnion(yarns) && !linenShare(shares).Less(unionLinen) {
		out = append(out, Note{Union, "", unionLinen})
	}
	for i, item := range items {
		switch {
		case len(items) == 1:
		case item.Name == named(fibre("metallic"), EU) && !antistatic.Less(item.Share):
			out = append(out, Note{Metal, item.Name, antistatic})
		case i > 0 && !decorative.Less(item.Share):
			out = append(out, Note{Decoration, item.Name, decorative})
		}
	}
	if slices.ContainsFunc(items, func(i Item) bool { return i.Name == "wool" }) {
		out = append(out, Note{Virgin, "wool", wholesome})
	}
	return out
}

// isUnion reports whether the warp is of cotton alone and the weft of linen alone.
func isUnion(yarns []Yarn) bool {
	warp, weft := false, false
	for _, y := range yarns {
		all := func(class string) bool {
			return !slices.ContainsFunc(y.Composition.Parts, func(p yarn.Part) bool { return named(p.Fibre, EU) != class })
		}
		if y.Warp.Sign() > 0 && !all("cotton") || y.Weft.Sign() > 0 && !all("linen") {
			return false
		}
		warp, weft = warp || y.Warp.Sign() > 0, weft || y.Weft.Sign() > 0
	}
	return warp && weft
}

func linenShare(shares []Share) qty.Rat {
	for _, s := range shares {
		if s.Fibre.Name == "linen" {
			return s.Label
		}
	}
	return qty.Rat{}
}

// American labels each fibre of 5 % and more in whole per cents in the order of predominance,
// and the others together; wool and hair at any share, and elastane, which does something at
// a small one.
func American(shares []Share) Label {
	var named, others []Item
	var out Label
	for _, i := range items(shares, US) {
		if i.Share.Less(mostUnnamed) && !alwaysNamed(i.Name, shares) {
			others = append(others, i)
			out.Notes = append(out.Notes, Note{Small, i.Name, mostUnnamed})
			continue
		}
		named = append(named, i)
	}
	if len(others) > 0 {
		rest := Item{Others: len(others)}
		for _, i := range others {
			rest.Share = rest.Share.Add(i.Share)
		}
		named = append(named, rest)
	}
	out.Form, out.Items = US, rounded(named, percent)
	out.Notes = append(out.Notes, americanNotes(out.Items, shares)...)
	return out
}

func americanNotes(items []Item, shares []Share) []Note {
	var out []Note
	if len(items) > 1 {
		out = append(out, Note{Within, "", tolerance})
	}
	differs := func(s Share) bool { return s.Fibre.Class == yarn.Wool || s.Fibre.Name == "jute" }
	if len(items) > 1 && slices.ContainsFunc(shares, differs) {
		out = append(out, Note{Topic: OtherMoist})
	}
	return out
}

// alwaysNamed reports whether a name of the label is of wool, hair or elastane.
func alwaysNamed(name string, shares []Share) bool {
	return slices.ContainsFunc(shares, func(s Share) bool {
		return named(s.Fibre, US) == name && (s.Fibre.Class == yarn.Wool || s.Fibre.Name == "elastane")
	})
}

// items adds up the shares that a label gives one name, the largest first.
func items(shares []Share, form Form) []Item {
	var out []Item
	for _, s := range shares {
		name := named(s.Fibre, form)
		i := slices.IndexFunc(out, func(i Item) bool { return i.Name == name })
		if i < 0 {
			i = len(out)
			out = append(out, Item{Name: name})
		}
		out[i].Share = out[i].Share.Add(s.Label)
	}
	slices.SortStableFunc(out, func(a, b Item) int { return b.Share.Cmp(a.Share) })
	return out
}

// rounded makes the shares whole steps; what comes to nothing is left out.
func rounded(items []Item, step qty.Rat) []Item {
	exact := make([]qty.Rat, len(items))
	for i, item := range items {
		exact[i] = item.Share
	}
	var out []Item
	for i, s := range Rounded(exact, step) {
		if s.Sign() > 0 {
			items[i].Share = s
			out = append(out, items[i])
		}
	}
	return out
}

// fibre is a fibre that is known.
func fibre(name string) yarn.Fibre {
	f, _ := yarn.FibreNamed(name)
	return f
}
