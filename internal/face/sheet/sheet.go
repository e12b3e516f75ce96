// Package sheet lays a reckoning out on paper for use at the loom: sheets to buy,
// wind, thread, weave and finish by, with boxes to tick and lines to write on.
// Every figure is a node's, as present words it; nothing is reckoned here.
package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sley/internal/app"
	"sley/internal/engine/draw/scene"
	"sley/internal/engine/reckon"
	"sley/internal/face/present"
)

// Options say what is printed on what.
type Options struct {
	Sheets []string // names of sheets, in the order wanted; none: all that apply
	Paper  string   // one of PaperNames; empty: a4
	Mark   string   // which version of the plan this is, for the foot; empty: not said
	// Record is what came of the warp, where it is in a book; nil: the record is a form.
	Record *app.Record
}

// papers of the house by name.
var papers = map[string]scene.Size{"a4": scene.A4, "letter": scene.Letter}

// PaperNames lists the papers.
func PaperNames() []string { return []string{"a4", "letter"} }

// Names lists the sheets in the order in which they are needed.
func Names() []string {
	var out []string
	for _, k := range kinds {
		out = append(out, k.name)
	}
	return out
}

// About says in a few words what the sheet of that name is for.
func About(name string) string {
	k, _ := kindNamed(name)
	return k.about
}

// Check says what is wrong with the options: a sheet or a paper that there is
// not, or a sheet asked for twice.
func (o Options) Check() error {
	if _, ok := papers[o.paper()]; !ok {
		return fmt.Errorf("--paper: %q is not known; the papers are %s", o.Paper, strings.Join(PaperNames(), ", "))
	}
	for i, name := range o.Sheets {
		if _, ok := kindNamed(name); !ok {
			return fmt.Errorf("--pages: there is no sheet %q; the sheets are %s", name, strings.Join(Names(), ", "))
		}
		if slices.Contains(o.Sheets[:i], name) {
			return fmt.Errorf("--pages: %q is named twice", name)
		}
	}
	return nil
}

func (o Options) paper() string {
	if o.Paper == "" {
		return PaperNames()[0]
	}
	return strings.ToLower(o.Paper)
}

// Make lays out the sheets of a reckoning that was made with its workings. The
// error is one of Check's, or that the plan has nothing for a sheet asked for.
func Make(r *reckon.Result, u present.Units, opt Options) (scene.Document, error) {
	if err := opt.Check(); err != nil {
		return scene.Document{}, err
	}
	d := &desk{r: r, u: u, came: opt.Record, press: press{
		size: papers[opt.paper()],
		plan: facts{present.Title(r.Plan), r.Plan.Date, opt.Mark, r.Defaults},
	}}
	chosen, err := d.choose(opt.Sheets)
	if err != nil {
		return scene.Document{}, err
	}
	for _, k := range chosen {
		k.make(d)
	}
	return d.document(r.Plan.Date), nil
}

// choose gives the sheets named, or all that apply.
func (d *desk) choose(names []string) ([]kind, error) {
	var out []kind
	for _, name := range names {
		k, _ := kindNamed(name)
		if !k.has(d) {
			return nil, fmt.Errorf("--pages: the plan has nothing for the sheet %s: %s", name, k.without)
		}
		out = append(out, k)
	}
	if len(names) > 0 {
		return out, nil
	}
	for _, k := range kinds {
		if k.has(d) && (k.usual == nil || k.usual(d)) {
			out = append(out, k)
		}
	}
	return out, nil
}

// desk is where the sheets of one reckoning are made.
type desk struct {
	press
	r    *reckon.Result
	u    present.Units
	came *app.Record // of it; nil where that is for the weaver to write
}

func (d *desk) lines(ids ...string) []present.Line { return present.Lines(d.r, d.u, "", ids...) }

// linesIn leaves out of the labels what the page says already.
func (d *desk) linesIn(within string, ids ...string) []present.Line {
	return present.Lines(d.r, d.u, within, ids...)
}

func (d *desk) has(id string) bool {
	_, ok := d.r.Node(id)
	return ok
}

// bench is a node's figure as read at the bench; nothing where there is no node.
func (d *desk) bench(id string) string {
	n, ok := d.r.Node(id)
	if !ok {
		return ""
	}
	return d.u.Bench(n)
}

// listed gives the nodes of a list, "bouts[1].changes[" or "heddles[".
func (d *desk) listed(prefix string) []reckon.Node {
	var out []reckon.Node
	for _, n := range d.r.Nodes {
		if rest, ok := strings.CutPrefix(n.ID, prefix); ok && strings.HasSuffix(rest, "]") {
			out = append(out, n)
		}
	}
	return out
}

func count(n int) string { return strconv.Itoa(n) }

// pieceID begins the ids of a kind of piece.
func pieceID(i int) string { return "pieces[" + count(i) + "]." }

// pieceName is what a kind of piece is called.
func (d *desk) pieceName(i int) string {
	if name := d.r.Plan.Pieces[i].Name; name != "" {
		return name
	}
	return wordPiece
}

// yarnNames lists the yarns that are needed.
func (d *desk) yarnNames() []string {
	var out []string
	for _, n := range d.r.Nodes {
		if n.Says() == "yarns[].need" {
			out = append(out, n.About.Yarn)
		}
	}
	return out
}

// yarnName is what a yarn is called.
func yarnName(name string) string {
	if name == "" {
		return wordTheYarn
	}
	return name
}
