package structure

import "slices"

// Topic is what a finding is about: the id under which its words are kept.
type Topic string

// The topics of a weave.
const (
	Named        Topic = "named"         // Name
	NoName       Topic = "no-name"       // no handbook's name fits
	OneShed      Topic = "one-shed"      // ends in groups as for a basket, and one pick in each shed; Ends: in a group
	Hangs        Topic = "hangs"         // it is one cloth
	Layered      Topic = "layered"       // Count layers of cloth lie on one another
	Nothing      Topic = "nothing"       // no two threads hold one another
	Loose        Topic = "loose"         // Count threads of a Way, of Of, are held by nothing: Threads
	Repeats      Topic = "repeats"       // after Ends and Picks
	Once         Topic = "once"          // a cloth of Ends and Picks that holds no smaller repeat
	Fewest       Topic = "fewest"        // shafts, in Ends, and lifts, in Picks
	Floating     Topic = "floating"      // of a Way; the longest on the Front and on the Back, with their first Places
	Shortest     Topic = "shortest"      // of a Way no float is longer than 1
	Never        Topic = "never"         // Count threads of a Way, of Of, stay on a Face all along
	Evenly       Topic = "evenly"        // each thread of a Way changes sides Most times, at Of crossings
	NearlyEvenly Topic = "nearly-evenly" // Least to Most times, which the edges of a cloth make alone
	Unevenly     Topic = "unevenly"      // Least to Most times
	Balanced     Topic = "balanced"      // the warp is on top at Count of Of crossings, by Balance
)

// The topics of edges.
const (
	AllCaught    Topic = "all-caught"    // on a Side every turn, Of of them
	SomeCaught   Topic = "some-caught"   // on a Side Count of Of, with Most bare ones one after another
	NoneCaught   Topic = "none-caught"   // on a Side none of Of
	SameShed     Topic = "same-shed"     // Count of Of turns go back into the shed they came from
	StartOther   Topic = "start-other"   // Fix: shuttles start from the other side
	ChangeEnds   Topic = "change-ends"   // Fix: ends are added or left out, and shuttles may start elsewhere
	HangFloating Topic = "hang-floating" // Fix: floating selvedges
)

// Topics lists all of them.
func Topics() []Topic {
	return []Topic{
		Named, NoName, OneShed, Hangs, Layered, Nothing, Loose, Repeats, Once, Fewest,
		Floating, Shortest, Never, Evenly, NearlyEvenly, Unevenly, Balanced,
		AllCaught, SomeCaught, NoneCaught, SameShed, StartOther, ChangeEnds, HangFloating,
	}
}

// Finding is one thing worth telling; its topic says which of the figures it has.
type Finding struct {
	Topic       Topic
	Way         Way
	Face        Face
	Side        Side
	Balance     Balance
	Ends, Picks int
	Count, Of   int
	Least, Most int
	Front, Back int
	Places      []Place // the first of the longest float of the front, of the back
	Threads     []int   // from 0
	Name        Name
	Fix         Fix
}

// Findings tells what a student should know of a weave, the plainest first.
func (a *Analysis) Findings() []Finding {
	if a.Picks == 0 || a.Ends == 0 {
		return nil
	}
	out := a.nameFindings()
	out = append(out, a.hangFindings()...)
	out = append(out, a.repeatFinding(), Finding{Topic: Fewest, Ends: a.Shafts, Picks: a.Lifts})
	for _, way := range []Way{Warp, Weft} {
		out = append(out, a.floatFindings(way)...)
	}
	for _, way := range []Way{Warp, Weft} {
		if a.Interlacing(way).All > 0 {
			out = append(out, a.interlacingFinding(way))
		}
	}
	return append(out, Finding{Topic: Balanced, Balance: a.Balance(), Count: a.WarpUps, Of: a.Picks * a.Ends})
}

func (a *Analysis) nameFindings() []Finding {
	if a.Name.Kind == Unnamed {
		return []Finding{{Topic: NoName}}
	}
	out := []Finding{{Topic: Named, Name: a.Name}}
	if a.Name.Kind == WeftRib && slices.Min(a.Name.EndGroups) > 1 {
		out = append(out, Finding{Topic: OneShed, Ends: slices.Max(a.Name.EndGroups)})
	}
	return out
}

func (a *Analysis) hangFindings() []Finding {
	if a.HangsTogether() {
		return []Finding{{Topic: Hangs}}
	}
	var out []Finding
	switch woven := a.Woven(); {
	case woven == 0:
		out = append(out, Finding{Topic: Nothing})
	case woven > 1:
		out = append(out, Finding{Topic: Layered, Count: woven})
	}
	for _, way := range []Way{Warp, Weft} {
		if loose := a.Loose(way); len(loose) > 0 {
			out = append(out, Finding{Topic: Loose, Way: way, Count: len(loose), Of: a.Threads(way), Threads: loose})
		}
	}
	return out
}

func (a *Analysis) repeatFinding() Finding {
	f := Finding{Topic: Repeats, Ends: a.RepeatEnds, Picks: a.RepeatPicks}
	if a.Bounded && f.Ends == a.Ends && f.Picks == a.Picks {
		f.Topic = Once
	}
	return f
}

func (a *Analysis) floatFindings(way Way) []Finding {
	front, back := a.Floats(way, Front), a.Floats(way, Back)
	var out []Finding
	switch {
	case max(front.Longest, back.Longest) > 1:
		f := Finding{Topic: Floating, Way: way, Front: front.Longest, Back: back.Longest}
		for _, list := range [][]Place{front.Places, back.Places} {
			f.Places = append(f.Places, append(list, Place{})[0])
		}
		out = append(out, f)
	case front.Longest+back.Longest > 0:
		out = append(out, Finding{Topic: Shortest, Way: way})
	}
	for _, face := range []Face{Front, Back} {
		if n := a.Floats(way, face).Never; n > 0 {
			out = append(out, Finding{Topic: Never, Way: way, Face: face, Count: n, Of: a.Threads(way)})
		}
	}
	return out
}

func (a *Analysis) interlacingFinding(way Way) Finding {
	n := a.Interlacing(way)
	f := Finding{Topic: Unevenly, Way: way, Least: n.Least, Most: n.Most, Of: a.Threads(way.Across())}
	switch {
	case n.Least == n.Most:
		f.Topic = Evenly
	case a.Bounded && n.Most-n.Least == 1:
		f.Topic = NearlyEvenly // a repeat cut off ends a thread before a change, or after it
	}
	return f
}

// Findings tells how the edges are caught, and what would catch them better.
func (e *Edges) Findings() []Finding {
	var out []Finding
	for side, c := range e.Sides {
		f := Finding{Topic: SomeCaught, Side: Side(side), Count: c.Caught, Of: c.Turns, Most: c.Run}
		switch {
		case c.Turns == 0:
			continue
		case c.All():
			f.Topic = AllCaught
		case c.Caught == 0:
			f.Topic = NoneCaught
		}
		out = append(out, f)
	}
	same := Finding{Topic: SameShed, Of: len(e.Turns)}
	for _, t := range e.Turns {
		if t.SameShed {
			same.Count++
		}
	}
	if same.Count > 0 {
		out = append(out, same)
	}
	for _, f := range e.Fixes {
		out = append(out, Finding{Topic: f.topic(), Fix: f})
	}
	return out
}

func (f *Fix) topic() Topic {
	switch {
	case f.Floating != [2]bool{}:
		return HangFloating
	case f.Ends != [2]int{}:
		return ChangeEnds
	}
	return StartOther
}
