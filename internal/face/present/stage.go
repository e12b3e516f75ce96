package present

import (
	"cmp"
	"slices"
	"strings"

	"sley/internal/engine/reckon"
)

// Stage is a stretch of a reckoning in the order of the work: every figure stands
// after those that it is worked out from, in this stage or one before.
type Stage struct {
	Title  string
	Each   Each   // what the stage is told anew for
	Owner  string // the name of the one it is told for; empty where it has none
	Letter string // of that one, where the plan has several
	Steps  []Step
}

// Each says what a stage is told anew for.
type Each int

// The kinds of stage: told once, for each kind of piece, for each yarn.
const (
	Once Each = iota
	EachPiece
	EachYarn
)

// Step is one figure of a stage, numbered. Figures alike, of several pieces or
// yarns or along a list, have one number: 17A and 17B, 73.1 and 73.2.
type Step struct {
	ID      string
	Line    int    // the number alone, from 1
	Number  string // with the letter of its piece or yarn, and its place in a list
	Label   string
	Form    string // the label for any plan: without the names and sizes of this one
	Value   string
	State   string // of a length, a width or a density; empty where it has none or the label says it
	How     string // how a figure that is not worked out is known
	Usual   string // of one that the plan does not say: its usual range
	Source  int    // the number of its source, from 1; 0 where it has none
	Derived bool   // worked out from others
	Words   string // its formula in words; names in [ ] with their numbers
	Figures string // its formula with figures, and what it comes to
	Ask     string // Words for any plan
	Unit    string // what a figure of its kind is written in; empty for a number
	Owner   int    // of several pieces or yarns: which, from 1
	Of      int    // how many pieces or yarns the plan has, where it has an Owner
	Way     string // on a list of marks: which mark, for any plan
	Place   int    // in a list: where, from 1
}

// Course is a whole reckoning in stages, each figure once, and its sources in the
// order of their numbers.
type Course struct {
	Stages  []Stage
	Sources []string
}

// CourseOf puts a reckoning that was made with its workings into the order of the
// work.
func CourseOf(r *reckon.Result, u Units) Course {
	c := &courser{pager: pager{r: r, u: u}, at: map[string]*spot{}, sources: map[string]int{}}
	c.place()
	c.number()
	out := Course{}
	for _, s := range c.spots {
		c.add(&out, s)
	}
	out.Sources = make([]string, len(c.sources))
	for source, n := range c.sources {
		out.Sources[n-1] = reckon.SourceText(source)
	}
	return out
}

// courser puts nodes into stages.
type courser struct {
	pager
	spots   []*spot // in the order of the work when place is done
	at      map[string]*spot
	sources map[string]int // numbers by id
	yarns   []string       // in the order of their letters
}

// spot is where a node stands.
type spot struct {
	node  reckon.Node
	stage int
	owner int // of the piece or the yarn it is about, from 1; 0: none
	kind  Each
	rank  int // of its family in the stage
	line  int
	place int // in a list, from 1; 0 where it stands alone
	done  bool
}

// family is what has one number: the figures that say the same in one stage.
type family struct {
	stage int
	says  string
}

func (s *spot) family() family { return family{s.stage, s.node.Says()} }

// place finds the stage of every node and puts the nodes in order.
func (c *courser) place() {
	c.yarns = c.namesOfYarns()
	for _, n := range c.r.Nodes {
		s := &spot{node: n, stage: stageOf(n.Says())}
		s.kind, s.owner = c.ownerOf(n)
		for _, id := range n.Inputs() {
			if in, ok := c.at[id]; ok && in.node.Formula != nil {
				s.stage = max(s.stage, in.stage)
			}
		}
		c.spots = append(c.spots, s)
		c.at[n.ID] = s
	}
	c.bringForward()
	c.rank()
	slices.SortStableFunc(c.spots, (*spot).before)
	c.settle()
}

// bringForward puts what is known to the first stage that reads it, where that is
// before its own.
func (c *courser) bringForward() {
	for _, s := range c.spots {
		for _, id := range s.node.Inputs() {
			if in, ok := c.at[id]; ok && in.node.Formula == nil {
				in.stage = min(in.stage, s.stage)
			}
		}
	}
}

// number gives the families their numbers and the members of a list their places.
func (c *courser) number() {
	lines, last := map[family]int{}, 0
	byRank := slices.Clone(c.spots)
	slices.SortStableFunc(byRank, func(a, b *spot) int {
		return cmp.Or(cmp.Compare(a.stage, b.stage), cmp.Compare(a.rank, b.rank))
	})
	for _, s := range byRank {
		if lines[s.family()] == 0 {
			last++
			lines[s.family()] = last
		}
		s.line = lines[s.family()]
	}
	c.numberLists()
}

func (c *courser) numberLists() {
	type list struct{ line, owner int }
	all := map[list]int{}
	for _, s := range c.spots {
		all[list{s.line, s.owner}]++
	}
	seen := map[list]int{}
	for _, s := range c.spots {
		if key := (list{s.line, s.owner}); all[key] > 1 {
			seen[key]++
			s.place = seen[key]
		}
	}
}

// add puts a step to the stage it belongs to, which begins with it if it must.
func (c *courser) add(out *Course, s *spot) {
	kind := stages[s.stage]
	title, owner, letter := kind.title, "", ""
	if kind.each != Once && s.owner > 0 {
		owner, letter = c.nameOf(kind.each, s.owner), c.letter(s)
	}
	last := len(out.Stages) - 1
	if last < 0 || out.Stages[last].Title != title || out.Stages[last].Owner != owner || out.Stages[last].Letter != letter {
		out.Stages = append(out.Stages, Stage{Title: title, Each: kind.each, Owner: owner, Letter: letter})
		last++
	}
	out.Stages[last].Steps = append(out.Stages[last].Steps, c.step(s))
}

// namesOfYarns lists the yarns in the order of the plan, then those that it only
// names in passing.
func (c *courser) namesOfYarns() []string {
	var met, out []string
	for _, n := range c.r.Nodes {
		if strings.HasPrefix(n.ID, "yarns[") && !slices.Contains(met, n.About.Yarn) {
			met = append(met, n.About.Yarn)
		}
	}
	for i := range c.r.Plan.Yarns {
		if name := c.r.Plan.Yarns[i].Name; slices.Contains(met, name) {
			out = append(out, name)
		}
	}
	for _, name := range met {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}
