package app

import (
	"context"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/engine/defaults"
	"sley/internal/engine/structure"
	"sley/internal/trade/near"
	"sley/internal/trade/order"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// PieceKind is a kind of piece with the size that it usually has, in metric or in
// imperial units.
type PieceKind struct {
	defaults.Piece
	Size  defaults.PieceSize
	Both  string // how its ends are finished, as a plan file writes it; empty: a cut edge
	Cites string // the source of its sizes
}

// Kinds lists the kinds of pieces that a warp can begin with, their sizes round in metric
// or in imperial units.
func Kinds(metric bool) []PieceKind {
	var out []PieceKind
	for _, p := range defaults.Pieces() {
		out = append(out, kindOfPiece(p, metric))
	}
	return out
}

// KindIDs lists the names of the kinds of pieces.
func KindIDs() []string {
	var out []string
	for _, p := range defaults.Pieces() {
		out = append(out, p.ID)
	}
	return out
}

func kindOfPiece(p defaults.Piece, metric bool) PieceKind {
	k := PieceKind{Piece: p, Size: p.Size(metric)}
	switch k.Size.End {
	case warp.Hem:
		k.Both = "hem " + k.Size.Depth.Typed + " + " + k.Size.TurnIn.Typed
	case warp.Fringe:
		k.Both = "fringe " + k.Size.Depth.Typed
	}
	if source, ok := defaults.SourceOf(p.Source); ok {
		k.Cites = source.Text
	}
	return k
}

// Called is the name of the kind as a plan has it: hand towel.
func (k PieceKind) Called() string { return strings.ReplaceAll(k.ID, "-", " ") }

// The kinds of units that a new warp is planned in.
const (
	MetricUnits   = "metric"
	ImperialUnits = "imperial"
)

// WarpAsked is a warp that is to be begun.
type WarpAsked struct {
	Window string
	Kind   string // of piece: one of KindIDs
	Name   string // empty: that of the kind
	Count  int    // how many pieces; 0: as many as are usual
	// Units are MetricUnits or ImperialUnits; empty: those that the loom's width was
	// typed in, or else imperial.
	Units             string
	Yarn, Loom, Draft record.ID // of the shelf; 0: none
}

// mostPieces is how many pieces of a kind a plan may have.
const mostPieces = 10_000

// NewWarp begins a warp of a kind of piece, at its usual size, with copies of a yarn, a
// loom and a draft of the shelf that say where they came from. What the plan still lacks
// is told among its problems. Trouble: NotFound where the shelf has no such document.
func (s *Studio) NewWarp(ctx context.Context, a WarpAsked) (Saved, error) {
	var shelf []record.Document
	err := s.read(ctx, func(r record.Reader) (err error) {
		shelf, err = shelfOf(r, a)
		return err
	})
	if err != nil {
		return Saved{}, err
	}
	b, list := begun(a, shelf)
	if list.Failed() {
		return refused(list), nil
	}
	return s.keepNamed(ctx, fresh{kind: record.Warp, body: b, window: a.Window}, a.Name == "")
}

// shelfOf reads what a new warp takes from the shelf: yarn, loom and draft, in this order.
func shelfOf(r record.Reader, a WarpAsked) ([]record.Document, error) {
	var out []record.Document
	for _, of := range []struct {
		id   record.ID
		kind record.Kind
	}{{a.Yarn, record.Yarn}, {a.Loom, record.Loom}, {a.Draft, record.Draft}} {
		if of.id == 0 {
			continue
		}
		d, err := r.Document(of.id)
		if err == nil && d.Kind != of.kind {
			err = &record.Trouble{Code: record.NotFound, Found: string(of.kind)}
		}
		if err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	return out, nil
}

// begun makes the body of a new warp; the list is of what was asked wrongly.
func begun(a WarpAsked, shelf []record.Document) (*body, *problem.List) {
	list := &problem.List{}
	kind := a.check(list)
	name := strings.TrimSpace(a.Name)
	if name == "" {
		name = strings.ReplaceAll(a.Kind, "-", " ")
	}
	if checkName(name, "name", list); list.Failed() {
		return nil, list
	}
	if a.Count == 0 {
		a.Count = kind.Count
	}
	b := &body{}
	b.Plan = planOfKind(kindOfPiece(kind, a.metric(shelf)), name, a.Count).JSON()
	for _, d := range shelf {
		list.Append(b.useNew(d))
	}
	return b, list
}

// check says what is wrong with what is asked.
func (a WarpAsked) check(list *problem.List) defaults.Piece {
	kind, ok := defaults.PieceNamed(a.Kind)
	if !ok {
		list.Fail("kind.unknown", "kind", a.Kind, problem.Args{"valid": KindIDs(), "near": near.To(a.Kind, KindIDs())})
	}
	if a.Count < 0 || a.Count > mostPieces {
		list.Fail("kind.count", "count", "", problem.Args{"most": mostPieces})
	}
	if a.Units != "" && a.Units != MetricUnits && a.Units != ImperialUnits {
		list.Fail("kind.units", "units", a.Units, problem.Args{"valid": []string{MetricUnits, ImperialUnits}})
	}
	return kind
}

// metric reports whether the warp is planned in metric units.
func (a WarpAsked) metric(shelf []record.Document) bool {
	for _, d := range shelf {
		if a.Units == "" && d.Kind == record.Loom {
			return cardOf(d).Units.Metric
		}
	}
	return a.Units == MetricUnits
}

// planOfKind is a plan of so many pieces.
func planOfKind(k PieceKind, name string, count int) *planfile.Document {
	tree := planfile.NewDocument()
	for _, said := range []struct{ path, value string }{
		{"name", name},
		{"weave", k.Weave},
		{"pieces[0].name", k.Called()},
		{"pieces[0].length", k.Size.Length.Usual.Typed},
		{"pieces[0].width", k.Size.Width.Usual.Typed},
		{"pieces[0].both", k.Both},
	} {
		if said.value != "" {
			mustSet(tree, said.path, planfile.TextValue(said.value))
		}
	}
	for path, n := range map[string]int{"sley": warp.Format, "pieces[0].count": count} {
		v, err := planfile.ValueOf(jsonOf(n))
		if err != nil {
			panic("internal error: " + err.Error())
		}
		mustSet(tree, path, v)
	}
	return tree
}

// useNew copies something of the shelf into a warp that has none of its kind yet.
func (b *body) useNew(d record.Document) *problem.List {
	switch d.Kind {
	case record.Yarn:
		from, err := openBody(d.Body)
		if err != nil {
			return unread(d.Name, err)
		}
		y, _ := from.yarn()
		key := yarnKeyOf(y)
		list := b.use(YarnPart(key), d)
		b.say("warp.yarn", key)
		return list
	case record.Draft:
		list := b.use(draftPart, d)
		b.say("weave", b.weaveOfDraft())
		return list
	}
	return b.use(loomPart, d)
}

// say writes a text into the plan; an empty one leaves what is there.
func (b *body) say(path, value string) {
	tree, err := b.plan()
	if err != nil || value == "" {
		return
	}
	mustSet(tree, path, planfile.TextValue(value))
	b.Plan = tree.JSON()
}

// yarnKeyOf is what a plan may call a yarn of the shelf: by its colour, or else by its
// name, in letters that orders can have.
func yarnKeyOf(y yarn.Yarn) string {
	for _, said := range []string{y.Colour.Name, y.Name} {
		key := strings.Map(func(c rune) rune {
			if c == ' ' || c == ',' || c == '/' {
				return '-'
			}
			return c
		}, strings.ToLower(strings.TrimSpace(said)))
		for strings.Contains(key, "--") {
			key = strings.ReplaceAll(key, "--", "-")
		}
		if key = strings.Trim(key, "-"); order.ValidName(key) && key != "none" {
			return key
		}
	}
	return yarnKey
}

// weaveOfDraft is the weave of the draft among those that a plan may name; empty where it
// is none of them.
func (b *body) weaveOfDraft() string {
	d, _ := b.draft()
	if d == nil || b.waits() {
		return ""
	}
	name := structure.OfDraft(d).Name
	said := strings.ReplaceAll(weaveSlugs[name.Kind], "-", " ")
	switch {
	case name.Kind == structure.WarpRib || name.Kind == structure.WeftRib:
		said = "rib"
	case name.Kind == structure.Diamond:
		said = "point twill"
	case len(name.Over) == 2:
		said = string(rune('0'+name.Over[0])) + "/" + string(rune('0'+name.Over[1])) + " twill"
	}
	w, _ := warp.WeaveNamed(said)
	return w.Name
}
