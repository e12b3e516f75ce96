package sley_test

import (
	"slices"
	"strings"

	"sley/internal/trade/qty"
)

// The marks of a published figure.
const (
	agrees   = "agrees"   // printed as it comes out, to the digits printed
	rounded  = "rounded"  // the author rounds, cuts or pads; exact is what comes out
	again    = "again"    // printed or counted elsewhere already
	derived  = "derived"  // worked out by us from the author's data
	estimate = "estimate" // printed beside what comes out, by no rule to be named
)

// counts reports whether the figure is a check from outside.
func (v vector) counts() bool { return v.col["mark"] == agrees || v.col["mark"] == rounded }

// holds reports whether what was reckoned is what the row asks: the exact
// figure, where one is given, to half a unit of its last place, and the print
// as near as the row says.
func (v vector) holds(got qty.Rat) bool {
	v.mustBeStrict()
	ok := true
	if v.col["exact"] != "" && !near(got, v.number("exact"), half(v.col["exact"])) {
		v.t.Errorf("%s: %s is %s, want %s", v.at, v.what(), got.Decimal(6), v.col["exact"])
		ok = false
	}
	if v.col["within"] != "" && !v.printsAs(got) {
		v.t.Errorf("%s: %s is %s, printed %s, within %s", v.at, v.what(), got.Decimal(6), v.col["printed"], v.col["within"])
		ok = false
	}
	return ok
}

// printsAs reports whether the author prints got as she does: within a
// distance, or by a rounding such as "down 1/4".
func (v vector) printsAs(got qty.Rat) bool {
	printed := v.number("printed")
	way, step, rule := v.rule()
	if rule {
		return got.To(step, way).Equal(printed)
	}
	return near(got, printed, v.number("within"))
}

// rule gives the author's rounding, where within names one.
func (v vector) rule() (way qty.Rounding, step qty.Rat, ok bool) {
	word, number, _ := strings.Cut(v.col["within"], " ")
	way, err := qty.ParseRounding(word)
	if err != nil {
		return way, step, false
	}
	step, err = qty.ParseNumber(number)
	if err != nil || step.Sign() <= 0 {
		v.t.Fatalf("%s: within %q is no rounding", v.at, v.col["within"])
	}
	return way, step, true
}

// mustBeStrict holds the row itself to its mark: what agrees does so to half a
// unit of the last place printed, what is rounded to one unit or by a rounding
// the row names, and the exact figure stands beside it; what is not counted
// has an exact figure to be held to.
func (v vector) mustBeStrict() {
	_, _, rule := v.rule()
	switch mark := v.col["mark"]; {
	case !slices.Contains([]string{agrees, rounded, again, derived, estimate}, mark):
		v.t.Errorf("%s: no mark %q", v.at, mark)
	case mark != agrees && v.col["exact"] == "":
		v.t.Errorf("%s: what is %s has its exact figure beside it", v.at, mark)
	case v.counts() && v.col["within"] == "":
		v.t.Errorf("%s: what counts has a tolerance", v.at)
	case mark == agrees && (rule || half(v.col["printed"]).Less(v.number("within"))):
		v.t.Errorf("%s: within %s is more than half a unit of %s", v.at, v.col["within"], v.col["printed"])
	case mark == rounded && !rule && unitOf(v.col["printed"]).Less(v.number("within")):
		v.t.Errorf("%s: within %s is more than a unit of %s", v.at, v.col["within"], v.col["printed"])
	}
}
