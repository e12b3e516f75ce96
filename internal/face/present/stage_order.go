package present

import (
	"cmp"
	"slices"
)

// before is the order of the work: a stage that is told anew for each piece or
// yarn goes through one of them after the other.
func (s *spot) before(t *spot) int {
	if n := cmp.Compare(s.stage, t.stage); n != 0 {
		return n
	}
	if stages[s.stage].each != Once {
		if n := cmp.Compare(s.owner, t.owner); n != 0 {
			return n
		}
	}
	if n := cmp.Compare(s.rank, t.rank); n != 0 {
		return n
	}
	return cmp.Compare(s.owner, t.owner)
}

// settle lets every figure wait for those that it is worked out from.
func (c *courser) settle() {
	out := make([]*spot, 0, len(c.spots))
	var take func(*spot)
	take = func(s *spot) {
		if s.done {
			return
		}
		s.done = true
		for _, id := range s.node.Inputs() {
			if in, ok := c.at[id]; ok && in.stage == s.stage {
				take(in)
			}
		}
		out = append(out, s)
	}
	for _, s := range c.spots {
		take(s)
	}
	c.spots = out
}

// rank puts the families of each stage in the order of the work.
func (c *courser) rank() {
	merged := c.merged()
	for stage, list := range merged {
		merged[stage] = c.inOrder(stage, list)
	}
	for _, s := range c.spots {
		s.rank = slices.Index(merged[s.stage], s.node.Says())
	}
}

// merged is the families of each stage as its pieces or yarns have them: what only
// a later one has goes behind what it has before it.
func (c *courser) merged() map[int][]string {
	merged := map[int][]string{}
	behind := map[[2]int]int{} // where the next family of a stage and an owner goes
	for _, s := range c.spots {
		list, key := merged[s.stage], [2]int{s.stage, s.owner}
		at := slices.Index(list, s.node.Says())
		if at < 0 {
			at = len(list)
			if next, ok := behind[key]; ok && stages[s.stage].each != Once {
				at = next
			}
			list = slices.Insert(list, at, s.node.Says())
		}
		merged[s.stage], behind[key] = list, at+1
	}
	return merged
}

// inOrder takes of a list of families always the first that waits for none of the
// others; where pieces go opposite ways, from the cloth to the loom and from the
// loom to the cloth, the first of all.
func (c *courser) inOrder(stage int, list []string) []string {
	waits := c.waits(stage)
	out := make([]string, 0, len(list))
	for left := slices.Clone(list); len(left) > 0; {
		free := func(says string) bool {
			return !slices.ContainsFunc(left, func(other string) bool { return other != says && waits[[2]string{says, other}] })
		}
		at := max(slices.IndexFunc(left, free), 0)
		out = append(out, left[at])
		left = slices.Delete(left, at, at+1)
	}
	return out
}

// waits says of the families of a stage which is worked out from which.
func (c *courser) waits(stage int) map[[2]string]bool {
	out := map[[2]string]bool{}
	for _, s := range c.spots {
		if s.stage != stage {
			continue
		}
		for _, id := range s.node.Inputs() {
			if in, ok := c.at[id]; ok && in.stage == stage {
				out[[2]string{s.node.Says(), in.node.Says()}] = true
			}
		}
	}
	return out
}
