package app

import (
	"encoding/json"
	"fmt"
	"strconv"

	"sley/internal/edge/planfile"
	"sley/internal/engine/reckon"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
)

// BodyFormat is the version of the documents that this program writes, and the newest
// it reads.
const BodyFormat = 1

// body is a document as the book holds it. Which parts there are depends on its kind.
type body struct {
	Format  int             `json:"format"`
	Name    string          `json:"name,omitempty"` // of yarns and drafts
	Note    string          `json:"note,omitempty"` // of yarns, looms and drafts
	Plan    json.RawMessage `json:"plan,omitempty"` // of warps, as a plan file has it
	Yarn    json.RawMessage `json:"yarn,omitempty"` // what stands under [yarns.NAME]
	Loom    json.RawMessage `json:"loom,omitempty"` // what stands under [loom]
	Winding json.RawMessage `json:"winding,omitempty"`
	WIF     *text           `json:"wif,omitempty"`     // of drafts, and of warps that point to one
	Origins []Origin        `json:"origins,omitempty"` // of warps: what was copied from a shelf
	Source  *text           `json:"source,omitempty"`  // of warps: the plan file it was, with its remarks

	last  *reckoned // the plan as it was reckoned last
	drawn *decoded  // the draft as it was read last
}

// reckoned is a plan with its numbers and problems: one action asks for them twice.
type reckoned struct {
	of, wif string
	plan    *warp.Plan
	result  *reckon.Result // nil when the plan has errors
	list    *problem.List
}

// reckon reckons the plan of a warp, without the marks of its tape, once for each state.
func (b *body) reckon() *reckoned {
	wif := ""
	if b.WIF != nil {
		wif = b.WIF.Text
	}
	if b.last != nil && b.last.of == string(b.Plan) && b.last.wif == wif {
		return b.last
	}
	now := &reckoned{of: string(b.Plan), wif: wif, plan: &warp.Plan{}}
	s, err := b.source("")
	if err != nil {
		now.list = unread("", err)
	} else {
		var found *problem.List
		now.plan, _, found = s.decode("")
		if !found.Failed() {
			now.result = reckon.Solve(now.plan, reckon.Options{})
			now.plan = now.result.Plan
			found.Append(&now.result.Problems)
		}
		now.list = unplaced(found)
	}
	b.last = now
	return now
}

// text is a file that was taken in.
type text struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Origin says what on a shelf a part of a warp was copied from. The copy is the warp's
// own: nothing that happens on the shelf changes it.
type Origin struct {
	Part    string      `json:"part"` // its path in the plan: yarns.white, loom, draft
	Kind    record.Kind `json:"kind"`
	Mark    string      `json:"mark"`    // of the document on the shelf
	Version int         `json:"version"` // that was copied
}

// openBody reads the body of a document. One of a later format is trouble: Newer.
func openBody(data []byte) (*body, error) {
	var b body
	if err := json.Unmarshal(data, &b); err != nil {
		return nil, &record.Trouble{Code: record.Damaged, Found: "a document that is no JSON", Err: err}
	}
	if b.Format > BodyFormat {
		found := "document format " + strconv.Itoa(b.Format)
		return nil, &record.Trouble{Code: record.Newer, Found: found, Known: strconv.Itoa(BodyFormat)}
	}
	return &b, nil
}

// openDocument reads a document with its body.
func openDocument(r record.Reader, id record.ID) (record.Document, *body, error) {
	d, err := r.Document(id)
	if err != nil {
		return d, nil, err
	}
	b, err := openBody(d.Body)
	return d, b, err
}

// bytes is the body as it is kept.
func (b *body) bytes() []byte {
	b.Format = BodyFormat
	data, err := json.Marshal(b)
	if err != nil {
		panic(fmt.Sprintf("internal error: a document cannot be written: %v", err))
	}
	return data
}

// part is one of the trees of a body: the field it stands in, and what its paths begin
// with where a body has several.
type part struct {
	at     *json.RawMessage
	before string
}

// parts are the trees of a document of that kind, the main one last.
func (b *body) parts(kind record.Kind) []part {
	switch kind {
	case record.Warp:
		return []part{{&b.Plan, ""}}
	case record.Yarn:
		return []part{{&b.Yarn, ""}}
	case record.Loom:
		return []part{{&b.Winding, "winding"}, {&b.Loom, ""}}
	}
	return nil
}

// tree reads a part; one that is not there is empty.
func (p part) tree() (*planfile.Document, error) {
	if len(*p.at) == 0 {
		return planfile.NewDocument(), nil
	}
	return planfile.ReadJSON(*p.at)
}

// plan reads the tree of a warp's plan.
func (b *body) plan() (*planfile.Document, error) { return part{at: &b.Plan}.tree() }

// texts are what of a body is no tree, by its path.
func (b *body) texts(kind record.Kind) map[string]*string {
	switch kind {
	case record.Yarn, record.Draft:
		return map[string]*string{"name": &b.Name, "note": &b.Note}
	case record.Loom:
		return map[string]*string{"note": &b.Note}
	}
	return nil
}

// name is what the document is called.
func (b *body) name(kind record.Kind) string {
	if kind == record.Yarn || kind == record.Draft {
		return b.Name
	}
	tree, err := b.parts(kind)[len(b.parts(kind))-1].tree()
	if err != nil {
		return ""
	}
	v, _ := tree.Get("name")
	name, _ := v.Text()
	return name
}

// source is the warp as a plan file, with its draft beside it.
func (b *body) source(name string) (Source, error) {
	tree, err := b.plan()
	if err != nil {
		return Source{}, err
	}
	return Source{Name: name, Text: tree.Text(), Beside: b.beside}, nil
}

// beside gives the draft of the warp, whatever name the plan has for it: it is the only
// file that stands beside a warp in the book.
func (b *body) beside(string) ([]byte, error) {
	if b.WIF == nil {
		return nil, ErrNoDraft
	}
	return []byte(b.WIF.Text), nil
}

// check reads the parts of a document and says what is wrong with them. Warps are
// judged by their reckoning.
func (b *body) check(kind record.Kind) *problem.List {
	list := &problem.List{}
	switch kind {
	case record.Yarn:
		_, found := b.yarn()
		list.Append(found)
	case record.Loom:
		_, _, found := b.loom()
		list.Append(found)
	case record.Draft:
		_, found := b.draft()
		list.Append(found)
	}
	return list
}
