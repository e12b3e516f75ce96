package app

import (
	"encoding/json"
	"strings"

	"sley/internal/engine/defaults"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// YarnRead is a yarn as one line says it, with the values that would put it on the shelf.
type YarnRead struct {
	Label yarn.Label
	Yarn  yarn.Yarn // by its keys: what grist, diameters and wraps are reckoned of
	Sets  []Set     // by the keys of [yarns.NAME]
	Cites string    // the source of the system that was taken; empty where none was
}

// ReadYarn reads a yarn from a line as labels have it, such as "8/2 cotton, white", with
// values laid over it by the keys of [yarns.NAME], such as a skein that was measured; with
// some, there may be no line. Nothing is written. The list has what could not be read; the
// rest is given all the same.
func ReadYarn(text string, also ...Set) (YarnRead, *problem.List) {
	list := &problem.List{}
	out := YarnRead{}
	if len(also) == 0 || strings.TrimSpace(text) != "" {
		out = readLabel(text, list)
	}
	if len(also) > 0 {
		out.lay(also, list)
	}
	return out, list
}

// lay lays values over a yarn that was read.
func (y *YarnRead) lay(also []Set, list *problem.List) {
	b := &body{Name: y.Label.Name}
	y.Sets = append(y.Sets, also...)
	list.Append(b.apply(record.Yarn, y.Sets))
	read, found := b.yarn()
	list.Append(found)
	y.Yarn = read
}

func readLabel(text string, list *problem.List) YarnRead {
	out := YarnRead{Label: yarn.ReadLabel(text, list)}
	l := out.Label
	if source, ok := defaults.SourceOf(l.Source); ok {
		out.Cites = source.Text
	}
	for _, said := range []struct {
		path, value string
	}{
		{"count", l.Count.Typed},
		{"fibre", l.Composition.Typed},
		{"colour", l.Colour.String()},
		{"put-up", l.PutUp.Typed},
		{"wraps", l.Wraps.Typed},
	} {
		if said.value != "" {
			out.Sets = append(out.Sets, Set{said.path, jsonOf(said.value)})
		}
	}
	if l.Handspun {
		out.Sets = append(out.Sets, Set{"handspun", jsonOf(true)})
	}
	out.Yarn = yarn.Yarn{
		Name: l.Name, Count: l.Count, Composition: l.Composition, Colour: l.Colour,
		PutUp: l.PutUp, Wraps: l.Wraps, Handspun: l.Handspun,
	}
	noted := &problem.List{}
	out.Yarn.Validate("", noted)
	list.Append(unrooted(noted))
	return out
}

// unrooted takes the dot off paths that stand below nothing.
func unrooted(list *problem.List) *problem.List {
	out := &problem.List{}
	for _, p := range list.All() {
		if len(p.Path) > 0 && p.Path[0] == '.' {
			p.Path = p.Path[1:]
		}
		out.Add(p)
	}
	return out
}

// jsonOf is a text, a number or a truth as JSON.
func jsonOf[T string | int | bool](value T) json.RawMessage {
	data, _ := json.Marshal(value) // plain values, which cannot fail
	return data
}
