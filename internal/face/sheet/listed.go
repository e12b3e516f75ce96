package sheet

import (
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// Listed is a sheet, and whether a plan has it.
type Listed struct {
	Name    string `json:"name"`
	Says    string `json:"says"`
	Has     bool   `json:"has"`
	Usual   bool   `json:"usual"`             // it is made unasked
	Without string `json:"without,omitempty"` // what the plan lacks for it
	Pages   int    `json:"pages"`
}

// List lists every sheet for a reckoning that was made with its workings. The error is of
// a paper that there is not. Sheets that opt names are not asked for.
func List(r *reckon.Result, u present.Units, opt Options) ([]Listed, error) {
	opt.Sheets = nil
	if err := opt.Check(); err != nil {
		return nil, err
	}
	d := &desk{r: r, u: u, came: opt.Record, press: press{size: papers[opt.paper()], plan: facts{name: present.Title(r.Plan)}}}
	out := make([]Listed, 0, len(kinds))
	for _, k := range kinds {
		l := Listed{Name: k.name, Says: k.about, Has: k.has(d), Usual: k.usual == nil || k.usual(d)}
		if l.Has {
			d.pages = nil
			k.make(d)
			l.Pages = len(d.pages)
		} else {
			l.Without, l.Usual = k.without, false
		}
		out = append(out, l)
	}
	return out, nil
}
