package app

import (
	"context"

	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// Shelved is a yarn of the shelf with what of it is there, what of that is promised to
// warps in hand, and what is left then.
type Shelved struct {
	Card
	Yarn     yarn.Yarn
	Stock    *Stock // with no event where nothing was ever entered: unknown, and not none
	Promised []Promise
	Left     *Left // nil where it is unknown
}

// Promise is what a warp in hand still takes of a yarn of the shelf: what it needs,
// without what was entered as used for it.
type Promise struct {
	Warp record.ID
	Name string
	// Length in nanometres and Mass in nanograms, exactly; 0 where it is unknown.
	Length, Mass qty.Rat
	Done         bool // as much was entered as used for it as it needs
}

// Left is what is left of a yarn when all warps in hand have theirs: in nanometres where
// ByLength, else in nanograms. Below 0 there is too little.
type Left struct {
	Is       qty.Rat
	ByLength bool
	AtMost   bool // it is unknown what some warp takes
}

// Shelf lists yarns with what of them is promised. At most 200 come at once.
func (s *Studio) Shelf(ctx context.Context, q record.Query) (yarns []Shelved, total int, err error) {
	q.Kind, q.Most = record.Yarn, min(max(q.Most, 1), mostListed)
	err = s.read(ctx, func(r record.Reader) error {
		found, n, err := r.List(q)
		total = n
		for _, d := range found {
			one, err := shelved(r, d.ID)
			if err != nil {
				return err
			}
			yarns = append(yarns, one)
		}
		return err
	})
	return yarns, total, err
}

// Promised gives one yarn of the shelf with what of it is promised. Trouble: NotFound
// where id is of no yarn.
func (s *Studio) Promised(ctx context.Context, id record.ID) (Shelved, error) {
	var out Shelved
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = shelved(r, id)
		return err
	})
	return out, err
}

func shelved(r record.Reader, id record.ID) (Shelved, error) {
	d, b, err := openDocument(r, id)
	if err == nil && d.Kind != record.Yarn {
		err = &record.Trouble{Code: record.NotFound, Found: string(record.Yarn)}
	}
	if err != nil {
		return Shelved{}, err
	}
	out := Shelved{Card: cardOf(d)}
	if out.Stock, err = stockOf(r, id, b); err != nil {
		return out, err
	}
	out.Yarn, _ = b.yarn()
	out.Promised, err = promises(r, d.Mark, out.Stock, out.Yarn.Grist())
	out.Left = out.left()
	return out, err
}

// promises lists what warps in hand still take of a yarn, in the order of their names.
func promises(r record.Reader, mark string, stock *Stock, grist qty.LinearDensity) ([]Promise, error) {
	var out []Promise
	q := record.Query{Kind: record.Warp, Words: takesWord(mark), Most: mostListed}
	for {
		found, _, err := r.List(q)
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			c := cardOf(d)
			if take, ok := c.takeOf(mark); ok && d.Facts.Stage != record.Done {
				out = append(out, stock.promise(c, take, grist))
			}
		}
		if len(found) < q.Most {
			return out, nil
		}
		last := found[len(found)-1]
		q.After, q.AfterID = last.Sort, last.ID
	}
}

// promise is what a warp takes, without what was used for it already.
func (t *Stock) promise(c Card, take Take, grist qty.LinearDensity) Promise {
	p := Promise{Warp: c.ID, Name: c.Name, Length: take.Length, Mass: take.Mass}
	for _, e := range record.Standing(t.Events) {
		if e.What == record.Used && e.Warp == c.ID {
			p.Length = still(p.Length, e.Amount.Holds(grist))
			p.Mass = still(p.Mass, e.Amount.Weighs(grist))
			p.Done = p.Done || p.Length.IsZero() && !take.Length.IsZero() || p.Mass.IsZero() && !take.Mass.IsZero()
		}
	}
	if p.Done {
		p.Length, p.Mass = qty.Rat{}, qty.Rat{}
	}
	return p
}

// still is what of a need is not used yet; what is unknown stays unknown.
func still(need, used qty.Rat) qty.Rat {
	if need.Less(used) || need.IsZero() {
		return qty.Rat{}
	}
	return need.Sub(used)
}

// left is the stock without what is promised, by length where all of the stock is known
// so, or else by weight.
func (y Shelved) left() *Left {
	length, mass := y.Stock.KnownBy()
	if !length && !mass {
		return nil
	}
	out := &Left{Is: y.Stock.Mass, ByLength: length}
	if length {
		out.Is = y.Stock.Length
	}
	for _, p := range y.Promised {
		is := p.Mass
		if length {
			is = p.Length
		}
		out.Is = out.Is.Sub(is)
		out.AtMost = out.AtMost || is.IsZero() && !p.Done
	}
	return out
}

// KnownBy reports whether all that counts of a stock is known by length, and by weight.
func (t *Stock) KnownBy() (length, mass bool) {
	standing := record.Standing(t.Events)
	if len(standing) == 0 {
		return false, false
	}
	if !t.Unknown {
		return true, true
	}
	length, mass = true, true
	for _, e := range standing {
		if e.What == record.Measured {
			length, mass = true, true
		}
		length = length && e.Amount.Mass == 0
		mass = mass && e.Amount.Length == 0
	}
	return length, mass
}
