package app

import (
	"context"
	"encoding/json"
	"slices"
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
	"sley/internal/trade/warp"
	"sley/internal/trade/yarn"
)

// settingUnits is what figures of the book are shown in: warp.Units as JSON.
const settingUnits = "units"

// UnitKinds lists the kinds of quantity that have units to choose from.
func UnitKinds() []string { return []string{"length", "yarn", "weight", "density", "count"} }

// UnitChoices lists, for each kind of quantity, the units that can be asked for.
func UnitChoices() map[string][]string {
	out := map[string][]string{
		"length": {"in", "cm"}, "yarn": {"yd", "m"}, "weight": {"oz", "lb", "g", "kg"}, "density": {"in", "cm", "10cm"},
	}
	for _, s := range yarn.Systems() {
		if !slices.Contains(out["count"], s.Symbol()) {
			out["count"] = append(out["count"], s.Symbol())
		}
	}
	return out
}

// UnitNamed gives a unit of a kind as it is spelt in UnitChoices, whatever its case.
func UnitNamed(kind, unit string) (string, bool) {
	choices := UnitChoices()[kind]
	if slices.Contains(choices, unit) {
		return unit, true
	}
	at := slices.IndexFunc(choices, func(have string) bool { return strings.EqualFold(have, unit) })
	if at < 0 {
		return "", false
	}
	return choices[at], true
}

// Units gives the units that figures of the book are shown in where a plan does not say
// its own; an empty one is as each plan was typed.
func (s *Studio) Units(ctx context.Context) (warp.Units, error) {
	var u warp.Units
	err := s.read(ctx, func(r record.Reader) (err error) {
		u, err = unitsOf(r)
		return err
	})
	return u, err
}

// unitsOf reads the units of a book; what cannot be read is as if nothing was said.
func unitsOf(r record.Reader) (warp.Units, error) {
	said, err := r.Setting(settingUnits)
	var u warp.Units
	if err != nil || said == "" || json.Unmarshal([]byte(said), &u) != nil {
		return warp.Units{}, err
	}
	for kind, unit := range unitsBy(&u) {
		if _, ok := UnitNamed(kind, *unit); !ok {
			*unit = ""
		}
	}
	return u, nil
}

// unitsBy gives the units by their kinds.
func unitsBy(u *warp.Units) map[string]*string {
	return map[string]*string{"length": &u.Length, "yarn": &u.Yarn, "weight": &u.Weight, "density": &u.Density, "count": &u.Count}
}

// actUnits tells who watches that figures are shown in other units. It is of no document.
const actUnits = "units"

// SetUnits says the units of the book by their kinds; a kind with an empty unit is as each
// plan was typed, one that is not named stays. It gives what they are then. Nothing is
// written where one is not known.
func (s *Studio) SetUnits(ctx context.Context, said map[string]string) (warp.Units, *problem.List, error) {
	list := &problem.List{}
	var u warp.Units
	err := s.write(ctx, func(w record.Writer) ([]Changed, error) {
		var err error
		if u, err = unitsOf(w); err != nil {
			return nil, err
		}
		setUnits(&u, said, list)
		if list.Failed() {
			return nil, nil
		}
		text, err := json.Marshal(u)
		if err == nil && u == (warp.Units{}) {
			text = nil
		}
		if err == nil {
			err = w.Set(settingUnits, string(text))
		}
		return []Changed{{Act: actUnits}}, err
	})
	return u, list, err
}

func setUnits(u *warp.Units, said map[string]string, list *problem.List) {
	by := unitsBy(u)
	for kind, unit := range said {
		to := by[kind]
		if to == nil {
			list.Fail("units.kind", kind, kind, problem.Args{"valid": UnitKinds()})
			continue
		}
		named, ok := UnitNamed(kind, strings.TrimSpace(unit))
		if !ok && strings.TrimSpace(unit) != "" {
			list.Fail("units.unit", kind, unit, problem.Args{"valid": UnitChoices()[kind]})
		}
		*to = named
	}
}
