package draft

import (
	"maps"
	"slices"
	"strconv"

	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// mostOfAKind is how many problems of one kind are told one by one.
const mostOfAKind = 20

// Check tells what is wrong with a draft, all of it, and what its loom cannot do
// well. Paths are threading[i], tie-up[i], treadling[i], lift-plan[i], warp and weft.
// Nothing that follows from another fault is told.
func (d *Draft) Check() *problem.List {
	c := checker{Draft: d, told: map[string]int{}}
	c.counts()
	c.ends()
	if c.treadles() {
		c.picks()
	}
	c.colours("warp", &d.Warp)
	c.colours("weft", &d.Weft)
	for _, code := range slices.Sorted(maps.Keys(c.told)) {
		if n := c.told[code]; n > mostOfAKind {
			c.list.Tell("draft.more", "", "", problem.Args{"more": n - mostOfAKind, "code": code})
		}
	}
	return &c.list
}

type checker struct {
	*Draft
	list problem.List
	told map[string]int
}

// fail and warn tell a problem, unless many of its kind were told already.
func (c *checker) fail(code, path, read string, args problem.Args) {
	if c.told[code]++; c.told[code] <= mostOfAKind {
		c.list.Fail(code, path, read, args)
	}
}

func (c *checker) warn(code, path, read string, args problem.Args) {
	if c.told[code]++; c.told[code] <= mostOfAKind {
		c.list.Warn(code, path, read, args)
	}
}

func (c *checker) counts() {
	if c.Shafts < 1 || c.Shafts > MostShafts {
		c.fail("draft.shafts", "shafts", strconv.Itoa(c.Shafts), problem.Args{"most": MostShafts})
	}
	if c.Treadles < 0 || c.Treadles > MostTreadles {
		c.fail("draft.treadles", "treadles", strconv.Itoa(c.Treadles), problem.Args{"most": MostTreadles})
	}
	if c.Ends() == 0 {
		c.fail("draft.no-ends", "threading", "", nil)
	}
	if c.Picks() == 0 {
		c.fail("draft.no-picks", "treadling", "", nil)
	}
}

// ends checks the threading. An end in no heddle is a floating selvedge where it
// stands at an edge, and a fault of the threading elsewhere.
func (c *checker) ends() {
	first, last := c.inHeddles()
	for i, shaft := range c.Threading {
		path := "threading[" + strconv.Itoa(i) + "]"
		switch {
		case shaft < 0 || shaft > c.Shafts:
			c.fail("draft.end-shaft", path, strconv.Itoa(shaft), problem.Args{"end": i + 1, "shafts": c.Shafts})
		case shaft == 0 && first < i && i < last:
			c.warn("draft.end-nowhere", path, "0", problem.Args{"end": i + 1})
		}
	}
}

// inHeddles gives the first and the last end that are in a heddle.
func (c *checker) inHeddles() (first, last int) {
	first, last = len(c.Threading), -1
	for i, shaft := range c.Threading {
		if shaft != 0 {
			first, last = min(first, i), i
		}
	}
	return first, last
}

// treadles checks what the treadles are tied to, and reports whether sheds can be
// judged.
func (c *checker) treadles() bool {
	all, before := UpTo(c.Shafts), c.list.Len()
	if len(c.Ties) > c.Treadles {
		c.fail("draft.ties", "tie-up", strconv.Itoa(len(c.Ties)), problem.Args{"treadles": c.Treadles})
	}
	for i, tie := range c.Ties {
		path, args := "tie-up["+strconv.Itoa(i)+"]", problem.Args{"treadle": i + 1, "shafts": c.Shafts}
		if beyond := (tie.Tied | tie.Lowered) &^ all; beyond != 0 {
			c.fail("draft.tie-shaft", path, beyond.String(), args)
		}
		if both := tie.Tied & tie.Lowered; both != 0 {
			c.fail("draft.tie-both", path, both.String(), args)
		}
		if tie.Lowered != 0 && !c.drawnBothWays() {
			c.fail("draft.tie-lowers", path, tie.Lowered.String(), args)
		}
	}
	return c.list.Len() == before
}

// picks checks what each pick presses and how the shed then opens.
func (c *checker) picks() {
	if c.Treadled() && len(c.Lifts) > 0 {
		c.agree()
	}
	if !c.Treadled() {
		c.lifts()
		return
	}
	judged := map[Set]bool{}
	for i, pressed := range c.Treadling {
		path := "treadling[" + strconv.Itoa(i) + "]"
		if beyond := pressed &^ UpTo(c.Treadles); beyond != 0 {
			c.fail("draft.pick-treadle", path, beyond.String(), problem.Args{"pick": i + 1, "treadles": c.Treadles})
			continue
		}
		if !judged[pressed] {
			judged[pressed] = true
			c.shed(path, i, pressed.String(), c.Open(pressed))
		}
	}
}

// lifts checks a lift plan.
func (c *checker) lifts() {
	judged := map[Set]bool{}
	for i, up := range c.Lifts {
		path := "lift-plan[" + strconv.Itoa(i) + "]"
		if beyond := up &^ UpTo(c.Shafts); beyond != 0 {
			c.fail("draft.lift-shaft", path, beyond.String(), problem.Args{"pick": i + 1, "shafts": c.Shafts})
			continue
		}
		if !judged[up] {
			judged[up] = true
			c.shed(path, i, up.String(), Shed{Up: up})
		}
	}
}

// shed tells how a shed opens; each that differs is told once, at its first pick.
func (c *checker) shed(path string, pick int, read string, s Shed) {
	args := problem.Args{"pick": pick + 1, "locked": s.Locked.String(), "free": s.Free.String(), "up": s.Up.String(), "shafts": c.Shafts}
	used, _ := c.Used()
	used &= UpTo(c.Shafts)
	switch {
	case used == 0:
		return // the ends have faults of their own
	case s.Locked != 0:
		c.fail("draft.locked", path, read, args)
		return
	case s.Free&used != 0:
		c.warn("draft.free", path, read, args)
	}
	switch up := s.Up & used; {
	case up == 0:
		c.warn("draft.none-up", path, read, args)
	case up == used:
		c.warn("draft.all-up", path, read, args)
	case c.Shed == loom.Counterbalance && Opens(c.Shed, s.Up, c.Shafts) == Uneven:
		c.warn("draft.uneven-shed", path, read, args)
	}
}

// agree tells the first pick at which treadling and lift plan say different sheds.
func (c *checker) agree() {
	lifts := c.LiftPlan()
	if len(lifts) != len(c.Lifts) {
		c.fail("draft.plans-length", "lift-plan", strconv.Itoa(len(c.Lifts)), problem.Args{"picks": len(lifts)})
		return
	}
	for i, up := range lifts {
		if up != c.Lifts[i] {
			c.fail("draft.plans-differ", "lift-plan["+strconv.Itoa(i)+"]", c.Lifts[i].String(), problem.Args{"pick": i + 1, "up": up.String()})
			return
		}
	}
}

// colours checks that every colour of the threads is in the palette.
func (c *checker) colours(path string, t *Threads) {
	used := append([]int{t.Colour}, t.Colours...)
	for i, at := range used {
		if at < 0 || at >= max(len(c.Palette), 1) {
			c.fail("draft.colour", path, strconv.Itoa(at), problem.Args{"thread": i, "colours": len(c.Palette)})
		}
	}
}
