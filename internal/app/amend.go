package app

import (
	"context"
	"slices"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// amendable are the paths that may be changed after work began.
func amendable(path string) bool {
	return path == "name" || path == "note" || path == "built" || strings.HasPrefix(path, "built.") || strings.HasPrefix(path, "built[")
}

// onlyAmends says what in a body differs from what stands that no amendment may change.
func (b *body) onlyAmends(stands []byte) *problem.List {
	list := &problem.List{}
	other := mustOpen(stands)
	for _, a := range apart(record.Warp, other, other, b) {
		if !amendable(a.Path) {
			list.Fail("warp.frozen", a.Path, a.Mine, problem.Args{"was": a.Base})
		}
	}
	return list
}

// Amend says what stands on the loom where it differs from the plan: paths are those of
// [built], as ends. Only a warp whose work began is amended.
func (s *Studio) Amend(ctx context.Context, e Edit) (Saved, error) {
	var on bool
	err := s.read(ctx, func(r record.Reader) (err error) {
		_, on, err = started(r, e.ID)
		return err
	})
	if err != nil {
		return Saved{}, err
	}
	if !on {
		list := &problem.List{}
		list.Fail("warp.not-started", "", "", nil)
		return refused(list), nil
	}
	sets := slices.Clone(e.Sets)
	for i := range sets {
		sets[i].Path = "built." + sets[i].Path
	}
	e.Sets = sets
	return s.change(ctx, e, record.Amend, func(b *body, kind record.Kind) *problem.List {
		list := b.apply(kind, e.Sets)
		if tree, err := b.plan(); err == nil && !list.Failed() {
			_, found := tree.Plan("")
			list.Append(underBuilt(found))
		}
		return list
	})
}

// underBuilt are the errors of what was amended: at the loom nothing is half-typed.
func underBuilt(found *problem.List) *problem.List {
	list := &problem.List{}
	for _, p := range found.All() {
		if p.Severity == problem.Error && strings.HasPrefix(p.Path, "built") {
			list.Add(p)
		}
	}
	return list
}
