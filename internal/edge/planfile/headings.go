package planfile

import "github.com/pelletier/go-toml/v2/unstable"

// header opens the table of a [header] or the next of [[headers]].
func (b *builder) header(e *unstable.Node, made making) *node {
	names := parts(e)
	last := len(names) - 1
	t := b.top
	for _, p := range names[:last] {
		if t = b.through(t, p); t == nil {
			return nil
		}
	}
	if !b.shallow(t, names[last]) {
		return nil
	}
	if made == byHeaders {
		return b.openItem(t, names[last])
	}
	return b.openTable(t, names[last])
}

// through gives the table that a header passes on its way.
func (b *builder) through(t *node, p part) *node {
	c := t.child(p.name)
	switch {
	case c == nil:
		return b.newTable(t, p, byTheWay)
	case c.kind == listKind && c.made == byHeaders:
		return c.items[len(c.items)-1]
	case c.kind == tableKind && c.made != closed:
		return c
	}
	b.twice(c, p)
	return nil
}

func (b *builder) newTable(t *node, p part, made making) *node {
	if !b.shallow(t, p) {
		return nil
	}
	c := &node{kind: tableKind, made: made, key: p.name, keyAt: p.at, at: p.at, inside: -1}
	t.add(c)
	return c
}

func (b *builder) openTable(t *node, p part) *node {
	c := t.child(p.name)
	switch {
	case c == nil:
		return b.newTable(t, p, byHeader)
	case c.kind == tableKind && c.made == byTheWay:
		c.made, c.keyAt, c.at = byHeader, p.at, p.at
		return c
	}
	b.twice(c, p)
	if c.kind == tableKind && c.made != closed {
		return c
	}
	return nil
}

func (b *builder) openItem(t *node, p part) *node {
	c := t.child(p.name)
	if c == nil {
		c = &node{kind: listKind, made: byHeaders, key: p.name, keyAt: p.at, at: p.at, inside: -1}
		t.add(c)
	} else if c.kind != listKind || c.made != byHeaders {
		b.twice(c, p)
		return nil
	}
	item := &node{kind: tableKind, keyAt: p.at, at: p.at, inside: -1}
	c.add(item)
	return item
}
