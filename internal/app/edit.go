package app

import (
	"context"
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/edge/wif"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// Edit is one finished gesture of a weaver's: what she set in a document, and the version
// that she saw when she did.
type Edit struct {
	ID     record.ID
	Base   int
	Window string
	Sets   []Set
}

// Conflict is what two windows did to a document at once, side by side.
type Conflict struct {
	ID          record.ID
	Kind        record.Kind
	Base, Head  int
	Removed     bool // the other removed it
	Differences []Apart
}

// Apart is a value that the two left different from what it was, or from one another.
type Apart struct {
	Path               string `json:"path"`
	Base, Theirs, Mine string `json:"-"`
}

// Save writes an edit as a new version. Half-typed values are kept as they are, and told
// among the problems; a path that the document cannot have is refused, with everything
// else that is wrong. When the document has a newer version than Base, nothing is
// written and the conflict is given.
func (s *Studio) Save(ctx context.Context, e Edit) (Saved, error) {
	return s.change(ctx, e, record.Edit, func(b *body, kind record.Kind) *problem.List {
		return b.apply(kind, e.Sets)
	})
}

// change makes a new version of a document by a function of its body. The list that it
// gives is of what refuses the change.
func (s *Studio) change(ctx context.Context, e Edit, act record.Act, do func(*body, record.Kind) *problem.List) (Saved, error) {
	var saved Saved
	err := s.write(ctx, func(w record.Writer) (changed []Changed, err error) {
		d, b, err := openDocument(w, e.ID)
		if err != nil {
			return nil, err
		}
		if e.Base != d.Version || d.Removed {
			saved, err = s.conflict(w, d, e, do)
			return nil, err // nothing is written
		}
		if list, err := s.mayChange(w, d, b, do); err != nil || list.Failed() {
			saved = refused(list)
			return nil, err
		}
		if on, act, err := s.actOf(w, d, b, act); err != nil || on {
			saved, changed, err = s.append(w, d, b, act, e.Window)
			return changed, err
		}
		saved = Saved{ID: d.ID, Version: d.Version, Problems: b.problems(d.Kind)}
		return nil, nil
	})
	return saved, err
}

// mayChange makes the change of the body and says what refuses it.
func (s *Studio) mayChange(w record.Reader, d record.Document, b *body, do func(*body, record.Kind) *problem.List) (*problem.List, error) {
	list := do(b, d.Kind)
	checkName(b.name(d.Kind), "name", list)
	if list.Failed() || d.Kind != record.Warp {
		return list, nil
	}
	_, on, err := started(w, d.ID)
	if err == nil && on {
		list.Append(b.onlyAmends(d.Body))
	}
	return list, err
}

// actOf says whether the body differs from what stands, and what the act is: what is
// changed of a warp after work began is an amendment.
func (s *Studio) actOf(w record.Reader, d record.Document, b *body, act record.Act) (bool, record.Act, error) {
	if string(b.bytes()) == string(d.Body) {
		return false, act, nil
	}
	if d.Kind == record.Warp && act == record.Edit {
		if _, on, err := started(w, d.ID); err != nil || on {
			return true, record.Amend, err
		}
	}
	return true, act, nil
}

// append writes a body as the next version of a document.
func (s *Studio) append(w record.Writer, d record.Document, b *body, act record.Act, window string) (Saved, []Changed, error) {
	v := record.Version{
		Document: d.ID, Number: d.Version + 1, At: s.moment(), Window: window, Act: act,
		State: d.Version + 1, Body: b.bytes(),
	}
	if err := s.appendVersion(w, d, v, b); err != nil {
		return Saved{}, nil, err
	}
	saved := Saved{ID: d.ID, Version: v.Number, Problems: b.problems(d.Kind)}
	return saved, []Changed{{d.Kind, d.ID, v.Number, string(act), window}}, nil
}

// appendVersion writes a version with the card of its body. The facts of a large draft
// are left for later.
func (s *Studio) appendVersion(w record.Writer, d record.Document, v record.Version, b *body) error {
	stage, err := stageOf(w, d)
	if err != nil {
		return err
	}
	var card record.Card
	if drawn, _ := b.draft(); d.Kind == record.Draft && drawn != nil && waits(drawn) {
		card = record.Card{Name: b.name(d.Kind), Words: b.Note, Facts: record.Facts{}}
		card.Sort = sortKey(card.Name)
	} else {
		card = b.card(d.Kind, v.Number, stage)
	}
	return w.Append(v, card)
}

// apply writes what was set into a body, and says what could not be.
func (b *body) apply(kind record.Kind, sets []Set) *problem.List {
	list := &problem.List{}
	trees := map[string]*planfile.Document{}
	for _, set := range sets {
		b.applyOne(kind, set, trees, list)
	}
	for _, p := range b.parts(kind) {
		if tree := trees[p.before]; tree != nil {
			*p.at = tree.JSON()
		}
	}
	return list
}

func (b *body) applyOne(kind record.Kind, set Set, trees map[string]*planfile.Document, list *problem.List) {
	if set.Path == "wif" && (kind == record.Draft || kind == record.Warp) {
		b.setDraft(set, list)
		return
	}
	if to := b.texts(kind)[set.Path]; to != nil {
		setText(to, set, list)
		return
	}
	for _, p := range b.parts(kind) {
		at, ok := inside(set.Path, p.before)
		if !ok {
			continue
		}
		if trees[p.before] == nil {
			tree, err := p.tree()
			if err != nil {
				list.Append(unread(p.before, err))
				return
			}
			trees[p.before] = tree
		}
		setIn(trees[p.before], at, set, list)
		return
	}
	list.Fail("path.unknown", set.Path, set.Path, problem.Args{"valid": slices.Sorted(maps.Keys(b.texts(kind)))})
}

// inside gives the rest of a path below a part.
func inside(at, before string) (string, bool) {
	if before == "" {
		return at, true
	}
	return strings.CutPrefix(at, before+".")
}

func setText(to *string, set Set, list *problem.List) {
	if set.Value == nil {
		*to = ""
		return
	}
	var said string
	if err := json.Unmarshal(set.Value, &said); err != nil {
		list.Fail("value.kind", set.Path, string(set.Value), problem.Args{"wanted": "a text", "found": "something else"})
		return
	}
	*to = strings.TrimSpace(said)
}

func setIn(tree *planfile.Document, at string, set Set, list *problem.List) {
	if set.Value == nil {
		tree.Remove(at)
		return
	}
	v, err := planfile.ValueOf(set.Value)
	if err == nil {
		err = tree.Set(at, v)
	}
	var fault *planfile.Fault
	switch {
	case err == nil:
	case errors.As(err, &fault):
		fault.Path = set.Path
		list.Add(fault.Problem)
	default:
		list.Append(unread(set.Path, err))
	}
}

// setDraft takes another interchange text. Unlike a half-typed figure one that cannot be
// read is refused: there would be no draft.
func (b *body) setDraft(set Set, list *problem.List) {
	var said string
	if err := json.Unmarshal(set.Value, &said); set.Value == nil || err != nil {
		list.Fail("value.kind", set.Path, "", problem.Args{"wanted": "an interchange text", "found": "something else"})
		return
	}
	name := "draft.wif"
	if b.WIF != nil {
		name = b.WIF.Name
	}
	_, found := wif.Decode(name, []byte(said))
	list.Append(found)
	if !found.Failed() {
		b.WIF = &text{name, said}
	}
}

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
