package planfile

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/problem"
)

// sought takes the path of a key of a piece apart.
var sought = regexp.MustCompile(`^pieces\[(0|[1-9]\d{0,5})\]\.(length|width|count)$`)

// readFind reads what is to be reckoned backwards.
func (d *decoder) readFind(n *node) {
	if n == nil {
		return
	}
	t := d.open(findTable, n)
	if t.n == nil {
		return
	}
	if !t.has("what") {
		t.failKey("key.missing", "what", problem.Args{"key": "what"})
	}
	what := t.text("what")
	if n := t.at("what"); n != nil && n.kind == textKind && d.canBeFound(n) {
		d.plan.Find.What = what
	}
	d.plan.Find.Within = d.within(t.at("within"))
}

// canBeFound reports whether n names something that can be reckoned backwards.
func (d *decoder) canBeFound(n *node) bool {
	if m := sought.FindStringSubmatch(n.text); m != nil {
		i, _ := strconv.Atoi(m[1])
		if i < len(d.plan.Pieces) {
			return true
		}
		d.fail("find.piece", n, problem.Args{"count": len(d.plan.Pieces)})
		return false
	}
	if name, ok := strings.CutPrefix(n.text, "yarns."); ok {
		return d.knows(n, name)
	}
	if n.text == "warp.sett" {
		return true
	}
	d.fail("find.path", n, problem.Args{"valid": []string{
		"pieces[0].length", "pieces[0].width", "pieces[0].count", "warp.sett", "yarns.NAME",
	}})
	return false
}

// within reads what limits the thing that is sought.
func (d *decoder) within(n *node) []string {
	if n == nil || !d.is(n, listKind, `a list of limits, as ["warp.wound", "yarns.white"]`) {
		return nil
	}
	var out []string
	for _, c := range n.items {
		if d.is(c, textKind, `a limit, as "warp.wound"`) && d.limits(c) {
			if slices.Contains(out, c.text) {
				d.fail("find.twice", c, nil)
				continue
			}
			out = append(out, c.text)
		}
	}
	return out
}

// limits reports whether n names a limit that the plan gives.
func (d *decoder) limits(n *node) bool {
	if name, ok := strings.CutPrefix(n.text, "yarns."); ok {
		if !d.knows(n, name) {
			return false
		}
		return d.limited(n, join("yarns", name)+".stock")
	}
	switch n.text {
	case "warp.wound":
		return d.limited(n, "warp.wound", "built.wound")
	case join("loom", "beam-holds"), join("loom", "width"):
		return d.limited(n, n.text)
	}
	d.fail("find.limit", n, problem.Args{"valid": []string{"warp.wound", "yarns.NAME", join("loom", "beam-holds"), join("loom", "width")}})
	return false
}

// limited reports whether the file holds one of the paths, else what would be
// the limit is missing.
func (d *decoder) limited(n *node, paths ...string) bool {
	for _, path := range paths {
		if d.top.follow(path) != nil {
			return true
		}
	}
	d.fail("find.limit-missing", n, problem.Args{"missing": paths[0]})
	return false
}
