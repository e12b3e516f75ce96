package app

import (
	"maps"
	"slices"

	"sley/internal/edge/planfile"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// conflict lays three states of a document side by side: the one an edit was based on,
// the one that stands, and what the edit would have made.
func (s *Studio) conflict(r record.Reader, d record.Document, e Edit, do func(*body, record.Kind) *problem.List) (Saved, error) {
	c := &Conflict{ID: d.ID, Kind: d.Kind, Base: e.Base, Head: d.Version, Removed: d.Removed}
	data, err := r.Body(d.ID, min(max(e.Base, 1), d.Version))
	if err != nil {
		return Saved{}, err
	}
	base, mine := mustOpen(data), mustOpen(data)
	theirs := mustOpen(d.Body)
	list := do(mine, d.Kind)
	c.Differences = apart(d.Kind, base, theirs, mine)
	if !d.Removed && string(mine.bytes()) == string(theirs.bytes()) {
		c = nil // both did the same
	}
	return Saved{ID: d.ID, Version: d.Version, Problems: list, Refused: list.Failed(), Conflict: c}, nil
}

// behind is the conflict of an act that is none of values: whoever did it saw an older
// version, and both having the same values does not make the act done.
func (s *Studio) behind(r record.Reader, d record.Document, base int) (Saved, error) {
	same := func(*body, record.Kind) *problem.List { return &problem.List{} }
	saved, err := s.conflict(r, d, Edit{ID: d.ID, Base: base}, same)
	if err == nil && saved.Conflict == nil {
		saved.Conflict = &Conflict{ID: d.ID, Kind: d.Kind, Base: base, Head: d.Version, Removed: d.Removed}
	}
	return saved, err
}

// mustOpen opens a body that was opened before.
func mustOpen(data []byte) *body {
	b, err := openBody(data)
	if err != nil {
		return &body{}
	}
	return b
}

// apart gives the values in which three bodies are not all alike.
func apart(kind record.Kind, base, theirs, mine *body) []Apart {
	found := map[string]*Apart{}
	var order []string
	at := func(path string) *Apart {
		if found[path] == nil {
			found[path] = &Apart{Path: path}
			order = append(order, path)
		}
		return found[path]
	}
	b, t, m := base.leaves(kind), theirs.leaves(kind), mine.leaves(kind)
	for _, from := range [][]leaf{b, t, m} {
		for _, l := range from {
			at(l.path)
		}
	}
	fill := func(leaves []leaf, to func(*Apart) *string) {
		for _, l := range leaves {
			*to(at(l.path)) = l.value
		}
	}
	fill(b, func(a *Apart) *string { return &a.Base })
	fill(t, func(a *Apart) *string { return &a.Theirs })
	fill(m, func(a *Apart) *string { return &a.Mine })
	var out []Apart
	for _, path := range order {
		if a := *found[path]; a.Base != a.Theirs || a.Base != a.Mine {
			out = append(out, a)
		}
	}
	return out
}

// leaf is one value of a body, as people read it.
type leaf struct{ path, value string }

// leaves lists the values of a body, in order.
func (b *body) leaves(kind record.Kind) []leaf {
	var out []leaf
	for _, path := range slices.Sorted(maps.Keys(b.texts(kind))) {
		out = append(out, leaf{path, *b.texts(kind)[path]})
	}
	for _, p := range b.parts(kind) {
		tree, err := p.tree()
		if err != nil {
			continue
		}
		for _, d := range planfile.Differences(planfile.NewDocument(), tree) {
			path := d.Path
			if p.before != "" {
				path = p.before + "." + path
			}
			out = append(out, leaf{path, d.B})
		}
	}
	if b.WIF != nil {
		out = append(out, leaf{"wif", b.WIF.Text})
	}
	return out
}
