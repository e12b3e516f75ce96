package yarn

import (
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// Skein is a yarn measured and weighed: Skeins of Length each, which weigh
// Mass together. The zero value means that none was measured.
type Skein struct {
	Length qty.Length // of one skein
	Mass   qty.Mass   // of all of them
	Skeins int        // 0 stands for 1
	// Relaxed says that the length was taken after the twist was set, Scoured
	// that the weight was taken after washing: so handspun is measured.
	Relaxed, Scoured bool
}

// IsZero reports whether no skein was measured.
func (s Skein) IsZero() bool { return s.Length == 0 && s.Mass == 0 }

// Grist gives the measured grist, exactly; unknown unless length and weight
// are both above 0.
func (s Skein) Grist() qty.LinearDensity {
	if s.Length <= 0 || s.Mass <= 0 {
		return qty.LinearDensity{}
	}
	length := s.Length.Rat().Mul(qty.Int(int64(max(s.Skeins, 1))))
	return qty.NewLinearDensity(s.Mass.Rat(), length)
}

// Validate adds what is wrong with a measured skein: skein.length, skein.mass
// and skein.skeins for a figure that is missing or not above 0.
func (s Skein) Validate(path string, l *problem.List) {
	if s.Length <= 0 {
		l.Fail("skein.length", path+".length", s.Length.String(), nil)
	}
	if s.Mass <= 0 {
		l.Fail("skein.mass", path+".weight", s.Mass.String(), nil)
	}
	if s.Skeins < 0 {
		l.Fail("skein.skeins", path+".skeins", "", problem.Args{"skeins": s.Skeins})
	}
}

// ValidateHandspun adds what makes a measured skein of handspun uncertain:
// skein.not-relaxed and skein.not-scoured, warnings both. Yarn measured before
// its twist is set comes out too long, and weighed in the grease too heavy.
func (s Skein) ValidateHandspun(path string, l *problem.List) {
	if !s.Relaxed {
		l.Warn("skein.not-relaxed", path+".relaxed", "", nil)
	}
	if !s.Scoured {
		l.Warn("skein.not-scoured", path+".scoured", "", nil)
	}
}
