package order

import (
	"maps"
	"slices"

	"sley/internal/trade/near"
)

// unknown says that t names nothing, and what it could have been meant for.
func (p *parser) unknown(t token) {
	a := args{"valid": p.valid()}
	maps.Copy(a, p.guess(t))
	p.fail(codeNameUnknown, t, a)
}

// valid gives the names that can stand in the order: yarns as they were given,
// then groups by the alphabet.
func (r *reading) valid() []string {
	if r.names == nil {
		if r.ctx.Kind == Stripes {
			r.names = slices.Clone(r.ctx.Names)
		}
		r.names = append(r.names, slices.Sorted(maps.Keys(r.ctx.Groups))...)
		r.names = append(r.names, "mirrored")
	}
	last := len(r.names) - 1
	return r.names[:last:last]
}

// guess gives the name or the word that t may be a slip for, as near.
func (r *reading) guess(t token) args {
	r.valid()
	if name := near.To(t.text, r.names); name != "" {
		return args{"near": name}
	}
	return nil
}
