package app

import (
	"bytes"
	"strings"

	"sley/internal/edge/planfile"
	"sley/internal/edge/wif"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// takeEdited takes what was edited in the folder as the next version. Where the book
// went on otherwise since, or the warp is on the loom, that is a problem: neither may be
// lost. An edit that the book took before is not taken again.
func (in *importing) takeEdited(w record.Writer, d indexed, bodies []string) error {
	edited, ok := in.edited(d, bodyOf(bodies[len(bodies)-1]))
	if !ok {
		return nil
	}
	on, err := w.Document(in.ids[d.Mark])
	if err != nil {
		return err
	}
	taken, err := in.tookBefore(w, on, len(bodies), string(edited.bytes()))
	switch {
	case err != nil || taken:
		return err
	case on.Version > len(bodies):
		in.list.Fail("import.two-ways", d.File, d.Name, problem.Args{"have": on.Version, "folder": len(bodies)})
		return nil
	}
	return in.append(w, on, edited, d.File)
}

// tookBefore says whether a version from that of the folder on has that body.
func (in *importing) tookBefore(w record.Reader, on record.Document, from int, edited string) (bool, error) {
	for n := from; n <= on.Version; n++ {
		data, err := w.Body(on.ID, n)
		if err != nil || string(data) == edited {
			return err == nil, err
		}
	}
	return false, nil
}

// append writes an edited document as the next version. What was removed stays so.
func (in *importing) append(w record.Writer, on record.Document, edited *body, file string) error {
	v := record.Version{
		Window: in.window, Act: record.Edit, State: on.Version + 1, Removed: on.Removed, Body: edited.bytes(),
	}
	if on.Kind == record.Warp {
		_, begun, err := started(w, on.ID)
		if err != nil {
			return err
		}
		if begun {
			v.Act = record.Amend
			in.list.Append(edited.onlyAmends(on.Body))
		}
	}
	if in.list.Failed() {
		return nil
	}
	in.done.Edited = append(in.done.Edited, file)
	in.touched[on.ID] = true
	_, _, err := in.s.appendVersion(w, on, edited, v)
	return err
}

// edited is the body of a document whose readable file says something else than its
// newest version in the folder.
func (in *importing) edited(d indexed, last *body) (*body, bool) {
	name := strings.TrimSuffix(d.File, ending(d.Kind))
	changed := false
	for file, was := range last.files(d.Kind, name) {
		now, ok := in.file(file)
		if !ok {
			return nil, false
		}
		if bytes.Equal(now, was) {
			continue
		}
		changed = true
		last.takeFile(d.Kind, file, now, in.list)
	}
	return last, changed && !in.list.Failed()
}

// takeFile reads an edited file into a body.
func (b *body) takeFile(kind record.Kind, file string, data []byte, list *problem.List) {
	isWIF := len(file) > 4 && file[len(file)-4:] == ".wif"
	switch {
	case isWIF:
		if _, found := wif.Decode(file, data); found.Failed() {
			list.Append(found)
			return
		}
		b.WIF = &text{b.WIF.Name, string(data)}
	case kind == record.Warp:
		tree, found := planfile.ReadText(file, data)
		list.Append(found)
		if tree != nil {
			checkName(textAt(tree, "name"), file, list)
			b.Plan = tree.JSON()
		}
	default:
		other, err := openEdited(data)
		if err != nil {
			list.Fail("import.json", file, file, problem.Args{"error": err.Error()})
			return
		}
		checkName(other.name(kind), file, list)
		for _, p := range other.check(kind).All() {
			p.Place = problem.Place{File: file}
			list.Add(p)
		}
		*b = *other
	}
}

// openEdited reads a document that a person edited: nothing in it is ignored.
func openEdited(data []byte) (*body, error) {
	if err := strictly(data, &body{}); err != nil {
		return nil, err
	}
	return openBody(data)
}
