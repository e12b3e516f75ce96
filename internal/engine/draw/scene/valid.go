package scene

import (
	"errors"
	"fmt"
	"math"
)

const (
	// MaxSide is the longest side of a page in mm: 14400 points (ISO 32000-1,
	// annex C.2).
	MaxSide = 5080
	// MaxReach is how far from the corner anything may lie, in mm.
	MaxReach = 100_000
	// MaxDepth is how deep groups may lie in one another. PDF readers need keep
	// no more than 28 states (ISO 32000-1, annex C.2).
	MaxDepth = 24
	// MaxPt is the largest size of letters in points.
	MaxPt = 2000
)

// Validate returns why a page cannot be drawn: a size or a place that is no
// number or out of all reach, letters of no size, groups too deep. Nil means that
// every back end draws it.
func (p Page) Validate() error {
	for _, side := range []float64{p.Width, p.Height} {
		if !(side > 0 && side <= MaxSide) {
			return fmt.Errorf("page of %v by %v mm: sides are more than 0 and at most %d mm", p.Width, p.Height, MaxSide)
		}
	}
	return validate(p.Items, 1)
}

func validate(items []Item, depth int) error {
	if depth > MaxDepth {
		return fmt.Errorf("groups lie more than %d deep", MaxDepth)
	}
	for i, it := range items {
		if err := validateItem(it, depth); err != nil {
			return fmt.Errorf("item %d: %w", i, err)
		}
	}
	return nil
}

func validateItem(it Item, depth int) error {
	switch it := it.(type) {
	case Text:
		return it.validate()
	case Picture:
		return it.validate()
	case Rect:
		if it.Width < 0 || it.Height < 0 {
			return fmt.Errorf("a rectangle of %v by %v mm", it.Width, it.Height)
		}
	case Circle:
		if it.Radius < 0 {
			return fmt.Errorf("a circle of %v mm", it.Radius)
		}
	case Group:
		if err := within(it.X, it.Y, it.Clip.X, it.Clip.Y, it.Clip.Width, it.Clip.Height); err != nil {
			return err
		}
		return validate(it.Items, depth+1)
	}
	path, ok := Outline(it)
	if !ok {
		return fmt.Errorf("a %T is nothing that can be drawn", it)
	}
	return path.validate()
}

func (t Text) validate() error {
	if !(t.Size > 0 && t.Size <= MaxPt) {
		return fmt.Errorf("letters of %v points: sizes are more than 0 and at most %d", t.Size, MaxPt)
	}
	if t.Anchor < Start || t.Anchor > End || t.Font.Family < Sans || t.Font.Family > Serif {
		return fmt.Errorf("text %q has an anchor or a family that is none", t.Text)
	}
	return within(t.X, t.Y, t.Angle)
}

func (p Path) validate() error {
	if err := p.Pen.validate(); err != nil {
		return err
	}
	for i, s := range p.Segments {
		if err := within(s.C1.X, s.C1.Y, s.C2.X, s.C2.Y, s.To.X, s.To.Y); err != nil {
			return err
		}
		if s.Step > Close || i == 0 && s.Step != MoveTo {
			return fmt.Errorf("a path begins with a move and goes on with moves, lines, curves and closings")
		}
	}
	return nil
}

func (p Pen) validate() error {
	total := 0.0
	for _, d := range p.Dash {
		if d < 0 {
			return fmt.Errorf("a dash of %v mm", d)
		}
		total += d
	}
	if len(p.Dash) > 0 && total < minDash {
		return fmt.Errorf("dashes and gaps of %v mm in all: at least %v", total, minDash)
	}
	if p.Width < 0 {
		return fmt.Errorf("a pen of %v mm", p.Width)
	}
	return errors.Join(within(p.Dash...), within(p.Width))
}

// minDash is the shortest round of dashes and gaps, in mm: finer ones are a grey.
const minDash = 0.05

func within(numbers ...float64) error {
	for _, n := range numbers {
		if math.IsNaN(n) || math.Abs(n) > MaxReach {
			return fmt.Errorf("%v is out of reach", n)
		}
	}
	return nil
}
