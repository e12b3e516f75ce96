package app

import (
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
