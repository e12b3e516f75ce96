package finishing

import (
	"sley/internal/engine/content"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// does fills in a step, and reports whether it is done with this cloth.
func (c cloth) does(s *Step) bool {
	do, some := each[s.ID]
	return some && do(c, s)
}

// each says of every step whether it is done, and how.
var each = map[ID]func(cloth, *Step) bool{
	Hemstitch:       cloth.hemstitch,
	MeasureOnLoom:   func(c cloth, s *Step) bool { return c.measure(s, warp.OnLoom, warp.AtFell) },
	CutOff:          cloth.cutOff,
	Secure:          cloth.secure,
	Rest:            resting,
	MeasureRelaxed:  func(c cloth, s *Step) bool { return c.measure(s, warp.Relaxed, warp.Relaxed) },
	Mend:            cloth.mend,
	CutApart:        cloth.cutApart,
	FinishFringe:    cloth.fringe,
	HemBefore:       cloth.hemBefore,
	Wash:            cloth.wash,
	Full:            cloth.full,
	Dry:             cloth.dry,
	Press:           cloth.press,
	Trim:            cloth.trim,
	Seam:            func(c cloth, _ *Step) bool { return c.panels },
	HemAfter:        cloth.hemAfter,
	RestAgain:       func(c cloth, s *Step) bool { return c.wet() && resting(c, s) },
	MeasureFinished: func(c cloth, s *Step) bool { return c.measure(s, warp.Finished, warp.Finished) },
}

func isFringe(e warp.End) bool { return e.Finish == warp.Fringe }

// wet reports whether the cloth is finished in water; a plan that does not say so means
// washed.
func (c cloth) wet() bool { return c.plan.Wash != "unwashed" }

func (c cloth) hemstitch(s *Step) bool {
	s.Ends = c.ends(isFringe)
	return len(s.Ends) > 0
}

func (c cloth) measure(s *Step, long, wide warp.State) bool {
	s.Measure = c.sizes(long, wide)
	return len(s.Measure) > 0
}

func (c cloth) cutOff(s *Step) bool {
	s.Cautions = []Caution{TightWarp}
	if c.plan.Warp.Floats > 0 {
		s.Notes = append(s.Notes, FloatsOff)
	}
	if c.plan.Warp.Layers > 1 {
		s.Notes = append(s.Notes, OpenOut)
	}
	return true
}

// secure is for the raw ends: hemstitching holds the others.
func (c cloth) secure(s *Step) bool {
	s.Ends = c.ends(func(e warp.End) bool { return !isFringe(e) })
	return len(s.Ends) > 0
}

func resting(_ cloth, s *Step) bool {
	s.Hours = restHours
	return true
}

func (c cloth) mend(s *Step) bool {
	if c.wet() {
		s.Notes = append(s.Notes, LeaveTails)
	}
	return true
}

func (c cloth) cutApart(s *Step) bool {
	s.Pieces = c.pieces
	s.Cautions = []Caution{Dust}
	return c.pieces > 1
}

func (c cloth) fringe(s *Step) bool {
	s.Ends = c.ends(isFringe)
	note := KnotFringe
	for _, e := range s.Ends {
		if c.at(e).Twist.Given() {
			note = TwistFringe
		}
	}
	s.Notes = append(s.Notes, note)
	return len(s.Ends) > 0
}

// at gives what the plan says of an end.
func (c cloth) at(e End) *warp.End {
	p := &c.plan.Pieces[e.Piece]
	if e.Last {
		return &p.Last
	}
	return &p.First
}

func (c cloth) hemBefore(s *Step) bool {
	s.Ends = c.ends(func(e warp.End) bool { return e.Finish == warp.Hem && e.TurnedBefore })
	if c.wet() {
		s.Notes = append(s.Notes, OnUnwashed)
	}
	return len(s.Ends) > 0
}

func (c cloth) hemAfter(s *Step) bool {
	s.Ends = c.ends(func(e warp.End) bool { return e.Finish == warp.Hem && !e.TurnedBefore })
	return len(s.Ends) > 0
}

// warm says how hot the water may be.
func (c cloth) warm(s *Step) {
	s.Cautions = append(s.Cautions, HotWater)
	s.Most = c.care.Wash
	if c.known && c.care.Handling == content.NoWater {
		s.Notes = append(s.Notes, WaterHarms)
	}
}

func (c cloth) wash(s *Step) bool {
	c.warm(s)
	switch {
	case c.felts():
		s.Notes = append(s.Notes, CoolForWool)
	case c.has(yarn.Linen) && c.care.Handling == content.Normal:
		s.Notes = append(s.Notes, HotForLinen)
	}
	return c.wet() && c.plan.Wash != "fulled"
}

// full is washing on purpose until the cloth felts; how hot is for the weaver to see.
func (c cloth) full(s *Step) bool {
	s.Cautions = append(s.Cautions, HotWater)
	s.Notes = append(s.Notes, LookOften)
	if c.known && !c.felts() {
		s.Notes = append(s.Notes, DoesNotFelt)
	}
	return c.plan.Wash == "fulled"
}

func (c cloth) dry(s *Step) bool {
	note := DryHanging
	if c.care.Flat {
		note = DryFlat
	}
	s.Notes = append(s.Notes, note)
	return c.wet()
}

// press is left out where a fibre bears no iron.
func (c cloth) press(s *Step) bool {
	s.Most = c.care.Iron
	s.Cautions = []Caution{HotIron}
	switch {
	case c.care.Damp && c.wet():
		s.Notes = append(s.Notes, PressDamp)
	case c.has(yarn.Wool):
		s.Notes = append(s.Notes, SteamWool)
	}
	return !c.known || c.care.Iron > 0
}

func (c cloth) trim(s *Step) bool {
	s.Cautions = []Caution{Dust}
	return true
}
