package app

import (
	"encoding/json"

	"sley/internal/trade/record"
)

// values gives what a document says as one tree of JSON, in which each value stands at the
// path by which it is set; of a draft, which is an interchange text, its name and note.
func (b *body) values(kind record.Kind) ([]byte, error) {
	if kind == record.Warp {
		return b.Plan, nil
	}
	top := map[string]json.RawMessage{}
	for path, text := range b.texts(kind) {
		if *text != "" {
			top[path], _ = json.Marshal(*text) // a text, which cannot fail
		}
	}
	for _, p := range b.parts(kind) {
		tree, err := p.tree()
		switch {
		case err != nil:
			return nil, err
		case len(*p.at) == 0:
		case p.before != "":
			top[p.before] = tree.JSON()
		default:
			if err := json.Unmarshal(tree.JSON(), &top); err != nil {
				return nil, &record.Trouble{Code: record.Damaged, Found: "values that are no JSON", Err: err}
			}
		}
	}
	return json.Marshal(top)
}
