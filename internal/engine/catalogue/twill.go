package catalogue

import (
	"slices"

	"sley/internal/trade/draft"
)

// over is the ratio that twills are named by, and hand the way their line climbs.
func over(otherwise string) Param { return ratio("over", otherwise, 3, 24) }

var hand = choice("hand", "right", "left")

const (
	textexec = "1/2 on three shafts: sheds of the Encyclopedia Americana, vol. 29, Weaving; 1/3 on four: Dooley, Textiles"
	wolfDraw = "point draws repeat on 2n - 2 ends: A. Wolfensberger, Theory of Silk Weaving, 2nd ed. (1921), p. 11"
)

func twills() []*Entry {
	return []*Entry{
		{
			ID: "twill", Family: Twills, Source: textexec, Params: []Param{over("2/2"), hand},
			make: func(m *making) *draft.Draft { return m.twilled(straight, straight) },
		},
		{
			ID: "broken-twill", Family: Twills, Source: memory, make: brokenTwill,
			Params: []Param{over("2/2"), count("run", 2, 24, 4), count("skip", 1, 22, 1), hand},
		},
		{
			ID: "herringbone", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("run", 3, 48, 8)},
			make: func(m *making) *draft.Draft { return m.twilled(m.herringboned, straight) },
		},
		{
			ID: "herringbone-across", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("run", 3, 48, 8)},
			make: func(m *making) *draft.Draft { return m.twilled(straight, m.herringboned) },
		},
		{
			ID: "herringbone-diamond", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("run", 3, 24, 8)},
			make: func(m *making) *draft.Draft { return m.twilled(m.herringboned, m.herringboned) },
		},
		{
			ID: "undulating-twill", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("swell", 2, 4, 2), hand},
			make: func(m *making) *draft.Draft { return m.twilled(m.swelling, straight) },
		},
		{
			ID: "undulating-treadling", Family: Twills, Source: memory, Params: []Param{over("2/2"), count("swell", 2, 4, 2), hand},
			make: func(m *making) *draft.Draft { return m.twilled(straight, m.swelling) },
		},
		{
			ID: "shaded-twill", Family: Twills, Source: memory, Params: []Param{count("shafts", 4, 7, 4), hand},
			make: func(m *making) *draft.Draft { return m.shaded(straight(m.count("shafts"))) },
		},
		{
			ID: "twill-squares", Family: Twills, Source: memory, make: twillSquares,
			Params: []Param{over("2/2"), count("times", 1, 4, 2)},
		},
	}
}

// twilled gives a twill by its orders of shafts and treadles. Treadle k lifts the
// shafts of the first pick moved by k, so that with both orders straight the line
// climbs by one end to the pick, to the right or to the left. Shafts and treadles that
// short runs leave out are none of the draft.
func (m *making) twilled(ends, picks func(n int) []int) *draft.Draft {
	word := m.word("over")
	n := len(word)
	threading := ends(n)
	if m.list.Failed() {
		return nil
	}
	treadling := picks(n)
	if m.list.Failed() {
		return nil
	}
	if m.leftHanded() {
		for i, k := range treadling {
			treadling[i] = mod(-k, n)
		}
	}
	d := drawn(threading, twillTies(word), treadling)
	d.Shafts = n
	return d.DropUnused()
}

func (m *making) leftHanded() bool {
	return slices.ContainsFunc(m.entry.Params, func(p Param) bool { return p.Name == "hand" }) && m.is("hand", "left")
}

// twillTies gives treadle k the shafts that the word, moved by k, lifts.
func twillTies(word []bool) []draft.Set {
	out := make([]draft.Set, len(word))
	for k := range out {
		for shaft := range word {
			if word[mod(shaft-k, len(word))] {
				out[k] = out[k].With(shaft + 1)
			}
		}
	}
	return out
}

// herringboned gives so many in order and as many backwards, beginning half a repeat
// away, so that every float of a balanced twill ends where the line turns.
func (m *making) herringboned(n int) []int {
	run := m.count("run")
	up := make([]int, 0, 2*run)
	for i := range run {
		up = append(up, i%n)
	}
	for i := range run {
		up = append(up, mod(run-1+n/2-i, n))
	}
	return up
}

// brokenTwill breaks the line after so many ends and leaves out some shafts, until it
// comes round.
func brokenTwill(m *making) *draft.Draft {
	return m.twilled(func(n int) []int {
		run, skip := m.count("run"), m.count("skip")
		step := mod(run+skip, n)
		if mod(skip, n) == 0 || step == 0 {
			m.fail("catalogue.unbroken", "skip", nil)
			return nil
		}
		var out []int
		for at := range n / gcd(step, n) {
			out = append(out, moved(straight(run), at*step, n)...)
		}
		return out
	}, straight)
}

// swelling gives the order once with each number single, then with each double, and so
// on up and down again: the line grows flat and steep in turn.
func (m *making) swelling(n int) []int {
	var out []int
	for _, times := range there(straight(m.count("swell"))) {
		out = append(out, each(straight(n), times+1)...)
	}
	return out
}

// shaded lifts one shaft of n, then two, up to all but one, each in a repeat of picks
// of its own, in the order of the binds.
func (m *making) shaded(binds []int) *draft.Draft {
	n := len(binds)
	var lifts []draft.Set
	for up := 1; up < n; up++ {
		for _, at := range binds {
			if m.leftHanded() {
				at = mod(-at, n)
			}
			var lift draft.Set
			for k := range up {
				lift = lift.With(mod(at+k, n) + 1)
			}
			lifts = append(lifts, lift)
		}
	}
	return lifted(straight(n), lifts)
}

// twillSquares sets squares of right twill beside squares of left twill.
func twillSquares(m *making) *draft.Draft {
	word := m.word("over")
	n := len(word)
	s := n * m.count("times")
	return woven(plot(2*s, 2*s, func(i, j int) bool {
		if (i/s+j/s)%2 == 0 {
			return word[mod(j-i, n)]
		}
		return word[mod(-j-1-i, n)]
	}))
}
