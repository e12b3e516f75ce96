package defaults

import "testing"

func TestFloatLimits(t *testing.T) {
	for _, l := range FloatLimits() {
		if _, ok := SourceOf(l.Source); !ok || l.Length <= 0 || l.Threads < 4 {
			t.Errorf("%+v", l)
		}
		if LongFloat(l.Use) != l {
			t.Errorf("%q has another limit", l.Use)
		}
	}
	if LongFloat("sail") != LongFloat("") {
		t.Error("a use that is not in the table has not the limit of any")
	}
}
